//! Runs the cases of every rule's page.

use super::{RULES, Sentence, bounded};
use crate::conditions::conditions;
use crate::layout::{Flow, lines};

/// A case of a page: a stretch of listing, and what its numbers must yield.
fn cases(page: &str) -> Vec<(String, Vec<String>)> {
    let mut cases: Vec<(String, Vec<String>)> = Vec::new();
    let mut quoting = false;
    for line in page.lines() {
        if let Some(text) = line.strip_prefix("> ") {
            if !quoting {
                cases.push((String::new(), Vec::new()));
            }
            let case = cases.last_mut().expect("just pushed");
            case.0.push_str(text);
            case.0.push('\n');
        } else if let Some(expected) = line.strip_prefix("- ")
            && let Some(case) = cases.last_mut()
        {
            case.1.push(expected.to_owned());
        }
        quoting = line.starts_with("> ");
    }
    cases
}

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
        for (text, expected) in cases {
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
