//! What a column's values are about: a property of the vocabulary, of the part that one item of the listing describes where there are
//! several such parts, or which option of the listing is built. The last two may name the listing: `2A:runner.gauge@hw-d-0412-ed4`.

use measure::Dimension;
use vocabulary::{Property, ValueKind, vocabulary};

use crate::model::said_of_listing;

/// What the heading of a column about an option begins with: `option.configuration`, `option.3B`.
const OPTION: &str = "option.";

/// The longest path of an item, in bytes.
const LONGEST_PATH: usize = 16;

/// What a column's values are about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum About {
    /// A property of the vocabulary.
    Property(&'static Property),
    /// A property of the part that one item of the listing describes: `2A:runner.gauge`, where 2B describes another runner.
    OfItem {
        /// The property.
        property: &'static Property,
        /// The item as the listing prints it, a colon and the property's name; with the listing that it is said of, where the heading names it.
        name: String,
    },
    /// A property that a listing has for itself, with the kind of value that it asks for.
    Local {
        /// Its name, as the reading has it.
        name: String,
        /// The kind.
        kind: ValueKind,
    },
    /// Which option of a group is built, by the property's name: `option.` and the group as the listing writes it; with the listing, as above.
    Option(String),
}

impl About {
    /// The option that a heading is about. None when it is about none; an error, when it doesn't say which.
    pub(crate) fn option(heading: &str) -> Option<Result<Self, ()>> {
        let begins = heading.get(..OPTION.len())?;
        if !begins.eq_ignore_ascii_case(OPTION) {
            return None;
        }
        let (heading, listing) = with_listing(heading);
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
        Some(Ok(Self::Option(said_of_listing(
            &format!("{OPTION}{group}"),
            listing,
        ))))
    }

    /// The property of an item's own part that a heading is about. None when it names no item; an error with the property's words, when
    /// there is no such property.
    pub(crate) fn of_item(heading: &str) -> Option<Result<Self, String>> {
        let (heading, listing) = with_listing(heading);
        let (item, words) = heading.split_once(':')?;
        let (item, words) = (item.trim(), words.trim().to_lowercase().replace(' ', "_"));
        let is_path =
            !item.is_empty() && item.len() <= LONGEST_PATH && !item.contains(char::is_whitespace);
        is_path.then(|| match vocabulary().property(&words) {
            Some(property) => Ok(Self::OfItem {
                property,
                name: said_of_listing(&format!("{item}:{}", property.name), listing),
            }),
            None => Err(words),
        })
    }

    /// The property, where it is one of the vocabulary's.
    pub(crate) fn property(&self) -> Option<&'static Property> {
        match self {
            Self::Property(property) | Self::OfItem { property, .. } => Some(property),
            Self::Local { .. } | Self::Option(_) => None,
        }
    }

    /// The kind of its values; none where they are an option's.
    pub(crate) fn kind(&self) -> Option<&ValueKind> {
        match self {
            Self::Property(property) | Self::OfItem { property, .. } => Some(&property.kind),
            Self::Local { kind, .. } => Some(kind),
            Self::Option(_) => None,
        }
    }

    /// The name under which facts are kept that a heading is about; in a row that names a listing, [`name_of`](Self::name_of) goes before it.
    pub(crate) fn name(&self) -> &str {
        match self {
            Self::Property(property) => &property.name,
            Self::OfItem { name, .. } | Self::Local { name, .. } | Self::Option(name) => name,
        }
    }

    /// The name under which a fact is kept that a row of a table tells. What is a listing's own is said of the listing that the heading
    /// names, else of the one that the row names; else of none that is known, and counts for none.
    pub(crate) fn name_of(&self, listing: Option<&str>) -> String {
        said_of_listing(self.name(), listing.unwrap_or_default())
    }

    /// The dimension of its values, where they are quantities.
    pub(crate) fn dimension(&self) -> Option<Dimension> {
        match self.kind()? {
            ValueKind::Quantity(dimension) => Some(*dimension),
            ValueKind::Text(_) | ValueKind::Flag | ValueKind::Product => None,
        }
    }
}

/// A heading without the listing that it names after an `@`, and the listing; empty where it names none.
fn with_listing(heading: &str) -> (&str, &str) {
    heading.split_once('@').unwrap_or((heading, ""))
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
        assert_eq!(read("option.3C @ hw-d-1 "), known("option.3C@hw-d-1"));
        assert_eq!(read("option.3C@"), known("option.3C"));
        assert_eq!(read("option.@hw-d-1"), Some(Err(())));
        assert_eq!(read("option."), Some(Err(())));
        assert_eq!(read("option"), None);
        assert_eq!(read("½ption.3C"), None);
        assert_eq!(read("packing.depth"), None);
    }

    #[test]
    fn headings_about_one_items_part() {
        let read = |heading: &str| {
            let about = About::of_item(heading)?;
            Some(about.map(|about| about.name().to_owned()))
        };
        assert_eq!(
            read("2A:runner.gauge"),
            Some(Ok("2A:runner.gauge".to_owned()))
        );
        assert_eq!(
            read("2A:Runner.Gauge@HW-D-1: 4"),
            Some(Ok("2A:runner.gauge@HW-D-1: 4".to_owned()))
        );
        assert_eq!(
            read("§3(b): Runner.Gauge"),
            Some(Ok("§3(b):runner.gauge".to_owned()))
        );
        assert_eq!(
            read("2A:runner.colour"),
            Some(Err("runner.colour".to_owned()))
        );
        assert_eq!(read("the item: runner.gauge"), None);
        assert_eq!(read("runner.gauge"), None);
    }
}
