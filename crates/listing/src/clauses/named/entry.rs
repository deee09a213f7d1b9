//! One entry of a list of products: a maker and what it makes, in the ways in which they are set beside each other.

use super::keyed::{item_keys, leads_key, splits};
use super::lines::is_circled;
use super::makers::{ends_as_firm, is_maker};
use super::name::is_coded;
use super::ordinary::Ordinary;
use super::parting::{parts, parts_at_makers, parts_behind_brackets};
use crate::layout::beginning;
use crate::model::ProductName;
use crate::naming::components_in;

/// Signs between a label or a maker and what follows.
pub(super) const JOINTS: [&str; 5] = [" -- ", " — ", " – ", " - ", ": "];

/// The products of one maker, or of one label.
#[derive(Debug, Clone, Default)]
pub(in crate::clauses) struct Listed {
    /// The part that they are named for, in the words of the list.
    pub(super) label: Option<String>,
    pub(super) names: Vec<ProductName>,
    /// What is said of some of them besides their names.
    pub(super) limits: Vec<String>,
    /// Whether it is only known by a number or letter in front which part they are of.
    pub(super) by_key: bool,
}

impl Listed {
    /// Whether words begin with the same two words as a name of the list, as no maker does.
    fn begins_name(&self, words: &str) -> bool {
        let two = |words: &str| {
            let mut each = words.split(' ');
            Some((each.next()?.to_owned(), each.next()?.to_owned()))
        };
        let own = two(words);
        own.is_some() && self.names.iter().any(|name| two(&name.product) == own)
    }
}

/// Reads entries of makers and products.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reader<'o> {
    pub(super) ordinary: &'o Ordinary,
}

