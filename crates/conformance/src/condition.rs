//! Whether a clause applies: true, false, or not to be told.
//!
//! What can't be told never makes the clause fall away. It leaves it open, unless only a person could tell and what the clause asks for is there.
//! A test on a measured value keeps the same distance from its threshold as a bound does.

use core::cell::OnceCell;

use listing::{Expr, Reading, Relation, Test};
use measure::{Number, Quantity};
use site::Value;
use vocabulary::Nature;

use crate::assessment::Cause;
use crate::cases::{may_tell_cases_apart, tells_cases_apart};
use crate::comparison::{Guard, Limits, Outcome, guard, readings};
use crate::evidence::{Evidence, evidence, property};
use crate::rating::{self, Asked, JOINT_RATING};
use crate::subject::Case;
use crate::verdict::Reason;

/// Whether something holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Truth {
    True,
    False,
    Unknown,
}

/// Whether a condition holds, and the part of it that decided or couldn't be decided.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tested<'a> {
    pub(crate) truth: Truth,
    pub(crate) cause: Cause<'a>,
}

/// What conditions of one listing are tested with at one joint.
pub(crate) struct Circumstances<'a, 'b> {
    subject: &'b Case<'a>,
    exact_tests: &'b [&'a Test],
    /// The listing's ratings.
    ratings_hr: &'b [Number],
    /// The one of them that applies, with what was asked: looked up when a condition asks.
    rating: OnceCell<Applying<'a>>,
}

/// The rating of the listing's that applies, with what was asked; or the evidence that isn't enough.
type Applying<'a> = Result<(Asked<'a>, Option<Quantity>), (&'static str, Evidence<'a>)>;

