//! Reading numbers, units and quantities as the trade writes them.
//!
//! | written | read as |
//! |---|---|
//! | `2-1/2 in.`, `2 1/2 in.`, `2½"`, `2.5 inches` | 5/2 in |
//! | `5/8-inch`, `⅝ in`, `1-in.` | inches, the hyphen being part of the spelling |
//! | `8 ft 3-1/2 in.`, `8'-3 1/2"` | 199/2 in: feet and inches are summed in inches |
//! | `12,5 mm`, `0,2 mm` | 25/2 mm, 1/5 mm: a comma before one or two digits, or after a zero, is a decimal comma |
//! | `1,200 mm` | 1200 mm: a comma before three digits groups thousands |
//! | `No. 25 MSG`, `25 ga`, `20 gauge` | a sheet-steel gauge |
//! | `No. 8` | a screw size |
//! | `Schedule 40`, `No. 18 SWG`, `No. 24 AWG` | the numbered sizes |
//! | `33%`, `33 percent`, `33 per cent` | percent |
//! | `40°F`, `40 deg F`, `40 F` | a temperature |
//!
//! What it declines to read, because it would be a guess: a number with no unit; `25 inside` (a word that only
//! begins like a unit); `2 in the wall` and `2 in each bay` (the preposition); a fraction with a zero beneath;
//! more than twelve digits.
//!
//! A raised figure right behind a unit is the mark of a note (`4 pcf²`); behind a length it may make an area, and
//! is declined unless that is a unit (`4 in.²`, `3 ft³`).
//!
//! A quantity remembers its *step*: the smallest difference that its notation can show (`2-1/2 in.` is stated
//! to 1/2 in., `64 mm` to 1 mm, `0.036 in.` to 0.001 in.). [`dual`](crate::dual) needs it; no verdict does.

mod numeral;
mod quantities;
mod scan;
mod units;

pub use numeral::{Numeral, NumeralStyle, numeral_at};
pub use quantities::{ParseQuantityError, Stated, quantity, quantity_at};
pub use scan::is_note_mark;
pub use units::unit_at;
