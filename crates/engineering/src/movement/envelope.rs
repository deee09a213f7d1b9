//! The widths a joint will see, from the width as found.
//!
//! A listing's movement is a percentage of its nominal width. A joint built narrower than nominal has less to give
//! before it is as narrow as any that was tested: the percentage alone doesn't show it, the widths do.

use measure::{Number, Quantity, Unit, print};

use crate::between::Between;
use crate::error::{Error, plain};
use crate::exact::exact;
use crate::known::{Known, Readings};
use crate::worked::{Computed, Standing, Worked, both, percent_words};

/// What is asked of a joint's widths.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EnvelopeAsked {
    /// The width as found, one reading or several along the run.
    pub found: Readings,
    /// The installed nominal width that the percentages are of: the width the joint was built to, not the listing's most.
    pub nominal: Known,
    /// How far it closes after that.
    pub closing: Known,
    /// How far it opens.
    pub opening: Known,
    /// The compression tested, as a percentage of the nominal width.
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
    /// Whether the movements as percentages keep what was tested: the check that looks at no width as found.
    pub by_percent: Standing,
    /// Whether the widths keep what was tested.
    pub by_width: Standing,
}

/// Holds the widths a joint will see against the widths tested: nominal × (1 - c) to nominal × (1 + e).
///
/// # Errors
/// A width that isn't above zero, a negative movement, a compression outside 0 to below 100 %.
pub fn envelope(asked: &EnvelopeAsked) -> Result<Computed<Envelope>, Error> {
    let unit = asked.found.length_unit("the width as found")?;
    let found = asked.found.summary("the width as found", unit)?;
    if found.least.is_zero() {
        return Err(Error::range("the width as found", "0", "above 0"));
    }
    let nominal = asked.nominal.above_zero("the nominal width", unit)?;
    let closing = asked.closing.not_negative("the closing", unit)?;
    let opening = asked.opening.not_negative("the opening", unit)?;
    let what = "the width of the joint";
    let narrowest = Between::around((exact(found.least) - closing).get(what)?, found.half, what)?;
    let widest = Between::around(
        (exact(found.greatest) + opening).get(what)?,
        found.half,
        what,
    )?;
    let mut worked = inputs(asked);
    worked.step(format!(
        "narrowest = {} - {}",
        both(found.least, unit),
        both(closing, unit)
    ));
    worked.ranged(
        "narrowest width",
        (exact(found.least) - closing).get(what)?,
        narrowest,
        unit,
    );
    worked.step(format!(
        "widest = {} + {}",
        both(found.greatest, unit),
        both(opening, unit)
    ));
    worked.ranged(
        "widest width",
        (exact(found.greatest) + opening).get(what)?,
        widest,
        unit,
    );
    let shut = shut(narrowest, &mut worked);
    let closes = Side {
        name: "closing",
        by: closing,
        tested: asked.compression.as_ref(),
        word: "compression",
    };
    let opens = Side {
        name: "opening",
        by: opening,
        tested: asked.extension.as_ref(),
        word: "extension",
    };
    let (percent_closing, part) = closes.by_percent(nominal, &mut worked)?;
    let mut width_closing = percent_closing;
    if let Some(c) = part {
        if c > Number::ONE {
            let valid = "0 % or more and at most 100 %";
            return Err(Error::range(
                "the compression tested",
                percent_words(c),
                valid,
            ));
        }
        let limit = (exact(nominal) * (exact(1) - c)).get(what)?;
        let relation = ("narrowest", "no less than");
        let standing = narrowest.at_least(limit);
        width_closing = held(
            standing,
            relation,
            (narrowest.low, limit),
            unit,
            &mut worked,
        );
    }
    let (percent_opening, part) = opens.by_percent(nominal, &mut worked)?;
    let mut width_opening = percent_opening;
    if let Some(e) = part {
        let limit = (exact(nominal) * (exact(1) + e)).get(what)?;
        let relation = ("widest", "no more than");
        let standing = widest.at_most(limit);
        width_opening = held(standing, relation, (widest.high, limit), unit, &mut worked);
    }
    let by_width = shut.and(width_closing).and(width_opening);
    let by_percent = percent_closing.and(percent_opening);
    if by_percent == Standing::Met && by_width == Standing::NotMet {
        worked.note(
            "by percent alone this would pass: it is the width as found that leaves too little",
        );
    }
    Ok(worked.with(Envelope {
        narrowest,
        widest,
        unit,
        by_percent,
        by_width,
    }))
}

