//! A joint between two upright faces: between floors, between a floor and a wall, and in plan between walls.

use super::behaviour::Behaviour;
use super::gap_fill;
use super::part::{Component, Material};
use super::scene::{Scene, Side};
use crate::known::{Condition, Floor, Framed, Kind, Length, Origin, Wall};
use crate::plane::{Box2, Outline, band, pt};

/// The section across a joint whose width lies level in the drawing; its upper face lies at y = 0, its middle at x = 0.
pub(super) fn scene(condition: &Condition, behaviour: Behaviour) -> Scene {
    let deep = depth(condition);
    let frame = frame(condition, deep.mm());
    let mut scene = Scene::new(behaviour, frame);
    let half = scene.behaviour.mm / 2.0;
    leaf(&mut scene, condition, &deep, -1.0);
    if condition.kind == Kind::FloorToWall {
        upright_wall(&mut scene, condition);
    } else {
        leaf(&mut scene, condition, &deep, 1.0);
    }
    let width = (scene.behaviour.width, condition.width.from.is_fact());
    let foot = scene.frame.max.y;
    scene.measure_of(
        "joint width",
        Side::Below,
        pt(-half, foot),
        pt(half, foot),
        width,
    );
    scene.measures.rotate_right(1);
    gap_fill::fill(&mut scene, condition, deep.mm());
    if condition.kind == Kind::WallToWall {
        scene
            .notes
            .push("Plan: cut level through both walls.".to_owned());
    }
    scene
}

/// How deep the joint is: the thickness of the floor, or of the walls.
fn depth(condition: &Condition) -> Length {
    match (condition.kind, &condition.floor, &condition.wall) {
        (Kind::WallToWall, _, Some(Wall::Solid(wall))) => wall.thickness.clone(),
        (Kind::WallToWall, _, Some(Wall::Framed(wall))) => wall_thickness(wall),
        (_, Some(Floor::Slab { thickness }), _) => thickness.clone(),
        (_, Some(Floor::Deck(deck)), _) => {
            let whole = deck.depth.quantity.plus(deck.cover.quantity);
            Length {
                quantity: whole.unwrap_or(deck.cover.quantity),
                from: deck.cover.from.clone(),
            }
        }
        _ => Length::usual(150),
    }
}

fn wall_thickness(wall: &Framed) -> Length {
    let layers: i32 = wall.layers.iter().map(|layers| i32::from(*layers)).sum();
    let boards = wall.board.quantity.times(measure::Number::whole(layers));
    let whole = boards.and_then(|boards| wall.stud.width.quantity.plus(boards));
    Length {
        quantity: whole.unwrap_or(wall.stud.width.quantity),
        from: if wall.board.from.is_fact() {
            wall.stud.width.from.clone()
        } else {
            Origin::Usual
        },
    }
}

fn frame(condition: &Condition, deep: f64) -> Box2 {
    let opened = condition.motion.opening.as_ref().map_or(0.0, |share| {
        crate::known::as_number(share.ratio()) * condition.width.mm()
    });
    let half = f64::midpoint(condition.width.mm(), opened);
    let coating = condition.fill.coating.as_ref();
    let lap = coating.map_or(0.0, |coating| {
        coating.onto_floor.mm().max(coating.onto_wall.mm())
    });
    let beside = (lap + 40.0).max(70.0);
    let right = match &condition.wall {
        Some(Wall::Solid(wall)) if condition.kind == Kind::FloorToWall => {
            half + wall.thickness.mm() + 8.0
        }
        Some(Wall::Framed(wall)) if condition.kind == Kind::FloorToWall => {
            half + wall_thickness(wall).mm() + 8.0
        }
        _ => half + beside,
    };
    let above = match condition.kind {
        Kind::FloorToWall => (lap + 30.0).max(60.0),
        _ if coating.is_some() => 30.0,
        _ => 14.0,
    };
    let packing = condition
        .fill
        .packing
        .as_ref()
        .map_or(0.0, |packing| packing.depth.mm());
    let below = match condition.kind {
        Kind::FloorToWall => deep.max(packing) + 60.0,
        _ => deep.max(packing.min(deep + 60.0)) + 14.0,
    };
    Box2::of(pt(-(half + beside), -above), pt(right, below))
}

