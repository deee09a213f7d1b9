use std::net::{Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

use clap::Args;
use server::people::Front;
use server::{Access, Desk, Listening};
use store::{Store, StoreError};
use tokio::runtime::Builder;

use super::keep::Keep;
use crate::answer::{Answer, to_stderr};
use crate::fault::{Fault, Faults};
use crate::stored::{Stored, fault};

/// How long the desk waits until it tries again to check joints for its tables.
const AGAIN_AFTER: Duration = Duration::from_secs(10);

/// Opens the desk: a web app over a store, on this machine alone or for a team
///
/// Prints the address to open in a browser, and answers until it is interrupted. Where there is no store yet, an empty one is made: listings
/// and schedules are imported at the desk. On one machine, what is changed stands in the journal under
/// the name that is given here. For a team, people sign in; `everyclause people invite` makes the link for the first of them. The desk
/// itself speaks plain http: on a network, a proxy before it terminates TLS, and must be the only one that reaches it.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause serve --project demo-project --by \"R. Reviewer\"
  everyclause serve --store clinic.sqlite --by \"R. Reviewer\"
  everyclause serve --store clinic.sqlite --team https://desk.example.org --behind-proxy --listen 10.0.0.5:8452")]
pub(crate) struct Serve {
    /// Who sits at the desk: the name that stands behind what is changed
    #[arg(
        long,
        value_name = "WHO",
        required_unless_present = "team",
        conflicts_with = "team"
    )]
    by: Option<String>,
    /// The port; 0 for any that is free
    #[arg(long, value_name = "PORT", default_value_t = 8452)]
    port: u16,
    /// For a team whose people sign in, at this public address
    #[arg(long, value_name = "URL", help_heading = "For a team")]
    team: Option<String>,
    /// Where to listen, unless on this machine alone
    #[arg(
        long,
        value_name = "ADDRESS:PORT",
        conflicts_with = "port",
        help_heading = "For a team"
    )]
    listen: Option<SocketAddr>,
    /// A proxy stands before the desk, terminates TLS, and says in `X-Forwarded-For` who asks
    #[arg(long, help_heading = "For a team")]
    behind_proxy: bool,
    /// A folder with a project's files: they are kept in a store within it, `desk.sqlite`, each time the desk is opened
    #[arg(long, value_name = "DIR", conflicts_with_all = ["store", "team"], help_heading = "The store")]
    project: Option<PathBuf>,
    /// The store: a file, or a database's URL that begins with `postgres://`
    #[arg(
        long,
        value_name = "PLACE",
        required_unless_present = "project",
        help_heading = "The store"
    )]
    store: Option<String>,
    /// Its attachments: a folder or `s3://bucket/folder` [default: the folder beside the store's file, named after it]
    #[arg(long, value_name = "PLACE", help_heading = "The store")]
    attachments: Option<String>,
}

/// The store of a project's folder.
const STORE: &str = "desk.sqlite";

impl Serve {
    /// Answers until it is interrupted.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let stored = self.stored();
        let (place, attachments) = stored.places()?;
        if self.by.as_ref().is_some_and(|by| by.trim().is_empty()) {
            return Err(Fault::of_command("nobody is named who sits at the desk")
                .help("add `--by WHO`: the name that stands behind what is changed")
                .into());
        }
        if let Some(project) = &self.project {
            let by = self.by.clone();
            Keep::of_project(project.clone(), stored, by).run()?;
        }
        // `requires` says nothing where what is required is in conflict with something else.
        if self.team.is_none() && (self.listen.is_some() || self.behind_proxy) {
            return Err(Fault::of_command(
                "without accounts, the desk answers to this machine alone",
            )
            .help("open it to a team with `--team URL` in place of `--by WHO`")
            .into());
        }
        let here = SocketAddr::from((Ipv4Addr::LOCALHOST, self.port));
        let listen = self.listen.unwrap_or(here);
        let front = match &self.team {
            Some(origin) => Some(
                Front::at(origin, listen, self.behind_proxy)
                    .map_err(|trouble| cant(&trouble.to_string()))?,
            ),
            None => None,
        };
        let runtime = Builder::new_multi_thread().enable_all().build();
        let runtime = runtime.map_err(|error| cant(&error.to_string()))?;
        runtime.block_on(async {
            let store = match Store::open(&place, &attachments).await {
                Err(StoreError::NoStore(shown)) if self.team.is_none() => {
                    to_stderr(&format!(
                        "There was no store at {shown}: an empty one was made.\n"
                    ));
                    Store::make(&place, &attachments).await
                }
                other => other,
            };
            let store = store.map_err(|error| fault(&error))?;
            let desk = Desk::over(store.clone())
                .await
                .map_err(|trouble| cant(&trouble.to_string()))?;
            let listening = Listening::on(listen).await.map_err(|error| {
                cant(&format!("{listen}: {error}")).help(
                    "close what uses the port, or name another: `--port 0` takes any that is free",
                )
            })?;
            let access = self.access(store, front, &listening)?;
            let desk = Arc::new(desk);
            let looking = desk.clone();
            // The first pages don't wait for all joints to be checked; the tables say which weren't yet.
            tokio::spawn(async move {
                while let Err(trouble) = looking.keep_up().await {
                    to_stderr(&format!(
                        "warning: joints can't be checked for the tables, and wait for it: {trouble}\n"
                    ));
                    tokio::time::sleep(AGAIN_AFTER).await;
                }
            });
            listening
                .serve(desk, access)
                .await
                .map_err(|error| cant(&error.to_string()))
        })?;
        Ok(Answer::default())
    }

    /// The store that is named, or that of the project's folder.
    fn stored(&self) -> Stored {
        let of_project = |folder: &PathBuf| folder.join(STORE).to_string_lossy().into_owned();
        let named = self.store.clone();
        Stored {
            store: named
                .or_else(|| self.project.as_ref().map(of_project))
                .unwrap_or_default(),
            attachments: self.attachments.clone(),
        }
    }

    /// Who may come, and says where.
    fn access(
        &self,
        store: Store,
        front: Option<Front>,
        listening: &Listening,
    ) -> Result<Access, Fault> {
        let address = listening.address;
        let Some(front) = front else {
            to_stderr(&format!(
                "The desk is at http://{address} for this machine alone; end it with Ctrl-C.\n"
            ));
            let by = self.by.as_deref().unwrap_or_default();
            return Ok(Access::here(by, address.port()));
        };
        to_stderr(&format!(
            "The desk is at {} for who signs in, and listens on http://{address}; end it with Ctrl-C.\n",
            front.origin()
        ));
        Access::team(store, front).map_err(|trouble| cant(&trouble.to_string()))
    }
}

fn cant(why: &str) -> Fault {
    Fault::of_command(format!("the desk can't be opened: {why}"))
}
