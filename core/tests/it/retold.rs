//! A story told again in another language: what a person taps is found by what it does on an English screen, and said as the other screen of
//! the same moment says it.

use serde_json::Value;
use stillbar_core::Field;
use stillbar_core::journey::{Props, play};
use stillbar_core::parts::{Block, Opt, Screen};
use stillbar_core::screens::as_text;

/// Plays an English story on `english` and, line by line, its words in the language of `other` there. Both began alike. After each line `seen`
/// gets both screens, the other as `plain` leaves it. What comes back is the story in the other language; lines that say what is not to be seen are left out.
pub fn retell(
    [english, other]: [&Field; 2],
    script: &str,
    props: [&Props; 2],
    plain: &dyn Fn(Screen) -> Screen,
    seen: &mut dyn FnMut(&Screen, &Screen),
) -> Result<String, String> {
    let mut told = String::new();
    let (mut form, mut other_form) = (String::new(), String::new());
    // Both screens, until a line does something.
    let mut shown: Option<(Screen, Screen)> = None;
    for line in script.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let (here, there) = shown.get_or_insert_with(|| {
            let (here, there) = (english.screen(), plain(other.screen()));
            seen(&here, &there);
            (here, there)
        });
        let Some(said) = in_other_words(line, here, there).map_err(|why| format!("\"{line}\": {why}"))? else {
            continue;
        };
        told += &said;
        told.push('\n');
        form += line;
        form.push('\n');
        other_form += &said;
        other_form.push('\n');
        // What is typed waits in a shell's form for the tap that sends it.
        if !["fill", "choose", "untap", "read", "sign"].iter().any(|verb| line.starts_with(verb)) {
            play(english, &form, props[0])?;
            play(other, &other_form, props[1])?;
            form.clear();
            other_form.clear();
            shown = None;
        }
    }
    Ok(told)
}

fn in_other_words(line: &str, here: &Screen, there: &Screen) -> Result<Option<String>, String> {
    let (verb, rest) = line.split_once(' ').ok_or("no verb")?;
    let split = |rest: &str| rest.split_once(" = ").map(|(label, value)| (label.to_owned(), value.to_owned()));
    let said = match verb {
        "tap" => format!("tap {}", like(&acted(here), &acted(there), rest)?),
        "scan" => {
            let (label, code) = split(rest).ok_or("no code")?;
            format!("scan {} = {code}", like(&acted(here), &acted(there), &label)?)
        }
        "photo" => {
            let (label, code) = split(rest).map_or((rest.to_owned(), String::new()), |(l, c)| (l, format!(" = {c}")));
            format!("photo {}{code}", like(&photos(here), &photos(there), &label)?)
        }
        "fill" | "sign" => {
            let (label, value) = split(rest).ok_or("no value")?;
            format!("{verb} {} = {value}", like(&entries(here), &entries(there), &label)?)
        }
        "choose" | "untap" => {
            let (label, option) = split(rest).ok_or("no option")?;
            let at = choices(here).iter().position(|(l, _)| *l == label).ok_or("no such question")?;
            let ((_, ours), (label, theirs)) = (&choices(here)[at], &choices(there)[at]);
            format!("{verb} {label} = {}", like(ours, theirs, &option)?)
        }
        "read" => {
            let (label, value) = split(rest).ok_or("no value")?;
            let (ours, theirs) = (pads(here), pads(there));
            let pad = ours.iter().position(|(rows, _)| rows.contains(&label)).ok_or("no such pair")?;
            let pair = like(&ours[pad].0, &theirs[pad].0, &label)?;
            let value = like(&ours[pad].1, &theirs[pad].1, &value).unwrap_or(value);
            format!("read {pair} = {value}")
        }
        "see" => {
            // Of what the text form puts together, the part that has these words; its marks are no part of any.
            let plain = rest.trim_start_matches(['#', '-', '>', '!', ' ']).replace(['[', ']'], "");
            let mut said = None;
            beside(&serde_json::to_value(here).unwrap(), &serde_json::to_value(there).unwrap(), &mut |ours, theirs| {
                if said.is_none() && ours.contains(&plain) {
                    said = Some(theirs.to_owned());
                }
            });
            match said {
                Some(said) => format!("see {said}"),
                // It spans several: whoever plays this sees the screen by its buttons.
                None if as_text(here).contains(rest) => return Ok(None),
                None => return Err("this is not on the screen".into()),
            }
        }
        "wait" => line.to_owned(),
        // What a sentence would be that is not there, nobody can look up.
        _ => return Ok(None),
    };
    Ok(Some(said))
}

/// What stands in the other list in the place of this label, or of the one that has this in it.
fn like(ours: &[String], theirs: &[String], label: &str) -> Result<String, String> {
    if ours.len() != theirs.len() {
        return Err(format!("the screens differ: {ours:?} and {theirs:?}"));
    }
    let exact = ours.iter().position(|one| one == label);
    let at = exact.or_else(|| ours.iter().position(|one| one.contains(label))).ok_or("there is no such label")?;
    if theirs.iter().filter(|one| **one == theirs[at]).count() > 1 {
        return Err(format!("two have the label {:?}", theirs[at]));
    }
    Ok(theirs[at].clone())
}

/// Every text of one screen with the one in its place on the other.
fn beside(here: &Value, there: &Value, told: &mut dyn FnMut(&str, &str)) {
    match (here, there) {
        (Value::Object(here), Value::Object(there)) => {
            here.iter().for_each(|(key, value)| beside(value, there.get(key).unwrap_or(&Value::Null), told));
        }
        (Value::Array(here), Value::Array(there)) => here.iter().zip(there).for_each(|(h, t)| beside(h, t, told)),
        (Value::String(here), Value::String(there)) => told(here, there),
        _ => {}
    }
}

fn acted(screen: &Screen) -> Vec<String> {
    let blocks = screen.blocks.iter().filter_map(|block| match block {
        Block::Button { button, .. } => Some(button.label.clone()),
        Block::Step { step, .. } if !step.action.is_empty() => Some(step.title.clone()),
        _ => None,
    });
    blocks.chain(screen.main.iter().chain(&screen.up).map(|button| button.label.clone())).collect()
}

fn photos(screen: &Screen) -> Vec<String> {
    let photo = |block: &Block| match block {
        Block::Photo { photo, .. } => Some(photo.label.clone()),
        _ => None,
    };
    screen.blocks.iter().filter_map(photo).collect()
}

fn entries(screen: &Screen) -> Vec<String> {
    let entry = |block: &Block| match block {
        Block::Entry { entry, .. } => Some(entry.label.clone()),
        Block::Mark { label, .. } => Some(label.clone()),
        _ => None,
    };
    screen.blocks.iter().filter_map(entry).collect()
}

fn labels(options: &[Opt]) -> Vec<String> {
    options.iter().map(|option| option.label.clone()).collect()
}

fn choices(screen: &Screen) -> Vec<(String, Vec<String>)> {
    let choice = |block: &Block| match block {
        Block::Choice { choice, .. } => Some((choice.label.clone(), labels(&choice.options))),
        _ => None,
    };
    screen.blocks.iter().filter_map(choice).collect()
}

fn pads(screen: &Screen) -> Vec<(Vec<String>, Vec<String>)> {
    let pad = |block: &Block| match block {
        Block::Pad { pad, .. } => Some((pad.rows.iter().map(|row| row.label.clone()).collect(), labels(&pad.options))),
        _ => None,
    };
    screen.blocks.iter().filter_map(pad).collect()
}
