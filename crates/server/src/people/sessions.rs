//! Signing in and out, and whose a request is.
//!
//! A session is a random token in a cookie that only this desk gets (`__Host-`), that no script reads and that no other site's form sends. Kept is
//! its hash alone. Who may do what is looked up at each request, so that a change of role or a closed door holds at once.

use std::net::IpAddr;
use std::time::Duration;

use axum::http::{HeaderMap, HeaderValue, header};
use jiff::{SignedDuration, Timestamp};
use store::people::{Event, PersonRecord, Visit, key_of};
use store::{Held, Key};

use super::Team;
use super::front::household;
use super::tokens::{form_token, fresh, hashed, may_be};
use crate::person::Person;
use crate::trouble::Trouble;

/// The cookie of a session. A browser takes it only over TLS (or from its own machine), for the whole host and no other.
const SESSION: &str = "__Host-everyclause";

/// The cookie of whoever stands at the door, so that the form to sign in can hold something that no other site knows.
const DOOR: &str = "__Host-everyclause-door";

/// How long a session lasts that nobody uses, and how long any session lasts.
const IDLE: SignedDuration = SignedDuration::from_hours(1);
const LONGEST: SignedDuration = SignedDuration::from_hours(12);

/// A session's last use is written down this exactly.
const NOTED: SignedDuration = SignedDuration::from_mins(1);

/// Who signed in, and by which session.
#[derive(Debug, Clone)]
pub(crate) struct SignedIn {
    pub(crate) person: Held<PersonRecord>,
    /// The hash of the session's token.
    pub(crate) session: String,
    pub(crate) form_token: String,
}

impl SignedIn {
    /// As pages and changes need them.
    pub(crate) fn as_person(&self) -> Person {
        Person {
            name: self.person.value.name.clone(),
            role: self.person.value.role,
            form_token: Some(self.form_token.clone()),
        }
    }
}

/// What signing in came to.
#[derive(Debug)]
pub(crate) enum Tried {
    /// It did: the cookie of the session.
    In(HeaderValue),
    /// The name and the password don't belong together, or there is no such name; which, isn't said.
    Wrong,
    /// Too often: how long to wait.
    TooOften(Duration),
}

impl Team {
    /// Whose a request is, if its cookie is of a session that still lasts.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn signed_in(&self, headers: &HeaderMap) -> Result<Option<SignedIn>, Trouble> {
        let Some(token) = cookie(headers, SESSION) else {
            return Ok(None);
        };
        let hash = hashed(token);
        let Some(session) = self.store.session(&hash).await? else {
            return Ok(None);
        };
        let now = Timestamp::now();
        let lasts = now.duration_since(session.began) < LONGEST
            && now.duration_since(session.used) < IDLE
            && session.person.value.may_sign_in;
        if !lasts {
            self.store.end_session(&hash).await?;
            return Ok(None);
        }
        if now.duration_since(session.used) > NOTED {
            self.store.use_session(&hash, now).await?;
        }
        Ok(Some(SignedIn {
            person: session.person,
            session: hash,
            form_token: form_token(token),
        }))
    }

    /// Lets somebody in who has the right name and password.
    ///
    /// # Errors
    /// When the store can't be read or written.
    pub(crate) async fn sign_in(
        &self,
        name: &str,
        password: &str,
        address: Option<IpAddr>,
    ) -> Result<Tried, Trouble> {
        let address = household(address);
        if let Err(wait) = self.limits.count(&address, name) {
            return Ok(Tried::TooOften(wait));
        }
        let person = self.store.person(name).await?;
        // Looked up for nobody, too: the work is the same, whoever it is.
        let hash = self.store.password(&key_of(name)).await?;
        let is_theirs = self.passwords.is(password, hash.clone()).await?;
        let let_in = person
            .as_ref()
            .filter(|person| is_theirs && person.value.may_sign_in);
        let cookie = match (let_in, hash) {
            (Some(person), Some(hash)) => self.begin(&person.key, &hash).await?,
            _ => None,
        };
        let event = if cookie.is_some() {
            Event::SignedIn
        } else {
            Event::Failed
        };
        let key = person.as_ref().map(|person| &person.key);
        self.note(event, key, address).await?;
        Ok(cookie.map_or(Tried::Wrong, Tried::In))
    }

    /// Whether a password is somebody's own; counted like signing in. None when they tried too often.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn is_password_of(
        &self,
        who: &SignedIn,
        password: &str,
        address: Option<IpAddr>,
    ) -> Result<Option<bool>, Trouble> {
        if self
            .limits
            .count(&household(address), &who.person.value.name)
            .is_err()
        {
            return Ok(None);
        }
        let hash = self.store.password(&who.person.key).await?;
        self.passwords.is(password, hash).await.map(Some)
    }

    /// Begins a session of somebody whose password was found to have a hash, and gives its cookie; none where it has another by now.
    ///
    /// # Errors
    /// When the store can't be written.
    pub(super) async fn begin(
        &self,
        person: &Key,
        password: &str,
    ) -> Result<Option<HeaderValue>, Trouble> {
        let token = fresh()?;
        let now = Timestamp::now();
        let forget = now.saturating_sub(LONGEST).unwrap_or(now);
        let begun = self
            .store
            .begin_session(&hashed(&token), person, password, now, forget)
            .await?;
        begun.then(|| set(SESSION, &token)).transpose()
    }

    /// Ends the session of a request.
    ///
    /// # Errors
    /// When the store can't be written.
    pub(crate) async fn sign_out(
        &self,
        who: &SignedIn,
        address: Option<IpAddr>,
    ) -> Result<(), Trouble> {
        self.store.end_session(&who.session).await?;
        self.note(Event::SignedOut, Some(&who.person.key), household(address))
            .await
    }

    /// Ends every session of whoever asks.
    ///
    /// # Errors
    /// When the store can't be written.
    pub(crate) async fn sign_out_everywhere(
        &self,
        who: &SignedIn,
        address: Option<IpAddr>,
    ) -> Result<(), Trouble> {
        self.store.end_sessions_of(&who.person.key).await?;
        self.note(Event::SignedOut, Some(&who.person.key), household(address))
            .await
    }

    async fn note(
        &self,
        event: Event,
        person: Option<&Key>,
        address: String,
    ) -> Result<(), Trouble> {
        let visit = Visit {
            at: Timestamp::now(),
            person: person.map(|key| key.name.clone()),
            event,
            address,
        };
        Ok(self.store.note(&visit).await?)
    }

    /// Whether a form's token is one of those that belong to a request's cookies.
    pub(crate) fn is_own_form(headers: &HeaderMap, token: &str) -> bool {
        [SESSION, DOOR]
            .into_iter()
            .filter_map(|name| cookie(headers, name))
            .any(|secret| super::same(&form_token(secret), token))
    }
}

