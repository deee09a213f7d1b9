//! The options that cost least, against every combination.

use listing::Reading;
use proptest::prelude::*;

use crate::listing;
use crate::support::{check, configurations};

/// What a clause will be found to be: met, not met, or open for want of a fact.
#[derive(Debug, Clone, Copy)]
enum Fate {
    Met,
    NotMet,
    Open,
}

fn fates() -> impl Strategy<Value = Vec<Fate>> {
    proptest::collection::vec(
        prop_oneof![Just(Fate::Met), Just(Fate::NotMet), Just(Fate::Open)],
        0..4,
    )
}

/// Groups of choices of clauses.
fn groups() -> impl Strategy<Value = Vec<Vec<Vec<Fate>>>> {
    proptest::collection::vec(proptest::collection::vec(fates(), 1..4), 1..4)
}

/// A listing with these groups, and the facts that bring the fates about.
fn build(groups: &[Vec<Vec<Fate>>]) -> (Reading, Vec<String>) {
    let mut lines = Vec::new();
    let mut facts = Vec::new();
    let mut options = Vec::new();
    for (group, choices) in groups.iter().enumerate() {
        let names: Vec<String> = (0..choices.len())
            .map(|choice| format!("G{group} way {choice}"))
            .collect();
        for (choice, fates) in choices.iter().enumerate() {
            for (at, fate) in fates.iter().enumerate() {
                let property = format!("local.g{group}c{choice}n{at}");
                lines.push(format!(
                    "{property}: at least 1 in. ; option {}",
                    names[choice]
                ));
                match fate {
                    Fate::Met => facts.push(format!("{property} = 2 in.")),
                    Fate::NotMet => facts.push(format!("{property} = 1/2 in.")),
                    Fate::Open => {}
                }
            }
        }
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        let mut group_of = configurations(&names);
        group_of.id = format!("G{group}");
        options.push(group_of);
    }
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    (listing(&lines, options), facts)
}

/// What a combination of choices comes to: choices nothing is known of, clauses not met, clauses open.
fn cost(groups: &[Vec<Vec<Fate>>], combination: &[usize]) -> (usize, usize, usize) {
    let mut cost = (0, 0, 0);
    for (choices, &choice) in groups.iter().zip(combination) {
        let fates = &choices[choice];
        let count = |wanted: fn(&Fate) -> bool| fates.iter().filter(|fate| wanted(fate)).count();
        let open = count(|fate| matches!(fate, Fate::Open));
        cost.0 += usize::from(open == fates.len());
        cost.1 += count(|fate| matches!(fate, Fate::NotMet));
        cost.2 += open;
    }
    cost
}

/// Every combination of one choice of each group.
fn combinations(groups: &[Vec<Vec<Fate>>]) -> Vec<Vec<usize>> {
    let mut all = vec![Vec::new()];
    for choices in groups {
        let longer = |shorter: &Vec<usize>, choice| {
            let mut longer = shorter.clone();
            longer.push(choice);
            longer
        };
        all = all
            .iter()
            .flat_map(|shorter| (0..choices.len()).map(move |choice| longer(shorter, choice)))
            .collect();
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Choosing in each group alone finds the best of all combinations.
    #[test]
    fn the_best_of_each_group_is_the_best_of_all(groups in groups()) {
        let (listing, facts) = build(&groups);
        let facts: Vec<&str> = facts.iter().map(String::as_str).collect();
        let result = check(&listing, &facts);
        let chosen: Vec<usize> = groups
            .iter()
            .zip(&result.chosen)
            .map(|(choices, chosen)| {
                let name = chosen.choice.as_deref().unwrap();
                (0..choices.len()).find(|choice| name.ends_with(&format!("way {choice}"))).unwrap()
            })
            .collect();
        let best = combinations(&groups).into_iter().min_by_key(|one| cost(&groups, one)).unwrap();
        prop_assert_eq!(cost(&groups, &chosen), cost(&groups, &best));
        // Of equals the first in the listing.
        prop_assert_eq!(chosen, best);
    }
}
