//! What the item around a sentence is about.

use std::collections::BTreeMap;
use std::sync::Arc;

use vocabulary::Component;

/// What the item around a sentence is about.
#[derive(Debug, Clone, Default)]
pub(crate) struct Subject {
    /// Components that the titles of the item and of those around it name, innermost first, each with how far out.
    pub(crate) titles: Vec<(&'static Component, usize)>,
    /// The item's title in plain words.
    pub(crate) title: String,
    /// The part that the title of each item names, by the item's number.
    pub(crate) parts: Arc<BTreeMap<String, &'static Component>>,
    /// The component that the sentence before was about.
    pub(crate) before: Option<&'static Component>,
}

impl Subject {
    /// Whether a title names a component.
    pub(super) fn titles_name(&self, component: &str) -> bool {
        self.titles.iter().any(|(own, _)| own.name == component)
    }

    /// Whether a title names a component, or the sentence before was about it.
    pub(super) fn is_about(&self, component: &str) -> bool {
        self.titles_name(component) || self.before.is_some_and(|own| own.name == component)
    }
}
