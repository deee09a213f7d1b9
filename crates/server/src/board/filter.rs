//! Some of the joints: those that somebody asks for.

use conformance::Overall;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Board, Row, state};

/// Which joints somebody asks for: those for which all of it holds. What is empty or left out holds for every joint.
#[derive(Debug, Clone, Default, PartialEq, Eq, Deserialize, Serialize, JsonSchema)]
#[serde(default)]
pub(crate) struct Filter {
    /// The storey.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub(crate) storey: String,
    /// The barrier.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub(crate) barrier: String,
    /// The mark.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub(crate) mark: String,
    /// What the joint came to.
    #[serde(skip_serializing_if = "State::is_any")]
    pub(crate) state: State,
    /// Words, each of which is in the joint's name, mark, title or place, in capitals or not.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub(crate) words: String,
    /// `storey`, `barrier` or both with a comma between: joints for which the schedule names none.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub(crate) unnamed: String,
    /// The joint after which the list goes on.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub(crate) after: String,
}

/// What a joint came to, to ask for.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum State {
    /// Whatever it came to.
    #[default]
    #[serde(alias = "")]
    Any,
    /// Every clause is met or judged.
    Conforms,
    /// A clause isn't met.
    DoesNotConform,
    /// Something is open.
    Open,
    /// It wasn't checked yet.
    Waiting,
    /// The reading of its listing isn't confirmed.
    Provisional,
}

impl State {
    /// Each with its name in a request and its words.
    pub(crate) const ALL: [(Self, &'static str, &'static str); 6] = [
        (Self::Any, "", "any"),
        (Self::Conforms, "conforms", "conforms"),
        (Self::DoesNotConform, "does-not-conform", "does not conform"),
        (Self::Open, "open", "open"),
        (Self::Waiting, "waiting", "not checked yet"),
        (Self::Provisional, "provisional", "provisional"),
    ];

    #[expect(clippy::trivially_copy_pass_by_ref, reason = "serde calls it so")]
    fn is_any(&self) -> bool {
        *self == Self::Any
    }

    fn is_of(self, row: &Row) -> bool {
        let found = row.found.as_ref();
        match self {
            Self::Any => true,
            Self::Conforms => state(found) == Some(Overall::Conforms),
            Self::DoesNotConform => state(found) == Some(Overall::DoesNotConform),
            Self::Open => state(found) == Some(Overall::Open),
            Self::Waiting => found.is_none(),
            Self::Provisional => found.is_some_and(|found| found.is_provisional),
        }
    }
}

/// Some of the joints that were asked for.
#[derive(Debug)]
pub(crate) struct Chosen<'b> {
    /// How many there are in all, on whichever page.
    pub(crate) count: usize,
    /// Those of this page, by name.
    pub(crate) rows: Vec<&'b Row>,
    /// Whether there are more after them.
    pub(crate) has_more: bool,
}

impl Board {
    /// At most so many of the joints that somebody asks for.
    pub(crate) fn choose(&self, filter: &Filter, most: usize) -> Chosen<'_> {
        let words = filter.words.to_lowercase();
        let words: Vec<&str> = words.split_whitespace().collect();
        let is = |asked: &str, has: &str| asked.is_empty() || asked == has;
        let unnamed = |what: &str| filter.unnamed.split(',').any(|one| one == what);
        let (no_storey, no_barrier) = (unnamed("storey"), unnamed("barrier"));
        let mut chosen = Chosen {
            count: 0,
            rows: Vec::new(),
            has_more: false,
        };
        for row in self.rows() {
            let card = &row.card;
            let (storey, barrier) = &card.place;
            let is_asked_for = is(&filter.storey, storey)
                && is(&filter.barrier, barrier)
                && is(&filter.mark, &card.mark)
                && (!no_storey || storey.is_empty())
                && (!no_barrier || barrier.is_empty())
                && filter.state.is_of(row)
                && card.has(words.iter().copied());
            if !is_asked_for {
                continue;
            }
            chosen.count += 1;
            if *card.name <= *filter.after {
                continue;
            }
            if chosen.rows.len() < most {
                chosen.rows.push(row);
            } else {
                chosen.has_more = true;
            }
        }
        chosen
    }
}
