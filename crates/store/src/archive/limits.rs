//! How large an archive may be. A project of a hundred thousand joints fits; a file made to exhaust the reader doesn't.

/// The most members.
pub(super) const MOST_MEMBERS: usize = 100_000;

/// The most signatures of members that the whole file may hold: attachments may be zipped files themselves.
pub(super) const MOST_SIGNATURES: u64 = 400_000;

/// The most bytes of the manifest.
pub(super) const MOST_IN_MANIFEST: u64 = 64 << 10;

/// The most bytes of one line of the journal.
pub(super) const MOST_IN_LINE: u64 = 16 << 20;

/// The most bytes that all of it may unpack to.
pub(super) const MOST_UNPACKED: u64 = 32 << 30;

/// The most times its packed size that a member may unpack to, once it is larger than [`SMALL`]. A journal packs to a
/// tenth or so; one byte repeated packs to a thousandth.
pub(super) const MOST_TIMES: u64 = 200;

/// A member that unpacks to no more than this may pack as well as it likes.
pub(super) const SMALL: u64 = 4 << 20;