/// Whether nothing is left of the joint at its narrowest.
fn shut(narrowest: Between, worked: &mut Worked) -> Standing {
    if narrowest.low > Number::ZERO {
        return Standing::Note;
    }
    let closed = if narrowest.high <= Number::ZERO {
        Standing::NotMet
    } else {
        Standing::Open
    };
    worked.find(closed, "the joint closes altogether");
    closed
}

fn inputs(asked: &EnvelopeAsked) -> Worked {
    let mut worked = Worked::of("Widths a joint will see");
    worked.read("width as found", &asked.found);
    worked.given("nominal width, W", &asked.nominal);
    worked.given("closing after it was read", &asked.closing);
    worked.given("opening after it was read", &asked.opening);
    worked.given_if("compression tested, c", asked.compression.as_ref());
    worked.given_if("extension tested, e", asked.extension.as_ref());
    worked.formula(
        "narrowest = found - closing >= W (1 - c); widest = found + opening <= W (1 + e)",
        "the tested movement is a percentage of the nominal width (UL 2079, ASTM E1966: cycled between its least and greatest width)",
    );
    worked
}

struct Side<'a> {
    name: &'a str,
    by: Number,
    tested: Option<&'a Known>,
    word: &'a str,
}

impl Side<'_> {
    /// The movement as a percentage of the nominal width against the percentage tested.
    fn by_percent(
        &self,
        nominal: Number,
        worked: &mut Worked,
    ) -> Result<(Standing, Option<Number>), Error> {
        let share = (exact(self.by) / nominal).get("the movement")?;
        let Some(tested) = self.tested else {
            if self.by.is_zero() {
                return Ok((Standing::Met, None));
            }
            worked.find(
                Standing::Open,
                format!(
                    "the {} of {} has no tested {} to be held against",
                    self.name,
                    percent_words(share),
                    self.word
                ),
            );
            return Ok((Standing::Open, None));
        };
        let part = crate::known::percent(&format!("the {} tested", self.word), tested.quantity)?;
        if part.is_negative() {
            return Err(Error::range(
                &format!("the {} tested", self.word),
                tested.quantity,
                "0 % or more",
            ));
        }
        let standing = if share <= part {
            Standing::Met
        } else {
            Standing::NotMet
        };
        worked.step(format!(
            "{} / W = {} = {}; tested {}",
            self.name,
            plain(share),
            percent_words(share),
            percent_words(part)
        ));
        if standing == Standing::NotMet {
            worked.find(
                standing,
                format!(
                    "the {} is {} of the nominal width, tested were {}",
                    self.name,
                    percent_words(share),
                    percent_words(part)
                ),
            );
        }
        Ok((standing, Some(part)))
    }
}

fn held(
    standing: Standing,
    (name, relation): (&str, &str),
    (value, limit): (Number, Number),
    unit: Unit,
    worked: &mut Worked,
) -> Standing {
    let value = print::both(Quantity::new(value, unit));
    let limit = both(limit, unit);
    let words = match standing {
        Standing::Met => format!("the {name} width, {value}, is {relation} the {limit} tested"),
        Standing::NotMet => {
            let beyond = if relation.contains("less") {
                "less"
            } else {
                "more"
            };
            format!("the {name} width, {value}, is {beyond} than the {limit} tested")
        }
        _ => format!(
            "whether the {name} width is {relation} the {limit} tested can't be told: {value} is too near it for the instrument"
        ),
    };
    worked.find(standing, words);
    standing
}
