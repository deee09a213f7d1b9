//! What a person says is right of a clause that was read wrongly: shown first, then recorded.

use jiff::Zoned;
use listing::Clause;
use listing::confirm::{Correction, Entry, Overlay, confirm, read_as};
use store::{Done, Edit};

use crate::confirming::Confirmed;
use crate::desk::Desk;
use crate::listings::Read;
use crate::person::{By, Reviewer};
use crate::trouble::Trouble;

/// What is done to a clause.
#[derive(Debug, Clone)]
pub(crate) enum Righted {
    /// It is read otherwise.
    Corrected(Correction),
    /// Its words ask for something besides.
    Further(Correction),
    /// What was confirmed or corrected of it is taken back: it is as the reader left it.
    TakenBack,
}

/// A clause as a person may correct it.
#[derive(Debug)]
pub(crate) struct AtHand<'r> {
    /// As the reader left it.
    pub(crate) read: &'r Clause,
    /// What people have recorded of it, and the version; 0 and nothing where nobody has.
    pub(crate) entry: Option<Entry>,
    /// The version that was seen.
    pub(crate) version: i64,
    /// All that people have confirmed of the listing.
    confirmed: Confirmed<'r>,
}

impl AtHand<'_> {
    /// The clause as it would stand, and what was found in its words besides.
    pub(crate) fn after(&self, read: &Read, righted: &Righted, by: &str) -> Vec<Clause> {
        let entries: Vec<Entry> = self.entry_after(righted, by).into_iter().collect();
        clauses(read, entries, &self.read.id)
    }

    /// The clause as it stands.
    pub(crate) fn now(&self, read: &Read) -> Vec<Clause> {
        clauses(
            read,
            self.entry.clone().into_iter().collect(),
            &self.read.id,
        )
    }

    fn entry_after(&self, righted: &Righted, by: &str) -> Option<Entry> {
        let fresh = || Entry::of(self.read, by, Zoned::now().date(), None);
        let before = self.entry.as_ref();
        match righted {
            Righted::Corrected(correction) => Some(Entry {
                correction: Some(correction.clone()),
                further: before
                    .map(|entry| entry.further.clone())
                    .unwrap_or_default(),
                ..fresh()
            }),
            Righted::Further(correction) => {
                let mut entry = Entry {
                    correction: before.and_then(|entry| entry.correction.clone()),
                    further: before
                        .map(|entry| entry.further.clone())
                        .unwrap_or_default(),
                    ..fresh()
                };
                entry.further.push(correction.clone());
                Some(entry)
            }
            Righted::TakenBack => None,
        }
    }
}

/// A clause and those found in its words, with what people recorded laid over the reading.
fn clauses(read: &Read, entries: Vec<Entry>, id: &str) -> Vec<Clause> {
    let overlay = Overlay {
        source_sha256: read.unconfirmed.source.sha256.clone(),
        source_name: read.unconfirmed.source.name.clone(),
        entries,
    };
    let overlaid = confirm(read.unconfirmed.clone(), &overlay).reading.clauses;
    overlaid
        .into_iter()
        .filter(|clause| read_as(&clause.id) == id)
        .collect()
}

impl Desk {
    /// A clause with what people have recorded of it.
    ///
    /// # Errors
    /// When the listing has no such clause, or the store can't be read.
    pub(crate) async fn at_hand<'r>(
        &self,
        read: &'r Read,
        id: &str,
    ) -> Result<AtHand<'r>, Trouble> {
        let id = read_as(id);
        let mut clauses = read.unconfirmed.clauses.iter();
        let clause = clauses
            .find(|clause| clause.id == id)
            .ok_or_else(|| Trouble::Unknown(format!("{} has no clause {id}.", read.file)))?;
        let confirmed = self.confirmed(read).await?;
        let entry = confirmed.on(id).map(|on| on.held.value.entry.clone());
        Ok(AtHand {
            read: clause,
            version: confirmed.version(id),
            entry,
            confirmed,
        })
    }

    /// Records what is right of a clause. `seen` is the version of what was recorded of it when the person looked.
    ///
    /// # Errors
    /// When somebody else was first, or there is nothing to take back.
    pub(crate) async fn correct(
        &self,
        person: &By<Reviewer>,
        read: &Read,
        at_hand: &AtHand<'_>,
        righted: &Righted,
        seen: i64,
    ) -> Result<Done, Trouble> {
        let id = &at_hand.read.id;
        let edits = match at_hand.entry_after(righted, &person.name) {
            Some(entry) => at_hand.confirmed.put(at_hand.read, entry, seen)?,
            None => match at_hand.confirmed.on(id) {
                Some(on) => vec![Edit::remove(on.held.key.clone(), seen)],
                None => {
                    return Err(Trouble::Refused {
                        message: format!("nobody has confirmed or corrected {id}"),
                        help: "there is nothing to take back".to_owned(),
                    });
                }
            },
        };
        let verb = match righted {
            Righted::Corrected(_) => "corrected",
            Righted::Further(_) => "found something more in the words of",
            Righted::TakenBack => "took back what was confirmed of",
        };
        let what = format!("{verb} {id} of {}", read.file);
        self.change(person, what, edits).await
    }
}
