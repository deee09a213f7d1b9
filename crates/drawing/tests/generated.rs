//! A thousand generated joints, from the usual to the absurd.

mod support;

use conformance::Subject;
use drawing::{Condition, Heading, Known, Scene, State};
use proptest::prelude::*;
use proptest::test_runner::Config;
use site::{Fact, Facts};

fn with_known<T>(facts: &[Fact], then: impl FnOnce(&Known<'_>) -> T) -> T {
    let subject = Subject {
        joint: "J-1",
        mark: "M1",
        facts: Facts::from_iter(facts),
        judgments: Vec::new(),
    };
    then(&Known {
        subject: &subject,
        listing: None,
    })
}

proptest! {
    #![proptest_config(Config { cases: 1000, failure_persistence: None, ..Config::default() })]

    #[test]
    fn every_generated_joint_has_a_clean_sheet(facts in support::facts::joint()) {
        with_known(&facts, |known| {
            let condition = Condition::of(known).unwrap();
            let heading = Heading { joint: "J-1".to_owned(), ..Heading::default() };
            let page = drawing::sheet(known, &heading).unwrap();
            support::assert_sheet_is_clean(&page, "generated");
            for state in [State::Closed, State::AsFound, State::Open] {
                if let Some(scene) = Scene::of(&condition, state) {
                    support::assert_parts_keep_apart(&scene, "generated");
                    support::assert_lengths_are_true(&scene, "generated");
                }
            }
        });
    }
}
