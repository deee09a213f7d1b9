//! The desk: a web app over a store.
//!
//! Pages are rendered here and work without a script; small scripts of the app's own make them quicker to use. Nothing is fetched from
//! anywhere else. On a machine of one's own there are no accounts: the desk answers to this machine alone, and whoever started it is named in
//! the journal for what is changed with it. A team's desk lets in who signs in, and each may do what their role says.
//!
//! | module | what lives there |
//! |---|---|
//! | [`desk`] | what the pages are about, brought up to date as the store changes |
//! | `listings` | which listings there are; the last ones used, as read |
//! | `board` | what was found at every joint, and its sums |
//! | `change` | what a person does: a fact, a judgment |
//! | `confirming` | confirming clauses, and what becomes of that in another edition |
//! | `answering` | answering a question |
//! | `correcting` | a clause that was read wrongly |
//! | `selecting` | which listings of the store fit a condition |
//! | `submitting` | what a contractor proposes, and its review |
//! | `attaching` | the files that come with it |
//! | `taking` | files that a person brings: looked at, then taken |
//! | `pages` | the pages |
//! | `api` | the same for programs, and its description |
//! | `person` | who acts, and what that asks for |
//! | `people` | signing in, invitations, roles |
//! | `guard` | who may ask, and what a page may do |
//! | `body` | what is sent: how long it may take, how large it may be, whether it is the desk's own |
//! | `serving` | connections |
//!
//! What is absent: rules of the trade. Every verdict and every word of it comes from `conformance`.

mod answering;
mod api;
mod attaching;
mod board;
mod body;
mod change;
mod confirming;
mod correcting;
pub mod desk;
mod guard;
mod listings;
mod pages;
pub mod people;
mod person;
mod selecting;
mod serving;
mod submitting;
mod taking;
mod trouble;

use std::net::SocketAddr;
use std::sync::Arc;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware::from_fn_with_state;
use tokio::net::TcpListener;

pub use desk::Desk;
pub use guard::Access;
pub use trouble::Trouble;

/// The most bytes that a page's form may hold.
const MOST_IN_FORM: usize = 64 << 10;

/// A desk that listens.
#[derive(Debug)]
pub struct Listening {
    listener: TcpListener,
    /// Where.
    pub address: SocketAddr,
}

impl Listening {
    /// Listens on an address; on any free port, if that is 0.
    ///
    /// # Errors
    /// When the port is taken, or the address isn't this machine's.
    pub async fn on(address: SocketAddr) -> std::io::Result<Self> {
        let listener = TcpListener::bind(address).await?;
        let address = listener.local_addr()?;
        Ok(Self { listener, address })
    }

    /// Answers until the program is interrupted.
    ///
    /// # Errors
    /// When it listens where others reach it, and nobody signs in; when the network fails.
    pub async fn serve(self, desk: Arc<Desk>, access: Access) -> std::io::Result<()> {
        if access.is_of_one_machine() && !self.address.ip().is_loopback() {
            return Err(std::io::Error::other(format!(
                "{} is reached by other machines, and nobody signs in here",
                self.address
            )));
        }
        let interrupted = async {
            let _ = tokio::signal::ctrl_c().await;
        };
        serving::serve(self.listener, app(desk, access), interrupted).await
    }
}

/// The app.
pub fn app(desk: Arc<Desk>, access: Access) -> Router {
    Router::new()
        .merge(pages::routes())
        .nest(api::PREFIX, api::routes())
        .fallback(pages::nothing_here)
        .layer(DefaultBodyLimit::max(MOST_IN_FORM))
        .layer(from_fn_with_state(access, guard::guard))
        .with_state(desk)
}
