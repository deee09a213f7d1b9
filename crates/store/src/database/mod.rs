//! The database: the same statements for SQLite and PostgreSQL.

mod append;
mod people;
mod read;
mod sql;

use std::borrow::Cow;
use std::path::Path;
use std::time::Duration;

use sqlx::any::{AnyPoolOptions, install_default_drivers};
use sqlx::migrate::{MigrateError, Migration, MigrationType, Migrator};
use sqlx::{AnyConnection, AnyPool, Connection, SqlStr};

use crate::error::StoreError;
use crate::place::Place;

pub(crate) use people::Beside;

/// How long a change waits for others to finish theirs.
const PATIENCE: Duration = Duration::from_secs(30);

/// How often the tables are brought up to date again where that fails, as it does when others do it at the same time.
const MOST_TRIES: u32 = 5;

/// How long that waits.
const BETWEEN_TRIES: Duration = Duration::from_millis(100);

/// How many connections there are at most.
const MOST_CONNECTIONS: u32 = 8;

/// The steps by which a database came to be as it is, the oldest first. A step that was released isn't changed any more.
const MIGRATIONS: &[(i64, &str, &str)] = &[
    (
        1,
        "journal and records",
        include_str!("../../migrations/0001_journal_and_records.sql"),
    ),
    (
        2,
        "people",
        include_str!("../../migrations/0002_people.sql"),
    ),
    (
        3,
        "changes in order",
        include_str!("../../migrations/0003_changes_in_order.sql"),
    ),
];

/// An open database.
#[derive(Debug, Clone)]
pub(crate) struct Database {
    pool: AnyPool,
    is_file: bool,
}

impl Database {
    /// Makes the tables at a place where there are none.
    ///
    /// # Errors
    /// When there is a store already, or nothing can be made there.
    pub(crate) async fn make(place: &Place) -> Result<Self, StoreError> {
        if let Place::File(path) = place {
            make_folder_of(path)?;
        }
        let database = Self::connect(place, true).await?;
        if database.has_store().await? {
            return Err(StoreError::StoreThere(place.to_string()));
        }
        database.migrate(place).await?;
        Ok(database)
    }

    /// Makes the tables at a place where there are none, or takes the store that is there if nothing was ever put into it: one that was
    /// broken off before anything was. That it is empty must be asked again by whoever writes to it.
    ///
    /// # Errors
    /// When there is a store that says something, or nothing can be made there.
    pub(crate) async fn make_anew(place: &Place) -> Result<Self, StoreError> {
        match Self::make(place).await {
            Err(StoreError::StoreThere(there)) => {
                let database = Self::open(place).await?;
                if database.head().await?.seq == 0 {
                    return Ok(database);
                }
                database.close().await;
                Err(StoreError::StoreThere(there))
            }
            made => made,
        }
    }

    /// Opens what is at a place, and brings its tables up to date.
    ///
    /// # Errors
    /// When there is no store, or it can't be read.
    pub(crate) async fn open(place: &Place) -> Result<Self, StoreError> {
        if let Place::File(path) = place
            && !path.is_file()
        {
            return Err(StoreError::NoStore(place.to_string()));
        }
        let database = Self::connect(place, false).await?;
        if !database.has_store().await? {
            return Err(StoreError::NoStore(place.to_string()));
        }
        database.migrate(place).await?;
        Ok(database)
    }

    async fn connect(place: &Place, make: bool) -> Result<Self, StoreError> {
        install_default_drivers();
        let is_file = matches!(place, Place::File(_));
        let url = place.url(make);
        let failing = StoreError::while_("can't be opened");
        // A pool tries again and again where it can't connect; one connection says at once why it can't.
        let mut probe = AnyConnection::connect(&url).await.map_err(&failing)?;
        prepare(&mut probe, is_file).await.map_err(&failing)?;
        probe.close().await.map_err(&failing)?;
        let options = AnyPoolOptions::new()
            .max_connections(MOST_CONNECTIONS)
            .acquire_timeout(PATIENCE)
            .after_connect(move |connection, _| Box::pin(prepare(connection, is_file)));
        let pool = options.connect(&url).await.map_err(&failing)?;
        Ok(Self { pool, is_file })
    }

    async fn has_store(&self) -> Result<bool, StoreError> {
        match sqlx::query("SELECT id FROM head").fetch_all(&self.pool).await {
            Ok(_) => Ok(true),
            Err(sqlx::Error::Database(error))
                // 42P01: PostgreSQL's "undefined table"; SQLite has no code for it.
                if error.code().as_deref() == Some("42P01")
                    || error.message().contains("no such table") =>
            {
                Ok(false)
            }
            Err(error) => Err(StoreError::while_("can't be read")(error)),
        }
    }

    async fn migrate(&self, place: &Place) -> Result<(), StoreError> {
        let mut tries = 0;
        loop {
            match self.migrate_once(place).await {
                // Several programs may open it at once; on a file the others fail at what the first has done by then.
                Err(StoreError::Database { .. }) if self.is_file && tries < MOST_TRIES => {
                    tries += 1;
                    tokio::time::sleep(BETWEEN_TRIES).await;
                }
                done => return done,
            }
        }
    }

    async fn migrate_once(&self, place: &Place) -> Result<(), StoreError> {
        let steps = MIGRATIONS.iter().map(|(version, description, sql)| {
            Migration::new(
                *version,
                Cow::Borrowed(*description),
                MigrationType::Simple,
                SqlStr::from_static(sql),
                false,
            )
        });
        let migrator = Migrator::with_migrations(steps.collect());
        match migrator.run(&self.pool).await {
            Ok(()) => Ok(()),
            Err(MigrateError::VersionMissing(_) | MigrateError::VersionTooNew(..)) => {
                Err(StoreError::Later(place.to_string()))
            }
            Err(error) => Err(StoreError::Database {
                doing: "can't be brought up to date",
                why: error.to_string(),
            }),
        }
    }

    /// Whatever SQLite itself finds wrong with its file.
    pub(crate) async fn flaws_of_file(&self) -> Result<Vec<String>, StoreError> {
        if !self.is_file {
            return Ok(Vec::new());
        }
        let said: Vec<(String,)> = sqlx::query_as("PRAGMA integrity_check")
            .fetch_all(&self.pool)
            .await
            .map_err(StoreError::while_("can't be looked through"))?;
        Ok(said
            .into_iter()
            .map(|(line,)| line)
            .filter(|line| line != "ok")
            .collect())
    }

    /// Closes every connection; what isn't closed is closed with the program.
    pub(crate) async fn close(&self) {
        self.pool.close().await;
    }
}

/// What a connection must be told: what is acknowledged is on the disk, readers don't wait for a writer, and nobody waits for ever.
async fn prepare(connection: &mut AnyConnection, is_file: bool) -> Result<(), sqlx::Error> {
    let settings: &[&'static str] = if is_file {
        &[
            "PRAGMA busy_timeout = 30000",
            "PRAGMA journal_mode = WAL",
            "PRAGMA synchronous = FULL",
        ]
    } else {
        &["SET lock_timeout = 30000", "SET synchronous_commit = on"]
    };
    for setting in settings {
        sqlx::query(*setting).execute(&mut *connection).await?;
    }
    Ok(())
}

fn make_folder_of(path: &Path) -> Result<(), StoreError> {
    let Some(folder) = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty())
    else {
        return Ok(());
    };
    std::fs::create_dir_all(folder).map_err(|error| {
        StoreError::Place(format!(
            "the folder {} can't be made: {error}",
            folder.display()
        ))
    })
}
