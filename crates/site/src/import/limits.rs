//! How large the project's files may be. A schedule of a hundred thousand joints fits; a file made to exhaust the
//! reader doesn't.

/// The most bytes of a file.
pub(crate) const MOST_BYTES: usize = 32 << 20;

/// The most bytes of a building's file.
pub(crate) const MOST_IN_BUILDING: usize = 256 << 10;

/// The most bytes that a workbook may unpack to. They are read as they are unpacked, and not kept.
pub(crate) const MOST_UNPACKED: u64 = 256 << 20;

/// The most bytes of one piece of a workbook's XML: a tag with its attributes, or a text. A cell is much shorter, however it is escaped.
pub(crate) const MOST_IN_PIECE: usize = 1 << 20;

/// The most bytes of what is kept of an import's tables, each cell taken for [`OF_A_CELL`] and its text: a schedule of 20,000 joints of 50
/// columns, or of 100,000 of ten.
pub(crate) const MOST_KEPT: usize = 64 << 20;

/// The most cells that tell a property or an option, in all tables of an import: 20,000 joints of 50. What is known takes about 600 bytes of
/// memory for each.
pub(crate) const MOST_TOLD: usize = 1_000_000;

/// What a cell takes beside its text, about.
pub(crate) const OF_A_CELL: usize = 48;

/// The most rows of a table.
pub(crate) const MOST_ROWS: usize = 200_000;

/// The most columns of a table.
pub(crate) const MOST_COLUMNS: usize = 1000;

/// The most bytes of a cell; a spreadsheet's own limit is 32 767 characters.
pub(crate) const MOST_IN_CELL: usize = 32_767;

/// The most parts of a workbook.
pub(crate) const MOST_PARTS: u64 = 10_000;
