//! The widths a joint will see, from the width as found, and whether what was tested covers them.
//!
//! A listing's movement is a percentage of the installed nominal width (UL 2079, ASTM E1966), and what is installed is
//! the width as found. So the rule is that of [`share`](super::share()): the movement over the narrowest reading. The
//! percentage of the width that was drawn stands beside it, as what a check that looks at no joint would come to.

use measure::{Number, Unit};

use super::share::{hold, part_of_width};
use crate::between::Between;
use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, Readings};
use crate::worked::{Computed, Standing, Worked, both, percent_words};

/// What is asked of a joint's widths.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EnvelopeAsked {
    /// The width as found, one reading or several along the run.
    pub found: Readings,
    /// The nominal width that was drawn, not the listing's most.
    pub nominal: Known,
    /// How far it closes after that.
    pub closing: Known,
    /// How far it opens.
    pub opening: Known,
    /// The compression tested, as a percentage of the installed nominal width.
    pub compression: Option<Known>,
    /// The extension tested.
    pub extension: Option<Known>,
}

/// The widths a joint will see.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Envelope {
    /// The narrowest.
    pub narrowest: Between,
    /// The widest.
    pub widest: Between,
    /// The unit of these.
    pub unit: Unit,
    /// Whether the movements keep what was tested as percentages of the width drawn: by this alone nothing is decided.
    pub by_percent: Standing,
    /// Whether they keep it as percentages of the narrowest width as found.
    pub by_width: Standing,
}

/// The narrowest and the widest that a joint will be, and its movements against what was tested.
///
/// # Errors
/// A width that may be nothing, a negative movement or percentage, a compression over 100 %.
pub fn envelope(asked: &EnvelopeAsked) -> Result<Computed<Envelope>, Error> {
    let unit = asked.found.length_unit("the width as found")?;
    let found = asked.found.summary("the width as found", unit)?;
    let nominal = asked.nominal.above_zero("the nominal width", unit)?;
    let closing = asked.closing.not_negative("the closing", unit)?;
    let opening = asked.opening.not_negative("the opening", unit)?;
    let what = "the width of the joint";
    let as_found = Between::around(found.least, found.half, what)?;
    let mut worked = inputs(asked);
    let least = (exact(found.least) - closing).get(what)?;
    let most = (exact(found.greatest) + opening).get(what)?;
    let narrowest = Between::around(least, found.half, what)?;
    let widest = Between::around(most, found.half, what)?;
    for (name, from, sign, by, to, within) in [
        ("narrowest", found.least, "-", closing, least, narrowest),
        ("widest", found.greatest, "+", opening, most, widest),
    ] {
        worked.step(format!(
            "{name} = {} {sign} {} = {}",
            both(from, unit),
            both(by, unit),
            both(to, unit)
        ));
        worked.ranged(format!("{name} width"), to, within, unit);
    }
    let sides = [
        Side {
            name: "closing",
            by: closing,
            tested: asked.compression.as_ref(),
            word: "compression",
            most: Some(Number::ONE),
        },
        Side {
            name: "opening",
            by: opening,
            tested: asked.extension.as_ref(),
            word: "extension",
            most: None,
        },
    ];
    let mut by_percent = Standing::Met;
    let mut by_width = Standing::Met;
    for side in &sides {
        let (drawn, built) = side.against((found.least, as_found), nominal, unit, &mut worked)?;
        by_percent = by_percent.and(drawn);
        by_width = by_width.and(built);
    }
    by_width = by_width.and(beyond_shut(narrowest, &mut worked));
    if by_percent == Standing::Met && by_width == Standing::NotMet {
        worked.note("of the nominal width alone this would pass: it is the width as found that leaves too little");
    }
    Ok(worked.with(Envelope {
        narrowest,
        widest,
        unit,
        by_percent,
        by_width,
    }))
}

/// Whether the structure closes the joint by more than there is of it.
fn beyond_shut(narrowest: Between, worked: &mut Worked) -> Standing {
    if narrowest.high.is_negative() {
        worked.find(
            Standing::NotMet,
            "the structure closes the joint by more than its width",
        );
        return Standing::NotMet;
    }
    if narrowest.low <= Number::ZERO {
        worked.note("nothing is left of the joint where it is narrowest");
    }
    Standing::Note
}

fn inputs(asked: &EnvelopeAsked) -> Worked {
    let mut worked = Worked::of("Widths a joint will see");
    worked.read("width as found", &asked.found);
    worked.given("nominal width drawn, W", &asked.nominal);
    worked.given("closing after it was read", &asked.closing);
    worked.given("opening after it was read", &asked.opening);
    worked.given_if("compression tested", asked.compression.as_ref());
    worked.given_if("extension tested", asked.extension.as_ref());
    worked.formula(
        "narrowest = least reading - closing; widest = greatest reading + opening",
        "the least and the greatest width as found, after the structure has moved",
    );
    worked.formula(
        "needed = d / w <= tested, w the narrowest reading",
        super::SHARE_SOURCE,
    );
    worked
}

struct Side<'a> {
    name: &'a str,
    by: Number,
    tested: Option<&'a Known>,
    word: &'a str,
    /// The most that can have been tested.
    most: Option<Number>,
}

impl Side<'_> {
    /// The movement against the percentage tested: of the width drawn, and of the width as found.
    fn against(
        &self,
        (least, as_found): (Number, Between),
        nominal: Number,
        unit: Unit,
        worked: &mut Worked,
    ) -> Result<(Standing, Standing), Error> {
        let what = format!("the {}", self.name);
        let part = part_of_width(Between::exactly(self.by), as_found)?;
        let at = (exact(self.by) / least).get(&what)?;
        let drawn = (exact(self.by) / nominal).get(&what)?;
        if !self.by.is_zero() {
            worked.step(format!(
                "{} / w = {} / {} = {}; of W it is {}",
                self.name,
                both(self.by, unit),
                both(least, unit),
                percent_words(at),
                percent_words(drawn)
            ));
        }
        let Some(tested) = self.tested else {
            if self.by.is_zero() {
                return Ok((Standing::Met, Standing::Met));
            }
            let words = format!(
                "{}: {} is needed, and no tested {} is given to hold it against",
                self.name,
                percent_words(at),
                self.word
            );
            worked.find(Standing::Open, words);
            return Ok((Standing::Open, Standing::Open));
        };
        let input = format!("the {} tested", self.word);
        let limit = crate::known::percent(&input, tested.quantity)?;
        if self.most.is_some_and(|most| limit > most) {
            let valid = "0 % or more and at most 100 %";
            return Err(Error::range(&input, tested.quantity, valid));
        }
        let built = hold(self.name, (part, at), (&input, tested), worked)?;
        let drawn = Between::exactly(drawn).at_most(limit);
        Ok((drawn, built))
    }
}
