//! What must hold of every clause, whatever the numbers.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a case that isn't written right must fail"
)]

mod support;

use conformance::{Overall, Subject, Verdict, check_draft, compare, questions};
use listing::{
    Bound, Clause, Condition, Confidence, Expr, Item, OptionGroup, OptionGroupKind, Presence,
    ProductName, Reading, Relation, Requirement, SecondValue, Span, Status, Test,
};
use measure::{Agreement, Number, Quantity, Unit};
use proptest::prelude::*;
use proptest::sample::select;
use site::{Decision, Fact, ProductFact, Provenance, ProvenanceKind, Value};
use support::{fact, finding, reading, subject};

const PROPERTIES: &[&str] = &[
    "packing.depth",
    "packing.density",
    "packing.compression",
    "board.layers",
    "board.thickness",
    "board.gap",
    "stud.gauge",
    "stud.spacing",
    "joint.width",
    "joint.rating",
    "coating.application_temperature",
    "deck.direction",
    "coating.product",
    "packing.flush",
    "hanger.drop",
    "barrier.rating",
    "barrier.smoke_barrier",
    "board.kind",
    "",
];
const UNITS: &[Unit] = &[
    Unit::Inch,
    Unit::Millimetre,
    Unit::Foot,
    Unit::Mil,
    Unit::PoundPerCubicFoot,
    Unit::KilogramPerCubicMetre,
    Unit::Percent,
    Unit::Count,
    Unit::Gauge,
    Unit::Hour,
    Unit::Minute,
    Unit::Fahrenheit,
    Unit::Celsius,
    Unit::FahrenheitRise,
    Unit::TimesJointWidth,
    Unit::Times,
    Unit::CfmPerFoot,
    Unit::CfmPerSquareFoot,
];
const RELATIONS: &[Relation] = &[
    Relation::AtLeast,
    Relation::AtMost,
    Relation::LessThan,
    Relation::MoreThan,
    Relation::Nominal,
    Relation::Exactly,
    Relation::Between,
    Relation::About,
];
const AGREEMENTS: &[Agreement] = &[
    Agreement::Consistent,
    Agreement::LooselyRounded,
    Agreement::InConflict,
];
const NAMES: &[&str] = &[
    "1",
    "2",
    "2A",
    "2A1",
    "2A2",
    "3",
    "3B",
    "Configuration 1",
    "Configuration 2",
    "nothing",
];

/// Numbers as listings have them, and now and then the largest there are.
fn number() -> impl Strategy<Value = Number> {
    let usual = (-40_i128..4000, select(vec![1_i128, 2, 8, 16, 64, 10]))
        .prop_filter_map("a number", |(over, under)| Number::new(over, under));
    let odd = (any::<i64>(), 1_i64..i64::MAX).prop_filter_map("a number", |(over, under)| {
        let limit = measure::number::LIMIT;
        Number::new(i128::from(over) % limit, i128::from(under) % limit)
    });
    prop_oneof![9 => usual, 1 => odd]
}

fn quantity() -> impl Strategy<Value = Quantity> {
    (number(), select(UNITS)).prop_map(|(number, unit)| Quantity::new(number, unit))
}

fn bound() -> impl Strategy<Value = Bound> {
    let second = (
        proptest::option::of(number()),
        proptest::option::of(number()),
        select(UNITS),
        select(AGREEMENTS),
    )
        .prop_map(|(lo, hi, unit, agreement)| SecondValue {
            lo,
            hi,
            unit,
            agreement,
        });
    (
        select(RELATIONS),
        proptest::option::of(number()),
        proptest::option::of(number()),
        select(UNITS),
        any::<bool>(),
        any::<bool>(),
        proptest::option::of(second),
    )
        .prop_map(
            |(relation, lo, hi, unit, lo_excluded, bare, second)| Bound {
                relation,
                lo,
                hi,
                unit,
                lo_excluded,
                bare,
                at: Span::default(),
                second,
            },
        )
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        select(vec![
            "across", "type-x", "masonry", "II", "static", "yes", "no", "2A1", "", "™", "Pale 4"
        ])
        .prop_map(str::to_owned),
        "\\PC{0,12}",
    ]
}

