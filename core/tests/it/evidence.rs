//! Photos as evidence. What is held against outside references is in `tests/outside/test_photos.py`.

use std::cell::Cell;
use std::panic;
use std::sync::Once;

use stillbar_core::evidence::{
    BLURRED_BELOW, MAX_LUMA_PIXELS, MAX_PHOTO_BYTES, PRINT_SIDE, PhotoError, THUMBNAIL_SIDE, WORKING_SIDE, check,
    tag_warnings,
};
use stillbar_core::journal::fact::PhotoDoubt;
use stillbar_core::text::photo_doubt;
use stillbar_core::{demo, tag::TagId};

use crate::pictures::{Chance, Grey, WRITERS, corners, exif, grey, jpeg, png, webp};

/// The file's rows and columns for a picture that is `upright`, by the wording of Exif 2.32, 4.6.4.A: which visual side
/// the 0th row and the 0th column are.
fn held(upright: &Grey, orientation: u16) -> Grey {
    let (w, h) = (upright.width, upright.height);
    let (width, height) = if orientation > 4 { (h, w) } else { (w, h) };
    grey(width, height, |column, row| {
        let (x, y) = match orientation {
            1 => (column, row),
            2 => (w - 1 - column, row),
            3 => (w - 1 - column, h - 1 - row),
            4 => (column, h - 1 - row),
            5 => (row, column),
            6 => (w - 1 - row, column),
            7 => (w - 1 - row, h - 1 - column),
            8 => (row, h - 1 - column),
            _ => panic!("{orientation}"),
        };
        upright.data[(y * w + x) as usize]
    })
}

#[test]
fn all_eight_orientations_come_out_upright() {
    // Longer than one of the squares in which pictures are turned, and no multiple of it.
    let upright = corners(150, 83);
    for (media, write) in WRITERS {
        for orientation in 1..=8 {
            let file = write(&held(&upright, orientation), Some(&exif(orientation)));
            let seen = check(&file).unwrap();
            assert_eq!(seen.media, media);
            assert_eq!((u16::from(seen.orientation), seen.width, seen.height), (orientation, 150, 83), "{media}");
            assert_eq!((seen.luma_width, seen.luma_height), (150, 83));
            let off = seen.luma.iter().zip(&upright.data).map(|(a, b)| a.abs_diff(*b)).max();
            // Only JPEG loses anything.
            let allowed = if media == "image/jpeg" { 4 } else { 0 };
            assert!(off <= Some(allowed), "{media}, orientation {orientation}: {off:?}");
        }
    }
}

/// Many programs write WebP so; Pillow's own samples have it.
#[test]
fn exif_in_webp_may_have_the_mark_of_jpeg_before_it() {
    let marked = [b"Exif\0\0", exif(6).as_slice()].concat();
    assert_eq!(check(&webp(&corners(40, 24), Some(&marked))).unwrap().orientation, 6);
}

#[test]
fn an_orientation_that_cannot_be_read_is_none() {
    let picture = corners(40, 24);
    let mut damaged = exif(6);
    damaged[4..8].copy_from_slice(&[0xff; 4]);
    for exif in [exif(0), exif(9), exif(u16::MAX), damaged, b"II*\0".to_vec(), vec![0; 40]] {
        let seen = check(&jpeg(&picture, Some(&exif))).unwrap();
        assert_eq!((seen.orientation, seen.width), (1, 40));
    }
}

#[test]
fn transparent_colour_and_sixteen_bits_are_read() {
    let write = |kind, depth, data: &[u8]| {
        let mut file = Vec::new();
        let mut encoder = png::Encoder::new(&mut file, 2, 1);
        encoder.set_color(kind);
        encoder.set_depth(depth);
        encoder.write_header().unwrap().write_image_data(data).unwrap();
        check(&file).unwrap().luma
    };
    use png::{BitDepth, ColorType};
    assert_eq!(write(ColorType::Rgba, BitDepth::Eight, &[0, 0, 0, 255, 0, 0, 0, 0]), [0, 255]);
    assert_eq!(write(ColorType::GrayscaleAlpha, BitDepth::Eight, &[50, 255, 50, 0]), [50, 255]);
    assert_eq!(write(ColorType::Grayscale, BitDepth::Sixteen, &[80, 1, 90, 2]), [80, 90]);
    assert_eq!(write(ColorType::Grayscale, BitDepth::One, &[0b0100_0000]), [0, 255]);
    // ITU-R BT.601: green counts most.
    assert_eq!(write(ColorType::Rgb, BitDepth::Eight, &[255, 0, 0, 0, 255, 0]), [77, 149]);
}

