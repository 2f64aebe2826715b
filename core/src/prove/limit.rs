//! The limit for figures that count as no indication.

/// The greatest figures that count as no indication, in millivolts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Limits {
    /// Alternating.
    pub ac_mv: u32,
    /// Direct.
    pub dc_mv: u32,
}

/// What a limit has to be below.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bound {
    /// Alternating, in millivolts.
    pub ac_mv: u32,
    /// Direct, in millivolts.
    pub dc_mv: u32,
}

/// The bound for sources of these voltages to their reference, in millivolts.
pub fn bound(voltages: &[u32]) -> Bound {
    let half = voltages.iter().copied().filter(|mv| *mv > 0).min().map_or(u32::MAX, |mv| mv / 2);
    Bound { ac_mv: half.min(50_000), dc_mv: half.min(120_000) }
}

impl Bound {
    /// Whether limits are below it.
    pub fn allows(self, limits: Limits) -> bool {
        (limits.ac_mv < self.ac_mv || limits.ac_mv == 0) && (limits.dc_mv < self.dc_mv || limits.dc_mv == 0)
    }

    /// Whether an instrument with this lowest indication shows what it has to.
    pub fn lights_in_time(self, ac: u32, dc: Option<u32>) -> bool {
        ac <= self.ac_mv && dc.is_none_or(|dc| dc <= self.dc_mv)
    }
}
