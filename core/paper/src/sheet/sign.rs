//! A caution sign for one lock: our own drawing of two meanings of ISO 7010 (do not alter the state of the switch; keep locked), with
//! room to write by hand.

use super::paper::{BLACK, Ink, WHITE};
use super::{BLUE, Label, RED, in_two, symbol};

/// Signs on a page: two columns, two rows.
pub(super) const ON_PAGE: usize = 4;

pub(super) fn draw(ink: &mut Ink, label: &Label, (wide, high): (f32, f32), number: usize) {
    let (w, h) = (wide / 2.0, high / 2.0);
    let (left, top) = ((number % 2) as f32 * w, (number / 2) as f32 * h);
    // A thin frame to cut along.
    for (from, to) in [((0.0, 0.0), (w, 0.0)), ((w, 0.0), (w, h)), ((w, h), (0.0, h)), ((0.0, h), (0.0, 0.0))] {
        ink.line((left + from.0, top + from.1), (left + to.0, top + to.1), 0.15, BLACK);
    }
    let (x, y, room) = (left + 7.0, top + 7.0, w - 14.0);
    do_not_switch(ink, (x + 16.0, y + 16.0), 16.0);
    keep_locked(ink, (x + room - 16.0, y + 16.0), 16.0);
    let size = ink.fitting("DO NOT SWITCH ON", room, 8.6);
    ink.text((x, y + 43.0), size, "DO NOT SWITCH ON", BLACK);
    ink.text((x, y + 50.0), 4.2, "Somebody works on this circuit.", BLACK);
    for (k, what) in ["Name", "Telephone", "Since"].into_iter().enumerate() {
        let base = y + 62.0 + 10.0 * k as f32;
        ink.text((x, base), 3.6, what, BLACK);
        ink.line((x + 24.0, base + 0.8), (x + room, base + 0.8), 0.3, BLACK);
    }
    let side = 36.0;
    let low = top + h - 7.0 - side;
    symbol(ink, label.tag, (x - 2.0, low), side);
    let (words, width) = (x + side + 1.0, room - side - 1.0);
    let [first, second] = in_two(label.tag);
    let size = ink.fitting(&first, width, 5.0);
    ink.text((words, low + 8.0), size, &first, BLACK);
    ink.text((words, low + 14.0), size, &second, BLACK);
    let next = ink.block((words, low + 15.5), width, low + side - 2.0, 3.4, &label.point);
    ink.block((words, next), width, low + side - 2.0, 3.4, &label.site);
}

/// A red ring and bar over a lever between "0" and "I".
fn do_not_switch(ink: &mut Ink, (x, y): (f32, f32), radius: f32) {
    ink.circle((x, y), radius, RED);
    ink.circle((x, y), 0.82 * radius, WHITE);
    ink.rect((x - 0.34 * radius, y - 0.12 * radius), (0.68 * radius, 0.56 * radius), BLACK);
    // The lever leans to the left: off.
    let (lx, ly) = (x - 0.34 * radius, y - 0.5 * radius);
    ink.line((x, y + 0.05 * radius), (lx, ly), 0.14 * radius, BLACK);
    ink.circle((lx, ly), 0.12 * radius, BLACK);
    ink.text((x + 0.26 * radius, y - 0.28 * radius), 0.4 * radius, "I", BLACK);
    let reach = 0.64 * radius;
    ink.line((x - reach, y - reach), (x + reach, y + reach), 0.16 * radius, RED);
}

/// A blue disc with a closed padlock.
fn keep_locked(ink: &mut Ink, (x, y): (f32, f32), radius: f32) {
    ink.circle((x, y), radius, BLUE);
    // The bow: a white disc with a blue one in it, and the body over their lower halves.
    ink.circle((x, y - 0.12 * radius), 0.36 * radius, WHITE);
    ink.circle((x, y - 0.12 * radius), 0.22 * radius, BLUE);
    ink.rect((x - 0.46 * radius, y - 0.06 * radius), (0.92 * radius, 0.62 * radius), WHITE);
    ink.circle((x, y + 0.17 * radius), 0.1 * radius, BLUE);
    ink.polygon(
        &[
            (x - 0.05 * radius, y + 0.17 * radius),
            (x + 0.05 * radius, y + 0.17 * radius),
            (x + 0.08 * radius, y + 0.42 * radius),
            (x - 0.08 * radius, y + 0.42 * radius),
        ],
        BLUE,
    );
}
