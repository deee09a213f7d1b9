//! Attachments in a bucket of S3-compatible object storage: `folder/ab/ab12…`.

use object_store::aws::AmazonS3Builder;
use object_store::path::Path;
use object_store::{ObjectStore, ObjectStoreExt, PutPayload};
use std::sync::Arc;

use super::{MOST_BYTES, missing};
use crate::canonical::is_sha256;
use crate::error::StoreError;

#[derive(Debug, Clone)]
pub(crate) struct Bucket {
    store: Arc<dyn ObjectStore>,
    folder: String,
}

impl Bucket {
    /// A bucket by its URL; endpoint and keys come from the environment.
    pub(super) fn at(url: &str) -> Result<Self, StoreError> {
        let store = AmazonS3Builder::from_env()
            .with_url(url)
            .build()
            .map_err(|error| StoreError::Place(format!("{url} can't be used: {error}")))?;
        let rest = url.strip_prefix("s3://").unwrap_or(url);
        let folder = rest.split_once('/').map_or("", |(_, folder)| folder);
        Ok(Self {
            store: Arc::new(store),
            folder: folder.trim_matches('/').to_owned(),
        })
    }

    fn path(&self, sha256: &str) -> Result<Path, StoreError> {
        match sha256.get(..2) {
            Some(start) if is_sha256(sha256) => {
                Ok(Path::from(format!("{}/{start}/{sha256}", self.folder)))
            }
            _ => Err(StoreError::Attachment(format!(
                "`{sha256}` is no hash of an attachment"
            ))),
        }
    }

    pub(super) async fn put(&self, sha256: &str, bytes: Vec<u8>) -> Result<(), StoreError> {
        let path = self.path(sha256)?;
        let put = self.store.put(&path, PutPayload::from(bytes)).await;
        put.map(|_| ()).map_err(|error| {
            StoreError::Attachment(format!("{path} can't be written to the bucket: {error}"))
        })
    }

    pub(super) async fn get(&self, sha256: &str) -> Result<Vec<u8>, StoreError> {
        let path = self.path(sha256)?;
        let failing = |error| match error {
            object_store::Error::NotFound { .. } => missing(sha256),
            error => {
                StoreError::Attachment(format!("{path} can't be read from the bucket: {error}"))
            }
        };
        let found = self.store.get(&path).await.map_err(failing)?;
        if found.meta.size > MOST_BYTES {
            return Err(StoreError::Attachment(format!(
                "{path} in the bucket has more than {} MB",
                MOST_BYTES >> 20
            )));
        }
        Ok(found.bytes().await.map_err(failing)?.to_vec())
    }
}
