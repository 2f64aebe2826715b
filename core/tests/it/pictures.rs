//! Camera files made in the test, so that nothing needs a licence.

/// Grey, rows from the top.
pub struct Grey {
    pub data: Vec<u8>,
    pub width: u32,
    pub height: u32,
}

pub fn grey(width: u32, height: u32, value: impl Fn(u32, u32) -> u8) -> Grey {
    let data = (0..height).flat_map(|y| (0..width).map(move |x| (x, y))).map(|(x, y)| value(x, y)).collect();
    Grey { data, width, height }
}

/// Different in every corner and along every side.
pub fn corners(width: u32, height: u32) -> Grey {
    grey(width, height, |x, y| (x * 100 / width + y * 150 / height) as u8 + if x < 8 && y < 8 { 5 } else { 0 })
}

/// Chance from a seed (Marsaglia 2003, xorshift64).
pub struct Chance(pub u64);

impl Chance {
    pub fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 16) as usize % n
    }
}

/// What phones write: the orientation, the serial number of the body and a place (Exif 2.32; TIFF 6.0).
pub fn exif(orientation: u16) -> Vec<u8> {
    let mut out = b"II*\0\x08\0\0\0".to_vec();
    let field = |out: &mut Vec<u8>, tag: u16, kind: u16, count: u32, value: [u8; 4]| {
        out.extend(tag.to_le_bytes());
        out.extend(kind.to_le_bytes());
        out.extend(count.to_le_bytes());
        out.extend(value);
    };
    let [low, high] = orientation.to_le_bytes();
    out.extend(3u16.to_le_bytes());
    field(&mut out, 0x0112, 3, 1, [low, high, 0, 0]);
    field(&mut out, 0x8769, 4, 1, 50u32.to_le_bytes());
    field(&mut out, 0x8825, 4, 1, 68u32.to_le_bytes());
    out.extend([0; 4]);
    out.extend(1u16.to_le_bytes());
    field(&mut out, 0xa431, 2, 12, 98u32.to_le_bytes());
    out.extend([0; 4]);
    out.extend(2u16.to_le_bytes());
    field(&mut out, 0x0001, 2, 2, *b"N\0\0\0");
    field(&mut out, 0x0002, 5, 3, 110u32.to_le_bytes());
    out.extend([0; 4]);
    out.extend(b"SERIAL12345\0");
    [51u32, 1, 30, 1, 0, 1].iter().for_each(|n| out.extend(n.to_le_bytes()));
    out
}

pub fn jpeg(picture: &Grey, exif: Option<&[u8]>) -> Vec<u8> {
    let mut file = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut file, 100);
    if let Some(exif) = exif {
        encoder.add_exif_metadata(exif).unwrap();
    }
    let (width, height) = (picture.width as u16, picture.height as u16);
    encoder.encode(&picture.data, width, height, jpeg_encoder::ColorType::Luma).unwrap();
    file
}

pub fn png(picture: &Grey, exif: Option<&[u8]>) -> Vec<u8> {
    let mut file = Vec::new();
    let mut writer = png::Encoder::new(&mut file, picture.width, picture.height).write_header().unwrap();
    if let Some(exif) = exif {
        writer.write_chunk(png::chunk::eXIf, exif).unwrap();
    }
    writer.write_image_data(&picture.data).unwrap();
    writer.finish().unwrap();
    file
}

pub fn webp(picture: &Grey, exif: Option<&[u8]>) -> Vec<u8> {
    let mut file = Vec::new();
    let mut encoder = image_webp::WebPEncoder::new(&mut file);
    if let Some(exif) = exif {
        encoder.set_exif_metadata(exif.to_vec());
    }
    encoder.encode(&picture.data, picture.width, picture.height, image_webp::ColorType::L8).unwrap();
    file
}

pub type Writer = fn(&Grey, Option<&[u8]>) -> Vec<u8>;
pub const WRITERS: [(&str, Writer); 3] = [("image/jpeg", jpeg), ("image/png", png), ("image/webp", webp)];
