#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "what isn't there must fail the test"
)]

use conformance::{JointResult, Subject, check_draft, questions};
use proptest::prelude::*;
use site::{Joint, Project};

use super::{Board, Filter, Found, Looked, State, Tally, Whom};

/// The demo's project, and a listing of it.
fn demo() -> (Project, listing::Reading) {
    let from = std::path::PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    let read = |name: &str| std::fs::read(from.join(name)).unwrap();
    let names = ["schedule.csv", "marks.csv", "barriers.csv", "building.toml"];
    let held = names.map(|name| (name, read(name)));
    let files = held
        .each_ref()
        .map(|(name, bytes)| site::import::File { name, bytes });
    let project = site::import::import(&files).unwrap().project;
    let file = "hw-d-0412-ed4.txt";
    let reading = listing::read(file, &read(&format!("listings/{file}"))).unwrap();
    (project, reading)
}

/// Every joint of the demo against one listing, whatever its own: enough that is open, met and not.
fn results() -> (Project, Vec<JointResult>) {
    let (project, reading) = demo();
    let check = |joint: &Joint| check_draft(&reading, &Subject::of(&project, joint)).into();
    let results = project.joints.iter().map(check).collect();
    (project, results)
}

fn put(board: &mut Board, result: &JointResult) {
    let epoch = board.epoch();
    board.insert(&result.joint, epoch, Looked::of(Some(result)));
}

/// That every sum of a board is what its rows add up to, and its questions are those of the results that are on it.
fn assert_sums(board: &Board, on_it: &[&JointResult]) {
    let mut all = Tally::default();
    for row in board.rows() {
        all.add(row.found.as_ref());
    }
    assert_eq!(board.all(), all);
    let places = board.places().values().map(|tally| tally.joints());
    assert_eq!(places.sum::<usize>(), all.joints());
    let mut on_it = on_it.to_vec();
    on_it.sort_by(|a, b| a.joint.cmp(&b.joint));
    assert_eq!(board.cautions(), {
        let mut cautions = conformance::cautions(on_it.iter().copied());
        cautions.sort_unstable();
        cautions
    });
    let expected = questions(on_it.iter().copied());
    let asked: Vec<_> = board.questions().of(Whom::Anybody).collect();
    assert_eq!(asked.len(), expected.len());
    for (asked, expected) in asked.iter().zip(&expected) {
        let question = board.question(asked).unwrap();
        let concerns = asked.joints().flat_map(|joint| board.points(joint, asked));
        let question = conformance::Question {
            concerns: concerns.map(|(card, point)| point.at(card)).collect(),
            ..question
        };
        assert_eq!(question, *expected);
    }
}

#[test]
fn questions_and_sums_are_those_of_the_results_however_they_come_and_go() {
    let (project, results) = results();
    let mut board = Board::default();
    board.follow(&project);
    assert_eq!(board.all().waiting, 60);
    for result in &results {
        put(&mut board, result);
    }
    assert_sums(&board, &results.iter().collect::<Vec<_>>());
    // Twice is once.
    for result in &results {
        put(&mut board, result);
    }
    assert_sums(&board, &results.iter().collect::<Vec<_>>());
    board.wipe(project.joints.iter().map(|joint| joint.name.as_str()));
    assert_sums(&board, &[]);
    assert_eq!(board.waiting().len(), 60);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn sums_hold_after_any_steps(steps in prop::collection::vec((0..3u8, 0..60usize), 1..80)) {
        thread_local!(static DEMO: (Project, Vec<JointResult>) = results());
        DEMO.with(|(project, results)| {
            let mut project = project.clone();
            let mut board = Board::default();
            board.follow(&project);
            let mut on_it = std::collections::BTreeMap::new();
            for (step, nth) in steps {
                let result = &results[nth];
                match step {
                    0 => {
                        put(&mut board, result);
                        if project.joint(&result.joint).is_some() {
                            on_it.insert(&result.joint, result);
                        }
                    }
                    1 => {
                        board.wipe([result.joint.as_str()]);
                        on_it.remove(&result.joint);
                    }
                    _ => {
                        project.joints.retain(|joint| joint.name != result.joint);
                        board.follow(&project);
                        on_it.remove(&result.joint);
                    }
                }
            }
            assert_sums(&board, &on_it.into_values().collect::<Vec<_>>());
        });
    }
}