fn requirement() -> impl Strategy<Value = Requirement> {
    let name = (text(), text()).prop_map(|(maker, product)| ProductName { maker, product });
    prop_oneof![
        6 => bound().prop_map(Requirement::Bound),
        1 => proptest::collection::vec(name, 0..3).prop_map(|names| Requirement::Named { names }),
        1 => select(vec![Presence::Required, Presence::Absent, Presence::Optional]).prop_map(|presence| Requirement::Presence { presence }),
        1 => select(NAMES).prop_map(|to| Requirement::Reference { to: to.to_owned() }),
        1 => Just(Requirement::Prose),
    ]
}

fn expr() -> impl Strategy<Value = Expr> {
    let test = (
        select(PROPERTIES),
        select(RELATIONS),
        proptest::option::of(quantity()),
        proptest::option::of(quantity()),
        any::<bool>(),
    )
        .prop_map(|(property, relation, lo, hi, lo_excluded)| {
            Expr::Test(Test {
                property: property.to_owned(),
                relation,
                lo,
                hi,
                lo_excluded,
            })
        });
    let leaf = prop_oneof![4 => test, 1 => text().prop_map(Expr::Words)];
    leaf.prop_recursive(3, 8, 3, |inner| {
        prop_oneof![
            proptest::collection::vec(inner.clone(), 0..3).prop_map(Expr::All),
            proptest::collection::vec(inner.clone(), 0..3).prop_map(Expr::Any),
            inner.prop_map(|inner| Expr::Not(Box::new(inner))),
        ]
    })
}

fn clause() -> impl Strategy<Value = Clause> {
    (
        select(PROPERTIES),
        requirement(),
        proptest::option::weighted(0.3, expr()),
        proptest::option::weighted(0.3, select(NAMES)),
        select(NAMES),
        text(),
        select(vec![
            Confidence::ByRule,
            Confidence::WithDoubt,
            Confidence::Prose,
        ]),
        select(vec![Status::Draft, Status::Confirmed, Status::Corrected]),
    )
        .prop_map(
            |(property, requirement, condition, option, item, words, confidence, status)| Clause {
                id: String::new(),
                item: item.to_owned(),
                span: Span::default(),
                words,
                property: property.to_owned(),
                component: property.split('.').next().unwrap_or_default().to_owned(),
                attribute: "something".to_owned(),
                requirement,
                condition: condition.map(|expr| Condition {
                    also: Vec::new(),
                    words: "so".to_owned(),
                    span: Span::default(),
                    expr,
                }),
                option: option.map(str::to_owned),
                read_by: Vec::new(),
                confidence,
                status,
            },
        )
}

fn item() -> impl Strategy<Value = Item> {
    (
        select(NAMES),
        text(),
        proptest::option::of(select(NAMES)),
        proptest::option::of(select(NAMES)),
    )
        .prop_map(|(path, title, option, parent)| Item {
            path: path.to_owned(),
            title,
            span: Span::default(),
            option: option.map(str::to_owned),
            parent: parent.map(str::to_owned),
        })
}

fn group() -> impl Strategy<Value = OptionGroup> {
    let kinds = vec![
        OptionGroupKind::Alternates,
        OptionGroupKind::Configurations,
        OptionGroupKind::Optional,
    ];
    (
        select(NAMES),
        select(kinds),
        proptest::option::of(select(NAMES)),
        proptest::collection::vec(select(NAMES), 0..3),
    )
        .prop_map(|(id, kind, base, choices)| OptionGroup {
            id: id.to_owned(),
            kind,
            base_item: base.map(str::to_owned),
            also_replaced: Vec::new(),
            choices: choices.into_iter().map(str::to_owned).collect(),
        })
}

/// A listing as no reader would make it.
fn any_reading() -> impl Strategy<Value = Reading> {
    (
        proptest::collection::vec(clause(), 0..10),
        proptest::collection::vec(item(), 0..8),
        proptest::collection::vec(group(), 0..4),
        proptest::collection::vec(number(), 0..3),
        proptest::option::of((
            select(RELATIONS),
            proptest::option::of(number()),
            proptest::option::of(number()),
            select(UNITS),
        )),
    )
        .prop_map(|(mut clauses, items, options, ratings_hr, width)| {
            for (at, clause) in clauses.iter_mut().enumerate() {
                clause.id = format!("c{at}");
            }
            let mut listing = reading(&[]);
            listing.header.ratings_hr = ratings_hr;
            listing.header.width = width.map(|(relation, lo, hi, unit)| listing::WidthLimit {
                relation,
                lo,
                hi,
                unit,
                strictest_hi: None,
                span: Span::default(),
            });
            Reading {
                clauses,
                items,
                options,
                ..listing
            }
        })
}

