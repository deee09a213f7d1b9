//! An archive takes little memory to restore, however large its entries: told by an allocator that counts.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::fmt::Write as _;

use peak_alloc::PeakAlloc;
use store::{Edit, Key, Owner, Store};
use support::{Ground, change, stated};

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// The allocator counts what all tests take, so that one runs after the other.
static ALONE: tokio::sync::Mutex<()> = tokio::sync::Mutex::const_new(());

#[tokio::test]
async fn large_entries_are_restored_some_at_a_time() {
    let _alone = ALONE.lock().await;
    let ground = Ground::sqlite();
    let store = ground.make().await;
    // As much as a record may say, and hardly packable: the hexadecimal digits of a walk through all bytes.
    let value = (0_u32..300_000).fold(String::new(), |mut value, at| {
        write!(value, "{:08x}", at.wrapping_mul(2_654_435_761)).unwrap();
        value
    });
    for joint in 0..24 {
        let key = Key::fact(&Owner::Joint(format!("J-{joint}")), "joint.width");
        let edit = Edit::put(key, 0, &stated(&value, "Kim")).unwrap();
        store
            .change(&change("Kim", "stated it", vec![edit]))
            .await
            .unwrap();
    }
    let archive = ground.folder.path().join("clinic.zip");
    store.export(&archive).await.unwrap();
    let head = store.head().await.unwrap();
    store.close().await;
    let there = ground.another().await;
    let before = MEMORY.current_usage_as_mb();
    MEMORY.reset_peak_usage();
    let restored = Store::restore(&archive, &there.place, &there.attachments)
        .await
        .unwrap();
    let peak = MEMORY.peak_usage_as_mb() - before;
    println!(
        "24 entries of {} kB: {peak:.1} MB at most",
        value.len() >> 10
    );
    assert_eq!(restored.head().await.unwrap(), head);
    assert!(peak < 40.0, "{peak} MB");
}

/// A zipped file of nothing but a directory: so many members in it, and so many that it claims to have.
fn directory(members: usize, claimed: u64) -> Vec<u8> {
    let mut entry = b"PK\x01\x02".to_vec();
    entry.resize(46, 0);
    // The name has one byte.
    entry[28] = 1;
    entry.push(b'a');
    let mut bytes = b"PK\x03\x04".to_vec();
    bytes.resize(1 << 20, 0);
    let begins = bytes.len() as u64;
    bytes.extend(entry.repeat(members));
    let ends = bytes.len() as u64;
    bytes.extend(b"PK\x06\x06");
    bytes.extend(44_u64.to_le_bytes());
    bytes.extend([0; 12]);
    for number in [claimed, claimed, ends - begins, begins] {
        bytes.extend(number.to_le_bytes());
    }
    bytes.extend(b"PK\x06\x07\0\0\0\0");
    bytes.extend(ends.to_le_bytes());
    bytes.extend([1, 0, 0, 0]);
    bytes.extend(b"PK\x05\x06\0\0\0\0");
    bytes.extend([0xff; 12]);
    bytes.extend([0, 0]);
    bytes
}

#[tokio::test]
async fn a_directory_without_end_is_refused_before_it_is_read() {
    let _alone = ALONE.lock().await;
    let ground = Ground::sqlite();
    let there = ground.another().await;
    let archive = ground.folder.path().join("clinic.zip");
    for (members, claimed) in [(1_000_000, 1_000_000), (1, 1_000_000)] {
        std::fs::write(&archive, directory(members, claimed)).unwrap();
        let before = MEMORY.current_usage_as_mb();
        MEMORY.reset_peak_usage();
        let refusal = Store::restore(&archive, &there.place, &there.attachments).await;
        let peak = MEMORY.peak_usage_as_mb() - before;
        println!("{members} members, {claimed} claimed: {peak:.1} MB at most");
        let refusal = refusal.unwrap_err().to_string();
        assert!(refusal.contains("more than 100000 members"), "{refusal}");
        assert!(peak < 4.0, "{peak} MB");
    }
}
