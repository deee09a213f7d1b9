//! People who sign in: what a desk for a team knows of its door.
//!
//! | module | what lives there |
//! |---|---|
//! | `front` | how the desk is reached: its public address, and what stands before it |
//! | `tokens` | random tokens, what is kept of them, and what a form must hold |
//! | `passwords` | which may be one, their hashes |
//! | `limits` | how often somebody may try to sign in |
//! | `sessions` | signing in and out, and whose a request is |
//! | `manage` | invitations, roles, and who may come in at all |

mod front;
mod limits;
mod manage;
mod passwords;
mod sessions;
mod tokens;

use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::request::Parts;
use store::Store;

use crate::desk::Desk;
use crate::trouble::Trouble;

pub use front::Front;
pub(crate) use front::Peer;
pub use manage::{Invited, invite};
pub(crate) use passwords::FEWEST as FEWEST_IN_PASSWORD;
pub(crate) use sessions::{Door, SignedIn, Tried, ended_cookie};
use tokens::same;

/// What a desk for a team knows of its door.
#[derive(Debug)]
pub(crate) struct Team {
    pub(crate) store: Store,
    pub(crate) front: Front,
    limits: limits::Limits,
    passwords: passwords::Passwords,
}

impl Team {
    pub(crate) fn of(store: Store, front: Front) -> Result<Self, Trouble> {
        Ok(Self {
            store,
            front,
            limits: limits::Limits::default(),
            passwords: passwords::Passwords::new()?,
        })
    }
}

/// A team's door, for the pages that stand before it and the people behind it; there is none where nobody signs in.
#[derive(Debug, Clone)]
pub(crate) struct AtTeam(pub(crate) Arc<Team>);

impl FromRequestParts<Arc<Desk>> for AtTeam {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, _: &Arc<Desk>) -> Result<Self, Trouble> {
        let team = parts.extensions.get::<Self>().cloned();
        team.ok_or_else(|| {
            Trouble::Unknown("Nobody signs in here: this desk is of one machine.".to_owned())
        })
    }
}
