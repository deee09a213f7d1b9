//! Properties by the names that facts go by.

use site::{said_of, without_listing};
use vocabulary::vocabulary;

/// The title of a property: the vocabulary's, else the listing's own words for it; with the item, where the fact is of the part that one item
/// describes, and the listing that it was said of: "Runner gauge (item 2A of hw-d-0412-ed4)".
pub fn title(name: &str) -> String {
    let listing = said_of(name).map(|said| said.listing);
    let name = without_listing(name);
    let (item, plain) = match name.split_once(':') {
        Some((item, plain)) => (Some(item), plain),
        None => (None, name),
    };
    let title = vocabulary().property(plain).map_or_else(
        || capitalised(&plain.replace(['.', '_'], " ")),
        |known| known.title.clone(),
    );
    match (item, listing) {
        (Some(item), Some(listing)) => format!("{title} (item {item} of {listing})"),
        (Some(item), None) => format!("{title} (item {item})"),
        (None, Some(listing)) => format!("{title} (of {listing})"),
        (None, None) => title,
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
        assert_eq!(
            title("2A2:flute_width@hw-d-1#0123456789abcdef"),
            "Flute width (item 2A2 of hw-d-1)"
        );
        assert_eq!(title("option.3B@hw-d-1"), "Option 3B (of hw-d-1)");
    }
}
