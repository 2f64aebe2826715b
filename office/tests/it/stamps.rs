//! The Merkle tree under time stamps (RFC 9162 section 2.1). `tests/outside/test_stamps.py` holds it against pymerkle, and the stamps
//! themselves against OpenSSL.

use stillbar_office::hex;
use stillbar_office::stamp::merkle::{path, root, root_by};

/// Eight leaves and their root, as pymerkle 7.0.0 has them; the empty list's root is the SHA-256 of nothing (section 2.1.1).
#[test]
fn roots_as_another_library_has_them() {
    let leaves: Vec<Vec<u8>> = vec![
        vec![],
        vec![0x00],
        vec![0x10],
        vec![0x20, 0x21],
        vec![0x30, 0x31],
        (0x40..=0x43).collect(),
        (0x50..=0x57).collect(),
        (0x60..=0x6f).collect(),
    ];
    assert_eq!(hex(&root(&leaves)), "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328");
    assert_eq!(hex(&root(&leaves[..1])), "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d");
    assert_eq!(hex(&root::<Vec<u8>>(&[])), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

/// Every leaf of every list leads to the list's root by its path, and nothing else does.
#[test]
fn a_path_shows_its_leaf_and_no_other() {
    let leaves: Vec<[u8; 2]> = (0..70u16).map(u16::to_be_bytes).collect();
    for size in 1..=leaves.len() {
        let list = &leaves[..size];
        let whole = root(list);
        for (at, leaf) in list.iter().enumerate() {
            let (at, size) = (at as u64, size as u64);
            let shown = path(list, at as usize);
            assert_eq!(root_by(leaf, at, size, &shown), Some(whole));
            assert_ne!(root_by(b"another", at, size, &shown), Some(whole));
            assert_ne!(root_by(leaf, at + 1, size, &shown), Some(whole));
            assert_eq!(root_by(leaf, size, size, &shown), None);
            let mut longer = shown.clone();
            longer.push([0; 32]);
            assert_ne!(root_by(leaf, at, size, &longer), Some(whole));
            if !shown.is_empty() {
                assert_ne!(root_by(leaf, at, size, &shown[1..]), Some(whole));
            }
        }
    }
}
