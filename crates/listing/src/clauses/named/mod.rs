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
//! | the part of an item that a list stands under | `headed` |
//! | which lists of an item are in doubt, by what stands beside them | `settled` |
//! | lists at the end, each row with its item in front | `keyed` |
//! | names in a sentence that says more | `within` |
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
mod lines;
mod makers;
mod name;
mod noted;
mod ordinary;
mod parting;
mod settled;
mod used;
mod within;

pub(super) use self::entry::Listed;
use self::entry::Reader;
pub(crate) use self::keyed::{Key, KeyedRow, keyed_rows};
pub(super) use self::lines::{Run, stand_in_lines};
pub(super) use self::makers::split_list;
pub(crate) use self::ordinary::Ordinary;
pub(super) use self::settled::settle;
use super::Around;
use super::draft::{Draft, ProductList, Yield, local_property};
use crate::model::{Condition, Confidence, Expr, ProductName, Requirement, Span};
use crate::naming::{Subject, components_in};
use crate::phrase::{TokenKind, lex};
use measure::Unit;

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

/// Whether words hold a number with a unit, as no product's name does: `6 PCF`, `30%`.
fn holds_measure(words: &str) -> bool {
    // `Compound No. 4` numbers a kind, and `No. 25 MSG` is a thickness.
    let names = ["MSG", "ga", "GA", "gauge", "GSG", "in"];
    let behind = |sign: &str| words.split_once(sign).map(|(_, behind)| behind);
    let numbers = behind("No. ")
        .or_else(|| behind("NO. "))
        .is_some_and(|behind| {
            !behind
                .split(|c: char| !c.is_alphanumeric())
                .any(|word| names.contains(&word))
        });
    let bare = words.replace("No. ", "").replace("NO. ", "");
    let words = if numbers { bare.as_str() } else { words };
    let lower = words.to_ascii_lowercase();
    lex(words, &lower).iter().any(|token| {
        matches!(&token.kind, TokenKind::Quantity(stated) if !matches!(stated.unit, Unit::Minute | Unit::Hour | Unit::Celsius | Unit::Fahrenheit))
            || token.is_sign('%')
    })
}

/// A list without the word that makes its maker that of each name: `X, Y or Z, all of the Maker`.
fn without_all(words: &str) -> String {
    [", all of ", ", all by ", ", all made by "]
        .iter()
        .fold(words.to_owned(), |words, own| words.replace(own, ", "))
}

/// Words that refuse what they stand beside: `Excluded products: ...`
const REFUSING: &[&str] = &[
    "excluded",
    "withdrawn",
    "rejected",
    "refused",
    "prohibited",
    "forbidden",
    "banned",
    "delisted",
    "superseded",
    "obsolete",
    "unacceptable",
    "unsuitable",
    "unapproved",
    "unlisted",
    "disallowed",
    "failed",
    "never",
];

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
        "series",
        "min",
        "minimum",
        "max",
        "maximum",
        "deep",
        "thick",
        "wide",
        "flush",
    ];
    // What stands in brackets limits the name before it alone, unless it takes it from the list.
    let (words, notes) = name::without_brackets(words);
    // A limit with a number is read where it stands.
    if notes.iter().any(|note| denies_in_brackets(note))
        || notes.iter().any(|note| holds_measure(note))
    {
        return true;
    }
    let numbered = words.replace("No. ", "").replace("NO. ", "");
    let mut single = numbered.split(|c: char| !c.is_alphanumeric()).peekable();
    while let Some(word) = single.next() {
        // `Series SR` is a name, and all of a series is more than one.
        let is_code =
            |next: &&str| (1..=3).contains(&next.len()) && next.chars().all(char::is_uppercase);
        if word == "Series" && single.peek().is_some_and(is_code) {
            continue;
        }
        if RESTRICTIONS
            .iter()
            .chain(REFUSING)
            .any(|own| own.eq_ignore_ascii_case(word))
        {
            return true;
        }
    }
    false
}

