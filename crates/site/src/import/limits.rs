//! How large the project's files may be. A schedule of a hundred thousand joints fits; a file made to exhaust the
//! reader doesn't.

/// The most bytes of a file.
pub(crate) const MOST_BYTES: usize = 32 << 20;

/// The most bytes of a building's file.
pub(crate) const MOST_IN_BUILDING: usize = 256 << 10;

/// The most bytes that a workbook may unpack to.
pub(crate) const MOST_UNPACKED: u64 = 256 << 20;

/// The most rows of a table.
pub(crate) const MOST_ROWS: usize = 200_000;

/// The most columns of a table.
pub(crate) const MOST_COLUMNS: usize = 1000;

/// The most bytes of a cell; a spreadsheet's own limit is 32 767 characters.
pub(crate) const MOST_IN_CELL: usize = 32_767;