/// Files of some dozen bytes that would need gigabytes.
#[test]
fn bombs_are_refused_by_their_headers() {
    let mut jpeg = b"\xff\xd8\xff\xc0\0\x0b\x08\xea\x60\xea\x60\x01\x01\x11\0\xff\xda\0\x08\x01\x01\0\0\x3f\0".to_vec();
    jpeg.extend(b"\0\0\xff\xd9");
    let progressive = [&jpeg[..3], b"\xc2", &jpeg[4..]].concat();
    let mut png = png(&corners(8, 8), None);
    png[16..24].copy_from_slice(&[0, 0, 0xea, 0x60, 0, 0, 0xea, 0x60]);
    let vp8x = b"RIFF\x16\0\0\0WEBPVP8X\x0a\0\0\0\0\0\0\0\x5f\xea\0\x5f\xea\0".to_vec();
    for (what, file) in [("JPEG", jpeg), ("progressive JPEG", progressive), ("PNG", png), ("WebP", vp8x)] {
        let found = check(&file);
        assert_eq!(found, Err(PhotoError::TooManyPixels { width: 60_000, height: 60_000 }), "{what}");
    }
    // The largest frames that WebP knows (RFC 9649) on their own, and a huge one on a small canvas.
    let vp8 = b"RIFF\x16\0\0\0WEBPVP8 \x0a\0\0\0\x10\0\0\x9d\x01\x2a\xff\x3f\xff\x3f".to_vec();
    let vp8l = b"RIFF\x12\0\0\0WEBPVP8L\x05\0\0\0\x2f\xff\xff\xff\x0f\0".to_vec();
    assert_eq!(check(&vp8), Err(PhotoError::TooManyPixels { width: 16383, height: 16383 }));
    assert_eq!(check(&vp8l), Err(PhotoError::TooManyPixels { width: 16384, height: 16384 }));
    let mut hidden = b"RIFF\0\0\0\0WEBPVP8X\x0a\0\0\0\0\0\0\0\x07\0\0\x07\0\0".to_vec();
    hidden.extend(&vp8l[12..]);
    hidden[4] = hidden.len() as u8 - 8;
    assert_eq!(check(&hidden), Err(PhotoError::Damaged("WebP")));
    // The same with two frame headers in a JPEG: which one a decoder takes is its own affair.
    let small = self::jpeg(&corners(8, 8), None);
    let twice = [&small[..2], b"\xff\xc0\0\x0b\x08\xea\x60\xea\x60\x01\x01\x11\0", &small[2..]].concat();
    assert_eq!(check(&twice), Err(PhotoError::Damaged("JPEG")));
}

