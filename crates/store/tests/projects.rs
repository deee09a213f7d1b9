//! A project's tables and listings, into a store and out again.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use listing::confirm::{Overlay, confirm_all};
use store::project::fill;
use store::records::Known;
use store::{Edit, Key, Owner, Store};
use support::{assert_whole, change, demo_file, demo_project, on_each, stated};

async fn take(store: &Store, by: &str, replace: &[(&str, &str)]) -> store::project::Proposal {
    let proposal = store.propose(&demo_project(replace)).await.unwrap();
    let edits = proposal.edits.clone();
    store
        .change(&change(by, "took the tables", edits))
        .await
        .unwrap();
    proposal
}

#[tokio::test(flavor = "multi_thread")]
async fn a_project_comes_out_as_it_went_in() {
    on_each("a project comes out as it went in", async |ground| {
        let store = ground.make().await;
        let proposal = take(&store, "Kim", &[]).await;
        assert!(proposal.new > 1000, "{}", proposal.new);
        assert_eq!((proposal.changed, proposal.removed), (0, 0));
        assert_eq!(store.project().await.unwrap(), demo_project(&[]));
        // In two steps it is the same.
        let mut project = store.outline().await.unwrap();
        for joint in &mut project.joints {
            let owner = Owner::Joint(joint.name.clone());
            fill(joint, store.known(&owner).await.unwrap());
        }
        assert_eq!(project, demo_project(&[]));
        assert!(store.propose(&demo_project(&[])).await.unwrap().is_empty());
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_new_schedule_changes_what_the_old_one_said_and_nothing_else() {
    on_each("a new schedule", async |ground| {
        let store = ground.make().await;
        take(&store, "Kim", &[]).await;
        let of = |joint: &str| Key::fact(&Owner::Joint(joint.to_owned()), "packing.density");
        let held = store.get::<Known>(&of("J-055")).await.unwrap().unwrap();
        let by_hand = stated("4 pcf", "the packer");
        let edit = Edit::put(of("J-055"), held.version, &by_hand).unwrap();
        store
            .change(&change("Lee", "asked the packer", vec![edit]))
            .await
            .unwrap();
        // The new schedule names one joint anew, and so has another no more.
        let proposal = take(&store, "Kim", &[("\nJ-060,", "\nJ-061,")]).await;
        assert_eq!(proposal.kept.len(), 1, "{:?}", proposal.kept);
        assert_eq!(proposal.kept[0].key, of("J-055"));
        let there = store.get::<Known>(&of("J-055")).await.unwrap().unwrap();
        assert_eq!(there.value, by_hand);
        let project = store.project().await.unwrap();
        assert!(project.joint("J-060").is_none());
        assert!(project.joint("J-061").is_some());
        assert_eq!(project.joints.len(), 60);
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_joint_that_people_have_worked_on_isn_t_removed() {
    on_each("a joint that people have worked on", async |ground| {
        let store = ground.make().await;
        take(&store, "Kim", &[]).await;
        let key = Key::fact(&Owner::Joint("J-060".to_owned()), "coating.coats");
        let seen = store.get::<Known>(&key).await.unwrap();
        let edit = Edit::put(
            key,
            seen.map_or(0, |held| held.version),
            &stated("2", "Lee"),
        )
        .unwrap();
        store
            .change(&change("Lee", "counted coats", vec![edit]))
            .await
            .unwrap();
        take(&store, "Kim", &[("\nJ-060,", "\nJ-061,")]).await;
        assert!(store.project().await.unwrap().joint("J-060").is_some());
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn what_is_confirmed_of_a_listing_comes_out_as_it_went_in() {
    on_each("what is confirmed of a listing", async |ground| {
        let store = ground.make().await;
        let file = "hw-d-0412-ed4.txt";
        let bytes = demo_file(&format!("listings/{file}"));
        let reading = listing::read(file, &bytes).unwrap();
        let overlay = confirm_all(&reading, "Kim", jiff::civil::date(2026, 3, 14));
        let document = store.attach(bytes.clone()).await.unwrap();
        assert_eq!(document.sha256, reading.source.sha256);
        let proposal = store
            .propose_listing(file, &document, "HW-D-0412", Some(&overlay))
            .await
            .unwrap();
        store
            .change(&change("Kim", "took a listing", proposal.edits))
            .await
            .unwrap();
        assert_eq!(store.overlay(file).await.unwrap(), Some(overlay.clone()));
        assert_eq!(store.attachment(&document.sha256).await.unwrap(), bytes);
        let again = store
            .propose_listing(file, &document, "HW-D-0412", Some(&overlay))
            .await
            .unwrap();
        assert!(again.is_empty() && again.kept.is_empty());
        // A file that says otherwise doesn't change what was confirmed.
        let mut other = overlay.clone();
        other.entries[0].by = "Lee".to_owned();
        let kept = store
            .propose_listing(file, &document, "HW-D-0412", Some(&other))
            .await
            .unwrap();
        assert!(kept.is_empty());
        assert_eq!(kept.kept.len(), 1);
        let overlays = store.overlays().await.unwrap();
        assert_eq!(overlays.keys().collect::<Vec<_>>(), [file]);
        assert_eq!(store.overlay("another.txt").await.unwrap(), None::<Overlay>);
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_part_of_the_schedule_leaves_the_rest_where_it_asks_to() {
    on_each("a part of the schedule", async |ground| {
        let store = ground.make().await;
        take(&store, "Kim", &[]).await;
        let table = b"joint,mark,joint.width\n#source,,drawing A-9\nJ-900,HW1,1 in.\n";
        let file = site::File {
            name: "more.csv",
            bytes: table,
        };
        let project = site::import::import(&[file]).unwrap().project;
        let mut proposal = store.propose(&project).await.unwrap();
        assert_eq!(proposal.new, 2, "a joint and its width");
        assert_eq!(proposal.changed, 0, "what is known of the mark stays");
        assert!(proposal.removed > 60, "the other joints, unless left");
        proposal.leave_others();
        assert_eq!((proposal.removed, proposal.edits.len()), (0, 2));
        store
            .change(&change("Kim", "took more", proposal.edits))
            .await
            .unwrap();
        let after = store.project().await.unwrap();
        assert_eq!(after.joints.len(), demo_project(&[]).joints.len() + 1);
        assert_eq!(after.marks, demo_project(&[]).marks);
        assert_whole(&store).await;
    })
    .await;
}
