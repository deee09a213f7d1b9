//! A store, as commands name it, and what it holds as commands use it.

use std::future::Future;

use clap::Args;
use site::import::Import;
use store::{AttachmentsPlace, Place, Store, StoreError};
use tokio::runtime::Builder;

use crate::fault::Fault;
use crate::shelf::Shelf;

/// A store.
#[derive(Debug, Clone, Args)]
#[command(next_help_heading = "The store")]
pub(crate) struct Stored {
    /// The store: a file, or a database's URL that begins with `postgres://`
    #[arg(long, value_name = "PLACE")]
    pub(crate) store: String,
    /// Its attachments: a folder or `s3://bucket/folder` [default: the folder beside the store's file, named after it]
    #[arg(long, value_name = "PLACE")]
    pub(crate) attachments: Option<String>,
}

impl Stored {
    /// Where it is, and where its attachments are.
    ///
    /// # Errors
    /// When one of them is no place, or a database's attachments aren't given.
    pub(crate) fn places(&self) -> Result<(Place, AttachmentsPlace), Fault> {
        let place = Place::parse(&self.store).map_err(|error| fault(&error))?;
        let attachments = match &self.attachments {
            Some(text) => AttachmentsPlace::parse(text).map_err(|error| fault(&error))?,
            None => place.attachments().ok_or_else(|| {
                Fault::of_command("nothing says where the attachments of a database are")
                    .help("add `--attachments DIR`, or `--attachments s3://bucket/folder`")
            })?,
        };
        Ok((place, attachments))
    }

    /// Does something with the open store.
    ///
    /// # Errors
    /// When there is no store, or as the work does.
    pub(crate) fn with<T>(
        &self,
        work: impl AsyncFnOnce(&Store) -> Result<T, StoreError>,
    ) -> Result<T, Fault> {
        let (place, attachments) = self.places()?;
        waited(async {
            let store = Store::open(&place, &attachments).await?;
            let done = work(&store).await;
            store.close().await;
            done
        })
    }

    /// The project and its listings.
    ///
    /// # Errors
    /// When there is no store, it can't be read, or has no joints.
    pub(crate) fn project(&self) -> Result<(Import, Shelf), Fault> {
        let (project, listings) = self.with(async |store| {
            let mut overlays = store.overlays().await?;
            let mut listings = Vec::new();
            for held in store.listings().await? {
                let bytes = store.attachment(&held.value.sha256).await?;
                let file = held.key.name;
                let overlay = overlays.remove(&file);
                listings.push((file, bytes, overlay));
            }
            Ok((store.project().await?, listings))
        })?;
        if project.joints.is_empty() {
            return Err(
                Fault::of_file("there are no joints in the store", self.store.as_str())
                    .help("`everyclause keep --project DIR --into PLACE` puts a schedule into it"),
            );
        }
        let import = Import {
            project,
            notices: Vec::new(),
        };
        Ok((import, Shelf::of_store(&self.store, listings)))
    }
}

/// Waits for what a store does.
///
/// # Errors
/// As the work does.
pub(crate) fn waited<T>(work: impl Future<Output = Result<T, StoreError>>) -> Result<T, Fault> {
    let runtime = Builder::new_current_thread().enable_all().build();
    let runtime = runtime.map_err(|error| {
        Fault::of_command(format!("the store can't be waited for: {error}"))
            .help("close other programs, and try again")
    })?;
    runtime.block_on(work).map_err(|error| fault(&error))
}

/// What a store says is wrong, as a fault.
pub(crate) fn fault(error: &StoreError) -> Fault {
    Fault::of_command(error.to_string()).help(error.help())
}
