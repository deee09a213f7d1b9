//! Sentences that name only another case and its number: "Min depth 3 in. *Where the joint is over 2 in., increase to 4 in.*", "Min depth is 3 in. for 1 hr. *For 2
//! hr, it is 4 in.*" What the number is of, and whether it is the least or the most, the sentence before has said.
//!
//! Where that spoke of several measures nobody knows which is meant, and the number is in doubt. What it would misread: a number in such a sentence that
//! takes up an earlier one than the last.

use measure::Dimension;

use super::bounds::Reading;
use crate::model::Relation;
use crate::naming::Name;
use crate::rules::Sentence;

/// What a sentence asked for.
#[derive(Debug, Clone)]
struct Asked {
    dimension: Dimension,
    /// What it is of and how it is bounded; none where several measures are asked for.
    one: Option<(Name, Relation)>,
}

/// What the sentence before asked for.
#[derive(Debug, Default)]
pub(super) struct Before(Vec<Asked>);

impl Before {
    /// Completes the number of a sentence that names nothing but a case.
    pub(super) fn complete(&self, sentence: &Sentence<'_>, named: &mut [(Reading, Name)]) {
        let [(reading, name)] = named else { return };
        let dimension = reading.bound.unit.dimension();
        let asked = self.0.iter().find(|asked| asked.dimension == dimension);
        let Some(asked) = asked.filter(|_| is_elliptic(sentence, reading)) else {
            return;
        };
        let Some((of, relation)) = &asked.one else {
            reading.doubtful |= name.property.is_none();
            return;
        };
        let says_its_own = has_measure(sentence, reading);
        if says_its_own && name.property != of.property {
            return;
        }
        // "Max recess 1 in. For 2 hr, min 1/2 in.": the other limit may be one of another measure.
        let limits = |relation| matches!(relation, Relation::AtLeast | Relation::AtMost);
        // "May be increased to 6 in." says how far one may go.
        let changed = reading.rule == "limit verb"
            && !outside(sentence, reading).any(|at| sentence.is_any(at, &["may", "can"]));
        let bare = reading.rule == "bare value" || changed;
        let own = reading.bound.relation;
        let opposed = !bare && limits(own) && limits(*relation) && own != *relation;
        if opposed && reading.rule != "limit verb" {
            reading.doubtful = true;
            return;
        }
        *name = of.clone();
        let single = reading.bound.lo.is_none() || reading.bound.hi.is_none();
        if limits(*relation) && bare && single {
            bound_as(reading, *relation);
        }
    }

    /// Takes in what a sentence asks for.
    pub(super) fn take(&mut self, named: &[(Reading, Name)]) {
        self.0.clear();
        for (reading, name) in named {
            let dimension = reading.bound.unit.dimension();
            let own = (name.clone(), reading.bound.relation);
            match self.0.iter_mut().find(|asked| asked.dimension == dimension) {
                Some(asked) => {
                    let same = |(of, relation): &(Name, Relation)| {
                        of.property.is_some() && of.property == own.0.property && *relation == own.1
                    };
                    asked.one = asked.one.take().filter(same);
                }
                None => self.0.push(Asked {
                    dimension,
                    one: Some(own),
                }),
            }
        }
    }
}

/// Bounds a number as the one that it is another case of.
fn bound_as(reading: &mut Reading, relation: Relation) {
    let value = reading.bound.lo.or(reading.bound.hi);
    let (lo, hi) = match relation {
        Relation::AtMost => (None, value),
        _ => (value, None),
    };
    reading.bound.relation = relation;
    reading.bound.lo = lo;
    reading.bound.hi = hi;
    reading.bound.bare = false;
    reading.rule = "parallel case";
}

const MEASURES: &[&str] = &[
    "deep",
    "depth",
    "thick",
    "thickness",
    "wide",
    "width",
    "long",
    "length",
    "high",
    "height",
];

fn has_measure(sentence: &Sentence<'_>, reading: &Reading) -> bool {
    outside(sentence, reading).any(|at| sentence.is_any(at, MEASURES))
}

/// The tokens of a sentence besides its cases and its number.
fn outside<'s>(
    sentence: &'s Sentence<'_>,
    reading: &'s Reading,
) -> impl Iterator<Item = usize> + 's {
    let own = reading
        .amounts
        .first()
        .and_then(|index| sentence.amount(*index));
    let (first, last) = own.map_or((0, 0), |own| {
        (own.first, sentence.skip_parentheses(own.last))
    });
    (0..sentence.tokens.len())
        .filter(move |at| !(first..last).contains(at) && !sentence.in_condition(*at))
}

/// Whether a sentence says nothing but a case and a number for it.
fn is_elliptic(sentence: &Sentence<'_>, reading: &Reading) -> bool {
    const SAYING: &[&str] = &[
        "it",
        "this",
        "that",
        "is",
        "are",
        "be",
        "shall",
        "must",
        "may",
        "to",
        "a",
        "an",
        "the",
        "of",
        "min",
        "minimum",
        "max",
        "maximum",
        "not",
        "no",
        "less",
        "more",
        "than",
        "at",
        "least",
        "most",
        "increase",
        "increased",
        "reduce",
        "reduced",
        "decrease",
        "decreased",
        "raise",
        "raised",
        "required",
        "permitted",
        "allowed",
        "needed",
        "sufficient",
        "only",
        "then",
        "can",
        "provide",
        "use",
        "becomes",
    ];
    let cased = (0..sentence.tokens.len()).any(|at| sentence.in_condition(at));
    let plain = |at: usize| {
        !sentence.has_word(at) || sentence.is_any(at, SAYING) || sentence.is_any(at, MEASURES)
    };
    cased && reading.amounts.len() == 1 && outside(sentence, reading).all(plain)
}
