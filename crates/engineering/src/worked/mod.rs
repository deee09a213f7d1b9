//! The worked calculation: one plain value that terminal, JSON and reports show alike.

use measure::{Number, Quantity, Unit, print};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::between::Between;
use crate::known::{Known, Readings};

/// What must stand beside every computed result.
pub const STANDING: &str = "The listing, the authority having jurisdiction and licensed practice decide; this is arithmetic on what was given.";

/// A calculation with everything needed to check it by hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Worked {
    /// What is computed.
    pub name: String,
    /// The clause or requirement it serves, where one is known.
    pub serves: Option<String>,
    /// What went in, with where it comes from.
    pub inputs: Vec<Input>,
    /// The formulas in plain notation, each with its source.
    pub formulas: Vec<Formula>,
    /// The formulas with their numbers, in order.
    pub steps: Vec<String>,
    /// What came out.
    pub results: Vec<Outcome>,
    /// What that means against the limits given.
    pub findings: Vec<Finding>,
    /// What must be said beside it.
    pub cautions: Vec<String>,
}

/// Something that went in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Input {
    /// What it is.
    pub name: String,
    /// Its value in both unit systems, in words.
    pub shown: String,
    /// Its exact values; empty for what is chosen and not measured.
    pub values: Vec<Quantity>,
    /// Where it comes from.
    pub provenance: String,
}

/// A formula.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Formula {
    /// In plain notation.
    pub notation: String,
    /// Standard and section, handbook, or what it follows from.
    pub source: String,
}

/// Something that came out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Outcome {
    /// What it is.
    pub name: String,
    /// Its value in both unit systems, in words.
    pub shown: String,
    /// Its exact value; the middle where it is uncertain.
    pub value: Quantity,
    /// The least and the greatest it can be, where it is uncertain.
    pub range: Option<[Quantity; 2]>,
}

/// What a result means against a limit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Finding {
    /// What is found.
    pub standing: Standing,
    /// In words, with the numbers.
    pub words: String,
}

/// What is found against a limit.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// Worth knowing; no limit is involved.
    Note,
    /// Within the limit.
    Met,
    /// Can't be told: something is missing, or the uncertainty reaches over the limit.
    Open,
    /// Outside the limit.
    NotMet,
}

impl Standing {
    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Met => "met",
            Self::Open => "open",
            Self::NotMet => "not met",
        }
    }

    /// The firmer objection of two.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        self.max(other)
    }
}

/// A result with the calculation that gave it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Computed<T> {
    /// The result.
    pub value: T,
    /// How it came about.
    pub worked: Worked,
}

impl Worked {
    /// A calculation with nothing in it yet.
    pub(crate) fn of(name: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            serves: None,
            inputs: Vec::new(),
            formulas: Vec::new(),
            steps: Vec::new(),
            results: Vec::new(),
            findings: Vec::new(),
            cautions: Vec::new(),
        }
    }

    /// The same, serving a clause.
    #[must_use]
    pub fn serving(self, clause: impl Into<String>) -> Self {
        Self {
            serves: Some(clause.into()),
            ..self
        }
    }

    /// The firmest objection found; a note when there was no limit to hold anything against.
    pub fn standing(&self) -> Standing {
        let standings = self.findings.iter().map(|finding| finding.standing);
        standings.max().unwrap_or(Standing::Note)
    }

    pub(crate) fn given(&mut self, name: &str, known: &Known) {
        self.inputs.push(Input {
            name: name.to_owned(),
            shown: print::both(known.quantity),
            values: vec![known.quantity],
            provenance: known.provenance.clone(),
        });
    }

    pub(crate) fn given_if(&mut self, name: &str, known: Option<&Known>) {
        if let Some(known) = known {
            self.given(name, known);
        }
    }

    pub(crate) fn read(&mut self, name: &str, readings: &Readings) {
        self.inputs.push(Input {
            name: name.to_owned(),
            shown: readings.words(),
            values: readings.values.clone(),
            provenance: readings.provenance.clone(),
        });
    }

    pub(crate) fn read_if(&mut self, name: &str, readings: Option<&Readings>) {
        if let Some(readings) = readings {
            self.read(name, readings);
        }
    }

    pub(crate) fn chosen(&mut self, name: &str, words: &str, provenance: &str) {
        self.inputs.push(Input {
            name: name.to_owned(),
            shown: words.to_owned(),
            values: Vec::new(),
            provenance: provenance.to_owned(),
        });
    }

    pub(crate) fn formula(&mut self, notation: &str, source: &str) {
        self.formulas.push(Formula {
            notation: notation.to_owned(),
            source: source.to_owned(),
        });
    }

    pub(crate) fn step(&mut self, words: impl Into<String>) {
        // A rounded figure is not equal to what it stands for.
        self.steps.push(words.into().replace("= ≈ ", "≈ "));
    }

    pub(crate) fn result(&mut self, name: impl Into<String>, number: Number, unit: Unit) {
        let value = Quantity::new(number, unit);
        self.results.push(Outcome {
            name: name.into(),
            shown: print::both(value),
            value,
            range: None,
        });
    }

    /// A result known to lie between two values.
    pub(crate) fn ranged(
        &mut self,
        name: impl Into<String>,
        number: Number,
        between: Between,
        unit: Unit,
    ) {
        self.result(name, number, unit);
        if between.low == between.high {
            return;
        }
        if let Some(last) = self.results.last_mut() {
            let ends = [between.low, between.high].map(|end| Quantity::new(end, unit));
            let [low, high] = ends.map(|end| print::trade(rounded(end)));
            last.shown = format!("{}, between {low} and {high}", last.shown);
            last.range = Some(ends);
        }
    }

    pub(crate) fn find(&mut self, standing: Standing, words: impl Into<String>) {
        self.findings.push(Finding {
            standing,
            words: words.into(),
        });
    }

    pub(crate) fn note(&mut self, words: impl Into<String>) {
        self.find(Standing::Note, words);
    }

    pub(crate) fn caution(&mut self, words: impl Into<String>) {
        self.cautions.push(words.into());
    }

    pub(crate) const fn with<T>(self, value: T) -> Computed<T> {
        Computed {
            value,
            worked: self,
        }
    }
}

/// A quantity to three decimals, for ends of a range.
fn rounded(quantity: Quantity) -> Quantity {
    let step = Number::new(1, 1000).unwrap_or(Number::ONE);
    let number = quantity.number.nearest(step).unwrap_or(quantity.number);
    Quantity::new(number, quantity.unit)
}

/// A number in a unit, in words: the trade's notation, both systems.
pub(crate) fn both(number: Number, unit: Unit) -> String {
    print::both(Quantity::new(number, unit))
}

/// A number in a unit, in words: the trade's notation, its own system.
pub(crate) fn trade(number: Number, unit: Unit) -> String {
    print::trade(Quantity::new(number, unit))
}

/// A part of one as a percentage, to a tenth.
pub(crate) fn percent_words(part: Number) -> String {
    let percent = part.times(Number::whole(100)).unwrap_or(part);
    match percent.exact_decimals() {
        Some(digits) if digits <= 1 => format!("{} %", percent.to_decimal(digits)),
        _ => format!("≈ {} %", percent.to_decimal(1)),
    }
}
