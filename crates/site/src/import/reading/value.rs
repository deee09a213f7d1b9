//! A cell as a value of its property.

use vocabulary::{Property, TextValue, ValueKind};

use super::quantity::quantity;
use crate::import::problem::{Wrong, listed, quoted};
use crate::model::{ProductFact, Value};

/// Reads the value of a property, as its kind asks.
pub(super) fn value(property: &Property, text: &str) -> Result<Value, Wrong> {
    match &property.kind {
        ValueKind::Quantity(dimension) => {
            quantity(*dimension, &property.name, text).map(Value::Quantity)
        }
        ValueKind::Text(values) => named(property, values, text).map(Value::Text),
        ValueKind::Flag => flag(&property.name, text).map(Value::Flag),
        ValueKind::Product => product(text).map(Value::Product),
    }
}

/// Reads the value of a property that a listing has for itself: its words are as they are written.
pub(super) fn local(name: &str, kind: &ValueKind, text: &str) -> Result<Value, Wrong> {
    match kind {
        ValueKind::Quantity(dimension) => quantity(*dimension, name, text).map(Value::Quantity),
        ValueKind::Text(_) => Ok(Value::Text(text.to_owned())),
        ValueKind::Flag => flag(name, text).map(Value::Flag),
        ValueKind::Product => product(text).map(Value::Product),
    }
}

/// The vocabulary's name for what a text says; the text itself where the vocabulary names no values.
fn named(property: &Property, values: &[TextValue], text: &str) -> Result<String, Wrong> {
    if values.is_empty() {
        return Ok(text.to_owned());
    }
    let found = property.text_value(text).map(|value| value.name.clone());
    found.ok_or_else(|| {
        let names = values.iter().map(|value| value.name.as_str());
        let message = format!("{} isn't a value of {}", quoted(text), property.name);
        Wrong::new(message, format!("write one of {}", listed(names)))
    })
}

fn flag(of: &str, text: &str) -> Result<bool, Wrong> {
    match text.to_lowercase().as_str() {
        "yes" | "y" | "true" | "x" => Ok(true),
        "no" | "n" | "false" => Ok(false),
        _ => {
            let message = format!("{} is neither yes nor no, which {of} is", quoted(text));
            Err(Wrong::new(message, "write `yes` or `no`"))
        }
    }
}

/// `Maker | Product`, or the product alone.
fn product(text: &str) -> Result<ProductFact, Wrong> {
    let parts: Vec<_> = text.split('|').map(str::trim).collect();
    match parts.as_slice() {
        [product] => Ok(ProductFact {
            maker: None,
            product: (*product).to_owned(),
        }),
        [maker, product] if !maker.is_empty() && !product.is_empty() => Ok(ProductFact {
            maker: Some((*maker).to_owned()),
            product: (*product).to_owned(),
        }),
        _ => {
            let message = format!("{} isn't one product", quoted(text));
            Err(Wrong::new(
                message,
                "write `Maker | Product`, or the product alone",
            ))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(property: &str, text: &str) -> Result<Value, Wrong> {
        value(vocabulary::vocabulary().property(property).unwrap(), text)
    }

    #[track_caller]
    fn check(property: &str, text: &str, expected: &str) {
        let value = read(property, text).unwrap_or_else(|wrong| panic!("{wrong:?}"));
        assert_eq!(value.to_string(), expected, "{property}: {text}");
    }

    #[test]
    fn values_of_each_kind() {
        check("packing.density", "4 pcf", "4 pcf");
        check("deck.direction", "Perpendicular to the flutes", "across");
        check("packing.material", "Stone Wool", "mineral-wool");
        check("packing.flush", "X", "yes");
        check("packing.flush", "FALSE", "no");
        check(
            "packing.product",
            "Velkoride Works|  Velkomat 40",
            "Velkoride Works | Velkomat 40",
        );
        check("packing.product", "Velkomat 40", "Velkomat 40");
    }

    #[track_caller]
    fn check_wrong(property: &str, text: &str, message: &str, help: &str) {
        let wrong = read(property, text).unwrap_err();
        assert!(wrong.message.contains(message), "{text}: {wrong:?}");
        assert!(wrong.help.contains(help), "{text}: {wrong:?}");
    }

    #[test]
    fn values_of_another_kind() {
        check_wrong(
            "deck.direction",
            "sideways",
            "isn't a value of deck.direction",
            "`across`",
        );
        check_wrong(
            "packing.flush",
            "perhaps",
            "neither yes nor no",
            "`yes` or `no`",
        );
        check_wrong("packing.flush", "1", "neither yes nor no", "`yes` or `no`");
        check_wrong(
            "packing.product",
            "A | B | C",
            "isn't one product",
            "Maker | Product",
        );
        check_wrong(
            "packing.product",
            "A |",
            "isn't one product",
            "Maker | Product",
        );
        check_wrong("packing.density", "yes", "no number", "pcf");
    }
}
