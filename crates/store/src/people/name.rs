//! Names of people: what may be one, and which are the same.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;
use unicode_security::skeleton;

use crate::error::StoreError;
use crate::key::{Key, Kind};

/// The most characters of a name.
pub const MOST_IN_NAME: usize = 80;

/// A name in the form in which equal names are equal: compatible characters and capitals alike (Unicode's NFKC, in small letters),
/// one space between words.
pub fn folded(name: &str) -> String {
    let small: String = name.nfkc().flat_map(char::to_lowercase).nfkc().collect();
    small.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The key of whoever goes by a name.
pub fn key_of(name: &str) -> Key {
    Key::new(Kind::Person, folded(name), "")
}

/// Whether two names look alike though they aren't the same: their letters are of several scripts, or one stands for another (Unicode
/// Technical Standard 39, section 4).
pub fn looks_like(one: &str, other: &str) -> bool {
    let look = |name: &str| skeleton(name).collect::<String>();
    let (one_small, other_small) = (folded(one), folded(other));
    one_small != other_small && (look(one) == look(other) || look(&one_small) == look(&other_small))
}

/// A name as it stands in the journal: one space between words.
///
/// # Errors
/// When it has no letter, is too long, or holds what could make it look like another, such as a mark that turns the direction of writing.
pub fn proper(name: &str) -> Result<String, StoreError> {
    let name = name.split_whitespace().collect::<Vec<_>>().join(" ");
    let name: String = name.nfc().collect();
    let may_be = |c: char| c.is_alphanumeric() || is_combining_mark(c) || " .,'’-()".contains(c);
    if !name.chars().any(char::is_alphabetic) {
        Err(refused("a name needs a letter"))
    } else if name.chars().count() > MOST_IN_NAME {
        Err(refused(&format!(
            "a name has at most {MOST_IN_NAME} characters"
        )))
    } else if let Some(odd) = name.chars().find(|c| !may_be(*c)) {
        Err(refused(&format!(
            "a name is of letters, digits, spaces and . , ' - ( ), and this one has `{}`",
            odd.escape_debug()
        )))
    } else {
        Ok(name)
    }
}

fn refused(message: &str) -> StoreError {
    StoreError::Refused(message.to_owned())
}

#[cfg(test)]
mod tests {
    use super::{folded, looks_like, proper};

    #[test]
    fn names_that_look_alike_are_told() {
        // A Cyrillic A; Cyrillic letters alone; a capital I for a small l; a digit. UTS 39's own example is `paypal` in two scripts.
        for (one, other) in [
            ("Ada Venn", "\u{410}da Venn"),
            ("cope", "\u{441}\u{43e}\u{440}\u{435}"),
            ("Al Reed", "AI Reed"),
            ("Olson", "0lson"),
            ("paypal", "p\u{430}yp\u{430}l"),
        ] {
            assert!(looks_like(one, other), "{one} {other}");
        }
        for (one, other) in [("Ada", "ADA"), ("Ada", "Ida"), ("R. Lee", "R. Leigh")] {
            assert!(!looks_like(one, other), "{one} {other}");
        }
    }

    #[test]
    fn equal_names_are_equal_however_they_are_typed() {
        // Unicode Standard Annex 15: a ligature and full-width letters are compatible with plain ones.
        for name in [
            "R. Fiona",
            " r.  FIONA ",
            "R. \u{fb01}ona",
            "\u{ff32}. Fiona",
        ] {
            assert_eq!(folded(name), "r. fiona", "{name}");
        }
        assert_eq!(folded("Zoe\u{308}"), folded("ZO\u{cb}"));
    }

    #[test]
    fn what_could_mislead_is_no_name() {
        assert_eq!(
            proper("  Ng  Lê, O'Hara-Nuñez (2) ").unwrap(),
            "Ng Lê, O'Hara-Nuñez (2)"
        );
        for name in [
            "",
            " ",
            "12",
            "Kim\u{202e}eeL",
            "Kim\u{200b}",
            "<b>Kim</b>",
            "Kim\nLee:",
            "a\0",
        ] {
            let named = proper(name);
            assert!(
                named.is_err() || named.is_ok_and(|named| !named.contains(['\n', '\0'])),
                "{name:?}"
            );
        }
        assert!(proper("Kim\u{202e}eeL").is_err());
        assert!(proper("<b>Kim</b>").is_err());
        assert!(proper(&"k".repeat(81)).is_err());
    }
}
