//! Of which listing something is said.
//!
//! A listing has properties for itself: of the part that one of its items describes (`2A:runner.gauge`), by its own words
//! (`2A2:flute_width`), and which of its options is built (`option.3B`). Another listing may use the same item and words for something
//! else. So the name of such a fact ends with the listing that it is said of: `2A2:flute_width@hw-d-0412-ed4`; a person's answer also names
//! the document by the beginning of its SHA-256, `2A2:flute_width@hw-d-0412-ed4#0123456789abcdef`, as another edition may come under
//! the same name.

use vocabulary::vocabulary;

/// What stands between a property and the listing that a fact on it is said of.
const AT: char = '@';

/// What stands between a listing's name and its document.
const DOCUMENT: char = '#';

/// How many hexadecimal digits of a document's SHA-256 stand for it.
const DIGITS: usize = 16;

/// What a listing goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct GoesBy<'l> {
    /// Its file's name, with the ending or without.
    pub file: &'l str,
    /// Its designation; empty where it has none.
    pub designation: &'l str,
    /// SHA-256 of its document, in hexadecimal digits.
    pub sha256: &'l str,
}

/// The listing that a fact is said of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SaidOf<'f> {
    /// A designation or a file's stem, as whoever said it named it.
    pub listing: &'f str,
    /// The beginning of the SHA-256 of the document, where that is known.
    pub document: Option<&'f str>,
}

/// A property's name without the listing, and the listing; none where it names none.
pub(crate) fn parted(name: &str) -> (&str, Option<SaidOf<'_>>) {
    let Some((plain, listing)) = name.split_once(AT) else {
        return (name, None);
    };
    (plain, Some(SaidOf::read(listing)))
}

impl<'f> SaidOf<'f> {
    /// A listing as whoever spoke of it named it: `hw-d-0412-ed4`, or with the document `hw-d-0412-ed4#0123456789abcdef`.
    pub fn read(name: &'f str) -> Self {
        match name.rsplit_once(DOCUMENT) {
            Some((listing, document)) if is_document(document) => Self {
                listing,
                document: Some(document),
            },
            _ => Self {
                listing: name,
                document: None,
            },
        }
    }
}

fn is_document(text: &str) -> bool {
    text.len() == DIGITS && text.bytes().all(|byte| byte.is_ascii_hexdigit())
}

/// A property's name without the listing that a fact on it is said of: `2A2:flute_width` of `2A2:flute_width@hw-d-0412-ed4`.
pub fn without_listing(name: &str) -> &str {
    parted(name).0
}

/// The listing that a fact of this name is said of; none where the name tells none.
pub fn said_of(name: &str) -> Option<SaidOf<'_>> {
    parted(name).1
}

/// Whether a property is one that a listing has for itself. All but the vocabulary's are.
pub fn is_of_a_listing(name: &str) -> bool {
    name.contains([':', AT]) || name.starts_with("option.") || vocabulary().property(name).is_none()
}

/// The name of a property that a listing has for itself, said of that listing by its name alone, as tables write it; the name as it is where it
/// names a listing, or is of no listing.
pub fn said_of_listing(name: &str, listing: &str) -> String {
    if !is_of_a_listing(name) || said_of(name).is_some() || listing.trim().is_empty() {
        return name.to_owned();
    }
    format!("{name}{AT}{}", listing.trim())
}

