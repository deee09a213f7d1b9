//! Makers and their products.
//!
//! A maker stands beside its products in many ways: `MAKER NAME -- Product, Product`, `[1] Maker Co: Product`, `Packing: Maker Company, "Product"`,
//! `Product (Maker)`, `"Product" of the Maker`, or in a cell before them. A maker's name is in capitals, ends as firms' names do, or has a coined word;
//! a product's has a coined word, a code or a number, or is quoted. Where it isn't sure that all of a list are names, its words are left for a person.
//!
//! | what | where |
//! |---|---|
//! | one entry, whatever joins its maker and its products | `entry`, `beside` |
//! | where one entry ends and the next begins | `parting` |
//! | which words can be a maker, which a product | `firm`, `makers`, `name` |
//! | which lines of a paragraph are entries | `lines` |
//! | what the words before a list make of it | `leads`, `cased` |
//! | names with a number in brackets behind them | `noted` |
//! | what refuses a list, leaves some of it out, or limits a name | `limits` |
//! | the part of an item that a list stands under | `headed` |
//! | which lists of an item are in doubt, by what stands beside them | `settled` |
//! | lists at the end, each row with its item in front | `keyed` |
//! | names in a sentence that says more | `within` |
//! | the clauses that ask for what was found | `push` |
//! | names without a maker, by what stands beside them | `used` |
//! | which words are coined | `ordinary` |
//! | how a name is written elsewhere | `elsewhere` |

mod beside;
mod cased;
mod elsewhere;
mod entry;
mod firm;
mod headed;
mod keyed;
mod leads;
mod limits;
mod lines;
mod makers;
mod name;
mod noted;
mod ordinary;
mod parting;
mod push;
mod settled;
mod used;
mod within;

pub(super) use self::entry::Listed;
pub(crate) use self::keyed::{Key, KeyedRow, keyed_rows};
pub(super) use self::lines::{Run, stand_in_lines};
pub(super) use self::makers::split_list;
pub(crate) use self::ordinary::Ordinary;
pub(super) use self::push::{push, push_list};
pub(super) use self::settled::settle;

use self::entry::Reader;
use self::limits::restricts;
use self::push::{push_listed, without_all};
use super::Around;
use super::draft::Yield;
use crate::model::{Condition, Confidence, Expr, ProductName, Requirement, Span};
use crate::naming::Subject;

/// The products that a stretch of text lists, when it is entries of makers and nothing else.
pub(super) fn listed(words: &str, ordinary: &Ordinary) -> Option<Vec<Listed>> {
    let may_name =
        words.contains(['-', '–', '—', ':', ',', '"', '“', '(']) || words.contains(" by ");
    if !may_name || !words.contains(char::is_uppercase) {
        return None;
    }
    let body = lines::without_marks(words);
    if restricts(&without_all(body)) {
        return None;
    }
    Reader { ordinary }.all(body)
}

/// What two fields of a sheet list, one of which names the maker and one the product.
pub(super) fn fields(one: &str, next: &str, ordinary: &Ordinary) -> Option<Vec<Listed>> {
    lines::of_fields(one, next, Reader { ordinary }).map(|listed| vec![listed])
}

/// The runs of a paragraph's lines that are entries of makers, and those that are not; none where it holds no entry.
pub(super) fn runs(source: &str, pieces: &[Span], ordinary: &Ordinary) -> Option<Vec<Run>> {
    lines::runs(source, pieces, Reader { ordinary })
}

/// Adds clauses for the products that a sentence names besides what else it says.
pub(super) fn push_within(
    span: Span,
    words: &str,
    around: &Around,
    subject: &Subject,
    found: &mut Yield,
) {
    let may_name = words.contains(['"', '“', '„', '«', '(', '\'', '’'])
        || words.contains(" by ")
        || words.contains(" BY ")
        || words.contains(", of ")
        || words.contains(" from ");
    if around.denied {
        return;
    }
    let reader = Reader {
        ordinary: &around.ordinary,
    };
    let mut listed = if may_name {
        within::within(words, reader)
    } else {
        Vec::new()
    };
    if listed.is_empty() {
        let of_part = subject
            .titles
            .iter()
            .any(|(part, _)| part.property("product").is_some());
        listed = used::used(words, reader, of_part);
        listed.retain(|own| !own.names.iter().all(|name| is_named(name, found)));
    }
    if listed.is_empty() {
        if let Some(noted) = noted::noted(words, reader) {
            push_listed(span, noted, around, subject, found);
        }
        return;
    }
    let first = found.clauses.len();
    push_listed(span, listed, around, subject, found);
    if within::is_conditional(words) {
        let condition = Condition {
            also: Vec::new(),
            words: words.to_owned(),
            span,
            expr: Expr::Words(words.to_owned()),
        };
        for draft in found.clauses.iter_mut().skip(first) {
            draft.under(&condition, None);
        }
    }
}

/// Whether an item names a product already.
fn is_named(name: &ProductName, found: &Yield) -> bool {
    found.clauses.iter().any(|draft| match &draft.requirement {
        Requirement::Named { names } => names.iter().any(|held| held.product == name.product),
        _ => false,
    })
}

/// The clauses of a row of a list of products.
pub(crate) fn read_row(row: &KeyedRow, around: &Around, found: &mut Yield) {
    let mut listed = row.listed.clone();
    if let Key::Part(label) = &row.key {
        for entry in &mut listed {
            entry.label = Some(label.clone());
        }
    }
    push_listed(row.span, listed, around, &around.subject, found);
    if row.in_doubt {
        for draft in &mut found.clauses {
            if matches!(draft.requirement, Requirement::Named { .. }) {
                draft.confidence = Confidence::WithDoubt;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(words: &str, expected: &[(&str, &str)]) {
        let found = listed(words, &Ordinary::default()).unwrap_or_default();
        let found: Vec<_> = found
            .iter()
            .flat_map(|entry| &entry.names)
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
