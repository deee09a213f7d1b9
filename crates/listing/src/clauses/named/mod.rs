//! Lines of makers and their products.
//!
//! Read are: `MAKER NAME -- Product, Product`, the maker in capitals or ending as firms do; `[1] Maker Co: Product. Maker Ltd:
//! Product`; `Packing: Maker Company, "Product"; Maker Ltd, "Product"`. A name with no sign of a firm or quotation is not taken for
//! one: the sentence stays prose.

mod makers;

pub(super) use self::makers::split_list;
use self::makers::{add, ends_as_firm, is_maker};
use super::Around;
use super::draft::{Draft, Yield, local_property};
use crate::model::{Confidence, ProductName, Requirement, Span};
use crate::naming::Subject;
use crate::phrase::{TokenKind, lex};
use measure::Unit;

/// Dashes between a maker and its products.
const DASHES: [&str; 4] = [" -- ", " — ", " – ", " - "];

/// The products that a stretch of text lists, when it is a line of makers and nothing else.
pub(super) fn products(words: &str) -> Option<Vec<ProductName>> {
    // A maker stands before a dash, a colon or a comma, and has a capital.
    let may_name = words.contains(['-', '–', '—', ':', ',']) && words.contains(char::is_uppercase);
    if !may_name {
        return None;
    }
    if restricts(words) {
        return None;
    }
    let body = strip_label(words);
    let entries = by_dash(body)
        .or_else(|| by_colon(body))
        .or_else(|| by_comma(body))?;
    let measured = entries.iter().any(|name| holds_measure(&name.product));
    let kind = entries.iter().any(|name| is_kind(&name.product));
    (!entries.is_empty() && !measured && !kind).then_some(entries)
}

/// Whether a name is that of one of several kinds of a thing, as in a heading: `OPTION P`, `METHOD 2`.
fn is_kind(name: &str) -> bool {
    const KINDS: [&str; 5] = ["option", "variant", "alternate", "alternative", "method"];
    const LONGEST: usize = 2;
    name.trim().split_once(' ').is_some_and(|(kind, label)| {
        KINDS.contains(&kind.to_lowercase().as_str())
            && (1..=LONGEST).contains(&label.len())
            && label
                .chars()
                .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit())
    })
}

/// Whether words hold a number with a unit, as no product's name does: `6 PCF`, `30%`.
fn holds_measure(words: &str) -> bool {
    let lower = words.to_ascii_lowercase();
    lex(words, &lower).iter().any(|token| {
        matches!(&token.kind, TokenKind::Quantity(stated) if !matches!(stated.unit, Unit::Minute | Unit::Hour | Unit::Celsius | Unit::Fahrenheit))
            || token.is_sign('%')
    })
}

/// Whether words say more of a list than its names: what is left out, what else may stand for it. A list taken without them would
/// name a product that isn't listed.
fn restricts(words: &str) -> bool {
    const RESTRICTIONS: &[&str] = &[
        "except",
        "excepting",
        "excluding",
        "other",
        "not",
        "no",
        "all",
        "any",
        "equal",
        "equivalent",
        "similar",
        "only",
        "without",
        "unless",
        "discontinued",
        "min",
        "minimum",
        "max",
        "maximum",
        "deep",
        "thick",
        "wide",
        "flush",
    ];
    words.split(|c: char| !c.is_alphanumeric()).any(|word| {
        RESTRICTIONS
            .iter()
            .any(|own| own.eq_ignore_ascii_case(word))
    })
}

/// The lines of a paragraph that is a list of makers, a maker each with the lines it wraps over; none when its first line names no
/// maker. Where a line begins says where a maker begins better than its capitals do.
pub(super) fn entries(source: &str, pieces: &[Span]) -> Option<Vec<Vec<Span>>> {
    let begins = |piece: &Span| {
        let words = strip_label(piece.of(source));
        let dash = DASHES.iter().filter_map(|dash| words.find(dash)).min();
        dash.and_then(|at| words.get(..at))
            .is_some_and(|maker| is_maker(maker.trim()))
    };
    if !pieces.first().is_some_and(begins) {
        return None;
    }
    let mut entries: Vec<Vec<Span>> = Vec::new();
    for piece in pieces {
        match entries.last_mut().filter(|_| !begins(piece)) {
            Some(entry) => entry.push(*piece),
            None => entries.push(vec![*piece]),
        }
    }
    Some(entries)
}

/// Drops a footnote mark or a leading "Packing:" in the case of quoted names.
fn strip_label(words: &str) -> &str {
    let words = words.trim().trim_start_matches(['*', '†']).trim_start();
    if words.starts_with('[')
        && let Some(end) = words.find(']')
    {
        return words.get(end + 1..).unwrap_or_default().trim();
    }
    words
}

/// `MAKER -- Product, Product MAKER TWO -- Product`.
fn by_dash(words: &str) -> Option<Vec<ProductName>> {
    let (at, dash) = DASHES
        .iter()
        .filter_map(|dash| words.find(dash).map(|at| (at, *dash)))
        .min()?;
    let maker = words.get(..at)?.trim();
    if !is_maker(maker) {
        return None;
    }
    let mut names = Vec::new();
    let mut maker = maker.to_owned();
    let mut rest = words.get(at + dash.len()..)?;
    // The next maker stands in capitals before the next dash of the same kind.
    while let Some(next) = rest.find(dash) {
        let before = rest.get(..next)?;
        let Some(split) = capitals_tail(before) else {
            break;
        };
        add(&mut names, &maker, before.get(..split)?);
        before
            .get(split..)?
            .trim()
            .trim_start_matches([';', ','])
            .trim()
            .clone_into(&mut maker);
        rest = rest.get(next + dash.len()..)?;
    }
    add(&mut names, &maker, rest);
    Some(names)
}

