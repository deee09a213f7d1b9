//! Who acts. A person is part of each request, and never a field of a form.
//!
//! A handler that changes something takes a [`By`] with the role that this asks for. It can't be reached by anybody else.

use core::marker::PhantomData;
use core::ops::Deref;
use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::request::Parts;
use maud::{Markup, html};
use store::people::Role;

use crate::desk::Desk;
use crate::trouble::Trouble;

/// The field of a form that shows that it comes from a page of this desk.
pub(crate) const FORM_TOKEN: &str = "form_token";

/// Who asks, and what they may do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Person {
    /// The name that stands in the journal behind what they change.
    pub(crate) name: String,
    /// What they may do.
    pub(crate) role: Role,
    /// What their forms must hold; none on a machine of their own, where nobody signs in.
    pub(crate) form_token: Option<String>,
}

impl Person {
    /// Whether they may do what a role may.
    pub(crate) fn may(&self, role: Role) -> bool {
        self.role >= role
    }

    /// Whether they signed in, on a team's desk.
    pub(crate) const fn signs_in(&self) -> bool {
        self.form_token.is_some()
    }

    /// The hidden field that each form that changes something must begin with.
    pub(crate) fn field(&self) -> Markup {
        html! {
            @if let Some(token) = &self.form_token { input type="hidden" name=(FORM_TOKEN) value=(token); }
        }
    }
}

impl FromRequestParts<Arc<Desk>> for Person {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, _: &Arc<Desk>) -> Result<Self, Trouble> {
        parts.extensions.get().cloned().ok_or(Trouble::NotSignedIn)
    }
}

/// A role as a type.
pub(crate) trait Asked {
    /// The role.
    const ROLE: Role;
}

/// Who enters facts, and answers questions and measurements.
#[derive(Debug)]
pub(crate) enum Inspector {}

impl Asked for Inspector {
    const ROLE: Role = Role::Inspector;
}

/// Who confirms, corrects and judges clauses, imports, and reviews submittals.
#[derive(Debug)]
pub(crate) enum Reviewer {}

impl Asked for Reviewer {
    const ROLE: Role = Role::Reviewer;
}

/// Who invites people, and says what they may do.
#[derive(Debug)]
pub(crate) enum Administrator {}

impl Asked for Administrator {
    const ROLE: Role = Role::Administrator;
}

/// A person who may do what the role `R` may: `person: By<Reviewer>`.
#[derive(Debug)]
pub(crate) struct By<R> {
    person: Person,
    role: PhantomData<R>,
}

impl<R> Deref for By<R> {
    type Target = Person;

    fn deref(&self) -> &Person {
        &self.person
    }
}

impl<R: Asked> FromRequestParts<Arc<Desk>> for By<R> {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, desk: &Arc<Desk>) -> Result<Self, Trouble> {
        let person = Person::from_request_parts(parts, desk).await?;
        if person.may(R::ROLE) {
            Ok(Self {
                person,
                role: PhantomData,
            })
        } else {
            Err(Trouble::MayNot {
                role: person.role,
                asked: R::ROLE,
            })
        }
    }
}
