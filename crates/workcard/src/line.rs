//! The card of one joint line by line, each with the clauses of the listing that it rests on.

use engineering::takeoff::Kind;
use measure::print;
use schemars::JsonSchema;
use serde::Serialize;

use crate::asks::Asks;
use crate::rows::Row;
use crate::{JointWork, Ordered, words};

/// A line of a card.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Line {
    /// What it is about.
    pub about: &'static str,
    /// What is to be made, in words.
    pub words: String,
    /// The ids of the clauses that it rests on, in the listing's order.
    pub clauses: Vec<String>,
}

/// The lines of a joint's card, from the packing outwards; only what was worked out.
pub(crate) fn lines(work: &JointWork, asks: &Asks<'_>) -> Vec<Line> {
    let both = |length: Option<_>| length.map(print::both).unwrap_or_default();
    let runner = work.runner.as_ref();
    let of_work: [(_, String, &[&str]); 10] = [
        (
            "Packing, uncompressed",
            words::laid(work),
            &["packing.compression", "packing.thickness"],
        ),
        (
            "Packing cut wide, at least",
            both(work.cut_width),
            &["packing.depth"],
        ),
        (
            "Packing compressed",
            words::compressed(work),
            &["packing.compression"],
        ),
        (
            "Butt joints of packing apart, at least",
            both(work.butts_apart),
            &["packing.splice_spacing"],
        ),
        (
            "Coating",
            words::coating(work).join(", "),
            &["coating.wet_thickness", "coating.overlap*"],
        ),
        (
            "Sealant",
            words::sealant(work).join(", "),
            &["sealant.depth", "sealant.bead_diameter"],
        ),
        (
            "Preformed seal",
            work.seal.clone().unwrap_or_default(),
            &[
                "seal.product",
                "seal.width",
                "seal.depth",
                "seal.compression",
            ],
        ),
        (
            "As the structure comes down",
            runner.map_or_else(String::new, |range| words::moved(&range.down)),
            OF_RUNNER,
        ),
        (
            "As the structure goes up",
            runner.map_or_else(String::new, |range| words::moved(&range.up)),
            OF_RUNNER,
        ),
        (
            "Board screws",
            words::screws(work),
            &["board.top_screw_distance", "board.screw_spacing"],
        ),
    ];
    let of_flutes = (
        "Flutes to fill",
        work.flutes.as_ref().map_or_else(String::new, words::flutes),
        ["deck.*", "packing.length"].as_slice(),
    );
    let mut lines: Vec<Line> = of_work
        .into_iter()
        .chain([of_flutes])
        .filter(|(_, words, _)| !words.is_empty())
        .map(|(about, words, rests_on)| Line {
            about,
            words,
            clauses: asks.clauses(rests_on),
        })
        .collect();
    lines.extend(work.fasteners.iter().map(|row| of_row(row, asks)));
    lines
}

/// What ends a runner's way.
const OF_RUNNER: &[&str] = &[
    "runner.leg_length",
    "runner.slot_length",
    "runner.screw_position",
    "stud.end_gap",
    "board.gap",
    "board.top_screw_distance",
];

fn of_row(row: &Row, asks: &Asks<'_>) -> Line {
    Line {
        about: "Along the run",
        words: words::row(row),
        clauses: asks.clauses_in(&row.item, row.rests_on()),
    }
}

/// The clauses that name what is ordered.
pub(crate) fn naming(order: &Ordered, asks: &Asks<'_>) -> Vec<String> {
    asks.clauses(match order.kind {
        Kind::Joint => &[],
        Kind::Packing => &["packing.product", "packing.material", "packing.density"],
        Kind::Coating => &["coating.product"],
        Kind::Sealant => &["sealant.product"],
        Kind::Profile => &["runner.kind", "runner.gauge", "runner.leg_length"],
        Kind::Fasteners => &[
            "runner.fastener*",
            "clip.spacing",
            "fastener.*",
            "strip.spacing",
        ],
    })
}