#[test]
fn what_was_begun_before_it_was_out_of_date_isn_t_put_on_the_board() {
    let (project, results) = results();
    let (one, other) = (&results[0], &results[1]);
    let mut board = Board::default();
    board.follow(&project);
    let begun = board.epoch();
    // While both are looked at, something is entered of one of them.
    board.wipe([one.joint.as_str()]);
    board.insert(&one.joint, begun, Looked::of(Some(one)));
    board.insert(&other.joint, begun, Looked::of(Some(other)));
    assert!(board.row(&one.joint).unwrap().found.is_none());
    assert!(board.row(&other.joint).unwrap().found.is_some());
    put(&mut board, one);
    assert!(board.row(&one.joint).unwrap().found.is_some());
    // A joint that comes with a new schedule isn't taken for one of its name that was looked at before.
    let begun = board.epoch();
    let mut without = project.clone();
    without.joints.retain(|joint| joint.name != one.joint);
    board.wipe([one.joint.as_str()]);
    board.follow(&without);
    board.insert(&one.joint, begun, Looked::of(Some(one)));
    board.follow(&project);
    board.insert(&one.joint, begun, Looked::of(Some(one)));
    assert!(board.row(&one.joint).unwrap().found.is_none());
}

#[test]
fn what_joints_have_in_common_is_held_once_and_let_go() {
    let (project, results) = results();
    let mut board = Board::default();
    board.follow(&project);
    for (nth, result) in results.iter().enumerate() {
        // Sentences that no other joint has.
        let mut result = result.clone();
        for round in 0..20 {
            for finding in &mut result.findings {
                finding.explanation.sentence = format!("{nth}, {round}");
            }
            put(&mut board, &result);
        }
    }
    let held: usize = board
        .rows()
        .filter_map(|row| row.found.as_ref())
        .map(|found: &Found| found.open.len())
        .sum();
    assert!(
        board.points.len() <= 2 * held + 1000,
        "{} for {held}",
        board.points.len()
    );
    for result in &results {
        put(&mut board, result);
    }
    let distinct: std::collections::BTreeSet<*const _> = board
        .rows()
        .filter_map(|row| row.found.as_ref())
        .flat_map(|found| found.open.iter().map(std::sync::Arc::as_ptr))
        .collect();
    assert!(distinct.len() * 4 < held, "{} for {held}", distinct.len());
}

#[test]
fn joints_are_looked_for_by_place_mark_state_and_words() {
    let (project, results) = results();
    let mut board = Board::default();
    board.follow(&project);
    for result in results.iter().skip(1) {
        put(&mut board, result);
    }
    let names = |filter: Filter| -> Vec<String> {
        let chosen = board.choose(&filter, 1000);
        assert_eq!(chosen.count, chosen.rows.len());
        chosen
            .rows
            .iter()
            .map(|row| row.card.name.to_string())
            .collect()
    };
    let expected = |holds: &dyn Fn(&Joint) -> bool| -> Vec<String> {
        let mut names: Vec<_> = project
            .joints
            .iter()
            .filter(|joint| holds(joint))
            .map(|joint| joint.name.clone())
            .collect();
        names.sort();
        names
    };
    let of = |filter: Filter| filter;
    assert_eq!(names(Filter::default()).len(), 60);
    let storey = of(Filter {
        storey: "L3".to_owned(),
        ..Filter::default()
    });
    assert_eq!(
        names(storey),
        expected(&|joint| joint.storey.as_deref() == Some("L3"))
    );
    let mark = of(Filter {
        mark: "HW1".to_owned(),
        ..Filter::default()
    });
    assert_eq!(names(mark), expected(&|joint| joint.mark == "HW1"));
    let words = of(Filter {
        words: " hw1 l2".to_owned(),
        ..Filter::default()
    });
    assert!(names(words).contains(&"J-001".to_owned()));
    let waiting = of(Filter {
        state: State::Waiting,
        ..Filter::default()
    });
    assert_eq!(names(waiting), [results[0].joint.clone()]);
    let nobody = of(Filter {
        words: "'; DROP TABLE record; --".to_owned(),
        ..Filter::default()
    });
    assert!(names(nobody).is_empty());
    // Page by page it is the same.
    let (mut after, mut paged) = (String::new(), Vec::new());
    loop {
        let chosen = board.choose(
            &Filter {
                after: after.clone(),
                ..Filter::default()
            },
            7,
        );
        paged.extend(chosen.rows.iter().map(|row| row.card.name.to_string()));
        assert_eq!(chosen.count, 60);
        if !chosen.has_more {
            break;
        }
        after.clone_from(paged.last().unwrap());
    }
    assert_eq!(paged, names(Filter::default()));
}
