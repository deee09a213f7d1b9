//! Clauses, facts and listings from one line each, so that a case reads as a practitioner would say it.
//!
//! A clause: `packing.depth: at least 4 in. (102 mm)`, with ` ; if joint.rating = 2 hr`, ` ; option 2A1`, ` ; doubtful` and
//! the like after it. A fact: `packing.depth = 3-1/2 in. <- measured 1/16 in.: 3-1/2 in., 3-5/8 in.`; without an arrow it was
//! witnessed. Every name in these cases is invented.

#![allow(
    dead_code,
    unused_imports,
    unreachable_pub,
    missing_docs,
    reason = "each test file uses what it needs"
)]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::assigning_clones,
    clippy::must_use_candidate,
    reason = "a case that isn't written right must fail"
)]

mod facts;
mod heads;

use conformance::{Finding, JointResult, Reason, Subject, Verdict, check_draft};
pub use facts::fact;
pub use heads::{leakage, movement, width};
use listing::{
    Accounted, Bound, Clause, Condition, Confidence, Expr, Header, Item, OptionGroup,
    OptionGroupKind, Presence, ProductName, Reading, Relation, Requirement, SecondValue, Source,
    Span, Status, Test,
};
use measure::notation::{Stated, quantity};
use measure::{Number, Quantity, Unit, dual};
use site::{Decision, Fact, Facts, Judgment, Scope, said_of_listing};

/// A quantity; a bare number is a count.
pub fn stated(text: &str) -> Stated {
    let text = text.trim();
    let counted = text.parse::<Number>().is_ok();
    let with_unit = if counted {
        format!("{text} percent")
    } else {
        text.to_owned()
    };
    let read = quantity(&with_unit).unwrap_or_else(|error| panic!("{error}"));
    if counted {
        Stated {
            unit: Unit::Count,
            ..read
        }
    } else {
        read
    }
}

pub fn quantity_of(text: &str) -> Quantity {
    stated(text).quantity()
}

/// A bound such as `at least 4 in. (102 mm)`, `between 1/2 in. and 1 in.`, `bare 24 in.`
pub fn bound(text: &str) -> Bound {
    let (words, relation, bare) = [
        ("at least ", Relation::AtLeast, false),
        ("at most ", Relation::AtMost, false),
        ("less than ", Relation::LessThan, false),
        ("more than ", Relation::MoreThan, false),
        ("nominal ", Relation::Nominal, false),
        ("exactly ", Relation::Exactly, false),
        ("bare ", Relation::Exactly, true),
        ("about ", Relation::About, false),
        ("between ", Relation::Between, false),
        ("over ", Relation::Between, false),
    ]
    .into_iter()
    .find(|(words, ..)| text.starts_with(words))
    .unwrap_or_else(|| panic!("`{text}` begins with no relation"));
    let rest = &text[words.len()..];
    let (first, second) = match rest.split_once(" (") {
        Some((first, second)) => (first, Some(second.trim_end_matches(')'))),
        None => (rest, None),
    };
    let ends = |text: &str| match text.split_once(" and ") {
        Some((lo, hi)) => (stated(lo), Some(stated(hi))),
        None => (stated(text), None),
    };
    let (one, other) = ends(first);
    let upper = matches!(relation, Relation::AtMost | Relation::LessThan);
    let (lo, hi) = if upper {
        (None, Some(one.number))
    } else {
        (Some(one.number), other.as_ref().map(|hi| hi.number))
    };
    Bound {
        relation,
        lo,
        hi,
        unit: one.unit,
        lo_excluded: words == "over ",
        bare,
        at: Span::default(),
        second: second.map(|second| {
            let (second, second_hi) = ends(second);
            SecondValue {
                lo: Some(second.number),
                hi: second_hi.as_ref().map(|hi| hi.number),
                unit: second.unit,
                agreement: dual::agreement(&one, &second).unwrap_or(measure::Agreement::Consistent),
            }
        }),
    }
}

fn requirement(text: &str) -> Requirement {
    match text {
        "required" => Requirement::Presence {
            presence: Presence::Required,
        },
        "absent" => Requirement::Presence {
            presence: Presence::Absent,
        },
        "optional" => Requirement::Presence {
            presence: Presence::Optional,
        },
        "prose" => Requirement::Prose,
        _ => {
            if let Some(names) = text.strip_prefix("named ") {
                return Requirement::Named {
                    names: names.split(", ").map(product_name).collect(),
                };
            }
            if let Some(to) = text.strip_prefix("as ") {
                return Requirement::Reference { to: to.to_owned() };
            }
            Requirement::Bound(bound(text))
        }
    }
}

