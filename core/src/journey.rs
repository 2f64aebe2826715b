//! Journeys: a person's way through the app as readable text, played over the real screens.
//!
//! The demo is made by them, the tests check by them, and every shell can play the same ones. A line is one thing a person does:
//!
//! ```text
//! # a comment
//! tap Open this job
//! fill Reference = PTW 118
//! choose Duty = Working on it
//! untap Conductors that it opens = N
//! read N – L1 = Nothing
//! read N – L2 = 0.3
//! sign Signature of the person who takes it back = Ida Holm
//! photo Photo of Q1
//! photo Photo of Q1 = STB0123456789AB7
//! scan Scan with the camera = STB0123456789AB7
//! wait 3
//! see Proved dead
//! unseen Begin work
//! ```
//!
//! Things are found by the label that a screen reader would say. `wait` is in minutes.

use std::fs;
use std::path::Path;

use crate::app::Field;
use crate::screens::as_text;
use crate::screens::parts::{Block, Errand, Filled, Outcome, Screen};
use crate::tag::Symbol;

/// What a journey needs beside the app.
pub struct Props<'a> {
    /// The photo that is taken whenever one is asked for.
    pub photo: &'a [u8],
    /// Moves the clock on, in milliseconds.
    pub wait: &'a dyn Fn(i64),
}

/// The story of this name in the folder of journeys: the scripts of its journeys, one after the other. `stories.txt` there lists
/// all stories.
pub fn story(journeys: &Path, name: &str) -> Result<String, String> {
    let stories = read(journeys, "stories.txt")?;
    let of = |line: &str| line.split_once(": ").filter(|(n, _)| *n == name).map(|(_, list)| list.to_owned());
    let list = stories.lines().find_map(of).ok_or_else(|| format!("stories.txt has no story called {name}"))?;
    list.split(' ').map(|journey| read(journeys, &format!("{journey}.journey"))).collect()
}

/// The names of all stories in the folder of journeys.
pub fn stories(journeys: &Path) -> Result<Vec<String>, String> {
    let named = |line: &str| line.split_once(": ").map(|(name, _)| name.to_owned());
    Ok(read(journeys, "stories.txt")?.lines().filter(|l| !l.starts_with('#')).filter_map(named).collect())
}

/// The plan of a job at a site where an earlier job has found the generator already: it is a source here too.
pub fn planned_again(plan: &str) -> String {
    const TOO: &str = "tap It is a source here too";
    let found = ["choose Kind of source", "fill What you found", "fill Where it comes in", "tap Save this source"];
    let mut lines = Vec::new();
    for line in plan.lines().filter(|line| !found.iter().any(|f| line.starts_with(f))) {
        if line.starts_with("fill Where you looked") && !lines.contains(&TOO) {
            lines.push(TOO);
        }
        lines.push(line);
    }
    lines.join("\n") + "\n"
}

fn read(folder: &Path, name: &str) -> Result<String, String> {
    fs::read_to_string(folder.join(name)).map_err(|e| format!("{}: {e}", folder.join(name).display()))
}

/// Plays `script` on `field`. The error says which line failed, and shows the screen.
pub fn play(field: &Field, script: &str, props: &Props) -> Result<(), String> {
    let mut form: Vec<Filled> = Vec::new();
    for (number, line) in script.lines().enumerate() {
        let line = line.trim();
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        let screen = field.screen();
        step(field, &screen, line, &mut form, props)
            .map_err(|why| format!("line {}, \"{line}\": {why}\n\n{}", number + 1, as_text(&field.screen())))?;
    }
    Ok(())
}

fn step(field: &Field, screen: &Screen, line: &str, form: &mut Vec<Filled>, props: &Props) -> Result<(), String> {
    let (verb, rest) = line.split_once(' ').ok_or("a line has a verb and what it is about")?;
    let pair = || rest.split_once(" = ").ok_or("this verb needs \" = \"");
    match verb {
        "tap" => {
            let action = action(screen, rest)?;
            // A camera that is asked for shows nothing yet: `scan` says what comes before it.
            if let Some(Errand::TakePhoto { token, .. }) = act(field, screen, action, form) {
                field.deliver(token, photo(props));
            }
            form.clear();
        }
        "scan" => {
            let (label, code) = pair()?;
            let Some(Errand::ScanTag { token, .. }) = act(field, screen, action(screen, label)?, form) else {
                return Err("no camera was asked for".into());
            };
            field.deliver(token, frame(code));
            form.clear();
        }
        "photo" => {
            let (rest, shows) = pair().map_or((rest, None), |(label, code)| (label, Some(code)));
            let action = screen
                .blocks
                .iter()
                .find_map(|b| match b {
                    Block::Photo { photo, .. } if photo.label == rest => Some(photo.action.clone()),
                    _ => None,
                })
                .ok_or("there is no such place for a photo")?;
            let Some(Errand::TakePhoto { token, .. }) = act(field, screen, action, form) else {
                return Err("no photo was asked for".into());
            };
            field.deliver(token, shows.map_or_else(|| Ok(photo(props)), photo_of)?);
            form.clear();
        }
        "fill" => {
            let (label, value) = pair()?;
            set(form, entry(screen, label)?, value);
        }
        "choose" | "untap" => {
            let (label, option) = pair()?;
            choose(screen, form, label, option, verb == "choose")?;
        }
        "read" => {
            let (label, value) = pair()?;
            read_pair(screen, form, label, value)?;
        }
        "sign" => {
            let (label, name) = pair()?;
            let field = screen.blocks.iter().find_map(|b| match b {
                Block::Mark { field, label: l, .. } if l == label => Some(field.clone()),
                _ => None,
            });
            set(form, field.ok_or("there is no such place to sign")?, &format!("typed:{name}"));
        }
        "wait" => (props.wait)(rest.parse::<i64>().map_err(|e| e.to_string())? * 60_000),
        "see" if !as_text(screen).contains(rest) => return Err("this is not on the screen".into()),
        "unseen" if as_text(screen).contains(rest) => return Err("this is on the screen".into()),
        "see" | "unseen" => {}
        _ => return Err("there is no such verb".into()),
    }
    Ok(())
}

