//! The desk: a web app over a store.
//!
//! Pages are rendered here and work without a script; small scripts of the app's own make them quicker to use. Nothing is fetched from
//! anywhere else. There are no accounts: the desk answers to this machine alone, and whoever started it is named in the journal for what is
//! changed with it.
//!
//! | module | what lives there |
//! |---|---|
//! | [`desk`] | what the pages are about, brought up to date as the store changes |
//! | `listings` | which listings there are; the last ones used, as read |
//! | `board` | what was found at every joint, and its sums |
//! | `change` | what a person does: a fact, a confirmation, a judgment, an answer |
//! | `pages` | the pages |
//! | `api` | the same for programs, and its description |
//! | `person` | who acts, and what that asks for |
//! | `guard` | who may ask, and what a page may do |
//!
//! What is absent: rules of the trade. Every verdict and every word of it comes from `conformance`.

mod api;
mod board;
mod change;
pub mod desk;
mod guard;
mod listings;
mod pages;
mod person;
mod trouble;

use std::net::{Ipv4Addr, SocketAddr};
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

/// A desk that listens on this machine.
#[derive(Debug)]
pub struct Listening {
    listener: TcpListener,
    /// Where.
    pub address: SocketAddr,
}

impl Listening {
    /// Listens on the loopback address; on any free port, if none is given.
    ///
    /// # Errors
    /// When the port is taken.
    pub async fn on(port: u16) -> std::io::Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port)).await?;
        let address = listener.local_addr()?;
        Ok(Self { listener, address })
    }

    /// Answers until the program is interrupted.
    ///
    /// # Errors
    /// When the network fails.
    pub async fn serve(self, desk: Arc<Desk>, access: Access) -> std::io::Result<()> {
        let app = app(desk, access);
        let interrupted = async {
            let _ = tokio::signal::ctrl_c().await;
        };
        axum::serve(self.listener, app)
            .with_graceful_shutdown(interrupted)
            .await
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
