//! What a case says, as numbers: who is who, and what was read between whom.

use super::super::{Case, Earthing, Given, GivenValue, Impedance, ReferenceProof, Role};

/// More conductors than this are not fitted together: the ones that read most stand for them.
pub(super) const FITTED: usize = 12;

/// Where the steps of an indicator begin, in proportion to what is printed on them: a lamp is lit at its own value at the latest,
/// and somewhat below it in most. All lamps of one indicator are alike in this, so each value is tried as a whole.
pub(super) const STEPS_BEGIN: [f64; 3] = [0.84, 0.92, 1.0];

/// A reading between the conductors `i` and `j`.
#[derive(Debug, Clone)]
pub(super) struct Obs {
    pub i: usize,
    pub j: usize,
    /// The interval in volts; both ends are the reading where it was a number.
    pub lo: f64,
    pub hi: f64,
    /// One number for starts: the reading, or a likely one within the interval.
    pub guess: f64,
    pub exact: bool,
    /// One standard deviation in volts, and the instrument's part in it.
    pub sigma: f64,
    pub meter: f64,
    /// The instrument's load in kilohm.
    pub load: f64,
}

/// A case, ready to be fitted.
pub(super) struct Scene {
    pub names: Vec<String>,
    /// Lines, control circuits and DC poles, one list a supply.
    pub groups: Vec<Vec<usize>>,
    pub neutrals: Vec<usize>,
    pub earth: Option<usize>,
    /// Line to neutral in volts; 230 if nobody said.
    pub volts: f64,
    pub volts_known: bool,
    /// Line to line over line to neutral, if both were given.
    pub ratio: Option<f64>,
    /// Only line to line was given.
    pub line_line_only: bool,
    pub earthing: Earthing,
    /// Whether the isolator opens the neutral, if it was said.
    pub neutral_opened: Option<bool>,
    pub reference: ReferenceProof,
    /// Nobody read with a high impedance, or nobody with a low one.
    pub all_low: bool,
    pub any_high: bool,
    pub obs: Vec<Obs>,
    /// Conductors left out because there are too many.
    pub left_out: usize,
}

impl Scene {
    /// The lines of all supplies.
    pub(super) fn lines(&self) -> Vec<usize> {
        self.groups.concat()
    }

    /// Common logarithm of the instrument's load in kilohm: softness of this size halves a reading.
    pub(super) fn load(&self) -> f64 {
        self.obs.iter().map(|o| o.load).fold(f64::INFINITY, f64::min).log10()
    }

    /// How far a supply is from its nominal voltage, in proportion, as a standard deviation.
    pub(super) fn tolerance(&self) -> f64 {
        if self.volts_known { 0.05 } else { 0.3 }
    }

    /// The share of readings that are numbers.
    pub(super) fn exact(&self) -> f64 {
        self.obs.iter().filter(|o| o.exact).count() as f64 / self.obs.len().max(1) as f64
    }

    /// Reads a case, with steps that begin there; only AC readings take part. `None` without two conductors that were read.
    pub(super) fn of(case: &Case, begin: f64) -> Option<Scene> {
        let chosen = chosen(case);
        let at = |name: &str| chosen.iter().position(|k| case.conductors[*k].name == name);
        let nominal = case.nominal;
        let volts = nominal.line_neutral().map(|mv| f64::from(mv) / 1e3).filter(|v| *v > 0.0);
        let mut scene = Scene {
            names: chosen.iter().map(|k| case.conductors[*k].name.clone()).collect(),
            groups: Vec::new(),
            neutrals: Vec::new(),
            earth: None,
            volts: volts.unwrap_or(230.0),
            volts_known: volts.is_some(),
            ratio: nominal
                .line_line_mv
                .zip(nominal.line_neutral_mv)
                .map(|(ll, ln)| f64::from(ll) / f64::from(ln.max(1))),
            line_line_only: nominal.line_neutral_mv.is_none() && nominal.line_line_mv.is_some(),
            earthing: case.earthing,
            neutral_opened: None,
            reference: case.reference_proved,
            all_low: true,
            any_high: false,
            obs: Vec::new(),
            left_out: case.conductors.len() - chosen.len(),
        };
        let mut supplies: Vec<Option<&str>> = Vec::new();
        for (k, from) in chosen.iter().enumerate() {
            let conductor = &case.conductors[*from];
            match conductor.role {
                Role::Protective | Role::Pen => {
                    scene.earth.get_or_insert(k);
                }
                Role::Neutral | Role::MidPoint => scene.neutrals.push(k),
                Role::Line | Role::Control | Role::DcPlus | Role::DcMinus => {
                    let supply = conductor.supply.as_deref();
                    match supplies.iter().position(|s| *s == supply) {
                        Some(group) => scene.groups[group].push(k),
                        None => {
                            supplies.push(supply);
                            scene.groups.push(vec![k]);
                        }
                    }
                }
            }
        }
        let neutral = case.conductors.iter().filter(|c| matches!(c.role, Role::Neutral | Role::MidPoint));
        if let Some(poles) = &case.poles_opened {
            scene.neutral_opened = Some(neutral.into_iter().any(|c| poles.contains(&c.name)));
        }
        for given in case.readings.iter().filter(|g| !g.dc) {
            let (Some(i), Some(j)) = (at(&given.pair[0]), at(&given.pair[1])) else { continue };
            scene.take(case, given, i.min(j), i.max(j), begin);
        }
        (scene.names.len() > 1 && !scene.obs.is_empty()).then_some(scene)
    }

