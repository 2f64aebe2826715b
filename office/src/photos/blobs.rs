//! Where photos lie: a folder, or an object store.

use std::ops::Range;
use std::path::Path;
use std::sync::Arc;

use axum::body::Bytes;
use object_store::local::LocalFileSystem;
use object_store::path::Path as Key;
use object_store::{GetOptions, GetRange, ObjectStore, ObjectStoreExt, PutPayload};

use super::Name;
use crate::fault::Fault;

/// The place of photos and of the pieces of uploads.
pub struct Blobs {
    store: Arc<dyn ObjectStore>,
}

impl Blobs {
    /// In a folder. What was written is on disk before it counts.
    pub fn folder(folder: &Path) -> Result<Blobs, String> {
        let failed =
            |e: &dyn std::fmt::Display| format!("The folder of photos {} cannot be used: {e}.", folder.display());
        std::fs::create_dir_all(folder).map_err(|e| failed(&e))?;
        let store = LocalFileSystem::new_with_prefix(folder).map_err(|e| failed(&e))?.with_fsync(true);
        Ok(Blobs { store: Arc::new(store) })
    }

    /// At an address: `file:///folder`, or `s3://bucket` in a build with S3; its keys come from the environment, as AWS_ variables.
    pub fn at(url: &str) -> Result<Blobs, String> {
        if let Some(folder) = url.strip_prefix("file://") {
            return Blobs::folder(Path::new(folder));
        }
        #[cfg(feature = "s3")]
        if url.starts_with("s3://") {
            let store = object_store::aws::AmazonS3Builder::from_env().with_url(url).build();
            let store = store.map_err(|e| format!("The store of photos {url} cannot be used: {e}."))?;
            return Ok(Blobs { store: Arc::new(store) });
        }
        Err("--objects takes file:///FOLDER, or s3://BUCKET in a build with the feature s3.".into())
    }

    /// Keeps `bytes` whole under `key`.
    pub async fn put(&self, key: &str, bytes: Vec<u8>) -> Result<(), Fault> {
        self.store.put(&Key::from(key), PutPayload::from(bytes)).await.map(drop).map_err(fault)
    }

    /// All bytes under `key`, if it is there.
    pub async fn get(&self, key: &str) -> Result<Option<Bytes>, Fault> {
        self.range(key, None).await
    }

    /// The bytes of `range` under `key`, if it is there.
    pub async fn range(&self, key: &str, range: Option<Range<u64>>) -> Result<Option<Bytes>, Fault> {
        let options = GetOptions { range: range.map(GetRange::Bounded), ..GetOptions::default() };
        match self.store.get_opts(&Key::from(key), options).await {
            Ok(found) => found.bytes().await.map(Some).map_err(fault),
            Err(object_store::Error::NotFound { .. }) => Ok(None),
            Err(e) => Err(fault(e)),
        }
    }

    /// Takes away what is under `key`, if it is there.
    pub async fn delete(&self, key: &str) -> Result<(), Fault> {
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

fn fault(error: object_store::Error) -> Fault {
    Fault::Busy(format!("the store of photos: {error}"))
}
