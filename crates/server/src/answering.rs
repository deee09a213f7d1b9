//! Answering a question: the answer becomes a fact of each joint that it concerns. Two people who say the same don't get in each other's way;
//! who says otherwise than somebody else meanwhile is shown what that was.

use conformance::{goes_by, kinds_of_answer};
use listing::Reading;
use site::import::{entered, entered_as};
use site::{Fact, GoesBy, Value, said_of, without_listing};
use store::records::{AnswerRecord, Known};
use store::{Conflict, Done, Edit, Key, Kind, Owner};
use wording::property;

use crate::board::{Board, mark_of};
use crate::desk::Desk;
use crate::person::{By, Inspector};
use crate::trouble::Trouble;

/// How many entries since a page was seen are looked through for what others have answered.
const LOOKED_THROUGH: i64 = 20_000;

/// What a person answers.
#[derive(Debug)]
pub(crate) struct Answered {
    /// The question's id.
    pub(crate) question: String,
    /// The property that it asks for.
    pub(crate) property: String,
    /// What tells the joints that the person saw it asked of from others.
    pub(crate) joints: String,
    /// The answer.
    pub(crate) value: String,
    /// Where it comes from.
    pub(crate) source: String,
}

impl Desk {
    /// A fact as a person enters it of a joint: on a property of the vocabulary, or on one that the joint's listing has for itself. The latter
    /// is said of the document that the joint is to be built to now, and counts for no other.
    ///
    /// # Errors
    /// When there is no such property, or its value or source isn't right; when the property is said of another listing, or there is none that
    /// it could be said of.
    pub(crate) async fn fact_of(
        &self,
        joint: &str,
        property: &str,
        value: &str,
        source: &str,
    ) -> Result<Fact, Trouble> {
        let read = self.listing_of(joint).await?;
        let reading: Option<&Reading> = read.as_ref().map(|read| &*read.state);
        fact_before(reading, property.trim(), value, source)
    }

    /// Answers a question: the answer becomes a fact of each joint that it concerns. `seen` is the number of the last entry of the journal
    /// when the question was asked: what was entered since isn't overwritten. Where somebody has said the same meanwhile, that is noted beside it.
    ///
    /// # Errors
    /// When nobody asks this any more, or asks it of other joints than were seen; when the answer or its source isn't right; or when
    /// somebody else has said otherwise.
    pub(crate) async fn answer(
        &self,
        person: &By<Inspector>,
        answered: &Answered,
        seen: i64,
    ) -> Result<Done, Trouble> {
        self.catch_up().await?;
        match self.answer_first(person, answered, seen).await {
            Err(trouble @ (Trouble::Refused { .. } | Trouble::Conflicts(_))) => {
                let second = self.answer_second(person, answered, seen).await?;
                second.ok_or(trouble)
            }
            other => other,
        }
    }

    /// Answers what is still asked.
    async fn answer_first(
        &self,
        person: &By<Inspector>,
        answered: &Answered,
        seen: i64,
    ) -> Result<Done, Trouble> {
        let (mut asked, document) = self.board(|board| answered.asked(board))?;
        let first = asked.joints.first().map_or("", String::as_str);
        let fact = self
            .fact_of(first, &asked.property, &asked.value, &asked.source)
            .await?;
        must_be_said_of(&fact, document.as_deref())?;
        asked.property.clone_from(&fact.property);
        let of = |joint: &String| Key::fact(&Owner::Joint(joint.clone()), &fact.property);
        let keys: Vec<Key> = asked.joints.iter().map(of).collect();
        let held = self.store.records(&keys).await?;
        let known = Known::Fact(Box::new(fact));
        let mut edits = Vec::new();
        for key in keys {
            let version = match held.get(&key) {
                Some(held) if held.seq > seen => self.version_seen(&key, seen).await?,
                Some(held) => held.version,
                None => 0,
            };
            edits.push(Edit::put(key, version, &known)?);
        }
        let joints = asked.joints.clone();
        let done = self.record_answer(person, "answered", asked, edits).await?;
        self.look_again(&joints).await;
        Ok(done)
    }

    /// Answers what somebody else has answered since it was seen: the same isn't entered again, and the journal has it all the same. None
    /// where nobody has.
    async fn answer_second(
        &self,
        person: &By<Inspector>,
        answered: &Answered,
        seen: i64,
    ) -> Result<Option<Done>, Trouble> {
        let since = self.store.changed_after(seen, LOOKED_THROUGH).await?;
        let mut facts = Vec::new();
        for (_, key) in since {
            if let Some(joint) = joint_of(&key, &answered.property)
                && !facts.iter().any(|(known, _)| *known == joint)
            {
                facts.push((joint, key));
            }
        }
        let Some((first, _)) = facts.first() else {
            return Ok(None);
        };
        let fact = self
            .fact_of(first, &answered.property, &answered.value, &answered.source)
            .await?;
        // What was said of another listing is no answer to this one.
        facts.retain(|(_, key)| key.part == fact.property);
        if facts.is_empty() {
            return Ok(None);
        }
        let keys: Vec<Key> = facts.iter().map(|(_, key)| key.clone()).collect();
        let held = self.store.records(&keys).await?;
        let mut conflicts = Vec::new();
        for key in keys {
            let known = held.get(&key).cloned();
            let says = known.clone().map(store::Held::<String>::read::<Known>);
            let same = matches!(says.transpose()?, Some(held) if is_same(&held.value, &fact.value));
            if !same {
                let mut since = self.store.history(&key).await?;
                since.retain(|entry| entry.seq > seen);
                conflicts.push(Conflict {
                    seen: self.version_seen(&key, seen).await?,
                    key,
                    now: known,
                    since,
                });
            }
        }
        if !conflicts.is_empty() {
            return Err(Trouble::Conflicts(conflicts));
        }
        let joints: Vec<String> = facts.into_iter().map(|(joint, _)| joint).collect();
        if mark_of(joints.iter().map(String::as_str)) != answered.joints {
            return Ok(None);
        }
        let asked = AnswerRecord {
            question: format!("What is this: {}?", property::title(&answered.property)),
            property: fact.property,
            joints,
            value: answered.value.clone(),
            source: answered.source.clone(),
        };
        self.record_answer(person, "answered as others have", asked, Vec::new())
            .await
            .map(Some)
    }

