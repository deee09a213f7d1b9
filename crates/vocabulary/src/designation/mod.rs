//! The North American designation of a joint system: `TT-M-NNNN`.
//!
//! | part | meaning |
//! |---|---|
//! | `TT` | what the joint lies between: FF, WW, FW, HW, BW, CG; CW for a perimeter joint |
//! | `M` | S static, D dynamic |
//! | `NNNN` | the thousands give the band of nominal widths |
//!
//! | number | nominal width |
//! |---|---|
//! | 0000-0999 | 2 in. or less |
//! | 1000-1999 | over 2 in. to 6 in. |
//! | 2000-2999 | over 6 in. to 12 in. |
//! | 3000-3999 | over 12 in. to 24 in. |
//! | 4000-4999 | over 24 in. |
//!
//! Perimeter joints use the same bands, confirmed to 2999 only; above, no band is given. From 5000 on the convention
//! says nothing. Where the listing's own text states a width, that width governs and the band doesn't (common
//! practice). Laboratories put letters before the kind (`XHW-D-0123`): [`Designation::parse_decorated`] reads those;
//! all else is strict, since a code that only looks like a designation would be a guess.

mod kind;
mod width_band;

use core::fmt;
use core::ops::Range;

pub use kind::{JointKind, Motion};
pub use width_band::WidthBand;

/// A designation, decoded.
///
/// ```
/// use vocabulary::Designation;
/// let read = Designation::parse("HW-D-0123").unwrap();
/// assert_eq!(read.describe(), "head-of-wall joint, dynamic, nominal width 2 in. or less");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Designation {
    /// What the joint lies between.
    pub kind: JointKind,
    /// Static or dynamic.
    pub motion: Motion,
    /// The number, 0 to 9999.
    pub number: u16,
}

/// Why a text is no designation.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum DesignationError {
    /// It isn't two letters, one letter and four digits, joined by hyphens.
    #[error("`{0}` is not of the form TT-M-NNNN, such as HW-D-0123")]
    Form(String),
    /// The first two letters name no kind of joint.
    #[error("`{0}` is no kind of joint; the kinds are FF, WW, FW, HW, BW, CG and CW")]
    Kind(String),
    /// The middle letter is neither S nor D.
    #[error("`{0}` says neither static nor dynamic; it would be S or D")]
    Motion(String),
    /// The last part isn't four digits.
    #[error("`{0}` is no number of four digits, such as 0123")]
    Number(String),
    /// There are more than three letters before the kind.
    #[error("`{0}` has more than three letters before the kind of joint")]
    Prefix(String),
}

/// Bytes in a designation: two letters, a hyphen, a letter, a hyphen, four digits.
const LENGTH: usize = 9;

/// The most letters a laboratory puts before the kind.
const PREFIX: usize = 3;

impl Designation {
    /// Reads a whole text as a designation without any letters before it.
    ///
    /// # Errors
    /// When a part is not what it must be; the error names the part and what would be right.
    pub fn parse(text: &str) -> Result<Self, DesignationError> {
        let mut parts = text.split('-');
        let (Some(kind), Some(motion), Some(number), None) =
            (parts.next(), parts.next(), parts.next(), parts.next())
        else {
            return Err(DesignationError::Form(text.to_owned()));
        };
        let digits = number.len() == 4 && number.bytes().all(|byte| byte.is_ascii_digit());
        Ok(Self {
            kind: JointKind::of_code(kind)
                .ok_or_else(|| DesignationError::Kind(kind.to_owned()))?,
            motion: Motion::of_code(motion)
                .ok_or_else(|| DesignationError::Motion(motion.to_owned()))?,
            number: number
                .parse()
                .ok()
                .filter(|_| digits)
                .ok_or_else(|| DesignationError::Number(number.to_owned()))?,
        })
    }

    /// Reads a whole text as a designation with up to three letters before it, and gives those letters too.
    ///
    /// # Errors
    /// As [`parse`](Self::parse); and when there are more than three letters before the kind.
    ///
    /// ```
    /// use vocabulary::Designation;
    /// let (prefix, read) = Designation::parse_decorated("XHW-D-1173").unwrap();
    /// assert_eq!((prefix, read.to_string()), ("X", "HW-D-1173".to_owned()));
    /// ```
    pub fn parse_decorated(text: &str) -> Result<(&str, Self), DesignationError> {
        let split = text
            .len()
            .checked_sub(LENGTH)
            .and_then(|at| text.split_at_checked(at));
        let Some((prefix, plain)) = split else {
            return Err(DesignationError::Form(text.to_owned()));
        };
        if !prefix.bytes().all(|byte| byte.is_ascii_uppercase()) {
            return Err(DesignationError::Form(text.to_owned()));
        }
        if prefix.len() > PREFIX {
            return Err(DesignationError::Prefix(text.to_owned()));
        }
        Ok((prefix, Self::parse(plain)?))
    }

    /// The first designation in a text, with its place. It stands apart: no letter, digit or hyphen touches it.
    ///
    /// ```
    /// use vocabulary::Designation;
    /// let (place, read) = Designation::find("See Design No. FF-S-1042.").unwrap();
    /// assert_eq!((place, read.number), (15..24, 1042));
    /// assert!(Designation::find("See XFF-S-1042.").is_none());
    /// ```
    pub fn find(text: &str) -> Option<(Range<usize>, Self)> {
        let mut before = None;
        for (start, letter) in text.char_indices() {
            let end = start + LENGTH;
            let apart = !before.is_some_and(touches)
                && !text
                    .get(end..)
                    .and_then(|rest| rest.chars().next())
                    .is_some_and(touches);
            before = Some(letter);
            if !apart {
                continue;
            }
            if let Some(Ok(read)) = text.get(start..end).map(Self::parse) {
                return Some((start..end, read));
            }
        }
        None
    }

    /// The designation in words.
    pub fn describe(&self) -> String {
        let width = self
            .width_band()
            .map(|band| format!(", nominal width {band}"));
        format!(
            "{}, {}{}",
            self.kind.title(),
            self.motion.title(),
            width.unwrap_or_default()
        )
    }
}

impl fmt::Display for Designation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}-{}-{:04}",
            self.kind.code(),
            self.motion.code(),
            self.number
        )
    }
}

/// Whether a character beside a designation makes it part of another code.
fn touches(character: char) -> bool {
    character.is_alphanumeric() || matches!(character, '-' | '_' | '\u{2010}' | '\u{2011}')
}
