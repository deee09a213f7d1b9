//! The words that govern the numbers of a sentence: conditions, and the configurations that it names.

use crate::conditions::{
    Found, Mentioned, Permitted, conditions, configurations, end_of_exclusion, exceptive,
    keep_required, keep_scope, kinds, lettered, offers, permitted,
};
use crate::model::Expr;
use crate::rules::Sentence;

/// The words that govern the numbers of a sentence: conditions, then the configurations that it names.
pub(super) struct Governing {
    pub(super) found: Vec<Found>,
    pub(super) first_configuration: usize,
    /// The numbers that a permission is confined to.
    pub(super) permitted: Vec<Permitted>,
    /// The configurations by name.
    pub(super) named: Vec<String>,
}

/// `in_option` says whether the item may be left for another; `letters` are those by which the head names configurations.
pub(super) fn governing(
    sentence: &mut Sentence<'_>,
    in_option: bool,
    letters: &[String],
) -> Governing {
    let mut conditions = conditions(sentence);
    let mut mentioned = configurations(sentence);
    mentioned.extend(lettered(sentence, letters));
    mentioned.sort_by_key(|mention| mention.first);
    // "As in Configuration A" points at what holds there, and holds itself.
    mentioned.retain(|mention| !is_compared_with(sentence, mention.first));
    mentioned.retain(|mention| !joins(sentence, mention, &mut conditions.found));
    let besides: Vec<Found> = mentioned
        .iter()
        .filter_map(|mention| besides(sentence, mention, &conditions.found))
        .collect();
    conditions.found.extend(besides);
    conditions.found.sort_by_key(|condition| condition.first);
    if in_option {
        keep_required(sentence, &mut conditions.found);
    }
    keep_scope(sentence, &mut conditions.found);
    sentence.set_conditions(&conditions);
    let permitted = permitted(sentence, &mut conditions.found, in_option);
    let mut governing = conditions.found;
    governing.extend(kinds(sentence));
    // What is said in an item that is an option itself is said of it.
    if !in_option && permitted.is_empty() {
        governing.extend(offers(sentence));
    }
    let (named, excepted): (Vec<_>, Vec<_>) = mentioned
        .into_iter()
        .partition(|mention| left_out(sentence, mention).is_none());
    // A configuration that is excepted is a condition for a person: no list of the others may be complete.
    governing.extend(excepted.iter().map(|mention| {
        let (first, last) = left_out(sentence, mention).unwrap_or((mention.first, mention.last));
        words_that_govern(first, last, sentence.words(first, last).to_owned())
    }));
    let first_configuration = governing.len();
    governing.extend(named.iter().map(|mention| {
        let first = introduced_at(sentence, mention.first);
        words_that_govern(first, mention.last, mention.names.join(" or "))
    }));
    Governing {
        found: governing,
        first_configuration,
        permitted,
        named: named
            .into_iter()
            .flat_map(|mention| mention.names)
            .collect(),
    }
}

/// The tokens of a configuration with what takes it out: "except in Configuration A", "Configuration A excepted", "Configuration A does not apply", "outside
/// Configuration A".
fn left_out(sentence: &Sentence<'_>, mention: &Mentioned) -> Option<(usize, usize)> {
    let before = exceptive(sentence, mention.first).or_else(|| {
        let outside = mention.first.checked_sub(1)?;
        let reads = sentence.is_any(outside, &["outside", "unlike", "excluding", "without"]);
        // "as opposed to Configuration A"
        let lead = mention.first.checked_sub(3).filter(|lead| {
            sentence.is_word(*lead, "as")
                && sentence.is_word(lead + 1, "opposed")
                && sentence.is_word(outside, "to")
        });
        lead.or_else(|| reads.then_some(outside))
    });
    if let Some(first) = before {
        return Some((first, mention.last));
    }
    let behind = end_of_exclusion(sentence, mention.last)?;
    Some((mention.first, behind))
}

/// Whether a configuration is only pointed at: "as in Configuration A", "same as for Configuration A".
fn is_compared_with(sentence: &Sentence<'_>, first: usize) -> bool {
    let Some(before) = first.checked_sub(1) else {
        return false;
    };
    let lead = before
        - usize::from(before > 0 && sentence.is_any(before, &["in", "for", "under", "with"]));
    lead < before && sentence.is_word(lead, "as") || sentence.is_any(before, &["as", "like"])
}

/// Whether a configuration is one of two cases, "in Configuration A or for joints over 2 in.": they are one condition then, for a person to say.
fn joins(sentence: &Sentence<'_>, mention: &Mentioned, found: &mut [Found]) -> bool {
    let first = introduced_at(sentence, mention.first);
    let joint = |at: usize| sentence.is_any(at, &["or", "and"]);
    let joined = found.iter_mut().find(|own| {
        let before = mention.last + 1 == own.first && joint(mention.last);
        let behind = own.last + 1 == first && joint(own.last);
        let within = own.first <= first
            && mention.last <= own.last
            && sentence.has_any(own.first, own.last, &["or"]);
        before || behind || within && !own.triggers.is_empty()
    });
    let Some(own) = joined else {
        return false;
    };
    let (first, last) = (first.min(own.first), mention.last.max(own.last));
    *own = Found {
        triggers: own.triggers.clone(),
        ..words_that_govern(first, last, sentence.words(first, last).to_owned())
    };
    true
}

/// What is asked besides a configuration that opens the sentence: "In Configuration B with the sprayed deck of Item 1C, ...". A person must say whether that is
/// so.
fn besides(sentence: &Sentence<'_>, mention: &Mentioned, found: &[Found]) -> Option<Found> {
    const WITH: &[&str] = &["with", "without", "having", "where", "when", "if"];
    const LONGEST: usize = 14;
    let first = introduced_at(sentence, mention.first);
    let begins = first == 0 || sentence.is_sign(first - 1, ';');
    let end = (mention.last..sentence.tokens.len())
        .take(LONGEST)
        .find(|at| sentence.is_stop(*at) || sentence.amount_at(*at).is_some())
        .filter(|at| sentence.is_sign(*at, ','))?;
    let apart = |own: &Found| own.last <= mention.last || end <= own.first;
    (begins && sentence.is_any(mention.last, WITH) && found.iter().all(apart))
        .then(|| words_that_govern(first, end, sentence.words(mention.last, end).to_owned()))
}

fn words_that_govern(first: usize, last: usize, words: String) -> Found {
    Found {
        first,
        last,
        expr: Expr::Words(words),
        triggers: Vec::new(),
        parts: Vec::new(),
    }
}

/// Where the words that introduce a configuration begin.
fn introduced_at(sentence: &Sentence<'_>, first: usize) -> usize {
    match first.checked_sub(1) {
        Some(before) if sentence.is_any(before, &["in", "for", "with", "of", "under", "at"]) => {
            before
        }
        _ => first,
    }
}
