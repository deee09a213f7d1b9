//! An invented building's schedule as the files of a project: marks built to listings of a library, and joints that stray from them.

use std::collections::BTreeMap;

use site::Fact;

use super::facts::{ALL_KNOWN, AS_BUILT, AS_DESIGNED, condition};
use super::seed::Seed;
use super::spec::Spec;

/// How many conditions the joints of a mark are of.
const VARIANTS: usize = 4;

/// The files of a project, by name.
pub fn files(
    library: &[Spec],
    joints: usize,
    conditions: usize,
    seed: u64,
) -> Vec<(&'static str, String)> {
    let mut seed = Seed(seed);
    let marks: Vec<Mark> = (0..conditions.div_ceil(VARIANTS))
        .map(|number| Mark::of(number, library, &mut seed))
        .collect();
    vec![
        (
            "building.toml",
            "name = \"An invented building\"\ncode_edition = \"IBC 2021\"\n".to_owned(),
        ),
        ("barriers.csv", barriers()),
        ("marks.csv", marks_file(&marks)),
        ("schedule.csv", schedule(&marks, joints, &mut seed)),
    ]
}

/// A mark with what is known of all its joints, and what of some.
struct Mark {
    name: String,
    listing: String,
    barrier: String,
    known: Vec<Fact>,
    variants: Vec<Vec<Fact>>,
}

impl Mark {
    fn of(number: usize, library: &[Spec], seed: &mut Seed) -> Self {
        let spec = &library[seed.below(library.len())];
        let stray = seed.one(&[ALL_KNOWN, AS_BUILT, AS_BUILT, AS_DESIGNED]);
        let facts = condition(spec, spec, stray, seed);
        let text = |property: &str| {
            let fact = facts.iter().find(|fact| fact.property == property);
            fact.unwrap().value.to_string()
        };
        let barrier = format!(
            "{}{}",
            if text("barrier.smoke_barrier") == "yes" {
                "SB-"
            } else {
                "FB-"
            },
            text("barrier.rating").replace(" hr", "")
        );
        let is_of_joints = |fact: &&Fact| {
            let name = fact.property.as_str();
            name == "joint.width" || name == "packing.depth" || name.starts_with("coating.overlap")
        };
        let variant = |seed: &mut Seed| {
            let other = &library[seed.below(library.len())];
            let otherwise = condition(other, other, ALL_KNOWN, seed);
            let strayed = |fact: &Fact, seed: &mut Seed| {
                let instead = otherwise.iter().find(|one| one.property == fact.property);
                let instead = instead.filter(|_| seed.percent(15));
                instead.unwrap_or(fact).clone()
            };
            let ours = facts.iter().filter(is_of_joints);
            ours.map(|fact| strayed(fact, seed)).collect()
        };
        Self {
            name: format!("{}{}", spec.kind.code(), number + 1),
            listing: spec.file().replace(".txt", ""),
            barrier,
            variants: (0..VARIANTS).map(|_| variant(seed)).collect(),
            known: facts
                .iter()
                .filter(|fact| !fact.property.starts_with("barrier.") && !is_of_joints(fact))
                .cloned()
                .collect(),
        }
    }
}

fn barriers() -> String {
    let mut lines = vec!["barrier,kind,rating,smoke_barrier,title".to_owned()];
    lines.push("#source,drawing A-010,drawing A-010,drawing A-010,".to_owned());
    for hours in [1, 2, 3] {
        lines.push(format!(
            "FB-{hours},fire-barrier,{hours} hr,no,Fire barrier"
        ));
        lines.push(format!(
            "SB-{hours},smoke-barrier,{hours} hr,yes,Smoke barrier"
        ));
    }
    lines.join("\n") + "\n"
}

fn marks_file(marks: &[Mark]) -> String {
    let rows = marks.iter().map(|mark| {
        let first = vec![
            mark.name.clone(),
            "Invented".to_owned(),
            mark.listing.clone(),
        ];
        (first, mark.known.as_slice())
    });
    table(&["mark", "title", "listing"], &rows.collect::<Vec<_>>())
}

fn schedule(marks: &[Mark], joints: usize, seed: &mut Seed) -> String {
    let rows = (0..joints).map(|number| {
        let mark = &marks[number % marks.len()];
        let first = vec![
            format!("J-{:05}", number + 1),
            mark.name.clone(),
            mark.barrier.clone(),
            format!("{} ft", 8 + seed.below(40)),
        ];
        (first, mark.variants[seed.below(VARIANTS)].as_slice())
    });
    table(
        &["joint", "mark", "barrier", "length"],
        &rows.collect::<Vec<_>>(),
    )
}

/// A table of first cells and facts, a column each property, every value with its source.
fn table(first: &[&str], rows: &[(Vec<String>, &[Fact])]) -> String {
    let mut columns: BTreeMap<&str, usize> = BTreeMap::new();
    for (_, facts) in rows {
        for fact in *facts {
            let next = columns.len();
            columns.entry(&fact.property).or_insert(next);
        }
    }
    let mut head: Vec<String> = first.iter().map(|name| (*name).to_owned()).collect();
    let mut names: Vec<(&str, usize)> = columns.iter().map(|(name, at)| (*name, *at)).collect();
    names.sort_by_key(|(_, at)| *at);
    head.extend(names.iter().map(|(name, _)| (*name).to_owned()));
    let mut lines = vec![head.join(",")];
    for (cells, facts) in rows {
        let mut line = cells.clone();
        line.resize(head.len(), String::new());
        for fact in *facts {
            let cell = format!("{} [{}]", fact.value, fact.provenance);
            assert!(!cell.contains(','), "{cell}");
            line[first.len() + columns[fact.property.as_str()]] = cell;
        }
        lines.push(line.join(","));
    }
    lines.join("\n") + "\n"
}
