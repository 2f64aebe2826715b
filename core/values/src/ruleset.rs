//! The rules of a country that a job is done by: figures and preferences. What they are called, which law and standard they defer to and
//! what these say is text, in the catalogue; docs/rule-sets.md lists both, made from them, with how sure each is.
//!
//! A rule set chooses words, defaults and bounds. It never drops a question, and nobody licensed has checked it.

use serde::{Deserialize, Serialize};

use crate::order::Order;
use crate::system::System;
use crate::{Tolerance, figures};

/// Whose rules.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RuleSet {
    /// United Kingdom.
    Uk,
    /// Ireland.
    Ie,
    /// The European Union, where no country of it is named here.
    Eu,
    /// Germany.
    De,
    /// United States.
    Us,
    /// Canada.
    Ca,
    /// Australia.
    Au,
    /// New Zealand.
    Nz,
    /// None of these: the site's own, by reference.
    Own,
}

/// Figures and preferences of a rule set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RuleFigures {
    /// Systems that are offered first, the usual one before the others.
    pub systems: &'static [System],
    /// Usual nominal voltages, with the system that each names, in volts.
    pub nominal: &'static [(System, u32)],
    /// What the supply is held against when it is back.
    pub tolerance: Tolerance,
    /// The bound of extra-low voltage in volts, alternating and direct: a company's limit for dead stays below, and an instrument lights
    /// by then. It is a limit of touch, and says nothing of dead, for which no rule set has a figure.
    pub extra_low: (u32, u32),
    /// Which pairs the custom there tests first.
    pub order: Order,
}

use System::{
    CornerGrounded, DcTwoWire, HighLeg, OnePhase, Pen, SiteTransformer, SiteTransformerThree, SplitPhase,
    ThreePhaseNeutral, ThreeWire, TwoLines,
};

/// IEC 60038: 230/400 and 400/690.
const IEC: [(System, u32); 4] = [(ThreePhaseNeutral, 230), (OnePhase, 230), (ThreeWire, 400), (Pen, 230)];
/// With the reduced low voltage of building sites (BS 7671 411.8, from an excerpt).
const IEC_AND_SITES: [(System, u32); 6] = [
    (ThreePhaseNeutral, 230),
    (OnePhase, 230),
    (ThreeWire, 400),
    (SiteTransformer, 110),
    (SiteTransformerThree, 110),
    (DcTwoWire, 48),
];
/// ANSI C84.1, from memory.
const ANSI: [(System, u32); 7] = [
    (SplitPhase, 120),
    (ThreePhaseNeutral, 120),
    (ThreePhaseNeutral, 277),
    (OnePhase, 120),
    (HighLeg, 240),
    (CornerGrounded, 480),
    (ThreeWire, 480),
];
/// CSA C235, from memory.
const CSA: [(System, u32); 5] =
    [(SplitPhase, 120), (ThreePhaseNeutral, 120), (ThreePhaseNeutral, 347), (OnePhase, 120), (ThreeWire, 600)];

impl RuleSet {
    /// All, as offered.
    pub const ALL: [RuleSet; 9] = [
        RuleSet::Uk,
        RuleSet::Ie,
        RuleSet::Eu,
        RuleSet::De,
        RuleSet::Us,
        RuleSet::Ca,
        RuleSet::Au,
        RuleSet::Nz,
        RuleSet::Own,
    ];

    /// As written in files.
    pub fn name(self) -> &'static str {
        match self {
            RuleSet::Uk => "uk",
            RuleSet::Ie => "ie",
            RuleSet::Eu => "eu",
            RuleSet::De => "de",
            RuleSet::Us => "us",
            RuleSet::Ca => "ca",
            RuleSet::Au => "au",
            RuleSet::Nz => "nz",
            RuleSet::Own => "own",
        }
    }

    /// Its figures. Bands: EN 50160 and IEC 60038 for the EU, +10/-6 % for the UK (ESQCR 2002 reg 27, number from memory) and Australia (AS
    /// 60038, from memory), 10 % either way for New Zealand since 13 November 2025 (announced; regulation not seen), ANSI C84.1 range A for
    /// the US (from memory) and, unsure, for Canada, whose CSA C235:19 could not be read. Extra-low voltage: 50 V AC and 120 V DC (IEC 61140,
    /// from memory), 50 V both in the US (29 CFR 1910.333(a)(1), NFPA 70E), 30 V AC and 60 V DC in Canada (CSA Z462, from memory, unsure).
    /// Orders: custom, no rule found anywhere.
    pub fn figures(self) -> RuleFigures {
        let iec = RuleFigures {
            systems: &[ThreePhaseNeutral, OnePhase, ThreeWire, Pen],
            nominal: &IEC,
            tolerance: Tolerance::Iec60038,
            extra_low: (50, 120),
            order: Order::LeastDangerousFirst,
        };
        match self {
            RuleSet::Uk => RuleFigures {
                systems: &[OnePhase, ThreePhaseNeutral, ThreeWire, SiteTransformer, SiteTransformerThree],
                nominal: &IEC_AND_SITES,
                tolerance: Tolerance::Uk,
                order: Order::EarthFirst,
                ..iec
            },
            RuleSet::Ie => RuleFigures {
                systems: &[OnePhase, ThreePhaseNeutral, ThreeWire, SiteTransformer, SiteTransformerThree],
                nominal: &IEC_AND_SITES,
                order: Order::EarthFirst,
                ..iec
            },
            RuleSet::Eu => RuleFigures { systems: &[ThreePhaseNeutral, OnePhase, ThreeWire, Pen, TwoLines], ..iec },
            RuleSet::De | RuleSet::Own => iec,
            RuleSet::Us => RuleFigures {
                systems: &[SplitPhase, ThreePhaseNeutral, OnePhase, ThreeWire, HighLeg, CornerGrounded],
                nominal: &ANSI,
                tolerance: Tolerance::AnsiC841A,
                extra_low: (50, 50),
                order: Order::LineLineFirst,
            },
            RuleSet::Ca => RuleFigures {
                systems: &[SplitPhase, ThreePhaseNeutral, OnePhase, ThreeWire],
                nominal: &CSA,
                tolerance: Tolerance::AnsiC841A,
                extra_low: (30, 60),
                order: Order::LineLineFirst,
            },
            RuleSet::Au => RuleFigures { tolerance: Tolerance::Uk, order: Order::EarthFirst, ..iec },
            RuleSet::Nz => RuleFigures { order: Order::EarthFirst, ..iec },
        }
    }

    /// Every system, those first that are usual there.
    pub fn systems(self) -> Vec<System> {
        let first = self.figures().systems;
        first.iter().copied().chain(System::ALL.into_iter().filter(|s| !first.contains(s))).collect()
    }

    /// Its usual nominal voltages of a system, in volts, for a hint.
    pub fn volts_of(self, system: System) -> Vec<String> {
        let of = self.figures().nominal.iter().filter(|(named, _)| *named == system);
        of.map(|(_, volts)| figures::volts(volts * 1000)).collect()
    }

    /// The voltage that a system is named by most often there, in volts, or else anywhere.
    pub fn usual_volts(self, system: System) -> Option<u32> {
        let here = self.figures().nominal.iter().find(|(named, _)| *named == system);
        here.map(|(_, volts)| *volts).or_else(|| system.usual_volts())
    }
}
