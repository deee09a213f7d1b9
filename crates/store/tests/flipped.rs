//! A flipped bit in the database's file is found, or changes nothing that anybody reads.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::path::PathBuf;

use proptest::prelude::*;
use store::{Edit, Entry, Key, Kind, Owner, Place, Store, StoreError};
use support::{Ground, change, stated};
use tokio::runtime::Runtime;

/// Everything that anybody reads of a store.
type Said = (Vec<Entry>, Vec<(Key, i64, String)>);

async fn said(store: &Store) -> Result<Said, StoreError> {
    let entries = store.entries_after(0, 1000).await?;
    let mut records = Vec::new();
    store
        .each(&Kind::ALL, |held| {
            records.push((held.key, held.version, held.value));
            Ok(())
        })
        .await?;
    Ok((entries, records))
}

/// The file of a store with some facts, and what it says.
async fn written(ground: &Ground) -> (PathBuf, Vec<u8>, Said) {
    let store = ground.make().await;
    for n in 0..40 {
        let key = Key::fact(&Owner::Joint(format!("J-{:03}", n % 30)), "joint.width");
        let edit = Edit::put(key, n / 30, &stated(&format!("{n} mm"), "the foreman")).unwrap();
        store
            .change(&change("Kim", "stated a width", vec![edit]))
            .await
            .unwrap();
    }
    let said = said(&store).await.unwrap();
    store.close().await;
    let Place::File(path) = ground.place.clone() else {
        unreachable!()
    };
    let bytes = std::fs::read(&path).unwrap();
    (path, bytes, said)
}

/// Whether `verify` finds something in a file with these bytes.
async fn is_found(ground: &Ground, path: &PathBuf, bytes: &[u8]) -> (bool, Option<Said>) {
    for ending in ["-wal", "-shm"] {
        let mut beside = path.clone().into_os_string();
        beside.push(ending);
        let _ = std::fs::remove_file(beside);
    }
    std::fs::write(path, bytes).unwrap();
    let Ok(store) = Store::open(&ground.place, &ground.attachments).await else {
        return (true, None);
    };
    let found = match store.verify(None).await {
        Ok(verified) => !verified.flaws.is_empty(),
        Err(_) => true,
    };
    let read = said(&store).await.ok();
    store.close().await;
    (found, read)
}

#[tokio::test(flavor = "multi_thread")]
async fn every_byte_of_a_fact_is_guarded() {
    let ground = Ground::sqlite();
    let (path, whole, said) = written(&ground).await;
    let words = b"the foreman";
    let places: Vec<usize> = whole
        .windows(words.len())
        .enumerate()
        .filter(|(_, window)| window == words)
        .map(|(place, _)| place)
        .collect();
    let mut count = 0;
    for (nth, place) in places.iter().enumerate() {
        let mut bytes = whole.clone();
        bytes[place + nth % words.len()] ^= 0x01;
        let (found, read) = is_found(&ground, &path, &bytes).await;
        count += usize::from(found);
        // Where the database has moved a row, its old bytes lie about and are read by nobody.
        assert!(found || read.as_ref() == Some(&said), "byte {place}");
    }
    // Each of forty entries says it, ten of them of what was before too; and so do thirty records.
    assert_eq!(count, 40 + 10 + 30);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_flipped_bit_is_found_or_changes_nothing(place in any::<prop::sample::Index>(), bit in 0..8u8) {
        thread_local! {
            static STORE: (Runtime, Ground, PathBuf, Vec<u8>, Said) = {
                let runtime = Runtime::new().unwrap();
                let ground = Ground::sqlite();
                let (path, bytes, said) = runtime.block_on(written(&ground));
                (runtime, ground, path, bytes, said)
            };
        }
        STORE.with(|(runtime, ground, path, whole, said)| {
            let mut bytes = whole.clone();
            let place = place.index(bytes.len());
            bytes[place] ^= 1 << bit;
            let (found, read) = runtime.block_on(is_found(ground, path, &bytes));
            prop_assert!(found || read.as_ref() == Some(said), "byte {place}, bit {bit}");
            Ok(())
        })?;
    }
}
