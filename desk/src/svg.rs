//! A drawing as a file of its own: the same shapes as on the screens, with the inks of the light theme written into it.

use maud::{PreEscaped, html};
use stillbar_core::parts::Drawing;

use crate::render::drawing::shapes;

/// The inks, as `assets/` has them for paper; a dark theme is for screens.
const INKS: &str = "\
svg{font-family:system-ui,'DejaVu Sans',sans-serif}\
text{text-anchor:middle;font-weight:700;stroke-linejoin:round}\
.stroke{fill:none;stroke-linecap:round}.fill{stroke:none}\
.stroke.ink{stroke:#111}.fill.ink{fill:#111}.stroke.paper{stroke:#fff}.fill.paper{fill:#fff}\
.stroke.faint{stroke:#555}.fill.faint{fill:#555}\
.stroke.warn{stroke:#f9a800}.fill.warn{fill:#f9a800}\
.stroke.forbid{stroke:#9b2423}.fill.forbid{fill:#9b2423}\
.stroke.must{stroke:#005387}.fill.must{fill:#005387}\
.stroke.rim{stroke:#fff}.fill.rim{fill:#fff}\
.stroke.brown{stroke:#6b3e1e}.fill.brown{fill:#6b3e1e}.stroke.black{stroke:#000}.fill.black{fill:#000}\
.stroke.grey{stroke:#8a8a8a}.fill.grey{fill:#8a8a8a}.stroke.blue{stroke:#2b6cc4}.fill.blue{fill:#2b6cc4}\
.stroke.green{stroke:#2e8b3d}.fill.green{fill:#2e8b3d}.stroke.yellow{stroke:#e8c800}.fill.yellow{fill:#e8c800}";

/// An SVG file of a drawing, with what it shows in words as its description.
pub fn file(drawn: &Drawing, label: &str) -> String {
    let (w, h) = (drawn.width.max(1.0), drawn.height.max(1.0));
    html! {
        svg xmlns="http://www.w3.org/2000/svg" role="img" width=(w) height=(h) viewBox={ "0 0 " (w) " " (h) } {
            desc { (label) }
            style { (PreEscaped(INKS)) }
            rect width="100%" height="100%" fill="#fff" {}
            (shapes(drawn))
        }
    }
    .into_string()
}
