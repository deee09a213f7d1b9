//! Every joint of the demo's schedule.

mod support;

use drawing::{Condition, Moved, Scene, State, at_one_state};
use support::Demo;

#[test]
fn every_joint_of_the_demo_has_a_clean_sheet() {
    let mut drawn = 0;
    Demo::read().each(|joint, known, heading| {
        let page = drawing::sheet(known, heading).unwrap();
        support::assert_sheet_is_clean(&page, &joint.name);
        drawn += 1;
    });
    assert_eq!(drawn, 60);
}

#[test]
fn parts_keep_apart_and_lengths_are_true_at_every_state() {
    Demo::read().each(|joint, known, _| {
        let condition = Condition::of(known).unwrap();
        for state in [State::Closed, State::AsFound, State::Open] {
            if let Some(scene) = Scene::of(&condition, state) {
                support::assert_parts_keep_apart(&scene, &joint.name);
                support::assert_lengths_are_true(&scene, &joint.name);
            }
        }
    });
}

#[test]
fn a_joint_moves_from_closed_to_open_by_steps() {
    let mut moving = 0;
    Demo::read().each(|joint, known, _| {
        let condition = Condition::of(known).unwrap();
        let at = |percent: i64| Scene::moved(&condition, Moved::percent(percent));
        for (state, percent) in [
            (State::Closed, -100),
            (State::AsFound, 0),
            (State::Open, 100),
        ] {
            let width = |scene: Option<Scene>| scene.map(|scene| scene.behaviour.width);
            assert_eq!(width(Scene::of(&condition, state)), width(at(percent)));
        }
        let mut widths = Vec::new();
        for percent in (-100..=100).step_by(20) {
            let Some(scene) = at(percent) else { continue };
            support::assert_parts_keep_apart(&scene, &joint.name);
            support::assert_lengths_are_true(&scene, &joint.name);
            widths.push(scene.behaviour.width);
            let page = at_one_state(&condition, Moved::percent(percent)).unwrap();
            assert!(drawing::svg(&page).contains(&page.title), "{}", joint.name);
        }
        for pair in widths.windows(2) {
            assert!(pair[0].compare(pair[1]).unwrap().is_lt(), "{}", joint.name);
        }
        // Half the way is half the length, exactly.
        if let (Some(half), Some(whole)) = (at(-50), at(-100)) {
            let found = condition.width.quantity;
            let closed = |scene: &Scene| found.minus(scene.behaviour.width).unwrap();
            let twice = closed(&half).plus(closed(&half)).unwrap();
            assert_eq!(
                twice.compare(closed(&whole)),
                Some(core::cmp::Ordering::Equal)
            );
            moving += 1;
        }
    });
    assert!(moving > 10, "{moving}");
}

#[test]
fn the_same_joint_gives_the_same_bytes_and_they_are_xml() {
    Demo::read().each(|joint, known, heading| {
        let once = drawing::svg(&drawing::sheet(known, heading).unwrap());
        let again = drawing::svg(&drawing::sheet(known, heading).unwrap());
        assert_eq!(once, again, "{}", joint.name);
        let document = roxmltree::Document::parse(&once).unwrap();
        let root = document.root_element();
        let has = |name: &str| root.children().any(|child| child.has_tag_name(name));
        assert!(has("title") && has("desc"), "{}", joint.name);
        // Nothing from elsewhere.
        let outside = document.descendants().flat_map(|node| node.attributes());
        for attribute in outside {
            let value = attribute.value();
            assert!(
                !value.contains("http") && !value.contains("data:"),
                "{value}"
            );
        }
    });
}

/// What is not met, or open, is said in words beside the part, not by colour.
#[test]
fn every_call_out_says_its_verdict_in_words() {
    let verdicts = ["met", "not met", "open", "judged"];
    Demo::read().each(|joint, known, heading| {
        let page = drawing::sheet(known, heading).unwrap();
        for group in page
            .groups
            .iter()
            .filter(|group| group.id.starts_with("call-out-"))
        {
            let marked = group
                .ink
                .iter()
                .any(|ink| matches!(ink, drawing::svg::Ink::Mark(..)));
            let said = group.ink.iter().any(|ink| match ink {
                drawing::svg::Ink::Words(words) => verdicts
                    .iter()
                    .any(|verdict| words.words.starts_with(&format!("{verdict}:"))),
                _ => false,
            });
            assert_eq!(marked, said, "{}: {}", joint.name, group.title);
        }
    });
}

/// By hand, from the demo's facts: J-004 is 1-5/16 in. wide and closes by 15 %, to 1.115625 in.; its packing was 2-1/4 in. thick.
#[test]
fn what_is_written_at_the_states_of_a_joint() {
    Demo::read().each(|joint, known, _| {
        if joint.name != "J-004" {
            return;
        }
        let condition = Condition::of(known).unwrap();
        let closed = Scene::of(&condition, State::Closed).unwrap().behaviour;
        assert!((support::mm(closed.width) - 28.3369).abs() < 0.001);
        // (2.25 - 1.115625) / 2.25 = 0.504166...; 6 pcf x 2.25 / 1.115625 = 12.1008 pcf.
        assert!((support::as_f64(closed.compression.unwrap()) - 0.504_167).abs() < 1e-6);
        assert!((support::as_f64(closed.density.unwrap().number) - 12.1008).abs() < 0.0001);
        // The stud stops 3/4 in. short and comes up by 0.196875 in.; the leg is 2-1/2 in. long.
        let engaged = support::mm(closed.engagement.unwrap()) / 25.4;
        assert!((engaged - (2.5 - 0.75 + 0.196_875)).abs() < 1e-4);
    });
}
