//! What a warning says, and what a person should do about it.

use listing::{Warning, WarningKind};

use crate::text::on_one_line;

/// What a warning says, with properties by their titles.
pub fn message(warning: &Warning) -> String {
    let words: Vec<String> = on_one_line(&warning.message)
        .split(' ')
        .map(|word| match vocabulary::vocabulary().property(word) {
            Some(property) => format!("“{}”", property.title),
            None => word.to_owned(),
        })
        .collect();
    let message = words.join(" ");
    // What stands before the first item has no name to go by.
    match message.strip_prefix("item bounds ") {
        Some(rest) => format!("what stands before the first item bounds {rest}"),
        None => message,
    }
}

/// What to do about a warning, or what is done until then; nothing where its message says it all.
pub const fn advice(kind: WarningKind) -> Option<&'static str> {
    match kind {
        WarningKind::DualUnitsDisagree => Some("the stricter value governs until a person decides"),
        WarningKind::UnreadNumber => Some("the words are left for a person to answer"),
        WarningKind::NotAListing => Some("give one listing: a title, then numbered items"),
        WarningKind::UnknownItem
        | WarningKind::DesignationDisagrees
        | WarningKind::Contradiction
        | WarningKind::Encoding
        | WarningKind::Outline
        | WarningKind::OptionNotPlaced
        | WarningKind::LeakageUnit => None,
    }
}

#[cfg(test)]
mod tests {
    use listing::{Span, Warning};

    use super::*;

    #[test]
    fn a_property_is_named_by_its_title() {
        let warning = Warning {
            kind: WarningKind::Contradiction,
            span: Span::new(0, 0),
            words: String::new(),
            message: "item 1B bounds concrete.density twice (1B/2 and 1B/3)".to_owned(),
        };
        assert_eq!(
            message(&warning),
            "item 1B bounds “Concrete density” twice (1B/2 and 1B/3)"
        );
    }
}
