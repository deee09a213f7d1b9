//! Runs the cases of every rule's page.

use super::{RULES, Sentence, bounded};
use crate::cases::{Case, cases};
use crate::conditions::conditions;
use crate::layout::{Flow, lines};

fn found(text: &str) -> Vec<String> {
    let flow = Flow::of(text, lines(text).into_iter().map(|line| line.span));
    crate::sentences::sentences(flow.text())
        .into_iter()
        .flat_map(|range| {
            let mut sentence = Sentence::new(&flow, range);
            let found = conditions(&sentence);
            sentence.set_conditions(&found);
            (0..sentence.amounts.len())
                .filter(|index| sentence.is_bound(*index))
                .map(|index| describe(&sentence, index))
                .collect::<Vec<_>>()
        })
        .collect()
}

fn describe(sentence: &Sentence<'_>, index: usize) -> String {
    let amount = &sentence.amounts[index];
    let words = amount.at.of(sentence.text);
    let Some((finding, _)) = bounded(sentence, index) else {
        return format!("`{words}` unread");
    };
    let value = amount.hi.map_or(amount.lo.to_string(), |hi| {
        format!("{} and {hi}", amount.lo)
    });
    format!(
        "`{words}` {} {value} {}",
        finding.relation.words(),
        amount.unit
    )
}

#[test]
fn every_page_shows_what_its_rule_reads() {
    let mut wrong = Vec::new();
    for rule in RULES {
        let cases = cases(rule.page);
        assert!(!cases.is_empty(), "{} has no cases", rule.name);
        for Case { text, expected } in cases {
            let found = found(&text);
            if found != expected {
                wrong.push(format!(
                    "{}: {text}  expected {expected:?}\n  found    {found:?}",
                    rule.name
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}
