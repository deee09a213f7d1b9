//! Confirming that clauses were read rightly, and what becomes of that when another document comes under the same name.
//!
//! A confirmation is kept under the number that its clause had, and stands for the clause that has its words. In another edition that may be
//! a clause of another number, or none; so what is kept under a clause's number needn't be about that clause.

use std::collections::BTreeSet;

use jiff::Zoned;
use listing::Clause;
use listing::confirm::{Entry, stands_for};
use store::records::{ConfirmationRecord, Held};
use store::{Done, Edit, Key};

use crate::desk::Desk;
use crate::listings::Read;
use crate::person::{By, Reviewer};
use crate::trouble::Trouble;

/// What people have confirmed of a listing's file.
#[derive(Debug)]
pub(crate) struct Confirmed<'r> {
    /// The listing as read.
    pub(crate) read: &'r Read,
    records: Vec<Stands>,
}

/// A confirmation, and the clause that it stands for now.
#[derive(Debug)]
pub(crate) struct Stands {
    /// As it is kept.
    pub(crate) held: Held<ConfirmationRecord>,
    /// The clause's id; none where it stands for no clause any more.
    pub(crate) clause: Option<String>,
}

impl Confirmed<'_> {
    /// What stands for a clause.
    pub(crate) fn on(&self, clause: &str) -> Option<&Stands> {
        let mut records = self.records.iter();
        records.find(|one| one.clause.as_deref() == Some(clause))
    }

    /// What is kept under a clause's number.
    fn under(&self, id: &str) -> Option<&Stands> {
        self.records.iter().find(|one| one.held.key.part == id)
    }

    /// Those that stand for no clause any more.
    pub(crate) fn lost(&self) -> impl Iterator<Item = &Stands> {
        self.records.iter().filter(|one| one.clause.is_none())
    }

    /// The version to name who changes what stands for a clause; 0 where nothing does, and nothing is kept under its number.
    pub(crate) fn version(&self, clause: &str) -> i64 {
        let of = self.on(clause).or_else(|| self.under(clause));
        of.map_or(0, |one| one.held.version)
    }

    /// Changes that keep an entry on a clause. What is kept under its number and stands for another clause goes under that one's.
    pub(crate) fn put(
        &self,
        clause: &Clause,
        entry: Entry,
        seen: i64,
    ) -> Result<Vec<Edit>, Trouble> {
        let source = &self.read.unconfirmed.source;
        let record = ConfirmationRecord {
            source_sha256: source.sha256.clone(),
            source_name: source.name.clone(),
            entry,
        };
        let kept = |id: &str| self.under(id).map_or(0, |under| under.held.version);
        // What stands for the clause so far, where it is kept under another number.
        let on = self.on(&clause.id).map(|on| on.held.key.part.as_str());
        let from = on.filter(|from| *from != clause.id);
        let mut edits = Vec::new();
        let mut done = BTreeSet::new();
        let mut next = Some((clause.id.as_str(), record));
        while let Some((id, record)) = next.take() {
            if !done.insert(id) {
                break;
            }
            let is_seen = from.unwrap_or(&clause.id) == id;
            let version = if is_seen { seen } else { kept(id) };
            edits.push(Edit::put(
                Key::confirmation(&self.read.file, id),
                version,
                &record,
            )?);
            let under = self.under(id);
            next = under.and_then(|under| {
                let elsewhere = under.clause.as_deref().filter(|clause| *clause != id)?;
                let mut record = under.held.value.clone();
                elsewhere.clone_into(&mut record.entry.clause);
                Some((elsewhere, record))
            });
        }
        if let Some(from) = from.filter(|from| !done.contains(from)) {
            edits.push(Edit::remove(Key::confirmation(&self.read.file, from), seen));
        }
        Ok(edits)
    }
}

