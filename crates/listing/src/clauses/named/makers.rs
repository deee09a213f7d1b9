//! Makers, and the list of products after one.

use crate::model::ProductName;

/// Ways in which firms' names end.
const FIRM_ENDS: &[&str] = &[
    "inc",
    "co",
    "corp",
    "corporation",
    "company",
    "ltd",
    "limited",
    "llc",
    "gmbh",
    "ag",
    "s.a",
    "sa",
    "plc",
    "bv",
    "b.v",
    "s.p.a",
    "spa",
    "kg",
    "as",
    "oy",
    "works",
    "products",
    "industries",
    "industrial",
    "coatings",
    "chemical",
    "chemicals",
    "sealants",
    "materials",
    "mfg",
    "manufacturing",
    "group",
    "supply",
    "systems",
    "technologies",
    "goods",
    "wools",
    "fibre",
    "fiber",
    "minerals",
    "steel",
    "metals",
    "partners",
    "bros",
    "sons",
    "polymers",
    "laboratories",
    "insulation",
    "gypsum",
    "board",
    "framing",
    "foams",
    "seals",
    "tapes",
    "mills",
    "foundry",
    "trading",
    "international",
];

/// Adds the products of a list to a maker.
pub(super) fn add(names: &mut Vec<ProductName>, maker: &str, list: &str) {
    let maker = maker.trim().trim_end_matches(['.', ',', ':']).trim();
    for product in split_list(list) {
        let product = product
            .trim()
            .trim_matches(['"', '“', '”', '.', ';', ' ', ',', '*'])
            .trim();
        let product = product
            .strip_prefix("Types ")
            .or_else(|| product.strip_prefix("Type "))
            .unwrap_or(product);
        if product.chars().any(char::is_alphanumeric) {
            names.push(ProductName {
                maker: maker.to_owned(),
                product: product.to_owned(),
            });
        }
    }
}

/// Splits `A, B and C (note, note) or D` at its commas and conjunctions, parentheses left whole and then dropped.
pub(in crate::clauses) fn split_list(list: &str) -> Vec<String> {
    let mut parts = vec![String::new()];
    let mut depth = 0_u32;
    for c in list.chars() {
        match c {
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            ',' | ';' if depth == 0 => parts.push(String::new()),
            _ if depth == 0 => {
                if let Some(part) = parts.last_mut() {
                    part.push(c);
                }
            }
            _ => {}
        }
    }
    parts
        .iter()
        .flat_map(|part| part.split(" and "))
        .flat_map(|part| part.split(" or "))
        .map(|part| {
            part.trim()
                .trim_start_matches("and ")
                .trim_start_matches("or ")
                .to_owned()
        })
        .filter(|part| !part.is_empty())
        .collect()
}

pub(super) fn is_maker(words: &str) -> bool {
    let count = words.split_whitespace().count();
    let letters = || words.chars().filter(|c| c.is_alphabetic());
    let capitals = letters().all(char::is_uppercase) && letters().count() >= 4;
    let numberless = !words.chars().any(|c| c.is_ascii_digit());
    let tidy = !words.contains(['(', ')', ':']);
    // `CONFIGURATION A - Floor to floor` names no maker.
    let heads = [
        "configuration ",
        "config ",
        "config. ",
        "detail ",
        "table ",
        "note ",
    ]
    .iter()
    .any(|word| {
        words
            .get(..word.len())
            .is_some_and(|head| head.eq_ignore_ascii_case(word))
    });
    (1..=7).contains(&count)
        && tidy
        && !heads
        && ((capitals && numberless && count >= 2) || ends_as_firm(words))
}

pub(super) fn ends_as_firm(words: &str) -> bool {
    let last = words.split_whitespace().last().unwrap_or_default();
    let last = last.trim_end_matches(['.', ',', ':']).to_lowercase();
    let titled = words
        .split_whitespace()
        .filter(|word| word.len() > 3)
        .all(|word| word.starts_with(char::is_uppercase));
    words.split_whitespace().count() >= 2 && titled && FIRM_ENDS.contains(&last.as_str())
}
