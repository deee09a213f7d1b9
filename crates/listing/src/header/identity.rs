//! Who a listing is: its title, designation, edition and standards.

use std::sync::LazyLock;

use aho_corasick::AhoCorasick;
use measure::{Number, Quantity, Unit};

use super::HeaderRead;
use crate::model::{Span, WarningKind};

/// Standards by number, in the order they stand.
pub(super) fn standards(text: &str) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let words: Vec<&str> = text.split_whitespace().collect();
    for (index, word) in words.iter().enumerate() {
        let bare = word.trim_matches(|c: char| !(c.is_alphanumeric() || c == '/' || c == '-'));
        let next = words
            .get(index + 1)
            .map(|next| next.trim_matches(|c: char| !c.is_alphanumeric() && c != '-'))
            .unwrap_or_default();
        let numbered = next.chars().any(|c| c.is_ascii_digit()) && next.len() <= 12;
        let number = match bare {
            "ASTM" | "UL" | "EN" | "ISO" | "ANSI" | "ULC" | "NFPA" if numbered => {
                format!("{bare} {next}")
            }
            // Before a lesser number it is the word.
            "AS" if numbered && is_of_four_digits(next) => format!("{bare} {next}"),
            _ if bare.starts_with("CAN/ULC-S") => bare.to_owned(),
            _ => continue,
        };
        if !found.contains(&number) {
            found.push(number);
        }
    }
    found
}

/// `1530.4`
fn is_of_four_digits(number: &str) -> bool {
    let digits = number.chars().take_while(char::is_ascii_digit).count();
    digits == 4
}

pub(super) fn title(source: &str, paragraphs: &[Vec<Span>]) -> String {
    let lines = paragraphs
        .iter()
        .flatten()
        .map(|span| span.of(source).trim());
    let fitting = lines.filter(|line| line.chars().filter(|c| c.is_alphabetic()).count() >= 6);
    fitting
        .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
        .next()
        .unwrap_or_default()
}

/// The designation: what follows "Design No.", "System" and the like, or the first code of letters, digits and strokes.
pub(super) fn designation(text: &str) -> Option<String> {
    if let Some((range, _)) = vocabulary::Designation::find(text) {
        return text.get(range).map(str::to_owned);
    }
    let codes = text
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric()));
    codes
        .filter(|code| {
            let digits = code.chars().filter(char::is_ascii_digit).count();
            let capitals = code.chars().filter(char::is_ascii_uppercase).count();
            digits >= 2
                && capitals >= 1
                && code.contains(['-', '/', '.'])
                && !code.starts_with("CAN/")
                && code.len() >= 5
        })
        .find(|code| !code.contains("cfm") && !code.starts_with("EN") && !code.contains("in."))
        .map(str::to_owned)
}

/// How many lines at either end of a document may state its edition.
const EDITION_LINES: usize = 80;

/// The words that an edition's statement begins with.
static EDITION_WORDS: LazyLock<Option<AhoCorasick>> = LazyLock::new(|| {
    AhoCorasick::builder()
        .ascii_case_insensitive(true)
        .build([
            "edition", "revision", "issue ", "issued", "reissued", "rev.", "rev ",
        ])
        .ok()
});

/// The words that follow "Edition", "Revision", "Issued" and the like near the ends of the document.
pub(super) fn edition(source: &str) -> String {
    let ends = source
        .lines()
        .take(EDITION_LINES)
        .chain(source.lines().rev().take(EDITION_LINES));
    let stated = ends.filter_map(|line| {
        let at = EDITION_WORDS.as_ref()?.find(line)?.start();
        let tail = line.get(at..)?;
        let end = tail.find("   ").unwrap_or(tail.len());
        Some(tail.get(..end)?.trim())
    });
    let numbered = |words: &&str| {
        words
            .chars()
            .any(|c| c.is_ascii_digit() || c.is_ascii_uppercase())
            && words.len() <= 60
    };
    stated
        .filter(numbered)
        .map(|words| words.split_whitespace().collect::<Vec<_>>().join(" "))
        .next()
        .unwrap_or_default()
}

/// A designation by the North American convention states a band of widths; the head's own width should lie in it.
pub(super) fn check_designation(read: &mut HeaderRead) {
    let header = &read.header;
    let Ok((_, designation)) = vocabulary::Designation::parse_decorated(&header.designation) else {
        return;
    };
    let Some((band, width)) = designation.width_band().zip(header.width.as_ref()) else {
        return;
    };
    let Some(widest) = width.hi.or(width.lo) else {
        return;
    };
    // A width in whole millimetres may be the band's inches rounded up: 51 mm is 2 in.
    let slack = if width.unit == Unit::Millimetre {
        Number::new(1, 2).unwrap_or(Number::ZERO)
    } else {
        Number::ZERO
    };
    let Some(least) = widest.minus(slack) else {
        return;
    };
    if band.contains(Quantity::new(least, width.unit)) == Some(false) {
        let message = format!(
            "`{}` is numbered for joints {band}, but the head gives a width of {}; the listed width governs",
            header.designation,
            Quantity::new(widest, width.unit)
        );
        read.warnings
            .push((WarningKind::DesignationDisagrees, width.span, message));
    }
}
