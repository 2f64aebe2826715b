//! The conductors of a job and their supply: picked, corrected, and what stays live beside them.

says! {
    conductors => "system-conductors",
    own => "system-conductors-own",
    own_hint => "system-conductors-own-hint",
    earthing => "system-earthing",
    usual_here(hint, volts) => "system-usual-here",
    volts => "system-nominal",
    wrong => "system-wrong",
    wrong_ends => "system-wrong-ends",
    wrong_what => "system-wrong-what",
    correct => "system-correct",
    live => "system-live",
    live_what(what) => "system-live-what",
    live_at(place, screened, by) => "system-live-at",
    live_such_as => "system-live-such-as",
    live_conductors => "system-live-conductors",
    live_name => "system-live-name",
    live_where => "system-live-where",
    live_screened => "system-live-screened",
    live_save => "system-live-save",
}