#[test]
fn what_is_no_photo_is_refused_with_advice() {
    let animated = b"RIFF\x1e\0\0\0WEBPVP8X\x0a\0\0\0\x02\0\0\0\x07\0\0\x07\0\0ANIM\0\0\0\0".to_vec();
    let jpeg_without_a_frame = b"\xff\xd8\xff\xe0\0\x04\0\0\xff\xd9".to_vec();
    let mut no_height = jpeg(&corners(8, 8), None);
    let frame = no_height.windows(2).position(|w| w == [0xff, 0xc0]).unwrap();
    no_height[frame + 5..frame + 7].copy_from_slice(&[0, 0]);
    for (file, says) in [
        (vec![], "is empty. Take it again."),
        (vec![0xff; MAX_PHOTO_BYTES + 1], "more than 40 MB. Set the camera"),
        (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic".to_vec(), "(HEIC) that cannot be kept here. Set the camera to JPEG"),
        (b"\0\0\0\x18ftypmif1\0\0\0\0mif1avif".to_vec(), "Set the camera to JPEG"),
        (b"\0\0\0\x18ftypisom\0\0\0\0mp41".to_vec(), "not a JPEG, PNG or WebP"),
        (b"%PDF-1.7".to_vec(), "not a JPEG, PNG or WebP picture. Choose a photo."),
        (b"GIF89a".to_vec(), "not a JPEG, PNG or WebP"),
        (vec![0xff], "not a JPEG, PNG or WebP"),
        (animated, "a moving picture. Take a single photo."),
        (jpeg_without_a_frame, "is damaged and cannot be read as JPEG. Take it again"),
        (no_height, "is damaged and cannot be read as JPEG"),
    ] {
        let said = check(&file).unwrap_err().to_string();
        assert!(said.contains(says), "{said}");
    }
}

#[test]
fn a_file_cut_off_anywhere_is_refused() {
    for (media, write) in WRITERS {
        let whole = write(&grey(40, 24, |x, y| (x * 37 % 251 + y * 91 % 3) as u8), Some(&exif(6)));
        check(&whole).unwrap();
        for end in 0..whole.len() {
            assert!(check(&whole[..end]).is_err(), "{media}: {end} of {} bytes pass", whole.len());
        }
    }
}

#[test]
fn copies_hold_the_picture_and_nothing_else() {
    let secret: [&[u8]; 4] = [b"Exif", b"SERIAL12345", b"II*\0", b"http://ns.adobe.com"];
    for (media, write) in WRITERS {
        let file = write(&corners(2000, 1300), Some(&exif(8)));
        assert!(has(&file, b"SERIAL12345"));
        let seen = check(&file).unwrap();
        for (copy, long) in
            [(&seen.working, WORKING_SIDE), (&seen.print, PRINT_SIDE), (&seen.thumbnail, THUMBNAIL_SIDE)]
        {
            for bytes in secret {
                assert!(!has(copy, bytes), "{media}: {}", String::from_utf8_lossy(bytes));
            }
            // Of application segments only APP0 (JFIF), and no comment.
            for marker in (0xe1..=0xef).chain([0xfe]) {
                assert!(!has(copy, &[0xff, marker]), "{media}: segment {marker:x}");
            }
            let of = check(copy).unwrap();
            assert_eq!((of.orientation, of.width.max(of.height)), (1, long));
            assert_eq!(of.height, long, "the copy of a picture held upright stands");
        }
        assert_eq!((seen.width, seen.height, seen.orientation), (1300, 2000, 8));
    }
}

fn has(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|w| w == part)
}

#[test]
fn a_large_photo_gives_a_bounded_plane() {
    let (width, height) = (5000, 3000);
    let seen = check(&png(&corners(width, height), None)).unwrap();
    assert_eq!((seen.width, seen.height), (width, height));
    assert_eq!(seen.luma.len(), (seen.luma_width * seen.luma_height) as usize);
    assert!(seen.luma.len() as u64 <= MAX_LUMA_PIXELS && seen.luma_width > 4000);
}

#[test]
fn a_poor_picture_is_kept_and_warned_of() {
    let warned = |value: fn(u32, u32) -> u8| check(&png(&grey(300, 200, value), None)).unwrap().warnings;
    let stripes = |x: u32, low: u8, high: u8| if x.is_multiple_of(8) { low } else { high };
    assert_eq!(warned(|_, y| (y / 2) as u8 + 60), [PhotoDoubt::Blurred]);
    assert_eq!(warned(move |x, _| if x.is_multiple_of(8) { 60 } else { 5 }), [PhotoDoubt::Dark]);
    assert_eq!(warned(move |x, _| if x.is_multiple_of(8) { 150 } else { 250 }), [PhotoDoubt::Bright]);
    assert_eq!(warned(|_, _| 0), [PhotoDoubt::Blurred, PhotoDoubt::Dark]);
    assert_eq!(check(&png(&grey(300, 200, |x, _| stripes(x, 60, 200)), None)).unwrap().warnings, []);
    for warning in [PhotoDoubt::Blurred, PhotoDoubt::Dark, PhotoDoubt::Bright] {
        assert!(photo_doubt(&warning, "Pump 2").ends_with('.'));
    }
}

