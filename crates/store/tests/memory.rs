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

#[tokio::test]
async fn large_entries_are_restored_some_at_a_time() {
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