impl<'a, 'b> Circumstances<'a, 'b> {
    pub(crate) fn new(
        reading: &'b Reading,
        subject: &'b Case<'a>,
        exact_tests: &'b [&'a Test],
    ) -> Self {
        Self::with(&reading.header.ratings_hr, subject, exact_tests)
    }

    /// The same, of a listing of which only its ratings and exact tests are known.
    pub(crate) fn with(
        ratings_hr: &'b [Number],
        subject: &'b Case<'a>,
        exact_tests: &'b [&'a Test],
    ) -> Self {
        Self {
            subject,
            exact_tests,
            ratings_hr,
            rating: OnceCell::new(),
        }
    }

    fn applying(&self) -> Applying<'a> {
        *self.rating.get_or_init(|| {
            let asked = rating::asked(self.subject)?;
            let applies = rating::applicable(self.ratings_hr, asked.rating);
            Ok((asked, applies))
        })
    }

    /// As [`test`](Self::test), as if the joint's rating and width weren't known: false, when something else than
    /// those makes the condition fall away.
    pub(crate) fn but_for_rating_and_width(&self, expr: &'a Expr) -> Tested<'a> {
        let blind = |test: &Test| tells_cases_apart(&test.property);
        self.test_but_for(expr, &blind)
    }

    /// Whether a condition holds: of all parts the first false or else unknown one decides, of alternatives the first
    /// true or else unknown one (Kleene's strong logic).
    pub(crate) fn test(&self, expr: &'a Expr) -> Tested<'a> {
        self.test_but_for(expr, &|_| false)
    }

    /// Whether every test of a condition is decided, so that if anything is open it is words, which a person must judge; and no words that may tell
    /// cases of width or rating apart.
    pub(crate) fn only_words_are_undecided(&self, expr: &'a Expr) -> bool {
        match expr {
            Expr::All(parts) | Expr::Any(parts) => {
                !parts.is_empty() && parts.iter().all(|part| self.only_words_are_undecided(part))
            }
            Expr::Not(part) => self.only_words_are_undecided(part),
            Expr::Test(test) => self.one(test).truth != Truth::Unknown,
            Expr::Words(words) => !may_tell_cases_apart(words),
        }
    }

    /// The same, with some tests taken to be undecided.
    fn test_but_for(&self, expr: &'a Expr, blind: &dyn Fn(&Test) -> bool) -> Tested<'a> {
        match expr {
            Expr::All(parts) => self.parts(parts, Truth::False, Truth::True, blind),
            Expr::Any(parts) => self.parts(parts, Truth::True, Truth::False, blind),
            Expr::Not(part) => {
                let tested = self.test_but_for(part, blind);
                let truth = match tested.truth {
                    Truth::True => Truth::False,
                    Truth::False => Truth::True,
                    Truth::Unknown => Truth::Unknown,
                };
                Tested { truth, ..tested }
            }
            Expr::Test(test) if blind(test) => Tested {
                truth: Truth::Unknown,
                cause: NO_CAUSE,
            },
            Expr::Test(test) => self.one(test),
            Expr::Words(words) => Tested {
                truth: Truth::Unknown,
                cause: Cause {
                    words: Some(words),
                    reason: Reason::NeedsAPerson,
                    ..NO_CAUSE
                },
            },
        }
    }

    fn parts(
        &self,
        parts: &'a [Expr],
        deciding: Truth,
        otherwise: Truth,
        blind: &dyn Fn(&Test) -> bool,
    ) -> Tested<'a> {
        let mut unknown = None;
        let mut last = None;
        for part in parts {
            let tested = self.test_but_for(part, blind);
            if tested.truth == deciding {
                return tested;
            }
            if tested.truth == Truth::Unknown {
                unknown = unknown.or(Some(tested));
            }
            last = Some(tested);
        }
        // A condition with no parts says nothing that could be tested.
        unknown
            .or(last.map(|tested| Tested {
                truth: otherwise,
                ..tested
            }))
            .unwrap_or(Tested {
                truth: Truth::Unknown,
                cause: Cause {
                    reason: Reason::ListingUnclear,
                    ..NO_CAUSE
                },
            })
    }

    fn one(&self, test: &'a Test) -> Tested<'a> {
        let about = Cause {
            property: Some(&test.property),
            ..NO_CAUSE
        };
        if test.property == JOINT_RATING {
            return self.rating(test, about);
        }
        let found = evidence(&test.property, self.subject);
        let unknown = |reason| Tested {
            truth: Truth::Unknown,
            cause: Cause {
                fact: found.fact(),
                reason,
                ..about
            },
        };
        let fact = match found {
            Evidence::Shown(fact) => fact,
            Evidence::None => return unknown(Reason::NoFact),
            Evidence::NotSeen(_) => return unknown(Reason::NotSeen),
            Evidence::NoSource(_) => return unknown(Reason::NoSource),
            Evidence::Unreadable(_) => return unknown(Reason::Unreadable),
        };
        let decided = |holds| Tested {
            truth: if holds { Truth::True } else { Truth::False },
            cause: Cause {
                fact: Some(fact),
                ..about
            },
        };
        match (&fact.value, test.lo.or(test.hi)) {
            (Value::Flag(flag), None) => decided(*flag),
            (Value::Quantity(_), Some(_)) if readings::is_scattered(fact) => {
                unknown(Reason::Scattered)
            }
            (Value::Quantity(_), Some(_)) => {
                let mut outcomes = Guard::of_each(fact, property(&test.property))
                    .map(|(value, guard)| self.compare(test, value, guard));
                let first = outcomes.next().flatten();
                match first {
                    Some(holds) if outcomes.all(|other| other == first) => decided(holds),
                    _ => unknown(Reason::TooClose),
                }
            }
            _ => unknown(Reason::Unreadable),
        }
    }

    /// Whether a test holds for one value; none when it can't be told.
    fn compare(&self, test: &Test, value: Quantity, guard: Guard) -> Option<bool> {
        if test.relation == Relation::Exactly && (test.lo.is_none() || test.hi.is_none()) {
            return self.is_exactly(test, test.lo.or(test.hi)?, value);
        }
        let limits = limits_of(test);
        match limits.against(value, guard).outcome {
            Outcome::Holds => Some(true),
            Outcome::Fails => Some(false),
            _ => None,
        }
    }

    /// Whether a value is the one tested for ("for joints 2 in. wide"). A dimension measured on site hardly ever is, so
    /// that a deviating one is told to be another only when it is the very value of another such test.
    fn is_exactly(&self, test: &Test, asked: Quantity, value: Quantity) -> Option<bool> {
        if value.compare(asked)?.is_eq() {
            return Some(true);
        }
        let nature = property(&test.property).map(|property| property.nature);
        let is_told = guard::is_counted(value.dimension())
            || matches!(nature, Some(Nature::Count | Nature::Product));
        let is_another = || {
            self.exact_tests.iter().any(|other| {
                let another = other.lo.or(other.hi);
                other.property == test.property
                    && another.is_some_and(|another| {
                        value
                            .compare(another)
                            .is_some_and(core::cmp::Ordering::is_eq)
                    })
            })
        };
        (is_told || is_another()).then_some(false)
    }

    /// A test of the joint's rating, made with the rating of the listing that applies.
    fn rating(&self, test: &'a Test, about: Cause<'a>) -> Tested<'a> {
        let unknown = |property, found: Evidence<'a>, reason| Tested {
            truth: Truth::Unknown,
            cause: Cause {
                property: Some(property),
                fact: found.fact(),
                reason,
                ..about
            },
        };
        let (asked, applies) = match self.applying() {
            Ok((asked, Some(applies))) => (asked, applies),
            Ok((asked, None)) => {
                return unknown(
                    JOINT_RATING,
                    Evidence::Shown(asked.fact),
                    Reason::ListingUnclear,
                );
            }
            Err((property, found)) => return unknown(property, found, reason_of(found)),
        };
        let limits = limits_of(test);
        let holds = match (test.relation, test.lo, test.hi) {
            (Relation::Exactly, Some(one), None) | (Relation::Exactly, None, Some(one)) => {
                applies.compare(one).map(core::cmp::Ordering::is_eq)
            }
            _ => match limits.against(applies, Guard::Exact).outcome {
                Outcome::Holds => Some(true),
                Outcome::Fails => Some(false),
                _ => None,
            },
        };
        let cause = Cause {
            fact: Some(asked.fact),
            rating: Some(applies),
            ..about
        };
        match holds {
            Some(true) => Tested {
                truth: Truth::True,
                cause,
            },
            Some(false) => Tested {
                truth: Truth::False,
                cause,
            },
            None => Tested {
                truth: Truth::Unknown,
                cause: Cause {
                    reason: Reason::ListingUnclear,
                    ..cause
                },
            },
        }
    }
}

