//! One entry of a list of products: a maker and what it makes, in the ways in which they are set beside each other.

use super::makers::{ends_as_firm, is_maker, split_outside};
use super::ordinary::Ordinary;
use super::parting::{parts, parts_at_makers, parts_behind_brackets};
use super::{holds_measure, says_limit};
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
            if let Some(listed) = self.labelled_entry(label, rest) {
                found.push(listed);
                continue;
            }
            // `Maker: Product; Product`
            let last = found.last_mut().filter(|_| label.is_none())?;
            let maker = last.names.last()?.maker.clone();
            let more = self.products(rest, &maker)?;
            let is_firm = |name: &ProductName| ends_as_firm(&name.product);
            let told = |name: &ProductName| is_coded(&name.product) || part.contains('"');
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
            && !ends_as_firm(words)
            && (says() || named())
    }

    /// One maker with its products.
    fn entry(self, words: &str) -> Option<Listed> {
        let words = words.trim().trim_end_matches(['.', ',', ';']).trim_end();
        self.joined(words)
            .or_else(|| self.quoted(words))
            .or_else(|| self.bracketed(words))
            .or_else(|| self.made_by(words))
            .or_else(|| self.after_comma(words))
            .or_else(|| self.in_capitals_first(words))
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
        let maker = maker.strip_prefix("the ").unwrap_or(maker);
        self.is_maker(maker)
            .then(|| self.products(list, maker))
            .flatten()
    }

    /// `Maker, "Product" or "Product"`, `Maker "Product"`, `"Product" of the Maker`.
    fn quoted(self, words: &str) -> Option<Listed> {
        const QUOTES: [char; 4] = ['"', '“', '”', '„'];
        let (opening, closing) = (words.find(QUOTES)?, words.rfind(QUOTES)?);
        let behind = words.get(closing..)?.trim_start_matches(QUOTES).trim();
        let list = words.get(opening..closing)?;
        let before = words.get(..opening)?.trim();
        let maker = before
            .trim_end_matches([',', ':', '(', '.'])
            .trim_end_matches("'s")
            .trim_end_matches("’s")
            .trim();
        if !maker.is_empty() && self.is_named(maker) {
            let tail = behind.trim_matches([')', '.', ',', ' ']);
            let tailed = tail.is_empty() || tail.starts_with('(');
            let mut listed = tailed.then(|| self.products(list, maker)).flatten()?;
            if tail.starts_with('(') && says_limit(tail) {
                listed.limits.push(behind.to_owned());
            }
            return Some(listed);
        }
        let maker = led_maker(behind)?;
        (before.is_empty() && self.is_named(maker))
            .then(|| self.products(list, maker))
            .flatten()
    }

    /// `Product, Product (Maker)`, `Maker (Product, Product)`.
    fn bracketed(self, words: &str) -> Option<Listed> {
        let open = words.rfind(" (")?;
        let inside = words.get(open + 2..)?.strip_suffix(')')?;
        let before = words.get(..open)?;
        let capitals = !words.contains(char::is_lowercase);
        if capitals && !ends_as_firm(inside) && !ends_as_firm(before) {
            return None;
        }
        let is_told = ends_as_firm(inside) || is_coded(before) && !is_coded(inside);
        if self.is_named(inside) && (is_told || !self.is_maker(before)) {
            return self.products(before, inside);
        }
        let may_name = inside.len() > 4 || self.ordinary.coins_one(inside);
        (may_name && self.is_named(before))
            .then(|| self.products(inside, before))
            .flatten()
    }

    /// `Product or Product by Maker`, `Product, made by the Maker`.
    fn made_by(self, words: &str) -> Option<Listed> {
        const LEADS: [&str; 9] = [
            ", both made by ",
            ", both by ",
            ", both of ",
            ", made by ",
            ", by ",
            ", of ",
            " made by ",
            " by ",
            " from ",
        ];
        let (list, maker) = LEADS.iter().find_map(|lead| words.split_once(lead))?;
        // The first word of a sentence has its capital from that: "Obtain from".
        if !list.contains(' ') && !is_coded(list) {
            return None;
        }
        let maker = maker.strip_prefix("the ").unwrap_or(maker);
        self.is_maker(maker)
            .then(|| self.products(list, maker))
            .flatten()
    }

    /// `Maker, Product and Product`: a comma joins much else, so that words in capitals have to end as a firm does.
    fn after_comma(self, words: &str) -> Option<Listed> {
        let (maker, list) = words.split_once(", ")?;
        let capitals = !maker.contains(char::is_lowercase);
        if !self.is_maker(maker) || capitals && !ends_as_firm(maker) {
            return None;
        }
        self.products(list, maker)
    }

    /// Whether a line begins as an entry does, whatever else it says: a maker, a sign, and more.
    pub(super) fn begins_entry(self, line: &str) -> bool {
        let line = line
            .trim()
            .trim_start_matches(['*', '•', '-', '–'])
            .trim_start();
        let joint = JOINTS.iter().filter_map(|joint| line.find(joint)).min();
        joint
            .and_then(|at| line.get(..at))
            .is_some_and(|maker| self.is_maker(maker))
    }

    /// Whether words are a maker's name by themselves: in capitals, ending as firms do, or several capitalised words of which one is coined.
    pub(super) fn is_maker(self, words: &str) -> bool {
        const LINKS: [&str; 6] = ["of", "and", "&", "the", "de", "und"];
        const MOST: usize = 6;
        if words.contains(['(', ')', ':', '"', ';', '=', '/'])
            || !words.starts_with(char::is_alphabetic)
            || speaks(words)
            || words.contains(|c: char| c.is_ascii_digit())
        {
            return false;
        }
        let count = words.split_whitespace().count();
        let titled = words
            .split_whitespace()
            .all(|word| LINKS.contains(&word) || word.starts_with(char::is_uppercase));
        let coins = self.ordinary.coins_one(words) || words.contains(" & ");
        coins && (is_maker(words) || titled && !words.contains(", ") && (2..=MOST).contains(&count))
    }

    /// Whether words beside a product's name are its maker: there a single coined word will do.
    pub(super) fn is_named(self, words: &str) -> bool {
        let one = !words.contains([' ', ',', '"']) && self.ordinary.is_coined(words);
        one && !words.contains(|c: char| c.is_ascii_digit()) || self.is_maker(words)
    }

    /// The products of a list, each of which has to look like one.
    pub(super) fn products(self, list: &str, maker: &str) -> Option<Listed> {
        let mut listed = Listed::default();
        let mut all_typed = false;
        for part in split_outside(list) {
            let (name, notes) = without_brackets(&part);
            let quoted = name.trim().starts_with(['"', '“', '„']);
            let name = name
                .trim()
                .trim_matches(['"', '“', '”', '„', '.', ';', ' ', ',', '*', '†'])
                .trim();
            let typed = ["Types ", "Type ", "TYPES ", "TYPE ", "types ", "type "]
                .iter()
                .find_map(|kind| name.strip_prefix(kind));
            all_typed |= typed.is_some();
            let name = without_generic(typed.unwrap_or(name));
            if is_colour(name) && !listed.names.is_empty() {
                continue;
            }
            let told = quoted
                || all_typed && name.contains(|c: char| c.is_uppercase() || c.is_ascii_digit());
            let plain = told && is_short(name) && !says_limit_outside(name) && !holds_measure(name);
            if name.is_empty() || !(self.is_product(name) || plain) {
                return None;
            }
            for note in notes {
                if says_limit(&note) {
                    listed.limits.push(format!("{name} {note}"));
                }
            }
            listed.names.push(ProductName {
                maker: maker.to_owned(),
                product: name.to_owned(),
            });
        }
        (!listed.names.is_empty()).then_some(listed)
    }

    /// Whether words can be a product's name: short, begun with a capital or a digit, with a coined word, a code or a number, and saying nothing else.
    pub(super) fn is_product(self, words: &str) -> bool {
        let count = words.split_whitespace().count();
        // `Brennafug 200 hvit`: at most one word at the end is small.
        let mut small = words
            .split_whitespace()
            .skip(1)
            .enumerate()
            .filter(|(_, word)| word.chars().all(char::is_lowercase));
        let small = small.all(|(at, _)| at + 2 == count);
        let code = words.split_whitespace().any(|word| {
            let letters = word.chars().filter(|c| c.is_alphabetic()).count();
            let digits = word.chars().any(|c| c.is_ascii_digit());
            let capitals = word
                .chars()
                .filter(|c| c.is_alphabetic())
                .all(char::is_uppercase);
            let head = word.split('-').next().unwrap_or_default();
            let coded = word.contains('-')
                && (2..=4).contains(&head.len())
                && head.chars().all(char::is_uppercase);
            letters >= 2 && capitals && !self.is_plain(word) || coded || digits
        });
        is_short(words)
            && (1..=6).contains(&count)
            && words.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
            && words.chars().any(char::is_alphabetic)
            && !tells_of_document(words)
            && small
            && !says_limit_outside(words)
            && !holds_measure(words)
            && (code || self.ordinary.coins_one(words))
    }

    /// Whether a word is coined.
    pub(super) fn coins(self, word: &str) -> bool {
        self.ordinary.is_coined(word) || word.contains(|c: char| c.is_ascii_digit())
    }

    /// Whether a word in capitals is only a word in capitals.
    fn is_plain(self, word: &str) -> bool {
        let letters = word.chars().filter(|c| c.is_alphabetic()).count();
        letters >= 3 && !self.ordinary.coins_one(word)
    }
}

