//! What is asked about the device itself: who has it, PINs, the office, the rules.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked about the device itself: who has it, PINs, the office, the rules.
    AskDevice in Device {
        WhoFirst => "ask-device-who-first",
        Name => "ask-device-name",
        Shorter => "ask-device-shorter",
        Pin => "ask-device-pin",
        PinNew => "ask-device-pin-new",
        PinTwice => "ask-device-pin-twice",
        PinThere => "ask-device-pin-there",
        PinUnset => "ask-device-pin-unset",
        PinUnreadable => "ask-device-pin-unreadable",
        PinByNoChance => "ask-device-pin-by-no-chance",
        Witness => "ask-device-witness",
        WitnessIsOther => "ask-device-witness-is-other",
        WitnessPin => "ask-device-witness-pin",
        OfficeAsWitness => "ask-device-office-as-witness",
        OfficeCode => "ask-device-office-code",
        OfficeCodeWhole => "ask-device-office-code-whole",
        OfficeCodeOfOurs => "ask-device-office-code-of-ours",
        OfficeNot => "ask-device-office-not",
        Tag => "ask-device-tag",
        Site => "ask-device-site",
        LimitAc => "ask-device-limit-ac",
        LimitDc => "ask-device-limit-dc",
        LimitRule => "limit-unruled",
        ClockUncontradicted => "ask-device-clock-uncontradicted",
        KeyGoesOn => "ask-device-key-goes-on",
    }
}
