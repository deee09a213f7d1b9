//! The words of a heading: the units that they name, and how they bound its cells.

use measure::{Unit, notation};

use crate::model::Relation;
use crate::rules::qualifier;

/// Whether two words are the number of a rating and `min`.
fn is_timed(two: &[String]) -> bool {
    const RATINGS: &[&str] = &["30", "45", "60", "90", "120", "180", "240"];
    let number = two.first().map(String::as_str);
    number.is_some_and(|number| RATINGS.contains(&number))
        && two.last().is_some_and(|word| word == "min")
}

/// The unit that a word is.
pub(in crate::clauses::tables) fn unit_of(word: &str) -> Option<Unit> {
    let (unit, end) = notation::unit_at(&format!("1 {word}"), 1)?;
    (end == word.len() + 2).then_some(unit)
}

/// A heading's words in small letters.
pub(super) struct Words {
    text: String,
    pub(super) words: Vec<String>,
}

impl Words {
    pub(super) fn of(text: &str) -> Self {
        let text = text.to_lowercase();
        let words = text
            .split(|c: char| {
                !(c.is_alphanumeric() || matches!(c, '%' | '/' | '°' | '³' | '²' | '"' | '\''))
            })
            .filter(|word| !word.is_empty())
            .map(str::to_owned)
            .collect();
        Self { text, words }
    }

    pub(super) fn says(&self, list: &[&str]) -> bool {
        self.words.iter().any(|word| list.contains(&word.as_str()))
    }

    fn says_pair(&self, pair: [&str; 2]) -> bool {
        self.words.windows(2).any(|two| {
            two.first().is_some_and(|one| one == pair[0])
                && two.last().is_some_and(|one| one == pair[1])
        })
    }

    /// The units it names. A unit of one letter is one only where it stands alone, as it does here.
    pub(super) fn units(&self) -> Vec<Unit> {
        // `deg F` is two words.
        if self.says_pair(["deg", "f"]) {
            return vec![Unit::Fahrenheit];
        }
        if self.says_pair(["deg", "c"]) {
            return vec![Unit::Celsius];
        }
        // `Air temp, F`: a letter alone is a scale only there.
        if self.says(&["temp", "temps", "temperature", "temperatures"]) {
            match (self.says(&["f"]), self.says(&["c"])) {
                (true, false) => return vec![Unit::Fahrenheit],
                (false, true) => return vec![Unit::Celsius],
                _ => {}
            }
        }
        let mut units = Vec::new();
        for (index, word) in self.words.iter().enumerate() {
            // "compression in width, %"
            let preposition = word == "in"
                && self.words.get(index + 1).is_some_and(|next| {
                    [
                        "width", "depth", "place", "the", "a", "an", "any", "each", "every", "all",
                        "one", "service", "use",
                    ]
                    .contains(&next.as_str())
                        && self.text.contains(&format!("in {next}"))
                });
            // "Bond in mm", "movement in % of b"; `Joint width, in. (mm)` names both.
            let preposition = preposition
                || word == "in"
                    && self.words.get(index + 1).is_some_and(|next| {
                        unit_of(next).is_some() && self.text.contains(&format!("in {next}"))
                    });
            // "butts per metre" counts
            let rate = index > 0
                && self
                    .words
                    .get(index - 1)
                    .is_some_and(|before| before == "per");
            // "Strips, joint up to 30 mm" has a number of its own in that unit.
            let numbered = index > 0
                && self
                    .words
                    .get(index - 1)
                    .is_some_and(|before| before.starts_with(|c: char| c.is_ascii_digit()));
            if !preposition
                && !rate
                && !numbered
                && qualifier(word).is_none()
                && let Some(unit) = unit_of(word)
                && !units.contains(&unit)
            {
                units.push(unit);
            }
        }
        units
    }

    /// Whether it names one unit per another that is no unit of its own: `ft2/gal`.
    pub(super) fn name_unknown_rate(&self) -> bool {
        let is_unit = |word: &str| {
            notation::unit_at(&format!("1 {word}"), 1).is_some_and(|(_, end)| end == word.len() + 2)
        };
        self.words.iter().any(|word| {
            word.split_once('/')
                .is_some_and(|(one, other)| is_unit(one) && is_unit(other))
        })
    }

    /// "lower limit", "or heavier", "or less".
    fn limit(&self) -> Option<Relation> {
        const MORE: [&str; 5] = ["more", "greater", "heavier", "thicker", "over"];
        const LESS: [&str; 3] = ["less", "smaller", "under"];
        let or_any = |words: &[&str]| words.iter().any(|word| self.says_pair(["or", word]));
        if self.says_pair(["lower", "limit"]) || or_any(&MORE) {
            Some(Relation::AtLeast)
        } else if self.says_pair(["upper", "limit"]) || or_any(&LESS) {
            Some(Relation::AtMost)
        } else {
            None
        }
    }

    /// Whether it ends in "over", units and numbers apart: `Width over, mm`. "Slab above, thickness" and "Depth over flutes" name a place.
    fn ends_over(&self) -> bool {
        let is_unit = |word: &str| {
            word.starts_with(|c: char| c.is_ascii_digit())
                || notation::unit_at(&format!("1 {word}"), 1)
                    .is_some_and(|(_, end)| end == word.len() + 2)
        };
        let last = self.words.iter().rev().find(|word| !is_unit(word));
        last.is_some_and(|word| ["over", "above"].contains(&word.as_str()))
    }

    /// Whether a `min` in it stands behind the number of a rating, `Depth, mm 60 min`, and may be of minutes or a minimum.
    pub(super) fn may_be_timed(&self) -> bool {
        self.words.windows(2).any(is_timed)
    }

    /// How it bounds its cells; in minutes, "min" is no minimum.
    pub(super) fn relation(&self, in_minutes: bool) -> Option<Relation> {
        let in_minutes = in_minutes || self.may_be_timed();
        let named = self.words.iter().find_map(|word| qualifier(word));
        if let Some(relation) = named.filter(|_| !in_minutes) {
            return Some(relation);
        }
        let denied = self.says(&["not", "no"]);
        let not_less = self.says_pair(["less", "than"]) && denied;
        let not_more = denied
            && [["more", "than"], ["greater", "than"]]
                .into_iter()
                .any(|pair| self.says_pair(pair))
            || self.says_pair(["not", "exceeding"])
            || self.says_pair(["not", "above"]);
        if let Some(relation) = self.limit() {
            return Some(relation);
        }
        if self.says_pair(["at", "least"]) || self.says_pair(["not", "under"]) || not_less {
            Some(Relation::AtLeast)
        } else if not_more
            || [["at", "most"], ["up", "to"], ["not", "over"]]
                .into_iter()
                .any(|pair| self.says_pair(pair))
        {
            Some(Relation::AtMost)
        } else if self.ends_over() {
            Some(Relation::MoreThan)
        } else {
            None
        }
    }
}
