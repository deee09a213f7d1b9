//! A movement that is stated as a percentage and as a length: both must be within what was tested.

use measure::Number;
use site::Fact;

use crate::assessment::Assessment;
use crate::explain::{provenance, value_in_words};
use crate::verdict::Verdict;

/// One statement of what is needed, and what comes of it.
pub(crate) struct Statement<'a> {
    /// What comes of it.
    pub(crate) found: Assessment<'a>,
    /// The percentage needed; none where it can't be told.
    pub(crate) percent: Option<Number>,
    /// The fact that states it.
    pub(crate) fact: Option<&'a Fact>,
    /// What it is called: "percentage", "length".
    pub(crate) name: &'static str,
}

impl Statement<'_> {
    /// "the percentage stated, 23 % (drawing S-512),"
    fn words(&self) -> String {
        let stated = self.fact.map(|fact| {
            let value = value_in_words(&fact.value);
            format!(", {value} ({}),", provenance(fact))
        });
        format!("{} stated{}", self.name, stated.unwrap_or_default())
    }

    /// The worse first; of two alike the greater need.
    fn strictness(&self) -> (u8, Option<Number>) {
        let rank = match self.found.verdict {
            Verdict::NotMet => 3,
            Verdict::Open => 2,
            Verdict::Met | Verdict::Judged => 1,
            Verdict::NotApplicable => 0,
        };
        (rank, self.percent)
    }
}

/// The stricter of two statements, with a note on the other.
pub(crate) fn stricter<'a>(one: Statement<'a>, other: Statement<'a>) -> Assessment<'a> {
    let (decides, passed) = if other.strictness() > one.strictness() {
        (other, one)
    } else {
        (one, other)
    };
    let note = note(&decides, &passed);
    let mut found = decides.found;
    found.notes.push(note);
    found
}

/// Which statement decided and why.
fn note(decides: &Statement<'_>, passed: &Statement<'_>) -> String {
    let (name, words) = (decides.name, passed.words());
    match (decides.found.verdict, passed.found.verdict) {
        (Verdict::NotMet, Verdict::Met | Verdict::NotApplicable) => {
            format!(
                "The {words} alone would pass. Both must be within what was tested: the {name} decides."
            )
        }
        (Verdict::NotMet, Verdict::NotMet) => {
            format!("The {words} isn't within what was tested either; the {name} asks more.")
        }
        (Verdict::Met, Verdict::Met) => {
            format!("The {words} is within what was tested too; the {name} asks more, and decides.")
        }
        (_, Verdict::NotApplicable) => {
            format!("The {words} asks for no movement; the {name} does, and decides.")
        }
        (_, Verdict::Open) => {
            format!("Whether the {words} is within what was tested is open too; both must be.")
        }
        _ => {
            format!("The {words} is within what was tested. Both must be, and the {name} is open.")
        }
    }
}
