//! An archive that was written can be restored: whatever the store holds, and however often a restore was broken off before.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::io::{Read, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use store::journal::Entry;
use store::records::{AttachmentRecord, Known};
use store::{AttachmentsPlace, Edit, Key, Kind, Owner, Place, Store, StoreError};
use support::{Ground, assert_whole, change, on_each, stated};
use zip::write::SimpleFileOptions;
use zip::{ZipArchive, ZipWriter};

/// What tells this program, started to restore, from where and to where.
const RESTORE: &str = "EVERYCLAUSE_TEST_RESTORE";

async fn photographed(store: &Store, bytes: Vec<u8>) {
    let photo = store.attach(bytes).await.unwrap();
    let record = AttachmentRecord {
        file: "white.bmp".to_owned(),
        sha256: photo.sha256.clone(),
        bytes: photo.bytes,
    };
    let key = Key::new(Kind::Attachment, "joint:J-001", photo.sha256);
    let edit = Edit::put(key, 0, &record).unwrap();
    store
        .change(&change("Kim", "photographed it", vec![edit]))
        .await
        .unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn what_packs_too_well_comes_back_too() {
    on_each("what packs too well", async |ground| {
        let store = ground.make().await;
        // A blank sheet, scanned: it packs to a thousandth.
        photographed(&store, vec![0xff; 20 << 20]).await;
        let archive = ground.folder.path().join("clinic.zip");
        store.export(&archive).await.unwrap();
        let there = ground.another().await;
        let restored = Store::restore(&archive, &there.place, &there.attachments)
            .await
            .unwrap();
        assert_whole(&restored).await;
    })
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_value_that_no_archive_could_take_is_refused_and_the_longest_comes_back() {
    let ground = Ground::sqlite();
    let store = ground.make().await;
    let key = Key::fact(&Owner::Joint("J-001".to_owned()), "note");
    let put = |seen, known: &Known| Edit::put(key.clone(), seen, known).unwrap();
    let longer = stated(&"\"".repeat(2 << 20), "Kim");
    let error = store
        .change(&change("Kim", "said much", vec![put(0, &longer)]))
        .await
        .unwrap_err();
    assert!(matches!(error, StoreError::Refused(_)), "{error}");
    // Every character of it is escaped, and escaped again; and it stands in a line twice.
    for seen in 0..2 {
        let long = stated(&"\"".repeat((3 << 19) - 400 - seen), "Kim");
        let seen = i64::try_from(seen).unwrap();
        store
            .change(&change("Kim", "said much", vec![put(seen, &long)]))
            .await
            .unwrap();
    }
    let archive = ground.folder.path().join("clinic.zip");
    store.export(&archive).await.unwrap();
    let there = ground.another().await;
    let restored = Store::restore(&archive, &there.place, &there.attachments)
        .await
        .unwrap();
    assert_eq!(
        restored.get::<Known>(&key).await.unwrap(),
        store.get::<Known>(&key).await.unwrap()
    );
}

/// Not a test of its own: what the next one starts in a process of its own, and kills.
#[tokio::test]
#[ignore = "started by the others"]
async fn restorer() {
    let Ok(told) = std::env::var(RESTORE) else {
        return;
    };
    let told: Vec<&str> = told.split('\n').collect();
    let (place, attachments) = (Place::parse(told[1]), AttachmentsPlace::parse(told[2]));
    let restored = Store::restore(Path::new(told[0]), &place.unwrap(), &attachments.unwrap()).await;
    restored.unwrap().close().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_restore_that_was_killed_is_begun_again() {
    on_each("a restore that was killed", async |ground| {
        let store = ground.make().await;
        photographed(&store, b"the bytes of a photograph".repeat(1000)).await;
        for n in 0..30 {
            let key = |m: i32| Key::fact(&Owner::Joint(format!("J-{n}-{m}")), "joint.width");
            let edits = (0..40).map(|m| Edit::put(key(m), 0, &stated("1 in.", "Kim")).unwrap());
            store
                .change(&change("Kim", "stated them", edits.collect()))
                .await
                .unwrap();
        }
        let archive = ground.folder.path().join("clinic.zip");
        let manifest = store.export(&archive).await.unwrap();
        for time in 0..8 {
            let there = ground.another().await;
            let place = match &there.place {
                Place::File(path) => path.to_str().unwrap().to_owned(),
                Place::Postgres(url) => url.clone(),
            };
            let mut child = Command::new(std::env::current_exe().unwrap())
                .args(["--exact", "restorer", "--ignored", "--test-threads=1"])
                .env(
                    RESTORE,
                    format!("{}\n{place}\n{}", archive.display(), there.attachments),
                )
                .stdout(Stdio::null())
                .stderr(Stdio::null())
                .spawn()
                .unwrap();
            std::thread::sleep(Duration::from_millis(10 + 25 * time));
            child.kill().unwrap();
            child.wait().unwrap();
            let restored = match Store::restore(&archive, &there.place, &there.attachments).await {
                // It was done before it was killed.
                Err(StoreError::StoreThere(_)) => there.open().await,
                restored => restored.unwrap(),
            };
            assert_eq!(restored.head().await.unwrap(), manifest.head);
            assert_whole(&restored).await;
            restored.close().await;
        }
        // So is one that was broken off after its tables were made and before anything was in them.
        let there = ground.another().await;
        there.make().await.close().await;
        let restored = Store::restore(&archive, &there.place, &there.attachments)
            .await
            .unwrap();
        assert_eq!(restored.head().await.unwrap(), manifest.head);
    })
    .await;
}

/// What is changed of an entry.
type Forge = fn(&mut Entry);

/// An archive with its entries changed, and the chain made anew so that it holds.
fn forged(from: &Path, to: &Path, change: impl Fn(&mut Entry)) {
    let mut zip = ZipArchive::new(std::fs::File::open(from).unwrap()).unwrap();
    let mut text = |name: &str| {
        let mut text = String::new();
        zip.by_name(name)
            .unwrap()
            .read_to_string(&mut text)
            .unwrap();
        text
    };
    let mut manifest: serde_json::Value = serde_json::from_str(&text("everyclause.json")).unwrap();
    let mut journal = String::new();
    let mut previous = store::journal::START.to_owned();
    for line in text("journal.jsonl").lines() {
        let mut entry: Entry = serde_json::from_str(line).unwrap();
        change(&mut entry);
        entry.previous.clone_from(&previous);
        entry.hash = entry.hash_of().unwrap();
        previous.clone_from(&entry.hash);
        manifest["head"]["hash"] = entry.hash.clone().into();
        journal += &(serde_json::to_string(&entry).unwrap() + "\n");
    }
    let mut zip = ZipWriter::new(std::fs::File::create(to).unwrap());
    for (name, text) in [
        ("everyclause.json", manifest.to_string()),
        ("journal.jsonl", journal),
    ] {
        zip.start_file(name, SimpleFileOptions::default()).unwrap();
        zip.write_all(text.as_bytes()).unwrap();
    }
    zip.finish().unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn entries_that_no_change_could_have_made_are_refused() {
    let ground = Ground::sqlite();
    let store = ground.make().await;
    for joint in ["J-001", "J-002"] {
        let key = |part: &str| Key::fact(&Owner::Joint(joint.to_owned()), part);
        let known = stated("1 in.", "Kim");
        let edits =
            ["joint.width", "joint.length"].map(|part| Edit::put(key(part), 0, &known).unwrap());
        store
            .change(&change("Kim", "stated both", edits.into()))
            .await
            .unwrap();
    }
    let archive = ground.folder.path().join("clinic.zip");
    store.export(&archive).await.unwrap();
    let other = ground.folder.path().join("other.zip");
    let forgeries: [(&str, Forge); 6] = [
        ("it isn't of the change", |entry| {
            entry.change = if entry.seq == 4 {
                i64::MIN
            } else {
                entry.change
            };
        }),
        ("it isn't of the change", |entry| {
            entry.change = if entry.seq == 3 { 99 } else { entry.change };
        }),
        ("it isn't of the change", |entry| {
            entry.by = if entry.seq == 2 { "Lee" } else { "Kim" }.to_owned();
        }),
        ("isn't said", |entry| entry.by.clear()),
        ("holds a line break", |entry| entry.what.push('\n')),
        ("NUL", |entry| entry.key.part.push('\0')),
    ];
    for (why, forge) in forgeries {
        forged(&archive, &other, forge);
        let there = ground.another().await;
        let error = Store::restore(&other, &there.place, &there.attachments)
            .await
            .unwrap_err();
        assert!(error.to_string().contains(why), "not for {why}: {error}");
    }
    // What isn't forged is taken.
    forged(&archive, &other, |_| {});
    let there = ground.another().await;
    Store::restore(&other, &there.place, &there.attachments)
        .await
        .unwrap();
}
