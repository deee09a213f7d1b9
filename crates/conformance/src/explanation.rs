//! Why a clause has its verdict, as plain data: the one value that terminal, page, PDF and JSON render.

use jiff::civil::Date;
use listing::Span;
use measure::Quantity;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use site::Cell;
use vocabulary::{Stage, Trade};

use crate::verdict::Reason;

/// Why a clause has its verdict.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Explanation {
    /// The clause's id; `header/width` and the like for what the head of the listing asks; `option/4` for the
    /// question whether an option is built; `3A/none` for where an item speaks of a property only in other cases.
    pub clause: String,
    /// The path of the item it stands in; empty for the head.
    pub item: String,
    /// Where it stands in the source, if it stands anywhere.
    pub span: Option<Span>,
    /// The words of the listing; empty for the head, whose words the span gives.
    pub words: String,
    /// The property it is about.
    pub property: String,
    /// The property's title.
    pub title: String,
    /// What is asked for: "at least 4 in. (101.6 mm)".
    pub requirement: String,
    /// When it applies, in the listing's words.
    pub condition: Option<String>,
    /// The option it belongs to.
    pub option: Option<String>,
    /// Why, in one word.
    pub reason: Reason,
    /// What was found, in a sentence.
    pub sentence: String,
    /// The fact used.
    pub fact: Option<FactUsed>,
    /// The movement used, where it is stated as a length: what part of the joint's width that is.
    pub share: Option<ShareUsed>,
    /// How far the value lies on the right side of the limit, or on the wrong one.
    pub margin: Option<Margin>,
    /// For an open clause: what would close it.
    pub missing: Option<Missing>,
    /// The person's decision that was applied.
    pub judgment: Option<JudgmentUsed>,
    /// Whatever else bears on the verdict, each in a sentence.
    pub notes: Vec<String>,
}

/// A fact as a verdict used it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FactUsed {
    /// The property.
    pub property: String,
    /// The property's title.
    pub title: String,
    /// The value in words; a quantity in both systems.
    pub value: String,
    /// The value exactly, where it is a quantity; of several readings the one that decided.
    pub quantity: Option<Quantity>,
    /// The readings, where there are any.
    pub readings: Option<Readings>,
    /// Where it comes from, in words.
    pub provenance: String,
    /// When it was seen, measured or stated.
    pub date: Option<Date>,
    /// The cell it was read from.
    pub cell: Option<Cell>,
    /// The cell in words.
    pub place: Option<String>,
}

/// A movement stated as a length, as a percentage of the joint's width.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ShareUsed {
    /// The length by which the structure closes, opens or shears the joint.
    pub movement: Quantity,
    /// The width it is a percentage of: of several readings the narrowest.
    pub width: FactUsed,
    /// Whether that is the width as found. Else it is the nominal one: nobody has seen what is built.
    pub is_as_found: bool,
    /// The percentage, exactly.
    pub percent: Quantity,
    /// The least that it can be as closely as the readings tell.
    pub least: Quantity,
    /// The greatest.
    pub greatest: Quantity,
    /// In words, in both systems: "1/2 in. (12.7 mm) of closing on 7/8 in. (≈ 22.2 mm) as found is ≈ 57.1 %".
    pub words: String,
}

/// The readings of one measurement.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Readings {
    /// How many.
    pub count: usize,
    /// The smallest.
    pub smallest: Quantity,
    /// The largest.
    pub largest: Quantity,
    /// The mean, exactly; it is shown and decides nothing.
    pub mean: Option<Quantity>,
    /// In words: "3 readings, 1-1/8 in. to 1-5/16 in., mean 1-1/4 in.; 1-5/16 in. decided".
    pub words: String,
}

/// How far a value lies from its limit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Margin {
    /// Above zero on the right side of the limit, below zero on the wrong one. A difference of temperatures is
    /// a rise, and one of gauges counts gauge numbers.
    pub quantity: Quantity,
    /// In words, in both systems: "1/2 in. (12.7 mm) to spare", "exactly at the limit".
    pub words: String,
}

/// What would close an open clause.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub struct Missing {
    /// What to ask for.
    pub ask: Ask,
    /// The property that is missing.
    pub property: String,
    /// Its title.
    pub title: String,
    /// Who can supply it; none when the vocabulary doesn't know the property or component.
    pub trade: Option<Trade>,
    /// When it can be seen, in the order of the work; empty where that isn't known.
    pub stages: Vec<Stage>,
    /// The last stage at which it can be seen without opening anything up.
    pub until: Option<Stage>,
    /// What it is measured with, and how finely, where it is measured.
    pub instrument: Option<String>,
    /// What to do, in a sentence.
    pub help: String,
}

/// What to ask for, to close an open clause.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Ask {
    /// A value.
    Value,
    /// A value from somebody who has seen or measured what is built.
    Sight,
    /// Where a value comes from.
    Source,
    /// A finer measurement, or a person's judgment.
    FinerReading,
    /// A value of the right kind.
    Correction,
    /// The maker of a product.
    Maker,
    /// Which option is built.
    Option,
    /// A person's judgment.
    Judgment,
    /// A person's confirmation of how the listing was read.
    Confirmation,
}

/// A person's decision as it was applied.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct JudgmentUsed {
    /// Whether it was accepted.
    pub accepted: bool,
    /// By whom.
    pub by: String,
    /// When.
    pub when: Date,
    /// On what ground.
    pub basis: String,
}
