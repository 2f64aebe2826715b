//! A real core on a folder of its own, and a thumb on its screens.

use std::path::Path;
use std::sync::Arc;

use stillbar_core::journey::{self, Props};
use stillbar_core::{Field, demo};
use stillbar_desk::platform::DesktopPlatform;

/// This laptop, but for what it keeps outside the folder.
pub fn system(data: &Path) -> Arc<DesktopPlatform> {
    Arc::new(DesktopPlatform::with_heads(data, None).expect("this system has random bytes"))
}

/// The field app on this folder.
pub fn open(data: &Path) -> Arc<Field> {
    let folder = data.to_str().expect("a folder of a test has a plain name");
    Field::open(folder.into(), system(data)).expect("it opens")
}

/// Plays these lines; one that cannot be played fails the test.
pub fn play(field: &Field, script: &str) {
    journey::play(field, script, &Props { photo: demo::PHOTO, wait: &|_| {} }).unwrap_or_else(|why| panic!("{why}"));
}
