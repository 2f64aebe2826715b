//! What a point of isolation is, and how it is secured.

use serde::{Deserialize, Serialize};

/// What kind of device a point is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PointKind {
    /// Switch-disconnector, isolator.
    SwitchDisconnector,
    /// Circuit-breaker suitable for isolation.
    CircuitBreaker,
    /// Fuse-switch or switch-fuse.
    FuseSwitch,
    /// Fuse links that are withdrawn.
    FuseLinks,
    /// Plug and socket.
    Plug,
    /// Stop button, emergency stop, interlock, contactor, electronic control: never a point of isolation.
    ControlDevice,
}

impl PointKind {
    /// All, in the order in which they are offered.
    pub const ALL: [PointKind; 6] = [
        PointKind::SwitchDisconnector,
        PointKind::CircuitBreaker,
        PointKind::FuseSwitch,
        PointKind::FuseLinks,
        PointKind::Plug,
        PointKind::ControlDevice,
    ];
}

/// How a point is secured.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Means {
    /// A padlock through the device itself.
    Padlock,
    /// A padlock on a hasp that takes several.
    Hasp,
    /// Not a lock: fuse links kept on the person, a plug under the person's hand. Shown wherever the proof is shown.
    Other(String),
}
