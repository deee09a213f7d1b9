//! The plug that fills a void, and the board cut to it or straight.

use measure::{Number, Quantity, Unit};

use super::profile::Profile;
use crate::error::Error;
use crate::exact::exact;
use crate::known::Known;
use crate::units::{cubic, square};
use crate::worked::{Computed, Worked, both, percent_words, trade};

/// What is asked of a plug.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlugAsked {
    /// The deck.
    pub profile: Profile,
    /// How deep the plug is through the wall, along the rib.
    pub depth: Known,
    /// The least compression that the listing asks for.
    pub compression: Known,
    /// Whether the compression is of its height, between deck and wall, or of its width, between the ribs.
    pub of_height: bool,
    /// The gap that is kept between board and deck, where board is cut to the void.
    pub board_gap: Option<Known>,
}

/// A plug.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plug {
    /// Its width at the top as cut.
    pub top: Quantity,
    /// Its width at the bottom as cut.
    pub bottom: Quantity,
    /// Its height as cut.
    pub height: Quantity,
    /// Its volume as cut.
    pub volume: Quantity,
    /// The area of board in one void on one face, where it is cut to the void less its gap.
    pub board: Quantity,
    /// The area left open in one void on one face, where the board is cut straight at the ribs.
    pub left_open: Quantity,
}

/// The plug as cut for one void, before it is compressed.
///
/// # Errors
/// A compression outside 0 to below 100 %, a length that isn't above zero, a gap that leaves no board.
pub fn plug(asked: &PlugAsked) -> Result<Computed<Plug>, Error> {
    let section = asked.profile.section()?;
    let unit = section.unit;
    let depth = asked.depth.above_zero("the depth of the plug", unit)?;
    let c = asked.compression.part("the compression")?;
    let what = "the plug";
    let larger = (exact(1) / (exact(1) - c)).get(what)?;
    let (wide, high) = if asked.of_height {
        (Number::ONE, larger)
    } else {
        (larger, Number::ONE)
    };
    let top = (exact(section.top) * wide).get(what)?;
    let bottom = (exact(section.bottom) * wide).get(what)?;
    let height = (exact(section.depth) * high).get(what)?;
    let (volume_unit, per) = cubic(unit);
    let volume = (exact(section.area) * larger * depth / per).get(what)?;
    let gap = asked.board_gap.as_ref();
    let gap = gap.map_or(Ok(Number::ZERO), |gap| {
        gap.not_negative("the gap at the board", unit)
    })?;
    let board = board_area(section.top, section.bottom, section.depth, gap, asked)?;
    let mut worked = Worked::of("Plug for a void under a steel deck");
    worked.chosen(
        "deck",
        &format!("{} ({})", asked.profile.name, asked.profile.title),
        &asked.profile.source,
    );
    worked.given("depth of the plug through the wall", &asked.depth);
    worked.given("compression, c", &asked.compression);
    worked.given_if("gap between board and deck", asked.board_gap.as_ref());
    let direction = if asked.of_height {
        "its height, from the wall to the deck"
    } else {
        "its width, from rib to rib"
    };
    worked.chosen("compressed is", direction, "as given");
    worked.formula(
        "cut size = size of the void / (1 - c), in the direction of compression only",
        super::super::packing::COMPRESSION_SOURCE,
    );
    worked.step(format!(
        "void: {} wide at the top, {} at the bottom, {} deep",
        trade(section.top, unit),
        trade(section.bottom, unit),
        trade(section.depth, unit)
    ));
    worked.step(format!(
        "1 / (1 - {}) = {}",
        percent_words(c),
        crate::error::plain(larger)
    ));
    worked.result("plug, width at the top as cut", top, unit);
    worked.result("plug, width at the bottom as cut", bottom, unit);
    worked.result("plug, height as cut", height, unit);
    worked.result("plug, volume as cut", volume, volume_unit);
    worked.result(
        "board cut to the void, area on one face",
        board,
        square(unit),
    );
    worked.result(
        "board cut straight, area left open on one face",
        section.area,
        square(unit),
    );
    worked.note(format!("board cut straight at the ribs leaves {} of each void open on each face: the plug alone closes it", both(section.area, square(unit))));
    let length = |number| Quantity::new(number, unit);
    Ok(worked.with(Plug {
        top: length(top),
        bottom: length(bottom),
        height: length(height),
        volume: Quantity::new(volume, volume_unit),
        board: Quantity::new(board, square(unit)),
        left_open: Quantity::new(section.area, square(unit)),
    }))
}

/// The void less a gap at its top and, measured level, at each side.
fn board_area(
    top: Number,
    bottom: Number,
    depth: Number,
    gap: Number,
    asked: &PlugAsked,
) -> Result<Number, Error> {
    let what = "the board in a void";
    let both_sides = exact(gap) * 2;
    let height = (exact(depth) - gap).get(what)?;
    // The sides slope: at the height of the gap the void is a little wider than at its top.
    let width_there = exact(top) + (exact(bottom) - top) * gap / depth;
    let top = (width_there - both_sides).get(what)?;
    let bottom = (exact(bottom) - both_sides).get(what)?;
    if height <= Number::ZERO || top <= Number::ZERO || bottom <= Number::ZERO {
        let given = asked
            .board_gap
            .as_ref()
            .map_or_else(|| "0".to_owned(), |gap| gap.quantity.to_string());
        return Err(Error::range(
            "the gap at the board",
            given,
            format!(
                "less than what the void has: {} deep",
                both(depth, asked_unit(asked))
            ),
        ));
    }
    (exact(height) * (exact(top) + bottom) / 2).get(what)
}

const fn asked_unit(asked: &PlugAsked) -> Unit {
    crate::known::length_unit(asked.profile.depth.unit)
}