/// One of the two parts that the joint lies between: a floor, or in plan a wall.
fn leaf(scene: &mut Scene, condition: &Condition, deep: &Length, side: f64) {
    let near = side * scene.behaviour.mm / 2.0;
    let reach = if side < 0.0 {
        scene.frame.min.x
    } else {
        scene.frame.max.x
    };
    let torn = |outline: Outline| outline.torn_at_x(reach);
    let known = deep.from.is_fact();
    match (&condition.wall, condition.kind) {
        (Some(Wall::Framed(wall)), Kind::WallToWall) => {
            let each = wall.board.mm();
            let [upper, lower] = wall.layers;
            let levels = (0..upper).map(|layer| f64::from(layer) * each);
            let stud_top = f64::from(upper) * each;
            let stud_foot = stud_top + wall.stud.width.mm();
            let levels = levels.chain((0..lower).map(|layer| stud_foot + f64::from(layer) * each));
            for level in levels {
                let outline = torn(Outline::rectangle(pt(near, level), pt(reach, level + each)));
                scene.cut(
                    Component::Board,
                    Material::Gypsum,
                    &outline,
                    wall.board.from.is_fact(),
                );
            }
            let back = near + side * 32.0;
            let path = [
                pt(back, stud_top),
                pt(near, stud_top),
                pt(near, stud_foot),
                pt(back, stud_foot),
            ];
            if let Some(outline) = band(&path, side * -wall.stud.steel.mm()) {
                scene.cut(
                    Component::Stud,
                    Material::SheetSteel,
                    &outline,
                    wall.stud.width.from.is_fact(),
                );
            }
        }
        (Some(Wall::Solid(wall)), Kind::WallToWall) => {
            let material = if wall.masonry {
                Material::Masonry
            } else {
                Material::Concrete
            };
            let outline = torn(Outline::rectangle(pt(near, 0.0), pt(reach, deep.mm())));
            scene.cut(Component::Wall, material, &outline, known);
        }
        _ => {
            let outline = torn(Outline::rectangle(pt(near, 0.0), pt(reach, deep.mm())));
            scene.cut(Component::Concrete, Material::Concrete, &outline, known);
        }
    }
    if side < 0.0 {
        let what = if condition.kind == Kind::WallToWall {
            "wall"
        } else {
            "floor"
        };
        scene.measure(what, Side::Right, pt(near, 0.0), pt(near, deep.mm()), deep);
    }
}

/// The wall that the edge of a floor meets.
fn upright_wall(scene: &mut Scene, condition: &Condition) {
    let near = scene.behaviour.mm / 2.0;
    let Box2 { min, max } = scene.frame;
    let torn = |outline: Outline| outline.torn_at_y(min.y).torn_at_y(max.y);
    match &condition.wall {
        Some(Wall::Solid(wall)) => {
            let far = near + wall.thickness.mm();
            let material = if wall.masonry {
                Material::Masonry
            } else {
                Material::Concrete
            };
            let outline = torn(Outline::rectangle(pt(near, min.y), pt(far, max.y)));
            scene.cut(
                Component::Wall,
                material,
                &outline,
                wall.thickness.from.is_fact(),
            );
            scene.measure(
                "wall",
                Side::Below,
                pt(near, max.y),
                pt(far, max.y),
                &wall.thickness,
            );
        }
        Some(Wall::Framed(wall)) => {
            let each = wall.board.mm();
            let [facing, behind] = wall.layers.map(f64::from);
            let facing = if facing > 0.0 { facing } else { behind };
            let stud = near + facing * each;
            let stud_far = stud + wall.stud.width.mm();
            let known = wall.board.from.is_fact();
            for (start, count) in [(near, facing), (stud_far, behind)] {
                let mut at = start;
                while at < start + count * each - 0.01 {
                    let outline = torn(Outline::rectangle(pt(at, min.y), pt(at + each, max.y)));
                    scene.cut(Component::Board, Material::Gypsum, &outline, known);
                    at += each;
                }
            }
            let outline = torn(Outline::rectangle(pt(stud, min.y), pt(stud_far, max.y)));
            scene.beyond(
                Component::Stud,
                Material::SheetSteel,
                &outline,
                wall.stud.width.from.is_fact(),
            );
        }
        None => {}
    }
}
