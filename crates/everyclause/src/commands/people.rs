use clap::{Args, Subcommand};
use jiff::Timestamp;
use server::Trouble;
use server::people::invite;
use store::StoreError;
use store::people::Role;

use crate::answer::Answer;
use crate::fault::{Fault, Faults};
use crate::show;
use crate::stored::Stored;

/// Shows who may sign in to a team's desk, and invites people to it
///
/// Whoever is invited opens a link once, and sets a name and a password of their own. The first administrator is invited here; others can be
/// invited on the desk itself.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause people invite \"R. Reviewer\" --as administrator --at https://desk.example.org --by \"R. Reviewer\" --store clinic.sqlite
  everyclause people list --store clinic.sqlite")]
pub(crate) struct People {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    List(List),
    Invite(Invite),
}

/// Shows who may sign in, as what, and who is invited
#[derive(Debug, Args)]
struct List {
    #[command(flatten)]
    stored: Stored,
}

/// Makes a link by which somebody comes in, once
#[derive(Debug, Args)]
struct Invite {
    /// Whom
    #[arg(value_name = "NAME")]
    whom: String,
    /// As what: reader, inspector, reviewer, administrator
    #[arg(long = "as", value_name = "ROLE", default_value = "reader", value_parser = role)]
    role: Role,
    /// They are there already, and need another password
    #[arg(long, conflicts_with = "role")]
    again: bool,
    /// The public address of the desk, with which the link begins
    #[arg(long, value_name = "URL")]
    at: String,
    /// Who invites: the name that stands behind it
    #[arg(long, value_name = "WHO")]
    by: String,
    #[command(flatten)]
    stored: Stored,
}

fn role(text: &str) -> Result<Role, String> {
    text.parse().map_err(|error: StoreError| error.to_string())
}

impl People {
    /// Who there is, or the link.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        match self.what {
            What::List(command) => command.run(),
            What::Invite(command) => command.run(),
        }
    }
}

impl List {
    fn run(self) -> Result<Answer, Faults> {
        let (people, invitations) = self
            .stored
            .with(async |store| Ok((store.people().await?, store.invitations().await?)))?;
        let text = show::people::list(&people, &invitations, Timestamp::now());
        Ok(Answer::of(text))
    }
}

impl Invite {
    fn run(self) -> Result<Answer, Faults> {
        let invited = self.stored.with(async |store| {
            Ok(invite(store, &self.by, &self.whom, self.role, self.again).await)
        })?;
        let invited = invited.map_err(|trouble| match trouble {
            Trouble::Refused { message, help } => Fault::of_command(message).help(help),
            other => Fault::of_command(other.to_string()),
        })?;
        let at = self.at.trim_end_matches('/');
        let text = format!("{at}{}\n", invited.path);
        Ok(Answer::of(text).with_aside(format!(
            "Give this link to {} and to nobody else: whoever opens it first comes in. It leads in once, and holds until {}.\n",
            self.whom,
            invited.until.strftime("%Y-%m-%d %H:%M UTC")
        )))
    }
}
