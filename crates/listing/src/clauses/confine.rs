//! What an alternative is confined to, as clauses of it: "(Alternate to Item 3B for joints 1 in. wide or less)". Whoever builds it must keep to
//! them; as a condition, they would let the alternative's other clauses fall away where it may not be built.

use super::Around;
use super::draft::{Draft, Yield, local_property};
use crate::conditions::conditions;
use crate::layout::Flow;
use crate::model::{Bound, Confidence, Expr, Requirement, SecondValue, Span, Test};
use crate::rules::Sentence;

/// Adds a clause for each stretch that confines an item, unless a clause without a condition says so already.
pub(crate) fn confine(source: &str, limits: &[Span], around: &Around, found: &mut Yield) {
    for limit in limits {
        if !found.clauses.iter().any(|held| says(held, *limit)) {
            found.clauses.push(clause(source, *limit, around));
            found.covered.push(*limit);
        }
    }
}

/// Whether a clause always holds and says what stands in a stretch.
fn says(held: &Draft, limit: Span) -> bool {
    let meets = |span: Span| span.start() < limit.end() && limit.start() < span.end();
    held.condition.is_none()
        && match &held.requirement {
            Requirement::Bound(bound) => meets(bound.at),
            Requirement::Prose => {
                held.span.start() <= limit.start() && limit.end() <= held.span.end()
            }
            _ => false,
        }
}

fn clause(source: &str, limit: Span, around: &Around) -> Draft {
    let flow = Flow::of(source, [limit]).with_usual_units(around.usual_units);
    let sentence = Sentence::new(&flow, 0..flow.text().len());
    let width = width(&sentence);
    let confined = "confined to".to_owned();
    match width {
        Some(bound) => Draft {
            span: limit,
            property: "joint.width".to_owned(),
            component: "joint".to_owned(),
            attribute: "width".to_owned(),
            requirement: Requirement::Bound(bound),
            condition: None,
            options: around.options.clone(),
            read_by: vec![confined],
            confidence: Confidence::ByRule,
        },
        None => Draft {
            span: limit,
            property: local_property(&around.item, flow.text()),
            component: around.subject.title.to_lowercase(),
            attribute: "words".to_owned(),
            requirement: Requirement::Prose,
            condition: None,
            options: around.options.clone(),
            read_by: vec![confined],
            confidence: Confidence::Prose,
        },
    }
}

/// The bound that a stretch sets to the width of the joint, where it says nothing else.
fn width(sentence: &Sentence<'_>) -> Option<Bound> {
    let found = conditions(sentence).found;
    let [only] = found.as_slice() else {
        return None;
    };
    let Expr::Test(Test {
        property,
        relation,
        lo,
        hi,
        lo_excluded,
    }) = &only.expr
    else {
        return None;
    };
    let [index] = only.triggers.as_slice() else {
        return None;
    };
    let amount = sentence.amount(*index)?;
    // "the base joint", "joints in floors" are others than the joint.
    let whole = only.first <= 1 && only.last + 1 >= sentence.tokens.len();
    let another = sentence.has_any(
        0,
        sentence.tokens.len(),
        &["base", "head", "flute", "bed", "rating"],
    );
    (property == "joint.width" && whole && !another && sentence.amounts.len() == 1).then(|| Bound {
        relation: *relation,
        lo: lo.map(|value| value.number),
        hi: hi.map(|value| value.number),
        unit: amount.unit,
        lo_excluded: *lo_excluded,
        bare: false,
        at: sentence.source(amount.at),
        second: amount.second.as_ref().map(|second| SecondValue {
            lo: Some(second.lo),
            hi: second.hi,
            unit: second.unit,
            agreement: second.agreement,
        }),
    })
}
