//! What a person does at the desk. Each is one change of the store, and says which version the person saw.

use jiff::Zoned;
use listing::confirm::Entry;
use site::import::entered;
use site::{Decision, Judgment, Scope};
use store::project::judgment_key;
use store::records::{AnswerRecord, ConfirmationRecord, Known};
use store::{Conflict, Done, Edit, Key, Kind, Owner};

use crate::board::Board;
use crate::desk::Desk;
use crate::person::{By, Inspector, Reviewer};
use crate::trouble::Trouble;

/// What a person decides of a clause.
#[derive(Debug)]
pub(crate) struct Said {
    /// The clause's id.
    pub(crate) clause: String,
    /// What is decided.
    pub(crate) decision: Decision,
    /// On what ground.
    pub(crate) basis: String,
    /// Whether it is decided for every joint of the mark.
    pub(crate) whole_mark: bool,
}

impl Desk {
    /// Enters what is known of a property of a joint.
    ///
    /// # Errors
    /// When the joint, the value or its source isn't right; or somebody else was first.
    pub(crate) async fn enter(
        &self,
        person: &By<Inspector>,
        joint: &str,
        property: &str,
        value: &str,
        source: &str,
        seen: i64,
    ) -> Result<Done, Trouble> {
        self.must_be_joint(joint)?;
        let fact = entered(property, value, source)?;
        let key = Key::fact(&Owner::Joint(joint.to_owned()), &fact.property);
        let what = format!("entered {} of {joint}", fact.property);
        let edit = Edit::put(key, seen, &Known::Fact(Box::new(fact)))?;
        let done = self.change(person, what, vec![edit]).await?;
        self.look_again(&[joint.to_owned()]).await;
        Ok(done)
    }

    /// Confirms that clauses of a listing were read rightly; none of them may be confirmed yet.
    ///
    /// # Errors
    /// When there is no such listing or clause, or somebody else was first.
    pub(crate) async fn confirm(
        &self,
        person: &By<Reviewer>,
        file: &str,
        clauses: &[String],
    ) -> Result<Done, Trouble> {
        self.catch_up().await?;
        let unknown = || Trouble::Unknown(format!("There is no listing {file}."));
        let read = self
            .listings
            .read(&self.store, file)
            .await?
            .ok_or_else(unknown)?;
        let today = Zoned::now().date();
        let source = &read.unconfirmed.source;
        let mut edits = Vec::new();
        for id in clauses {
            let clause = read
                .unconfirmed
                .clauses
                .iter()
                .find(|clause| clause.id == *id)
                .ok_or_else(|| Trouble::Unknown(format!("{file} has no clause {id}.")))?;
            let record = ConfirmationRecord {
                source_sha256: source.sha256.clone(),
                source_name: source.name.clone(),
                entry: Entry::of(clause, &person.name, today, None),
            };
            edits.push(Edit::put(Key::confirmation(file, id), 0, &record)?);
        }
        let what = match clauses {
            [one] => format!("confirmed {one} of {file}"),
            several => format!("confirmed {} clauses of {file}", several.len()),
        };
        let done = self.change(person, what, edits).await?;
        Ok(done)
    }

    /// Records what a person decides of a clause at a joint, or at every joint of its mark. `seen` is as for an answer.
    ///
    /// # Errors
    /// When there is no such clause, no ground is given, or somebody else was first.
    pub(crate) async fn judge(
        &self,
        person: &By<Reviewer>,
        joint: &str,
        said: Said,
        seen: i64,
    ) -> Result<Done, Trouble> {
        let there = self.look(joint).await?;
        let finding = there
            .result
            .as_ref()
            .and_then(|result| result.finding(&said.clause))
            .ok_or_else(|| Trouble::Unknown(format!("{joint} has no clause {}.", said.clause)))?;
        if said.basis.trim().is_empty() {
            return Err(Trouble::Refused {
                message: "nothing says on what ground".to_owned(),
                help: "write on what the decision rests: what was seen, a drawing, a letter"
                    .to_owned(),
            });
        }
        let about = &finding.explanation;
        // The head's own checks have no words, and go by their names.
        let item = if about.words.trim().is_empty() {
            &about.clause
        } else {
            &about.item
        };
        let file = there
            .listing
            .as_ref()
            .map(|read| read.file.as_str())
            .unwrap_or_default();
        let mark = there.joint.mark.clone();
        let judgment = Judgment {
            scope: if said.whole_mark {
                Scope::Mark(mark)
            } else {
                Scope::Joint(joint.to_owned())
            },
            listing: Some(
                file.rsplit_once('.')
                    .map_or(file, |(stem, _)| stem)
                    .to_owned(),
            ),
            item: item.clone(),
            words: about.words.split_whitespace().collect::<Vec<_>>().join(" "),
            decision: said.decision,
            by: person.name.clone(),
            when: Zoned::now().date(),
            basis: said.basis.trim().to_owned(),
        };
        let key = judgment_key(&judgment, 0)?;
        let version = self.version_seen(&key, seen).await?;
        let other = self
            .must_not_be_judged_since(&judgment, joint, seen)
            .await?;
        let verb = match said.decision {
            Decision::Accepted => "accepted",
            Decision::Rejected => "rejected",
        };
        let of = match &judgment.scope {
            Scope::Joint(name) | Scope::Mark(name) => name.clone(),
        };
        let what = format!("{verb} {} at {of}", said.clause);
        let done = self
            .change_relying_on(
                person,
                what,
                vec![Edit::put(key, version, &judgment)?],
                other.as_slice(),
            )
            .await?;
        Ok(done)
    }

