//! Alternatives: configurations, alternates to an item, items of which one is built, optional items.
//!
//! An alternative lets clauses fall away, so it is taken from clear words only. What replaces a part of an item leaves the whole of it in force;
//! what an alternative is confined to becomes a clause of it; and words that offer an alternative which can't be placed are a warning, while
//! all that they speak of stays required.

mod cited;
mod demanded;
mod document;
mod groups;
mod head;
mod inherits;
mod joined;
mod legend;
mod listed;
mod named;
mod offer;
mod offered;
mod paths;
mod per_configuration;
mod placed;
mod reach;
mod unplaced;

pub(crate) use groups::groups;
pub(crate) use paths::Paths;

use crate::model::Span;
use crate::outline::OutlineItem;

/// What an item says of itself as an option.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct ItemOption {
    /// The items that it may replace.
    pub(crate) replaces: Vec<String>,
    /// Whether it may be left out.
    pub(crate) optional: bool,
    /// Whether it may be left out only because it has the name of an option: "(Option G)".
    labelled: bool,
    /// The item among whose parts it is one of those that one is built of.
    pub(crate) choice_of: Option<String>,
    /// Configurations that it belongs to, any one of them.
    pub(crate) configurations: Vec<String>,
    /// Where its head says what it is confined to as an option.
    pub(crate) limits: Vec<Span>,
    /// The words that offer it as one of several where the others can't be told; whether it is built is for a person to say.
    pub(crate) offered: Option<Span>,
    /// Words that offer an alternative which couldn't be placed, and what is done until a person decides.
    pub(crate) doubt: Option<(Span, String)>,
}

impl ItemOption {
    /// Whether the item may be left out, or left for another.
    pub(crate) const fn is_choice(&self) -> bool {
        !self.replaces.is_empty() || self.optional || self.choice_of.is_some()
    }

    /// The configurations as a clause names them: any one of them will do.
    pub(crate) fn configuration(&self) -> Option<String> {
        (!self.configurations.is_empty()).then(|| self.configurations.join(" or "))
    }
}

/// The items that words cite from a place on.
pub(crate) fn items_cited(text: &str, from: usize, paths: &Paths) -> Vec<String> {
    cited::cited("", text, from, paths).items
}

/// What each item says of itself as an option.
pub(crate) fn item_options(source: &str, items: &[OutlineItem]) -> Vec<ItemOption> {
    let mut options = placed::placed(source, items);
    demanded::keep_what_is_asked_for(source, items, &mut options);
    groups::choose_among_parts(source, items, &mut options);
    unplaced::doubt_offers(source, items, &mut options);
    options
}

#[cfg(test)]
mod tests;
