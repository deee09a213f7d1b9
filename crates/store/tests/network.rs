//! Databases and buckets on other machines: PostgreSQL over TLS, and S3-compatible object storage. Run with the feature `network`, where
//! `.ci/postgres` and `.ci/bucket` have started servers for it.

#![cfg(feature = "network")]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::io::Write;

use store::{AttachmentsPlace, Edit, Key, Owner, Place, Store, StoreError};
use support::{Ground, assert_whole, change, stated};

/// The URL of a PostgreSQL that takes no connection but over TLS, without `sslmode`.
const TLS: &str = "EVERYCLAUSE_TEST_POSTGRES_TLS";

/// The URL of an empty bucket; its endpoint and keys stand in `AWS_ENDPOINT` and so on.
const BUCKET: &str = "EVERYCLAUSE_TEST_BUCKET";

fn told(name: &str) -> Option<String> {
    let told = std::env::var(name).ok().filter(|url| !url.is_empty());
    if told.is_none() {
        // Written past the test harness, which would hide it.
        let _ = writeln!(std::io::stderr(), "NOT RUN: {name} names no server");
    }
    told
}

#[tokio::test(flavor = "multi_thread")]
async fn a_project_is_kept_over_tls_and_never_without() {
    let Some(url) = told(TLS) else { return };
    let folder = tempfile::tempdir().unwrap();
    let attachments = AttachmentsPlace::Folder(folder.path().join("attachments"));
    let place = Place::parse(&url).unwrap();
    let store = Store::make(&place, &attachments).await.unwrap();
    let key = Key::fact(&Owner::Joint("J-001".to_owned()), "joint.width");
    let edit = Edit::put(key, 0, &stated("1 in.", "Kim")).unwrap();
    store
        .change(&change("Kim", "stated it", vec![edit]))
        .await
        .unwrap();
    assert_whole(&store).await;
    store.close().await;
    // A machine that can't show who it is gets nothing: its certificate is signed by nobody that is known.
    let (bare, _) = url.split_once('?').unwrap();
    for other in [bare.to_owned(), format!("{url}&sslmode=disable")] {
        let place = Place::parse(&other).unwrap();
        let error = Store::open(&place, &attachments).await.unwrap_err();
        assert!(matches!(error, StoreError::Database { .. }), "{error}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn attachments_are_kept_in_a_bucket() {
    let Some(url) = told(BUCKET) else { return };
    let ground = Ground::sqlite();
    let bucket = AttachmentsPlace::parse(&url).unwrap();
    let store = Store::make(&ground.place, &bucket).await.unwrap();
    let bytes = b"the bytes of a photograph".repeat(100_000);
    for _ in 0..2 {
        let photo = store.attach(bytes.clone()).await.unwrap();
        assert_eq!(store.attachment(&photo.sha256).await.unwrap(), bytes);
    }
    let document = store.attach(b"a listing".to_vec()).await.unwrap();
    let proposal = store.propose_listing("a.txt", &document, "", None).await;
    store
        .change(&change("Kim", "took it", proposal.unwrap().edits))
        .await
        .unwrap();
    assert_whole(&store).await;
    // What isn't there is said to be missing.
    let none = store.attachment(&"0".repeat(64)).await.unwrap_err();
    assert!(none.to_string().contains("isn't there"), "{none}");
    assert!(store.attachment("../secret").await.is_err());
    // Out of the bucket and into another folder of it.
    let archive = ground.folder.path().join("clinic.zip");
    store.export(&archive).await.unwrap();
    let there = ground.another().await;
    let other = AttachmentsPlace::parse(&format!("{url}/another")).unwrap();
    let restored = Store::restore(&archive, &there.place, &other)
        .await
        .unwrap();
    assert_whole(&restored).await;
}