    /// Records an answer with the facts that it becomes.
    async fn record_answer(
        &self,
        person: &By<Inspector>,
        verb: &str,
        asked: AnswerRecord,
        mut edits: Vec<Edit>,
    ) -> Result<Done, Trouble> {
        let what = format!(
            "{verb} what the {} is at {}",
            without_listing(&asked.property),
            match asked.joints.as_slice() {
                [one] => one.clone(),
                several => format!("{} joints", several.len()),
            }
        );
        let next = self.store.head().await?.seq + 1;
        let about = without_listing(&asked.property);
        let key = Key::new(Kind::Answer, about, next.to_string());
        edits.push(Edit::put(key, 0, &asked)?);
        self.change(person, what, edits).await
    }
}

/// A fact as a person enters it of a joint that is to be built to a listing, if it is to be built to any.
fn fact_before(
    reading: Option<&Reading>,
    property: &str,
    value: &str,
    source: &str,
) -> Result<Fact, Trouble> {
    let plain = without_listing(property);
    let kinds = reading.map_or_else(Vec::new, |reading| kinds_of_answer(reading, plain));
    let fact = if kinds.is_empty() {
        entered(plain, value, source)?
    } else {
        entered_as(plain, &kinds, value, source)?
    };
    if !fact.is_of_one_listing() {
        return Ok(fact);
    }
    let Some(listing) = reading.map(goes_by) else {
        return Err(Trouble::Refused {
            message: format!("{plain} is a listing's own, and the joint has no listing"),
            help: "give its mark a listing first: what is said of one counts for no other"
                .to_owned(),
        });
    };
    if said_of(property).is_some_and(|said| !listing.is_meant(said)) {
        return Err(Trouble::Refused {
            message: format!("{property} is said of another listing than the joint's"),
            help: format!("write {plain} to say it of the joint's listing as it is now"),
        });
    }
    Ok(Fact {
        property: listing.saying(&fact.property),
        ..fact
    })
}

/// Whether a fact on a listing's own property is said of the document that it was asked of: all the joints of such a question are built to that.
fn must_be_said_of(fact: &Fact, document: Option<&str>) -> Result<(), Trouble> {
    let asked_of = GoesBy {
        sha256: document.unwrap_or_default(),
        ..GoesBy::default()
    };
    let is_it = |said| asked_of.is_meant(said);
    if !fact.is_of_one_listing() || fact.said_of().is_some_and(is_it) {
        return Ok(());
    }
    Err(Trouble::Refused {
        message: "the joints are built to another listing now than when this was asked".to_owned(),
        help: "look at the questions again, and answer what is asked of that one".to_owned(),
    })
}

/// The joint of a fact on a property, whichever listing it was said of.
fn joint_of(key: &Key, property: &str) -> Option<String> {
    if key.kind != Kind::Fact || without_listing(&key.part) != without_listing(property) {
        return None;
    }
    match key.name.parse() {
        Ok(Owner::Joint(joint)) => Some(joint),
        _ => None,
    }
}

/// Whether what is known is a value, in whatever units.
fn is_same(known: &Known, value: &Value) -> bool {
    match (known, value) {
        (Known::Fact(fact), Value::Quantity(said)) => match &fact.value {
            Value::Quantity(known) => known.compare(*said).is_some_and(core::cmp::Ordering::is_eq),
            _ => false,
        },
        (Known::Fact(fact), value) => fact.value == *value,
        (Known::NotKnown, _) => false,
    }
}

impl Answered {
    /// The question as it is asked now, with the answer.
    /// With the document that it is asked of alone, if it is.
    fn asked(&self, board: &Board) -> Result<(AnswerRecord, Option<String>), Trouble> {
        let asked = board.questions().get(&self.question);
        let about = asked.and_then(|asked| Some((asked, board.question(asked)?)));
        let Some((asked, question)) = about else {
            return Err(Trouble::Refused {
                message: "nobody asks this any more".to_owned(),
                help: "look at the questions again: it was answered meanwhile, or its joints are being checked".to_owned(),
            });
        };
        if asked.mark() != self.joints {
            return Err(Trouble::Refused {
                message: "this is asked of other joints now than when you saw it".to_owned(),
                help: "look at the question again, and answer it where it still holds".to_owned(),
            });
        }
        let document = asked.topic.document().map(str::to_owned);
        let record = AnswerRecord {
            question: question.sentence,
            property: question.property,
            joints: asked.joints().map(str::to_owned).collect(),
            value: self.value.clone(),
            source: self.source.clone(),
        };
        Ok((record, document))
    }
}
