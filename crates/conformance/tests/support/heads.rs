//! What a head states, from one line each.

use listing::{
    Bound, Leakage, LeakageRelation, LeakageTemperature, Movement, MovementDirection, Span,
    WidthLimit,
};

use super::{bound, quantity_of};

pub fn width(text: &str) -> WidthLimit {
    let Bound {
        relation,
        lo,
        hi,
        unit,
        ..
    } = bound(text);
    WidthLimit {
        relation,
        lo,
        hi,
        unit,
        strictest_hi: None,
        span: Span::new(2, 3),
    }
}

/// `II, III compression 25`, with ` for Configuration 1` after it where need be.
pub fn movement(text: &str) -> Movement {
    let (text, option) = match text.split_once(" for ") {
        Some((text, option)) => (text, Some(option.to_owned())),
        None => (text, None),
    };
    let mut words: Vec<&str> = text.split(' ').collect();
    let percent = words.pop().unwrap().parse().unwrap();
    let direction = match words.pop().unwrap() {
        "compression" => MovementDirection::Compression,
        "extension" => MovementDirection::Extension,
        "either" => MovementDirection::CompressionOrExtension,
        "shear" => MovementDirection::Shear,
        other => panic!("`{other}` is no direction"),
    };
    let classes = words
        .iter()
        .map(|class| class.trim_end_matches(',').to_owned())
        .collect();
    Movement {
        classes,
        direction,
        percent,
        option,
        span: Span::new(4, 5),
    }
}

/// `ambient less than 1 cfm/ft`
pub fn leakage(text: &str) -> Leakage {
    let (at, rest) = text.split_once(' ').unwrap();
    let (relation, value) = [
        ("less than ", LeakageRelation::LessThan),
        ("at most ", LeakageRelation::AtMost),
        ("", LeakageRelation::Equal),
    ]
    .into_iter()
    .find_map(|(words, relation)| rest.strip_prefix(words).map(|value| (relation, value)))
    .unwrap();
    let value = quantity_of(value);
    Leakage {
        at: if at == "ambient" {
            LeakageTemperature::Ambient
        } else {
            LeakageTemperature::Elevated
        },
        relation,
        value: value.number,
        unit: value.unit,
        span: Span::new(6, 7),
    }
}
