//! Where a story takes place: on SQLite, always, and on PostgreSQL, where there is one. The tests of `server` take this file too.

use std::io::Write;
use std::panic::{AssertUnwindSafe, resume_unwind};
use std::path::PathBuf;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex};

use futures_util::FutureExt as _;
use sqlx::any::install_default_drivers;
use sqlx::{AnyPool, AssertSqlSafe};
use store::place::in_schema;
use store::{AttachmentsPlace, Place, Store};
use tempfile::TempDir;

/// The URL of a server of PostgreSQL on which schemas may be made and dropped.
const SERVER: &str = "EVERYCLAUSE_TEST_POSTGRES";

static SCHEMAS: AtomicUsize = AtomicUsize::new(0);

/// Where a story takes place.
pub(crate) struct Ground {
    pub(crate) place: Place,
    pub(crate) attachments: AttachmentsPlace,
    pub(crate) folder: TempDir,
    server: Option<Server>,
}

/// A server of PostgreSQL, and the schemas that a story has made on it.
#[derive(Clone)]
struct Server {
    url: String,
    schemas: Arc<Mutex<Vec<String>>>,
}

impl Server {
    fn named() -> Option<Self> {
        let url = std::env::var(SERVER).ok().filter(|url| !url.is_empty())?;
        Some(Self {
            url,
            schemas: Arc::default(),
        })
    }

    async fn run(&self, sql: String) {
        install_default_drivers();
        let pool = AnyPool::connect(&self.url).await.unwrap();
        sqlx::query(AssertSqlSafe(sql))
            .execute(&pool)
            .await
            .unwrap();
        pool.close().await;
    }

    async fn ground(&self) -> Ground {
        let number = SCHEMAS.fetch_add(1, Ordering::Relaxed);
        let schema = format!("story_{}_{number}", std::process::id());
        self.run(format!("CREATE SCHEMA {schema}")).await;
        self.schemas.lock().unwrap().push(schema.clone());
        let folder = tempfile::tempdir().unwrap();
        Ground {
            place: Place::parse(&in_schema(&self.url, &schema)).unwrap(),
            attachments: AttachmentsPlace::Folder(folder.path().join("attachments")),
            folder,
            server: Some(self.clone()),
        }
    }

    async fn drop_schemas(&self) {
        let schemas = std::mem::take(&mut *self.schemas.lock().unwrap());
        for schema in schemas {
            self.run(format!("DROP SCHEMA {schema} CASCADE")).await;
        }
    }
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

    /// Another place of the same kind.
    pub(crate) async fn another(&self) -> Self {
        match &self.server {
            Some(server) => server.ground().await,
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

    /// Runs statements on the database behind the store's back, each of which may do nothing.
    pub(crate) async fn run(&self, statements: &[&'static str]) {
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
        install_default_drivers();
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
    on_postgres(name, story).await;
}

/// Tells a story on PostgreSQL, where there is one. Nothing of it stays there, however it ends.
pub(crate) async fn on_postgres(name: &str, story: impl AsyncFn(Ground)) {
    let Some(server) = Server::named() else {
        // Written past the test harness, which would hide it.
        let _ = writeln!(
            std::io::stderr(),
            "NOT RUN on PostgreSQL: {name} ({SERVER} names no server)"
        );
        return;
    };
    let ground = server.ground().await;
    let told = AssertUnwindSafe(story(ground)).catch_unwind().await;
    server.drop_schemas().await;
    if let Err(failed) = told {
        resume_unwind(failed);
    }
}
