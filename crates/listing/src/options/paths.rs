//! The labels of a document's items, so that one is found among many without looking at all of them.

use std::collections::BTreeMap;

/// The labels of items in the order of the document.
#[derive(Debug, Default)]
pub(crate) struct Paths {
    in_order: Vec<String>,
    /// Where each stands first, as it is written.
    written: BTreeMap<String, usize>,
    /// Where each stands first, without the sign of a section before it.
    bare: BTreeMap<String, usize>,
}

impl Paths {
    pub(crate) fn of(paths: impl IntoIterator<Item = String>) -> Self {
        let mut all = Self::default();
        for path in paths {
            let place = all.in_order.len();
            let bare = path.trim_start_matches('§').to_owned();
            all.bare.entry(bare).or_insert(place);
            all.written.entry(path.clone()).or_insert(place);
            all.in_order.push(path);
        }
        all
    }

    /// The item of exactly this label.
    pub(super) fn exactly(&self, label: &str) -> Option<&String> {
        self.at(self.written.get(label))
    }

    /// The first item of this label, whether or not the sign of a section stands before it.
    pub(super) fn named(&self, label: &str) -> Option<&String> {
        let places = [self.written.get(label), self.bare.get(label)];
        self.at(places.into_iter().flatten().min())
    }

    /// The first item whose label is a number with this letter behind it, in brackets or not.
    pub(super) fn lettered(&self, number: &str, letter: &str) -> Option<&String> {
        let from_number = self.bare.range(number.to_owned()..);
        let of_number = from_number.map_while(|(path, place)| {
            let rest = path.strip_prefix(number)?;
            Some((rest, place))
        });
        let of_letter =
            of_number.filter(|(rest, _)| rest.trim_matches(['(', ')', '.', ' ']) == letter);
        self.at(of_letter.map(|(_, place)| place).min())
    }

    /// The items that stand between two.
    pub(super) fn between(&self, from: &str, to: &str) -> &[String] {
        let places = self.written.get(from).zip(self.written.get(to));
        let between = places.and_then(|(from, to)| self.in_order.get(from + 1..*to));
        between.unwrap_or_default()
    }

    fn at(&self, place: Option<&usize>) -> Option<&String> {
        self.in_order.get(*place?)
    }
}
