//! What a shell says by itself, beside what a screen has.

says! {
    warning => "shell-warning",
    stop => "shell-stop",
    must => "shell-must",
    note => "shell-note",
    volts => "shell-volts",
    number_counts => "shell-number-counts",
    smaller => "shell-smaller",
    larger => "shell-larger",
    clear => "shell-clear",
    clear_of(label) => "shell-clear-of",
    type_name => "shell-type-name",
    contrast => "shell-contrast",
}
