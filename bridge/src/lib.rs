//! The core for phones: one library with the calling convention that the generated Kotlin and Swift speak.
//!
//! Nothing else belongs here. `core/uniffi.toml` says what the bindings are called, `src/bin/write-bindings.rs` writes them.

stillbar_core::uniffi_reexport_scaffolding!();
