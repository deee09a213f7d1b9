//! A listing written out, in one of six house styles.

pub mod amounts;
mod articles;
mod classification;
mod columns;
mod decimal;
mod directory;
mod lines;
mod notes;
mod phrases;
mod places;
mod sentences;

use super::spec::{Spec, Style};
use amounts::First;

impl Spec {
    /// The listing's text.
    pub fn text(&self) -> String {
        self.text_with_places().0
    }

    /// The listing's text, and where the number of each statement stands in it.
    pub fn text_with_places(&self) -> (String, Vec<(usize, usize)>) {
        let lines = match self.style {
            Style::Directory => directory::lines(self),
            Style::Decimal => decimal::lines(self),
            Style::Articles => articles::lines(self),
            Style::Columns => columns::lines(self),
            Style::Classification => classification::lines(self),
            Style::Notes => notes::lines(self),
        };
        places::taken_out(&(lines.join("\n") + "\n"))
    }

    /// Which unit its text has first.
    pub const fn first_unit(&self) -> First {
        match self.style {
            Style::Decimal => First::Metric,
            Style::Classification => First::MetricAlone,
            _ => First::Inches,
        }
    }
}
