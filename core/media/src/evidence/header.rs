//! What a file is and how large its picture is, from its bytes alone and before anything is decoded.

use super::PhotoError;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum ImageKind {
    Jpeg,
    Png,
    WebP,
}

impl ImageKind {
    pub fn name(self) -> &'static str {
        match self {
            ImageKind::Jpeg => "JPEG",
            ImageKind::Png => "PNG",
            ImageKind::WebP => "WebP",
        }
    }
    pub fn media(self) -> &'static str {
        match self {
            ImageKind::Jpeg => "image/jpeg",
            ImageKind::Png => "image/png",
            ImageKind::WebP => "image/webp",
        }
    }
}

/// The brands of ISO/IEC 23008-12 (HEIF) and of AV1 pictures; other files of that family are films.
const HEIC: [&[u8; 4]; 10] = [b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1", b"avif", b"avis"];

pub(super) fn sniff(bytes: &[u8]) -> Result<ImageKind, PhotoError> {
    match bytes {
        [0xff, 0xd8, 0xff, ..] => Ok(ImageKind::Jpeg),
        [0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, ..] => Ok(ImageKind::Png),
        [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Ok(ImageKind::WebP),
        [_, _, _, _, b'f', b't', b'y', b'p', a, b, c, d, ..] if HEIC.contains(&&[*a, *b, *c, *d]) => {
            Err(PhotoError::Heic)
        }
        _ => Err(PhotoError::Foreign),
    }
}

/// Across and down, not yet upright. A file whose end is missing is told apart here where the format allows it.
pub(super) fn size(kind: ImageKind, bytes: &[u8]) -> Result<(u32, u32), PhotoError> {
    let (width, height) = match kind {
        ImageKind::Jpeg => jpeg(bytes)?,
        ImageKind::Png => png(bytes)?,
        ImageKind::WebP => webp(bytes)?,
    };
    if width == 0 || height == 0 {
        return Err(PhotoError::Damaged(kind.name()));
    }
    Ok((width, height))
}

/// Walks the markers (ITU-T T.81, annex B) to the end of the image. Decoders fill what is missing with grey, which would
/// pass as a picture; so a file without its end is refused here.
fn jpeg(bytes: &[u8]) -> Result<(u32, u32), PhotoError> {
    const CUT: PhotoError = PhotoError::CutShort;
    let mut size = None;
    let mut at = 2;
    loop {
        // To the next marker: in the coded data FF 00 is a byte and FF D0 to FF D7 are restarts.
        let marker = loop {
            at += bytes.get(at..).and_then(|rest| rest.iter().position(|b| *b == 0xff)).ok_or(CUT)?;
            match bytes.get(at + 1).ok_or(CUT)? {
                0xff => at += 1,
                0x00 | 0x01 | 0xd0..=0xd7 => at += 2,
                marker => break *marker,
            }
        };
        at += 2;
        if marker == 0xd9 {
            return size.ok_or(PhotoError::Damaged("JPEG"));
        }
        let length = be16(bytes, at).ok_or(CUT)?;
        // All frame headers but the tables and extensions that share their range.
        if matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc) {
            let found = (be16(bytes, at + 5).ok_or(CUT)?, be16(bytes, at + 3).ok_or(CUT)?);
            // Two frames of one file could differ in size, and the decoder may take the other.
            if size.replace(found).is_some_and(|first| first != found) {
                return Err(PhotoError::Damaged("JPEG"));
            }
        }
        at += length as usize;
    }
}

/// IHDR is the first chunk (ISO/IEC 15948, 11.2.1).
fn png(bytes: &[u8]) -> Result<(u32, u32), PhotoError> {
    if bytes.len() < 33 {
        return Err(PhotoError::CutShort);
    }
    if &bytes[12..16] != b"IHDR" {
        return Err(PhotoError::Damaged("PNG"));
    }
    let be32 = |at: usize| u32::from_be_bytes([bytes[at], bytes[at + 1], bytes[at + 2], bytes[at + 3]]);
    Ok((be32(16), be32(20)))
}

/// Every chunk that gives a size is asked (RFC 9649): the canvas may be small and the frame in it huge.
fn webp(bytes: &[u8]) -> Result<(u32, u32), PhotoError> {
    const CUT: PhotoError = PhotoError::CutShort;
    let le = |at: usize, n: usize| -> Result<u32, PhotoError> {
        let field = bytes.get(at..at + n).ok_or(CUT)?;
        Ok(field.iter().rev().fold(0, |sum, b| sum << 8 | u32::from(*b)))
    };
    let end = 8 + le(4, 4)? as usize;
    if end > bytes.len() {
        return Err(CUT);
    }
    let (mut size, mut at) = (None, 12);
    while at + 8 <= end {
        let found = match &bytes[at..at + 4] {
            b"VP8X" => Some((le(at + 12, 3)? + 1, le(at + 15, 3)? + 1)),
            b"VP8 " => Some((le(at + 14, 2)? & 0x3fff, le(at + 16, 2)? & 0x3fff)),
            b"VP8L" => {
                let bits = le(at + 9, 4)?;
                Some(((bits & 0x3fff) + 1, (bits >> 14 & 0x3fff) + 1))
            }
            b"ANIM" | b"ANMF" => return Err(PhotoError::Moving),
            _ => None,
        };
        // The frame fills the canvas of a still picture; a file in which it does not would be sized by the wrong one.
        if let Some(found) = found
            && size.replace(found).is_some_and(|first| first != found)
        {
            return Err(PhotoError::Damaged("WebP"));
        }
        let length = le(at + 4, 4)? as usize;
        at += 8 + length + length % 2;
    }
    size.ok_or(PhotoError::Damaged("WebP"))
}

fn be16(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from(*bytes.get(at)?) << 8 | u32::from(*bytes.get(at + 1)?))
}
