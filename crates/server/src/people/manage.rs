//! Invitations, roles, and who may come in at all. Each is one change of the store, and stands in the journal.

use axum::http::HeaderValue;
use jiff::{SignedDuration, Timestamp};
use store::people::{InvitationRecord, PersonRecord, Role, folded, looks_like, proper};
use store::{Change, Edit, Held, Key, Store};

use super::tokens::{fresh, hashed, may_be};
use super::{SignedIn, Team, passwords};
use crate::person::{Administrator, By};
use crate::trouble::Trouble;

/// How long an invitation holds.
const HOLDS: SignedDuration = SignedDuration::from_hours(72);

/// An invitation that was made.
#[derive(Debug)]
pub struct Invited {
    /// The path that whoever is invited opens. It isn't kept anywhere, and leads in once.
    pub path: String,
    /// When it runs out.
    pub until: Timestamp,
}

/// Invites somebody to a role; or, when `again`, somebody who is there already to set another password.
///
/// # Errors
/// When nobody is named, there is no such person, or the store can't be written.
pub async fn invite(
    store: &Store,
    by: &str,
    whom: &str,
    role: Role,
    again: bool,
) -> Result<Invited, Trouble> {
    let whom = proper(whom)?;
    let there = store.person(&whom).await?;
    let (whom, role) = match (&there, again) {
        (Some(person), true) => (person.value.name.clone(), person.value.role),
        (None, true) => return Err(Trouble::Unknown(format!("There is nobody named {whom}."))),
        (Some(person), false) => {
            return Err(Trouble::Refused {
                message: format!(
                    "{} is there already, as {}",
                    person.value.name, person.value.role
                ),
                help: "give them another role, or a link to set another password".to_owned(),
            });
        }
        (None, false) => (whom, role),
    };
    let token = fresh()?;
    let now = Timestamp::now();
    let until = now.saturating_add(HOLDS).unwrap_or(now);
    let what = if again {
        format!("let {whom} set another password")
    } else {
        format!("invited {whom} as {role}")
    };
    let invitation = InvitationRecord {
        whom,
        role,
        until,
        again,
    };
    let key = InvitationRecord::key(&hashed(&token));
    let edits = vec![Edit::put(key, 0, &invitation)?];
    let change = Change {
        by: by.trim().to_owned(),
        at: now,
        what,
        edits,
    };
    store.change(&change).await?;
    Ok(Invited {
        path: format!("/invitations/{token}"),
        until,
    })
}

/// Nobody comes in under a name that people would take for somebody else's in the journal.
async fn must_look_like_nobody(store: &Store, name: &str) -> Result<(), Trouble> {
    let people = store.people().await?;
    let mut names = people.iter().map(|held| &held.value.name);
    match names.find(|other| looks_like(name, other)) {
        None => Ok(()),
        Some(other) => Err(Trouble::Refused {
            message: format!("the name looks like {other}, and isn't the same"),
            help: "write it in letters of one script, or add an initial".to_owned(),
        }),
    }
}

impl Team {
    /// The invitation whose token this is, while it holds.
    ///
    /// # Errors
    /// When there is none, or it has run out.
    pub(crate) async fn invitation(&self, token: &str) -> Result<Held<InvitationRecord>, Trouble> {
        let gone = || {
            Trouble::Unknown(
                "This invitation was taken up, was withdrawn or has run out. Ask whoever gave it to you for another."
                    .to_owned(),
            )
        };
        if !may_be(token) {
            return Err(gone());
        }
        let key = InvitationRecord::key(&hashed(token));
        let held = self.store.get::<InvitationRecord>(&key).await?;
        held.filter(|held| Timestamp::now() < held.value.until)
            .ok_or_else(gone)
    }

    /// Takes an invitation up: makes the person, or sets their password anew, and signs them in.
    ///
    /// # Errors
    /// When the invitation doesn't hold, or the name or the password can't be one.
    pub(crate) async fn take_up(
        &self,
        token: &str,
        name: &str,
        password: &str,
        repeated: &str,
    ) -> Result<HeaderValue, Trouble> {
        let held = self.invitation(token).await?;
        let invitation = &held.value;
        let name = if invitation.again {
            invitation.whom.clone()
        } else {
            proper(name)?
        };
        passwords::may_be(password, repeated, &name)?;
        let there = self.store.person(&name).await?;
        if there.is_some() != invitation.again {
            return Err(Trouble::Refused {
                message: format!("the name {name} is taken"),
                help: "add an initial, or your firm in parentheses".to_owned(),
            });
        }
        if there.is_none() {
            must_look_like_nobody(&self.store, &name).await?;
        }
        let hash = self.passwords.hash(password).await?;
        let now = Timestamp::now();
        let version = there.as_ref().map_or(0, |there| there.version);
        let what = match &there {
            Some(_) => "set another password by an invitation".to_owned(),
            None => format!("took up the invitation as {}", invitation.role),
        };
        let mut edits = self.other_links(&name, Some(&held.key)).await?;
        let before = there.map(|there| there.value);
        let person = PersonRecord {
            password_set: now,
            ..before.unwrap_or(PersonRecord {
                name,
                role: invitation.role,
                may_sign_in: true,
                password_set: now,
            })
        };
        let key = person.key();
        edits.push(Edit::put(key.clone(), version, &person)?);
        edits.push(Edit::remove(held.key.clone(), held.version));
        let change = Change {
            by: person.name.clone(),
            at: now,
            what,
            edits,
        };
        self.store
            .change_of_person(&change, &key, Some(&hash), &[])
            .await?;
        self.first_session(&key, &hash).await
    }

