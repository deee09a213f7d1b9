//! The clauses that ask for named products: of a list, of a case, of one of several parts.

use super::super::Around;
use super::super::draft::{Draft, ProductList, Yield, local_property};
use super::entry::Listed;
use super::limits::{is_limit, limited};
use super::{cased, leads};
use crate::model::{Condition, Confidence, Expr, ProductName, Requirement, Span};
use crate::naming::{Subject, components_in};

/// A list without the word that makes its maker that of each name: `X, Y or Z, all of the Maker`.
pub(super) fn without_all(words: &str) -> String {
    [", all of ", ", all by ", ", all made by "]
        .iter()
        .fold(words.to_owned(), |words, own| words.replace(own, ", "))
}

/// Adds the clauses of a list of products with the words before it: where they deny it, limit it or leave it open, its words are left for a person.
pub(in crate::clauses) fn push_list(
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
pub(super) fn push_listed(
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

/// Whether a label tells one of several parts of a kind from the others: "Sealant A", "Wool 2".
fn tells_apart(label: &str) -> bool {
    let last = label.rsplit(' ').next().unwrap_or_default();
    label.contains(' ') && (last.len() == 1 || last.chars().all(|c| c.is_ascii_digit()))
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
pub(in crate::clauses) fn push(
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