/// Whether what stands in brackets behind a name takes it from its list.
fn denies_in_brackets(note: &str) -> bool {
    const DENYING: &[&str] = &[
        "not",
        "no",
        "none",
        "except",
        "excepting",
        "excluding",
        "discontinued",
        "withdrawn",
        "never",
        "other",
    ];
    note.split(|c: char| !c.is_alphanumeric())
        .any(|word| DENYING.contains(&word.to_lowercase().as_str()))
}

/// Whether what stands in brackets behind a name says more than its colour or how it is put on.
fn says_limit(words: &str) -> bool {
    const HARMLESS: &[&str] = &[
        "white",
        "grey",
        "gray",
        "red",
        "black",
        "green",
        "blue",
        "spray",
        "sprayed",
        "brush",
        "brushed",
        "trowel",
        "gun",
        "grade",
        "kind",
        "pail",
        "pails",
        "tub",
        "tubs",
        "cartridge",
        "cartridges",
        "sausage",
        "sausages",
        "sealant",
        "coating",
        "wool",
        "batt",
        "slab",
        "adhesive",
        "or",
        "and",
        "the",
        "mark",
    ];
    words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .any(|word| !HARMLESS.contains(&word.to_lowercase().as_str()))
}

/// Adds the clauses of a list of products with the words before it: where they deny it, limit it or leave it open, its words are left for a person.
pub(super) fn push_list(
    source: &str,
    span: Span,
    listed: Vec<Listed>,
    around: &Around,
    subject: &Subject,
    found: &mut Yield,
) {
    let lead = leads::lead(source, span, around, found);
    let part = match &lead {
        leads::Lead::Part(part) => Some(part.clone()),
        _ => None,
    };
    let refused = match &lead {
        leads::Lead::Unclear(words) => Some(*words),
        _ => around.denied.then_some(span),
    };
    let case = match lead {
        leads::Lead::Unclear(_) if around.denied => None,
        // It goes on with the list before.
        leads::Lead::Unclear(whole) if whole == span => {
            found.lists.last().and_then(|list| list.case)
        }
        leads::Lead::Unclear(whole) => {
            cased::case_of(source, Span::new(whole.start(), span.start()))
        }
        _ => None,
    };
    found.lists.push(ProductList {
        span,
        is_taken: refused.is_none(),
        part: part.clone(),
        case,
    });
    if let Some(whole) = refused {
        found.covered.push(whole);
        let words = whole.of(source);
        found.clauses.push(Draft {
            component: subject.title.to_lowercase(),
            attribute: "product".to_owned(),
            ..limited(whole, words, around)
        });
        if let Some(case) = case {
            push_cased(source, span, listed, case, around, subject, found);
        }
        return;
    }
    let own = part.as_deref().and_then(labelled);
    push_listed(span, listed, around, own.as_ref().unwrap_or(subject), found);
}

/// Adds the clauses of a list under the words that make a case of it, in doubt beside these words.
fn push_cased(
    source: &str,
    span: Span,
    listed: Vec<Listed>,
    case: Span,
    around: &Around,
    subject: &Subject,
    found: &mut Yield,
) {
    let words = case.of(source).to_owned();
    let condition = Condition {
        also: Vec::new(),
        words: words.clone(),
        span: case,
        expr: Expr::Words(words),
    };
    // What a list behind another is of isn't known to be what the item is about.
    let unknown = Subject {
        title: subject.title.clone(),
        ..Subject::default()
    };
    let subject = if found.lists.len() > 1 {
        &unknown
    } else {
        subject
    };
    let labelled = listed.iter().any(|entry| entry.label.is_some());
    let mut own = Yield::default();
    push_listed(span, listed, around, subject, &mut own);
    for mut draft in own.clauses {
        if let Requirement::Named { names } = &draft.requirement {
            draft.confidence = Confidence::WithDoubt;
            // A list that goes on names more of which one will do.
            let held = found.clauses.iter_mut().rev().find_map(|held| {
                let same = held.condition.as_ref().is_some_and(|own| own.span == case);
                match &mut held.requirement {
                    Requirement::Named { names } if same && !labelled => Some(names),
                    _ => None,
                }
            });
            if let Some(held) = held {
                held.extend(names.iter().cloned());
                continue;
            }
        }
        draft.under(&condition, None);
        found.clauses.push(draft);
    }
}