/// Whether a word of several is a code, as a product's name has and a maker's hasn't: `FX`, `40`.
pub(super) fn is_coded(words: &str) -> bool {
    words.split_whitespace().any(|word| {
        let short = (1..=3).contains(&word.len()) && word.chars().all(char::is_uppercase);
        short || word.contains(|c: char| c.is_ascii_digit())
    })
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

/// Whether words speak, as no firm's name does, or name whoever tests and lists.
fn speaks(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "where",
        "when",
        "if",
        "see",
        "over",
        "under",
        "to",
        "in",
        "at",
        "with",
        "from",
        "for",
        "not",
        "no",
        "all",
        "any",
        "each",
        "shall",
        "must",
        "is",
        "are",
        "on",
        "testing",
        "laboratory",
        "laboratories",
        "institute",
        "institut",
        "register",
        "registry",
        "bureau",
        "office",
        "college",
        "university",
        "authority",
        "listing",
        "certification",
        "compendium",
        "test",
        "page",
        "sheet",
        "prüfstelle",
        "engineering",
        "house",
        "evaluation",
        "note",
        "notes",
        "table",
        "but",
        "never",
    ];
    const LABELLING: &[&str] = &[
        "product",
        "products",
        "maker",
        "makers",
        "material",
        "materials",
    ];
    let mut words = words
        .split(|c: char| !c.is_alphanumeric())
        .map(str::to_lowercase)
        .peekable();
    let labelled = words
        .peek()
        .is_some_and(|first| LABELLING.contains(&first.as_str()));
    labelled || words.any(|word| SAYING.contains(&word.as_str()))
}

