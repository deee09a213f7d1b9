//! How wide the page is, and text set to that width.

use super::paint::{STRONG, paint};

/// The width where the output is no terminal and nothing says otherwise.
const ELSEWHERE: u16 = 110;

/// The widest that running text is set; longer lines are hard to read.
const TEXT: usize = 110;

/// The width of the page: what `COLUMNS` says, else the terminal's.
pub(crate) fn width() -> u16 {
    let said = std::env::var("COLUMNS")
        .ok()
        .and_then(|columns| columns.trim().parse().ok());
    let of_terminal = || {
        let out = std::io::stdout();
        std::io::IsTerminal::is_terminal(&out)
            .then(|| terminal_size::terminal_size_of(out))
            .flatten()
    };
    let width: u16 = said
        .or_else(|| of_terminal().map(|(width, _)| width.0))
        .unwrap_or(ELSEWHERE);
    width.clamp(40, 400)
}

/// A heading with an empty line before it.
pub(crate) fn heading(words: &str) -> String {
    format!("\n{}\n", paint(STRONG, words))
}

/// Words set to the page's width, every line indented, those after the first by `hang` more. A number stays with its unit.
pub(crate) fn wrapped(words: &str, indent: usize, hang: usize) -> String {
    let most = TEXT.min(usize::from(width()));
    let mut lines = String::new();
    let mut line = " ".repeat(indent);
    let mut is_empty = true;
    for word in chunks(words) {
        let length = line.chars().count() + usize::from(!is_empty) + word.chars().count();
        if !is_empty && length > most {
            lines.push_str(&line);
            lines.push('\n');
            line = " ".repeat(indent + hang);
            is_empty = true;
        }
        if !is_empty {
            line.push(' ');
        }
        line.push_str(&word);
        is_empty = false;
    }
    lines.push_str(&line);
    lines.push('\n');
    lines
}

/// Words that a line may begin with: those between blanks, a number together with what follows it.
fn chunks(words: &str) -> Vec<String> {
    let is_number = |word: &str| {
        word.chars()
            .all(|c| c.is_ascii_digit() || "-/.(≈".contains(c))
            && word != "-"
    };
    let mut chunks: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        match chunks.last_mut() {
            Some(last) if last.rsplit(' ').next().is_some_and(is_number) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => chunks.push(word.to_owned()),
        }
    }
    chunks
}

/// A label and words beside it, set to the page's width.
pub(crate) fn labelled(label: &str, words: &str, indent: usize, room: usize) -> String {
    let text = wrapped(words, indent + room, 0);
    let body = text.trim_start();
    let room = room.max(label.chars().count() + 1);
    format!("{}{label:<room$}{body}", " ".repeat(indent))
}

#[cfg(test)]
mod tests {
    #[test]
    fn a_number_stays_with_its_unit() {
        let check = |words: &str, expected: &[&str]| assert_eq!(super::chunks(words), expected);
        check(
            "at least 4 in. (≈ 102 mm) deep",
            &["at", "least", "4 in.", "(≈ 102 mm)", "deep"],
        );
        check("J-001 to J-003", &["J-001", "to", "J-003"]);
    }
}