impl Reader<'_> {
    /// All entries of a stretch of text, when it is made of them and of nothing else.
    pub(super) fn all(self, words: &str) -> Option<Vec<Listed>> {
        let parted: Vec<&str> = parts(words).into_iter().flat_map(parts_at_makers).collect();
        self.of_parts(&parted, words)
            .or_else(|| self.of_parts(&parts_behind_brackets(words)?, words))
            .or_else(|| Some(vec![self.of_one_firm(words)?]))
    }

    /// `Product 60; Product 75 (Maker Co)`: one firm behind names that begin with the same word.
    fn of_one_firm(self, words: &str) -> Option<Listed> {
        let (label, rest) = self.without_labels(words);
        let rest = rest.trim_end_matches(['.', ' ']);
        if !rest.contains("; ") || rest.matches('(').count() != 1 {
            return None;
        }
        let listed = self.bracketed(rest)?;
        let first = |name: &ProductName| name.product.split(' ').next().map(str::to_owned);
        let mut firsts = listed.names.iter().map(first);
        let word = firsts.next()??;
        let kin = firsts.all(|own| own.as_ref() == Some(&word)) && self.ordinary.is_coined(&word);
        let told = listed.names.iter().all(|name| ends_as_firm(&name.maker));
        (kin && told).then(|| Listed {
            label: label.map(str::to_owned),
            ..listed
        })
    }

    fn of_parts(self, parts: &[&str], words: &str) -> Option<Vec<Listed>> {
        if ends_in_letter(words) {
            return None;
        }
        let mut found: Vec<Listed> = Vec::new();
        // `Maker: Firm. Product: Name`, `Firm; Name`
        let mut maker: Option<(Option<&str>, &str)> = None;
        for part in parts {
            let (label, rest) = self.without_labels(part);
            if maker.is_none()
                && let Some(listed) = self.behind_key(label, rest)
            {
                found.push(listed);
                continue;
            }
            if let Some((own, maker)) = maker.take() {
                let listed = self.products(rest.trim_end_matches(['.', ' ']), maker)?;
                found.push(Listed {
                    label: label.or(own).map(str::to_owned),
                    ..listed
                });
                continue;
            }
            let rest = rest.trim_end_matches(['.', ' ']);
            let told = ends_as_firm(rest) || says_maker(part);
            if told && self.is_maker(rest) {
                maker = Some((label, rest));
                continue;
            }
            // `Maker: NAME D Spray; NAME D Brush`
            let goes_on = found.last().is_some_and(|last| last.begins_name(rest));
            if !goes_on && let Some(listed) = self.labelled_entry(label, rest) {
                found.push(listed);
                continue;
            }
            // `Maker: Product; Product`
            let last = found.last_mut().filter(|_| label.is_none())?;
            let maker = last.names.last()?.maker.clone();
            let more = self.products(rest, &maker)?;
            let is_firm = |name: &ProductName| ends_as_firm(&name.product);
            let kin = |name: &ProductName| {
                let first = name.product.split(' ').next().unwrap_or_default();
                self.ordinary.is_coined(first)
                    && last
                        .names
                        .iter()
                        .any(|held| held.product.split(' ').next() == Some(first))
            };
            let told =
                |name: &ProductName| is_coded(&name.product) || part.contains('"') || kin(name);
            if more.names.iter().any(is_firm)
                || !more.names.iter().all(told)
                || part.contains('"') != words.contains('"')
            {
                return None;
            }
            last.names.extend(more.names);
            last.limits.extend(more.limits);
        }
        (!found.is_empty() && maker.is_none()).then_some(found)
    }

    /// `Note 4: Maker, Product`, `3A - Maker, Product`, `D1 Maker, Product`: the maker stands right behind the key, so that no name is cut short.
    fn behind_key(self, label: Option<&str>, words: &str) -> Option<Listed> {
        // `[A] Maker - Product`, `<2> Maker "Product"`
        let marked = [('[', "] "), ('<', "> ")]
            .iter()
            .find_map(|(open, close)| words.strip_prefix(*open)?.split_once(close));
        let marked = marked.map(|(key, behind)| (key, behind.trim_start()));
        // `② Maker: Product`
        let circled = words.split_once(' ').filter(|(key, _)| is_circled(key));
        let circled = circled.map(|(key, behind)| (key, behind.trim_start()));
        splits(words)
            .into_iter()
            .chain(marked)
            .chain(circled)
            .find_map(|(key, behind)| {
                if !is_circled(key) {
                    item_keys(key)?;
                }
                let listed = self
                    .entry(behind)
                    .or_else(|| self.in_capitals_of_codes(behind))?;
                let maker = &listed.names.first()?.maker;
                let alone = key.len() + 1 + behind.len() == words.len();
                let plain = key.chars().all(|c| c.is_ascii_alphanumeric() || c == '.')
                    && key.starts_with(|c: char| c.is_ascii_digit() || c.is_uppercase())
                    && key.contains(|c: char| c.is_ascii_digit());
                // `200 Quarry Road, Eastmere` is an address.
                let is_entry = listed.names.iter().all(|name| self.opens(&name.product))
                    && (ends_as_firm(maker)
                        || listed.names.iter().all(|name| is_coded(&name.product)));
                let digits = key.chars().all(|c| c.is_ascii_digit());
                let address = digits && behind.contains(", ") && !behind.contains('"');
                let told =
                    !alone || is_circled(key) || leads_key(key) || plain && is_entry && !address;
                (told && !maker.is_empty() && behind.starts_with(maker.as_str())).then(|| Listed {
                    label: Some(match label {
                        Some(label) => format!("{label} {key}"),
                        None => key.to_owned(),
                    }),
                    by_key: true,
                    ..listed
                })
            })
    }

    /// `MAKER, PRODUCT 20` in capitals, which only a key before them parts from an address.
    fn in_capitals_of_codes(self, words: &str) -> Option<Listed> {
        let (maker, list) = words.split_once(", ")?;
        let list = list.trim_end_matches(['.', ' ']);
        let listed = self.is_maker(maker).then(|| self.products(list, maker))??;
        let mut names = listed.names.iter();
        names
            .all(|name| is_coded(&name.product) && self.opens(&name.product))
            .then_some(listed)
    }

    /// An entry behind its label, or with the part's name right before it: `sealant Product (Maker)`.
    fn labelled_entry(self, label: Option<&str>, rest: &str) -> Option<Listed> {
        let of = |label: Option<&str>, listed: Listed| Listed {
            label: label.map(str::to_owned),
            ..listed
        };
        if let Some(listed) = self.entry(rest) {
            return Some(of(label, listed));
        }
        if label.is_some()
            && let Some(listed) = self.of_one_word(rest)
        {
            return Some(of(label, listed));
        }
        if label.is_some() {
            return None;
        }
        // `Felt: Maker, "Product"`: a part that the vocabulary doesn't know.
        let small = rest.len()
            - rest
                .trim_start_matches(|c: char| c.is_lowercase() || c == ' ')
                .len();
        let (own, behind) = match rest.split_once(": ") {
            Some((own, behind)) if !own.contains(['"', ',', '(']) => (own, behind),
            // `MW - Maker, Product`
            _ if JOINTS.iter().any(|joint| {
                rest.split_once(joint)
                    .is_some_and(|(own, _)| is_short_label(own))
            }) =>
            {
                JOINTS.iter().find_map(|joint| rest.split_once(joint))?
            }
            // `Packing, Maker, Product`
            _ if rest
                .split_once(", ")
                .is_some_and(|(own, _)| self.is_label(own) && !components_in(own).is_empty()) =>
            {
                rest.split_once(", ")?
            }
            _ => (rest.get(..small)?.trim(), rest.get(small..)?),
        };
        let may_label = !own.is_empty() && own.split_whitespace().count() <= 2;
        may_label
            .then(|| self.entry(behind))
            .flatten()
            .map(|listed| of(Some(own), listed))
    }

    /// `MAKER: Product` behind a label, where a single coined word is a maker.
    fn of_one_word(self, words: &str) -> Option<Listed> {
        let words = words.trim_end_matches(['.', ' ']);
        let (maker, list) = JOINTS.iter().find_map(|joint| words.split_once(joint))?;
        self.is_named(maker)
            .then(|| self.products(list, maker))
            .flatten()
    }

    /// `MAKER Product`, the maker in capitals and the product not.
    fn in_capitals_first(self, words: &str) -> Option<Listed> {
        let starts = words.match_indices(' ').map(|(at, _)| at + 1);
        let small = |word: &str| word.contains(char::is_lowercase);
        let at = core::iter::once(0).chain(starts).find(|at| {
            words
                .get(*at..)
                .and_then(|rest| rest.split(' ').next())
                .is_some_and(small)
        })?;
        let (maker, list) = (words.get(..at)?.trim(), words.get(at..)?);
        (is_maker(maker) && !maker.contains(['"', ',', ':']))
            .then(|| self.of_maker(maker, list))
            .flatten()
    }

    /// An entry without its labels, and the one that names a part: `Materials: Packing - Maker, Product`.
    pub(super) fn without_labels(self, words: &str) -> (Option<&str>, &str) {
        let mut rest = words.trim();
        let mut label = None;
        for _ in 0..2 {
            let joint = JOINTS
                .iter()
                .filter_map(|joint| Some((rest.find(joint)?, joint.len())))
                .min();
            let Some((own, behind)) =
                joint.and_then(|(at, len)| Some((rest.get(..at)?, rest.get(at + len..)?)))
            else {
                break;
            };
            if !self.is_label(own) {
                break;
            }
            if !components_in(own).is_empty() {
                label = Some(own.trim());
            }
            rest = behind.trim();
        }
        (label, rest)
    }

    /// Whether words label what stands behind them: they name a part or say "products", and no firm.
    pub(super) fn is_label(self, words: &str) -> bool {
        const LONGEST: usize = 6;
        const SAYING: &[&str] = &[
            "product",
            "products",
            "prod",
            "maker",
            "makers",
            "material",
            "materials",
            "mfr",
            "mfrs",
            "manufacturer",
            "manufacturers",
            "source",
            "sources",
            "approved",
            "recognized",
            "recognised",
            "supplier",
            "suppliers",
        ];
        let says = || {
            words
                .split(|c: char| !c.is_alphanumeric())
                .any(|word| SAYING.iter().any(|own| own.eq_ignore_ascii_case(word)))
        };
        let named = || {
            components_in(words)
                .iter()
                .any(|(component, weak, _)| !weak || !component.is_other())
        };
        (1..=LONGEST).contains(&words.split_whitespace().count())
            && !words.contains(['"', '“', ',', ';', '.'])
            && !self.ordinary.coins_one(words)
            && (!ends_as_firm(words) || heads_list(words))
            && (says() || named())
    }

    /// One maker with its products.
    fn entry(self, words: &str) -> Option<Listed> {
        let words = words.trim().trim_end_matches(['.', ',', ';']).trim_end();
        let words = without_lead(words);
        self.joined(words)
            .or_else(|| self.quoted(words))
            .or_else(|| self.bracketed(words))
            .or_else(|| self.made_by(words))
            .or_else(|| self.after_comma(words))
            .or_else(|| self.before_firm(words))
            .or_else(|| self.in_capitals_first(words))
            .or_else(|| self.behind_firm(words))
    }

    /// `Maker - Product, Product`, `Maker: Product`.
    fn joined(self, words: &str) -> Option<Listed> {
        let (at, len) = JOINTS
            .iter()
            .filter_map(|joint| Some((words.find(joint)?, joint.len())))
            .min()?;
        let (maker, list) = (words.get(..at)?, words.get(at + len..)?);
        self.of_maker(maker, list)
    }

    /// The products of a list behind their maker.
    pub(super) fn of_maker(self, maker: &str, list: &str) -> Option<Listed> {
        let maker = maker.trim().trim_end_matches([',', ':']).trim();
        let maker = without_lead(maker);
        let maker = maker.strip_prefix("the ").unwrap_or(maker);
        self.is_maker(maker)
            .then(|| self.products(list, maker))
            .flatten()
    }

    /// Whether a line begins as an entry does, whatever else it says: a maker, a sign, and more.
    pub(super) fn begins_entry(self, line: &str) -> bool {
        const LONGEST: usize = 400;
        let line = line
            .trim()
            .trim_start_matches(['*', '•', '-', '–'])
            .trim_start();
        let line = beginning(line, LONGEST);
        let joint = JOINTS.iter().filter_map(|joint| line.find(joint)).min();
        joint
            .and_then(|at| line.get(..at))
            .is_some_and(|maker| self.is_maker(maker))
    }
}

