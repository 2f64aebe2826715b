//! Giving up an isolation.

says! {
    title => "give-up-title",
    given_up => "give-up-given-up",
    given_up_why(why, by) => "give-up-given-up-why",
    finished => "give-up-finished",
    at_work => "give-up-at-work",
    stop_work => "give-up-stop-work",
    nothing_open => "give-up-nothing-open",
    live => "give-up-live",
    then => "give-up-then",
    why => "give-up-why",
    why_hint => "give-up-why-hint",
    clear => "give-up-clear",
    clear_hint => "give-up-clear-hint",
    done => "give-up-done",
}
