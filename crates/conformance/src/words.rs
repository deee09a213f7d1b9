//! Comparing names and words as people do.

/// A name without what people write differently: capitals, runs of spaces, quotes and trade marks.
///
/// Hyphens and digits stay: `Pad 4` and `Pad 40` are two products.
pub(crate) fn normal(text: &str) -> String {
    let mut clean = String::with_capacity(text.len());
    for word in text.split_whitespace() {
        let start = clean.len();
        if start > 0 {
            clean.push(' ');
        }
        let kept = clean.len();
        for letter in word.chars().filter(|letter| !is_dressing(*letter)) {
            clean.extend(letter.to_lowercase());
        }
        for mark in ["(r)", "(tm)", "(c)"] {
            if clean.ends_with(mark) {
                clean.truncate(clean.len() - mark.len());
            }
        }
        if clean.len() <= kept {
            clean.truncate(start);
        }
    }
    clean
}

/// The verb of a title: packing depth is, board layers are.
pub(crate) fn verb(title: &str) -> &'static str {
    let is_plural = title.ends_with('s') && !title.ends_with("ss");
    if is_plural { "are" } else { "is" }
}

/// Whether a name is, without its dressing, one that has none: as comparing with [`normal`], but nothing is written down.
pub(crate) fn is_dressed(text: &str, bare: &str) -> bool {
    // Trade marks in brackets are taken off the end of a word.
    if text.contains('(') {
        return normal(text) == bare;
    }
    let mut expected = bare.chars();
    let mut is_first = true;
    for word in text.split_whitespace() {
        let letters = word.chars().filter(|letter| !is_dressing(*letter));
        let mut letters = letters.flat_map(char::to_lowercase).peekable();
        if letters.peek().is_none() {
            continue;
        }
        let begins = core::mem::take(&mut is_first) || expected.next() == Some(' ');
        if !begins || !letters.all(|letter| expected.next() == Some(letter)) {
            return false;
        }
    }
    expected.next().is_none()
}

const fn is_dressing(letter: char) -> bool {
    matches!(
        letter,
        '"' | '\''
            | '\u{2018}'
            | '\u{2019}'
            | '\u{201c}'
            | '\u{201d}'
            | '`'
            | '™'
            | '®'
            | '©'
            | '*'
    )
}

/// Whether two names are the same but for their dressing.
pub(crate) fn same(one: &str, other: &str) -> bool {
    one.eq_ignore_ascii_case(other) || is_dressed(one, &normal(other))
}

/// A title as it stands inside a sentence: "Packing depth" as "packing depth", "F rating" as it is.
pub(crate) fn in_sentence(title: &str) -> String {
    let mut letters = title.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if first.is_uppercase() && second.is_lowercase() => {
            first.to_lowercase().chain(letters).collect()
        }
        _ => title.to_owned(),
    }
}

/// A sentence with a capital at its beginning.
pub(crate) fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_without_their_dressing() {
        for (text, expected) in [
            ("  Pale  Wool\n4 ", "pale wool 4"),
            ("\u{201c}Pale\u{201d} Wool™ 4", "pale wool 4"),
            ("PALE WOOL (TM) 4", "pale wool 4"),
            ("Palewool(R)", "palewool"),
            ("™", ""),
            ("", ""),
        ] {
            assert_eq!(normal(text), expected, "{text}");
            assert!(is_dressed(text, expected), "{text}");
            assert!(!is_dressed(text, "pale"), "{text}");
            assert!(!is_dressed(text, "pale wool 40"), "{text}");
        }
        assert!(!same("Pale 4", "Pale 40"));
        assert!(!same("Pale-4", "Pale 4"));
    }

    proptest::proptest! {
        #[test]
        fn comparing_is_comparing_what_normal_makes(
            one in "[ aAbé™*'(rtm)4-]{0,9}",
            other in "[ aAbé™*'(rtm)4-]{0,9}",
        ) {
            let bare = normal(&other);
            proptest::prop_assert_eq!(is_dressed(&one, &bare), normal(&one) == bare);
            proptest::prop_assert!(is_dressed(&other, &bare));
        }
    }

    #[test]
    fn titles_in_a_sentence() {
        assert_eq!(in_sentence("Packing depth"), "packing depth");
        assert_eq!(in_sentence("F rating"), "F rating");
        assert_eq!(in_sentence(""), "");
    }

    #[test]
    fn paths_of_items() {
        for text in ["3A", "Item 3A", "item 3(a)", "3.A"] {
            assert_eq!(listing::bare_path(text), "3a", "{text}");
        }
    }
}
