//! Nothing in view is older than the store: whoever changes what, in whatever order, and whoever breaks off halfway.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

use core::pin::{Pin, pin};
use core::task::Poll;
use std::future::poll_fn;
use std::path::PathBuf;
use std::sync::Arc;

use conformance::{Overall, Standing, Verdict};
use jiff::Timestamp;
use listing::confirm::confirm_all;
use site::import::{File, entered, import};
use store::people::Role;
use store::records::{ConfirmationRecord, Known};
use store::{Change, Edit, Key, Kind, Owner, Place, Store};
use tempfile::TempDir;

use super::Desk;
use crate::board::{Found, Looked};
use crate::person::Person;

const FILE: &str = "hw-d-0412-ed4.txt";
const JOINT: &str = "J-004";

fn demo_file(name: &str) -> Vec<u8> {
    let demo = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    std::fs::read(demo.join(name)).unwrap()
}

/// A store with the demo's project and one of its listings.
async fn furnished() -> (Store, TempDir) {
    let names = ["schedule.csv", "marks.csv", "barriers.csv", "building.toml"];
    let held = names.map(|name| (name, demo_file(name)));
    let files = held.each_ref().map(|(name, bytes)| File { name, bytes });
    let project = import(&files).unwrap().project;
    let folder = tempfile::tempdir().unwrap();
    let place = Place::File(folder.path().join("clinic.sqlite"));
    let store = Store::make(&place, &place.attachments().unwrap())
        .await
        .unwrap();
    let mut edits = store.propose(&project).await.unwrap().edits;
    let document = store
        .attach(demo_file(&format!("listings/{FILE}")))
        .await
        .unwrap();
    let listing = store.propose_listing(FILE, &document, "HW-D-0412", None);
    edits.extend(listing.await.unwrap().edits);
    by_others(&store, edits).await;
    (store, folder)
}

/// A change by another program.
async fn by_others(store: &Store, edits: Vec<Edit>) {
    let change = Change {
        by: "Sam".to_owned(),
        at: Timestamp::UNIX_EPOCH,
        what: "changed it elsewhere".to_owned(),
        edits,
    };
    store.change(&change).await.unwrap();
}

fn lee() -> Person {
    Person {
        name: "Lee".to_owned(),
        role: Role::Reviewer,
        form_token: None,
    }
}

async fn width(store: &Store, joint: &str, value: &str) -> Edit {
    let key = Key::fact(&Owner::Joint(joint.to_owned()), "joint.width");
    let held = store.get::<Known>(&key).await.unwrap().unwrap();
    let fact = entered("joint.width", value, "measured: tape, 1/16 in.").unwrap();
    Edit::put(key, held.version, &Known::Fact(Box::new(fact))).unwrap()
}

fn confirmations() -> Vec<Edit> {
    let reading = listing::read(FILE, &demo_file(&format!("listings/{FILE}"))).unwrap();
    let overlay = confirm_all(&reading, "Sam", jiff::civil::date(2026, 3, 14));
    let record = |entry: &listing::confirm::Entry| {
        let record = ConfirmationRecord {
            source_sha256: overlay.source_sha256.clone(),
            source_name: overlay.source_name.clone(),
            entry: entry.clone(),
        };
        Edit::put(Key::confirmation(FILE, &entry.clause), 0, &record).unwrap()
    };
    overlay.entries.iter().map(record).collect()
}

/// Goes on with something until it has waited so many times; what it came to, if it came to its end.
async fn some_way<T>(mut work: Pin<&mut impl Future<Output = T>>, waits: usize) -> Option<T> {
    let mut waited = 0;
    poll_fn(|context| match work.as_mut().poll(context) {
        Poll::Ready(done) => Poll::Ready(Some(done)),
        Poll::Pending => {
            waited += 1;
            if waited > waits {
                Poll::Ready(None)
            } else {
                Poll::Pending
            }
        }
    })
    .await
}

/// What a joint comes to on a board: the outcome, whether it is provisional, how many clauses are not met and how many are open.
type Said = Option<(Overall, bool, u32, usize)>;

/// What a board says of each joint.
fn said(desk: &Desk) -> Vec<(String, Said)> {
    let of = |found: &Found| {
        let open = found.open.len();
        (found.overall, found.is_provisional, found.not_met, open)
    };
    desk.board(|board| {
        let rows = board.rows();
        rows.map(|row| (row.card.name.to_string(), row.found.as_ref().map(of)))
            .collect()
    })
}

/// That whatever the desk says is what a desk says that was opened just now.
async fn assert_up_to_date(desk: &Desk, after: &str) {
    // What was broken off may still be on its way into the store: then both are asked again.
    loop {
        let head = desk.store.head().await.unwrap();
        let up_to_date = is_up_to_date(desk).await;
        if desk.store.head().await.unwrap() == head {
            return up_to_date.unwrap_or_else(|otherwise| panic!("{after}: {otherwise}"));
        }
    }
}

async fn is_up_to_date(desk: &Desk) -> Result<(), String> {
    let fresh = Desk::over(desk.store.clone()).await.unwrap();
    fresh.look_at_all().await.unwrap();
    desk.catch_up().await.unwrap();
    let now = said(&fresh);
    for (said, now) in said(desk).iter().zip(&now) {
        if said.1.is_some() && said != now {
            return Err(format!("{said:?}, now {now:?}"));
        }
    }
    let seen = desk.look(JOINT).await.unwrap().result;
    let expected = fresh.look(JOINT).await.unwrap().result;
    if seen != expected {
        return Err(format!("{seen:?}, now {expected:?}"));
    }
    desk.look_at_all().await.unwrap();
    let all = said(desk);
    if all != now {
        return Err(format!("{all:?}, now {now:?}"));
    }
    Ok(())
}

