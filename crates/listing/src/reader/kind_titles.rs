//! Titles that name the kind of joint an item is of: before the thing, "System A packing" beside "System B filler", or with what is said of the kind, "Seal type S
//! (static joints), EI 120" beside "Seal type M (moving joints), EI 60".

use crate::conditions::OF_WHAT;
use crate::model::{Condition, Expr, Span};
use crate::outline::{OutlineItem, Paragraph};

/// The kind of joint that an item's title begins with, where that of another begins with another of the sort: "System A packing", "System B filler".
pub(super) fn of_kind(text: &str, items: &[OutlineItem], index: usize) -> Option<Condition> {
    let own = items.get(index)?;
    let (line, head) = head(text, own);
    let (sort, label) = kind_of(head)?;
    let mut others = items
        .iter()
        .filter_map(|item| kind_of(self::head(text, item).1));
    let another = others.any(|(other, its)| other.eq_ignore_ascii_case(sort) && its != label);
    let words = format!("{sort} {label}");
    let at = line.of(text).find(&words).filter(|_| another)?;
    let start = line.start() + at;
    Some(Condition {
        also: Vec::new(),
        span: Span::new(start, start + words.len()),
        expr: Expr::Words(words.clone()),
        words,
    })
}

/// The line of an item's title, and that; of one without the line that it begins with, which is no title only for its numbers: "Seal type M (moving joints, ±25 %)".
fn head<'t>(text: &'t str, item: &'t OutlineItem) -> (Span, &'t str) {
    match item.paragraphs.first() {
        Some(Paragraph::Text(pieces)) if item.title.is_empty() => {
            let line = pieces.first().copied().unwrap_or(item.heading);
            (line, line.of(text).trim())
        }
        _ => (item.heading, &item.title),
    }
}

/// The sort and the label that a title begins with.
fn kind_of(title: &str) -> Option<(&str, &str)> {
    kind_before_thing(title).or_else(|| kind_alone(title))
}

/// The sort and the label before the name of a thing: of `System A packing`.
fn kind_before_thing(title: &str) -> Option<(&str, &str)> {
    const SORTS: &[&str] = &["system", "method", "variant", "version"];
    let mut words = title.split(' ');
    let (sort, label) = (words.next()?, words.next()?);
    let known = SORTS.iter().any(|own| own.eq_ignore_ascii_case(sort));
    let named = words
        .next()
        .is_some_and(|word| word.starts_with(char::is_alphabetic));
    (known && is_label(label) && named).then_some((sort, label))
}

/// The sort and the label of a title that says what the kind is behind them, in brackets or behind a comma: of `Seal type S (static joints), EI 120`.
fn kind_alone(title: &str) -> Option<(&str, &str)> {
    const SORTS: &[&str] = &["type", "system", "variant", "version"];
    let (of_what, rest) = title.split_once(' ')?;
    let (sort, rest) = rest.split_once(' ')?;
    let end = rest.find([' ', ',', ':']).unwrap_or(rest.len());
    let (label, behind) = rest.split_at_checked(end)?;
    // A joint between two walls may have one of each type.
    let wall = of_what.eq_ignore_ascii_case("wall") || of_what.eq_ignore_ascii_case("floor");
    let known = !wall
        && OF_WHAT.iter().any(|own| own.eq_ignore_ascii_case(of_what))
        && SORTS.iter().any(|own| own.eq_ignore_ascii_case(sort));
    let says = behind.starts_with([',', ':']) || behind.starts_with(" (");
    let sort = title.get(..of_what.len() + 1 + sort.len())?;
    (known && is_label(label) && says).then_some((sort, label))
}

/// Whether a word is a capital letter or a digit.
fn is_label(word: &str) -> bool {
    word.len() == 1
        && word
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit())
}
