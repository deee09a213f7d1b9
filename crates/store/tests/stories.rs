//! What people do with a store, told on both databases.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use store::records::{BarrierRecord, Known};
use store::{Edit, Key, Kind, Owner, Store, StoreError};
use support::{Ground, assert_whole, change, on_each, stated};

fn width() -> Key {
    Key::fact(&Owner::Joint("J-001".to_owned()), "joint.width")
}

async fn value(store: &Store, key: &Key) -> Option<(i64, Known)> {
    let held = store.get::<Known>(key).await.unwrap();
    held.map(|held| (held.version, held.value))
}

fn put(key: &Key, seen: i64, text: &str) -> Edit {
    Edit::put(key.clone(), seen, &stated(text, "the foreman")).unwrap()
}

#[tokio::test(flavor = "multi_thread")]
async fn what_was_changed_is_there_after_closing() {
    on_each("what was changed is there after closing", async |ground| {
        let store = ground.make().await;
        let done = store
            .change(&change(
                "Kim",
                "stated a width",
                vec![put(&width(), 0, "1 in.")],
            ))
            .await
            .unwrap();
        assert_eq!((done.changed, done.head.seq), (1, 1));
        store.close().await;
        let store = ground.open().await;
        let there = value(&store, &width()).await;
        assert_eq!(there, Some((1, stated("1 in.", "the foreman"))));
        let entry = &store.history(&width()).await.unwrap()[0];
        assert_eq!(
            (entry.by.as_str(), entry.what.as_str()),
            ("Kim", "stated a width")
        );
        assert_eq!(entry.before, None);
        assert_eq!(entry.at, support::at(0));
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn the_second_is_shown_what_the_first_changed() {
    on_each(
        "the second is shown what the first changed",
        async |ground| {
            let store = ground.make().await;
            let by = async |who: &str, edit: Edit| {
                store.change(&change(who, "looked again", vec![edit])).await
            };
            by("Kim", put(&width(), 0, "1 in.")).await.unwrap();
            by("Lee", put(&width(), 1, "7/8 in.")).await.unwrap();
            // Sam saw version 1 as well, and knows nothing of Lee.
            let StoreError::Conflicts(conflicts) =
                by("Sam", put(&width(), 1, "3/4 in.")).await.unwrap_err()
            else {
                panic!("Sam's change is no conflict");
            };
            let [conflict] = conflicts.as_slice() else {
                panic!("{conflicts:?}");
            };
            assert_eq!(conflict.since.len(), 1);
            assert_eq!(conflict.since[0].by, "Lee");
            let now = conflict.now.clone().unwrap();
            assert_eq!(now.version, 2);
            assert_eq!(
                now.read::<Known>().unwrap().value,
                stated("7/8 in.", "the foreman")
            );
            let there = value(&store, &width()).await;
            assert_eq!(there, Some((2, stated("7/8 in.", "the foreman"))));
            // Who has seen nothing can't overwrite either.
            assert!(by("Sam", put(&width(), 0, "3/4 in.")).await.is_err());
            // Nor can who saw what was never there.
            assert!(by("Sam", put(&width(), 9, "3/4 in.")).await.is_err());
            assert_eq!(store.head().await.unwrap().seq, 2);
            assert_whole(&store).await;
        },
    )
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_change_is_made_whole_or_not_at_all() {
    on_each("a change is made whole or not at all", async |ground| {
        let store = ground.make().await;
        // More records than one statement takes, the last of which is in conflict.
        let key = |n: usize| Key::fact(&Owner::Joint(format!("J-{n:04}")), "joint.width");
        let last = put(&key(1203), 0, "1 in.");
        store
            .change(&change("Kim", "one", vec![last]))
            .await
            .unwrap();
        let all: Vec<Edit> = (0..1204).map(|n| put(&key(n), 0, "2 in.")).collect();
        let refused = store.change(&change("Lee", "all", all)).await.unwrap_err();
        assert!(matches!(&refused, StoreError::Conflicts(some) if some.len() == 1));
        assert_eq!(value(&store, &key(0)).await, None);
        assert_eq!(store.head().await.unwrap().seq, 1);
        let others: Vec<Edit> = (0..1203).map(|n| put(&key(n), 0, "2 in.")).collect();
        let done = store
            .change(&change("Lee", "the others", others))
            .await
            .unwrap();
        assert_eq!((done.changed, done.head.seq), (1203, 1204));
        let entries = store.entries_after(1, 2000).await.unwrap();
        assert!(entries.iter().all(|entry| entry.change == 2));
        let made = store.changes_before(i64::MAX, 9).await.unwrap();
        let made: Vec<_> = made
            .iter()
            .map(|made| (made.first.what.as_str(), made.records))
            .collect();
        assert_eq!(made, [("the others", 1203), ("one", 1)]);
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn what_was_removed_may_come_again_and_its_past_stays() {
    on_each("what was removed may come again", async |ground| {
        let store = ground.make().await;
        let make = async |edit: Edit| store.change(&change("Kim", "changed it", vec![edit])).await;
        make(put(&width(), 0, "1 in.")).await.unwrap();
        make(Edit::remove(width(), 1)).await.unwrap();
        assert_eq!(value(&store, &width()).await, None);
        assert_whole(&store).await;
        // Who still sees the first version is told.
        let refused = make(put(&width(), 1, "2 in.")).await.unwrap_err();
        let StoreError::Conflicts(conflicts) = refused else {
            panic!("{refused}");
        };
        assert_eq!(conflicts[0].now, None);
        assert_eq!(conflicts[0].since[0].after, None);
        make(put(&width(), 0, "2 in.")).await.unwrap();
        let there = value(&store, &width()).await;
        assert_eq!(there, Some((3, stated("2 in.", "the foreman"))));
        let history = store.history(&width()).await.unwrap();
        assert_eq!(history.len(), 3);
        assert!(history[0].after.as_ref().unwrap().contains("1 in."));
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn many_write_at_once_and_nothing_is_lost() {
    const PEOPLE: i64 = 6;
    const TIMES: i64 = 12;
    on_each("many write at once", async |ground| {
        let store = ground.make().await;
        let key = Key::new(Kind::Barrier, "FB-1", "");
        let counted = |n: i64| BarrierRecord {
            kind: n.to_string(),
            title: String::new(),
        };
        store
            .change(&change(
                "Kim",
                "began",
                vec![Edit::put(key.clone(), 0, &counted(0)).unwrap()],
            ))
            .await
            .unwrap();
        let people = (0..PEOPLE).map(|person| {
            let (store, key) = (store.clone(), key.clone());
            tokio::spawn(async move {
                let who = format!("person {person}");
                for _ in 0..TIMES {
                    // Each adds one to what they see, and looks again when somebody was first.
                    loop {
                        let held = store.get::<BarrierRecord>(&key).await.unwrap().unwrap();
                        let next = counted(held.value.kind.parse::<i64>().unwrap() + 1);
                        let edit = Edit::put(key.clone(), held.version, &next).unwrap();
                        match store.change(&change(&who, "added one", vec![edit])).await {
                            Ok(_) => break,
                            Err(StoreError::Conflicts(_)) => {}
                            Err(error) => panic!("{error}"),
                        }
                    }
                }
            })
        });
        for person in people.collect::<Vec<_>>() {
            person.await.unwrap();
        }
        let held = store.get::<BarrierRecord>(&key).await.unwrap().unwrap();
        assert_eq!(held.value.kind, (PEOPLE * TIMES).to_string());
        assert_eq!(store.head().await.unwrap().seq, PEOPLE * TIMES + 1);
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_change_that_nobody_stands_behind_is_refused() {
    on_each(
        "a change that nobody stands behind is refused",
        async |ground| {
            let store = ground.make().await;
            let edits = || vec![put(&width(), 0, "1 in.")];
            let too_long = Key::fact(&Owner::Joint("J".repeat(2000)), "joint.width");
            let with_nul = Key::fact(&Owner::Joint("J\0".to_owned()), "joint.width");
            for refused in [
                change(" ", "stated a width", edits()),
                change("Kim", "", edits()),
                change("Kim\nLee", "stated a width", edits()),
                change("Kim", "stated it twice", [edits(), edits()].concat()),
                change("Kim", "stated a width", vec![put(&too_long, 0, "1 in.")]),
                change("Kim", "stated a width", vec![put(&with_nul, 0, "1 in.")]),
            ] {
                let error = store.change(&refused).await.unwrap_err();
                assert!(matches!(error, StoreError::Refused(_)), "{error}");
            }
            assert!(Edit::put(Key::building(), 0, &stated("1 in.", "Kim")).is_err());
            assert_eq!(store.head().await.unwrap().seq, 0);
            // A value may hold any character at all.
            let odd = stated("\u{0} \u{1f525} \u{feff} ½ \\u0000", "the foreman");
            let edit = Edit::put(width(), 0, &odd).unwrap();
            store
                .change(&change("Kim", "stated it oddly", vec![edit]))
                .await
                .unwrap();
            assert_eq!(value(&store, &width()).await, Some((1, odd)));
            assert_whole(&store).await;
        },
    )
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_store_is_made_once_and_opened_where_it_is() {
    on_each("a store is made once", async |ground| {
        let none = Store::open(&ground.place, &ground.attachments)
            .await
            .unwrap_err();
        assert!(matches!(none, StoreError::NoStore(_)), "{none}");
        ground.make().await.close().await;
        let twice = Store::make(&ground.place, &ground.attachments)
            .await
            .unwrap_err();
        assert!(matches!(twice, StoreError::StoreThere(_)), "{twice}");
        // A step that this version doesn't know was made by a later one.
        ground
            .tamper("UPDATE _sqlx_migrations SET version = 9000 WHERE version = 3")
            .await;
        let later = Store::open(&ground.place, &ground.attachments)
            .await
            .unwrap_err();
        assert!(matches!(later, StoreError::Later(_)), "{later}");
    })
    .await;
}

#[tokio::test]
async fn a_file_that_is_no_store_is_told_from_one() {
    let ground = Ground::sqlite();
    let store::Place::File(path) = &ground.place else {
        unreachable!()
    };
    std::fs::write(path, b"joint,mark\nJ-001,HW1\n").unwrap();
    let error = Store::open(&ground.place, &ground.attachments)
        .await
        .unwrap_err();
    assert!(matches!(error, StoreError::Database { .. }), "{error}");
    assert_eq!(std::fs::read(path).unwrap(), b"joint,mark\nJ-001,HW1\n");
}
