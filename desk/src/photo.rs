//! `stillbar photo check`: what the core says of a photo, for a person or a program.

use std::path::Path;

use serde::Serialize;
use stillbar_core::evidence::{self, Checked, MAX_PHOTO_BYTES, PRINT_SIDE, PhotoError, THUMBNAIL_SIDE, WORKING_SIDE};
use stillbar_core::text::photo_doubt;

use crate::file::{self, FileError};

/// Why nothing is said of a photo.
#[derive(Debug, thiserror::Error)]
pub enum PhotoCheckError {
    /// It cannot be read, or a copy could not be written.
    #[error(transparent)]
    File(#[from] FileError),
    /// It is none that can be kept.
    #[error("{name}: {why}")]
    Photo {
        /// What the file is called.
        name: String,
        /// Why.
        #[source]
        why: PhotoError,
    },
    /// The answer could not be written as JSON.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}

#[derive(Serialize)]
struct PhotoAnswer<'a> {
    upright: bool,
    orientation: u8,
    media: &'a str,
    width: u32,
    height: u32,
    sharpness: f32,
    exposure: Light,
    sha256: &'a str,
    tags: Vec<String>,
    warnings: Vec<String>,
}

#[derive(Serialize)]
struct Light {
    mean: f32,
    black: f32,
    white: f32,
}

/// Checks the photo at `path`, or what is piped in where it is `-`, and writes its copies to the folder `copies` if one
/// is given.
pub fn check(path: &Path, copies: Option<&Path>, json: bool) -> Result<String, PhotoCheckError> {
    let name = file::name(path);
    let bytes = file::read(path, MAX_PHOTO_BYTES, &name, "a photo")?;
    let photo = evidence::check(&bytes).map_err(|why| PhotoCheckError::Photo { name, why })?;
    if let Some(folder) = copies {
        write(&photo, folder)?;
    }
    let answer = answer(&photo);
    Ok(if json { serde_json::to_string(&answer)? } else { told(&answer) })
}

fn answer(photo: &Checked) -> PhotoAnswer<'_> {
    let light = photo.exposure;
    PhotoAnswer {
        upright: photo.orientation == 1,
        orientation: photo.orientation,
        media: photo.media,
        width: photo.width,
        height: photo.height,
        sharpness: photo.sharpness,
        exposure: Light { mean: light.mean, black: light.black, white: light.white },
        sha256: &photo.sha256,
        tags: photo.codes().tags.iter().map(ToString::to_string).collect(),
        warnings: photo.warnings.iter().map(|doubt| photo_doubt(doubt, "")).collect(),
    }
}

fn told(answer: &PhotoAnswer) -> String {
    let percent = |share: f32| (100.0 * share).round();
    let Light { mean, black, white } = answer.exposure;
    let held = if answer.upright { "as taken" } else { "turned upright" };
    let mut text = format!(
        "{}, {} x {} pixels, {held}\nSHA-256    {}\nSharpness  {:.0}\nLight      mean {mean:.0} of 255, {:.0} % nearly black, {:.0} % nearly white\n",
        answer.media,
        answer.width,
        answer.height,
        answer.sha256,
        answer.sharpness,
        percent(black),
        percent(white),
    );
    for tag in &answer.tags {
        text += &format!("Tag        {tag}\n");
    }
    for warning in &answer.warnings {
        text += &format!("- {warning}\n");
    }
    text
}

fn write(photo: &Checked, folder: &Path) -> Result<(), FileError> {
    for (side, bytes) in
        [(WORKING_SIDE, &photo.working), (PRINT_SIDE, &photo.print), (THUMBNAIL_SIDE, &photo.thumbnail)]
    {
        file::write(&folder.join(format!("{}.{side}.jpg", photo.sha256)), bytes)?;
    }
    Ok(())
}