    /// Adds a reading. Of two with the same load on the same pair the worse one counts.
    fn take(&mut self, case: &Case, given: &Given, i: usize, j: usize, begin: f64) {
        let (low, high) = case.span(given.value);
        let exact = matches!(given.value, GivenValue::Volts(_));
        let (mut lo, mut hi) = (f64::from(low) / 1e3, high.map_or(f64::INFINITY, |mv| f64::from(mv) / 1e3));
        if given.value == GivenValue::Continuity {
            // A tester finds no continuity where there is more than a few volts (common practice, no source).
            hi *= 0.5;
        }
        if !exact {
            lo *= begin;
            hi *= begin;
        }
        let guess = match given.value {
            GivenValue::Volts(_) => lo,
            GivenValue::None | GivenValue::Continuity => 0.0,
            // The nominal voltage is likelier than the middle of a step.
            _ => [self.volts, self.volts * 3f64.sqrt()]
                .into_iter()
                .find(|v| lo <= *v && *v < hi)
                .unwrap_or(if hi.is_finite() { (lo + hi) / 2.0 } else { lo * 1.2 }),
        };
        // Numbers: 1 % and half a volt for the meter, 1.2 % of the nominal voltage for what a supply and its loads do.
        // Steps: their ends are sharp to a few in a hundred.
        let meter = 0.006 * lo + 0.3;
        let sigma = if exact { meter.hypot(0.012 * self.volts) } else { 0.02 * lo + 0.008 * self.volts };
        let load = match given.impedance {
            Impedance::Low => 30.0,
            Impedance::High | Impedance::Unknown => 1000.0,
        };
        self.all_low &= given.impedance == Impedance::Low;
        self.any_high |= given.impedance == Impedance::High;
        let obs = Obs { i, j, lo, hi, guess, exact, sigma, meter, load };
        match self.obs.iter_mut().find(|o| (o.i, o.j, o.load) == (i, j, load)) {
            Some(old) if obs.lo > old.lo => *old = obs,
            Some(_) => {}
            None => self.obs.push(obs),
        }
    }
}

/// Which conductors take part, in their own order: all, or up to [`FITTED`]: references and neutrals, then those that read most.
fn chosen(case: &Case) -> Vec<usize> {
    let all: Vec<usize> = (0..case.conductors.len()).collect();
    if all.len() <= FITTED {
        return all;
    }
    let most = |k: usize| {
        let name = &case.conductors[k].name;
        let own = case.readings.iter().filter(|g| g.pair.contains(name));
        own.map(|g| case.span(g.value).0).max().unwrap_or(0)
    };
    let reference = all.iter().copied().find(|k| case.conductors[*k].role.is_reference());
    let neutral = all.iter().copied().find(|k| case.conductors[*k].role == Role::Neutral);
    let mut ranked: Vec<(u32, usize)> = all.iter().map(|k| (most(*k), *k)).collect();
    ranked.sort_by_key(|(mv, k)| (std::cmp::Reverse(*mv), *k));
    let mut taken: Vec<usize> = reference.into_iter().chain(neutral).collect();
    for (_, k) in ranked {
        if taken.len() < FITTED && !taken.contains(&k) {
            taken.push(k);
        }
    }
    taken.sort_unstable();
    taken
}
