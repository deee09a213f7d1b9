//! Documents and photographs, by the SHA-256 of their bytes. What is there is never changed and never removed.

#[cfg(feature = "network")]
mod bucket;
mod folder;

pub(crate) use folder::sync;

use crate::canonical::sha256;
use crate::error::StoreError;
use crate::place::AttachmentsPlace;

/// The most bytes of one attachment.
pub const MOST_BYTES: u64 = 64 << 20;

/// An attachment that is in its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Attached {
    /// SHA-256 of its bytes.
    pub sha256: String,
    /// How many.
    pub bytes: u64,
}

impl Attached {
    /// What some bytes would be, attached.
    pub fn of(bytes: &[u8]) -> Self {
        Self {
            sha256: sha256(bytes),
            bytes: u64::try_from(bytes.len()).unwrap_or(u64::MAX),
        }
    }
}

/// Where the attachments are.
#[derive(Debug, Clone)]
pub(crate) enum Attachments {
    Folder(folder::Folder),
    #[cfg(feature = "network")]
    Bucket(bucket::Bucket),
}

impl Attachments {
    /// Attachments at a place. A folder is made when something is put into it.
    pub(crate) fn at(place: &AttachmentsPlace) -> Result<Self, StoreError> {
        match place {
            AttachmentsPlace::Folder(path) => Ok(Self::Folder(folder::Folder::at(path.clone()))),
            #[cfg(feature = "network")]
            AttachmentsPlace::Bucket(url) => bucket::Bucket::at(url).map(Self::Bucket),
            #[cfg(not(feature = "network"))]
            AttachmentsPlace::Bucket(_) => Err(StoreError::Place(
                "this program was built without object storage; build it with `--features network`"
                    .to_owned(),
            )),
        }
    }

    /// Puts bytes in their place; when this is done they are there to stay.
    pub(crate) async fn put(&self, bytes: Vec<u8>) -> Result<Attached, StoreError> {
        let attached = Attached::of(&bytes);
        if attached.bytes > MOST_BYTES {
            return Err(StoreError::Refused(format!(
                "the attachment has more than {} MB",
                MOST_BYTES >> 20
            )));
        }
        let sha256 = &attached.sha256;
        match self {
            Self::Folder(folder) => {
                let (folder, sha256) = (folder.clone(), sha256.clone());
                blocking(move || folder.put(&sha256, &bytes)).await?;
            }
            #[cfg(feature = "network")]
            Self::Bucket(bucket) => bucket.put(sha256, bytes).await?,
        }
        Ok(attached)
    }

    /// The bytes of a hash, when they still have it.
    pub(crate) async fn get(&self, sha256: &str) -> Result<Vec<u8>, StoreError> {
        let bytes = match self {
            Self::Folder(folder) => {
                let (folder, sha256) = (folder.clone(), sha256.to_owned());
                blocking(move || folder.get(&sha256)).await?
            }
            #[cfg(feature = "network")]
            Self::Bucket(bucket) => bucket.get(sha256).await?,
        };
        let found = self::sha256(&bytes);
        if found == sha256 {
            Ok(bytes)
        } else {
            Err(StoreError::Attachment(format!(
                "the attachment {sha256} isn't what was put there: its bytes have the hash {found}"
            )))
        }
    }
}

fn missing(sha256: &str) -> StoreError {
    StoreError::Attachment(format!("the attachment {sha256} isn't there"))
}

/// Does work with files beside the tasks that wait for the network.
async fn blocking<T: Send + 'static>(
    work: impl FnOnce() -> Result<T, StoreError> + Send + 'static,
) -> Result<T, StoreError> {
    tokio::task::spawn_blocking(work)
        .await
        .map_err(|error| StoreError::Attachment(format!("the work was broken off: {error}")))?
}
