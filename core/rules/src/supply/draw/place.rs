//! Where everything is: blocks side by side, rows from the top down, and lanes for what runs sideways.

use super::tree::{LEFT, NodeBody, TreePlan};

/// Between two blocks.
const GAP: f32 = 14.0;
/// Around the whole drawing.
pub const EDGE: f32 = 16.0;
/// Between two lanes.
const LANE: f32 = 14.0;
/// A drawing is at least this wide: the width of a small phone.
const LEAST: f32 = 360.0;
/// How often the order is gone through for a better one, and with how many parts at most: it takes time with the square of them.
const PASSES: usize = 6;
const SORTED: usize = 500;

/// Changes the order of blocks beside each other as long as that shortens what runs sideways.
pub fn order(plan: &mut TreePlan) {
    if plan.sideways.is_empty() || plan.items.len() > SORTED {
        return;
    }
    let mut best = reach(plan);
    for _ in 0..PASSES {
        let before = best;
        for list in 0..=plan.items.len() {
            let len = siblings(plan, list).len();
            for i in 1..len {
                // One step to the left, as often as it helps.
                let mut at = i;
                while at > 0 {
                    siblings(plan, list).swap(at - 1, at);
                    let now = reach(plan);
                    if now + 0.5 >= best {
                        siblings(plan, list).swap(at - 1, at);
                        break;
                    }
                    best = now;
                    at -= 1;
                }
            }
        }
        if best + 0.5 >= before {
            break;
        }
    }
}

/// The items that stand side by side below an item, or on top (the last number).
fn siblings(plan: &mut TreePlan, list: usize) -> &mut Vec<usize> {
    if list == plan.items.len() { &mut plan.roots } else { &mut plan.items[list].below }
}

/// How far all sideways links run, with what stands side by side as it does now.
fn reach(plan: &mut TreePlan) -> f32 {
    across(plan);
    (0..plan.sideways.len())
        .map(|i| {
            let (a, b) = span(plan, i);
            b - a
        })
        .sum()
}

/// Gives each item its place from left to right. Returns the width of all.
fn across(plan: &mut TreePlan) -> f32 {
    // Children have higher numbers than their parents.
    for i in (0..plan.items.len()).rev() {
        let item = &plan.items[i];
        let below: f32 = item.below.iter().map(|b| plan.items[*b].block.1).sum();
        let gaps = GAP * item.below.len().saturating_sub(1) as f32;
        plan.items[i].block.1 = item.own.0.max(below + gaps);
    }
    let mut x = EDGE;
    for root in plan.roots.clone() {
        plan.items[root].block.0 = x;
        x += plan.items[root].block.1 + GAP;
    }
    for i in 0..plan.items.len() {
        let (left, wide) = plan.items[i].block;
        let below = plan.items[i].below.clone();
        let total: f32 =
            below.iter().map(|b| plan.items[*b].block.1).sum::<f32>() + GAP * below.len().saturating_sub(1) as f32;
        let mut x = left + (wide - total) / 2.0;
        for b in below {
            plan.items[b].block.0 = x;
            x += plan.items[b].block.1 + GAP;
        }
        plan.items[i].at.0 = left + (wide - plan.items[i].own.0) / 2.0;
    }
    x - GAP + EDGE
}

/// From where to where a sideways link runs.
pub fn span(plan: &TreePlan, sideways: usize) -> (f32, f32) {
    let side = &plan.sideways[sideways];
    let (a, b) = (line_x(plan, side.from), port_x(plan, side.to, side.link));
    (a.min(b), a.max(b))
}

/// Where the line on which an item hangs goes down.
pub fn line_x(plan: &TreePlan, item: usize) -> f32 {
    let item = &plan.items[item];
    match item.body {
        NodeBody::Column | NodeBody::TieIn => item.at.0 + item.own.0 / 2.0,
        _ => item.at.0 + LEFT,
    }
}