/// By hand: one white pixel on black, 3 x 4, has the Laplacians -1020 and 255 inside; their variance is 637.5 squared.
#[test]
fn sharpness_and_light_are_what_they_are_said_to_be() {
    let seen = check(&png(&grey(3, 4, |x, y| if (x, y) == (1, 1) { 255 } else { 0 }), None)).unwrap();
    assert_eq!(seen.sharpness, 637.5 * 637.5);
    assert_eq!((seen.exposure.mean, seen.exposure.black, seen.exposure.white), (255.0 / 12.0, 11.0 / 12.0, 1.0 / 12.0));
    for (w, h) in [(1, 1), (2, 5), (5, 2), (1, 300)] {
        assert_eq!(check(&png(&grey(w, h, |x, _| x as u8), None)).unwrap().sharpness, 0.0);
    }
}

/// Only the picture counts, and not how many pixels the camera gave it.
#[test]
fn sharpness_is_measured_at_one_scale() {
    let at = |side: u32| {
        let cell = side / 64;
        check(&png(&grey(side, side * 3 / 4, |x, y| 40 + 150 * ((x / cell + y / cell) % 2) as u8), None))
            .unwrap()
            .sharpness
    };
    let (one, two) = (at(1024), at(2048));
    assert!((one - two).abs() < 0.05 * one, "{one} at 1024, {two} at 2048");
    assert!(one > BLURRED_BELOW);
}

#[test]
fn the_tag_in_the_picture_is_compared_with_the_point() {
    let tag = |seed: u8| TagId::from_random([seed; TagId::RANDOM_BYTES]);
    let (two, three, spare, twin) = (tag(2), tag(3), tag(4), tag(5));
    let name_of = |tag: TagId| {
        [(two, "Pump 2"), (three, "Pump 3"), (twin, "Pump 2")]
            .iter()
            .find(|(t, _)| *t == tag)
            .map(|(_, n)| n.to_string())
    };
    let said = |found: &[TagId], expected: &[TagId]| -> Vec<String> {
        tag_warnings(found, expected, &name_of).iter().map(|doubt| photo_doubt(doubt, "Pump 2")).collect()
    };
    let other = "The tag in this picture belongs to Pump 3, not Pump 2.";
    assert_eq!(said(&[three], &[two]), [other]);
    assert_eq!(said(&[three, three], &[two]), [other], "said once");
    assert_eq!(said(&[three], &[]), [other], "a point without a tag of its own");
    assert_eq!(said(&[], &[two]), ["No tag can be read in this picture, and Pump 2 has one."]);
    assert_eq!(said(&[], &[]), [""; 0]);
    assert_eq!(said(&[two], &[two]), [""; 0]);
    assert_eq!(said(&[three, two], &[two]), [""; 0], "the neighbour may be seen too");
    assert_eq!(said(&[spare], &[spare, two]), [""; 0], "one of two tags is enough");
    assert_eq!(said(&[twin], &[two]), ["The tag in this picture belongs to another point that is called Pump 2 too."]);
    let unknown = format!(
        "The tag in this picture, {}, belongs to nothing that this device knows, and not to Pump 2.",
        spare.spaced()
    );
    assert_eq!(said(&[spare, three], &[two]), [unknown.as_str(), other]);
}

thread_local! {
    /// Panics on this thread, those that were caught too.
    static PANICS: Cell<Option<u32>> = const { Cell::new(None) };
}