impl Desk {
    /// What people have confirmed of a listing, and what that stands for.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn confirmed<'r>(&self, read: &'r Read) -> Result<Confirmed<'r>, Trouble> {
        let held: Vec<Held<ConfirmationRecord>> = self.store.get_all(&read.file).await?;
        let stands = |held: Held<ConfirmationRecord>| {
            let clause = stands_for(&read.unconfirmed, &held.value.entry).ok();
            Stands {
                clause: clause.map(|clause| clause.id.clone()),
                held,
            }
        };
        Ok(Confirmed {
            read,
            records: held.into_iter().map(stands).collect(),
        })
    }

    /// A listing as read, if it is the document that a person has seen: what was read of that isn't said of another.
    ///
    /// # Errors
    /// When there is no such listing, or its document is another.
    pub(crate) async fn read_as_seen(
        &self,
        file: &str,
        document: &str,
    ) -> Result<std::sync::Arc<Read>, Trouble> {
        self.catch_up().await?;
        let read = self.listings.read(&self.store, file).await?;
        let read = read.ok_or_else(|| Trouble::Unknown(format!("There is no listing {file}.")))?;
        if read.unconfirmed.source.sha256 == document {
            return Ok(read);
        }
        Err(Trouble::Refused {
            message: format!("{file} is another document now than the one you saw"),
            help:
                "read its clauses again; what you said was of the other, and nothing was recorded"
                    .to_owned(),
        })
    }

    /// Confirms that clauses of a listing were read rightly, in the document that the person saw; none of them may be confirmed yet.
    ///
    /// # Errors
    /// When there is no such listing or clause, the document is another, or somebody else was first.
    pub(crate) async fn confirm(
        &self,
        person: &By<Reviewer>,
        file: &str,
        document: &str,
        clauses: &[String],
    ) -> Result<Done, Trouble> {
        let read = self.read_as_seen(file, document).await?;
        let confirmed = self.confirmed(&read).await?;
        let today = Zoned::now().date();
        let mut edits: Vec<Edit> = Vec::new();
        for id in clauses {
            let clause = read
                .unconfirmed
                .clauses
                .iter()
                .find(|clause| clause.id == *id)
                .ok_or_else(|| Trouble::Unknown(format!("{file} has no clause {id}.")))?;
            let entry = Entry::of(clause, &person.name, today, None);
            if confirmed.on(id).is_some_and(|on| on.held.key.part != *id) {
                return Err(Trouble::Refused {
                    message: format!("{id} is confirmed already"),
                    help: "load the page again to see by whom".to_owned(),
                });
            }
            // Where it is confirmed already, nobody has seen that it is.
            let seen = match confirmed.on(id) {
                Some(_) => 0,
                None => confirmed.version(id),
            };
            for edit in confirmed.put(clause, entry, seen)? {
                if !edits.iter().any(|known| known.key == edit.key) {
                    edits.push(edit);
                }
            }
        }
        let what = match clauses {
            [one] => format!("confirmed {one} of {file}"),
            several => format!("confirmed {} clauses of {file}", several.len()),
        };
        self.change(person, what, edits).await
    }

    /// Lets confirmations go that stand for no clause any more, each with the version that the person saw. The journal keeps them.
    ///
    /// # Errors
    /// When one of them stands after all, or somebody else was first.
    pub(crate) async fn let_go(
        &self,
        person: &By<Reviewer>,
        file: &str,
        document: &str,
        gone: &[(String, i64)],
    ) -> Result<Done, Trouble> {
        let read = self.read_as_seen(file, document).await?;
        let confirmed = self.confirmed(&read).await?;
        let lost: BTreeSet<&str> = confirmed
            .lost()
            .map(|one| one.held.key.part.as_str())
            .collect();
        let mut edits = Vec::new();
        for (id, seen) in gone {
            if !lost.contains(id.as_str()) {
                return Err(Trouble::Refused {
                    message: format!(
                        "what was confirmed under {id} isn't among those that no longer stand"
                    ),
                    help: "look at them again".to_owned(),
                });
            }
            edits.push(Edit::remove(Key::confirmation(file, id), *seen));
        }
        if edits.is_empty() {
            return Err(Trouble::Refused {
                message: "there is nothing to let go".to_owned(),
                help: "every confirmation stands".to_owned(),
            });
        }
        let what = format!(
            "let {} confirmations of {file} go, whose words it doesn't have any more",
            edits.len()
        );
        self.change(person, what, edits).await
    }
}
