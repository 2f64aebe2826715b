//! The screen of languages.

says! {
    title => "language-title",
    row(name) => "language-row",
    as_device => "language-as-device",
    chosen => "language-chosen",
    draft => "language-draft",
    draft_caution => "language-draft-caution",
    rules_apart => "language-rules-apart",
}
