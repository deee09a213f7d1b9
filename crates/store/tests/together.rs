//! Several programs at one store at once.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use store::records::Known;
use store::{Edit, Key, Kind, Owner, Place, Store, StoreError};
use support::{assert_whole, change, on_each, on_postgres, stated};

fn put(joint: &str) -> Edit {
    let key = Key::fact(&Owner::Joint(joint.to_owned()), "joint.width");
    Edit::put(key, 0, &stated("1 in.", "Kim")).unwrap()
}

#[tokio::test(flavor = "multi_thread")]
async fn a_store_of_an_earlier_version_is_opened_by_many_at_once() {
    on_each("a store of an earlier version", async |ground| {
        for _ in 0..5 {
            let ground = ground.another().await;
            let store = ground.make().await;
            store
                .change(&change("Kim", "stated it", vec![put("J-001")]))
                .await
                .unwrap();
            store.close().await;
            ground
                .run(&[
                    "DROP INDEX journal_of_changes",
                    "DELETE FROM _sqlx_migrations WHERE version = 3",
                ])
                .await;
            let opened = (0..6).map(|_| {
                let (place, attachments) = (ground.place.clone(), ground.attachments.clone());
                tokio::spawn(async move { Store::open(&place, &attachments).await })
            });
            for store in opened.collect::<Vec<_>>() {
                let store = store.await.unwrap().unwrap();
                assert_eq!(store.changes_before(i64::MAX, 9).await.unwrap().len(), 1);
                store.close().await;
            }
        }
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn many_write_at_once_however_the_server_is_set() {
    on_postgres("many write at once, serializable", async |mut ground| {
        ground.make().await.close().await;
        let Place::Postgres(url) = &ground.place else {
            unreachable!()
        };
        let stricter = format!("{url}%20-cdefault_transaction_isolation%3Dserializable");
        ground.place = Place::parse(&stricter).unwrap();
        let people = (0..6).map(|person| {
            let (place, attachments) = (ground.place.clone(), ground.attachments.clone());
            tokio::spawn(async move {
                let store = Store::open(&place, &attachments).await.unwrap();
                for n in 0..10 {
                    let edit = put(&format!("J-{person}{n}"));
                    let done = store.change(&change("Kim", "stated it", vec![edit])).await;
                    done.unwrap();
                }
                store.close().await;
            })
        });
        for person in people.collect::<Vec<_>>() {
            person.await.unwrap();
        }
        let store = ground.open().await;
        assert_eq!(store.head().await.unwrap().seq, 60);
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn one_of_several_restores_and_none_of_them_mixes_in() {
    on_each("several restores at once", async |ground| {
        let store = ground.make().await;
        for joint in ["J-001", "J-002", "J-003"] {
            let stated = change("Kim", "stated it", vec![put(joint)]);
            store.change(&stated).await.unwrap();
        }
        let archive = ground.folder.path().join("clinic.zip");
        store.export(&archive).await.unwrap();
        let there = ground.another().await;
        let restored = (0..4).map(|_| {
            let (archive, place) = (archive.clone(), there.place.clone());
            let attachments = there.attachments.clone();
            tokio::spawn(async move { Store::restore(&archive, &place, &attachments).await })
        });
        let mut made = 0;
        for restored in restored.collect::<Vec<_>>() {
            match restored.await.unwrap() {
                Ok(_) => made += 1,
                Err(StoreError::StoreThere(_)) => {}
                Err(error) => panic!("{error}"),
            }
        }
        assert_eq!(made, 1);
        let store = there.open().await;
        assert_eq!(store.head().await.unwrap().seq, 3);
        assert_whole(&store).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn what_was_changed_after_an_entry_is_told_by_its_key() {
    on_each("what was changed after an entry", async |ground| {
        let store = ground.make().await;
        let edits = vec![put("J-001"), put("J-002")];
        store
            .change(&change("Kim", "stated both", edits))
            .await
            .unwrap();
        let changed = store.changed_after(1, 9).await.unwrap();
        let key = Key::new(Kind::Fact, "joint:J-002", "joint.width");
        assert_eq!(changed, [(2, key.clone())]);
        assert_eq!(store.changed_after(0, 1).await.unwrap().len(), 1);
        let never = Key::new(Kind::Fact, "joint:J-009", "joint.width");
        let records = store.records(&[key.clone(), never]).await.unwrap();
        assert_eq!(records.keys().collect::<Vec<_>>(), [&key]);
        assert!(store.records(&[]).await.unwrap().is_empty());
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn what_a_change_relies_on_must_be_as_it_was_seen() {
    on_each("what a change relies on", async |ground| {
        let store = ground.make().await;
        let key = |joint: &str| Key::fact(&Owner::Joint(joint.to_owned()), "joint.width");
        let put = |joint: &str, seen: i64, by: &str| {
            let edit = Edit::put(key(joint), seen, &stated("1 in.", by)).unwrap();
            change(by, "stated it", vec![edit])
        };
        store.change(&put("J-1", 0, "Kim")).await.unwrap();
        // Two each of whom rests on what the other changes: one is first, whoever it is.
        let (one, other) = (put("J-2", 0, "Lee"), put("J-3", 0, "Sam"));
        let (on_3, on_2) = ([(key("J-3"), 0)], [(key("J-2"), 0)]);
        let (one, other) = tokio::join!(
            store.change_relying_on(&one, &on_3),
            store.change_relying_on(&other, &on_2)
        );
        assert_ne!(one.is_ok(), other.is_ok());
        // Nothing is made where it isn't; and it is said who changed it.
        let refused = store
            .change_relying_on(&put("J-4", 0, "Lee"), &[(key("J-1"), 0)])
            .await
            .unwrap_err();
        let StoreError::Conflicts(conflicts) = refused else {
            panic!("{refused}");
        };
        assert_eq!(conflicts[0].since[0].by, "Kim");
        assert!(store.get::<Known>(&key("J-4")).await.unwrap().is_none());
        store
            .change_relying_on(&put("J-4", 0, "Lee"), &[(key("J-1"), 1)])
            .await
            .unwrap();
        assert_whole(&store).await;
    })
    .await;
}
