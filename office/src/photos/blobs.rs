//! Where photos lie: a folder, or an object store.

use std::io;
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use axum::body::Bytes;
use futures_util::{StreamExt, TryStreamExt};
use object_store::local::LocalFileSystem;
use object_store::path::Path as Key;
use object_store::{GetOptions, GetRange, ObjectStore, ObjectStoreExt, PutPayload};
use stillbar_core::sync::no_answer;

use super::Name;
use crate::error::OfficeError;

/// Characters of what a store says that are passed on.
const MAX_SAID: usize = 300;

/// Why photos cannot be kept there.
#[derive(Debug, thiserror::Error)]
pub enum BlobsError {
    /// The folder.
    #[error("The folder of photos {folder} cannot be used: {why}.")]
    Folder {
        /// The folder.
        folder: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// The address is neither that of a folder nor that of a bucket.
    #[error("--objects takes file:///FOLDER or s3://BUCKET, without a folder in it.")]
    Address,
    /// The bucket.
    #[cfg(feature = "s3")]
    #[error(
        "The store of photos {url} cannot be used: {}. See that the bucket is there, that the key may put, get, list and delete, and \
         what AWS_ENDPOINT, AWS_REGION, AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY say; a store without TLS wants \
         AWS_ALLOW_HTTP=true.",
        cause(.why).trim_end_matches('.')
    )]
    Bucket {
        /// Its address.
        url: String,
        /// Why.
        #[source]
        why: object_store::Error,
    },
    /// This build has none; [`crate::built`] has told it before, at more length.
    #[cfg(not(feature = "s3"))]
    #[error("This Stillbar was built without S3.")]
    NoS3,
}

/// The place of photos and of the pieces of uploads.
pub struct Blobs {
    store: Arc<dyn ObjectStore>,
}

impl Blobs {
    /// In a folder. What was written is on disk before it counts.
    pub fn folder(folder: &Path) -> Result<Blobs, BlobsError> {
        let failed = |why| BlobsError::Folder { folder: folder.to_owned(), why };
        // Folders that become empty go away, but the one that all uploads need: what is made in it at that moment would find none.
        let uploads = folder.join("uploads");
        std::fs::create_dir_all(&uploads).map_err(failed)?;
        std::fs::write(uploads.join("about.txt"), "Pieces of photos that are on their way.\n").map_err(failed)?;
        let store = LocalFileSystem::new_with_prefix(folder).map_err(|e| failed(io::Error::other(e)))?;
        let store = store.with_fsync(true).with_automatic_cleanup(true);
        Ok(Blobs { store: Arc::new(store) })
    }

    /// At an address: `file:///folder`, or `s3://bucket`, whose address and key come from the environment, as AWS_ variables. What
    /// cannot be used is an error now, and not when the first photo comes. `nonce` names what is tried, and no other start's.
    pub async fn at(url: &str, nonce: &str) -> Result<Blobs, BlobsError> {
        if let Some(folder) = url.strip_prefix("file://") {
            return Blobs::folder(Path::new(folder));
        }
        if url.strip_prefix("s3://").is_none_or(|bucket| bucket.is_empty() || bucket.contains('/')) {
            return Err(BlobsError::Address);
        }
        Blobs::bucket(url, nonce).await
    }

    #[cfg(feature = "s3")]
    async fn bucket(url: &str, nonce: &str) -> Result<Blobs, BlobsError> {
        let failed = |why| BlobsError::Bucket { url: url.to_owned(), why };
        let store = super::s3::store(url).map_err(failed)?;
        let blobs = Blobs { store: Arc::new(store) };
        // All that is done later, in a folder that no other process uses at this moment.
        let probe = format!("started/{nonce}");
        let key = Key::from(format!("{probe}/piece"));
        blobs.store.put(&key, PutPayload::from_static(b"An office started here.")).await.map_err(failed)?;
        blobs.store.get(&key).await.map_err(failed)?;
        blobs.emptied(&probe).await.map_err(failed)?;
        Ok(blobs)
    }

    #[cfg(not(feature = "s3"))]
    async fn bucket(_: &str, _: &str) -> Result<Blobs, BlobsError> {
        Err(BlobsError::NoS3)
    }

    /// Keeps `bytes` whole under `key`.
    pub async fn put(&self, key: &str, bytes: Vec<u8>) -> Result<(), OfficeError> {
        self.store.put(&Key::from(key), PutPayload::from(bytes)).await.map(drop).map_err(fault)
    }

    /// All bytes under `key`, if it is there.
    pub async fn get(&self, key: &str) -> Result<Option<Bytes>, OfficeError> {
        self.range(key, None).await
    }

    /// The bytes of `range` under `key`, if it is there.
    pub async fn range(&self, key: &str, range: Option<Range<u64>>) -> Result<Option<Bytes>, OfficeError> {
        let options = GetOptions { range: range.map(GetRange::Bounded), ..GetOptions::default() };
        match self.store.get_opts(&Key::from(key), options).await {
            Ok(found) => found.bytes().await.map(Some).map_err(fault),
            Err(object_store::Error::NotFound { .. }) => Ok(None),
            Err(e) => Err(fault(e)),
        }
    }

    /// Takes away all that lies in the folder `key`.
    pub async fn clear(&self, key: &str) -> Result<(), OfficeError> {
        self.emptied(key).await.map_err(fault)
    }

    async fn emptied(&self, key: &str) -> object_store::Result<()> {
        let found = self.store.list(Some(&Key::from(key))).map_ok(|object| object.location).boxed();
        let mut gone = self.store.delete_stream(found);
        while let Some(one) = gone.next().await {
            match one {
                Ok(_) | Err(object_store::Error::NotFound { .. }) => {}
                Err(e) => return Err(e),
            }
        }
        Ok(())
    }

    /// Takes away what is under `key`, if it is there.
    pub async fn delete(&self, key: &str) -> Result<(), OfficeError> {
        match self.store.delete(&Key::from(key)).await {
            Ok(()) | Err(object_store::Error::NotFound { .. }) => Ok(()),
            Err(e) => Err(fault(e)),
        }
    }
}

/// Where a photo lies. Two levels of folders, so that none holds a hundred thousand files.
pub fn key(name: Name) -> String {
    let text = name.to_string();
    format!("photos/{}/{text}", &text[..2])
}

fn fault(error: object_store::Error) -> OfficeError {
    OfficeError::Busy(format!("the store of photos: {}", cause(&error)))
}

/// What a person can make of an error of the store: its cause, without the calls and repeats before it.
fn cause(error: &object_store::Error) -> String {
    let mut last: &dyn std::error::Error = error;
    while let Some(source) = last.source() {
        last = source;
        if let Some(error) = last.downcast_ref::<ureq::Error>() {
            return no_answer(error);
        }
    }
    let said = last.to_string();
    let said = match (between(&said, "Code"), between(&said, "Message")) {
        (Some(code), Some(message)) => format!("{code}: {message}"),
        _ => said,
    };
    // What a store says may be a whole page.
    said.split_whitespace().collect::<Vec<_>>().join(" ").chars().take(MAX_SAID).collect()
}

/// The text of an element of the XML in which a store says what is wrong.
fn between<'a>(said: &'a str, name: &str) -> Option<&'a str> {
    let (_, after) = said.split_once(&format!("<{name}>"))?;
    Some(after.split_once(&format!("</{name}>"))?.0)
}