    /// Answers a question: the answer becomes a fact of each joint that it concerns. `seen` is the number of the last entry of the journal
    /// when the question was asked: what was entered since isn't overwritten.
    ///
    /// # Errors
    /// When nobody asks this any more, or asks it of other joints than were seen; when the answer or its source isn't right; or when
    /// somebody else was first.
    pub(crate) async fn answer(
        &self,
        person: &By<Inspector>,
        answered: Answered,
        seen: i64,
    ) -> Result<Done, Trouble> {
        self.catch_up().await?;
        let asked = self.board(|board| answered.asked(board))?;
        let fact = entered(&asked.property, &asked.value, &asked.source)?;
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
        let what = format!(
            "answered what the {} is at {}",
            asked.property,
            match asked.joints.as_slice() {
                [one] => one.clone(),
                several => format!("{} joints", several.len()),
            }
        );
        let next = self.store.head().await?.seq + 1;
        let key = Key::new(Kind::Answer, asked.property.as_str(), next.to_string());
        edits.push(Edit::put(key, 0, &asked)?);
        let done = self.change(person, what, edits).await?;
        self.look_again(&asked.joints).await;
        Ok(done)
    }

    /// The version of a record that somebody has seen who has seen the journal up to an entry; 0 where there was none.
    async fn version_seen(&self, key: &Key, seen: i64) -> Result<i64, Trouble> {
        let history = self.store.history(key).await?;
        let until = history.iter().take_while(|entry| entry.seq <= seen);
        Ok(until.last().map_or(0, |entry| entry.version))
    }

    /// Whether nobody has judged the clause meanwhile for the joint alone, where this is of the whole mark; or the other way about. Gives the
    /// record of that judgment, there or not, with the version on which this rests.
    async fn must_not_be_judged_since(
        &self,
        judgment: &Judgment,
        joint: &str,
        seen: i64,
    ) -> Result<Option<(Key, i64)>, Trouble> {
        let scope = match &judgment.scope {
            Scope::Mark(_) => Scope::Joint(joint.to_owned()),
            Scope::Joint(_) => match self.project().joint(joint) {
                Some(joint) => Scope::Mark(joint.mark.clone()),
                None => return Ok(None),
            },
        };
        let other = Judgment {
            scope,
            ..judgment.clone()
        };
        let key = judgment_key(&other, 0)?;
        let mut since = self.store.history(&key).await?;
        let version = since.iter().take_while(|entry| entry.seq <= seen).last();
        let version = version.map_or(0, |entry| entry.version);
        since.retain(|entry| entry.seq > seen);
        if since.is_empty() {
            return Ok(Some((key, version)));
        }
        Err(Trouble::Conflicts(vec![Conflict {
            seen: version,
            key,
            now: None,
            since,
        }]))
    }

    fn must_be_joint(&self, name: &str) -> Result<(), Trouble> {
        self.board(|board| match board.row(name) {
            Some(_) => Ok(()),
            None => Err(Trouble::Unknown(format!(
                "There is no joint {name} in the schedule."
            ))),
        })
    }
}

/// What a person answers.
#[derive(Debug)]
pub(crate) struct Answered {
    /// The question's id.
    pub(crate) question: String,
    /// What tells the joints that the person saw it asked of from others.
    pub(crate) joints: String,
    /// The answer.
    pub(crate) value: String,
    /// Where it comes from.
    pub(crate) source: String,
}

impl Answered {
    /// The question as it is asked now, with the answer.
    fn asked(self, board: &Board) -> Result<AnswerRecord, Trouble> {
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
        Ok(AnswerRecord {
            question: question.sentence,
            property: question.property,
            joints: asked.joints().map(str::to_owned).collect(),
            value: self.value,
            source: self.source,
        })
    }
}