/// Whether words only say that products follow: `ACCEPTABLE MATERIALS`.
fn heads_list(words: &str) -> bool {
    const SAYING: [&str; 14] = [
        "acceptable",
        "accepted",
        "approved",
        "eligible",
        "listed",
        "marked",
        "materials",
        "other",
        "permitted",
        "products",
        "recognised",
        "recognized",
        "suitable",
        "tested",
    ];
    words
        .split(' ')
        .all(|word| SAYING.contains(&word.to_lowercase().as_str()))
}

/// Whether words are a short form that may label an entry: `MW`, `TRK`.
fn is_short_label(words: &str) -> bool {
    (2..=4).contains(&words.len()) && words.chars().all(|c| c.is_ascii_uppercase())
}

/// An entry without the words that lead to its maker: `Made by Cotterwell Compounds: CW Acrylic`.
fn without_lead(words: &str) -> &str {
    const LEADS: [&str; 11] = [
        "use ",
        "apply ",
        "provide ",
        "furnish ",
        "install ",
        "made by ",
        "manufactured by ",
        "produced by ",
        "supplied by ",
        "sold by ",
        "by ",
    ];
    let led = LEADS.iter().find_map(|lead| {
        let own = words.get(..lead.len())?;
        own.eq_ignore_ascii_case(lead)
            .then(|| words.get(lead.len()..))?
    });
    led.unwrap_or(words)
}

/// Whether words in capitals end in a letter with a stop, which may as well number what comes next.
fn ends_in_letter(words: &str) -> bool {
    let last = words.trim_end().rsplit(' ').next().unwrap_or_default();
    let is_letter = last.len() == 2 && last.ends_with('.') && last.starts_with(char::is_uppercase);
    is_letter && !words.contains(char::is_lowercase)
}

/// Whether a part of a list is said to be a maker: `Maker: Ullswick Fibre`.
fn says_maker(part: &str) -> bool {
    const SAYING: [&str; 4] = ["maker", "manufacturer", "mfr", "supplier"];
    let lower = part.trim_start().to_lowercase();
    SAYING.iter().any(|own| lower.starts_with(own))
}