/// Every test for one exact value in the conditions of a listing.
pub(crate) fn exact_tests<'a>(expr: &'a Expr, found: &mut Vec<&'a Test>) {
    match expr {
        Expr::All(parts) | Expr::Any(parts) => {
            for part in parts {
                exact_tests(part, found);
            }
        }
        Expr::Not(part) => exact_tests(part, found),
        Expr::Test(test) if test.relation == Relation::Exactly => found.push(test),
        Expr::Test(_) | Expr::Words(_) => {}
    }
}

/// Why evidence isn't enough.
pub(crate) const fn reason_of(found: Evidence<'_>) -> Reason {
    match found {
        Evidence::None => Reason::NoFact,
        Evidence::NoSource(_) => Reason::NoSource,
        Evidence::NotSeen(_) => Reason::NotSeen,
        Evidence::Unreadable(_) => Reason::Unreadable,
        Evidence::Shown(_) => Reason::Holds,
    }
}

/// Two values make a range, whatever the relation is called.
const fn limits_of(test: &Test) -> Limits {
    let relation = match (test.lo, test.hi) {
        (Some(_), Some(_)) => Relation::Between,
        _ => test.relation,
    };
    Limits {
        relation,
        lo: test.lo,
        hi: test.hi,
        lo_excluded: test.lo_excluded,
    }
}

const NO_CAUSE: Cause<'static> = Cause {
    property: None,
    words: None,
    fact: None,
    rating: None,
    reason: Reason::Holds,
};
