//! How an order that a site prefers turns into turns of the pairs.

use stillbar_values::Order;

/// When the pairs come whose less dangerous conductor has this `danger`; see [`super::Role::danger`].
pub(super) fn turn(order: Order, danger: u8) -> u8 {
    match (order, danger) {
        // Neutral to the lines, then everything to PE, then line to line.
        (Order::LeastDangerousFirst, 0) => 1,
        (Order::LeastDangerousFirst, 1) => 0,
        (Order::LeastDangerousFirst | Order::EarthFirst, danger) => danger,
        (Order::LineLineFirst, danger) => u8::MAX - danger,
    }
}

/// When the other probe goes to a conductor of this `danger`, while a less dangerous one is held.
pub(super) fn other_turn(order: Order, danger: u8) -> u8 {
    if order == Order::LineLineFirst { u8::MAX - danger } else { danger }
}
