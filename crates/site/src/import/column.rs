//! What a column's values are about: a property of the vocabulary, or which option of the listing is built.

use measure::Dimension;
use vocabulary::{Property, ValueKind};

/// What the heading of a column about an option begins with: `option.configuration`, `option.3B`.
const OPTION: &str = "option.";

/// What a column's values are about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum About {
    /// A property of the vocabulary.
    Property(&'static Property),
    /// Which option of a group is built, by the property's name: `option.` and the group as the listing writes it.
    Option(String),
}

impl About {
    /// The option that a heading is about. None when it is about none; an error, when it doesn't say which.
    pub(crate) fn option(heading: &str) -> Option<Result<Self, ()>> {
        let begins = heading.get(..OPTION.len())?;
        if !begins.eq_ignore_ascii_case(OPTION) {
            return None;
        }
        let group = heading.get(OPTION.len()..).unwrap_or_default().trim();
        if group.is_empty() {
            return Some(Err(()));
        }
        // The listing's own name for all its configurations; any other name is a path, whose capitals are kept.
        let configuration = "configuration";
        let group = if group.eq_ignore_ascii_case(configuration) {
            configuration
        } else {
            group
        };
        Some(Ok(Self::Option(format!("{OPTION}{group}"))))
    }

    /// The name under which facts are kept.
    pub(crate) fn name(&self) -> &str {
        match self {
            Self::Property(property) => &property.name,
            Self::Option(name) => name,
        }
    }

    /// The dimension of its values, where they are quantities.
    pub(crate) fn dimension(&self) -> Option<Dimension> {
        match self {
            Self::Property(property) => match property.kind {
                ValueKind::Quantity(dimension) => Some(dimension),
                ValueKind::Text(_) | ValueKind::Flag | ValueKind::Product => None,
            },
            Self::Option(_) => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headings_about_options() {
        let read = |heading: &str| {
            let about = About::option(heading)?;
            Some(about.map(|about| about.name().to_owned()))
        };
        let known = |name: &str| Some(Ok(name.to_owned()));
        assert_eq!(read("option.configuration"), known("option.configuration"));
        assert_eq!(read("Option.Configuration"), known("option.configuration"));
        assert_eq!(read("option.3C"), known("option.3C"));
        assert_eq!(read("option. 3C "), known("option.3C"));
        assert_eq!(read("option."), Some(Err(())));
        assert_eq!(read("option"), None);
        assert_eq!(read("½ption.3C"), None);
        assert_eq!(read("packing.depth"), None);
    }
}
