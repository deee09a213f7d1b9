//! Words of other people's files, made fit to be shown, and the small change of sentences.

/// The words on one line: white space evened, control characters taken out. A word that a hyphen broke at the end of its line is put together, with its
/// hyphen, for nobody knows whether it is its own.
pub fn on_one_line(words: &str) -> String {
    let mut line = String::with_capacity(words.len());
    for part in words.split('\n') {
        let part = part.split_whitespace().collect::<Vec<_>>().join(" ");
        let parted = !line.is_empty() && !part.is_empty();
        if parted && !is_broken(&line, &part) {
            line.push(' ');
        }
        line.push_str(&part);
    }
    printable(&line)
}

/// Whether a line ends in a hyphen that a word goes on behind: `mea-` before `sured`.
fn is_broken(line: &str, next: &str) -> bool {
    let word = line.strip_suffix('-');
    word.is_some_and(|word| word.ends_with(char::is_lowercase))
        && next.starts_with(char::is_lowercase)
}

/// The words without control characters, which could drive a terminal; line ends stay, tabs become spaces.
pub fn printable(words: &str) -> String {
    words
        .chars()
        .filter(|c| *c != '\r')
        .map(|c| match c {
            '\n' => c,
            '\t' => ' ',
            c if c.is_control() || is_bidi_control(c) => '\u{fffd}',
            c => c,
        })
        .collect()
}

/// Characters that turn the direction of writing, and could make words look like others.
const fn is_bidi_control(c: char) -> bool {
    matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// At most so many characters of the words, cut at a space where one is near.
pub fn shortened(words: &str, most: usize) -> String {
    if words.chars().count() <= most {
        return words.to_owned();
    }
    let kept: String = words.chars().take(most.saturating_sub(2)).collect();
    let kept = kept
        .rsplit_once(' ')
        .map_or(kept.as_str(), |(kept, _)| kept);
    format!("{} …", kept.trim_end_matches([',', ';', ':', ' ']))
}

/// "1 joint", "2 joints".
pub fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// "a, b and c".
pub fn listed<T: AsRef<str>>(names: &[T]) -> String {
    match names {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [rest @ .., last] => {
            let rest: Vec<&str> = rest.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", rest.join(", "), last.as_ref())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shows_no_control_characters() {
        assert_eq!(
            on_one_line("a\u{1b}[31m\r\n b\u{9b}\u{202e}"),
            "a\u{fffd}[31m b\u{fffd}\u{fffd}"
        );
    }

    #[test]
    fn puts_broken_words_together() {
        assert_eq!(
            on_one_line("as mea-\n   sured from\n the top"),
            "as mea-sured from the top"
        );
        assert_eq!(on_one_line("2 to 4 -\n  5 in.\n\n6"), "2 to 4 - 5 in. 6");
    }

    #[test]
    fn shortens_at_a_space() {
        assert_eq!(shortened("one two three", 9), "one …");
        assert_eq!(shortened("one", 9), "one");
    }
}