fn photo(props: &Props) -> Outcome {
    Outcome::Photo { media_type: "image/png".into(), bytes: props.photo.to_vec() }
}

/// A photo with this code in it.
fn photo_of(code: &str) -> Result<Outcome, String> {
    let (side, luma) = Symbol::of_text(code).luma(12);
    let mut bytes = Vec::new();
    let mut picture = png::Encoder::new(&mut bytes, side, side);
    picture.set_color(png::ColorType::Grayscale);
    let written = picture.write_header().and_then(|mut w| w.write_image_data(&luma));
    written.map_err(|e| e.to_string())?;
    Ok(Outcome::Photo { media_type: "image/png".into(), bytes })
}

/// A frame of the camera with this code in it.
fn frame(code: &str) -> Outcome {
    let (side, luma) = Symbol::of_text(code).luma(8);
    Outcome::Frame { width: side, height: side, luma }
}

/// Sends the action with the whole form, as a shell does; the errand comes back that waits for an answer.
fn act(field: &Field, screen: &Screen, action: String, form: &[Filled]) -> Option<Errand> {
    let mut input = standing_values(screen);
    for filled in form {
        set(&mut input, filled.field.clone(), &filled.value);
    }
    field
        .act(Some(screen.turn), action, input)
        .into_iter()
        .find(|e| matches!(e, Errand::TakePhoto { .. } | Errand::ScanTag { .. }))
}

fn standing_values(screen: &Screen) -> Vec<Filled> {
    let mut values = Vec::new();
    for block in &screen.blocks {
        match block {
            Block::Entry { entry, .. } => set(&mut values, entry.field.clone(), &entry.value),
            Block::Choice { choice, .. } => set(&mut values, choice.field.clone(), &choice.chosen.join("\n")),
            Block::Mark { field, value, .. } => set(&mut values, field.clone(), value),
            Block::Pad { pad, .. } => {
                pad.rows.iter().for_each(|row| set(&mut values, row.field.clone(), &row.chosen));
            }
            _ => {}
        }
    }
    values
}

fn set(form: &mut Vec<Filled>, field: String, value: &str) {
    form.retain(|f| f.field != field);
    form.push(Filled { field, value: value.to_owned() });
}

/// The action of the one button or row of this label.
fn action(screen: &Screen, label: &str) -> Result<String, String> {
    let mut found: Vec<(&str, &str)> = Vec::new();
    for block in &screen.blocks {
        match block {
            Block::Button { button, .. } => found.push((&button.label, &button.action)),
            Block::Step { step, .. } if !step.action.is_empty() => found.push((&step.title, &step.action)),
            _ => {}
        }
    }
    let ends = screen.main.iter().chain(&screen.up).map(|b| (b.label.as_str(), b.action.as_str()));
    found.extend(ends);
    let exact: Vec<_> = found.iter().filter(|(l, _)| *l == label).collect();
    let within: Vec<_> = found.iter().filter(|(l, _)| l.contains(label)).collect();
    match (exact.as_slice(), within.as_slice()) {
        ([one], _) | ([], [one]) => Ok(one.1.to_owned()),
        ([], []) => Err("there is no such button".into()),
        _ => Err("more than one button has this label".into()),
    }
}

fn entry(screen: &Screen, label: &str) -> Result<String, String> {
    let found = screen.blocks.iter().find_map(|b| match b {
        Block::Entry { entry, .. } if entry.label == label => Some(entry.field.clone()),
        _ => None,
    });
    found.ok_or_else(|| "there is no such field".into())
}

fn choose(screen: &Screen, form: &mut Vec<Filled>, label: &str, option: &str, take: bool) -> Result<(), String> {
    let choice = screen.blocks.iter().find_map(|b| match b {
        Block::Choice { choice, .. } if choice.label == label => Some(choice),
        _ => None,
    });
    let choice = choice.ok_or("there is no such question")?;
    let value = choice.options.iter().find(|o| o.label == option).ok_or("there is no such answer")?.value.clone();
    if !choice.many {
        set(form, choice.field.clone(), &value);
        return Ok(());
    }
    let given = form.iter().find(|f| f.field == choice.field).map(|f| f.value.clone());
    let given = given.unwrap_or_else(|| choice.chosen.join("\n"));
    let mut chosen: Vec<&str> = given.lines().filter(|line| *line != value).collect();
    if take {
        chosen.push(&value);
    }
    set(form, choice.field.clone(), &chosen.join("\n"));
    Ok(())
}

fn read_pair(screen: &Screen, form: &mut Vec<Filled>, label: &str, value: &str) -> Result<(), String> {
    for block in &screen.blocks {
        let Block::Pad { pad, .. } = block else { continue };
        let Some(row) = pad.rows.iter().find(|r| r.label == label) else { continue };
        let option = pad.options.iter().find(|o| o.label == value).map_or(value, |o| &o.value);
        set(form, row.field.clone(), option);
        return Ok(());
    }
    Err("there is no such pair".into())
}
