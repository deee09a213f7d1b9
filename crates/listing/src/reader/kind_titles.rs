//! Titles that name the kind of joint an item is of before the thing: "System A packing" beside "System B filler".

use crate::model::{Condition, Expr, Span};
use crate::outline::OutlineItem;

/// The kind of joint that an item's title begins with, where that of another begins with another of the sort: "System A packing", "System B filler".
pub(super) fn of_kind(text: &str, items: &[OutlineItem], index: usize) -> Option<Condition> {
    let own = items.get(index)?;
    let (sort, label) = kind_of(&own.title)?;
    let mut others = items.iter().filter_map(|item| kind_of(&item.title));
    let another = others.any(|(other, its)| other.eq_ignore_ascii_case(sort) && its != label);
    let words = format!("{sort} {label}");
    let at = own.heading.of(text).find(&words).filter(|_| another)?;
    let start = own.heading.start() + at;
    Some(Condition {
        also: Vec::new(),
        span: Span::new(start, start + words.len()),
        expr: Expr::Words(words.clone()),
        words,
    })
}

/// The sort and the label that a title begins with before the name of a thing.
fn kind_of(title: &str) -> Option<(&str, &str)> {
    const SORTS: &[&str] = &["system", "method", "variant", "version"];
    let mut words = title.split(' ');
    let (sort, label) = (words.next()?, words.next()?);
    let known = SORTS.iter().any(|own| own.eq_ignore_ascii_case(sort));
    let plain = label.len() == 1
        && label
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit());
    let named = words
        .next()
        .is_some_and(|word| word.starts_with(char::is_alphabetic));
    (known && plain && named).then_some((sort, label))
}
