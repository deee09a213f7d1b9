//! Alternatives: configurations, alternates to an item, optional items.

use crate::model::{OptionGroup, OptionGroupKind};
use crate::outline::OutlineItem;

/// What an item says of itself as an option.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct ItemOption {
    /// The items that it may replace.
    pub(crate) replaces: Vec<String>,
    /// Whether it may be left out.
    pub(crate) optional: bool,
    /// Configurations that it belongs to.
    pub(crate) configurations: Vec<String>,
}

/// Reads what the title and first words of the item `own` say of it as an option.
pub(crate) fn item_option(own: &str, title: &str, opening: &str, paths: &[String]) -> ItemOption {
    let head = format!(
        "{title} | {}",
        opening.chars().take(220).collect::<String>()
    );
    let lower = head.to_lowercase();
    let title_lower = title.to_lowercase();
    let alternate = [
        "alternate to",
        "alternative to",
        "alternates to",
        "alternatively to",
        "alt. to",
        "alt to",
        "in lieu of",
        "in place of",
        "instead of",
    ]
    .iter()
    .filter_map(|words| lower.find(words).map(|at| at + words.len()))
    .min()
    .filter(|at| *at <= title.len() + 90);
    let replaces = alternate
        .map(|at| cited(own, head.get(at..).unwrap_or_default(), paths))
        .unwrap_or_default();
    let optional = title_lower.contains("optional")
        || title_lower.ends_with("option")
        || title_lower.contains("(option")
        || lower.get(title.len()..).is_some_and(|rest| {
            rest.trim_start_matches([' ', '|', '(', '-'])
                .starts_with("optional")
        });
    let configurations = if title_lower.contains("config") {
        configurations(title)
    } else {
        Vec::new()
    };
    // "Alternate to Item 3, in flutes only" leaves the item in force everywhere else: nothing is replaced by it.
    let partly =
        !replaces.is_empty() && title_lower.contains(" only") && !title_lower.contains("config");
    ItemOption {
        replaces: if partly { Vec::new() } else { replaces },
        optional: partly || (optional && alternate.is_none()),
        configurations,
    }
}

/// The items that words of the item `own` cite, one after another, at their beginning: `Item 2A`, `Items 2A and 2B`, `4.1`, `§ 3(d)`, `(a)`, `2 c)`.
fn cited(own: &str, words: &str, paths: &[String]) -> Vec<String> {
    let words: Vec<&str> = words
        .split(|c: char| c.is_whitespace() || matches!(c, ',' | ';' | ':'))
        .filter(|word| !word.is_empty())
        .take(7)
        .collect();
    let mut found: Vec<String> = Vec::new();
    let mut through = false;
    let mut at = 0;
    while let Some(word) = words.get(at) {
        at += 1;
        let letter = words.get(at).and_then(|next| letter_of(word, next));
        at += usize::from(letter.is_some());
        let path = match letter {
            // `2 c)` that isn't found may not be taken for the whole of 2.
            Some(letter) => lettered(word, letter, paths),
            None => named(own, word, paths),
        };
        let Some(path) = path else {
            let bare = bare(word).to_lowercase();
            let is_through = matches!(bare.as_str(), "to" | "through");
            let leads_on = matches!(
                bare.as_str(),
                "item" | "items" | "and" | "or" | "the" | "§" | "base" | "of"
            );
            through |= is_through;
            if is_through || leads_on {
                continue;
            }
            break;
        };
        // `4.1 to 4.3` cites those between, too.
        if through && let Some(last) = found.last() {
            let between: Vec<String> = between(last, path, paths).collect();
            found.extend(between);
        }
        found.push(path.clone());
        through = false;
    }
    found
}

fn bare(word: &str) -> &str {
    word.trim_end_matches(['.', ')', '*'])
        .trim_start_matches('(')
}

