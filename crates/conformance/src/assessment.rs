//! A verdict before it is put in words.

use listing::ProductName;
use measure::{Agreement, Quantity};
use site::{Fact, Judgment};

use crate::comparison::Compared;
use crate::movement::Share;
use crate::verdict::{Reason, Verdict};

/// A verdict on one clause with all that its explanation needs, before any words.
#[derive(Debug, Clone)]
pub(crate) struct Assessment<'a> {
    pub(crate) verdict: Verdict,
    pub(crate) reason: Reason,
    /// The fact that was used or found wanting.
    pub(crate) fact: Option<&'a Fact>,
    /// The property to ask for, where that isn't the clause's own.
    pub(crate) asks: Option<&'a str>,
    pub(crate) detail: Detail<'a>,
    /// The movement it turned on, where that is stated as a length.
    pub(crate) share: Option<Box<Share<'a>>>,
    /// What else bears on it, each in a sentence.
    pub(crate) notes: Vec<String>,
    /// The person's decision that was applied.
    pub(crate) judgment: Option<&'a Judgment>,
    /// The verdict and reason before that decision, which the explanation still shows.
    pub(crate) before: Option<(Verdict, Reason)>,
}

/// What a verdict turned on.
#[derive(Debug, Clone)]
pub(crate) enum Detail<'a> {
    /// Nothing more than the reason says.
    Nothing,
    /// A value compared with a bound.
    Bound(Compared, Option<Agreement>),
    /// The part of a condition that decided, or couldn't be decided.
    Condition(Cause<'a>),
    /// A product compared with the named ones: the one that has its name, if any has.
    Product(Option<&'a ProductName>),
    /// The choice that was made instead.
    Choice(String),
    /// A sentence of its own, with what was asked for and the margin.
    Said(Box<Said>),
}

/// A verdict that a check put in its own words.
#[derive(Debug, Clone, Default)]
pub(crate) struct Said {
    /// What is asked for; the clause's own requirement where this is empty.
    pub(crate) requirement: String,
    /// What was found.
    pub(crate) sentence: String,
    /// The value that decided, where it isn't the fact's.
    pub(crate) value: Option<Quantity>,
    pub(crate) margin: Option<Quantity>,
    pub(crate) notes: Vec<String>,
}

/// The part of a condition that decided, or couldn't be decided.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cause<'a> {
    /// The property that the part is about; none for words.
    pub(crate) property: Option<&'a str>,
    /// The words that no rule could test.
    pub(crate) words: Option<&'a str>,
    /// The fact it was tested on.
    pub(crate) fact: Option<&'a Fact>,
    /// The rating that a test of the joint's rating was made with.
    pub(crate) rating: Option<Quantity>,
    /// Why it couldn't be decided; holds, when it could.
    pub(crate) reason: Reason,
}

impl<'a> Assessment<'a> {
    /// A verdict with nothing more to it.
    pub(crate) const fn plain(verdict: Verdict, reason: Reason) -> Self {
        Self {
            verdict,
            reason,
            fact: None,
            asks: None,
            detail: Detail::Nothing,
            share: None,
            notes: Vec::new(),
            judgment: None,
            before: None,
        }
    }

    /// An open clause.
    pub(crate) const fn open(reason: Reason) -> Self {
        Self::plain(Verdict::Open, reason)
    }

    /// The same on a fact.
    pub(crate) fn on(self, fact: impl Into<Option<&'a Fact>>) -> Self {
        Self {
            fact: fact.into(),
            ..self
        }
    }

    /// The same with what it turned on.
    pub(crate) fn because(self, detail: Detail<'a>) -> Self {
        Self { detail, ..self }
    }

    /// The same, asking for another property than the clause's own.
    pub(crate) fn asking(self, property: &'a str) -> Self {
        Self {
            asks: Some(property),
            ..self
        }
    }

    /// The same in words of its own.
    pub(crate) fn saying(
        self,
        requirement: impl Into<String>,
        sentence: impl Into<String>,
    ) -> Self {
        let said = Said {
            requirement: requirement.into(),
            sentence: sentence.into(),
            ..Said::default()
        };
        self.because(Detail::Said(Box::new(said)))
    }

    /// Turned into an open clause for another reason, all else kept.
    pub(crate) fn reopened(self, reason: Reason) -> Self {
        Self {
            verdict: Verdict::Open,
            reason,
            ..self
        }
    }

    /// Whether anything known of the joint bears on it.
    pub(crate) const fn has_evidence(&self) -> bool {
        match self.verdict {
            Verdict::Met | Verdict::NotMet | Verdict::Judged => true,
            Verdict::Open => {
                self.fact.is_some() && !matches!(self.reason, Reason::ConditionUndecided)
            }
            Verdict::NotApplicable => false,
        }
    }
}
