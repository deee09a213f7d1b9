//! The movement that is needed in a direction, as a percentage of the joint's width.

use engineering::Between;
use measure::{Number, Quantity, Unit, print};
use site::Fact;

use crate::movement::Share;
use engineering::movement::percent_in_words;

/// Movement that the joint needs in a direction; above zero.
pub(super) struct Need<'s, 'a> {
    /// The percentage.
    pub(super) percent: Number,
    /// The least and the greatest that it can be.
    pub(super) between: Between,
    pub(super) fact: &'a Fact,
    /// The direction in words.
    pub(super) direction: &'static str,
    /// Where it comes from a length: what part of the width that is.
    pub(super) share: Option<&'s Share<'a>>,
}

impl<'s, 'a> Need<'s, 'a> {
    /// A need stated as a percentage.
    pub(super) const fn of_percentage(
        percent: Quantity,
        fact: &'a Fact,
        direction: &'static str,
    ) -> Self {
        Self {
            percent: percent.number,
            between: Between::exactly(percent.number),
            fact,
            direction,
            share: None,
        }
    }

    /// A need stated as a length.
    pub(super) const fn of_length(share: &'s Share<'a>, direction: &'static str) -> Self {
        Self {
            percent: share.percent,
            between: share.between,
            fact: share.fact,
            direction,
            share: Some(share),
        }
    }

    /// The need as a sentence begins, with the class where it matters, and the percentage beside one it is held against:
    /// "20 % compression of Class II is needed".
    pub(super) fn words(&self, class: Option<&str>, against: Option<Number>) -> String {
        if let Some(share) = self.share {
            let class = class.map(|class| format!(", of Class {class}"));
            return share.words(against) + &class.unwrap_or_default();
        }
        let class = class.map(|class| format!(" of Class {class}"));
        let percent = print::trade(Quantity::new(self.percent, Unit::Percent));
        format!(
            "{percent} {}{} is needed",
            self.direction,
            class.unwrap_or_default()
        )
    }

    /// What the listing must give.
    pub(super) fn requirement(&self) -> String {
        let of = match self.share {
            Some(share) if share.is_as_found => "width as found",
            _ => "installed nominal width",
        };
        format!(
            "movement in {} of at least {} of the {of}",
            self.direction,
            percent_in_words(self.percent, None)
        )
    }
}