/// The item that a word names.
fn named<'p>(own: &str, word: &str, paths: &'p [String]) -> Option<&'p String> {
    let bare = bare(word);
    let unbalanced = if bare.contains('(') && !bare.contains(')') {
        format!("{bare})")
    } else {
        bare.to_owned()
    };
    let beside = word.starts_with('(').then(|| sibling(own, bare)).flatten();
    let is_named = |path: &&String| {
        **path == unbalanced
            || path.trim_start_matches('§') == unbalanced
            || beside.as_ref() == Some(*path)
    };
    paths.iter().find(is_named)
}

/// The letter in brackets that stands apart from the number before it: `2 c)`, `2 (c)`. A letter without one may be the word "a".
fn letter_of<'w>(number: &str, word: &'w str) -> Option<&'w str> {
    let number = number.trim_start_matches(['(', '§']);
    let is_number = number.starts_with(|c: char| c.is_ascii_digit())
        && number.ends_with(|c: char| c.is_ascii_alphanumeric());
    let word = word.trim_end_matches(['.', '*']);
    let letter = word.trim_end_matches(')').trim_start_matches('(');
    let is_letter = word.ends_with(')')
        && letter.chars().count() == 1
        && letter.starts_with(char::is_alphabetic);
    (is_number && is_letter).then_some(letter)
}

/// The item of a number and a letter.
fn lettered<'p>(number: &str, letter: &str, paths: &'p [String]) -> Option<&'p String> {
    let number = number.trim_start_matches(['(', '§']);
    let is_named = |path: &&String| {
        let rest = path.trim_start_matches('§').strip_prefix(number);
        rest.is_some_and(|rest| rest.trim_matches(['(', ')', '.', ' ']) == letter)
    };
    paths.iter().find(is_named)
}

/// The items that stand between two.
fn between<'p>(from: &str, to: &str, paths: &'p [String]) -> impl Iterator<Item = String> + 'p {
    let place = |item: &str| paths.iter().position(|path| path == item);
    let between = place(from).zip(place(to));
    let between = between.and_then(|(from, to)| paths.get(from + 1..to));
    between.unwrap_or_default().iter().cloned()
}

/// The item beside another that a letter in brackets cites: `(a)` within `3(b)` is `3(a)`.
fn sibling(own: &str, letter: &str) -> Option<String> {
    let around = own.get(..own.rfind('(')?)?;
    let is_letter = letter.len() == 1 && letter.starts_with(|c: char| c.is_ascii_lowercase());
    let sibling = format!("{around}({letter})");
    (is_letter && sibling != own).then_some(sibling)
}

fn configurations(title: &str) -> Vec<String> {
    let words: Vec<&str> = title
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    words
        .windows(2)
        .filter(|pair| {
            pair.first()
                .is_some_and(|word| word.to_lowercase().starts_with("config"))
        })
        .filter_map(|pair| pair.get(1))
        .filter(|label| label.len() == 1)
        .map(|label| format!("Configuration {label}"))
        .collect()
}

