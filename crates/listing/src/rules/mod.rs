//! Step 5, first layer: the rules that say how a number is bounded, each a file and a page of its own.
//!
//! A rule is one name: `rules/NAME.rs` says how it reads, `rules/NAME.md` says in plain words what it reads, what it
//! declines to read and why, and shows cases. The page is what the program shows for "read by ...", and its cases are
//! run as tests. Adding a rule is adding the two files, the module and its name in the list below; the order of the list
//! is the order in which the rules are asked. What a long rule is made of stands in `rules/NAME/PART.rs`.

mod allowed_extent;
mod bare_value;
#[cfg(test)]
mod cases;
mod changes;
mod closed_denied;
mod closing_qualifier;
mod comparison_before;
mod counted_back;
mod counted_per;
mod denied;
mod denied_elsewhere;
mod either_or_more;
mod first_of_pair;
mod further_denied;
mod headed_cases;
mod lifted;
mod limit_verb;
mod measured;
mod not_asked;
mod pair_of_limits;
mod parallel_case;
mod parallel_place;
mod prefixed;
mod respective;
mod ruled_out;
mod same_sheet;
mod sentence;
mod several_measures;
mod shared_qualifier;
mod sign_after;
mod sign_before;
mod spread;
mod stricter_of_two;
mod subject_opening;
mod turned_down;
mod within_distance;
mod word_after;
mod word_before;

pub(crate) use comparison_before::{NEGATIONS, compares_down, compares_up, is_refused};
pub(crate) use measured::measured_behind;
pub(crate) use prefixed::ends_at_limit;
pub(crate) use respective::share;
pub(crate) use ruled_out::is_ruled_out;
pub(crate) use sentence::Sentence;
pub(crate) use shared_qualifier::{case_of, is_spaced};
pub(crate) use word_before::qualifier;

use self::counted_per::counted_per;
use self::further_denied::further_denied;
use self::lifted::is_lifted;
use self::respective::are_bounded_alike;
use self::stricter_of_two::greater_of_two;
use crate::model::Relation;

/// What a rule found about an amount.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Finding {
    pub(crate) relation: Relation,
    /// The first token of the words that say so.
    pub(crate) from: usize,
    /// Whether the reading is doubtful and a person should look at the words.
    pub(crate) doubtful: bool,
}

impl Finding {
    pub(crate) const fn sure(relation: Relation, from: usize) -> Self {
        Self {
            relation,
            from,
            doubtful: false,
        }
    }
}

/// A rule: its name, its page, and how it reads the amount with a given index.
pub struct Rule {
    /// The name, as a clause carries it.
    pub name: &'static str,
    /// The page: what it reads, what it declines to read, and cases.
    pub page: &'static str,
    read: fn(&Sentence<'_>, usize) -> Option<Finding>,
}

macro_rules! rules {
    ($($module:ident $name:literal,)*) => {
        /// Every rule for bounds, in the order in which they are asked.
        pub const RULES: &[Rule] = &[
            $(Rule { name: $name, page: include_str!(concat!(stringify!($module), ".md")), read: $module::read },)*
        ];
    };
}

rules! {
    either_or_more "either or more",
    spread "range or tolerance",
    sign_before "sign before",
    sign_after "sign after",
    comparison_before "comparison before",
    limit_verb "limit verb",
    allowed_extent "allowed extent",
    pair_of_limits "pair of limits",
    word_after "word after",
    word_before "word before",
    within_distance "within a distance",
    subject_opening "subject opening",
    shared_qualifier "shared qualifier",
    parallel_place "parallel place",
    parallel_case "parallel case",
    same_sheet "same sheet",
    first_of_pair "first of a pair",
    closing_qualifier "closing qualifier",
    headed_cases "headed cases",
    bare_value "bare value",
}

/// How an amount is bounded, and the rule that says so; none when no rule dares.
type Found = Option<(Finding, &'static str)>;

/// How an amount is bounded.
pub(crate) fn bounded(sentence: &Sentence<'_>, amount: usize) -> Found {
    let (finding, name) = bounded_alone(sentence, amount)?;
    let relation = |index: usize| bounded_alone(sentence, index).map(|(own, _)| own.relation);
    let alike = share(sentence, amount)
        .is_none_or(|share| are_bounded_alike(sentence, &share, finding.relation, relation));
    alike.then_some((finding, name))
}

/// The same, whatever is said of a number that it shares its words with.
fn bounded_alone(sentence: &Sentence<'_>, amount: usize) -> Found {
    sentence.found_once(amount, || {
        let (finding, name) = bounded_by_its_words(sentence, amount)?;
        let finding = further_denied(sentence, amount, finding, name)?;
        let finding = greater_of_two(sentence, amount, finding, name);
        counted_per(sentence, amount, finding, name)
    })
}

/// The same by the words of its own limb, as the conditions of a sentence, which are not known yet, ask for it: what the statement around a condition
/// denies isn't denied of the case.
pub(crate) fn bounded_by_its_words(sentence: &Sentence<'_>, amount: usize) -> Found {
    let read = |rule: &Rule| (rule.read)(sentence, amount).map(|finding| (finding, rule.name));
    let (finding, name) = RULES.iter().find_map(read)?;
    (!is_lifted(sentence, amount, name)).then_some((finding, name))
}

/// The page of a rule by its name.
pub fn rule_page(name: &str) -> Option<&'static str> {
    RULES
        .iter()
        .find(|rule| rule.name == name)
        .map(|rule| rule.page)
}
