//! The capitalised words that a stretch of text begins or ends with, and the products in them.

use super::super::entry::Reader;
use super::super::limits::holds_measure;
use super::super::name::is_coded;
use super::quoted::is_short_form;

/// The run of capitalised words that a text begins with.
pub(super) fn capital_head(text: &str) -> &str {
    const LINKS: [&str; 4] = ["of", "and", "&", "the"];
    let mut end = 0;
    let mut at = 0;
    for word in text.split_inclusive(' ') {
        let bare = word.trim_end();
        let closes =
            bare.ends_with([',', ';', ')', ':']) || bare.ends_with('.') && !is_short_form(bare);
        let name = bare.trim_end_matches([',', ';', ')', ':', '.']);
        let capital = name.starts_with(char::is_uppercase);
        if !(capital || LINKS.contains(&name) && !closes) {
            break;
        }
        at += word.len();
        if capital {
            let kept = if closes { name.len() } else { bare.len() };
            end = at - word.len() + kept;
        }
        if closes {
            break;
        }
    }
    text.get(..end).unwrap_or_default()
}

/// The run of capitalised words that a text ends with.
pub(super) fn capital_tail(text: &str) -> &str {
    let mut start = text.len();
    let mut at = text.len();
    for word in text.rsplit(' ') {
        at = at.saturating_sub(word.len());
        let capital = word.starts_with(char::is_uppercase) && !word.ends_with([',', ';', ':']);
        let joins = [
            "OR", "AND", "BY", "FROM", "WITH", "USE", "Use", "Either", "EITHER",
        ];
        let stops = word.ends_with('.') && !is_short_form(word) || joins.contains(&word);
        if stops || !(capital || ["&", "of", "and"].contains(&word) && start < text.len()) {
            break;
        }
        if capital {
            start = at;
        }
        at = at.saturating_sub(1);
    }
    text.get(start..).unwrap_or_default()
}

/// The products that a text ends with, those that a conjunction joins included.
pub(super) fn product_tail<'w>(text: &'w str, reader: Reader<'_>) -> &'w str {
    // In capitals throughout, what is done with a product begins big, too.
    const STOPS: [&str; 14] = [
        "USE", "APPLY", "BE", "IS", "ARE", "SHALL", "WITH", "OF", "THE", "IN", "INSTALL", "USING",
        "FIT", "PROVIDE",
    ];
    let mut start = text.len();
    let mut at = text.len();
    for word in text.rsplit(' ') {
        at = at.saturating_sub(word.len());
        let named = word.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
            && !word.ends_with([';', ':', '.', '"'])
            && !word.contains(['(', ')']);
        let joins = ["or", "and"].contains(&word) && start < text.len();
        let stops = STOPS.contains(&word);
        if stops || !named && !joins {
            break;
        }
        if named {
            start = at;
        }
        at = at.saturating_sub(1);
    }
    let mut tail = text.get(start..).unwrap_or_default();
    // The first word of a sentence has its capital from that: `Use Quennslab 80`, `Sealant Pennard Pourable`.
    if let Some((first, rest)) = tail.split_once(' ')
        && !reader.coins(first)
        && (first.len() > 3 || first.contains(char::is_lowercase))
        && reader.products(rest, "").is_some()
    {
        tail = rest;
    }
    let opens = tail.len() == text.trim_start().len() && !tail.contains(' ') && !is_coded(tail);
    if !opens && reader.products(tail, "").is_some() {
        tail
    } else {
        ""
    }
}

/// The products that a text begins with, those that a conjunction joins included.
pub(super) fn product_head<'w>(text: &'w str, reader: Reader<'_>) -> &'w str {
    let mut end = 0;
    let mut at = 0;
    for word in text.split_inclusive(' ') {
        let bare = word.trim_end();
        let name = bare.trim_matches([',', ';', ':', '.', ')', '"', '“', '”']);
        let named = name.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit());
        let joins = ["or", "and"].contains(&bare) && end > 0;
        if !named && !joins {
            break;
        }
        at += word.len();
        if named {
            end = at - word.len() + bare.trim_end_matches([',', ';', ':', '.', ')']).len();
        }
        if bare.ends_with([',', ';', ':', '.', ')']) {
            break;
        }
    }
    let list = text.get(..end).unwrap_or_default();
    // `Orriflex 20 mm`, `Orriflex Spray is`: a number that is measured is none of a name.
    let next = text.get(end..).unwrap_or_default().trim_start();
    let next = next.split(' ').next().unwrap_or_default();
    let ending = list.rsplit(' ').next().unwrap_or_default();
    let measured = holds_measure(&format!("{ending} {next}"));
    if !measured && reader.products(list, "").is_some() {
        list
    } else {
        ""
    }
}