/// The option groups of a listing, from what its items say and from the configurations that its text names.
pub(crate) fn groups(
    items: &[OutlineItem],
    options: &[ItemOption],
    named: &[String],
) -> Vec<OptionGroup> {
    let mut groups: Vec<OptionGroup> = Vec::new();
    let mut configurations: Vec<String> = Vec::new();
    for name in named
        .iter()
        .chain(options.iter().flat_map(|option| &option.configurations))
    {
        if !configurations.contains(name) {
            configurations.push(name.clone());
        }
    }
    configurations.sort();
    if !configurations.is_empty() {
        groups.push(OptionGroup {
            id: "configuration".to_owned(),
            kind: OptionGroupKind::Configurations,
            base_item: None,
            also_replaced: Vec::new(),
            choices: configurations,
        });
    }
    for (item, option) in items.iter().zip(options) {
        if let Some(base) = option.replaces.first() {
            match groups
                .iter_mut()
                .find(|group| group.base_item.as_ref() == Some(base))
            {
                Some(group) => group.choices.push(item.path.clone()),
                None => groups.push(OptionGroup {
                    id: base.clone(),
                    kind: OptionGroupKind::Alternates,
                    base_item: Some(base.clone()),
                    also_replaced: option.replaces.iter().skip(1).cloned().collect(),
                    choices: vec![base.clone(), item.path.clone()],
                }),
            }
        } else if option.optional {
            groups.push(OptionGroup {
                id: item.path.clone(),
                kind: OptionGroupKind::Optional,
                base_item: None,
                also_replaced: Vec::new(),
                choices: vec![item.path.clone()],
            });
        }
    }
    groups
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(title: &str, opening: &str, replaces: &[&str], optional: bool) {
        let paths: Vec<String> = ["2A", "2B", "4.1", "F2", "§3(d)", "3(a)", "3(b)"]
            .iter()
            .map(ToString::to_string)
            .collect();
        let found = item_option("3(b)", title, opening, &paths);
        assert_eq!(
            (
                found
                    .replaces
                    .iter()
                    .map(String::as_str)
                    .collect::<Vec<_>>(),
                found.optional
            ),
            (replaces.to_vec(), optional),
            "{title}"
        );
    }

    #[test]
    fn items_that_are_options() {
        check(
            "SLOTTED RUNNER -- (Alternate to Item 2A, Configuration A only)",
            "Slotted runner to",
            &["2A"],
            false,
        );
        check(
            "Packing -- Alternate to Item 2A, in flutes only",
            "Min 4 in.",
            &[],
            true,
        );
        check(
            "Continuous Angle",
            "As an alternate to Item 2A, min 20 gauge",
            &["2A"],
            false,
        );
        check(
            "Direct Attachment",
            "As an alternate to Items 2A and 2B, for the 1 Hr",
            &["2A", "2B"],
            false,
        );
        check("alt. to F2: SPRAY", "1/8 in. wet", &["F2"], false);
        check(
            "Spray coating [3] (alternate to 4.1)",
            "Wet film",
            &["4.1"],
            false,
        );
        check(
            "STEEL ANGLES -- (Configuration B, Optional)",
            "No. 20 MSG",
            &[],
            true,
        );
        check("Hollow-core option", "Hollow-core units", &[], true);
        check("GYPSUM BOARD", "Gypsum board installed to", &[], false);
        // A letter in brackets is of the same item; a bare one may be a word.
        check("Shaft wall, in place of (a)", "Studs", &["3(a)"], false);
        check(
            "Shaft wall, in place of a masonry wall",
            "Studs",
            &[],
            false,
        );
        check("Shaft wall, in place of (c)", "Studs", &[], false);
    }

    #[test]
    fn a_number_and_a_letter_set_apart_are_one_item_and_never_the_whole() {
        let paths: Vec<String> = ["2", "2a", "2b", "2c", "2d", "21", "4(a)"]
            .iter()
            .map(ToString::to_string)
            .collect();
        let replaces = |title: &str| item_option("2d", title, "Studs", &paths).replaces;
        assert_eq!(replaces("Slotted runner (alternate to 2 c))"), ["2c"]);
        assert_eq!(replaces("Slotted runner (alternate to 2 (b))"), ["2b"]);
        assert_eq!(
            replaces("Slotted runner, in place of 2 a) and 2 b)"),
            ["2a", "2b"]
        );
        assert_eq!(
            replaces("Slotted runner, in place of 2 a) to 2 c)"),
            ["2a", "2b", "2c"]
        );
        assert_eq!(replaces("Slotted runner, in lieu of 4 (a)"), ["4(a)"]);
        assert_eq!(replaces("Slotted runner, in lieu of 21"), ["21"]);
        // What can't be found leaves the whole item in force, and this one beside it.
        assert!(replaces("Slotted runner (alternate to 2 e))").is_empty());
        assert_eq!(replaces("Slotted runner (alternate to 2)"), ["2"]);
    }
}
