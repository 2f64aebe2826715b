//! Tag ids. Sources: ISO 7064 MOD 37-2 as python-stdnum computes it (G123489654321 gives Y).

use stillbar_core::tag::read::{FoundTag, Luma, frame, still};
use stillbar_core::tag::{Symbol, TagError, TagId, check};

#[test]
fn the_check_character_is_iso_7064_mod_37_2() {
    assert_eq!(check(b"G123489654321"), Some(b'Y'));
    assert_eq!(check(b"lower"), None);
}

#[test]
fn a_tag_is_read_as_printed_or_typed() {
    let tag = TagId::from_random([7; TagId::RANDOM_BYTES]);
    let spaced = tag.spaced();
    for text in
        [tag.to_string(), spaced.clone(), spaced.to_lowercase(), spaced.replace(' ', "-"), spaced.replace(' ', " – ")]
    {
        assert_eq!(text.parse(), Ok(tag), "{text}");
    }
    for foreign in ["", "STB", "https://example.org/", "STB0123456789ABCD", &"STB ".repeat(1000)] {
        assert_eq!(foreign.parse::<TagId>(), Err(TagError::Foreign), "{foreign}");
    }
}

/// Tags by chance, the same ones on every run (SplitMix64).
fn by_chance(count: u64) -> impl Iterator<Item = TagId> {
    let mixed = |n: u64| {
        let z = n.wrapping_mul(0x9E37_79B9_7F4A_7C15);
        let z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    };
    (1..=count).map(move |n| TagId::from_random(std::array::from_fn(|k| mixed(n << 4 | k as u64) as u8)))
}

/// Neither behind the mark nor as the check character; all others occur at every place.
#[test]
fn no_character_is_taken_for_another() {
    let mut met = vec![std::collections::BTreeSet::new(); 16];
    for tag in by_chance(2000) {
        for (at, character) in tag.to_string().chars().enumerate() {
            met[at].insert(character);
        }
    }
    for (at, met) in met.iter().enumerate().skip(3) {
        assert_eq!(met.iter().collect::<String>(), "0123456789ABCDEFGHJKMNPQRSTVWXYZ", "at {at}");
    }
}

/// What fingers type for a zero and a one is taken for them, alone and all at once.
#[test]
fn zeros_and_ones_are_read_as_people_type_them() {
    let mut tried = 0;
    for tag in by_chance(500) {
        let text = tag.to_string();
        for (meant, typed) in [('0', "O"), ('0', "o"), ('1', "I"), ('1', "i"), ('1', "L"), ('1', "l")] {
            tried += text.matches(meant).count();
            assert_eq!(text.replace(meant, typed).parse(), Ok(tag), "{text} with {typed}");
        }
        assert_eq!(text.replace('0', "o").replace('1', "l").to_lowercase().parse(), Ok(tag), "{text}");
    }
    assert!(tried > 1000, "{tried}");
}

/// Every wrong key at every place, and every exchange of neighbours.
#[test]
fn a_mistyped_tag_is_refused() {
    let refused = |wrong: &[u8], at: usize| {
        let wanted = if at < 3 { TagError::Foreign } else { TagError::Check };
        let wrong = String::from_utf8(wrong.to_vec()).unwrap();
        assert_eq!(wrong.parse::<TagId>(), Err(wanted), "{wrong}");
    };
    // The same character by what is forgiven.
    let plain = |c: u8| match c.to_ascii_uppercase() {
        b'O' => b'0',
        b'I' | b'L' => b'1',
        other => other,
    };
    for tag in by_chance(500) {
        let tag = tag.to_string().into_bytes();
        for at in 0..tag.len() {
            let wrong = |c: &u8| *c != b'-' && plain(*c) != tag[at];
            for other in (b'!'..=b'~').filter(wrong) {
                let mut typed = tag.clone();
                typed[at] = other;
                refused(&typed, at);
            }
            if at + 1 < tag.len() && tag[at] != tag[at + 1] {
                let mut typed = tag.clone();
                typed.swap(at, at + 1);
                refused(&typed, at);
            }
        }
    }
}

/// The symbol is read as drawn, and a symbol of this text is 21 modules wide: version 1 (ISO/IEC 18004, table 7: 16 characters at Q).
#[test]
fn a_symbol_is_read_as_drawn() {
    for seed in 0..20 {
        let tag = TagId::from_random([seed; TagId::RANDOM_BYTES]);
        let symbol = Symbol::of(tag);
        assert_eq!(symbol.width, 21, "{tag}");
        for scale in [3, 4, 7, 16] {
            let (side, pixels) = symbol.luma(scale);
            let luma = Luma::new(side, side, &pixels).unwrap();
            for found in [frame(&luma), still(&luma)] {
                assert_eq!((found.tags, found.other), (vec![tag], vec![]), "{tag} at {scale}");
            }
        }
    }
}

/// No tag is printed without its symbol, whatever digits follow each other in it.
#[test]
fn every_tag_has_a_symbol() {
    for tag in by_chance(500) {
        assert_eq!(Symbol::of(tag).width, 21, "{tag}");
    }
    for digits in 1..12 {
        let bytes = std::array::from_fn(|k| if k < digits { k as u8 % 10 } else { 10 + k as u8 });
        let tag = TagId::from_random(bytes);
        assert_eq!(Symbol::of(tag).width, 21, "{tag}");
    }
}

/// Text of other codes is told and bounded; a tag whose check character is wrong is neither.
#[test]
fn foreign_and_misprinted_codes() {
    let read = |text: &str| {
        let (side, pixels) = Symbol::of_text(text).luma(6);
        still(&Luma::new(side, side, &pixels).unwrap())
    };
    assert_eq!(read("https://example.org/a?b=c").other, ["https://example.org/a?b=c"]);
    assert_eq!(read("STB0000000000000"), FoundTag::default());
}
