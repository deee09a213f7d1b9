//! Archives: out, in, and those that are refused.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::io::{Read, Write};
use std::path::{Path, PathBuf};

use store::{Edit, Key, Owner, Store, StoreError};
use support::{Ground, assert_whole, change, demo_file, demo_project, on_each, stated};
use zip::write::SimpleFileOptions;
use zip::{ZipArchive, ZipWriter};

/// The demo's project with a listing.
async fn furnished(ground: &Ground) -> Store {
    let store = ground.make().await;
    let proposal = store.propose(&demo_project(&[])).await.unwrap();
    store
        .change(&change("Kim", "took the tables", proposal.edits))
        .await
        .unwrap();
    let document = store.attach(demo_file("pdf/ff-d-1102.pdf")).await.unwrap();
    let proposal = store
        .propose_listing("ff-d-1102.pdf", &document, "FF-D-1102", None)
        .await
        .unwrap();
    store
        .change(&change("Kim", "took a listing", proposal.edits))
        .await
        .unwrap();
    store
}

#[tokio::test(flavor = "multi_thread")]
async fn a_project_moves_whole_while_others_write() {
    on_each("a project moves whole", async |ground| {
        let store = furnished(&ground).await;
        let writer = {
            let store = store.clone();
            tokio::spawn(async move {
                for n in 0..40 {
                    let key = Key::fact(&Owner::Joint(format!("J-{n:03}")), "note");
                    let edit = Edit::put(key, 0, &stated("seen", "Lee")).unwrap();
                    store
                        .change(&change("Lee", "looked at it", vec![edit]))
                        .await
                        .unwrap();
                }
            })
        };
        let path = ground.folder.path().join("clinic.zip");
        let manifest = store.export(&path).await.unwrap();
        writer.await.unwrap();
        assert!(store.export(&path).await.is_err(), "written over another");
        // What was written last isn't in it, or all of a change is.
        let there = ground.another().await;
        let restored = Store::restore(&path, &there.place, &there.attachments)
            .await
            .unwrap();
        assert_eq!(restored.head().await.unwrap(), manifest.head);
        assert_whole(&restored).await;
        let (ours, theirs) = (
            store.entries_after(0, manifest.head.seq).await.unwrap(),
            restored.entries_after(0, i64::MAX).await.unwrap(),
        );
        assert_eq!(ours, theirs);
        let listing = &restored.listings().await.unwrap()[0];
        assert_eq!(
            restored.attachment(&listing.value.sha256).await.unwrap(),
            demo_file("pdf/ff-d-1102.pdf")
        );
        // It goes on where it was; and what goes out of it again is the same, byte for byte.
        let again = ground.folder.path().join("again.zip");
        restored.export(&again).await.unwrap();
        assert!(std::fs::read(&again).unwrap() == std::fs::read(&path).unwrap());
        let edit = Edit::put(
            Key::fact(&Owner::Mark("HW1".to_owned()), "note"),
            0,
            &stated("seen", "Sam"),
        );
        restored
            .change(&change("Sam", "went on", vec![edit.unwrap()]))
            .await
            .unwrap();
        assert_whole(&restored).await;
        // Nothing is restored over a store.
        let error = Store::restore(&path, &there.place, &there.attachments)
            .await
            .unwrap_err();
        assert!(matches!(error, StoreError::StoreThere(_)), "{error}");
        let project = store.project().await.unwrap();
        assert_eq!(project.joints.len(), 60);
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn removed_records_and_their_return_are_restored() {
    on_each("removed records are restored", async |ground| {
        let store = ground.make().await;
        let key = |joint: &str| Key::fact(&Owner::Joint(joint.to_owned()), "joint.width");
        let put = |joint: &str, seen| Edit::put(key(joint), seen, &stated("1 in.", "Kim")).unwrap();
        for edit in [
            put("J-001", 0),
            put("J-002", 0),
            Edit::remove(key("J-001"), 1),
            put("J-001", 2),
            put("J-001", 3),
            Edit::remove(key("J-002"), 1),
        ] {
            store
                .change(&change("Kim", "changed it", vec![edit]))
                .await
                .unwrap();
        }
        assert_whole(&store).await;
        let path = ground.folder.path().join("clinic.zip");
        store.export(&path).await.unwrap();
        let there = ground.another().await;
        let restored = Store::restore(&path, &there.place, &there.attachments)
            .await
            .unwrap();
        assert_whole(&restored).await;
    })
    .await;
}

/// An archive's members, to be made into another archive.
type Members = Vec<(String, Vec<u8>)>;

fn members(path: &Path) -> Members {
    let mut zip = ZipArchive::new(std::fs::File::open(path).unwrap()).unwrap();
    (0..zip.len())
        .map(|index| {
            let mut member = zip.by_index(index).unwrap();
            let mut bytes = Vec::new();
            member.read_to_end(&mut bytes).unwrap();
            (member.name().to_owned(), bytes)
        })
        .collect()
}

fn written(folder: &Path, members: &Members) -> PathBuf {
    let path = folder.join("other.zip");
    let mut zip = ZipWriter::new(std::fs::File::create(&path).unwrap());
    for (name, bytes) in members {
        zip.start_file(name.as_str(), SimpleFileOptions::default())
            .unwrap();
        zip.write_all(bytes).unwrap();
    }
    zip.finish().unwrap();
    path
}

fn replaced(members: &Members, name: &str, with: impl Fn(&[u8]) -> Vec<u8>) -> Members {
    let mut members = members.clone();
    let (_, bytes) = members
        .iter_mut()
        .find(|(found, _)| found.starts_with(name))
        .unwrap();
    *bytes = with(bytes);
    members
}

fn text_replaced(members: &Members, name: &str, from: &str, to: &str) -> Members {
    replaced(members, name, |bytes| {
        let text = String::from_utf8(bytes.to_vec()).unwrap();
        assert!(text.contains(from), "{name} has no {from}");
        text.replacen(from, to, 1).into_bytes()
    })
}

/// That an archive is refused for a reason, and nothing is made of it.
async fn assert_refused(path: &Path, why: &str) {
    let there = Ground::sqlite();
    let error = Store::restore(path, &there.place, &there.attachments)
        .await
        .unwrap_err();
    assert!(error.to_string().contains(why), "not for {why}: {error}");
    let left: Vec<_> = std::fs::read_dir(there.folder.path()).unwrap().collect();
    assert!(left.is_empty(), "{why}: {left:?} was left");
}

#[tokio::test(flavor = "multi_thread")]
async fn an_archive_that_isn_t_as_it_was_written_is_refused() {
    let ground = Ground::sqlite();
    let store = furnished(&ground).await;
    let path = ground.folder.path().join("clinic.zip");
    store.export(&path).await.unwrap();
    let whole = members(&path);
    let with = |name: &str, bytes: &[u8]| {
        let mut members = whole.clone();
        members.push((name.to_owned(), bytes.to_vec()));
        members
    };
    let without = |name: &str| {
        let mut members = whole.clone();
        members.retain(|(found, _)| !found.starts_with(name));
        members
    };
    let zeros = vec![0u8; 24 << 20];
    let hash = "0".repeat(64);
    for (members, why) in [
        (with("../outside", b""), "it has a member `../outside`"),
        (with("/etc/passwd", b""), "it has a member `/etc/passwd`"),
        (
            with("attachments/../../x", b""),
            "it has a member `attachments/../../x`",
        ),
        (with("C:\\x", b""), "it has a member `C:"),
        (
            with(&format!("attachments/{hash}"), b"x"),
            "it should have 1 attachments and has 2",
        ),
        (
            without("attachments"),
            "it should have 1 attachments and has 0",
        ),
        (without("journal"), "specified file not found"),
        (without("everyclause"), "specified file not found"),
        (
            replaced(&whole, "attachments", |_| b"other bytes".to_vec()),
            "is damaged",
        ),
        (
            replaced(&whole, "attachments", |_| zeros.clone()),
            "unpacks to more than",
        ),
        (
            replaced(&whole, "journal", |_| zeros.clone()),
            "the journal unpacks to more than a journal can",
        ),
        (
            replaced(&whole, "journal", |_| b"{}\n".repeat(4 << 20)),
            "missing field",
        ),
        (
            replaced(&whole, "journal", |bytes| bytes[..bytes.len() - 9].to_vec()),
            "is broken off",
        ),
        (
            replaced(&whole, "everyclause", |_| zeros.clone()),
            "unpacks to more than",
        ),
        (
            text_replaced(&whole, "journal", "packing.density", "packing.depth"),
            "entry ",
        ),
        (
            text_replaced(&whole, "journal", "\"Kim\"", "\"Lee\""),
            "entry 1 doesn't hold",
        ),
        (
            text_replaced(&whole, "everyclause", "\"form\": 2", "\"form\": 3"),
            "a later version",
        ),
        (
            text_replaced(&whole, "everyclause", "\"form\"", "\"past\": 1, \"form\""),
            "unknown field",
        ),
    ] {
        let path = written(ground.folder.path(), &members);
        assert_refused(&path, why).await;
    }
    let text = ground.folder.path().join("text.zip");
    std::fs::write(&text, "joint,mark\n").unwrap();
    assert_refused(&text, "the archive is refused").await;
    assert_refused(Path::new("nowhere.zip"), "can't be read").await;
}

#[tokio::test(flavor = "multi_thread")]
async fn an_archive_nested_without_end_is_refused() {
    let ground = Ground::sqlite();
    let store = furnished(&ground).await;
    let path = ground.folder.path().join("clinic.zip");
    store.export(&path).await.unwrap();
    let whole = members(&path);
    let nested = "[".repeat(1 << 20);
    for (members, why) in [
        (
            replaced(&whole, "everyclause", |_| {
                format!("{{\"form\":{}", &nested[..60_000]).into_bytes()
            }),
            "invalid type",
        ),
        (
            replaced(&whole, "journal", |_| format!("{nested}\n").into_bytes()),
            "the journal: ",
        ),
        (
            text_replaced(
                &whole,
                "journal",
                "\"after\":\"",
                &format!("\"after\":\"{nested}"),
            ),
            "entry 1 doesn't hold",
        ),
    ] {
        let path = written(ground.folder.path(), &members);
        assert_refused(&path, why).await;
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn no_flipped_byte_of_an_archive_goes_unnoticed() {
    let ground = Ground::sqlite();
    let store = ground.make().await;
    let key = Key::fact(&Owner::Joint("J-001".to_owned()), "joint.width");
    for seen in 0..4 {
        let edit = Edit::put(key.clone(), seen, &stated("1 in.", "Kim")).unwrap();
        store
            .change(&change("Kim", "stated it", vec![edit]))
            .await
            .unwrap();
    }
    let path = ground.folder.path().join("clinic.zip");
    store.export(&path).await.unwrap();
    let said = store.entries_after(0, 10).await.unwrap();
    let whole = std::fs::read(&path).unwrap();
    let flipped = ground.folder.path().join("flipped.zip");
    for place in (0..whole.len()).step_by(3) {
        let mut bytes = whole.clone();
        bytes[place] ^= 1 << (place % 8);
        std::fs::write(&flipped, bytes).unwrap();
        let there = Ground::sqlite();
        // Some bytes of an archive say nothing, such as its members' dates.
        if let Ok(store) = Store::restore(&flipped, &there.place, &there.attachments).await {
            assert_eq!(
                store.entries_after(0, 10).await.unwrap(),
                said,
                "byte {place}"
            );
            store.close().await;
        }
    }
}
