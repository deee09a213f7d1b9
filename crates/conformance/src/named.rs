//! A product or a word against those that the listing names.
//!
//! A product is the one listed when its name is the same but for capitals, spaces, quotes and trade marks, and its
//! maker too. A name that is only near is another product. Where the fact gives no maker, nobody can tell: open.

use listing::ProductName;
use site::{Fact, ProductFact, Value};
use vocabulary::Property;

use crate::assessment::{Assessment, Detail};
use crate::verdict::{Reason, Verdict};
use crate::words::{is_dressed, normal, same};

/// A fact against the names of a clause.
pub(crate) fn against<'a>(
    fact: &'a Fact,
    names: &'a [ProductName],
    property: Option<&Property>,
) -> Assessment<'a> {
    let assessed = match &fact.value {
        _ if names.is_empty() => Assessment::open(Reason::ListingUnclear),
        Value::Product(product) => product_among(product, names),
        Value::Text(text)
            if property.is_some_and(|property| !property.text_values().is_empty()) =>
        {
            word_among(text, names, property)
        }
        Value::Text(text) => product_among(
            &ProductFact {
                maker: None,
                product: text.clone(),
            },
            names,
        ),
        Value::Quantity(_) | Value::Flag(_) => Assessment::open(Reason::Unreadable),
    };
    assessed.on(fact)
}

fn product_among<'a>(product: &ProductFact, names: &'a [ProductName]) -> Assessment<'a> {
    let wanted = normal(&product.product);
    if wanted.is_empty() {
        return Assessment::open(Reason::Unreadable);
    }
    let fitting: Vec<&ProductName> = names
        .iter()
        .filter(|name| is_dressed(&name.product, &wanted))
        .collect();
    if fitting.is_empty() {
        return Assessment::plain(Verdict::NotMet, Reason::Fails).because(Detail::Product(None));
    }
    let maker = product
        .maker
        .as_deref()
        .filter(|maker| !normal(maker).is_empty());
    let makers = || fitting.iter().map(|name| name.maker.as_str());
    // A listing that names no maker asks for none.
    if makers()
        .any(|listed| listed.trim().is_empty() || maker.is_some_and(|maker| same(maker, listed)))
    {
        return Assessment::plain(Verdict::Met, Reason::Holds);
    }
    let could_be = maker.is_none_or(|maker| makers().any(|listed| is_part_of(maker, listed)));
    let listed = Detail::Product(fitting.first().copied());
    if could_be {
        Assessment::open(Reason::MakerUnknown).because(listed)
    } else {
        Assessment::plain(Verdict::NotMet, Reason::Fails).because(listed)
    }
}

/// Whether one maker's name begins with the whole of the other: the same firm with or without its legal form, perhaps.
fn is_part_of(maker: &str, listed: &str) -> bool {
    let (maker, listed) = (normal(maker), normal(listed));
    let begins = |long: &str, short: &str| {
        long.strip_prefix(short)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with([' ', ',', '.']))
    };
    begins(&maker, &listed) || begins(&listed, &maker)
}

/// A word of the vocabulary against the words named. Words that the vocabulary doesn't know can't be told apart.
fn word_among<'a>(
    text: &str,
    names: &'a [ProductName],
    property: Option<&Property>,
) -> Assessment<'a> {
    if names.iter().any(|name| same(&name.product, text)) {
        return Assessment::plain(Verdict::Met, Reason::Holds);
    }
    let canonical = |text: &str| {
        let value = property?.text_value(&normal(text))?;
        Some(value.name.as_str())
    };
    let Some(found) = canonical(text) else {
        return Assessment::open(Reason::Unreadable);
    };
    let mut all_known = true;
    for name in names {
        match canonical(&name.product) {
            Some(listed) if listed == found => {
                return Assessment::plain(Verdict::Met, Reason::Holds);
            }
            Some(_) => {}
            None => all_known = false,
        }
    }
    if all_known {
        Assessment::plain(Verdict::NotMet, Reason::Fails)
    } else {
        Assessment::open(Reason::ListingUnclear)
    }
}

/// The listed name that is nearest to a fact's, which isn't listed.
pub(crate) fn nearest<'n>(fact: &Fact, names: &'n [ProductName]) -> Option<&'n ProductName> {
    let wanted = match &fact.value {
        Value::Product(product) => normal(&product.product),
        Value::Text(text) => normal(text),
        Value::Quantity(_) | Value::Flag(_) => return None,
    };
    let mut best: Option<(usize, &ProductName)> = None;
    for name in names {
        let distance = strsim::levenshtein(&wanted, &normal(&name.product));
        if best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, name));
        }
    }
    best.map(|(_, name)| name)
}
