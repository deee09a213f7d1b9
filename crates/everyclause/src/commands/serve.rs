use std::sync::Arc;
use std::time::Duration;

use clap::Args;
use server::{Access, Desk, Listening};
use store::Store;
use tokio::runtime::Builder;

use crate::answer::{Answer, to_stderr};
use crate::fault::{Fault, Faults};
use crate::stored::{Stored, fault};

/// How long the desk waits until it tries again to check joints for its tables.
const AGAIN_AFTER: Duration = Duration::from_secs(10);

/// Opens the desk: a web app over a store, on this machine alone
///
/// Prints the address to open in a browser, and answers until it is interrupted. What is changed there stands in the journal under the
/// name that is given here.
#[derive(Debug, Args)]
#[command(
    after_long_help = "Example: everyclause serve --store clinic.sqlite --by \"R. Reviewer\""
)]
pub(crate) struct Serve {
    #[command(flatten)]
    stored: Stored,
    /// Who sits at the desk: the name that stands behind what is changed
    #[arg(long, value_name = "WHO")]
    by: String,
    /// The port; 0 for any that is free
    #[arg(long, value_name = "PORT", default_value_t = 8452)]
    port: u16,
}

impl Serve {
    /// Answers until it is interrupted.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (place, attachments) = self.stored.places()?;
        if self.by.trim().is_empty() {
            return Err(Fault::of_command("nobody is named who sits at the desk")
                .help("add `--by WHO`: the name that stands behind what is changed")
                .into());
        }
        let runtime = Builder::new_multi_thread().enable_all().build();
        let runtime = runtime.map_err(|error| cant(&error.to_string()))?;
        runtime.block_on(async {
            let store = Store::open(&place, &attachments)
                .await
                .map_err(|error| fault(&error))?;
            let desk = Desk::over(store)
                .await
                .map_err(|trouble| cant(&trouble.to_string()))?;
            let listening = Listening::on(self.port).await.map_err(|error| {
                cant(&format!("port {}: {error}", self.port)).help(
                    "close what uses the port, or name another: `--port 0` takes any that is free",
                )
            })?;
            to_stderr(&format!(
                "The desk is at http://{} for this machine alone; end it with Ctrl-C.\n",
                listening.address
            ));
            let access = Access::here(&self.by, listening.address.port());
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
}

fn cant(why: &str) -> Fault {
    Fault::of_command(format!("the desk can't be opened: {why}"))
}
