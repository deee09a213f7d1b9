//! What is known of what fills a joint.

use measure::Dimension;

use super::condition::{Coating, Fibres, Fill, Floor, Kind, Packing, Seal, Sealant, Wall};
use super::evidence::Known;
use super::movement::uncompressed;
use super::value::{Length, Origin, as_number, percent};

/// What fills a joint.
pub(super) fn of(
    known: &Known<'_>,
    kind: Kind,
    floor: Option<&Floor>,
    wall: Option<&Wall>,
) -> Fill {
    let faces = if matches!(kind, Kind::FloorToFloor | Kind::FloorToWall) {
        1
    } else {
        2
    };
    let seal = seal(known);
    Fill {
        packing: packing(known, kind, floor, wall),
        coating: coating(known, faces, floor, wall),
        // Where a preformed seal fills the joint, sealant only closes its ends and splices.
        sealant: if seal.is_some() {
            None
        } else {
            sealant(known, faces, wall)
        },
        seal,
        bead: known.length("sealant.bead_diameter"),
        tape: known.length("tape.width").filter(|tape| tape.mm() >= 1.0),
        support: support(known, kind),
    }
}

fn packing(
    known: &Known<'_>,
    kind: Kind,
    floor: Option<&Floor>,
    wall: Option<&Wall>,
) -> Option<Packing> {
    let there = known.knows_of("packing") || known.asks_of("packing");
    if !there || known.text("packing.material") == Some("none") {
        return None;
    }
    let whole = match wall {
        Some(Wall::Framed(wall)) => Length {
            quantity: wall.board.quantity,
            from: Origin::Usual,
        },
        _ => Length::usual(100),
    };
    let across_flutes = matches!(floor, Some(Floor::Deck(deck)) if !deck.along);
    Some(Packing {
        depth: known
            .length("packing.depth")
            .filter(|depth| depth.mm() >= 1.0)
            .unwrap_or(whole),
        thickness: thickness(known),
        compression: known.quantity("packing.compression", Dimension::Fraction),
        density: known.quantity("packing.density", Dimension::Density),
        fibres: fibres(known, kind),
        recess: known.length("packing.recess"),
        flute_length: if across_flutes {
            known.length("packing.length")
        } else {
            None
        },
    })
}

/// The thickness before compression: as somebody knows it, or from how much oversize the packing was cut.
fn thickness(known: &Known<'_>) -> Option<Length> {
    let stated = known
        .length("packing.thickness")
        .filter(|length| length.from.is_fact());
    let of_oversize = || {
        let oversize = known.quantity("packing.oversize", Dimension::Fraction)?;
        let width = known
            .length("joint.width")
            .filter(|width| width.from.is_fact())?;
        // So much more than the joint's width: T = W (1 + o), the same as compression by -o read the other way round.
        let one = measure::Number::whole(1);
        let thickness = width.quantity.times(one.plus(percent(oversize)?)?)?;
        Length::new(thickness, width.from)
    };
    let of_compression = || {
        let fact = known.fact("packing.compression", None)?;
        let compression = percent(known.quantity("packing.compression", Dimension::Fraction)?)?;
        if as_number(compression) >= 0.95 || compression.is_negative() {
            return None;
        }
        let width = known
            .length("joint.width")
            .filter(|width| width.from.is_fact())?;
        let words = format!("from the compression, {}", fact.provenance.kind);
        Length::new(
            uncompressed(width.quantity, compression)?,
            Origin::Fact(words),
        )
    };
    stated
        .or_else(of_oversize)
        .or_else(of_compression)
        .filter(|thickness| thickness.mm() >= 1.0)
}

/// The direction of the fibres in the section. A strip placed cut edge first is compressed across its thickness, so that its fibres
/// lie parallel to the faces of the joint (ASTM C612, 1.3: the fibres of board lie mainly parallel to its faces).
fn fibres(known: &Known<'_>, kind: Kind) -> Option<Fibres> {
    let joint_is_level = matches!(kind, Kind::HeadOfWall | Kind::BottomOfWall);
    match (known.text("packing.fiber_direction"), kind) {
        // Of a joint between walls the section is a plan.
        (Some("along-joint"), _) | (Some("vertical"), Kind::WallToWall) => Some(Fibres::AlongRun),
        (Some("vertical"), _) if joint_is_level => Some(Fibres::AcrossJoint),
        (Some("horizontal"), _) if !joint_is_level => Some(Fibres::AcrossJoint),
        (Some("across-joint"), _) => Some(Fibres::AcrossJoint),
        (Some("parallel-to-joint-faces" | "vertical" | "horizontal"), _) => {
            Some(Fibres::AlongFaces)
        }
        _ => (known.flag("packing.edge_first") == Some(true)).then_some(Fibres::AlongFaces),
    }
}