fn source() -> impl Strategy<Value = ProvenanceKind> {
    prop_oneof![
        Just(ProvenanceKind::Drawing {
            sheet: "A-1".to_owned()
        }),
        Just(ProvenanceKind::Submittal {
            reference: "S-1".to_owned()
        }),
        Just(ProvenanceKind::Witnessed { by: None }),
        Just(ProvenanceKind::StatedBy {
            who: "the foreman".to_owned()
        }),
        Just(ProvenanceKind::Unstated),
        (
            proptest::option::of(quantity()),
            proptest::collection::vec(quantity(), 0..3)
        )
            .prop_map(|(resolution, readings)| {
                ProvenanceKind::Measured {
                    instrument: "rule".to_owned(),
                    resolution,
                    readings,
                }
            }),
    ]
}

fn any_fact() -> impl Strategy<Value = Fact> {
    let value = prop_oneof![
        5 => quantity().prop_map(Value::Quantity),
        2 => text().prop_map(Value::Text),
        1 => any::<bool>().prop_map(Value::Flag),
        1 => (proptest::option::of(text()), text()).prop_map(|(maker, product)| Value::Product(ProductFact { maker, product })),
    ];
    let names: Vec<String> = PROPERTIES
        .iter()
        .map(ToString::to_string)
        .chain(["option.2A".to_owned(), "option.configuration".to_owned()])
        .collect();
    (select(names), value, source()).prop_map(|(property, value, kind)| Fact {
        property,
        value,
        provenance: Provenance { kind, date: None },
        cell: None,
    })
}

fn inches(sixty_fourths: i128) -> Quantity {
    Quantity::new(Number::new(sixty_fourths, 64).unwrap(), Unit::Inch)
}

