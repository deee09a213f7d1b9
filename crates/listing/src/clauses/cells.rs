//! Cells of words under a heading: the heading says what a value alone is, and which part the words are about.

use super::tables::{Heading, heading, rating_of, read_cell};
use super::{Around, Draft, Yield, holds_always, read_text};
use crate::conditions::{heads_joints, is_case_of_joints};
use crate::layout::Flow;
use crate::model::{Condition, Expr, Span};
use crate::naming::{Subject, components_in};
use crate::phrase::cell;
use crate::rules::Sentence;

/// Reads one cell.
pub(super) fn read(
    source: &str,
    heading_pieces: &[Span],
    text: &[Span],
    around: &Around,
    subject: &mut Subject,
    found: &mut Yield,
) {
    let words = Flow::of(source, heading_pieces.iter().copied());
    let flow = Flow::of(source, text.iter().copied()).with_usual_units(around.usual_units);
    if let Some(expr) = rating_of(words.text()) {
        let condition = Condition {
            also: Vec::new(),
            words: words.text().trim().to_owned(),
            span: heading_pieces
                .iter()
                .copied()
                .reduce(Span::join)
                .unwrap_or_default(),
            expr,
        };
        let label = heading(&around.subject.title);
        read_for_rating(
            source,
            text,
            &condition,
            Some(&label),
            around,
            subject,
            found,
        );
        return;
    }
    let column = heading(words.text());
    let is_value = cell(flow.text(), column.unit, column.second_unit)
        .is_some_and(|cell| cell.unit.is_some() && !cell.goes_on);
    if is_value {
        found.covered.extend(text.iter().copied());
        read_cell(&column.requiring(), &flow, None, around, found);
        return;
    }
    let own = Around {
        subject: headed(words.text(), &around.subject),
        ..around.clone()
    };
    *subject = own.subject.clone();
    read_text(source, text, &own, subject, found);
    *subject = around.subject.clone();
}

/// Reads words beside which stands when they hold. `lead` is what leads to them, if it isn't the item's title.
pub(super) fn read_case(
    source: &str,
    case: &[Span],
    text: &[Span],
    lead: Option<&str>,
    around: &Around,
    subject: &mut Subject,
    found: &mut Yield,
) {
    let words = Flow::of(source, case.iter().copied());
    // `1 hr ........ 3 in.`
    let said = words.text().split(" ..").next().unwrap_or_default().trim();
    let said = said
        .trim_end_matches([':', '=', ',', ';', '-', '–', '—', ' '])
        .trim_start_matches('(')
        .trim_end_matches(')')
        .to_owned();
    let joints = || {
        let sentence = Sentence::new(&words, 0..words.text().len());
        heads_joints(&sentence)
            .or_else(|| is_case_of_joints(&sentence))
            .map(|own| own.expr)
    };
    let condition = Condition {
        also: Vec::new(),
        expr: rating_of(said.trim_start_matches("for ").trim_end_matches('.'))
            .or_else(joints)
            .unwrap_or_else(|| Expr::Words(said.clone())),
        words: said,
        span: case.iter().copied().reduce(Span::join).unwrap_or_default(),
    };
    found.covered.extend(case.iter().copied());
    let carried = around.carried.map(|carried| carried.relation);
    let label = heading(lead.unwrap_or(&around.subject.title)).led_by(carried);
    let label = Some(&label).filter(|label| label.measures());
    let Some(lead) = lead else {
        return read_for_rating(source, text, &condition, label, around, subject, found);
    };
    let own = Around {
        subject: headed(lead, &around.subject),
        ..around.clone()
    };
    let mut subject = own.subject.clone();
    read_for_rating(source, text, &condition, label, &own, &mut subject, found);
}

/// Reads a cell under a rating: a value is of what the item's title names, words are words of the item, and all of it holds for the rating.
fn read_for_rating(
    source: &str,
    text: &[Span],
    condition: &Condition,
    label: Option<&Heading>,
    around: &Around,
    subject: &mut Subject,
    found: &mut Yield,
) {
    let flow = Flow::of(source, text.iter().copied()).with_usual_units(around.usual_units);
    // `24 in. o.c.` says itself what it measures.
    let says_what = ["o.c", "oc", "c/c", "apart", "cent"]
        .iter()
        .any(|word| flow.lower().contains(word));
    let of_value = label.filter(|label| {
        let cell = cell(flow.text(), label.unit, label.second_unit);
        !says_what && cell.is_some_and(|cell| cell.unit.is_some() && !cell.goes_on)
    });
    if let Some(label) = of_value {
        found.covered.extend(text.iter().copied());
        read_cell(&label.requiring(), &flow, Some(condition), around, found);
        return;
    }
    let mut own = Yield::default();
    read_text(source, text, around, subject, &mut own);
    let some = |draft: &&mut Draft| !holds_always(draft.span.of(source));
    for draft in own.clauses.iter_mut().filter(some) {
        let held = draft.condition.take();
        draft.condition = Some(match held {
            Some(held) => condition.clone().and(held),
            None => condition.clone(),
        });
    }
    found.append(own);
}

/// What words under a heading are about: the part that it names before what the item is about.
fn headed(heading: &str, around: &Subject) -> Subject {
    let mut titles: Vec<_> = components_in(heading)
        .into_iter()
        .filter(|(_, weak, _)| !weak)
        .map(|(component, ..)| (component, 0))
        .collect();
    titles.extend(
        around
            .titles
            .iter()
            .map(|(component, depth)| (*component, depth + 1)),
    );
    Subject {
        titles,
        title: around.title.clone(),
        parts: around.parts.clone(),
        before: None,
    }
}