/// What whoever stands at the door gets: what their form must hold, and a cookie where they have none yet.
#[derive(Debug)]
pub(crate) struct Door {
    pub(crate) form_token: String,
    pub(crate) cookie: Option<HeaderValue>,
}

impl Door {
    /// # Errors
    /// When the system has no randomness to give.
    pub(crate) fn of(headers: &HeaderMap) -> Result<Self, Trouble> {
        if let Some(secret) = cookie(headers, DOOR) {
            return Ok(Self {
                form_token: form_token(secret),
                cookie: None,
            });
        }
        let secret = fresh()?;
        Ok(Self {
            form_token: form_token(&secret),
            cookie: Some(set(DOOR, &secret)?),
        })
    }
}

/// The cookie by which a browser forgets a session.
pub(crate) fn ended_cookie() -> HeaderValue {
    HeaderValue::from_static(
        "__Host-everyclause=; Path=/; Max-Age=0; Secure; HttpOnly; SameSite=Lax",
    )
}

fn set(name: &str, token: &str) -> Result<HeaderValue, Trouble> {
    let text = format!("{name}={token}; Path=/; Secure; HttpOnly; SameSite=Lax");
    HeaderValue::from_str(&text).map_err(|error| Trouble::Broken(format!("no cookie: {error}")))
}

/// A cookie of a request, when it is one and can be a token (RFC 6265, section 5.4).
fn cookie<'h>(headers: &'h HeaderMap, name: &str) -> Option<&'h str> {
    let mut values = headers
        .get_all(header::COOKIE)
        .into_iter()
        .filter_map(|header| header.to_str().ok())
        .flat_map(|header| header.split(';'))
        .filter_map(|pair| pair.trim().split_once('='))
        .filter(|(own, _)| *own == name)
        .map(|(_, value)| value);
    let value = values.next()?;
    // Two of one name: somebody has put one there.
    (values.next().is_none() && may_be(value)).then_some(value)
}

#[cfg(test)]
mod tests {
    use axum::http::HeaderMap;

    use super::{SESSION, cookie};

    #[test]
    fn only_one_cookie_that_can_be_a_token_counts() {
        let token = "0123456789abcdef".repeat(4);
        let found = |header: &str| {
            let mut headers = HeaderMap::new();
            headers.insert("cookie", header.parse().unwrap());
            cookie(&headers, SESSION).map(str::to_owned)
        };
        assert_eq!(
            found(&format!("a=b; __Host-everyclause={token}; c=d")),
            Some(token.clone())
        );
        for header in [
            String::new(),
            "__Host-everyclause=".to_owned(),
            "__Host-everyclause=' OR 1=1 --".to_owned(),
            format!("everyclause={token}"),
            format!("__Host-everyclause={token}; __Host-everyclause={token}"),
            format!("__Host-everyclause={}", token.to_uppercase()),
        ] {
            assert_eq!(found(&header), None, "{header}");
        }
    }
}
