//! Whether what a person confirmed of one document still stands in another.

use super::overlay::{Entry, evened, value_of};
use crate::model::{Clause, Reading};

/// Why an entry stands for no clause of a reading any more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lost {
    /// The clause of its number has other words.
    Reworded,
    /// Its words are there, and another number was read from them.
    OtherNumber,
    /// Its words stand several times in the item, and nothing says which is meant.
    Several,
    /// Its words are in another item.
    Moved,
    /// Its words aren't there, and no clause has its number.
    Gone,
}

impl Lost {
    /// In words, to go on after "no longer stands: ".
    pub const fn words(self) -> &'static str {
        match self {
            Self::Reworded => "the clause has other words now",
            Self::OtherNumber => "another number is read from its words now",
            Self::Several => "its words stand several times in the item now",
            Self::Moved => "its words stand in another item now",
            Self::Gone => "its words aren't in the document any more",
        }
    }
}

/// The clause that an entry stands for, in a reading without any overlay: the one of its id with the same words and number, else the only one of the
/// item with these.
///
/// # Errors
/// Why it stands for none.
pub fn stands_for<'r>(reading: &'r Reading, entry: &Entry) -> Result<&'r Clause, Lost> {
    let found = super::find(&reading.clauses, entry).and_then(|at| reading.clauses.get(at));
    found.ok_or_else(|| why(&reading.clauses, entry))
}

fn why(clauses: &[Clause], entry: &Entry) -> Lost {
    let same_words: Vec<&Clause> = clauses
        .iter()
        .filter(|clause| evened(&clause.words) == entry.words)
        .collect();
    let of_item = |clause: &&&Clause| clause.item == entry.item;
    let fits = |clause: &&&Clause| of_item(clause) && value_of(clause) == entry.value;
    if same_words.iter().filter(fits).count() > 1 {
        Lost::Several
    } else if same_words.iter().any(|clause| of_item(&clause)) {
        Lost::OtherNumber
    } else if clauses.iter().any(|clause| clause.id == entry.clause) {
        Lost::Reworded
    } else if !same_words.is_empty() {
        Lost::Moved
    } else {
        Lost::Gone
    }
}

#[cfg(test)]
mod tests {
    use super::{Lost, stands_for};
    use crate::confirm::confirm_all;
    use crate::model::Reading;
    use crate::read_text;

    const TEXT: &str = "1. Floor - Concrete floor, min 5 in. (127 mm) thick.\n\n2. Packing - Min 4 in. (102 mm) deep. Fibers run parallel to the wall.\n";

    /// What becomes of each entry on the text in another one, by the clause's id then.
    fn becomes(of: &str) -> Vec<(String, Result<String, Lost>)> {
        let overlay = confirm_all(
            &read_text("a.txt", TEXT),
            "Reviewer",
            jiff::civil::date(2026, 3, 14),
        );
        let reading: Reading = read_text("a.txt", of);
        let stands = |entry| stands_for(&reading, entry).map(|clause| clause.id.clone());
        let entries = overlay.entries.iter();
        entries
            .map(|entry| (entry.clause.clone(), stands(entry)))
            .collect()
    }

    fn of_packing(of: &str) -> Vec<Result<String, Lost>> {
        let all = becomes(of).into_iter();
        all.filter(|(id, _)| id.starts_with("2/"))
            .map(|(_, becomes)| becomes)
            .collect()
    }

    #[test]
    fn what_is_the_same_stands() {
        for (id, becomes) in becomes(TEXT) {
            assert_eq!(becomes, Ok(id));
        }
    }

    #[test]
    fn why_it_no_longer_stands() {
        let reworded = of_packing(&TEXT.replace("4 in. (102 mm)", "5 in. (127 mm)"));
        assert_eq!(
            reworded,
            [Err(Lost::Reworded), Ok("2/2".to_owned())],
            "the other sentence stands"
        );
        let moved =
            of_packing(&TEXT.replace("2. Packing", "2. Wall - Concrete wall.\n\n3. Packing"));
        assert_eq!(
            moved.first(),
            Some(&Err(Lost::Reworded)),
            "another clause has its number"
        );
        let gone = of_packing("1. Floor - Concrete floor, min 5 in. (127 mm) thick.\n");
        assert_eq!(gone, [Err(Lost::Gone), Err(Lost::Gone)]);
        let before = of_packing(&TEXT.replace("Min 4 in.", "Kept dry at all times. Min 4 in."));
        assert_eq!(
            before,
            [Ok("2/2".to_owned()), Ok("2/3".to_owned())],
            "their words are found again behind what came in before"
        );
    }
}
