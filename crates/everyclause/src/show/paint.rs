//! Colours and marks. Colour never stands alone: a word or a mark says the same.

use anstyle::{AnsiColor, Style};
use comfy_table::{Attribute, Cell, Color};
use conformance::{Overall, Verdict};

/// Headings.
pub(crate) const STRONG: Style = Style::new().bold();
/// What is less important.
pub(crate) const QUIET: Style = Style::new().dimmed();
/// What is as it should be.
pub(crate) const GOOD: Style = AnsiColor::Green.on_default();
/// What isn't.
pub(crate) const BAD: Style = AnsiColor::Red.on_default().bold();
/// What nobody has shown.
pub(crate) const UNKNOWN: Style = AnsiColor::Yellow.on_default();

/// Words in a style; whether colour is shown at all is decided where they are printed.
pub(crate) fn paint(style: Style, words: &str) -> String {
    format!("{style}{words}{style:#}")
}

/// A verdict's mark.
pub(crate) const fn mark(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Met => "✓",
        Verdict::NotMet => "✗",
        Verdict::Open => "?",
        Verdict::Judged => "◇",
        Verdict::NotApplicable => "–",
    }
}

/// A verdict's style.
pub(crate) const fn style(verdict: Verdict) -> Style {
    match verdict {
        Verdict::Met | Verdict::Judged => GOOD,
        Verdict::NotMet => BAD,
        Verdict::Open => UNKNOWN,
        Verdict::NotApplicable => QUIET,
    }
}

/// What a joint comes to, seen as a verdict.
pub(crate) const fn as_verdict(overall: Overall) -> Verdict {
    match overall {
        Overall::Conforms => Verdict::Met,
        Overall::DoesNotConform => Verdict::NotMet,
        Overall::Open => Verdict::Open,
    }
}

/// A cell in a verdict's colour.
pub(crate) fn cell(verdict: Verdict, words: String) -> Cell {
    let cell = Cell::new(words);
    match verdict {
        Verdict::Met | Verdict::Judged => cell.fg(Color::DarkGreen),
        Verdict::NotMet => cell.fg(Color::DarkRed).add_attribute(Attribute::Bold),
        Verdict::Open => cell.fg(Color::DarkYellow),
        Verdict::NotApplicable => cell.add_attribute(Attribute::Dim),
    }
}
