//! What every test of a sheet needs: joints to draw, and what a sheet must never do.
#![allow(
    dead_code,
    clippy::unwrap_used,
    reason = "each test uses a part of it, and expects what it set up"
)]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use conformance::{JointResult, Subject, check_draft};
use drawing::plane::{Box2, Point, common_area};
use drawing::section::{Component, Look, Material, Part, Shape};
use drawing::{Heading, Known, Page, Scene};
use listing::Reading;
use measure::{Number, Quantity, Unit};
use site::import::{File, import};
use site::{Fact, Project, Provenance, ProvenanceKind, Value};

pub(crate) mod facts;

/// The demo's project and its listings, read afresh: drafts.
pub(crate) struct Demo {
    pub(crate) project: Project,
    pub(crate) listings: BTreeMap<String, Reading>,
}

fn demo_folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo")
}

impl Demo {
    pub(crate) fn read() -> Self {
        let folder = demo_folder();
        let names = [
            "schedule.csv",
            "marks.csv",
            "barriers.csv",
            "judgments.csv",
            "building.toml",
        ];
        let held: Vec<(&str, Vec<u8>)> = names
            .iter()
            .map(|name| (*name, std::fs::read(folder.join(name)).unwrap()))
            .collect();
        let files: Vec<File<'_>> = held
            .iter()
            .map(|(name, bytes)| File { name, bytes })
            .collect();
        let project = import(&files).unwrap().project;
        let mut listings = BTreeMap::new();
        for entry in std::fs::read_dir(folder.join("listings")).unwrap() {
            let path = entry.unwrap().path();
            let stem = path.file_stem().unwrap().to_string_lossy().into_owned();
            let text = std::fs::read_to_string(&path).unwrap();
            listings.insert(stem.clone(), listing::read_text(&stem, &text));
        }
        Self { project, listings }
    }

    /// Each joint with its subject, its listing and what was found.
    pub(crate) fn each(&self, mut with: impl FnMut(&site::Joint, &Known<'_>, &Heading)) {
        for joint in &self.project.joints {
            let subject = Subject::of(&self.project, joint);
            let reading = self
                .project
                .listing(joint)
                .and_then(|name| self.listings.get(name));
            let result: Option<JointResult> =
                reading.map(|reading| check_draft(reading, &subject).into());
            let known = Known {
                subject: &subject,
                listing: reading.zip(result.as_ref()),
            };
            let heading = Heading {
                joint: joint.name.clone(),
                mark: joint.mark.clone(),
                outcome: result.as_ref().map(|result| result.overall),
                ..Heading::default()
            };
            with(joint, &known, &heading);
        }
    }
}

/// A fact that somebody measured.
pub(crate) fn fact(property: &str, value: Value) -> Fact {
    let kind = ProvenanceKind::StatedBy {
        who: "test".to_owned(),
    };
    Fact {
        property: property.to_owned(),
        value,
        provenance: Provenance { kind, date: None },
        cell: None,
    }
}

pub(crate) fn mm(length: Quantity) -> f64 {
    let number = length.to(Unit::Millimetre).unwrap().number;
    as_f64(number)
}

pub(crate) fn as_f64(number: Number) -> f64 {
    number.to_decimal(6).parse().unwrap()
}

/// What a sheet must never do: ink outside its frame, words on words, leaders across leaders, leaders through words.
pub(crate) fn assert_sheet_is_clean(page: &Page, what: &str) {
    let frame = Box2::of(Point { x: 20.0, y: 10.0 }, Point { x: 410.0, y: 287.0 });
    for point in points(page) {
        assert!(
            frame.holds(Box2::of(point, point)),
            "{what}: {point:?} lies outside the frame"
        );
    }
    let words: Vec<(Box2, &str)> = page
        .words()
        .map(|one| (one.bounds(), one.words.as_str()))
        .collect();
    for (at, (one, first)) in words.iter().enumerate() {
        assert!(
            frame.holds(*one),
            "{what}: \"{first}\" runs out of the frame"
        );
        for (other, second) in words.iter().skip(at + 1) {
            assert!(
                !one.overlaps(*other),
                "{what}: \"{first}\" and \"{second}\" overlap"
            );
        }
    }
    let leaders: Vec<(Point, Point)> = page.leaders().collect();
    for (at, one) in leaders.iter().enumerate() {
        for other in leaders.iter().skip(at + 1) {
            assert!(
                !cross(*one, *other),
                "{what}: leaders {one:?} and {other:?} cross"
            );
        }
        for (bounds, words) in &words {
            assert!(
                !bounds.is_crossed_by(one.0, one.1),
                "{what}: a leader strikes \"{words}\""
            );
        }
    }
    let mut ids: Vec<&str> = page.groups.iter().map(|group| group.id.as_str()).collect();
    let count = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), count, "{what}: two groups share an id");
}

