//! Properties by the names that facts go by.

use vocabulary::vocabulary;

/// The title of a property: the vocabulary's, else the listing's own words for it; with the item, where the fact is of the part that one item
/// describes: "Runner gauge (item 2A)".
pub fn title(name: &str) -> String {
    let (item, plain) = match name.split_once(':') {
        Some((item, plain)) => (Some(item), plain),
        None => (None, name),
    };
    let title = vocabulary().property(plain).map_or_else(
        || capitalised(&plain.replace(['.', '_'], " ")),
        |known| known.title.clone(),
    );
    match item {
        Some(item) => format!("{title} (item {item})"),
        None => title,
    }
}

fn capitalised(words: &str) -> String {
    let mut chars = words.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::title;

    #[test]
    fn titles_of_the_vocabulary_and_of_a_listing_s_own() {
        assert_eq!(title("packing.density"), "Packing density");
        assert_eq!(title("2A:runner.gauge"), "Runner gauge (item 2A)");
        assert_eq!(title("2A2:flute_width"), "Flute width (item 2A2)");
        assert_eq!(title("option.3B"), "Option 3B");
    }
}
