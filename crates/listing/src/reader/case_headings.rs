//! The lines that tell for which case the next parts of a list are. One ends what the one before it said; "in all cases" ends it and says nothing; and
//! "otherwise" is whatever the others are not, for a person to say.

use crate::conditions::heads_list;
use crate::layout::{Flow, UsualUnits};
use crate::model::{Condition, Expr, Span};
use crate::outline::{Outline, OutlineItem};
use crate::rules::Sentence;

/// What a line between the parts of a list says of those behind it.
pub(super) struct CaseHeading {
    /// The case; none where it says that they hold in all.
    pub(super) case: Option<Condition>,
    /// Whether the case that the item leads to its list with ends there; one that nothing stands under yet is said of both.
    pub(super) ends_lead: bool,
}

/// The line that the part of an item stands behind, if any. `lead` is the case that the item itself leads to its list with.
pub(super) fn over(
    text: &str,
    outline: &Outline,
    item: &OutlineItem,
    lead: Option<&Condition>,
    units: UsualUnits,
) -> Option<CaseHeading> {
    let parent = item.parent?;
    let before = |line: &Span| line.start() < item.heading.start();
    let lines = outline.cases.iter().filter(|case| case.item == parent);
    let mut lines: Vec<Span> = lines.map(|case| case.line).filter(before).collect();
    let first = *lines.first()?;
    let own = lines.pop()?;
    let part = |part: &OutlineItem| part.parent == Some(parent);
    let mut parts = outline.items.iter().filter(|item| part(item));
    let ends_lead = parts.any(|part| part.heading.start() < first.start());
    let heading = |case| Some(CaseHeading { case, ends_lead });
    let words = case_of(text, own);
    if holds_in_all(words) {
        return heading(None);
    }
    if is_contrary(words) {
        let lead = lead.filter(|_| ends_lead).into_iter();
        let others = lead.map(|lead| (lead.words.as_str(), lead.span));
        let others = others.chain(lines.iter().map(|line| (case_of(text, *line), *line)));
        let others: Vec<(&str, Span)> = others
            .filter(|(words, _)| !holds_in_all(words) && !is_contrary(words))
            .collect();
        let said: Vec<&str> = others.iter().map(|(words, _)| *words).collect();
        let words = format!("{words} than {}", said.join(", "));
        return heading(Some(Condition {
            also: others.iter().map(|(_, span)| *span).collect(),
            span: own,
            expr: Expr::Words(words.clone()),
            words,
        }));
    }
    let flow = Flow::of(text, [own]).with_usual_units(units);
    let case = heads_list(&Sentence::new(&flow, 0..flow.text().len()));
    let as_words = || Condition {
        also: Vec::new(),
        words: words.to_owned(),
        span: own,
        expr: Expr::Words(words.to_owned()),
    };
    heading(Some(case.unwrap_or_else(as_words)))
}

/// Whether a condition leads to a list: a colon follows its words.
pub(super) fn leads_to_list(text: &str, condition: &Condition) -> bool {
    let behind = text.get(condition.span.end()..).unwrap_or_default();
    behind.trim_start_matches(['.', ' ']).starts_with(':')
}

/// The words of a line without what closes it.
fn case_of(text: &str, line: Span) -> &str {
    line.of(text).trim().trim_end_matches(':').trim_end()
}

fn is_contrary(words: &str) -> bool {
    ["otherwise", "elsewhere", "else"]
        .iter()
        .any(|contrary| words.eq_ignore_ascii_case(contrary))
}

fn holds_in_all(words: &str) -> bool {
    const ALL: &[&str] = &[
        "always",
        "in all cases",
        "in every case",
        "in any case",
        "in either case",
        "in both cases",
        "for all cases",
        "for either case",
        "for both cases",
        "for all",
        "in all joints",
        "for all joints",
        "at all joints",
        "for all walls",
        "in all walls",
        "for all ratings",
    ];
    let lower = words.to_lowercase();
    ALL.contains(&lower.as_str())
}
