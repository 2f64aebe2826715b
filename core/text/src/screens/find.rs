//! A list that is narrowed by words.

says! {
    words => "find-words",
    words_hint => "find-words-hint",
    look => "find-look",
    shown(shown, all) => "find-shown",
    all => "find-all",
}