/// Where a run of capital words at the end of a text begins, when there is one that can be a maker.
fn capitals_tail(text: &str) -> Option<usize> {
    let mut start = None;
    let mut at = text.len();
    for word in text.rsplit(' ') {
        at = at.checked_sub(word.len())?;
        let letters = word.chars().filter(|c| c.is_alphabetic());
        let capital = letters.clone().count() > 0
            && letters.clone().all(char::is_uppercase)
            && !word.ends_with([',', ';'])
            || word == "&";
        if capital {
            start = Some(at);
        } else {
            break;
        }
        at = at.saturating_sub(1);
    }
    let start = start?;
    is_maker(text.get(start..)?.trim()).then_some(start)
}

/// `Maker Co: Product. Maker Two Ltd: Product, Product`, each maker ending as firms do.
fn by_colon(words: &str) -> Option<Vec<ProductName>> {
    let (maker, rest) = words.split_once(": ")?;
    if !ends_as_firm(maker) {
        return None;
    }
    let mut names = Vec::new();
    add(&mut names, maker, rest);
    Some(names)
}

/// `Maker Company, "Product"; Maker Ltd, "Product" or "Product"`, and `Maker GmbH, Product and Product`.
fn by_comma(words: &str) -> Option<Vec<ProductName>> {
    let body = match words.split_once(": ") {
        Some((label, rest)) if label.split_whitespace().count() <= 4 && !ends_as_firm(label) => {
            rest
        }
        _ => words,
    };
    let mut names = Vec::new();
    for entry in body.split(';') {
        let (maker, products) = entry.split_once(", ")?;
        if !ends_as_firm(maker) || maker.split_whitespace().count() > 6 {
            return None;
        }
        add(&mut names, maker, products);
    }
    Some(names)
}

/// Adds the clause that asks for one of the named products, or more names to the clause before it.
pub(super) fn push(
    span: Span,
    names: Vec<ProductName>,
    around: &Around,
    subject: &Subject,
    found: &mut Yield,
) {
    found.covered.push(span);
    let titled = || subject.titles.iter().map(|(component, _)| *component);
    let component = titled()
        .chain(subject.before)
        .find(|component| component.property("product").is_some())
        .or_else(|| titled().next());
    let property = component
        .and_then(|component| component.property("product"))
        .map_or_else(
            || local_property(&around.item, "product"),
            |property| property.name.clone(),
        );
    if let Some(last) = found.clauses.last_mut()
        && let Requirement::Named { names: held } = &mut last.requirement
        && last.property == property
    {
        held.extend(names);
        last.span = last.span.join(span);
        return;
    }
    found.clauses.push(Draft {
        span,
        property,
        component: component.map_or_else(
            || subject.title.to_lowercase(),
            |component| component.title.to_lowercase(),
        ),
        attribute: "product".to_owned(),
        requirement: Requirement::Named { names },
        condition: None,
        options: around.options.clone(),
        read_by: vec!["named products".to_owned()],
        confidence: Confidence::ByRule,
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(words: &str, expected: &[(&str, &str)]) {
        let found = products(words).unwrap_or_default();
        let found: Vec<_> = found
            .iter()
            .map(|name| (name.maker.as_str(), name.product.as_str()))
            .collect();
        assert_eq!(found, expected, "{words}");
    }

    #[test]
    fn lines_of_makers() {
        check(
            "QUORRAL FIBRE CO -- Quorwool 40",
            &[("QUORRAL FIBRE CO", "Quorwool 40")],
        );
        check(
            "QUORRAL FIBRE CO -- Quorwool 40 TENNIRE MINERAL PRODUCTS INC -- Tennibatt FS, Tennibatt FS-Plus",
            &[
                ("QUORRAL FIBRE CO", "Quorwool 40"),
                ("TENNIRE MINERAL PRODUCTS INC", "Tennibatt FS"),
                ("TENNIRE MINERAL PRODUCTS INC", "Tennibatt FS-Plus"),
            ],
        );
        check(
            "[1] Quorral Fibre Co: Quorwool 64 Slab.",
            &[("Quorral Fibre Co", "Quorwool 64 Slab")],
        );
        check(
            "Packing: Quorral Fibre Company, \"Quor 6\"; Tennire Mineral Products, \"Tenni FS\".",
            &[
                ("Quorral Fibre Company", "Quor 6"),
                ("Tennire Mineral Products", "Tenni FS"),
            ],
        );
        check(
            "Sealant: Vosk Dichtstoffe GmbH, Vos 30 and Vos 30 grau.",
            &[
                ("Vosk Dichtstoffe GmbH", "Vos 30"),
                ("Vosk Dichtstoffe GmbH", "Vos 30 grau"),
            ],
        );
        check("QUORRAL FIBRE CO -- all wools except Quorwool 30", &[]);
        check("QUORRAL FIBRE CO -- Quorwool 40 or equal", &[]);
        check("Studs cut 1/2 in. less - as required by the wall.", &[]);
        check("The joint shall be dry, sound and clean.", &[]);
    }
}
