//! The same stories on SQLite, always, and on PostgreSQL, where there is one.

#![allow(dead_code, reason = "each file of tests uses some of it")]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a step that fails must fail the test"
)]

use std::io::Write;
use std::path::PathBuf;
use std::sync::atomic::{AtomicUsize, Ordering};

use jiff::Timestamp;
use site::import::{File, import};
use site::{Fact, Project, Provenance, ProvenanceKind, Value};
use sqlx::any::install_default_drivers;
use sqlx::{AnyPool, AssertSqlSafe};
use store::place::in_schema;
use store::records::Known;
use store::{AttachmentsPlace, Change, Edit, Place, Store};
use tempfile::TempDir;

/// The URL of a server of PostgreSQL on which schemas may be made and dropped.
const SERVER: &str = "EVERYCLAUSE_TEST_POSTGRES";

static SCHEMAS: AtomicUsize = AtomicUsize::new(0);

/// Where a story takes place.
pub(crate) struct Ground {
    pub(crate) place: Place,
    pub(crate) attachments: AttachmentsPlace,
    pub(crate) folder: TempDir,
    server: Option<String>,
}

impl Ground {
    pub(crate) fn sqlite() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let place = Place::File(folder.path().join("a clinic?.sqlite"));
        Self {
            attachments: place.attachments().unwrap(),
            place,
            folder,
            server: None,
        }
    }

    async fn postgres(server: &str) -> Self {
        let number = SCHEMAS.fetch_add(1, Ordering::Relaxed);
        let schema = format!("story_{}_{number}", std::process::id());
        install_default_drivers();
        let pool = AnyPool::connect(server).await.unwrap();
        sqlx::query(AssertSqlSafe(format!("CREATE SCHEMA {schema}")))
            .execute(&pool)
            .await
            .unwrap();
        pool.close().await;
        let folder = tempfile::tempdir().unwrap();
        Self {
            place: Place::parse(&in_schema(server, &schema)).unwrap(),
            attachments: AttachmentsPlace::Folder(folder.path().join("attachments")),
            folder,
            server: Some(server.to_owned()),
        }
    }

    /// Another place of the same kind.
    pub(crate) async fn another(&self) -> Self {
        match &self.server {
            Some(server) => Self::postgres(server).await,
            None => Self::sqlite(),
        }
    }

    pub(crate) async fn make(&self) -> Store {
        Store::make(&self.place, &self.attachments).await.unwrap()
    }

    pub(crate) async fn open(&self) -> Store {
        Store::open(&self.place, &self.attachments).await.unwrap()
    }

    /// Does something to the database behind the store's back.
    pub(crate) async fn tamper(&self, sql: &'static str) {
        let pool = self.pool().await;
        let done = sqlx::query(sql).execute(&pool).await.unwrap();
        assert!(done.rows_affected() > 0, "{sql} changed nothing");
        pool.close().await;
    }

    /// Makes a database what it was before some step.
    pub(crate) async fn undo(&self, statements: &[&'static str]) {
        let pool = self.pool().await;
        for sql in statements {
            sqlx::query(*sql).execute(&pool).await.unwrap();
        }
        pool.close().await;
    }

    async fn pool(&self) -> AnyPool {
        let url = match &self.place {
            Place::File(path) => {
                let path = path
                    .to_str()
                    .unwrap()
                    .replace(' ', "%20")
                    .replace('?', "%3F");
                format!("sqlite:{path}")
            }
            Place::Postgres(url) => url.clone(),
        };
        AnyPool::connect(&url).await.unwrap()
    }

    pub(crate) fn attachment(&self, sha256: &str) -> PathBuf {
        match &self.attachments {
            AttachmentsPlace::Folder(folder) => folder.join(&sha256[..2]).join(sha256),
            AttachmentsPlace::Bucket(url) => panic!("{url} is no folder"),
        }
    }
}

/// Tells a story on SQLite, and on PostgreSQL where there is one.
pub(crate) async fn on_each(name: &str, story: impl AsyncFn(Ground)) {
    story(Ground::sqlite()).await;
    match server() {
        Some(server) => story(Ground::postgres(&server).await).await,
        None => not_run(name),
    }
}

/// A place on PostgreSQL, where there is one.
pub(crate) async fn on_postgres(name: &str, story: impl AsyncFn(Ground)) {
    match server() {
        Some(server) => story(Ground::postgres(&server).await).await,
        None => not_run(name),
    }
}

fn server() -> Option<String> {
    std::env::var(SERVER).ok().filter(|url| !url.is_empty())
}

fn not_run(name: &str) {
    // Written past the test harness, which would hide it.
    let _ = writeln!(
        std::io::stderr(),
        "NOT RUN on PostgreSQL: {name} ({SERVER} names no server)"
    );
}

/// A moment of the stories' own clock.
pub(crate) fn at(second: i64) -> Timestamp {
    Timestamp::from_second(1_773_500_000 + second).unwrap()
}

pub(crate) fn change(by: &str, what: &str, edits: Vec<Edit>) -> Change {
    Change {
        by: by.to_owned(),
        at: at(0),
        what: what.to_owned(),
        edits,
    }
}

/// A value that somebody stated.
pub(crate) fn stated(text: &str, who: &str) -> Known {
    Known::Fact(Box::new(Fact {
        property: "joint.width".to_owned(),
        value: Value::Text(text.to_owned()),
        provenance: Provenance {
            kind: ProvenanceKind::StatedBy {
                who: who.to_owned(),
            },
            date: None,
        },
        cell: None,
    }))
}

pub(crate) fn demo_file(name: &str) -> Vec<u8> {
    let demo = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    std::fs::read(demo.join(name)).unwrap()
}

/// The demo's project, with something replaced in its schedule.
pub(crate) fn demo_project(replace: &[(&str, &str)]) -> Project {
    let names = [
        "schedule.csv",
        "marks.csv",
        "barriers.csv",
        "judgments.csv",
        "building.toml",
    ];
    let mut held: Vec<(&str, Vec<u8>)> =
        names.iter().map(|name| (*name, demo_file(name))).collect();
    let mut schedule = String::from_utf8(held[0].1.clone()).unwrap();
    for (from, to) in replace {
        assert!(schedule.contains(from), "the schedule has no {from}");
        schedule = schedule.replacen(from, to, 1);
    }
    held[0].1 = schedule.into_bytes();
    let files: Vec<File<'_>> = held
        .iter()
        .map(|(name, bytes)| File { name, bytes })
        .collect();
    import(&files).unwrap().project
}

/// Asserts that nothing is wrong with a store.
pub(crate) async fn assert_whole(store: &Store) {
    let verified = store.verify(None).await.unwrap();
    assert_eq!(verified.flaws, [], "{verified:?}");
}

impl Ground {
    /// Runs statements on the database behind the store's back, each of which may do nothing.
    pub(crate) async fn run(&self, statements: &[&'static str]) {
        let pool = AnyPool::connect(&self.url()).await.unwrap();
        for sql in statements {
            sqlx::query(*sql).execute(&pool).await.unwrap();
        }
        pool.close().await;
    }

    fn url(&self) -> String {
        match &self.place {
            Place::File(path) => {
                let path = path
                    .to_str()
                    .unwrap()
                    .replace(' ', "%20")
                    .replace('?', "%3F");
                format!("sqlite:{path}")
            }
            Place::Postgres(url) => url.clone(),
        }
    }
}