fn product_name(text: &str) -> ProductName {
    let (maker, product) = text.split_once(" | ").unwrap_or(("", text));
    ProductName {
        maker: maker.trim().to_owned(),
        product: product.trim().to_owned(),
    }
}

/// A condition: `joint.rating = 2 hr`, `joint.width > 4 in.`, `barrier.smoke_barrier`, `"words"`, joined by ` and `, or ` or `.
pub fn expr(text: &str) -> Expr {
    if let Some(rest) = text.strip_prefix("not ") {
        return Expr::Not(Box::new(expr(rest)));
    }
    if text.contains(" or ") {
        return Expr::Any(text.split(" or ").map(expr).collect());
    }
    if text.contains(" and ") {
        return Expr::All(text.split(" and ").map(expr).collect());
    }
    if text.starts_with('"') {
        return Expr::Words(text.trim_matches('"').to_owned());
    }
    let parts: Vec<&str> = text.splitn(3, ' ').collect();
    let (property, sign, value) = match parts.as_slice() {
        [property, sign, value] => (*property, *sign, Some(quantity_of(value))),
        [property] => (*property, "=", None),
        _ => panic!("`{text}` is no condition"),
    };
    let relation = match sign {
        ">=" => Relation::AtLeast,
        "<=" => Relation::AtMost,
        ">" => Relation::MoreThan,
        "<" => Relation::LessThan,
        _ => Relation::Exactly,
    };
    let upper = matches!(relation, Relation::AtMost | Relation::LessThan);
    let (lo, hi) = if upper { (None, value) } else { (value, None) };
    Expr::Test(Test {
        property: property.to_owned(),
        relation,
        lo,
        hi,
        lo_excluded: false,
    })
}

/// A clause from its line; its item is `1`, its id `1/1`, its words the line, unless said otherwise (`; item 3A`, `; words ...`).
pub fn clause(line: &str) -> Clause {
    let mut parts = line.split(" ; ");
    let head = parts.next().unwrap();
    let (property, asked) = head
        .split_once(": ")
        .unwrap_or_else(|| panic!("`{head}` has no property"));
    let (component, attribute) = property.split_once('.').unwrap_or((property, ""));
    let mut clause = Clause {
        id: "1/1".to_owned(),
        item: "1".to_owned(),
        span: Span::new(0, 1),
        words: head.to_owned(),
        property: property.to_owned(),
        component: component.replace('_', " "),
        attribute: attribute.replace('_', " "),
        requirement: requirement(asked),
        condition: None,
        option: None,
        read_by: vec!["a case".to_owned()],
        confidence: if asked == "prose" {
            Confidence::Prose
        } else {
            Confidence::ByRule
        },
        status: Status::Draft,
    };
    for part in parts {
        if let Some(test) = part.strip_prefix("if ") {
            let words = format!("if {test}");
            clause.condition = Some(Condition {
                also: Vec::new(),
                words,
                span: Span::default(),
                expr: expr(test),
            });
        } else if let Some(option) = part.strip_prefix("option ") {
            clause.option = Some(option.to_owned());
        } else if let Some(item) = part.strip_prefix("item ") {
            clause.item = item.to_owned();
        } else if let Some(words) = part.strip_prefix("words ") {
            clause.words = words.to_owned();
        } else {
            match part {
                "doubtful" => clause.confidence = Confidence::WithDoubt,
                "confirmed" => clause.status = Status::Confirmed,
                other => panic!("`{other}` says nothing of a clause"),
            }
        }
    }
    clause
}

/// A listing of some clauses, their ids counted within each item.
pub fn reading(lines: &[&str]) -> Reading {
    let mut clauses: Vec<Clause> = lines.iter().map(|line| clause(line)).collect();
    let mut items: Vec<Item> = Vec::new();
    for at in 0..clauses.len() {
        let item = clauses[at].item.clone();
        let before = clauses[..at]
            .iter()
            .filter(|clause| clause.item == item)
            .count();
        clauses[at].id = format!("{item}/{}", before + 1);
        if items.iter().all(|known| known.path != item) {
            items.push(an_item(&item));
        }
    }
    Reading {
        source: Source {
            name: "case.txt".to_owned(),
            sha256: "0".repeat(64),
            bytes: 0,
            pages: 1,
        },
        header: Header {
            designation: "HW-D-0901".to_owned(),
            standards: vec!["UL 2079".to_owned()],
            ratings_hr: vec![Number::whole(1), Number::whole(2)],
            ..Header::default()
        },
        items,
        options: Vec::new(),
        clauses,
        places: Vec::new(),
        accounted: Accounted { bytes: 0, of: 0 },
        warnings: Vec::new(),
    }
}

