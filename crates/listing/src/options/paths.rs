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
    /// Where each stands by its letters and digits alone; none where several have the same.
    loose: BTreeMap<String, Option<usize>>,
}

impl Paths {
    pub(crate) fn of(paths: impl IntoIterator<Item = String>) -> Self {
        let mut all = Self::default();
        for path in paths {
            let place = all.in_order.len();
            let bare = path.trim_start_matches('§').to_owned();
            if let Some(loose) = loose(&path) {
                let several = all.loose.contains_key(&loose);
                all.loose.insert(loose, (!several).then_some(place));
            }
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

    /// The one item whose label has these letters and digits, in capitals or not, with brackets and dots beside the letters or without them: `IIC` for
    /// `II.C`, `1b` for `1(B)`.
    pub(super) fn loosely(&self, label: &str) -> Option<&String> {
        // A word alone is no label.
        let is_label = label.contains(|c: char| c.is_ascii_digit() || c == '.');
        let place = self.loose.get(&loose(label)?)?;
        self.at(place.as_ref().filter(|_| is_label))
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

/// The letters and digits of a label of letters and numbers, small; the dots between numbers stay.
fn loose(label: &str) -> Option<String> {
    let chars: Vec<char> = label.trim_matches(['(', ')', '.', '§']).chars().collect();
    let letter = |at: Option<usize>| {
        let c = at.and_then(|at| chars.get(at));
        c.is_none_or(|c| c.is_alphabetic() || matches!(c, '(' | ')'))
    };
    let kept = chars.iter().enumerate().filter(|(at, c)| match c {
        '.' => !(letter(at.checked_sub(1)) || letter(Some(at + 1))),
        c => c.is_alphanumeric(),
    });
    // `02B` is `2B`.
    let loose: String = kept
        .map(|(_, c)| c.to_ascii_lowercase())
        .skip_while(|c| *c == '0')
        .collect();
    let plain = label
        .chars()
        .all(|c| c.is_ascii_alphanumeric() || matches!(c, '(' | ')' | '.' | '§'));
    let lettered = loose.contains(|c: char| c.is_ascii_alphabetic());
    (plain && lettered && loose.len() > 1).then_some(loose)
}
