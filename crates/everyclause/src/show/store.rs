//! What a store holds, and what was done to it.

use std::path::Path;

use store::archive::Manifest;
use store::project::Proposal;
use store::{Head, Made, Verified};

use super::page::{labelled, wrapped};
use super::paint::{BAD, GOOD, QUIET, STRONG, paint};
use super::words::{counted, on_one_line};
use crate::files;

/// The most records that are named one by one.
const MOST_NAMED: usize = 12;

/// What was kept, or what would be.
pub(crate) fn kept(proposal: &Proposal, head: &Head, is_a_look: bool) -> String {
    let mut text = if proposal.is_empty() {
        "The store says all of it already.\n".to_owned()
    } else {
        let verb = if is_a_look { "would be" } else { "" };
        let part = |count: usize, what: &str| format!("{count} {verb} {what}").replace("  ", " ");
        wrapped(
            &format!(
                "{}: {}, {}, {}.",
                counted(proposal.edits.len(), "record", "records"),
                part(proposal.new, "new"),
                part(proposal.changed, "changed"),
                part(proposal.removed, "removed")
            ),
            0,
            2,
        )
    };
    if !proposal.kept.is_empty() {
        text.push_str("\nThe files say otherwise, and it stays as it is in the store:\n");
        for kept in proposal.kept.iter().take(MOST_NAMED) {
            text.push_str(&wrapped(&format!("{}: {}", kept.key, kept.why), 2, 2));
        }
        if let Some(more) = proposal
            .kept
            .len()
            .checked_sub(MOST_NAMED)
            .filter(|more| *more > 0)
        {
            text.push_str(&format!("  and {more} more\n"));
        }
    }
    text + &end(head)
}

/// What a look through a store came to.
pub(crate) fn verified(verified: &Verified) -> String {
    let mut text = String::new();
    if verified.flaws.is_empty() {
        text.push_str(&paint(GOOD, "✓ The store is as it was written."));
        text.push('\n');
    } else {
        let count = verified.flaws.len() + verified.left_out;
        let line = format!(
            "✗ {}",
            counted(
                count,
                "thing isn't as it was written",
                "things aren't as they were written"
            )
        );
        text.push_str(&paint(BAD, &line));
        text.push('\n');
        for flaw in &verified.flaws {
            text.push_str(&wrapped(&on_one_line(&flaw.to_string()), 2, 2));
        }
        if verified.left_out > 0 {
            text.push_str(&format!("  and {} more\n", verified.left_out));
        }
    }
    text.push_str(&format!(
        "  {}, {}, {}\n",
        counted(
            usize::try_from(verified.head.seq).unwrap_or_default(),
            "entry",
            "entries"
        ),
        counted(verified.records, "record", "records"),
        counted(verified.attachments, "attachment", "attachments"),
    ));
    text + &end(&verified.head)
}

/// Changes, the latest first.
pub(crate) fn journal(made: &[Made]) -> String {
    if made.is_empty() {
        return "Nothing was ever changed.\n".to_owned();
    }
    let mut text = String::new();
    for Made { first, records } in made {
        let head = format!("{}  {}", first.at.strftime("%Y-%m-%d %H:%M UTC"), first.by);
        text.push_str(&paint(STRONG, &head));
        text.push('\n');
        let what = match records {
            1 => format!("{} ({})", first.what, first.key),
            _ => format!("{} ({records} records)", first.what),
        };
        text.push_str(&labelled(&first.seq.to_string(), &on_one_line(&what), 2, 8));
    }
    text
}

/// What an archive holds.
pub(crate) fn exported(manifest: &Manifest, path: &Path) -> String {
    let what = format!(
        "{} and {} are in {}.",
        counted(
            usize::try_from(manifest.head.seq).unwrap_or_default(),
            "entry",
            "entries"
        ),
        counted(manifest.attachments, "attachment", "attachments"),
        files::shown(path)
    );
    wrapped(&what, 0, 0) + &end(&manifest.head)
}

/// What was restored.
pub(crate) fn restored(head: &Head, place: &str) -> String {
    wrapped(&format!("The store is at {place}."), 0, 0) + &end(head)
}

fn end(head: &Head) -> String {
    let line = format!("The journal ends with entry {}, {}", head.seq, head.hash);
    paint(QUIET, &line) + "\n"
}
