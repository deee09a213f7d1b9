//! What to ask whom, so that nothing stays open.
//!
//! One question for each property, trade and stage, whatever the number of joints it concerns; but a clause that a
//! person must judge, or a reading that a person must confirm, is a question of its own.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use vocabulary::{Stage, Trade};

use crate::explanation::{Ask, Explanation, Missing};
use crate::result::JointResult;
use crate::verdict::Verdict;
use crate::words::in_sentence;

/// A question that would close open clauses.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Question {
    /// Whom to ask; none where the vocabulary doesn't say who owns the property.
    pub trade: Option<Trade>,
    /// The last stage at which it can be answered without opening anything up; none where that isn't known.
    pub stage: Option<Stage>,
    /// The property it is about.
    pub property: String,
    /// Its title.
    pub title: String,
    /// What is asked for.
    pub ask: Ask,
    /// The question.
    pub sentence: String,
    /// What to do.
    pub help: String,
    /// What to measure it with.
    pub instrument: Option<String>,
    /// The clauses that it would close, in the order of the results.
    pub concerns: Vec<Concern>,
}

/// An open clause at a joint.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Concern {
    /// The joint.
    pub joint: String,
    /// Its mark.
    pub mark: String,
    /// The listing.
    pub listing: String,
    /// The clause's id.
    pub clause: String,
    /// The words of the listing.
    pub words: String,
    /// What the clause asks for.
    pub requirement: String,
    /// Why it is open.
    pub sentence: String,
}

/// What two concerns must share to be one question; its order is the order of the questions.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Key {
    // An unknown trade or stage comes last.
    trade: (bool, Option<Trade>),
    stage: (bool, Option<Stage>),
    property: String,
    ask: Ask,
    own: Option<(String, String)>,
}

/// The questions that would close every open clause of some results: by trade, then by stage in the order of the
/// work, then by property.
pub fn questions<'r>(results: impl IntoIterator<Item = &'r JointResult>) -> Vec<Question> {
    let mut grouped: BTreeMap<Key, (Missing, Vec<Concern>)> = BTreeMap::new();
    for result in results {
        for finding in result.with(Verdict::Open) {
            let Explanation {
                missing: Some(missing),
                ..
            } = &finding.explanation
            else {
                continue;
            };
            let key = key(missing, &finding.explanation, result);
            let (_, concerns) = grouped
                .entry(key)
                .or_insert_with(|| (missing.clone(), Vec::new()));
            concerns.push(concern(&finding.explanation, result));
        }
    }
    grouped
        .into_iter()
        .map(|(key, (missing, concerns))| question(key, missing, concerns))
        .collect()
}

fn key(missing: &Missing, explanation: &Explanation, result: &JointResult) -> Key {
    let stands_alone = matches!(missing.ask, Ask::Judgment | Ask::Confirmation | Ask::Option);
    Key {
        trade: (missing.trade.is_none(), missing.trade),
        stage: (missing.until.is_none(), missing.until),
        property: missing.property.clone(),
        ask: missing.ask,
        own: stands_alone.then(|| (result.listing.clone(), explanation.clause.clone())),
    }
}

fn concern(explanation: &Explanation, result: &JointResult) -> Concern {
    Concern {
        joint: result.joint.clone(),
        mark: result.mark.clone(),
        listing: result.listing.clone(),
        clause: explanation.clause.clone(),
        words: explanation.words.clone(),
        requirement: explanation.requirement.clone(),
        sentence: explanation.sentence.clone(),
    }
}

fn question(key: Key, missing: Missing, concerns: Vec<Concern>) -> Question {
    Question {
        trade: missing.trade,
        stage: missing.until,
        property: key.property,
        sentence: sentence(&missing, &concerns),
        title: missing.title,
        ask: missing.ask,
        help: missing.help,
        instrument: missing.instrument,
        concerns,
    }
}

fn sentence(missing: &Missing, concerns: &[Concern]) -> String {
    let title = in_sentence(&missing.title);
    let joints = joints(concerns);
    let words = concerns.first().map(|concern| match concern.words.trim() {
        "" => concern.sentence.clone(),
        words => format!(
            "\"{}\"",
            words.split_whitespace().collect::<Vec<_>>().join(" ")
        ),
    });
    let words = words.unwrap_or_default();
    let listing = concerns
        .first()
        .map_or("", |concern| concern.listing.as_str());
    let requirement = concerns
        .first()
        .map_or("", |concern| concern.requirement.as_str());
    match missing.ask {
        Ask::Value => format!("What is the {title} at {joints}?"),
        Ask::Sight => format!("What is the {title} as built at {joints}?"),
        Ask::Source => format!("Where is the {title} at {joints} known from?"),
        Ask::FinerReading => {
            format!("What does a finer instrument show for the {title} at {joints}?")
        }
        Ask::Correction => {
            format!("What is the {title} at {joints}, in a form that can be compared?")
        }
        Ask::Maker => format!("Who makes the {title} at {joints}?"),
        Ask::Option => format!(
            "Which does {listing} allow that is built at {joints}: {}?",
            options(missing)
        ),
        Ask::Judgment => format!("Is this met at {joints}? {words}"),
        Ask::Confirmation => format!("Does {listing} ask for \"{requirement}\" here? {words}"),
    }
}

fn options(missing: &Missing) -> String {
    let name = missing
        .property
        .strip_prefix("option.")
        .unwrap_or(&missing.property);
    format!("`{name}`")
}

/// The joints concerned: at most three by name.
fn joints(concerns: &[Concern]) -> String {
    let mut names: Vec<&str> = Vec::new();
    for concern in concerns {
        if !names.contains(&concern.joint.as_str()) {
            names.push(&concern.joint);
        }
    }
    match names.as_slice() {
        [] => "the joint".to_owned(),
        [one] => (*one).to_owned(),
        [one, other] => format!("{one} and {other}"),
        [one, two, three] => format!("{one}, {two} and {three}"),
        [one, two, three, rest @ ..] => format!("{one}, {two}, {three} and {} more", rest.len()),
    }
}
