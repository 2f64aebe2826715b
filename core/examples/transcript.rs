//! A story as text: `cargo run -p stillbar-core --example transcript -- NAME` prints every line that acts (a tap, a photo, a scan) and
//! the screen after it. Other shells have to show the same (`ios/`), so the clock stands at [`desk::MORNING`] and goes on two seconds
//! after every line.

#[path = "../tests/it/desk.rs"]
#[allow(dead_code, reason = "the tests use the rest")]
mod desk;

use std::path::Path;

use stillbar_core::journey::story;
use stillbar_core::screens::as_text;

fn main() {
    let name = std::env::args().nth(1).expect("the name of a story");
    let script =
        story(&Path::new(env!("CARGO_MANIFEST_DIR")).join("journeys"), &name).expect("is listed in stories.txt");
    let folder = tempfile::tempdir().expect("can be made");
    let device = desk::Device::standing(1);
    let field = device.open(folder.path()).expect("opens");
    // What is typed goes to the core with the tap that follows it, as in a shell.
    let mut form = String::new();
    for line in script.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with('#')) {
        form.push_str(line);
        form.push('\n');
        let verb = line.split(' ').next().unwrap_or_default();
        if !["fill", "choose", "read", "sign"].contains(&verb) {
            device.play(&field, &form);
            form.clear();
        }
        if ["tap", "photo", "scan"].contains(&verb) {
            println!("== {line}\n{}", as_text(&field.screen()));
        }
        device.pass(2000);
    }
}
