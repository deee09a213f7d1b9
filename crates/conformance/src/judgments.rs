//! What named people have decided, applied to what was found.
//!
//! A judgment is for a joint or a mark, a listing, an item, and the clause of it that begins with the judgment's words.
//! One whose words begin two clauses of the item is applied to neither; one that names a finding by its id
//! (`header/width`) needs no words; one on item `header` names the check by its first words (`width`); one whose words are "built" or "not built" says so of an option. A joint's own judgment goes before its mark's, a later one before an earlier one, and
//! of one day a rejection before an acceptance. A judgment that names no listing is for the clause of any that has all its words: what another
//! listing says after the same beginning nobody has judged, nor what it numbers or names alike. One that names its document is for that document
//! alone: under the name of the listing another edition may come, which numbers other clauses alike.
//!
//! | found | accepted | rejected |
//! |---|---|---|
//! | open | judged | not met |
//! | not met | judged, if it says on what ground; the comparison stays in view | not met |
//! | met, not applicable | as found | not met |

use listing::{Reading, bare_path};
use site::{Decision, GoesBy, Judgment, SaidOf, Scope};

use crate::assessment::Assessment;
use crate::subject::{Case, goes_by};
use crate::verdict::{Reason, Verdict};
use crate::words::{normal, same};

/// What a judgment may be about.
pub(crate) struct Target<'t> {
    pub(crate) id: &'t str,
    pub(crate) item: &'t str,
    pub(crate) words: &'t str,
}

/// The judgments on one joint that are for one listing, each with what it was found to fit.
pub(crate) struct Judgments<'a> {
    pending: Vec<Pending<'a>>,
}

struct Pending<'a> {
    judgment: &'a Judgment,
    fate: Fate,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Fate {
    FitsNothing,
    FitsSeveral,
    Fits,
    NoBasis,
    Nobody,
    OfAnotherDocument,
}

impl Fate {
    /// What is known of it before any clause is looked at.
    fn before_any(judgment: &Judgment, listing: &GoesBy<'_>) -> Self {
        if judgment.by.trim().is_empty() {
            Self::Nobody
        } else if is_for(judgment, listing) {
            Self::FitsNothing
        } else {
            Self::OfAnotherDocument
        }
    }

    /// Whether it is applied to nothing, whatever the clauses say.
    const fn is_settled(self) -> bool {
        matches!(self, Self::Nobody | Self::OfAnotherDocument)
    }
}

impl<'a> Judgments<'a> {
    /// The judgments on a joint that are for this listing or for any.
    pub(crate) fn on(subject: &Case<'a>, reading: &Reading) -> Self {
        let listing = goes_by(reading);
        let mut pending: Vec<Pending<'a>> = subject
            .judgments
            .iter()
            .filter(|judgment| may_bear_on(judgment, &listing))
            .map(|judgment| Pending {
                judgment,
                fate: Fate::before_any(judgment, &listing),
            })
            .collect();
        // The one that goes before the others is applied last, over them.
        pending.sort_by_key(|pending| {
            let Judgment {
                scope,
                when,
                decision,
                ..
            } = pending.judgment;
            (
                matches!(scope, Scope::Joint(_)),
                *when,
                *decision == Decision::Rejected,
            )
        });
        Self { pending }
    }

    /// Whether there are none.
    pub(crate) fn is_empty(&self) -> bool {
        self.pending.is_empty()
    }

    /// Applies what fits to some targets and what was found of them, which stand in the same order.
    pub(crate) fn apply(&mut self, targets: &[Target<'_>], found: &mut [Assessment<'a>]) {
        for pending in &mut self.pending {
            if pending.fate.is_settled() {
                continue;
            }
            match fitting(pending.judgment, targets) {
                Fitting::One(place) => {
                    if let Some(assessment) = found.get_mut(place) {
                        let applied = decide(assessment, pending.judgment);
                        pending.fate = if applied { Fate::Fits } else { Fate::NoBasis };
                    }
                }
                Fitting::Several if pending.fate == Fate::FitsNothing => {
                    pending.fate = Fate::FitsSeveral;
                }
                Fitting::Several | Fitting::Nothing => {}
            }
        }
    }

    /// Whether a person has decided that an option is built, or that it isn't: a judgment on its item whose words are
    /// "built" or "not built".
    pub(crate) fn is_built(&mut self, option: &str) -> Option<bool> {
        let mut built = None;
        for pending in &mut self.pending {
            let Judgment {
                item,
                words,
                decision,
                ..
            } = pending.judgment;
            let is_on_it = same(item, option) || bare_path(item) == bare_path(option);
            // Whether an item is built is said of one listing: in another it is another item.
            let is_said = names_listing(pending.judgment);
            if pending.fate.is_settled() || !is_said || !is_on_it || *decision != Decision::Accepted
            {
                continue;
            }
            let decided = match normal(words).as_str() {
                "built" => true,
                "not built" => false,
                _ => continue,
            };
            built = Some(decided);
            pending.fate = Fate::Fits;
        }
        built
    }

