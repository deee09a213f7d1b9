//! People: who there is, what each may do, and how they show who they are.
//!
//! Who there is and who is invited are records, so that every change of them stands in the journal and goes out with an archive. Passwords
//! (as hashes), sessions (by the hash of their token) and visits stand beside them, never in the journal: a restored project has its
//! people, and each needs a new invitation.

mod name;
mod record;
mod role;
mod visit;

use jiff::Timestamp;

use crate::change::{Change, Done};
use crate::database::Beside;
use crate::error::StoreError;
use crate::journal::{Entry, Made};
use crate::key::{Key, Kind};
use crate::records::Held;
use crate::store::Store;

pub use name::{MOST_IN_NAME, folded, key_of, looks_like, proper};
pub use record::{InvitationRecord, PersonRecord};
pub use role::Role;
pub use visit::{Event, Visit};

/// How long visits are kept, in days.
pub const DAYS_OF_VISITS: i64 = 400;

/// A session as it is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Session {
    /// Whose.
    pub person: Held<PersonRecord>,
    /// When it began.
    pub began: Timestamp,
    /// When it was last used.
    pub used: Timestamp,
}

impl Store {
    /// Everybody, in the order they came; those who may not sign in any more too.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn people(&self) -> Result<Vec<Held<PersonRecord>>, StoreError> {
        self.all(Kind::Person).await
    }

    /// The invitations that nobody has taken up, in the order they were made; those that have run out too.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn invitations(&self) -> Result<Vec<Held<InvitationRecord>>, StoreError> {
        self.all(Kind::Invitation).await
    }

    async fn all<T: crate::Record>(&self, kind: Kind) -> Result<Vec<Held<T>>, StoreError> {
        let mut all = Vec::new();
        self.each(&[kind], |held| {
            all.push(held.read()?);
            Ok(())
        })
        .await?;
        Ok(all)
    }

    /// Who goes by a name, however it is spaced and whatever its capitals.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn person(&self, name: &str) -> Result<Option<Held<PersonRecord>>, StoreError> {
        self.get(&key_of(name)).await
    }

    /// A person's password as its hash, in the form of the PHC string; none where none was set here.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn password(&self, person: &Key) -> Result<Option<String>, StoreError> {
        self.database.password(&person.name).await
    }

    /// Makes a change, and with it, or not at all, ends every session of a person; with a `password`, as its hash, sets that. `relied_on` is as
    /// for [`change_relying_on`](Self::change_relying_on).
    ///
    /// # Errors
    /// As [`change_relying_on`](Self::change_relying_on).
    pub async fn change_of_person(
        &self,
        change: &Change,
        person: &Key,
        password: Option<&str>,
        relied_on: &[(Key, i64)],
    ) -> Result<Done, StoreError> {
        let person = person.name.as_str();
        let mut beside = vec![Beside::EndSessions { person }];
        beside.extend(password.map(|hash| Beside::SetPassword { person, hash }));
        self.database.change(change, &beside, relied_on).await
    }

    /// Begins a session under the hash of its token, and forgets those that began before `forget`. `password` is the hash that the person's
    /// was found to have: where it has another by now, none is begun. Whether one was.
    ///
    /// # Errors
    /// When the database can't be written.
    pub async fn begin_session(
        &self,
        hash: &str,
        person: &Key,
        password: &str,
        at: Timestamp,
        forget: Timestamp,
    ) -> Result<bool, StoreError> {
        let (at, forget) = (at.as_second(), forget.as_second());
        self.database
            .begin_session(hash, (&person.name, password), at, forget)
            .await
    }

    /// The session whose token has a hash, if it wasn't ended and its person is still there.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn session(&self, hash: &str) -> Result<Option<Session>, StoreError> {
        let Some((person, began, used)) = self.database.session(hash).await? else {
            return Ok(None);
        };
        let moment = |second| {
            Timestamp::from_second(second)
                .map_err(|error| StoreError::Value(format!("a session has no time: {error}")))
        };
        let (began, used) = (moment(began)?, moment(used)?);
        let person = self.get(&Key::new(Kind::Person, person, "")).await?;
        Ok(person.map(|person| Session {
            person,
            began,
            used,
        }))
    }

    /// Notes that a session was used.
    ///
    /// # Errors
    /// When the database can't be written.
    pub async fn use_session(&self, hash: &str, at: Timestamp) -> Result<(), StoreError> {
        self.database.use_session(hash, at.as_second()).await
    }

    /// Ends a session; its token leads nowhere from now on.
    ///
    /// # Errors
    /// When the database can't be written.
    pub async fn end_session(&self, hash: &str) -> Result<(), StoreError> {
        self.database.end_session(hash).await
    }

    /// Ends every session of a person.
    ///
    /// # Errors
    /// When the database can't be written.
    pub async fn end_sessions_of(&self, person: &Key) -> Result<(), StoreError> {
        self.database.end_sessions_of(&person.name).await
    }

    /// Notes a visit, and forgets those of more than [`DAYS_OF_VISITS`] before it.
    ///
    /// # Errors
    /// When the database can't be written.
    pub async fn note(&self, visit: &Visit) -> Result<(), StoreError> {
        self.database.note(visit).await
    }

    /// The visits until a moment, the latest first, at most so many.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn visits(&self, until: Timestamp, most: i64) -> Result<Vec<Visit>, StoreError> {
        self.database.visits(until.as_millisecond(), most).await
    }

    /// The last entries of the journal on records of some kinds, the latest first, at most so many.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn entries_of_kinds(
        &self,
        kinds: &[Kind],
        most: i64,
    ) -> Result<Vec<Entry>, StoreError> {
        self.database.entries_of_kinds(kinds, most).await
    }

    /// What somebody changed before an entry of the journal, the latest first, at most so many changes.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn changes_by(
        &self,
        by: &str,
        seq: i64,
        most: usize,
    ) -> Result<Vec<Made>, StoreError> {
        let mut made = Vec::new();
        let mut before = seq;
        while made.len() < most {
            // The entries of a change follow one another, and name the first.
            let Some(last) = self.database.last_entry_by(by, before).await? else {
                break;
            };
            before = last.change;
            let records = last.seq - last.change + 1;
            let first = self.entries_before(before + 1, 1).await?.pop();
            made.extend(first.map(|first| Made { first, records }));
        }
        Ok(made)
    }
}