fn points(page: &Page) -> Vec<Point> {
    use drawing::svg::Ink;
    let inks = page.groups.iter().flat_map(|group| &group.ink);
    inks.flat_map(|ink| match ink {
        Ink::Area(points, _) | Ink::Line { points, .. } => points.clone(),
        Ink::Leader(from, to) => vec![*from, *to],
        Ink::Dot(at, _) | Ink::Mark(at, _) => vec![*at],
        Ink::Words(_) => Vec::new(),
    })
    .collect()
}

fn cross(one: (Point, Point), other: (Point, Point)) -> bool {
    let side = |a: Point, b: Point, c: Point| (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    let (a, b) = one;
    let (c, d) = other;
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// Parts that are cut never take the same place, but those that are embedded in another.
pub(crate) fn assert_parts_keep_apart(scene: &Scene, what: &str) {
    let cut: Vec<&Part> = scene
        .parts
        .iter()
        .filter(|part| part.look == Look::Cut)
        .collect();
    let has_deck = scene.parts_of(Component::Deck).next().is_some();
    for (at, one) in cut.iter().enumerate() {
        for other in cut.iter().skip(at + 1) {
            if may_share(one, other, has_deck) {
                continue;
            }
            let (Shape::Area(first), Shape::Area(second)) = (&one.shape, &other.shape) else {
                continue;
            };
            let shared = common_area(first, second);
            // A coating on sloping flanks ends square to them, and so reaches a little into what stands upright beside it.
            let coated = [one, other]
                .iter()
                .any(|part| part.component == Component::Coating);
            let most = if has_deck && coated { 6.0 } else { 0.5 };
            assert!(
                shared < most,
                "{what}, {:?}: {:?} and {:?} share {shared} mm²",
                scene.behaviour.state,
                one.component,
                other.component
            );
        }
    }
}

fn may_share(one: &Part, other: &Part, has_deck: bool) -> bool {
    let both = |first: Component, second: Component| {
        (one.component, other.component) == (first, second)
            || (one.component, other.component) == (second, first)
    };
    // A clip is sprayed over; a slot is cut into the runner. In the sharp corner under a sloping flank of a deck the mitre of a
    // coating runs into what it lies against, where in the building the corner is filled.
    both(Component::Clip, Component::Fireproofing)
        || both(Component::Coating, Component::Deck)
        || (has_deck && both(Component::Coating, Component::Concrete))
        || (one.component == Component::Runner
            && other.component == Component::Runner
            && (one.material == Material::Gap || other.material == Material::Gap))
}

/// Every dimension is as long in the drawing as what is written beside it, to 0.1 mm.
pub(crate) fn assert_lengths_are_true(scene: &Scene, what: &str) {
    for measure in &scene.measures {
        let drawn = measure.from.distance(measure.to);
        let written = mm(measure.length);
        assert!(
            (drawn - written.abs()).abs() <= 0.1,
            "{what}, {:?}: {} is drawn {drawn} mm long and written {written} mm",
            scene.behaviour.state,
            measure.what
        );
    }
}
