//! One group of options.

use listing::{OptionGroup, OptionGroupKind, bare_path};

use crate::checklist::Membership;
use crate::words::same;

/// A group of options, of which one choice is built.
pub(crate) struct Group<'a> {
    pub(crate) source: &'a OptionGroup,
    pub(crate) kind: Kind,
    /// The choices, in listing order, the base item first where the listing doesn't name it as a choice.
    pub(crate) choices: Vec<&'a str>,
    /// The place of the base item among the choices.
    base: Option<usize>,
    /// Whether an alternate is a part of the base item, so that the base's other parts stay whichever is built.
    pub(crate) spares_parts: bool,
    /// The choice of another group within which this one lies.
    pub(crate) within: Option<Membership>,
}

/// Whether one of a group's choices must be built.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Exactly one of the choices is built.
    OneOf,
    /// Its only choice is built or left out.
    OrNothing,
}

impl<'a> Group<'a> {
    /// The groups that a listing's group makes: one, but that each of several optional items is left out or built by
    /// itself.
    pub(crate) fn of(source: &'a OptionGroup) -> Vec<Self> {
        let named: Vec<&'a str> = source.choices.iter().map(String::as_str).collect();
        if source.kind == OptionGroupKind::Optional {
            let group = |choice| Self {
                source,
                kind: Kind::OrNothing,
                choices: vec![choice],
                base: None,
                spares_parts: false,
                within: None,
            };
            return named.into_iter().map(group).collect();
        }
        let mut choices = named;
        let base = match (source.kind, source.base_item.as_deref()) {
            (OptionGroupKind::Alternates, Some(path)) => {
                let among = choices
                    .iter()
                    .position(|choice| bare_path(choice) == bare_path(path));
                Some(among.unwrap_or_else(|| {
                    choices.insert(0, path);
                    0
                }))
            }
            _ => None,
        };
        vec![Self {
            source,
            kind: Kind::OneOf,
            choices,
            base,
            spares_parts: false,
            within: None,
        }]
    }

    /// The place of the base, for an item that the alternates replace.
    pub(crate) fn base_of(&self, path: &str) -> Option<usize> {
        let replaced = || {
            self.source
                .base_item
                .iter()
                .chain(&self.source.also_replaced)
        };
        self.base.filter(|_| replaced().any(|item| item == path))
    }

    /// Whether something must tell that a choice is built: an alternate to a base item, and each of several equal parts.
    pub(crate) fn must_be_told(&self, choice: usize) -> bool {
        self.is_of_equals() || self.base.is_some_and(|base| base != choice)
    }

    /// Whether its choices are the parts of a list, none of which stands in the place of another.
    pub(crate) fn is_of_equals(&self) -> bool {
        self.source.kind == OptionGroupKind::OneOf
    }

    /// Whether one of the alternates is a part of an item that it replaces; `is_within` tells whether an item lies in another.
    pub(super) fn lies_in_replaced(&self, is_within: impl Fn(&str, &str) -> bool) -> bool {
        let replaced = self
            .source
            .base_item
            .iter()
            .chain(&self.source.also_replaced);
        let mut replaced = replaced.filter(|_| self.base.is_some());
        replaced.any(|item| {
            let mut alternates = self
                .choices
                .iter()
                .filter(|choice| **choice != item.as_str());
            alternates.any(|choice| is_within(choice, item))
        })
    }

    /// The place of a choice by its name, as clauses and items write it.
    pub(crate) fn choice(&self, name: &str) -> Option<usize> {
        self.choices.iter().position(|choice| *choice == name)
    }

    /// The place of the choice that a clause's option names: a choice, or an item that the alternates replace.
    pub(super) fn named(&self, name: &str) -> Option<usize> {
        let name = name.trim();
        self.choice(name)
            .or_else(|| self.choice_as_written(name))
            .or_else(|| self.base_of(name))
    }

    /// The place of a choice by its name, as people write it.
    pub(crate) fn choice_as_written(&self, name: &str) -> Option<usize> {
        let fits = |choice: &str| same(choice, name) || bare_path(choice) == bare_path(name);
        self.choices.iter().position(|choice| fits(choice))
    }

    /// What the group is called: the optional item itself, else the group's own name.
    pub(crate) fn name(&self) -> &'a str {
        match (self.kind, self.choices.first()) {
            (Kind::OrNothing, Some(choice)) => choice,
            _ => &self.source.id,
        }
    }
}