/// Adds the clauses that ask for the named products, those of a label for the part that it names.
fn push_listed(
    span: Span,
    listed: Vec<Listed>,
    around: &Around,
    subject: &Subject,
    found: &mut Yield,
) {
    found.covered.push(span);
    let mut held: Option<String> = None;
    for mut entry in listed {
        // An entry without a label goes on with that of the one before.
        entry.label = entry.label.or_else(|| held.take());
        held.clone_from(&entry.label);
        let own = entry.label.as_deref().and_then(labelled);
        let subject = own.as_ref().unwrap_or(subject);
        let apart = |label: &String| own.is_none() || tells_apart(label);
        match entry.label.as_ref().filter(|label| apart(label)) {
            Some(label) => push_of(span, entry.names, around, subject, Some(label), found),
            None => push(span, entry.names, around, subject, found),
        }
        if entry.by_key
            && let Some(last) = found.clauses.last_mut()
        {
            last.confidence = Confidence::WithDoubt;
        }
        for limit in entry.limits {
            if let Some(last) = found.clauses.last_mut() {
                last.confidence = Confidence::WithDoubt;
            }
            found.clauses.push(limited(span, &limit, around));
        }
    }
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

/// Whether a label tells one of several parts of a kind from the others: "Sealant A", "Wool 2".
fn tells_apart(label: &str) -> bool {
    let last = label.rsplit(' ').next().unwrap_or_default();
    label.contains(' ') && (last.len() == 1 || last.chars().all(|c| c.is_ascii_digit()))
}

/// What is said of a product besides its name, for a person to judge: a name that is limited is never met by itself.
fn limited(span: Span, limit: &str, around: &Around) -> Draft {
    Draft {
        span,
        property: local_property(&around.item, limit),
        component: "product".to_owned(),
        attribute: limit.to_lowercase(),
        requirement: Requirement::Prose,
        condition: None,
        options: around.options.clone(),
        read_by: vec!["left as words".to_owned()],
        confidence: Confidence::Prose,
    }
}

/// The part that a label names.
fn labelled(label: &str) -> Option<Subject> {
    let titles: Vec<_> = components_in(label)
        .into_iter()
        .map(|(component, ..)| (component, 0))
        .collect();
    (!titles.is_empty()).then(|| Subject {
        titles,
        title: label.to_owned(),
        ..Subject::default()
    })
}

/// Adds the clause that asks for one of the named products, or more names to the clause before it.
pub(super) fn push(
    span: Span,
    names: Vec<ProductName>,
    around: &Around,
    subject: &Subject,
    found: &mut Yield,
) {
    push_of(span, names, around, subject, None, found);
}

/// The same for one of several parts of a kind, which its label tells from the others.
fn push_of(
    span: Span,
    names: Vec<ProductName>,
    around: &Around,
    subject: &Subject,
    label: Option<&str>,
    found: &mut Yield,
) {
    found.covered.push(span);
    let titled = || subject.titles.iter().map(|(component, _)| *component);
    let component = titled()
        .chain(subject.before)
        .find(|component| component.property("product").is_some())
        .or_else(|| titled().next());
    let property = match (component.and_then(|own| own.property("product")), label) {
        (Some(property), None) => property.name.clone(),
        (_, label) => local_property(
            &around.item,
            &format!("{} product", label.unwrap_or_default()),
        ),
    };
    let held = found.clauses.iter_mut().rev();
    let mut held = held.skip_while(|held| is_limit(held));
    if let Some(last) = held.next()
        && let Requirement::Named { names: held } = &mut last.requirement
        && last.property == property
        && last.options == around.options
    {
        held.extend(names);
        last.span = last.span.join(span);
        return;
    }
    // A list that doesn't follow another of the same part may be of another of its kind: it isn't known to be of the part.
    let again = found
        .clauses
        .iter()
        .any(|held| held.property == property && held.options == around.options);
    found.clauses.push(Draft {
        span,
        property: if again {
            local_property(&around.item, &format!("{} other product", subject.title))
        } else {
            property
        },
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

/// Whether a clause only says more of a product that the clause before it names.
fn is_limit(draft: &Draft) -> bool {
    draft.component == "product" && draft.requirement == Requirement::Prose
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
