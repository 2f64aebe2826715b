//! The shell's own signs, drawn here. Shapes and colours of ISO 3864 where it has one; none is the only bearer of a
//! meaning, so a screen reader skips them all.

use maud::{Markup, html};
use stillbar_core::parts::{StepState, Tone};

/// The sign beside a text of this tone.
pub fn of_tone(tone: Tone) -> Markup {
    match tone {
        Tone::Warn => sign("sign", warn()),
        Tone::Forbid => sign("sign", forbid()),
        Tone::Must => sign("sign", must()),
        Tone::Plain => sign("sign", kept()),
        Tone::Quiet => sign("sign", html! { rect .line x="22" y="22" width="56" height="56" rx="8" {} }),
    }
}

/// The sign inside a button or an answer: only where it stops or warns.
pub fn of_button(tone: Tone) -> Markup {
    match tone {
        Tone::Warn => sign("sign small", warn()),
        Tone::Forbid => sign("sign small", forbid()),
        Tone::Must => sign("sign small", must()),
        Tone::Plain | Tone::Quiet => html! {},
    }
}

/// The state of a step. Nothing is ticked: a full box holds its proof, an empty one does not yet.
pub fn of_state(state: StepState) -> Markup {
    let drawn = match state {
        StepState::Done => kept(),
        StepState::Now => html! { path .solid d="M14 10h34l40 40-40 40H14l34-40z" {} },
        StepState::Open => html! { rect .line x="12" y="12" width="76" height="76" rx="8" {} },
        StepState::Later => {
            html! { rect .line.dashed x="16" y="16" width="68" height="68" rx="8" {} }
        }
        StepState::Deviated => {
            html! { path .line d="M50 8l42 42-42 42L8 50z" {} path .solid d="M50 8v84L8 50z" {} }
        }
        StepState::Stop => forbid(),
    };
    sign("sign state", drawn)
}

/// Beside a deviation: the same shape as its step has.
pub fn deviation() -> Markup {
    of_state(StepState::Deviated)
}

/// The way back up.
pub fn back() -> Markup {
    sign("sign small", html! { path .line d="M62 14L26 50l36 36" {} })
}

/// Half of it is dark: more contrast.
pub fn contrast() -> Markup {
    sign("sign small", html! { circle .line cx="50" cy="50" r="38" {} path .solid d="M50 12a38 38 0 0 1 0 76z" {} })
}

/// A row that opens something.
pub fn onward() -> Markup {
    sign("sign small onward", html! { path .line d="M38 14l36 36-36 36" {} })
}

/// A photo can be taken.
pub fn camera() -> Markup {
    sign("sign", html! { path .line d="M8 28h22l9-13h22l9 13h22v58H8z" {} circle .line cx="50" cy="56" r="17" {} })
}

fn kept() -> Markup {
    html! { rect .line x="12" y="12" width="76" height="76" rx="8" {} rect .solid x="28" y="28" width="44" height="44" rx="2" {} }
}

fn warn() -> Markup {
    html! {
        path .yellow d="M50 7L96 89H4z" {}
        path .black d="M46 35h8l-1.6 30h-4.8z" {}
        circle .black cx="50" cy="76" r="5.5" {}
    }
}

fn forbid() -> Markup {
    html! { circle .white cx="50" cy="50" r="50" {} circle .ring cx="50" cy="50" r="38" {} path .ring d="M22.4 22.4l55.2 55.2" {} }
}

fn must() -> Markup {
    html! {
        circle .blue cx="50" cy="50" r="46" {}
        path .white d="M44 20h12l-2.5 42h-7z" {}
        circle .white cx="50" cy="76" r="6.5" {}
    }
}

fn sign(class: &str, drawn: Markup) -> Markup {
    html! { svg class=(class) viewBox="0 0 100 100" aria-hidden="true" focusable="false" { (drawn) } }
}
