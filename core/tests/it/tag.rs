//! Tag ids. Sources: ISO 7064 MOD 37-2 as python-stdnum computes it (G123489654321 gives Y).

use stillbar_core::tag::read::{Found, Luma, frame, still};
use stillbar_core::tag::{Symbol, TagError, TagId, check};

#[test]
fn the_check_character_is_iso_7064_mod_37_2() {
    assert_eq!(check(b"G123489654321"), Some(b'Y'));
    assert_eq!(check(b"lower"), None);
}

#[test]
fn a_tag_is_read_as_printed_or_typed() {
    let tag = TagId::from_random([7; TagId::RANDOM_BYTES]);
    for text in [tag.to_string(), tag.spaced(), tag.to_string().to_lowercase(), tag.spaced().replace(' ', "-")] {
        assert_eq!(text.parse(), Ok(tag), "{text}");
    }
    for foreign in ["", "STB", "https://example.org/", "STB0123456789ABCD", &"STB ".repeat(1000)] {
        assert_eq!(foreign.parse::<TagId>(), Err(TagError::Foreign), "{foreign}");
    }
}

/// Every single error and every exchange of neighbours in the part behind the mark.
#[test]
fn a_mistyped_tag_is_refused() {
    for seed in 0..50 {
        let tag = TagId::from_random(std::array::from_fn(|k| (seed * 31 + k * 17) as u8)).to_string().into_bytes();
        for at in 3..tag.len() {
            for other in b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*".iter().filter(|c| **c != tag[at]) {
                let mut wrong = tag.clone();
                wrong[at] = *other;
                assert_eq!(String::from_utf8(wrong).unwrap().parse::<TagId>(), Err(TagError::Check));
            }
            if at + 1 < tag.len() && tag[at] != tag[at + 1] {
                let mut wrong = tag.clone();
                wrong.swap(at, at + 1);
                assert_eq!(String::from_utf8(wrong).unwrap().parse::<TagId>(), Err(TagError::Check));
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
        assert_eq!(symbol.width, 21);
        for scale in [3, 4, 7, 16] {
            let (side, pixels) = symbol.luma(scale);
            let luma = Luma::new(side, side, &pixels).unwrap();
            for found in [frame(&luma), still(&luma)] {
                assert_eq!((found.tags, found.other), (vec![tag], vec![]), "{tag} at {scale}");
            }
        }
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
    assert_eq!(read("STB0000000000000"), Found::default());
}
