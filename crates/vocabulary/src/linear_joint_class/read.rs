//! Reading a class from text.

use core::fmt;
use core::ops::Range;

use measure::{Quantity, Unit};

use super::{
    ClassRating, Criterion, InducedMovement, LinearJointClass, Orientation, Splices, WidthRange,
};

/// The classes of time of EN 13501-2, in minutes (from memory).
const MINUTES: &[u16] = &[10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 360];

/// A field of the class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Field {
    /// `EI 120`.
    Rating,
    /// `V`.
    Orientation,
    /// `M30`.
    Movement,
    /// `B`.
    Splices,
    /// `W 20 to 100`.
    Width,
}

impl Field {
    const fn title(self) -> &'static str {
        match self {
            Self::Rating => "rating",
            Self::Orientation => "orientation",
            Self::Movement => "movement",
            Self::Splices => "splices",
            Self::Width => "width",
        }
    }

    /// What would be right.
    const fn right(self) -> &'static str {
        match self {
            Self::Rating => {
                "E or EI and minutes: 10, 15, 20, 30, 45, 60, 90, 120, 180, 240 or 360, as in `EI 120`"
            }
            Self::Orientation => "H (floor), V (vertical in a wall) or T (horizontal in a wall)",
            Self::Movement => "X (none) or M and a percentage above 0, as in `M30`",
            Self::Splices => "M (factory), F (site) or B (both)",
            Self::Width => "W and two widths in millimetres, the lesser first, as in `W 20 to 100`",
        }
    }
}

impl fmt::Display for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.title())
    }
}

/// Why a text is no class.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{field}: found {}; right would be {}", shown(found), .field.right())]
pub struct ClassError {
    /// The field that is wrong.
    pub field: Field,
    /// What stands there.
    pub found: String,
    /// The byte of the text at which it stands.
    pub at: usize,
}

fn shown(found: &str) -> String {
    if found.is_empty() {
        "nothing".to_owned()
    } else {
        format!("`{found}`")
    }
}

impl LinearJointClass {
    /// Reads a whole text as a class.
    ///
    /// # Errors
    /// When a field isn't what it must be, or anything stands after the last; the error names the field, where it
    /// stands and what would be right.
    ///
    /// ```
    /// use vocabulary::LinearJointClass;
    /// let error = LinearJointClass::parse("EI 120 – Q – X – B – W 10 to 30").unwrap_err();
    /// assert_eq!(
    ///     error.to_string(),
    ///     "orientation: found `Q`; right would be H (floor), V (vertical in a wall) or T (horizontal in a wall)",
    /// );
    /// ```
    pub fn parse(text: &str) -> Result<Self, ClassError> {
        let mut cursor = Cursor { text, at: 0 };
        let class = cursor.class()?;
        cursor.skip_spaces();
        if cursor.rest().is_empty() {
            Ok(class)
        } else {
            Err(cursor.error(Field::Width))
        }
    }

    /// The first class in a text, with its place. Letters and digits don't touch it.
    ///
    /// ```
    /// use vocabulary::LinearJointClass;
    /// let row = "C floor   10 to 30   EI 90 - H - X - B - W 10 to 30 (1)";
    /// let (place, class) = LinearJointClass::find(row).unwrap();
    /// assert_eq!(&row[place], "EI 90 - H - X - B - W 10 to 30");
    /// assert_eq!(class.insulation_minutes(), Some(90));
    /// ```
    pub fn find(text: &str) -> Option<(Range<usize>, Self)> {
        let mut before: Option<char> = None;
        for (start, letter) in text.char_indices() {
            let apart = !before.is_some_and(char::is_alphanumeric);
            before = Some(letter);
            if letter != 'E' || !apart {
                continue;
            }
            let mut cursor = Cursor { text, at: start };
            let class = cursor.class().ok();
            if let Some(class) = class.filter(|_| !cursor.rest().starts_with(char::is_alphanumeric))
            {
                return Some((start..cursor.at, class));
            }
        }
        None
    }
}

/// A place in the text.
struct Cursor<'t> {
    text: &'t str,
    at: usize,
}

impl<'t> Cursor<'t> {
    fn class(&mut self) -> Result<LinearJointClass, ClassError> {
        let ratings = self.ratings()?;
        self.dash(Field::Orientation)?;
        let orientation = self.letter(Field::Orientation, |letter| match letter {
            'H' => Some(Orientation::HorizontalInFloor),
            'V' => Some(Orientation::VerticalInWall),
            'T' => Some(Orientation::HorizontalInWall),
            _ => None,
        })?;
        self.dash(Field::Movement)?;
        let movement = self.movement()?;
        self.dash(Field::Splices)?;
        let splices = self.letter(Field::Splices, |letter| match letter {
            'M' => Some(Splices::Manufactured),
            'F' => Some(Splices::Field),
            'B' => Some(Splices::Both),
            _ => None,
        })?;
        self.dash(Field::Width)?;
        Ok(LinearJointClass {
            ratings,
            orientation,
            movement,
            splices,
            widths: self.widths()?,
        })
    }

