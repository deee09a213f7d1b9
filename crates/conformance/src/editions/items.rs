//! Which item of the new edition an item of the old one became.

use std::collections::BTreeMap;

use listing::{Item, Reading};

use crate::words::normal;

/// Old item paths to new ones.
pub(super) struct ItemMap<'a> {
    new_paths: BTreeMap<&'a str, &'a str>,
}

impl<'a> ItemMap<'a> {
    /// An item goes to the one item of the same title, where each edition has one; else to the item of the same number
    /// that isn't titled otherwise; else to the like-numbered part of the item that its parent went to.
    pub(super) fn of(old: &'a Reading, new: &'a Reading) -> Self {
        let (titles_old, titles_new) = (by_title(old), by_title(new));
        let mut new_paths: BTreeMap<&'a str, &'a str> = BTreeMap::new();
        for item in &old.items {
            let title = normal(&item.title);
            let same_title = match (titles_old.get(&title), titles_new.get(&title)) {
                (Some(Some(_)), Some(Some(is))) if !title.is_empty() => Some(*is),
                _ => None,
            };
            let same_number = || {
                let is = new.items.iter().find(|is| is.path == item.path)?;
                let titled = normal(&is.title);
                (titled == title || titled.is_empty() || title.is_empty()).then_some(is)
            };
            let by_parent = || {
                let parent = item.parent.as_deref()?;
                let suffix = item.path.strip_prefix(parent)?;
                let path = format!("{}{suffix}", new_paths.get(parent)?);
                new.items.iter().find(|is| is.path == path)
            };
            let is = same_title.or_else(|| {
                let moved = item
                    .parent
                    .as_deref()
                    .is_some_and(|parent| new_paths.get(parent).is_some_and(|is| *is != parent));
                if moved {
                    by_parent().or_else(same_number)
                } else {
                    same_number().or_else(by_parent)
                }
            });
            if let Some(is) = is {
                new_paths.insert(&item.path, &is.path);
            }
        }
        Self { new_paths }
    }

    /// The new path of an old item, if it went anywhere.
    pub(super) fn new_path(&self, old: &str) -> Option<&'a str> {
        self.new_paths.get(old).copied()
    }
}

/// Items by title; none where several share one.
fn by_title(reading: &Reading) -> BTreeMap<String, Option<&Item>> {
    let mut titles = BTreeMap::new();
    for item in &reading.items {
        titles
            .entry(normal(&item.title))
            .and_modify(|known| *known = None)
            .or_insert(Some(item));
    }
    titles
}
