//! What is known of the wall.

use measure::Number;

use super::condition::{Framed, Kind, Runner, RunnerKind, Solid, Stud, Wall};
use super::evidence::{Known, is_of};
use super::gather::Undrawable;
use super::value::{Length, Origin};

/// The wall of a joint.
///
/// # Errors
/// When nothing says what it is made of.
pub(super) fn of(known: &Known<'_>, kind: Kind, width: &Length) -> Result<Wall, Undrawable> {
    let is_framed = known.knows_of("stud")
        || known.knows_of("board")
        || known.asks_of("stud")
        || known.asks_of("board");
    match known.text("wall.kind") {
        Some("gypsum-steel-stud" | "gypsum-wood-stud" | "shaft-wall") => framed(known, kind, width),
        Some(other) => solid(known, other == "masonry"),
        None if is_framed => framed(known, kind, width),
        None if known.length("wall.thickness").is_some() => solid(known, false),
        None => Err(Undrawable::NoWall),
    }
}

fn solid(known: &Known<'_>, masonry: bool) -> Result<Wall, Undrawable> {
    let thickness = known
        .length("wall.thickness")
        .unwrap_or_else(|| Length::usual(200));
    if thickness.mm() < 10.0 {
        return Err(Undrawable::NoThickness {
            part: "thickness of the wall",
            words: thickness.words(),
            property: "wall.thickness",
        });
    }
    Ok(Wall::Solid(Solid { thickness, masonry }))
}

fn framed(known: &Known<'_>, kind: Kind, width: &Length) -> Result<Wall, Undrawable> {
    let shaft = known.text("wall.kind") == Some("shaft-wall");
    let layers = known.count("board.layers", 4).unwrap_or(1);
    let single = known.count("board.sides", 2) == Some(1) || shaft;
    let stud_width = known
        .length("stud.width")
        .unwrap_or_else(|| Length::usual(92));
    if stud_width.mm() < 10.0 {
        return Err(Undrawable::NoThickness {
            part: "width of the studs",
            words: stud_width.words(),
            property: "stud.width",
        });
    }
    // The liner of a shaft wall stands in the studs, and must leave room for them.
    let liner = shaft
        .then(|| Length::usual(25))
        .filter(|liner| liner.mm() < stud_width.mm() - 10.0);
    let end_gap = known.length("stud.end_gap").or_else(|| {
        (kind == Kind::HeadOfWall).then_some(Length {
            quantity: width.quantity,
            from: Origin::Usual,
        })
    });
    Ok(Wall::Framed(Framed {
        layers: if single {
            [0, layers]
        } else {
            [layers, layers]
        },
        board: board(known, layers),
        liner,
        stud: Stud {
            steel: steel(known, "stud.steel_thickness", None),
            fastened: known.flag("stud.attached_to_runner"),
            width: stud_width,
            end_gap,
        },
        runner: runner(known, kind),
        top_screw: known.length("board.top_screw_distance"),
        board_gap: known.length("board.gap").filter(|gap| gap.from.is_fact()),
    }))
}

fn board(known: &Known<'_>, layers: u8) -> Length {
    let each = known.length("board.thickness");
    if let Some(each) = each.filter(|each| each.mm() >= 3.0) {
        return each;
    }
    let of_total = || {
        let total = known.length("board.total_thickness")?;
        let share = Number::new(1, i128::from(layers))?;
        Length::new(total.quantity.times(share)?, total.from)
    };
    of_total()
        .filter(|each| each.mm() >= 3.0)
        .unwrap_or_else(|| Length::usual(16))
}

fn steel(known: &Known<'_>, property: &str, item: Option<&str>) -> Length {
    known
        .length_of(property, item)
        .filter(|steel| steel.mm() >= 0.2 && steel.mm() <= 6.0)
        .unwrap_or_else(|| Length::usual(1))
}

fn runner(known: &Known<'_>, kind: Kind) -> Runner {
    let item = runner_item(known, kind);
    let item = item.as_deref();
    let slot = known
        .length_of("runner.slot_length", item)
        .filter(|slot| slot.mm() >= 2.0);
    let leg = known
        .length_of("runner.leg_length", item)
        .filter(|leg| leg.mm() >= 5.0)
        .unwrap_or_else(|| Length::usual(32));
    let said = match known.text("runner.kind") {
        Some("deep-leg") => Some(RunnerKind::DeepLeg),
        Some("slotted") => Some(RunnerKind::Slotted),
        Some("j") => Some(RunnerKind::J),
        Some("plain") => Some(RunnerKind::Channel),
        _ => None,
    };
    let kind = said.unwrap_or_else(|| match (&slot, leg.mm() >= 50.0) {
        (Some(_), _) => RunnerKind::Slotted,
        (None, true) => RunnerKind::DeepLeg,
        (None, false) => RunnerKind::Channel,
    });
    Runner {
        short_leg: known
            .length_of("runner.short_leg_length", item)
            .filter(|leg| leg.mm() >= 5.0),
        steel: steel(known, "runner.steel_thickness", item),
        slot: slot.filter(|_| kind == RunnerKind::Slotted),
        fastener_spacing: known.length_of("runner.fastener_spacing", item),
        kind,
        leg,
    }
}

/// The item of the listing that speaks of the runner at this joint: not the one at the other end of the wall.
fn runner_item(known: &Known<'_>, kind: Kind) -> Option<String> {
    let (reading, result) = known.listing?;
    let other = if kind == Kind::BottomOfWall {
        "ceiling"
    } else {
        "floor"
    };
    let mut items = result
        .findings
        .iter()
        .filter(|finding| finding.verdict != conformance::Verdict::NotApplicable)
        .map(|finding| &finding.explanation)
        .filter(|explanation| is_of(&explanation.property, "runner"))
        .map(|explanation| &explanation.item);
    items
        .find(|path| {
            let item = reading.items.iter().find(|item| item.path == **path);
            item.is_none_or(|item| !item.title.to_lowercase().contains(other))
        })
        .cloned()
}
