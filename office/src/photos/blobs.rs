//! Where photos lie: a folder, or an object store.

use std::ops::Range;
use std::path::Path;
use std::sync::Arc;

use axum::body::Bytes;
use object_store::local::LocalFileSystem;
use object_store::path::Path as Key;
use object_store::{GetOptions, GetRange, ObjectStore, ObjectStoreExt, PutPayload};

use super::{Name, s3};
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
        let store = LocalFileSystem::new_with_prefix(folder).map_err(|e| failed(&e))?;
        let store = store.with_fsync(true).with_automatic_cleanup(true);
        Ok(Blobs { store: Arc::new(store) })
    }

    /// At an address: `file:///folder`, or `s3://bucket`, whose address and key come from the environment, as AWS_ variables. What
    /// cannot be written to and read from is an error now, and not when the first photo comes.
    pub async fn at(url: &str) -> Result<Blobs, String> {
        if let Some(folder) = url.strip_prefix("file://") {
            return Blobs::folder(Path::new(folder));
        }
        if !url.starts_with("s3://") {
            return Err("--objects takes file:///FOLDER or s3://BUCKET.".into());
        }
        let failed = |e: object_store::Error| {
            format!(
                "The store of photos {url} cannot be used: {}. See that the bucket is there and what AWS_ENDPOINT, AWS_REGION, \
                 AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY say; a store without TLS wants AWS_ALLOW_HTTP=true.",
                s3::cause(&e).trim_end_matches('.')
            )
        };
        let store = s3::store(url).map_err(failed)?;
        let probe = Key::from("started");
        store.put(&probe, PutPayload::from_static(b"An office started here.")).await.map_err(failed)?;
        store.get(&probe).await.map_err(failed)?;
        Ok(Blobs { store: Arc::new(store) })
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

    /// Takes away all that lies in the folder `key`.
    pub async fn clear(&self, key: &str) -> Result<(), Fault> {
        let found = self.store.list_with_delimiter(Some(&Key::from(key))).await.map_err(fault)?;
        for object in found.objects {
            self.delete(object.location.as_ref()).await?;
        }
        Ok(())
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