#[tokio::test(flavor = "multi_thread")]
async fn a_look_that_was_begun_before_a_change_doesn_t_outlast_it() {
    for waits in 0..12 {
        let (store, _folder) = furnished().await;
        let desk = Desk::over(store.clone()).await.unwrap();
        desk.look_at_all().await.unwrap();
        {
            let mut look = pin!(desk.look(JOINT));
            let done = some_way(look.as_mut(), waits).await;
            let mut edits = vec![width(&store, JOINT, "3/4 in.").await];
            edits.extend(confirmations());
            by_others(&store, edits).await;
            desk.catch_up().await.unwrap();
            if done.is_none() {
                look.await.unwrap();
            }
        }
        assert_up_to_date(&desk, &format!("a look, {waits} waits")).await;
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn whoever_breaks_off_a_change_leaves_nothing_out_of_date() {
    for waits in 0..30 {
        let (store, _folder) = furnished().await;
        let desk = Desk::over(store.clone()).await.unwrap();
        desk.look_at_all().await.unwrap();
        let mut edits = vec![width(&store, JOINT, "3/4 in.").await];
        edits.extend(confirmations());
        {
            // As when a browser goes away while its form is taken.
            let lee = lee();
            let change = desk.change(&lee, "changed it".to_owned(), edits);
            some_way(pin!(change), waits).await;
        }
        assert_up_to_date(&desk, &format!("a change, {waits} waits")).await;
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn looking_at_all_and_changes_by_others_cross_without_harm() {
    let (store, _folder) = furnished().await;
    let desk = Arc::new(Desk::over(store.clone()).await.unwrap());
    let keeping_up = {
        let desk = desk.clone();
        tokio::spawn(async move { desk.keep_up().await })
    };
    for round in 0..12 {
        let value = ["3/4 in.", "4 in."][round % 2];
        by_others(&store, vec![width(&store, JOINT, value).await]).await;
        // Whoever looks after a change sees it, at the joint and in the tables.
        let seen = desk.look(JOINT).await.unwrap();
        let fact = &seen.joint.facts["joint.width"];
        assert_eq!(fact.value.to_string(), value);
        let result = seen.result.unwrap();
        let mut not_met = result.with(Verdict::NotMet);
        let is_wrong = not_met.any(|finding| finding.explanation.property == "joint.width");
        assert_eq!(is_wrong, round % 2 != 0, "round {round}");
        let row = desk.board(|board| board.row(JOINT).unwrap().found.clone());
        let expected = Looked::of(Some(&result));
        let expected = desk.on_board(|board| board.kept(expected));
        assert!(row.is_none_or(|row| row == expected), "round {round}");
    }
    keeping_up.abort();
    assert_up_to_date(&desk, "many changes").await;
}

#[tokio::test(flavor = "multi_thread")]
async fn every_kind_of_change_is_taken_into_account() {
    let (store, _folder) = furnished().await;
    let desk = Desk::over(store.clone()).await.unwrap();
    desk.look_at_all().await.unwrap();
    let fact = |owner: &Owner, property: &str, value: &str| {
        let fact = entered(property, value, "witnessed").unwrap();
        Edit::put(Key::fact(owner, property), 0, &Known::Fact(Box::new(fact))).unwrap()
    };
    let mark = Owner::Mark("HW1".to_owned());
    let barrier = Owner::Barrier("FB-2".to_owned());
    let judgment = {
        let seen = desk.look(JOINT).await.unwrap();
        let open = seen.result.unwrap();
        let open = open.with(Verdict::Open).next().unwrap().clone();
        let judgment = site::Judgment {
            scope: site::Scope::Joint(JOINT.to_owned()),
            listing: Some("hw-d-0412-ed4".to_owned()),
            item: open.explanation.item.clone(),
            words: open
                .explanation
                .words
                .split_whitespace()
                .collect::<Vec<_>>()
                .join(" "),
            decision: site::Decision::Accepted,
            by: "Sam".to_owned(),
            when: jiff::civil::date(2026, 3, 14),
            basis: "seen".to_owned(),
        };
        let key = store::project::judgment_key(&judgment, 0).unwrap();
        Edit::put(key, 0, &judgment).unwrap()
    };
    let document = store
        .attach(demo_file("listings/ff-d-1102.txt"))
        .await
        .unwrap();
    let listing = store.propose_listing("ff-d-1102.txt", &document, "FF-D-1102", None);
    for (what, edits) in [
        (
            "a fact of a mark",
            vec![fact(&mark, "coating.recoat_time", "6 hr")],
        ),
        (
            "a fact of a barrier",
            vec![fact(&barrier, "joint.static_or_dynamic", "dynamic")],
        ),
        ("a judgment", vec![judgment]),
        ("confirmations", confirmations()),
        ("a listing", listing.await.unwrap().edits),
        (
            "a joint that goes",
            vec![Edit::remove(Key::new(Kind::Joint, "J-060", ""), 1)],
        ),
        (
            "a mark that goes",
            vec![Edit::remove(Key::new(Kind::Mark, "HW2", ""), 1)],
        ),
    ] {
        let before = said(&desk);
        by_others(&store, edits).await;
        assert_up_to_date(&desk, what).await;
        // What changes nothing would prove nothing, but for a fact that no clause asks for.
        assert!(
            what.contains("fact") || said(&desk) != before,
            "{what} changed nothing"
        );
    }
    let seen = desk.look(JOINT).await.unwrap();
    assert_eq!(seen.result.unwrap().standing, Standing::Final);
}