fn coating(
    known: &Known<'_>,
    faces: u8,
    floor: Option<&Floor>,
    wall: Option<&Wall>,
) -> Option<Coating> {
    if !(known.knows_of("coating") || known.asks_of("coating")) {
        return None;
    }
    let known_first = |properties: &[&str]| {
        let found: Vec<Length> = properties
            .iter()
            .filter_map(|property| known.length(property))
            .collect();
        let fact = found.iter().find(|length| length.from.is_fact());
        fact.or_else(|| found.first()).cloned()
    };
    let or_usual = |length: Option<Length>, usual| length.unwrap_or_else(|| Length::usual(usual));
    let onto_wall: &[&str] = match wall {
        Some(Wall::Framed(_)) => &[
            "coating.overlap_board",
            "coating.overlap_wall",
            "coating.overlap",
        ],
        Some(Wall::Solid(_)) => &[
            "coating.overlap_wall",
            "coating.overlap_concrete",
            "coating.overlap",
        ],
        None => &["coating.overlap_concrete", "coating.overlap"],
    };
    let onto_floor: &[&str] = match floor {
        Some(Floor::Deck(_)) => &["coating.overlap_deck", "coating.overlap"],
        Some(Floor::Beam(_)) => &[
            "coating.overlap_fireproofing",
            "coating.overlap_beam",
            "coating.overlap",
        ],
        _ => &["coating.overlap_concrete", "coating.overlap"],
    };
    // A coating in place is dry, but it is wet that listings and records have it; the call-out says which.
    let film = ["wet", "dry"].into_iter().find_map(|film| {
        let thickness = known_first(&[&format!("coating.{film}_thickness")]);
        let thickness = thickness.filter(|length| length.mm() > 0.05 && length.mm() < 30.0);
        Some((film, thickness?))
    });
    let (film, thickness) = film.map_or(("", None), |(film, thickness)| (film, Some(thickness)));
    Some(Coating {
        thickness: or_usual(thickness, 3),
        film,
        onto_wall: or_usual(known_first(onto_wall), 13),
        onto_floor: or_usual(known_first(onto_floor), 13),
        faces: known.count("coating.faces", 2).unwrap_or(faces),
    })
}

fn sealant(known: &Known<'_>, faces: u8, wall: Option<&Wall>) -> Option<Sealant> {
    let single = matches!(wall, Some(Wall::Framed(wall)) if wall.layers.contains(&0));
    Some(Sealant {
        depth: known
            .length("sealant.depth")
            .filter(|depth| depth.mm() >= 1.0)?,
        faces: if single {
            1
        } else {
            known.count("sealant.faces", 2).unwrap_or(faces)
        },
    })
}

fn seal(known: &Known<'_>) -> Option<Seal> {
    if !(known.knows_of("seal") || known.asks_of("seal")) {
        return None;
    }
    Some(Seal {
        width: known.length("seal.width").filter(|width| width.mm() >= 1.0),
        depth: known
            .length("seal.depth")
            .filter(|depth| depth.mm() >= 1.0)
            .unwrap_or_else(|| Length::usual(16)),
    })
}

/// Clips under the packing of a joint in a floor.
fn support(known: &Known<'_>, kind: Kind) -> Option<Length> {
    let in_floor = matches!(kind, Kind::FloorToFloor | Kind::FloorToWall);
    let there = known.knows_of("clip") || known.length("clip.steel_thickness").is_some();
    (in_floor && there).then(|| {
        known
            .length("clip.steel_thickness")
            .filter(|steel| steel.mm() >= 0.2 && steel.mm() <= 6.0)
            .unwrap_or_else(|| Length::usual(1))
    })
}
