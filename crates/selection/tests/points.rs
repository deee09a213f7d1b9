//! A point is decided by the facts that it is said to rest on, and by no other: what the memory of a search relies on.

#![allow(
    clippy::unwrap_used,
    reason = "what isn't as it should be fails the test"
)]

mod support;

use conformance::Subject;
use conformance::points::Point;
use site::Fact;
use support::facts::conditions;
use support::spec::Spec;

fn subject<'a>(facts: impl Iterator<Item = &'a Fact>) -> Subject<'a> {
    Subject {
        joint: "J-1",
        mark: "M1",
        facts: facts.collect(),
        judgments: Vec::new(),
    }
}

#[test]
fn a_point_rests_on_what_it_says() {
    let library = Spec::library(18, 23);
    let held = support::read(&library);
    let mut points: Vec<Point> = Vec::new();
    for checklist in support::checklists(&held) {
        points.extend(checklist.points().placed.into_iter().map(|one| one.point));
    }
    let (mut told, mut alone) = (0, 0);
    for facts in conditions(&library, 12, 29) {
        let whole = subject(facts.iter());
        for point in &points {
            let Some(names) = point.rests_on() else {
                alone += 1;
                continue;
            };
            let only_those = facts
                .iter()
                .filter(|fact| names.contains(&fact.property.as_str()));
            let ready = point.ready();
            assert_eq!(
                ready.decide(&whole.before_any()),
                ready.decide(&subject(only_those).before_any()),
                "{names:?} {point:?}"
            );
            told += 1;
        }
    }
    assert!(told > 4 * alone, "{told} {alone}");
}
