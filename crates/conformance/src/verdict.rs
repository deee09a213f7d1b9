//! What is found of a clause, of a joint, and how firmly.

use core::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is found of one clause at one joint.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// What is known shows that it is met.
    Met,
    /// What is known shows that it isn't met.
    NotMet,
    /// Nobody has shown it yet, or nobody can tell from what was shown.
    Open,
    /// A named person has decided that it may count as met.
    Judged,
    /// It asks nothing of this joint.
    NotApplicable,
}

impl Verdict {
    /// The verdict in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Met => "met",
            Self::NotMet => "not met",
            Self::Open => "open",
            Self::Judged => "judged",
            Self::NotApplicable => "not applicable",
        }
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

/// How firm a result is: the words show it wherever a verdict stands.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// A named person has confirmed the reading of the listing.
    Final,
    /// The reading is a draft: the verdict may change with it.
    Provisional,
}

/// What is found of a joint as a whole.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Overall {
    /// Every clause that applies is met or judged.
    Conforms,
    /// At least one clause isn't met.
    DoesNotConform,
    /// No clause is known to be unmet, but at least one is open.
    Open,
}

impl Overall {
    /// The result in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Conforms => "conforms",
            Self::DoesNotConform => "does not conform",
            Self::Open => "open",
        }
    }
}

impl fmt::Display for Overall {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

/// How many clauses have which verdict.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Counts {
    /// Met.
    pub met: usize,
    /// Not met.
    pub not_met: usize,
    /// Open.
    pub open: usize,
    /// Judged.
    pub judged: usize,
    /// Not applicable.
    pub not_applicable: usize,
}

impl Counts {
    /// Counts verdicts.
    pub fn of(verdicts: impl IntoIterator<Item = Verdict>) -> Self {
        let mut counts = Self::default();
        for verdict in verdicts {
            counts.add(verdict);
        }
        counts
    }

    /// Counts one more.
    pub(crate) fn add(&mut self, verdict: Verdict) {
        *match verdict {
            Verdict::Met => &mut self.met,
            Verdict::NotMet => &mut self.not_met,
            Verdict::Open => &mut self.open,
            Verdict::Judged => &mut self.judged,
            Verdict::NotApplicable => &mut self.not_applicable,
        } += 1;
    }

    /// What these verdicts make of the joint: it conforms only when nothing is unmet, nothing is open and
    /// something was shown at all.
    pub const fn overall(&self) -> Overall {
        if self.not_met > 0 {
            Overall::DoesNotConform
        } else if self.open > 0 || self.met + self.judged == 0 {
            Overall::Open
        } else {
            Overall::Conforms
        }
    }
}

/// Why a clause has its verdict, in one word for programs; the sentence is in the explanation.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Reason {
    /// Met: the value is what the clause asks for.
    Holds,
    /// Not met: the value isn't what the clause asks for.
    Fails,
    /// Not met: the listing doesn't offer what the building needs.
    NotOffered,
    /// Not met: a named person has rejected it.
    Rejected,
    /// Judged: a named person has accepted it.
    Accepted,
    /// Open: nothing is known of the property.
    NoFact,
    /// Open: a drawing or submittal says so, but what is built can only be seen in place.
    NotSeen,
    /// Open: nobody says where the value comes from.
    NoSource,
    /// Open: the value isn't of the kind that the clause asks about.
    Unreadable,
    /// Open: the measurement is closer to the limit than its instrument can tell.
    TooClose,
    /// Open: the value stands outside its own readings.
    Scattered,
    /// Open: the value deviates from a nominal or approximate one, and no cited tolerance covers it.
    Deviates,
    /// Open: the listing states the value twice, and the two statements give different verdicts.
    BetweenStatements,
    /// Open: the product's name fits, but who made it isn't known or can't be told.
    MakerUnknown,
    /// Open: words that only a person can answer.
    NeedsAPerson,
    /// Open: whether the clause applies can't be told.
    ConditionUndecided,
    /// Open: how the clause was read is in doubt, or nobody has confirmed it.
    ReadingInDoubt,
    /// Open: the listing itself doesn't say, or what it says couldn't be read.
    ListingUnclear,
    /// Open: the listing has several parts of one kind, and the value doesn't say of which it is.
    WhichPart,
    /// Open: nobody says which of the listing's options is built.
    OptionUnknown,
    /// Not applicable: its condition doesn't hold here.
    ConditionNotMet,
    /// Not applicable: it belongs to an option that isn't the chosen one.
    NotChosen,
    /// Not applicable: it belongs to an optional item that isn't built, or is taken not to be.
    NotBuilt,
    /// Not applicable: the listing leaves it free, or only points to another of its items.
    AsksNothing,
    /// Not applicable: the building doesn't ask for it.
    NotAsked,
}
