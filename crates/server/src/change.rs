//! What a person does at the desk. Each is one change of the store, and says which version the person saw.

use jiff::Zoned;
use listing::confirm::Entry;
use site::import::entered;
use store::records::{AnswerRecord, ConfirmationRecord, Known};
use store::{Done, Edit, Key, Kind, Owner};

use crate::desk::Desk;
use crate::trouble::Trouble;

impl Desk {
    /// Enters what is known of a property of a joint.
    ///
    /// # Errors
    /// When the joint, the value or its source isn't right; or somebody else was first.
    pub(crate) async fn enter(
        &self,
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
        let done = self.change(what, vec![edit]).await?;
        self.look_again(joint).await?;
        Ok(done)
    }

    /// Confirms that clauses of a listing were read rightly; none of them may be confirmed yet.
    ///
    /// # Errors
    /// When there is no such listing or clause, or somebody else was first.
    pub(crate) async fn confirm(&self, file: &str, clauses: &[String]) -> Result<Done, Trouble> {
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
                entry: Entry::of(clause, &self.by, today, None),
            };
            edits.push(Edit::put(Key::confirmation(file, id), 0, &record)?);
        }
        let what = match clauses {
            [one] => format!("confirmed {one} of {file}"),
            several => format!("confirmed {} clauses of {file}", several.len()),
        };
        let done = self.change(what, edits).await?;
        self.listings.forget(file);
        let project = self.project();
        let is_built_to = |joint: &site::Joint| {
            let name = project.listing(joint);
            name.and_then(|name| self.listings.which(name)).as_deref() == Some(file)
        };
        self.refresh(is_built_to).await?;
        Ok(done)
    }

    /// Answers a question: the answer becomes a fact of each joint. `seen` is the number of the last entry of the journal when the
    /// question was asked: what was entered since isn't overwritten.
    ///
    /// # Errors
    /// When the answer or its source isn't right, or somebody else was first.
    pub(crate) async fn answer(&self, asked: AnswerRecord, seen: i64) -> Result<Done, Trouble> {
        let fact = entered(&asked.property, &asked.value, &asked.source)?;
        let mut edits = Vec::new();
        for joint in &asked.joints {
            self.must_be_joint(joint)?;
            let key = Key::fact(&Owner::Joint(joint.clone()), &fact.property);
            let held = self.store.get::<Known>(&key).await?;
            let version = held.map_or(0, |held| held.version - i64::from(held.seq > seen));
            edits.push(Edit::put(
                key,
                version,
                &Known::Fact(Box::new(fact.clone())),
            )?);
        }
        let what = format!(
            "answered what the {} is at {}",
            asked.property,
            match asked.joints.as_slice() {
                [one] => one.clone(),
                several => format!("{} joints", several.len()),
            }
        );
        let head = self.store.head().await?;
        let key = Key::new(
            Kind::Answer,
            asked.property.as_str(),
            (head.seq + 1).to_string(),
        );
        edits.push(Edit::put(key, 0, &asked)?);
        let done = self.change(what, edits).await?;
        for joint in &asked.joints {
            self.look_again(joint).await?;
        }
        Ok(done)
    }

    fn must_be_joint(&self, name: &str) -> Result<(), Trouble> {
        match self.project().joint(name) {
            Some(_) => Ok(()),
            None => Err(Trouble::Unknown(format!(
                "There is no joint {name} in the schedule."
            ))),
        }
    }
}