/// Counts the panics in `run`; `check` turns them into an answer, and none is wanted in the first place.
fn panics(run: impl FnOnce()) -> u32 {
    static HOOK: Once = Once::new();
    HOOK.call_once(|| {
        let before = panic::take_hook();
        panic::set_hook(Box::new(move |info| match PANICS.get() {
            Some(n) => {
                PANICS.set(Some(n + 1));
                eprintln!("{info}");
            }
            None => before(info),
        }));
    });
    PANICS.set(Some(0));
    let ended = panic::catch_unwind(panic::AssertUnwindSafe(run));
    let count = PANICS.replace(None).unwrap_or_default();
    ended.unwrap();
    count
}

/// Bytes turned, cut out, doubled and put in, anywhere; half of the time in the first bytes, where the headers are.
fn damaged(chance: &mut Chance, whole: &[u8], near: usize) -> Vec<u8> {
    let mut file = whole.to_vec();
    for _ in 0..=chance.below(6) {
        let end = if chance.below(2) == 0 { near.min(file.len()) } else { file.len() };
        let at = chance.below(end.max(1));
        match chance.below(5) {
            0 => file.insert(at, chance.below(256) as u8),
            1 => drop(file.drain(at..(at + chance.below(9)).min(file.len()))),
            2 => {
                let part = file[at..(at + chance.below(40)).min(file.len())].to_vec();
                file.splice(at..at, part);
            }
            3 => file[at] = [0, 1, 0x7f, 0x80, 0xff][chance.below(5)],
            _ => file[at] ^= 1 << chance.below(8),
        }
        if file.is_empty() {
            break;
        }
    }
    file
}

#[test]
fn no_damage_makes_it_panic() {
    let mut chance = Chance(0x5eed);
    let picture = grey(48, 40, |x, y| (x * 37 % 251 + y * 91 % 30) as u8);
    let mut files: Vec<Vec<u8>> = WRITERS.iter().map(|(_, write)| write(&picture, Some(&exif(5)))).collect();
    let mut file = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut file, 60);
    encoder.set_progressive(true);
    let colour: Vec<u8> = (0..48 * 40 * 3).map(|i| (i * 7 % 256) as u8).collect();
    encoder.encode(&colour, 48, 40, jpeg_encoder::ColorType::Rgb).unwrap();
    files.push(file);
    let (mut passed, mut refused) = (0, 0);
    let count = panics(|| {
        for round in 0..4000 {
            match check(&damaged(&mut chance, &files[round % files.len()], 200)) {
                Ok(_) => passed += 1,
                Err(_) => refused += 1,
            }
        }
    });
    assert_eq!(count, 0);
    // The damage reaches the decoders, and not only the first bytes.
    assert!(passed > 100 && refused > 1000, "{passed} passed, {refused} refused");
}

#[test]
fn no_exif_makes_it_panic() {
    let mut chance = Chance(0xe71f);
    let picture = corners(16, 16);
    let mut upright = 0;
    let count = panics(|| {
        for round in 0..3000 {
            let exif = damaged(&mut chance, &exif(6), 50);
            let (_, write) = WRITERS[round % WRITERS.len()];
            // The picture itself is whole, so it must be read whatever its Exif says.
            upright += u32::from(check(&write(&picture, Some(&exif))).unwrap().orientation == 6);
        }
    });
    assert_eq!(count, 0);
    assert!((300..2700).contains(&upright), "{upright} of 3000 kept their orientation");
}

#[test]
fn garbage_is_refused() {
    let mut chance = Chance(0x9a4b);
    let starts: [&[u8]; 4] = [b"", b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"RIFF\xf0\0\0\0WEBP"];
    let count = panics(|| {
        for round in 0..2000 {
            let length = chance.below(3000);
            let noise: Vec<u8> = (0..length).map(|_| chance.below(256) as u8).collect();
            assert!(check(&[starts[round % 4], &noise].concat()).is_err());
        }
    });
    assert_eq!(count, 0);
}

/// The picture that the demo uses, which must pass.
#[test]
fn the_demo_picture_is_a_good_one() {
    let seen = check(demo::PHOTO).unwrap();
    assert_eq!((seen.media, seen.width, seen.height, seen.orientation), ("image/png", 480, 640, 1));
    assert_eq!(seen.warnings, []);
}