/// An item; `3A` lies in `3`, and `3A1` in `3A`.
pub fn an_item(path: &str) -> Item {
    let parent = (path.len() > 1).then(|| path[..path.len() - 1].to_owned());
    Item {
        path: path.to_owned(),
        title: String::new(),
        span: Span::default(),
        option: None,
        parent,
    }
}

pub fn alternates(base: &str, choices: &[&str]) -> OptionGroup {
    OptionGroup {
        id: base.to_owned(),
        kind: OptionGroupKind::Alternates,
        base_item: Some(base.to_owned()),
        also_replaced: Vec::new(),
        choices: choices.iter().map(ToString::to_string).collect(),
    }
}

pub fn configurations(choices: &[&str]) -> OptionGroup {
    OptionGroup {
        id: "configuration".to_owned(),
        kind: OptionGroupKind::Configurations,
        base_item: None,
        also_replaced: Vec::new(),
        choices: choices.iter().map(ToString::to_string).collect(),
    }
}

pub fn optional(item: &str) -> OptionGroup {
    OptionGroup {
        id: item.to_owned(),
        kind: OptionGroupKind::Optional,
        base_item: None,
        also_replaced: Vec::new(),
        choices: vec![item.to_owned()],
    }
}

pub fn judgment(item: &str, words: &str, decision: Decision, basis: &str) -> Judgment {
    Judgment {
        scope: Scope::Joint("J1".to_owned()),
        listing: Some("case".to_owned()),
        item: item.to_owned(),
        words: words.to_owned(),
        decision,
        by: "the reviewer".to_owned(),
        when: jiff::civil::date(2031, 5, 6),
        basis: basis.to_owned(),
    }
}

/// Facts that are said of a listing, where they are on properties of its own.
pub fn facts_before(reading: &Reading, lines: &[&str]) -> Vec<Fact> {
    let mut facts = facts(lines);
    for fact in &mut facts {
        fact.property = said_of_listing(&fact.property, &reading.source.name);
    }
    facts
}

pub fn facts(lines: &[&str]) -> Vec<Fact> {
    lines.iter().map(|line| fact(line)).collect()
}

pub fn subject<'a>(facts: &'a [Fact], judgments: &'a [Judgment]) -> Subject<'a> {
    Subject {
        joint: "J1",
        mark: "M1",
        facts: facts.iter().collect::<Facts<'a>>(),
        judgments: judgments.iter().collect(),
    }
}

/// A draft checked against some facts.
pub fn check(reading: &Reading, lines: &[&str]) -> JointResult {
    let facts = facts_before(reading, lines);
    check_draft(reading, &subject(&facts, &[])).into()
}

pub fn check_with(reading: &Reading, lines: &[&str], judgments: &[Judgment]) -> JointResult {
    let facts = facts_before(reading, lines);
    check_draft(reading, &subject(&facts, judgments)).into()
}

pub fn finding<'r>(result: &'r JointResult, clause: &str) -> &'r Finding {
    result
        .finding(clause)
        .unwrap_or_else(|| panic!("no finding on {clause}"))
}

/// One clause against some facts.
#[track_caller]
pub fn check_verdict(clause_line: &str, fact_lines: &[&str], expected: (Verdict, Reason)) {
    let result = check(&reading(&[clause_line]), fact_lines);
    let finding = finding(&result, "1/1");
    assert_eq!(
        (finding.verdict, finding.explanation.reason),
        expected,
        "{clause_line} | {fact_lines:?} | {}",
        finding.explanation.sentence
    );
}

pub const MET: (Verdict, Reason) = (Verdict::Met, Reason::Holds);
pub const NOT_MET: (Verdict, Reason) = (Verdict::NotMet, Reason::Fails);

pub const fn open(reason: Reason) -> (Verdict, Reason) {
    (Verdict::Open, reason)
}

pub const fn not_applicable(reason: Reason) -> (Verdict, Reason) {
    (Verdict::NotApplicable, reason)
}