impl GoesBy<'_> {
    /// The name of a property that a listing has for itself, said of this very document.
    pub fn saying(&self, name: &str) -> String {
        let name = without_listing(name);
        if !is_of_a_listing(name) {
            return name.to_owned();
        }
        format!("{name}{AT}{}", self.as_said())
    }

    /// This very document, as the name of what is said of it ends.
    pub fn as_said(&self) -> String {
        let document: String = self.sha256.chars().take(DIGITS).collect();
        let stem = stem(self.file);
        if is_document(&document) {
            format!("{stem}{DOCUMENT}{document}")
        } else {
            stem.to_owned()
        }
    }

    /// Whether something is said of this listing: of this document, where it names one; else of one that goes by the name.
    pub fn is_meant(&self, said: SaidOf<'_>) -> bool {
        if let Some(document) = said.document {
            let start = self.sha256.get(..DIGITS);
            return start.is_some_and(|start| start.eq_ignore_ascii_case(document));
        }
        self.has_name(said)
    }

    /// Whether this listing goes by the name under which something is said, whatever the document.
    pub fn has_name(&self, said: SaidOf<'_>) -> bool {
        let is_named = levelled(said.listing).next().is_some();
        let goes_by = [stem(self.file), self.file, self.designation];
        is_named
            && goes_by
                .iter()
                .any(|known| levelled(known).eq(levelled(said.listing)))
    }
}

fn stem(file: &str) -> &str {
    file.rsplit_once('.').map_or(file, |(stem, _)| stem)
}

/// A name with its capitals, hyphens, spaces and underscores levelled, as the name of a mark's listing is.
fn levelled(name: &str) -> impl Iterator<Item = char> {
    let apart = |c: char| c.is_whitespace() || matches!(c, '-' | '_' | '\u{2010}'..='\u{2015}');
    let parts = name.split(apart).filter(|part| !part.is_empty());
    let parts = parts.enumerate().flat_map(|(at, part)| {
        let before = (at > 0).then_some('-');
        before.into_iter().chain(part.chars())
    });
    parts.flat_map(char::to_lowercase)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHA: &str = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";

    fn listing(file: &'static str, designation: &'static str) -> GoesBy<'static> {
        GoesBy {
            file,
            designation,
            sha256: SHA,
        }
    }

    fn is_meant(name: &str, listing: GoesBy<'_>) -> bool {
        said_of(name).is_some_and(|said| listing.is_meant(said))
    }

    #[test]
    fn what_is_a_listing_s_own() {
        for own in [
            "2A:runner.gauge",
            "2A2:flute_width",
            "option.3B",
            "lug.reach",
            "2A:runner.gauge@x",
        ] {
            assert!(is_of_a_listing(own), "{own}");
        }
        assert!(!is_of_a_listing("runner.gauge"));
        assert_eq!(said_of_listing("runner.gauge", "x"), "runner.gauge");
        assert_eq!(
            said_of_listing("2A:runner.gauge", " x "),
            "2A:runner.gauge@x"
        );
        assert_eq!(
            said_of_listing("2A:runner.gauge@y", "x"),
            "2A:runner.gauge@y"
        );
        assert_eq!(said_of_listing("2A:runner.gauge", " "), "2A:runner.gauge");
    }

    #[test]
    fn a_document_goes_before_its_name() {
        let ours = listing("hw-d-1-ed4.txt", "HW-D-1");
        let name = ours.saying("2A2:flute_width");
        assert_eq!(name, "2A2:flute_width@hw-d-1-ed4#0123456789abcdef");
        assert_eq!(ours.saying(&name), name);
        assert_eq!(ours.saying("joint.width"), "joint.width");
        assert!(is_meant(&name, ours));
        assert!(is_meant(&name, listing("renamed.txt", "")));
        let other = GoesBy {
            sha256: "f123456789abcdef",
            ..ours
        };
        assert!(!is_meant(&name, other));
        assert!(!is_meant(&name, GoesBy { sha256: "", ..ours }));
    }

    #[test]
    fn names_are_told_as_marks_name_listings() {
        let ours = listing("hw-d-1-ed4.txt", "HW-D-1");
        for name in [
            "hw-d-1-ed4",
            "HW-D-1",
            "hw d 1",
            "HW_D_1_ED4",
            "hw-d-1-ed4.txt",
        ] {
            assert!(is_meant(&format!("option.3B@{name}"), ours), "{name}");
        }
        for name in ["", " ", "hw-d-1-ed3", "hw-d-11"] {
            assert!(!is_meant(&format!("option.3B@{name}"), ours), "{name}");
        }
        assert!(!is_meant("option.3B", ours));
        assert!(!is_meant("option.3B@", listing(".txt", "")));
    }
}