    /// The session of somebody who has just set a password.
    async fn first_session(&self, person: &Key, password: &str) -> Result<HeaderValue, Trouble> {
        let cookie = self.begin(person, password).await?;
        cookie.ok_or_else(|| Trouble::Refused {
            message: "another password was set at the same moment".to_owned(),
            help: "sign in with the one that holds now".to_owned(),
        })
    }

    /// Withdraws the links by which a person could set another password, but for one: who has just set one, or is shut out, needs none, and
    /// whoever else has such a link mustn't use it.
    async fn other_links(&self, name: &str, but: Option<&Key>) -> Result<Vec<Edit>, Trouble> {
        let invitations = self.store.invitations().await?;
        let theirs = invitations.into_iter().filter(|held| {
            held.value.again && folded(&held.value.whom) == folded(name) && Some(&held.key) != but
        });
        Ok(theirs
            .map(|held| Edit::remove(held.key, held.version))
            .collect())
    }

    /// Sets another password for whoever asks, ends all their sessions, and begins one.
    ///
    /// # Errors
    /// When the password can't be one.
    pub(crate) async fn set_password(
        &self,
        who: &SignedIn,
        password: &str,
        repeated: &str,
    ) -> Result<HeaderValue, Trouble> {
        let person = &who.person.value;
        passwords::may_be(password, repeated, &person.name)?;
        let hash = self.passwords.hash(password).await?;
        let now = Timestamp::now();
        let after = PersonRecord {
            password_set: now,
            ..person.clone()
        };
        let key = &who.person.key;
        let mut edits = self.other_links(&person.name, None).await?;
        edits.push(Edit::put(key.clone(), who.person.version, &after)?);
        let change = Change {
            by: person.name.clone(),
            at: now,
            what: "set another password".to_owned(),
            edits,
        };
        self.store
            .change_of_person(&change, key, Some(&hash), &[])
            .await?;
        self.first_session(key, &hash).await
    }

    /// Gives somebody another role, shuts the door to them or opens it again. Their sessions end, so that nothing of before is left.
    ///
    /// # Errors
    /// When there is no such person, nobody who could manage people would be left, or somebody else was first.
    pub(crate) async fn manage(
        &self,
        by: &By<Administrator>,
        name: &str,
        seen: i64,
        role: Role,
        may_sign_in: bool,
    ) -> Result<(), Trouble> {
        let people = self.store.people().await?;
        let folded = folded(name);
        let held = people
            .iter()
            .find(|held| held.key.name == folded)
            .ok_or_else(|| Trouble::Unknown(format!("There is nobody named {name}.")))?;
        let manages =
            |person: &PersonRecord| person.may_sign_in && person.role == Role::Administrator;
        let after = PersonRecord {
            role,
            may_sign_in,
            ..held.value.clone()
        };
        let mut others = people.iter().filter(|other| other.key != held.key);
        let other = others.find(|other| manages(&other.value));
        if !manages(&after) && other.is_none() {
            return Err(Trouble::Refused {
                message: "nobody would be left who can manage people".to_owned(),
                help: "make somebody else an administrator first".to_owned(),
            });
        }
        // Whoever is left must still be one when this is made: two may do the same to one another.
        let relied_on: Vec<(Key, i64)> = other
            .filter(|_| !manages(&after))
            .map(|other| (other.key.clone(), other.version))
            .into_iter()
            .collect();
        let name = &held.value.name;
        let what = match (held.value.may_sign_in, may_sign_in) {
            (true, false) => format!("shut the door to {name}"),
            (false, true) => format!("let {name} sign in again, as {role}"),
            _ => format!("gave {name} the role of {role}"),
        };
        let mut edits = vec![Edit::put(held.key.clone(), seen, &after)?];
        if !may_sign_in {
            edits.extend(self.other_links(name, None).await?);
        }
        let change = Change {
            by: by.name.clone(),
            at: Timestamp::now(),
            what,
            edits,
        };
        self.store
            .change_of_person(&change, &held.key, None, &relied_on)
            .await?;
        Ok(())
    }

    /// Withdraws an invitation.
    ///
    /// # Errors
    /// When it isn't there any more.
    pub(crate) async fn withdraw(&self, by: &By<Administrator>, hash: &str) -> Result<(), Trouble> {
        let key: Key = InvitationRecord::key(hash);
        let held = self.store.get::<InvitationRecord>(&key).await?;
        let held = held.ok_or_else(|| {
            Trouble::Unknown("The invitation was taken up or withdrawn meanwhile.".to_owned())
        })?;
        let change = Change {
            by: by.name.clone(),
            at: Timestamp::now(),
            what: format!("withdrew the invitation of {}", held.value.whom),
            edits: vec![Edit::remove(key, held.version)],
        };
        self.store.change(&change).await?;
        Ok(())
    }
}
