//! People: what is kept of them, told on both databases.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use jiff::{SignedDuration, Timestamp};
use store::people::{DAYS_OF_VISITS, Event, InvitationRecord, PersonRecord, Role, Visit};
use store::{Edit, Key, Kind, Store, StoreError};
use support::{assert_whole, at, change, on_each};

fn person(name: &str, role: Role) -> PersonRecord {
    PersonRecord {
        name: name.to_owned(),
        role,
        may_sign_in: true,
        password_set: at(0),
    }
}

/// Brings a person in, with a password.
async fn brought_in(store: &Store, name: &str, role: Role) -> Key {
    let person = person(name, role);
    let key = person.key();
    let edit = Edit::put(key.clone(), 0, &person).unwrap();
    store
        .change_of_person(
            &change(name, "came in", vec![edit]),
            &key,
            Some("$argon2id$one"),
            &[],
        )
        .await
        .unwrap();
    key
}

#[tokio::test(flavor = "multi_thread")]
async fn a_person_is_known_by_their_name_however_it_is_typed() {
    on_each("a person is known by their name", async |ground| {
        let store = ground.make().await;
        let key = brought_in(&store, "Ada Venn", Role::Reviewer).await;
        let held = store.person("  ADA  venn ").await.unwrap().unwrap();
        assert_eq!(
            (held.value.name.as_str(), held.value.role),
            ("Ada Venn", Role::Reviewer)
        );
        assert_eq!(
            store.password(&key).await.unwrap().as_deref(),
            Some("$argon2id$one")
        );
        for nobody in ["Ada", "", "' OR 1=1 --"] {
            assert!(store.person(nobody).await.unwrap().is_none(), "{nobody}");
        }
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_password_is_set_with_its_change_or_not_at_all() {
    on_each(
        "a password is set with its change or not at all",
        async |ground| {
            let store = ground.make().await;
            let key = brought_in(&store, "Ada", Role::Reader).await;
            store
                .begin_session("one", &key, "$argon2id$one", at(0), at(-9))
                .await
                .unwrap();
            // Somebody who saw an earlier state changes neither the record nor the password, and ends no session.
            let stale = Edit::put(key.clone(), 0, &person("Ada", Role::Administrator)).unwrap();
            let refused = store
                .change_of_person(
                    &change("Sam", "took over", vec![stale]),
                    &key,
                    Some("$argon2id$theirs"),
                    &[],
                )
                .await
                .unwrap_err();
            assert!(matches!(refused, StoreError::Conflicts(_)), "{refused}");
            assert_eq!(
                store.password(&key).await.unwrap().as_deref(),
                Some("$argon2id$one")
            );
            assert!(store.session("one").await.unwrap().is_some());
            let next = Edit::put(key.clone(), 1, &person("Ada", Role::Inspector)).unwrap();
            store
                .change_of_person(
                    &change("Ada", "set another password", vec![next]),
                    &key,
                    Some("$argon2id$two"),
                    &[],
                )
                .await
                .unwrap();
            assert_eq!(
                store.password(&key).await.unwrap().as_deref(),
                Some("$argon2id$two")
            );
            assert!(store.session("one").await.unwrap().is_none());
            // Whoever was found to know the old one a moment ago doesn't come in by it any more.
            let late = store.begin_session("late", &key, "$argon2id$one", at(1), at(-9));
            assert!(!late.await.unwrap());
            assert!(store.session("late").await.unwrap().is_none());
            // Nothing of it is in the journal.
            let entries = store.entries_after(0, 100).await.unwrap();
            assert!(
                !serde_json::to_string(&entries)
                    .unwrap()
                    .contains("argon2id")
            );
            assert_whole(&store).await;
        },
    )
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn sessions_begin_are_used_and_end() {
    on_each("sessions begin, are used and end", async |ground| {
        let store = ground.make().await;
        let (ada, bea) = (
            brought_in(&store, "Ada", Role::Reader).await,
            brought_in(&store, "Bea", Role::Reader).await,
        );
        for (hash, key) in [("a1", &ada), ("a2", &ada), ("b1", &bea)] {
            let begun = store.begin_session(hash, key, "$argon2id$one", at(0), at(-9));
            assert!(begun.await.unwrap());
        }
        store.use_session("a1", at(60)).await.unwrap();
        let session = store.session("a1").await.unwrap().unwrap();
        assert_eq!((session.began, session.used), (at(0), at(60)));
        assert_eq!(session.person.value.name, "Ada");
        store.end_session("a1").await.unwrap();
        let there = async |hash: &str| store.session(hash).await.unwrap().is_some();
        assert!(!there("a1").await && there("a2").await);
        store.end_sessions_of(&ada).await.unwrap();
        assert!(!there("a2").await && there("b1").await);
        // One that begins later sweeps out those of long ago.
        store
            .begin_session("b2", &bea, "$argon2id$one", at(100), at(50))
            .await
            .unwrap();
        assert!(!there("b1").await && there("b2").await);
        assert!(!there("' OR '1'='1").await);
        // They last as long as the database, not as the program.
        store.close().await;
        let store = ground.open().await;
        assert!(store.session("b2").await.unwrap().is_some());
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn an_invitation_is_taken_up_once() {
    on_each("an invitation is taken up once", async |ground| {
        let store = ground.make().await;
        let invitation = InvitationRecord {
            whom: "Ada".to_owned(),
            role: Role::Inspector,
            until: at(1000),
            again: false,
        };
        let key = InvitationRecord::key(&"0".repeat(64));
        let edit = Edit::put(key.clone(), 0, &invitation).unwrap();
        store
            .change(&change("Kim", "invited Ada", vec![edit]))
            .await
            .unwrap();
        assert_eq!(store.invitations().await.unwrap()[0].value, invitation);
        let take = async |name: &str| {
            let person = person(name, Role::Inspector);
            let edits = vec![
                Edit::put(person.key(), 0, &person).unwrap(),
                Edit::remove(key.clone(), 1),
            ];
            let change = change(name, "took it up", edits);
            store
                .change_of_person(&change, &person.key(), Some("$argon2id$"), &[])
                .await
        };
        let (one, other) = tokio::join!(take("Ada"), take("Bea"));
        assert_ne!(one.is_ok(), other.is_ok());
        let people = store.people().await.unwrap();
        assert_eq!(people.len(), 1);
        // Who was second has no password either.
        let second = if one.is_ok() { "bea" } else { "ada" };
        let second = Key::new(Kind::Person, second, "");
        assert_eq!(store.password(&second).await.unwrap(), None);
        assert!(store.invitations().await.unwrap().is_empty());
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn visits_are_noted_and_forgotten_after_their_time() {
    on_each("visits are noted and forgotten", async |ground| {
        let store = ground.make().await;
        let day = SignedDuration::from_hours(24);
        let visit = |days: i32, event: Event, person: Option<&str>| Visit {
            at: at(0).checked_add(day * days).unwrap(),
            person: person.map(str::to_owned),
            event,
            address: "192.0.2.1".to_owned(),
        };
        let first = visit(0, Event::Failed, None);
        let second = visit(1, Event::SignedIn, Some("ada"));
        store.note(&first).await.unwrap();
        store.note(&second).await.unwrap();
        assert_eq!(
            store.visits(Timestamp::MAX, 9).await.unwrap(),
            [second.clone(), first]
        );
        assert_eq!(
            store.visits(Timestamp::MAX, 1).await.unwrap().first(),
            Some(&second)
        );
        let until = second
            .at
            .checked_sub(SignedDuration::from_millis(1))
            .unwrap();
        assert_eq!(store.visits(until, 9).await.unwrap().len(), 1);
        assert_eq!(store.visits(second.at, 9).await.unwrap().len(), 2);
        let days = i32::try_from(DAYS_OF_VISITS).unwrap();
        let last = visit(days + 1, Event::SignedOut, Some("ada"));
        store.note(&last).await.unwrap();
        assert_eq!(
            store.visits(Timestamp::MAX, 9).await.unwrap(),
            [last, second]
        );
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn what_one_person_changed_is_found_apart() {
    on_each("what one person changed is found apart", async |ground| {
        let store = ground.make().await;
        brought_in(&store, "Ada", Role::Reader).await;
        let key = |n: usize| Key::new(Kind::Barrier, format!("FB-{n}"), "");
        let put = |n: usize| {
            let record = store::records::BarrierRecord::default();
            Edit::put(key(n), 0, &record).unwrap()
        };
        for (by, what, some) in [
            ("Ada", "three", 0..3),
            ("Bea", "one", 3..4),
            ("Ada", "two", 4..6),
        ] {
            store
                .change(&change(by, what, some.map(put).collect()))
                .await
                .unwrap();
        }
        let made = async |by: &str, before: i64, most: usize| {
            let made = store.changes_by(by, before, most).await.unwrap();
            made.into_iter()
                .map(|made| (made.first.what, made.records))
                .collect::<Vec<_>>()
        };
        let said = |what: &str, records: i64| (what.to_owned(), records);
        assert_eq!(
            made("Ada", i64::MAX, 9).await,
            [said("two", 2), said("three", 3), said("came in", 1)]
        );
        assert_eq!(made("Ada", i64::MAX, 1).await, [said("two", 2)]);
        assert_eq!(made("Ada", 6, 1).await, [said("three", 3)]);
        assert_eq!(made("Bea", i64::MAX, 9).await, [said("one", 1)]);
        assert_eq!(made("' OR '1'='1", i64::MAX, 9).await, []);
        let of_people = store
            .entries_of_kinds(&[Kind::Person, Kind::Invitation], 9)
            .await
            .unwrap();
        assert_eq!(
            of_people
                .iter()
                .map(|entry| entry.what.as_str())
                .collect::<Vec<_>>(),
            ["came in"]
        );
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn an_archive_carries_people_and_no_way_in() {
    on_each("an archive carries people and no way in", async |ground| {
        let store = ground.make().await;
        let key = brought_in(&store, "Ada", Role::Administrator).await;
        store
            .begin_session("one", &key, "$argon2id$one", at(0), at(-9))
            .await
            .unwrap();
        let archive = ground.folder.path().join("clinic.zip");
        store.export(&archive).await.unwrap();
        let other = ground.another().await;
        let restored = Store::restore(&archive, &other.place, &other.attachments)
            .await
            .unwrap();
        assert_eq!(restored.people().await.unwrap()[0].value.name, "Ada");
        assert_eq!(restored.password(&key).await.unwrap(), None);
        assert!(restored.session("one").await.unwrap().is_none());
        assert_whole(&restored).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_store_from_before_there_were_people_is_brought_up_to_date() {
    on_each("a store from before there were people", async |ground| {
        let store = ground.make().await;
        let record = store::records::BarrierRecord::default();
        let edit = Edit::put(Key::new(Kind::Barrier, "FB-1", ""), 0, &record).unwrap();
        store
            .change(&change("Kim", "one", vec![edit]))
            .await
            .unwrap();
        store.close().await;
        ground
            .run(&[
                "DROP TABLE credential",
                "DROP TABLE session",
                "DROP TABLE visit",
                "DROP INDEX journal_of_person",
                "DELETE FROM _sqlx_migrations WHERE version = 2",
            ])
            .await;
        let store = ground.open().await;
        assert_eq!(store.head().await.unwrap().seq, 1);
        brought_in(&store, "Ada", Role::Reader).await;
        assert_whole(&store).await;
    })
    .await;
}
