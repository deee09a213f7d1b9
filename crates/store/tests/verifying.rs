//! What `verify` finds.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::fs;

use store::records::AttachmentRecord;
use store::{Edit, Key, Kind, Owner, Store, StoreError};
use support::{Ground, assert_whole, change, on_each, stated};

fn width(joint: &str) -> Key {
    Key::fact(&Owner::Joint(joint.to_owned()), "joint.width")
}

/// Three facts and a photograph, whose hash it gives.
async fn furnished(ground: &Ground) -> (Store, String) {
    let store = ground.make().await;
    for joint in ["J-001", "J-002", "J-003"] {
        let edit = Edit::put(width(joint), 0, &stated("1 in.", "the foreman")).unwrap();
        store
            .change(&change("Kim", "stated a width", vec![edit]))
            .await
            .unwrap();
    }
    let photo = store
        .attach(b"the bytes of a photograph".to_vec())
        .await
        .unwrap();
    let record = AttachmentRecord {
        file: "head of wall.jpg".to_owned(),
        sha256: photo.sha256.clone(),
        bytes: photo.bytes,
    };
    let key = Key::new(Kind::Attachment, "joint:J-001", photo.sha256.as_str());
    let edit = Edit::put(key, 0, &record).unwrap();
    store
        .change(&change("Kim", "photographed it", vec![edit]))
        .await
        .unwrap();
    assert_whole(&store).await;
    (store, photo.sha256)
}

async fn flaws(store: &Store) -> String {
    let verified = store.verify(None).await.unwrap();
    let lines: Vec<String> = verified.flaws.iter().map(ToString::to_string).collect();
    lines.join("\n")
}

#[tokio::test(flavor = "multi_thread")]
async fn nothing_is_changed_quietly() {
    for (sql, finds) in [
        (
            "UPDATE record SET value = replace(value, '1 in.', '2 in.') WHERE name = 'joint:J-002'",
            "fact joint:J-002 joint.width: it isn't what the journal makes of it",
        ),
        (
            "UPDATE journal SET after = replace(after, '1 in.', '2 in.') WHERE seq = 2",
            "entry 2 of the journal: its hash isn't that of what it says",
        ),
        (
            "UPDATE journal SET by = 'Lee' WHERE seq = 2",
            "entry 2 of the journal: its hash isn't that of what it says",
        ),
        (
            "UPDATE journal SET at = '2026-01-01T00:00:00Z' WHERE seq = 1",
            "entry 1 of the journal: its hash isn't that of what it says",
        ),
        (
            "DELETE FROM journal WHERE seq = 2",
            "entry 3 of the journal: it comes after entry 1",
        ),
        (
            "DELETE FROM journal WHERE seq = 4",
            "the journal's end: it should be entry 4",
        ),
        (
            "DELETE FROM record WHERE name = 'joint:J-003'",
            "fact joint:J-003 joint.width: the journal has it, but it isn't there",
        ),
        (
            "INSERT INTO record VALUES ('fact', 'joint:J-009', 'joint.width', 1, '{}', 2, 2)",
            "fact joint:J-009 joint.width: the journal knows nothing of it",
        ),
        (
            "INSERT INTO record VALUES ('fact', 'joint:J-009', 'joint.width', 1, '{}', 99, 99)",
            "fact joint:J-009 joint.width: the journal knows nothing of this",
        ),
        (
            "UPDATE record SET version = 7 WHERE name = 'joint:J-001' AND kind = 'fact'",
            "fact joint:J-001 joint.width: it isn't what the journal makes of it",
        ),
        (
            "INSERT INTO journal SELECT 9, 9, at, 'Lee', 'approved it', kind, name, part, 9, before, after, previous, hash \
             FROM journal WHERE seq = 4",
            "the journal: the chain doesn't lead to 1 of its entries",
        ),
        (
            "INSERT INTO journal SELECT -2, -2, at, 'Lee', 'approved it', kind, name, part, -2, before, after, previous, hash \
             FROM journal WHERE seq = 4",
            "the journal: the chain doesn't lead to 1 of its entries",
        ),
        (
            "UPDATE head SET hash = 'f00d'",
            "the journal's end: it should be entry 4, f00d",
        ),
    ] {
        on_each("nothing is changed quietly", async |ground| {
            let (store, _) = furnished(&ground).await;
            store.close().await;
            ground.tamper(sql).await;
            let found = flaws(&ground.open().await).await;
            assert!(found.contains(finds), "after {sql}:\n{found}");
        })
        .await;
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn a_chain_that_was_cut_or_rewritten_doesn_t_lead_through_what_was_noted() {
    on_each("a noted end", async |ground| {
        let (store, _) = furnished(&ground).await;
        let noted = store.head().await.unwrap().hash;
        let edit = Edit::put(width("J-004"), 0, &stated("1 in.", "Lee")).unwrap();
        store
            .change(&change("Lee", "stated a width", vec![edit]))
            .await
            .unwrap();
        let verified = store.verify(Some(&noted)).await.unwrap();
        assert_eq!(verified.flaws, []);
        let other = "f".repeat(64);
        let verified = store.verify(Some(&other)).await.unwrap();
        assert_eq!(verified.flaws.len(), 1, "{:?}", verified.flaws);
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn an_attachment_that_isn_t_as_it_was_put_there_is_found() {
    on_each("attachments", async |ground| {
        let (store, photo) = furnished(&ground).await;
        let path = ground.attachment(&photo);
        let whole = fs::read(&path).unwrap();
        for place in 0..whole.len() {
            let mut flipped = whole.clone();
            flipped[place] ^= 1;
            fs::write(&path, flipped).unwrap();
            assert!(flaws(&store).await.contains(&photo), "byte {place}");
            let error = store.attachment(&photo).await.unwrap_err();
            assert!(matches!(error, StoreError::Attachment(_)));
        }
        fs::remove_file(&path).unwrap();
        assert!(flaws(&store).await.contains("isn't there"));
        // Put there again, it is whole again; twice does no harm.
        for _ in 0..2 {
            store.attach(whole.clone()).await.unwrap();
        }
        assert_whole(&store).await;
        assert!(store.attachment("../../etc/passwd").await.is_err());
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn others_may_write_while_it_looks() {
    on_each("others may write while it looks", async |ground| {
        let (store, _) = furnished(&ground).await;
        let writer = {
            let store = store.clone();
            tokio::spawn(async move {
                for version in 1..60 {
                    let edit = Edit::put(width("J-001"), version, &stated("2 in.", "Lee")).unwrap();
                    store
                        .change(&change("Lee", "measured anew", vec![edit]))
                        .await
                        .unwrap();
                }
            })
        };
        while !writer.is_finished() {
            assert_whole(&store).await;
        }
        writer.await.unwrap();
        assert_whole(&store).await;
    })
    .await;
}
