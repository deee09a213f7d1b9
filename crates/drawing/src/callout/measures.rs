//! The measures of a part, in words.

use crate::known::{Condition, Deck, Floor, Framed, Kind, Length, Origin, Wall};
use crate::section::{Component, both as both_systems};

/// The measures of a part.
pub(super) fn of(component: Component, condition: &Condition) -> String {
    let framed = match &condition.wall {
        Some(Wall::Framed(wall)) => Some(wall),
        _ => None,
    };
    let words = match component {
        Component::Concrete => concrete(condition),
        Component::Deck => deck(condition).map(deck_words),
        Component::Beam | Component::Fireproofing | Component::Clip => beam(component, condition),
        Component::Wall => match &condition.wall {
            Some(Wall::Solid(wall)) => Some(format!("{} thick", wall.thickness.told())),
            _ => None,
        },
        Component::Runner => framed.map(runner),
        Component::Stud => framed.map(|wall| stud(wall, what_is_above(condition))),
        Component::Board => framed.map(board),
        Component::Liner => {
            framed.and_then(|wall| Some(format!("{} thick", wall.liner.as_ref()?.told())))
        }
        Component::Fastener => framed.and_then(|wall| {
            Some(format!(
                "{} o.c.",
                wall.runner.fastener_spacing.as_ref()?.told()
            ))
        }),
        Component::Screw => framed.and_then(|wall| {
            Some(format!(
                "top row {} below the {}",
                wall.top_screw.as_ref()?.told(),
                what_is_above(condition)
            ))
        }),
        _ => filling(component, condition),
    };
    words.unwrap_or_default()
}

/// What a wall ends beneath, in a word.
fn what_is_above(condition: &Condition) -> &'static str {
    match &condition.floor {
        Some(Floor::Beam(_)) => "fireproofing",
        Some(Floor::Deck(_)) => "deck",
        _ => "floor",
    }
}

fn deck(condition: &Condition) -> Option<&Deck> {
    match &condition.floor {
        Some(Floor::Deck(deck)) => Some(deck),
        Some(Floor::Beam(beam)) => Some(&beam.deck),
        _ => None,
    }
}

fn concrete(condition: &Condition) -> Option<String> {
    match &condition.floor {
        Some(Floor::Slab { thickness }) => Some(format!("{} thick", thickness.told())),
        _ => deck(condition).map(|deck| format!("{} over the crests", deck.cover.told())),
    }
}

fn deck_words(deck: &Deck) -> String {
    let ribs = if deck.rib_bottom.from == Origin::Usual {
        "; rib widths not stated"
    } else {
        ""
    };
    let way = match (deck.direction_known, deck.along) {
        (true, true) => ", flutes along the wall",
        (true, false) => ", flutes across the wall",
        (false, _) => "",
    };
    format!(
        "{} deep, {} o.c.{way}{ribs}",
        deck.depth.told(),
        deck.pitch.told()
    )
}

fn beam(component: Component, condition: &Condition) -> Option<String> {
    let Some(Floor::Beam(beam)) = &condition.floor else {
        return match (&condition.fill.support, component) {
            (Some(steel), Component::Clip) => Some(format!(
                "holds the packing from below, {} thick",
                steel.told()
            )),
            _ => None,
        };
    };
    Some(match component {
        Component::Beam => format!(
            "{} deep, flanges {} wide",
            beam.depth.told(),
            beam.flange_width.told()
        ),
        Component::Fireproofing => {
            let spray = beam.fireproofing.as_ref()?;
            let lap = spray
                .lap
                .as_ref()
                .map(|lap| format!(", {} onto the deck", lap.told()));
            format!(
                "{} thick{}",
                spray.thickness.told(),
                lap.unwrap_or_default()
            )
        }
        _ => format!("legs {}", beam.clip.as_ref()?.leg.told()),
    })
}

fn runner(wall: &Framed) -> String {
    let slot = wall
        .runner
        .slot
        .as_ref()
        .map(|slot| format!(", slots {}", slot.told()));
    format!(
        "{}, legs {}{}",
        wall.runner.kind.words(),
        wall.runner.leg.told(),
        slot.unwrap_or_default()
    )
}

fn stud(wall: &Framed, above: &str) -> String {
    let gap = wall
        .stud
        .end_gap
        .as_ref()
        .map(|gap| format!(", {} short of the {above}", gap.told()));
    format!("{} wide{}", wall.stud.width.told(), gap.unwrap_or_default())
}

fn board(wall: &Framed) -> String {
    let [left, right] = wall.layers;
    let layers = if right == 1 {
        "1 layer".to_owned()
    } else {
        format!("{right} layers")
    };
    let sides = if left == right {
        "on each side"
    } else {
        "on one side"
    };
    format!("{layers} of {}, {sides}", wall.board.told())
}

fn filling(component: Component, condition: &Condition) -> Option<String> {
    let fill = &condition.fill;
    let both = |length: &Option<Length>| length.as_ref().map(Length::told);
    Some(match component {
        Component::FlutePacking => {
            let packing = fill.packing.as_ref()?;
            let long = both(&packing.flute_length).map(|long| format!(", pieces {long} long"));
            format!("flutes filled over their depth{}", long.unwrap_or_default())
        }
        Component::Packing => {
            let packing = fill.packing.as_ref()?;
            let thick = packing
                .thickness
                .as_ref()
                .map(|thick| format!(", {} before compression", both_systems(thick.quantity)));
            let fibres = packing.fibres.map(|fibres| format!(", {}", fibres.words()));
            let depth = packing.depth.told();
            format!(
                "{depth} deep{}{}",
                thick.unwrap_or_default(),
                fibres.unwrap_or_default()
            )
        }
        Component::Coating => {
            let coating = fill.coating.as_ref()?;
            let (wall, floor) = (coating.onto_wall.told(), coating.onto_floor.told());
            let laps = match (condition.kind, &condition.floor) {
                (Kind::FloorToFloor | Kind::WallToWall, _) => format!("{floor} onto each side"),
                (_, Some(Floor::Deck(_))) => format!("{wall} onto the wall, {floor} onto the deck"),
                (_, Some(Floor::Beam(_))) => {
                    format!("{wall} onto the wall, {floor} onto the fireproofing")
                }
                _ => format!("{wall} onto the wall, {floor} onto the floor"),
            };
            let state = if coating.film.is_empty() {
                "thick"
            } else {
                coating.film
            };
            format!("{} {state}, {laps}", coating.thickness.told())
        }
        Component::Sealant => format!("{} deep", fill.sealant.as_ref()?.depth.told()),
        Component::Bead => format!("{} in diameter", both(&fill.bead)?),
        Component::Seal => {
            let seal = fill.seal.as_ref()?;
            let wide = seal
                .width
                .as_ref()
                .map(|wide| format!(", {} wide before placing", wide.told()));
            format!("{} deep{}", seal.depth.told(), wide.unwrap_or_default())
        }
        Component::Tape => format!("{} wide", both(&fill.tape)?),
        _ => return None,
    })
}