    /// What a person should know of those that weren't applied.
    pub(crate) fn notes(&self) -> Vec<String> {
        let note = |pending: &Pending<'_>| {
            let Judgment {
                item,
                words,
                by,
                when,
                ..
            } = pending.judgment;
            let begins = format!("The judgment of {when} by {by} on item {item}, \"{words}\",");
            match pending.fate {
                Fate::Fits => None,
                Fate::FitsNothing if !names_listing(pending.judgment) => Some(format!(
                    "{begins} names no listing, fits no clause of this one by all its words and was not applied; name the listing that it was made on."
                )),
                Fate::FitsNothing => Some(format!(
                    "{begins} fits no clause of the listing and was not applied; give the first words of the clause as the listing has them."
                )),
                Fate::FitsSeveral => Some(format!(
                    "{begins} fits more than one clause and was not applied; give more of the clause's words."
                )),
                Fate::NoBasis => Some(format!(
                    "{begins} accepts a clause that is not met without saying on what ground, and was not applied."
                )),
                Fate::OfAnotherDocument => Some(format!(
                    "{begins} was made on another document of the same name and was not applied; judge the clause again as it stands in this one."
                )),
                Fate::Nobody => Some(format!(
                    "A judgment of {when} on item {item}, \"{words}\", names nobody who decided it, and was not applied."
                )),
            }
        };
        self.pending.iter().filter_map(note).collect()
    }
}

/// Whether it was made on this listing, or on whichever the joint is built to.
fn is_for(judgment: &Judgment, listing: &GoesBy<'_>) -> bool {
    made_on(judgment).is_none_or(|said| listing.is_meant(said))
}

/// The same, or it was made on a listing of the same name.
pub(crate) fn may_bear_on(judgment: &Judgment, listing: &GoesBy<'_>) -> bool {
    made_on(judgment).is_none_or(|said| listing.is_meant(said) || listing.has_name(said))
}

fn made_on(judgment: &Judgment) -> Option<SaidOf<'_>> {
    let named = judgment.listing.as_deref();
    named.filter(|_| names_listing(judgment)).map(SaidOf::read)
}

/// Whether it was made on a listing that it names.
fn names_listing(judgment: &Judgment) -> bool {
    let listing = judgment.listing.as_deref();
    listing.is_some_and(|name| !name.trim().is_empty())
}

enum Fitting {
    Nothing,
    One(usize),
    Several,
}

fn fitting(judgment: &Judgment, targets: &[Target<'_>]) -> Fitting {
    let by_id = targets
        .iter()
        .position(|target| same(target.id, &judgment.item));
    let is_named = names_listing(judgment);
    match by_id {
        Some(place) if is_named => return Fitting::One(place),
        Some(_) => return Fitting::Nothing,
        None => {}
    }
    let words = normal(&judgment.words);
    if words.is_empty() {
        return Fitting::Nothing;
    }
    let item = bare_path(&judgment.item);
    let mut whole = Vec::new();
    let mut begun = Vec::new();
    for (place, target) in targets.iter().enumerate() {
        if bare_path(target.item) != item {
            continue;
        }
        let theirs = normal(target.words);
        if theirs == words {
            whole.push(place);
        }
        if is_named && begins_with(&theirs, &words) {
            begun.push(place);
        }
    }
    match (whole.as_slice(), begun.as_slice()) {
        ([one], _) | ([], [one]) => Fitting::One(*one),
        ([], []) => Fitting::Nothing,
        _ => Fitting::Several,
    }
}

/// Whether a text begins with whole words of another.
fn begins_with(text: &str, words: &str) -> bool {
    text.strip_prefix(words).is_some_and(|rest| {
        let next = rest.chars().next();
        let last = words.chars().next_back();
        !(next.is_some_and(char::is_alphanumeric) && last.is_some_and(char::is_alphanumeric))
    })
}

/// Applies a decision; false when it needed a ground and gives none.
fn decide<'a>(found: &mut Assessment<'a>, judgment: &'a Judgment) -> bool {
    let (verdict, reason) = found.before.unwrap_or((found.verdict, found.reason));
    let (decided, why) = match (judgment.decision, verdict) {
        (Decision::Rejected, _) => (Verdict::NotMet, Reason::Rejected),
        (Decision::Accepted, Verdict::NotMet) if judgment.basis.trim().is_empty() => return false,
        (Decision::Accepted, Verdict::Open | Verdict::NotMet) => {
            (Verdict::Judged, Reason::Accepted)
        }
        (Decision::Accepted, _) => (verdict, reason),
    };
    found.before = Some((verdict, reason));
    found.verdict = decided;
    found.reason = why;
    found.judgment = Some(judgment);
    true
}
