//! What the words beside a number tell of what it measures: "joint width width" says a word twice, and "and" nothing.

use crate::naming::Name;

/// Stands where nothing tells what a number measures.
pub(super) const NOT_DECIDED: &str = "what is not decided";

/// Words that name nothing.
const NAMELESS: &[&str] = &[
    "a", "an", "the", "and", "or", "but", "of", "at", "to", "by", "in", "on", "for", "with",
    "that", "is", "are", "be", "as", "from", "each", "every", "no", "not", "than", "more", "less",
    "least", "most", "min", "max", "nom", "it", "its", "this", "shall", "onto",
];

/// A name with no word said twice on end; none where its words name nothing.
pub(super) fn told(name: &Name) -> Option<Name> {
    if name.property.is_some() {
        return Some(name.clone());
    }
    let names = |words: &str| {
        words
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| word.contains(char::is_alphabetic) && !NAMELESS.contains(&word))
    };
    let component = without_tail(&name.component, &name.attribute);
    (names(component) || names(&name.attribute)).then(|| Name {
        component: component.to_owned(),
        ..name.clone()
    })
}

/// A component without those of its last words by which its attribute begins.
fn without_tail<'n>(component: &'n str, attribute: &str) -> &'n str {
    let starts = core::iter::once(0).chain(component.match_indices(' ').map(|(at, _)| at + 1));
    let mut tails = starts.filter_map(|at| Some((at, component.get(at..)?)));
    let repeats = |tail: &str| {
        let rest = attribute.strip_prefix(tail);
        !tail.is_empty() && rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    };
    let tail = tails.find(|(_, tail)| repeats(tail)).map(|(at, _)| at);
    component
        .get(..tail.unwrap_or(component.len()))
        .unwrap_or_default()
        .trim_end()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_said_once() {
        assert_eq!(without_tail("joint width", "width"), "joint");
        assert_eq!(without_tail("joint", "joint"), "");
        assert_eq!(without_tail("masonry screw", "masonry screw by"), "");
        assert_eq!(without_tail("wall", "wallboard"), "wall");
    }
}
