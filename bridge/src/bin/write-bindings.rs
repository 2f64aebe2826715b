//! Writes the Kotlin or Swift side of the bridge from the built library; `--help` tells how.

fn main() {
    uniffi::uniffi_bindgen_main();
}
