//! The Merkle tree of RFC 9162 section 2.1, over SHA-256.

use sha2::{Digest, Sha256};

/// A node of the tree.
pub type Hash = [u8; 32];

fn leaf_hash(leaf: &[u8]) -> Hash {
    Sha256::new().chain_update([0]).chain_update(leaf).finalize().into()
}

fn node(left: &Hash, right: &Hash) -> Hash {
    Sha256::new().chain_update([1]).chain_update(left).chain_update(right).finalize().into()
}

/// Where a list of at least two is parted: the largest power of two below its length.
fn parted(count: usize) -> usize {
    count.next_power_of_two() / 2
}

/// The hash of the whole list (section 2.1.1).
pub fn root<L: AsRef<[u8]>>(leaves: &[L]) -> Hash {
    match leaves {
        [] => Sha256::digest([]).into(),
        [leaf] => leaf_hash(leaf.as_ref()),
        _ => {
            let (left, right) = leaves.split_at(parted(leaves.len()));
            node(&root(left), &root(right))
        }
    }
}

/// What shows that the leaf at `index` is in the list (section 2.1.3.1), from its side outwards; empty where there is no such leaf.
pub fn path<L: AsRef<[u8]>>(leaves: &[L], index: usize) -> Vec<Hash> {
    if index >= leaves.len() || leaves.len() < 2 {
        return Vec::new();
    }
    let at = parted(leaves.len());
    let (left, right) = leaves.split_at(at);
    let (mut path, beside) =
        if index < at { (self::path(left, index), root(right)) } else { (self::path(right, index - at), root(left)) };
    path.push(beside);
    path
}

/// The root of a list of `size` in which `leaf` is at `index`, by the path (section 2.1.3.2); `None` if the path is not one.
pub fn root_by(leaf: &[u8], index: u64, size: u64, path: &[Hash]) -> Option<Hash> {
    if index >= size {
        return None;
    }
    let (mut at, mut last, mut hash) = (index, size - 1, leaf_hash(leaf));
    for beside in path {
        if last == 0 {
            return None;
        }
        if at & 1 == 1 || at == last {
            hash = node(beside, &hash);
            while at & 1 == 0 && at != 0 {
                at >>= 1;
                last >>= 1;
            }
        } else {
            hash = node(&hash, beside);
        }
        at >>= 1;
        last >>= 1;
    }
    (last == 0).then_some(hash)
}
