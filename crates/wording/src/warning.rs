//! What a person should do about a warning.

use listing::WarningKind;

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
