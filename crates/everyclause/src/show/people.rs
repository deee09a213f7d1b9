//! Who may sign in to a team's desk, and who is invited.

use jiff::Timestamp;
use store::Held;
use store::people::{InvitationRecord, PersonRecord};

/// A line for each person, and for each who is invited.
pub(crate) fn list(
    people: &[Held<PersonRecord>],
    invitations: &[Held<InvitationRecord>],
    now: Timestamp,
) -> String {
    if people.is_empty() && invitations.is_empty() {
        return "Nobody may sign in, and nobody is invited: `everyclause people invite` makes a link.\n"
            .to_owned();
    }
    let people = people.iter().map(|held| {
        let PersonRecord {
            name,
            role,
            may_sign_in,
            ..
        } = &held.value;
        let shut = if *may_sign_in {
            ""
        } else {
            ", may not sign in"
        };
        format!("{name}: {role}{shut}\n")
    });
    let invited = invitations.iter().map(|held| {
        let InvitationRecord {
            whom,
            role,
            until,
            again,
        } = &held.value;
        let what = if *again {
            "to set another password".to_owned()
        } else {
            format!("as {role}")
        };
        let until = if *until <= now {
            "has run out".to_owned()
        } else {
            format!("until {}", until.strftime("%Y-%m-%d %H:%M UTC"))
        };
        format!("{whom}: invited {what}, {until}\n")
    });
    people.chain(invited).collect()
}