/// Where a link comes into an item from above.
pub fn port_x(plan: &TreePlan, item: usize, link: usize) -> f32 {
    let part = &plan.items[item];
    let Some(place) = part.also.iter().position(|l| *l == link) else { return line_x(plan, item) };
    // The columns share what room is left over; the first one is that of the link on which it hangs.
    let before = place + usize::from(part.via.is_some());
    let spare = (part.own.0 - part.slots.iter().sum::<f32>()).max(0.0) / part.slots.len().max(1) as f32;
    part.at.0 + part.slots[..before].iter().map(|slot| slot + spare).sum::<f32>() + LEFT
}

/// Gives each item its place. Returns the width and height of the drawing.
pub fn place(plan: &mut TreePlan) -> (f32, f32) {
    let wide = across(plan);
    let extra = (LEAST - wide).max(0.0) / 2.0;
    for item in &mut plan.items {
        item.at.0 += extra;
        item.block.0 += extra;
    }
    let rows = plan.items.iter().map(|i| i.row + 1).max().unwrap_or(0);
    for row in 0..rows {
        down(plan, row);
    }
    let high = plan.items.iter().map(|i| i.at.1 + i.own.1).fold(0.0, f32::max);
    let lanes = plan.sideways.iter().map(|s| s.y).fold(0.0, f32::max);
    (wide.max(LEAST), high.max(lanes) + EDGE + 22.0)
}

/// Gives the items of one row their height, and the lanes above it theirs.
fn down(plan: &mut TreePlan, row: usize) {
    for i in 0..plan.items.len() {
        if plan.items[i].row == row {
            let item = &plan.items[i];
            plan.items[i].at.1 = match item.parent {
                None => EDGE,
                Some(parent) => {
                    let bottom = plan.items[parent].at.1 + plan.items[parent].own.1;
                    // What is a mere line begins where its parent ends.
                    if matches!(item.body, NodeBody::Node(_) | NodeBody::List(_)) { bottom + item.drop } else { bottom }
                }
            };
        }
    }
    let above: Vec<usize> = (0..plan.sideways.len()).filter(|i| lane_row(plan, *i) == row).collect();
    if above.is_empty() {
        return;
    }
    lanes(plan, &above);
    let spans: Vec<(f32, f32)> = above.iter().map(|i| span(plan, *i)).collect();
    let left = spans.iter().map(|s| s.0).fold(f32::MAX, f32::min) - GAP;
    let right = spans.iter().map(|s| s.1).fold(0.0, f32::max) + GAP;
    let meets = |(x, wide): (f32, f32)| x < right && x + wide > left;
    // Below all that stands in the way of the lanes.
    let top = plan
        .items
        .iter()
        .filter(|i| i.row < row || matches!(i.body, NodeBody::TieOut(_)) && i.row == row)
        .filter(|i| meets((i.at.0, i.own.0)) || meets(i.block) && !i.below.is_empty())
        .map(|i| i.at.1 + i.own.1)
        .fold(EDGE, f32::max)
        + LANE;
    let count = above.iter().map(|i| plan.sideways[*i].lane + 1).max().unwrap_or(0);
    for i in above {
        plan.sideways[i].y = top + LANE * plan.sideways[i].lane as f32;
    }
    let bottom = top + LANE * count as f32;
    for item in &mut plan.items {
        if item.row == row && meets(item.block) && matches!(item.body, NodeBody::Node(_) | NodeBody::List(_)) {
            item.at.1 = item.at.1.max(bottom + item.drop);
        }
    }
}

/// The row above which a sideways link runs.
fn lane_row(plan: &TreePlan, sideways: usize) -> usize {
    plan.items[plan.sideways[sideways].to].row
}

/// Gives each of these links a lane in which it meets no other.
fn lanes(plan: &mut TreePlan, above: &[usize]) {
    let mut order = above.to_vec();
    order.sort_by(|a, b| {
        let (a, b) = (span(plan, *a), span(plan, *b));
        (a.0, a.1).partial_cmp(&(b.0, b.1)).unwrap_or(std::cmp::Ordering::Equal)
    });
    let mut ends: Vec<f32> = Vec::new();
    for i in order {
        let (from, to) = span(plan, i);
        let lane = ends.iter().position(|end| *end + 8.0 < from).unwrap_or(ends.len());
        if lane == ends.len() {
            ends.push(to);
        } else {
            ends[lane] = to;
        }
        plan.sideways[i].lane = lane;
    }
}