/// The verdict on a depth of packing against a limit in 1/64 in.
fn one_limit(relation: Relation, limit: i128, value: Quantity, source: &str) -> Verdict {
    let mut listing = reading(&["packing.depth: at least 1 in."]);
    let upper = matches!(relation, Relation::AtMost | Relation::LessThan);
    let limit = Number::new(limit, 64);
    if let Requirement::Bound(bound) = &mut listing.clauses[0].requirement {
        bound.relation = relation;
        (bound.lo, bound.hi) = if upper { (None, limit) } else { (limit, None) };
    }
    let fact = Fact {
        value: Value::Quantity(value),
        ..fact(&format!("packing.depth = 1 in. <- {source}"))
    };
    let facts = [fact];
    finding(&check_draft(&listing, &subject(&facts, &[])), "1/1").verdict
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever a listing and a schedule hold, checking them ends, and what comes out hangs together.
    #[test]
    fn nothing_panics_and_nothing_contradicts_itself(
        listing in any_reading(),
        other in any_reading(),
        facts in proptest::collection::vec(any_fact(), 0..10),
        (item, words, accepted) in (select(NAMES), text(), any::<bool>()),
    ) {
        let decision = if accepted { Decision::Accepted } else { Decision::Rejected };
        let judgments = [support::judgment(item, &words, decision, "seen")];
        let result = check_draft(&listing, &subject(&facts, &judgments));
        prop_assert_eq!(result.counts, conformance::Counts::of(result.findings.iter().map(|finding| finding.verdict)));
        for finding in &result.findings {
            let explanation = &finding.explanation;
            prop_assert_eq!(finding.verdict == Verdict::Open, explanation.missing.is_some());
            prop_assert!(!explanation.sentence.is_empty());
            let from_nobody = explanation.fact.as_ref().is_some_and(|fact| fact.provenance == "no source stated");
            let is_demand = explanation.fact.as_ref().is_some_and(|fact| fact.property.starts_with("barrier."));
            prop_assert!(finding.verdict != Verdict::Met || !from_nobody || is_demand, "{}", explanation.sentence);
        }
        if result.conforms() {
            prop_assert!(result.with(Verdict::Open).next().is_none() && result.with(Verdict::NotMet).next().is_none());
        }
        prop_assert!(serde_json::to_string(&*result).is_ok());
        let result = conformance::JointResult::from(result);
        let asked: usize = questions([&result]).iter().map(|question| question.concerns.len()).sum();
        prop_assert_eq!(asked, result.counts.open);
        compare(&listing, &other);
        let same = compare(&listing, &listing);
        prop_assert!(same.iter().all(|change| change.old.is_some() == change.new.is_some()));
    }

    /// With nothing known nothing is met, and nothing conforms.
    #[test]
    fn no_fact_no_met(listing in any_reading()) {
        let result = check_draft(&listing, &Subject::default());
        prop_assert!(result.with(Verdict::Met).next().is_none());
        prop_assert_ne!(result.overall, Overall::Conforms);
    }

    /// A fact on one property meets no clause on another.
    #[test]
    fn a_fact_meets_only_its_own_clauses(bound in bound(), fact in any_fact()) {
        prop_assume!(fact.property != "packing.recess");
        let mut listing = reading(&["packing.recess: at least 1 in."]);
        listing.clauses[0].requirement = Requirement::Bound(bound);
        let facts = [fact];
        let result = check_draft(&listing, &subject(&facts, &[]));
        prop_assert_ne!(finding(&result, "1/1").verdict, Verdict::Met);
    }

    /// What is enough stays enough when it grows.
    #[test]
    fn more_never_unmeets_at_least(less in 1_i128..4000, more in 0_i128..400, limit in 1_i128..4000, source in select(vec!["witnessed", "measured 1/16 in.", "measured"])) {
        let verdict = |sixty_fourths| one_limit(Relation::AtLeast, limit, inches(sixty_fourths), source);
        if verdict(less) == Verdict::Met {
            prop_assert_eq!(verdict(less + more), Verdict::Met);
        }
        if verdict(less + more) == Verdict::NotMet {
            prop_assert_eq!(verdict(less), Verdict::NotMet);
        }
    }

    /// Limits by another road: whole numbers of 1/64 in., and of 1/10 mm against inches by cross-multiplying.
    #[test]
    fn limits_by_whole_numbers(value in 1_i128..2000, limit in 1_i128..2000, relation in 0..4_usize, metric in any::<bool>()) {
        let (value, ours, theirs) = if metric {
            // 1 in. = 25.4 mm (NIST SP 811): value/10 mm against limit/64 in. is value * 64 against limit * 254.
            (Quantity::new(Number::new(value, 10).unwrap(), Unit::Millimetre), value * 64, limit * 254)
        } else {
            (inches(value), value, limit)
        };
        let met = [ours >= theirs, ours <= theirs, ours < theirs, ours > theirs][relation];
        let found = one_limit(RELATIONS[relation], limit, value, "witnessed");
        prop_assert_eq!(found, if met { Verdict::Met } else { Verdict::NotMet }, "{} {:?} {}/64 in.", value, RELATIONS[relation], limit);
    }

    /// A condition that can't be told never makes a clause fall away.
    #[test]
    fn what_is_not_known_makes_nothing_fall_away(expr in expr()) {
        fn tests(expr: &Expr) -> usize {
            match expr {
                Expr::All(parts) | Expr::Any(parts) => parts.iter().map(tests).sum(),
                Expr::Not(part) => tests(part),
                Expr::Test(_) | Expr::Words(_) => 1,
            }
        }
        fn only_words(expr: &Expr) -> bool {
            match expr {
                Expr::All(parts) | Expr::Any(parts) => !parts.is_empty() && parts.iter().all(only_words),
                Expr::Not(part) => only_words(part),
                Expr::Test(_) => false,
                Expr::Words(words) => !words.contains(char::is_numeric),
            }
        }
        let expr = if tests(&expr) > 0 { expr } else { Expr::Words("so".to_owned()) };
        let mut listing = reading(&["packing.recess: at least 1 in."]);
        listing.clauses[0].condition = Some(Condition { also: Vec::new(), words: "so".to_owned(), span: Span::default(), expr });
        let found = |value: &str| {
            let facts = [fact(value)];
            finding(&check_draft(&listing, &subject(&facts, &[])), "1/1").verdict
        };
        prop_assert_eq!(found("packing.recess = 1/2 in."), Verdict::Open);
        // What is met either way may be met: where nothing but a person's judgment is open, which no fact could take the place of.
        let only_words = only_words(&listing.clauses[0].condition.as_ref().unwrap().expr);
        let verdict = found("packing.recess = 2 in.");
        prop_assert!(verdict == Verdict::Open || only_words && verdict == Verdict::Met);
    }
}
