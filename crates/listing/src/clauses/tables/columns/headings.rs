//! What the headings of a table say, and how the words around it limit its columns.

use super::super::Said;
use super::super::band::{bands_together, width_band};
use super::super::caption::{captions, sets_a_limit, sizes_another, suits};
use super::super::heading::{Heading, Selects, heading};
use super::super::shared_heads::cases_under_one;
use super::super::statements::{Stated, names_column};
use crate::layout::UsualUnits;
use crate::model::Relation;

/// What the headings of a table say. A width without a unit is in the document's.
pub(super) fn read_headings(words: &[String], usual_units: UsualUnits) -> Vec<Heading> {
    let mut cases = cases_under_one(words);
    cases.extend(bands_together(words));
    let mut headings: Vec<Heading> = words
        .iter()
        .enumerate()
        .map(|(column, words)| {
            cases
                .remove(&column)
                .or_else(|| width_band(words).filter(|_| column > 0))
                .unwrap_or_else(|| heading(words))
        })
        .collect();
    for heading in &mut headings {
        if heading.selects == Some(Selects::Width) && heading.unit.is_none() {
            heading.unit = usual_units.length;
        }
    }
    headings
}

/// Whether words only name a part, and not which of several or when it is there: "Cover strip (optional)", "Clip or angle" do.
pub(super) fn is_plain_name(words: &str) -> bool {
    const MOST_WORDS: usize = 3;
    const SAYING_MORE: &[&str] = &[
        "or",
        "optional",
        "alternate",
        "alternative",
        "if",
        "where",
        "when",
        "type",
        "option",
        "used",
    ];
    let plain = |word: &str| {
        word.chars().all(|c| c.is_alphabetic() || c == '-')
            && !SAYING_MORE.contains(&word.to_lowercase().as_str())
    };
    words.split_whitespace().count() <= MOST_WORDS && words.split_whitespace().all(plain)
}

/// What the caption and the words behind the table say of its columns, or of its rows. A limit that the caption sets for none of them leaves all
/// in doubt.
pub(super) fn limit_by_words_around(mut headings: Vec<&mut Heading>, said: &Said<'_>) {
    let of_cases = headings.iter().any(|heading| heading.is_case_alone());
    let behind = Behind::of(&headings, said);
    for heading in &mut headings {
        if captions(said.before) {
            let own = heading.relation;
            heading.take_from_caption(said.before);
            if of_cases && sizes_another(said.before, heading) {
                heading.relation = own.or_else(|| stated_by_name(said.before, heading));
            }
        }
        if heading.selects.is_none() {
            let suited = said
                .of_all
                .filter(|relation| suits(*relation, &heading.words));
            let by_name = || {
                let lower = heading.words.to_lowercase();
                let is_named = |name: &str| names_column(name, &lower);
                let elsewhere = || said.elsewhere.of_column(said.before, is_named);
                behind.limit(&lower).or_else(elsewhere)
            };
            let said = by_name();
            let against = heading
                .relation
                .zip(said)
                .is_some_and(|(own, other)| own != other);
            heading.limit_unknown |= against;
            heading.relation = heading.relation.or(said).or(suited).filter(|_| !against);
        }
    }
    let caption = said.before.to_lowercase();
    let words: Vec<String> = headings
        .iter()
        .map(|one| one.words.to_lowercase())
        .collect();
    let stated = Stated::of(&caption);
    let is_caption = captions(said.before);
    let beside = |heading: &str| is_caption && stated.beside(heading).is_some();
    let none_is_limited = headings.iter().all(|heading| heading.relation.is_none());
    let speaks = is_caption || none_is_limited;
    let is_left = speaks && sets_a_limit(&stated.rest) && !words.iter().any(|words| beside(words));
    if is_left || stated.limits_another(&words) {
        for heading in headings {
            heading.limit_unknown = true;
        }
    }
}

/// What the words behind a table state of its columns by their names, and of nothing else: "Depths are minimum."
struct Behind(Option<Stated>);

impl Behind {
    fn of(headings: &[&mut Heading], said: &Said<'_>) -> Self {
        let words: Vec<String> = headings
            .iter()
            .map(|one| one.words.to_lowercase())
            .collect();
        let stated = Stated::of(&said.behind.to_lowercase());
        Self(Some(stated).filter(|stated| stated.names_only(&words)))
    }

    fn limit(&self, heading: &str) -> Option<Relation> {
        self.0.as_ref()?.by_name(heading)
    }
}

/// How a caption limits a column by its name.
fn stated_by_name(caption: &str, heading: &Heading) -> Option<Relation> {
    Stated::of(&caption.to_lowercase()).by_name(&heading.words.to_lowercase())
}

/// The case that a label speaks of behind a comma or a bracket: "joint over 30 mm" of `Strips, joint over 30 mm`.
pub(super) fn case_of_label(label: &str) -> Option<&str> {
    const SAYS: &[&str] = &[
        "joint", "joints", "width", "widths", "gap", "over", "up", "above", "below", "under", "≤",
        "≥", ">", "<", "rating", "wall",
    ];
    // `Compression, minimum, joint over 25 mm`: what stands before the last comma isn't part of it.
    let (_, case) = label
        .rmatch_indices([',', '('])
        .map(|(at, sign)| label.split_at(at + sign.len()))
        .find(|(_, case)| case.contains(|c: char| c.is_ascii_digit()))?;
    let case = case.trim_matches([' ', ')', ',']);
    let says = case
        .split_whitespace()
        .any(|word| SAYS.contains(&word.to_lowercase().as_str()));
    says.then_some(case)
}
