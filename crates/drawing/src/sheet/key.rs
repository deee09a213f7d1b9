//! The key: what lines, marks and patterns mean.

use std::collections::BTreeSet;

use conformance::Verdict;

use crate::layout::width;
use crate::plane::{Box2, Point, pt};
use crate::section::{Look, Material, Scene};
use crate::svg::{Fill, Group, Ink, Pen};

const LINES: &[&str] = &[
    "Lines and sections to ISO 128, dimensions to ISO 129-1,",
    "scales to ISO 5455; patterns as usual in the trade.",
];

/// The key to a sheet, in a box.
pub(super) fn key(frame: Box2, scene: &Scene) -> Group {
    let mut ink = vec![Ink::frame(frame, Pen::Beyond)];
    let left = frame.min.x + 2.0;
    let top = frame.min.y + 4.2;
    ink.push(Ink::bold(pt(left, top), 2.8, "Key"));
    let mut at = pt(left + 10.0, top);
    for verdict in [
        Verdict::Met,
        Verdict::NotMet,
        Verdict::Open,
        Verdict::Judged,
    ] {
        ink.push(Ink::Mark(pt(at.x, at.y - 0.9), verdict));
        ink.push(Ink::words(pt(at.x + 2.0, at.y), 2.4, verdict.words()));
        at.x += 5.5 + width(verdict.words(), 2.4, false);
    }
    let row = 5.3;
    let names = materials(scene);
    let half = frame.width() / 2.0;
    for (count, (material, name)) in names.into_iter().enumerate() {
        let count = u32::try_from(count).unwrap_or(0);
        let at = pt(
            left + f64::from(count % 2) * half,
            top + 2.2 + f64::from(count / 2) * row,
        );
        ink.extend(sample(at, material));
        ink.push(Ink::words(pt(at.x + 12.0, at.y + 3.0), 2.3, name));
    }
    let mut y = frame.max.y - 11.6;
    let line = |ink: &mut Vec<Ink>, x: f64, y: f64, pen: Pen, dashed: bool, words: &str| {
        let points = vec![pt(x, y - 0.8), pt(x + 8.0, y - 0.8)];
        ink.push(Ink::Line {
            points,
            closed: false,
            pen,
            dashed,
        });
        ink.push(Ink::words(pt(x + 10.0, y), 2.3, words));
    };
    line(&mut ink, left, y, Pen::Cut, false, "cut");
    line(&mut ink, left + 26.0, y, Pen::Beyond, false, "beyond");
    line(
        &mut ink,
        left + 52.0,
        y,
        Pen::Cut,
        true,
        "dashed, [ ]: listing or usual value,",
    );
    y += 3.0;
    ink.push(Ink::words(
        pt(left + 62.0, y),
        2.3,
        "not known of this joint",
    ));
    y += 0.6;
    for words in LINES {
        y += 2.9;
        ink.push(Ink::words(pt(left, y), 2.2, *words));
    }
    Group {
        id: "key".to_owned(),
        title: "Key".to_owned(),
        ink,
    }
}

/// The materials that the section cuts, each name once.
fn materials(scene: &Scene) -> Vec<(Material, &'static str)> {
    let used: BTreeSet<Material> = scene
        .parts
        .iter()
        .filter(|part| part.look == Look::Cut && part.material != Material::Gap)
        .map(|part| part.material)
        .collect();
    let mut named: Vec<(Material, &'static str)> = Vec::new();
    for material in used {
        if !named.iter().any(|(_, name)| *name == material.title()) {
            named.push((material, material.title()));
        }
    }
    named
}

fn sample(at: Point, material: Material) -> [Ink; 2] {
    let frame = Box2::of(at, pt(at.x + 10.0, at.y + 4.2));
    let Box2 { min, max } = frame;
    let corners = vec![min, pt(max.x, min.y), max, pt(min.x, max.y)];
    [
        Ink::Area(corners, Fill::Material(material)),
        Ink::frame(frame, Pen::CutThin),
    ]
}