    fn ratings(&mut self) -> Result<Vec<ClassRating>, ClassError> {
        let mut ratings = vec![self.rating()?];
        loop {
            self.skip_spaces();
            if !self.take(",") {
                return Ok(ratings);
            }
            ratings.push(self.rating()?);
        }
    }

    fn rating(&mut self) -> Result<ClassRating, ClassError> {
        self.skip_spaces();
        let start = self.at;
        let criterion = if self.take("EI") {
            Criterion::IntegrityAndInsulation
        } else if self.take("E") {
            Criterion::Integrity
        } else {
            return Err(self.error(Field::Rating));
        };
        self.skip_spaces();
        let minutes = self
            .digits()
            .parse()
            .ok()
            .filter(|minutes| MINUTES.contains(minutes));
        let minutes = minutes.ok_or_else(|| self.error_from(start, Field::Rating))?;
        Ok(ClassRating { criterion, minutes })
    }

    fn movement(&mut self) -> Result<InducedMovement, ClassError> {
        self.skip_spaces();
        let start = self.at;
        if self.take("X") {
            return Ok(InducedMovement::None);
        }
        let percent = if self.take("M") {
            self.decimal(Unit::Percent)
        } else {
            None
        };
        match percent.filter(|percent| !percent.number.is_zero()) {
            Some(percent) => {
                self.take_after_spaces("%");
                Ok(InducedMovement::Percent(percent))
            }
            None => Err(self.error_from(start, Field::Movement)),
        }
    }

    fn widths(&mut self) -> Result<WidthRange, ClassError> {
        self.skip_spaces();
        let start = self.at;
        let widths = self
            .width_range()
            .filter(|range| range.contains(range.least) == Some(true));
        widths.ok_or_else(|| self.error_from(start, Field::Width))
    }

    fn width_range(&mut self) -> Option<WidthRange> {
        if !self.take("W") {
            return None;
        }
        let least = self.decimal(Unit::Millimetre)?;
        if !self.take_after_spaces("to") {
            return None;
        }
        let greatest = self.decimal(Unit::Millimetre)?;
        self.take_after_spaces("mm");
        Some(WidthRange { least, greatest })
    }

    /// One of a field's letters.
    fn letter<T>(
        &mut self,
        field: Field,
        meaning: impl Fn(char) -> Option<T>,
    ) -> Result<T, ClassError> {
        self.skip_spaces();
        let letter = self.rest().chars().next();
        let read = letter.and_then(&meaning).ok_or_else(|| self.error(field))?;
        self.at += letter.map_or(0, char::len_utf8);
        Ok(read)
    }

    /// The hyphen or dash before a field.
    fn dash(&mut self, next: Field) -> Result<(), ClassError> {
        self.skip_spaces();
        let dash = self
            .rest()
            .chars()
            .next()
            .filter(|&character| is_dash(character));
        self.at += dash.ok_or_else(|| self.error(next))?.len_utf8();
        Ok(())
    }

    /// A number with a decimal point or comma, or none.
    fn decimal(&mut self, unit: Unit) -> Option<Quantity> {
        self.skip_spaces();
        let whole = self.digits();
        let start = self.at;
        let mut number = whole.to_owned();
        if self.take(",") || self.take(".") {
            let decimals = self.digits();
            if decimals.is_empty() {
                self.at = start;
            } else {
                number = format!("{whole}.{decimals}");
            }
        }
        Quantity::parse(&format!("{number} {unit}")).ok()
    }

    fn digits(&mut self) -> &'t str {
        let rest = self.rest();
        let end = rest
            .find(|character: char| !character.is_ascii_digit())
            .unwrap_or(rest.len());
        self.at += end;
        rest.get(..end).unwrap_or_default()
    }

    fn take(&mut self, piece: &str) -> bool {
        let taken = self.rest().starts_with(piece);
        if taken {
            self.at += piece.len();
        }
        taken
    }

    /// Takes a piece that may have spaces before it, or nothing at all.
    fn take_after_spaces(&mut self, piece: &str) -> bool {
        let start = self.at;
        self.skip_spaces();
        let taken = self.take(piece);
        if !taken {
            self.at = start;
        }
        taken
    }

    fn skip_spaces(&mut self) {
        self.at += self.rest().len() - self.rest().trim_start().len();
    }

    fn rest(&self) -> &'t str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn error(&self, field: Field) -> ClassError {
        self.error_from(self.at, field)
    }

    /// The error that shows what stands from a place to the next dash.
    fn error_from(&self, at: usize, field: Field) -> ClassError {
        let rest = self.text.get(at..).unwrap_or_default();
        let found = rest
            .split(is_dash)
            .next()
            .unwrap_or_default()
            .trim()
            .to_owned();
        ClassError { field, found, at }
    }
}

fn is_dash(character: char) -> bool {
    matches!(character, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}
