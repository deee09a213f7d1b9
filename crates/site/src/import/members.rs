//! How many members a zipped file may make a reader hold, before one reads its directory.
//!
//! Who reads the directory of a zipped file holds some hundred bytes for each of its members, where fifty or so are enough to write one; and
//! makes room for as many as it claims to have. So both are counted beforehand: by their signatures, wherever they stand, as several
//! ends of a directory may stand in one file (PKWARE APPNOTE 6.3, sections 4.3.12 and 4.3.14).

use memchr::memmem;

/// What begins a member's entry in the directory.
const ENTRY: &[u8] = b"PK\x01\x02";

/// What begins the end of the directory in a file that may have more than 65,535 members.
const END: &[u8] = b"PK\x06\x06";

/// How long that end is as far as the number of members.
const TO_CLAIM: usize = 40;

/// The members of a zipped file, counted piece by piece.
#[derive(Debug)]
pub struct Members {
    most: u64,
    count: u64,
    claims_more: bool,
    /// The end of what was looked at, in which something may have begun.
    before: Vec<u8>,
}

impl Members {
    /// Counts up to so many.
    pub const fn up_to(most: u64) -> Self {
        Self {
            most,
            count: 0,
            claims_more: false,
            before: Vec::new(),
        }
    }

    /// Looks at the next bytes.
    pub fn look(&mut self, piece: &[u8]) {
        let counted = self.before.len().saturating_sub(ENTRY.len() - 1);
        let mut bytes = core::mem::take(&mut self.before);
        bytes.extend_from_slice(piece);
        let entries = memmem::find_iter(&bytes, ENTRY).filter(|at| *at >= counted);
        for _ in entries {
            self.count += 1;
        }
        let mut ends = memmem::find_iter(&bytes, END);
        self.claims_more |= ends.any(|at| claimed(&bytes, at).is_some_and(|one| one > self.most));
        self.before = bytes.split_off(bytes.len().saturating_sub(TO_CLAIM - 1));
    }

    /// Whether there are more than may be, or may be said to be.
    pub const fn are_too_many(&self) -> bool {
        self.claims_more || self.count > self.most
    }
}

/// How many members the end of a directory claims; nothing where these bytes are no such end, as its two numbers of disks differ.
fn claimed(bytes: &[u8], at: usize) -> Option<u64> {
    let end = bytes.get(at..at.checked_add(TO_CLAIM)?)?;
    let is_end = end.get(16..20)? == end.get(20..24)?;
    let number = end.get(32..40)?.try_into().ok()?;
    is_end.then_some(u64::from_le_bytes(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_make_no_difference() {
        let mut bytes = vec![b'P'; 50];
        bytes.extend(ENTRY.repeat(3));
        bytes.extend(b"between");
        bytes.extend(ENTRY);
        for (most, is_more) in [(3, true), (4, false)] {
            for length in [1, 2, 3, 5, 39, 40, 41, 1000] {
                let mut members = Members::up_to(most);
                bytes.chunks(length).for_each(|piece| members.look(piece));
                assert_eq!(members.are_too_many(), is_more, "{length}");
            }
        }
    }

    #[test]
    fn what_is_claimed_counts_too() {
        let mut end = END.to_vec();
        end.resize(32, 0);
        end.extend(5_u64.to_le_bytes());
        for (most, is_more) in [(4, true), (5, false)] {
            for length in [1, 7, 40, 100] {
                let mut members = Members::up_to(most);
                end.chunks(length).for_each(|piece| members.look(piece));
                assert_eq!(members.are_too_many(), is_more, "{length}");
            }
        }
    }
}
