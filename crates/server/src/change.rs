//! What a person does at the desk: a fact, a judgment. Each is one change of the store, and says which version the person saw.

use conformance::goes_by;
use jiff::Zoned;
use site::{Decision, Judgment, Scope};
use store::project::judgment_key;
use store::records::{Known, ListingRecord};
use store::{Conflict, Done, Edit, Key, Kind, Owner};

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
        let fact = self.fact_of(joint, property, value, source).await?;
        let key = Key::fact(&Owner::Joint(joint.to_owned()), &fact.property);
        let what = format!("entered {} of {joint}", fact.property);
        let edit = Edit::put(key, seen, &Known::Fact(Box::new(fact)))?;
        let done = self.change(person, what, vec![edit]).await?;
        self.look_again(&[joint.to_owned()]).await;
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
        let file = there
            .listing
            .as_ref()
            .map(|read| read.file.as_str())
            .unwrap_or_default();
        self.must_be_the_same_document(file, seen).await?;
        let about = &finding.explanation;
        // The head's own checks have no words, and go by their names.
        let item = if about.words.trim().is_empty() {
            &about.clause
        } else {
            &about.item
        };
        let mark = there.joint.mark.clone();
        let read = there.listing.as_ref();
        let listing = read.map(|read| goes_by(&read.unconfirmed).as_said());
        let judgment = Judgment {
            scope: if said.whole_mark {
                Scope::Mark(mark)
            } else {
                Scope::Joint(joint.to_owned())
            },
            listing,
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

    /// The version of a record that somebody has seen who has seen the journal up to an entry; 0 where there was none.
    pub(crate) async fn version_seen(&self, key: &Key, seen: i64) -> Result<i64, Trouble> {
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

    /// Whether a listing's file holds the document that it held when somebody saw the journal up to an entry: a clause's number may be another
    /// clause's in another edition.
    async fn must_be_the_same_document(&self, file: &str, seen: i64) -> Result<(), Trouble> {
        let key = Key::new(Kind::Listing, file, "");
        let held = self.store.get::<ListingRecord>(&key).await?;
        if held.is_none_or(|held| held.seq <= seen) {
            return Ok(());
        }
        Err(Trouble::Refused {
            message: format!("{file} is another document now than the one you saw"),
            help: "read the clause again, and judge it as it stands now".to_owned(),
        })
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
