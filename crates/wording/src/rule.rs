//! The rules of the reader by what they read, not by their names alone.

/// What a rule reads, in plain words, from the page that describes it; nothing for a name that no rule has.
///
/// ```
/// assert_eq!(
///     wording::rule::reads("range or tolerance").as_deref(),
///     Some("a number that states both its ends")
/// );
/// ```
pub fn reads(name: &str) -> Option<String> {
    if let Some(words) = beside_the_bounds(name) {
        return Some(words.to_owned());
    }
    let page = listing::rules::rule_page(name)?;
    let paragraph = page.split("\n\n").find(|part| !part.starts_with('#'))?;
    let on_one_line = paragraph.split_whitespace().collect::<Vec<_>>().join(" ");
    let plain = on_one_line.replace(['*', '`'], "");
    let sentence = plain.strip_prefix("Reads ").unwrap_or(&plain);
    let end = [": ", ". ", " (", ", w"]
        .iter()
        .filter_map(|end| sentence.find(end))
        .min();
    let words = end.and_then(|end| sentence.get(..end)).unwrap_or(sentence);
    Some(words.trim_end_matches('.').to_owned())
}

/// The rules that bound no number, and so have no page.
fn beside_the_bounds(name: &str) -> Option<&'static str> {
    match name {
        "named products" => Some("makers and products named in a row"),
        "table cell" => Some("a cell of a table, under the heading of its column"),
        "reference" => Some("words that point to another place or document"),
        "class code" => Some("a code of classes, such as EI 120"),
        "kind beside a number" => Some("a kind of material named beside a number"),
        _ => None,
    }
}

/// The rules of a clause, each with what it reads: `“word after” (a qualifying word that follows a number)`.
pub fn named(names: &[String]) -> String {
    let told: Vec<String> = names
        .iter()
        .map(|name| match reads(name) {
            Some(words) => format!("“{name}” ({words})"),
            None => format!("“{name}”"),
        })
        .collect();
    crate::text::listed(&told)
}

#[cfg(test)]
mod tests {
    use super::reads;

    #[test]
    fn every_rule_says_in_one_phrase_what_it_reads() {
        for rule in listing::rules::RULES {
            let words = reads(rule.name).unwrap_or_default();
            assert!(
                (10..110).contains(&words.len()) && words != rule.name,
                "{}: {words}",
                rule.name
            );
            let first = words.chars().next();
            assert!(first.is_some_and(|c| !c.is_uppercase()), "{words}");
        }
        assert_eq!(reads("no such rule"), None);
    }
}
