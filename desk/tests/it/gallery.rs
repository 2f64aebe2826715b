//! Writes each sample as a page into the build's folder for temporary files, to be looked at:
//! `python3 -m http.server` in the folder that the test prints.

use std::fs;
use std::path::Path;

use stillbar_desk::render;

use crate::samples;

#[test]
fn gallery() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("gallery");
    fs::create_dir_all(&folder).expect("the build's own folder can be written");
    for (name, text) in [
        ("style.css", include_str!("../../assets/style.css")),
        ("desk.js", include_str!("../../assets/desk.js")),
        ("themes.css", include_str!("../../assets/themes.css")),
        ("contrast.js", include_str!("../../assets/contrast.js")),
        ("room.js", include_str!("../../assets/room.js")),
        ("camera.js", include_str!("../../assets/camera.js")),
        ("icon.svg", include_str!("../../assets/icon.svg")),
    ] {
        assert!(!text.is_empty(), "{name}");
        fs::write(folder.join(name), text).expect("written");
    }
    for (name, shown) in samples::all() {
        let page = render::page(&shown, 1);
        assert!(page.ends_with("</html>"), "{name}");
        fs::write(folder.join(format!("{name}.html")), page).expect("written");
    }
    println!("{}", folder.display());
}