/// Whether words name a document or a part of one.
fn tells_of_document(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "page",
        "listing",
        "entry",
        "report",
        "design",
        "edition",
        "file",
        "issue",
        "rev",
        "revision",
        "sheet",
        "detail",
        "case",
        "register",
        "drawing",
        "certificate",
        "clause",
        "step",
        "item",
        "items",
        "note",
        "notes",
        "figure",
        "table",
    ];
    words.contains(" / ")
        || words.matches('/').count() > 1
        || words
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| SAYING.contains(&word.to_lowercase().as_str()))
}

/// A name without the words for what it is: `Palliflex 330 joint spray`.
fn without_generic(words: &str) -> &str {
    const GENERIC: [&str; 6] = [
        " joint spray",
        " spray",
        " sealant",
        " coating",
        " mastic",
        " caulk",
    ];
    GENERIC
        .iter()
        .find_map(|generic| words.strip_suffix(generic))
        .filter(|rest| rest.contains(' '))
        .unwrap_or(words)
}

fn is_colour(words: &str) -> bool {
    const COLOURS: &[&str] = &[
        "white", "grey", "gray", "red", "black", "green", "blue", "beige",
    ];
    COLOURS.contains(&words.to_lowercase().as_str())
}

/// Whether words are no more than a name.
fn is_short(words: &str) -> bool {
    const LONGEST: usize = 48;
    let joined = JOINTS.iter().any(|joint| words.contains(joint));
    words.len() <= LONGEST && !joined && !words.contains(['"', '|', '='])
}

/// Small words that say more than a name does.
fn says_limit_outside(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "for", "in", "where", "when", "with", "to", "at", "over", "under", "up", "if", "on",
        "only", "is", "are", "be", "shall", "must", "may", "per", "of",
    ];
    // `Caulk IS` is a name, and `CAULK FOR FLOORS` is more than one.
    let capitals = !words.contains(char::is_lowercase);
    words.split(|c: char| !c.is_alphanumeric()).any(|word| {
        let small = word.to_lowercase();
        let names = ["IS", "IF", "UP", "BE"].contains(&word);
        SAYING.contains(&small.as_str()) && (small == word || capitals && !names)
    })
}

/// The maker that a lead names: `of the Pellowfield Rubber Company`, `(Ombrel Kemi)`.
fn led_maker(words: &str) -> Option<&str> {
    const LEADS: [&str; 8] = [
        "both made by ",
        "both of ",
        "both by ",
        "made by ",
        "of ",
        "by ",
        "from ",
        ", ",
    ];
    let words = words
        .trim()
        .trim_start_matches(", ")
        .trim_end_matches(['.', ',']);
    if let Some(inside) = words.strip_prefix('(') {
        return inside.strip_suffix(')');
    }
    let maker = LEADS.iter().find_map(|lead| words.strip_prefix(lead))?;
    Some(maker.strip_prefix("the ").unwrap_or(maker).trim())
}

/// A name without what stands in brackets behind it, and that.
pub(super) fn without_brackets(words: &str) -> (String, Vec<String>) {
    let mut name = String::new();
    let mut notes: Vec<String> = Vec::new();
    let mut depth = 0_u32;
    for c in words.chars() {
        match c {
            '(' | '[' => {
                depth += 1;
                if depth == 1 {
                    notes.push(String::new());
                }
            }
            ')' | ']' => depth = depth.saturating_sub(1),
            _ if depth > 0 => {
                if let Some(note) = notes.last_mut() {
                    note.push(c);
                }
            }
            _ => name.push(c),
        }
    }
    (name.split_whitespace().collect::<Vec<_>>().join(" "), notes)
}
