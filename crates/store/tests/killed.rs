//! The program is killed while it writes, again and again, and nothing that was acknowledged is lost.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::io::{BufRead, BufReader, Write};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use listing::confirm::Entry as Confirmed;
use store::records::{AttachmentRecord, ConfirmationRecord};
use store::{AttachmentsPlace, Edit, Key, Kind, Place, Store};
use support::{Ground, assert_whole, change, on_postgres};

/// How often a writer is killed on SQLite; every tenth time begins with a new store.
const KILLED: u64 = 200;

/// What tells this program, started as a writer, where to write.
const WRITE_TO: &str = "EVERYCLAUSE_TEST_WRITE_TO";

/// One number after another from a seed: the same in every run (`SplitMix64`, Steele, Lea and Flood 2014).
fn next(seed: &mut u64) -> u64 {
    *seed = seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut z = *seed;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

fn confirmation(n: i64) -> ConfirmationRecord {
    ConfirmationRecord {
        source_sha256: "0".repeat(64),
        source_name: "hw-d-0190.txt".to_owned(),
        entry: Confirmed {
            clause: format!("3/{n}"),
            item: "3".to_owned(),
            words: "Packing ".repeat(usize::try_from(n % 90).unwrap()),
            value: String::new(),
            by: "Kim".to_owned(),
            when: jiff::civil::date(2026, 3, 14),
            correction: None,
            further: Vec::new(),
        },
    }
}

/// Not a test of its own: what [`kill`] starts in a process of its own. It confirms one clause after the other, some with a photograph,
/// and says so when each is acknowledged.
#[tokio::test]
#[ignore = "started by the others"]
async fn writer() {
    let Ok(places) = std::env::var(WRITE_TO) else {
        return;
    };
    let (place, attachments) = places.split_once('\n').unwrap();
    let attachments = AttachmentsPlace::parse(attachments).unwrap();
    let store = Store::open(&Place::parse(place).unwrap(), &attachments)
        .await
        .unwrap();
    let mut n = store.head().await.unwrap().seq;
    loop {
        n += 1;
        let key = Key::confirmation("hw-d-0190.txt", &format!("3/{n}"));
        let mut edits = vec![Edit::put(key, 0, &confirmation(n)).unwrap()];
        if n % 3 == 0 {
            let photo = store
                .attach(format!("photograph {n}").repeat(500).into_bytes())
                .await
                .unwrap();
            let record = AttachmentRecord {
                file: format!("{n}.jpg"),
                sha256: photo.sha256.clone(),
                bytes: photo.bytes,
            };
            let key = Key::new(Kind::Attachment, "joint:J-001", photo.sha256);
            edits.push(Edit::put(key, 0, &record).unwrap());
        }
        let done = store
            .change(&change("Kim", "confirmed a clause", edits))
            .await
            .unwrap();
        let mut out = std::io::stdout();
        writeln!(
            out,
            "\nacknowledged {n} {} {}",
            done.head.seq, done.head.hash
        )
        .unwrap();
        out.flush().unwrap();
    }
}

/// Starts a writer, lets it write for a while, kills it, and gives the last that it was told is done.
fn kill(ground: &Ground, seed: &mut u64) -> Option<(i64, i64, String)> {
    let place = match &ground.place {
        Place::File(path) => path.to_str().unwrap().to_owned(),
        Place::Postgres(url) => url.clone(),
    };
    let mut child: Child = Command::new(std::env::current_exe().unwrap())
        .args([
            "--exact",
            "writer",
            "--ignored",
            "--nocapture",
            "--test-threads=1",
        ])
        .env(WRITE_TO, format!("{place}\n{}", ground.attachments))
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
    let mut last = None;
    let mut note = |line: String| {
        if let Some(rest) = line.strip_prefix("acknowledged ") {
            let words: Vec<&str> = rest.split(' ').collect();
            let [n, seq, hash] = words[..] else {
                return false;
            };
            last = Some((n.parse().unwrap(), seq.parse().unwrap(), hash.to_owned()));
            return true;
        }
        false
    };
    // So many changes, and then a part of one.
    let mut changes = next(seed) % 12;
    while changes > 0 {
        let line = lines.next().unwrap().unwrap();
        changes -= u64::from(note(line));
    }
    std::thread::sleep(Duration::from_micros(next(seed) % 9000));
    child.kill().unwrap();
    child.wait().unwrap();
    // What it still said before it was killed counts.
    lines.map_while(Result::ok).for_each(|line| {
        note(line);
    });
    last
}

async fn assert_nothing_lost(ground: &Ground, acknowledged: &(i64, i64, String)) {
    let (n, seq, hash) = acknowledged;
    let store = ground.open().await;
    let verified = store.verify(Some(hash)).await.unwrap();
    assert_eq!(verified.flaws, [], "after entry {seq}");
    let key = Key::confirmation("hw-d-0190.txt", &format!("3/{n}"));
    let held = store
        .get::<ConfirmationRecord>(&key)
        .await
        .unwrap()
        .unwrap();
    assert_eq!(held.value, confirmation(*n));
    store.close().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn nothing_acknowledged_is_lost_however_often_it_is_killed() {
    let mut seed = 20_260_314;
    let mut ground = Ground::sqlite();
    let mut acknowledged = 0;
    for time in 0..KILLED {
        if time % 10 == 0 {
            ground = Ground::sqlite();
            ground.make().await.close().await;
        }
        if let Some(last) = kill(&ground, &mut seed) {
            acknowledged += 1;
            assert_nothing_lost(&ground, &last).await;
        } else {
            assert_whole(&ground.open().await).await;
        }
    }
    assert!(
        acknowledged > KILLED / 2,
        "hardly anything was written: {acknowledged}"
    );
}

#[tokio::test(flavor = "multi_thread")]
async fn nothing_acknowledged_is_lost_on_postgres() {
    on_postgres("nothing acknowledged is lost", async |ground| {
        let mut seed = 20_260_315;
        ground.make().await.close().await;
        for _ in 0..20 {
            if let Some(last) = kill(&ground, &mut seed) {
                assert_nothing_lost(&ground, &last).await;
            }
        }
    })
    .await;
}
