//! What to ask whom, so that nothing stays open.
//!
//! One question for each property, trade and stage, whatever the number of joints it concerns; but a clause that a
//! person must judge, or a reading that a person must confirm, is a question of its own, and a property that a listing
//! has for itself is asked about for that listing alone.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use vocabulary::{Stage, Trade, vocabulary};

use crate::explanation::{Ask, Explanation, Missing};
use crate::result::JointResult;
use crate::verdict::Verdict;
use crate::words::{in_sentence, verb};

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
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Topic {
    // An unknown trade or stage comes last.
    trade: (bool, Option<Trade>),
    stage: (bool, Option<Stage>),
    property: String,
    ask: Ask,
    own: Option<Own>,
}

/// Of which listing alone it is asked.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
struct Own {
    listing: String,
    edition: String,
    /// SHA-256 of its document: what two documents number and call alike is two things.
    document: String,
    /// The clause, where it is asked of that alone.
    clause: Option<String>,
}

impl Topic {
    /// Whom to ask; none where the vocabulary doesn't say.
    pub const fn trade(&self) -> Option<Trade> {
        self.trade.1
    }

    /// SHA-256 of the document that it is asked of alone; none where it is asked whatever the listing.
    pub fn document(&self) -> Option<&str> {
        self.own.as_ref().map(|own| own.document.as_str())
    }
}

/// An open clause of a result, and what would close it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gap {
    /// The question that it belongs to.
    pub topic: Topic,
    /// What would close it.
    pub missing: Missing,
    /// The clause at its joint.
    pub concern: Concern,
}

/// The open clauses of a result that a question can close, in its order.
pub fn gaps(result: &JointResult) -> impl Iterator<Item = Gap> {
    result.with(Verdict::Open).filter_map(|finding| {
        let about = &finding.explanation;
        let missing = about.missing.as_ref()?;
        Some(Gap {
            topic: topic(missing, about, result),
            missing: missing.clone(),
            concern: concern(about, result),
        })
    })
}

/// The questions that would close every open clause of some results: by trade, then by stage in the order of the
/// work, then by property.
pub fn questions<'r>(results: impl IntoIterator<Item = &'r JointResult>) -> Vec<Question> {
    let mut grouped: BTreeMap<Topic, (Missing, Vec<Concern>)> = BTreeMap::new();
    for gap in results.into_iter().flat_map(gaps) {
        let (_, concerns) = grouped
            .entry(gap.topic)
            .or_insert_with(|| (gap.missing, Vec::new()));
        concerns.push(gap.concern);
    }
    grouped
        .into_values()
        .map(|(missing, concerns)| question(missing, concerns))
        .collect()
}

fn topic(missing: &Missing, explanation: &Explanation, result: &JointResult) -> Topic {
    let stands_alone = matches!(missing.ask, Ask::Judgment | Ask::Confirmation | Ask::Option);
    let is_local = vocabulary().property(&missing.property).is_none();
    Topic {
        trade: (missing.trade.is_none(), missing.trade),
        stage: (missing.until.is_none(), missing.until),
        property: missing.property.clone(),
        ask: missing.ask,
        own: (stands_alone || is_local).then(|| Own {
            listing: result.listing.clone(),
            edition: result.edition.clone(),
            document: result.source_sha256.clone(),
            clause: stands_alone.then(|| explanation.clause.clone()),
        }),
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

fn question(missing: Missing, concerns: Vec<Concern>) -> Question {
    let mut names: Vec<&str> = Vec::new();
    for concern in &concerns {
        if !names.contains(&concern.joint.as_str()) {
            names.push(&concern.joint);
        }
    }
    let asked = concerns
        .first()
        .map(|first| sentence(&missing, first, &names, names.len()));
    Question {
        trade: missing.trade,
        stage: missing.until,
        sentence: asked.unwrap_or_default(),
        property: missing.property,
        title: missing.title,
        ask: missing.ask,
        help: missing.help,
        instrument: missing.instrument,
        concerns,
    }
}

/// A question in words: what is missing, the first clause it would close, the names of the first joints (three will do), and how many
/// joints there are.
pub fn sentence(missing: &Missing, first: &Concern, names: &[&str], count: usize) -> String {
    let title = in_sentence(&missing.title);
    let verb = verb(&missing.title);
    let joints = joints(names, count);
    let words = match first.words.trim() {
        "" => first.sentence.clone(),
        words => format!(
            "\"{}\"",
            words.split_whitespace().collect::<Vec<_>>().join(" ")
        ),
    };
    let (listing, requirement) = (&first.listing, &first.requirement);
    match missing.ask {
        Ask::Value => format!("What {verb} the {title} at {joints}?"),
        Ask::Sight => format!("What {verb} the {title} as built at {joints}?"),
        Ask::Source => format!("Where {verb} the {title} at {joints} known from?"),
        Ask::FinerReading => {
            format!("What does a finer instrument show for the {title} at {joints}?")
        }
        Ask::Correction => {
            format!("What {verb} the {title} at {joints}, in a form that can be compared?")
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
fn joints(names: &[&str], count: usize) -> String {
    match names {
        [] => "the joint".to_owned(),
        [one] => (*one).to_owned(),
        [one, other] => format!("{one} and {other}"),
        [one, two, three] if count <= 3 => format!("{one}, {two} and {three}"),
        [one, two, three, ..] => {
            format!("{one}, {two}, {three} and {} more", count.saturating_sub(3))
        }
    }
}
