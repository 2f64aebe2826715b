//! The system of a job: picked at set-up, corrected once it turns out wrong, and what stays live beside it.

use super::build::Page;
use super::context::{Act, Look};
use super::home::{options, picked, read_word};
use super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::journal::{EntryId, Fact};
use crate::prove::{Conductor, Earthing, RuleSet, Supply, System, parse_conductors, parse_volts};
use crate::text::screens::system as said;
use crate::text::{self, AskFirst, AskJob};

/// What is picked of a system.
pub(super) struct PickedSystem {
    pub(super) system: System,
    pub(super) earthing: Earthing,
    pub(super) nominal: u32,
    pub(super) own: Vec<Conductor>,
}

/// Where conductors of one's own are typed.
pub(super) const OWN: &str = "own";

/// How the sources of the drawings are earthed until somebody says it: at the point that their names say.
const USUALLY_EARTHED: Earthing = Earthing::TnS;

/// The conductors of a set as they are typed.
pub(super) fn typed(own: &[Conductor]) -> String {
    let one = |c: &Conductor| {
        let supply = c.supply.as_ref().map_or_else(String::new, |supply| format!("@{supply}"));
        let colour = c.colour.as_ref().map_or_else(String::new, |colour| format!("[{colour}]"));
        match Conductor::named(&c.name) {
            Some(plain) if plain.role == c.role && supply.is_empty() => format!("{}{colour}", c.name),
            _ => format!("{}={}{supply}{colour}", c.name, c.role.name()),
        }
    };
    own.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// On a new job: the rules that are picked, also before the job is opened, or else those of its site.
pub(super) fn rules_above(look: &Look) -> Option<RuleSet> {
    read_word(&look.draft("rules")).or_else(|| look.world.rules_at(&look.draft("site")))
}

/// Conductors, earthing and voltage. What only some systems need is asked once one of them is picked.
pub(super) fn form(page: &mut Page, look: &Look, job: Option<&Job>) {
    let word = |system: System| super::home::word_of(&system);
    let system = look.draft_or("system", &job.map_or_else(String::new, |job| word(job.system)));
    let rules = job.map_or_else(|| rules_above(look), |job| job.rule_set).unwrap_or(RuleSet::Own);
    let own = look.draft_or(OWN, &job.map_or_else(String::new, |job| typed(&job.own)));
    let earthing = job.map_or_else(String::new, |job| super::home::word_of(&job.earthing));
    let earthed = read_word(&look.draft_or("earthing", &earthing)).unwrap_or(USUALLY_EARTHED);
    page.para(text::drawings_of_systems());
    page.choice("system", &said::conductors(), options(&rules.systems(), text::system), system.clone());
    page.drawn(|value| {
        let system = read_word::<System>(value)?;
        let nominal = rules.usual_volts(system).unwrap_or(0).saturating_mul(1000);
        let own = if system == System::Own { parse_conductors(&own).unwrap_or_default() } else { vec![] };
        Some(text::source(&Supply { own, ..Supply::of(system, nominal) }, earthed))
    });
    if system == word(System::Own) {
        page.entry(OWN, &said::own(), &said::own_hint(), own);
    }
    page.choice(
        "earthing",
        &said::earthing(),
        options(&Earthing::ALL, text::earthing),
        look.draft_or("earthing", &earthing),
    );
    let picked = System::ALL.into_iter().find(|s| word(*s) == system);
    let hint = picked.map_or_else(|| text::named_by(System::ThreePhaseNeutral), text::named_by);
    let usual = picked.map(|system| rules.volts_of(system)).unwrap_or_default();
    let hint = if usual.is_empty() { hint } else { said::usual_here(hint, text::commas(usual.iter().cloned())) };
    // Where only one voltage is usual it stands there, to be seen and changed.
    let only = || if let [only] = &usual[..] { only.clone() } else { String::new() };
    let nominal = job.map_or_else(only, |job| crate::prove::volts(job.nominal));
    page.field("volts", &said::volts(), &hint, look.draft_or("volts", &nominal), EntryKind::Number, 8);
}

/// What was picked.
pub(super) fn given(act: &Act) -> Result<PickedSystem, NotDone> {
    let system = picked::<System>(act, "system", AskJob::System)?;
    let own = match system {
        System::Own => {
            let list = act.need(OWN, AskJob::Own)?;
            parse_conductors(&list).map_err(|_| AskFirst::from(AskJob::Own))?
        }
        _ => Vec::new(),
    };
    let earthing = picked::<Earthing>(act, "earthing", AskJob::Earthing)?;
    let nominal = parse_volts(&act.need("volts", AskJob::Volts)?).map_err(AskFirst::Volts)?;
    Ok(PickedSystem { system, earthing, nominal, own })
}

/// Corrects the system of a job.
pub(super) fn change(page: &mut Page, look: &Look, job: &Job) {
    page.heading(said::wrong());
    page.para(said::wrong_ends());
    form(page, look, Some(job));
    page.entry("system-why", &said::wrong_what(), "", look.draft("system-why"));
    page.button(said::correct(), "system");
}

/// What stays live here, and a form for more.
pub(super) fn stays_live(page: &mut Page, look: &Look, job: &Job) {
    page.heading(said::live());
    for live in &job.stays_live {
        let at = said::live_at(&live.at, &live.screened, look.by(&live.stamp));
        page.fact(said::live_what(&live.what), at);
    }
    page.para(said::live_such_as());
    let may: Vec<_> = job.own.iter().filter(|c| job.may_stay_live(&c.name)).collect();
    if !may.is_empty() {
        let options = may.iter().map(|c| (c.name.clone(), c.name.clone())).collect();
        page.several("live-conductors", &said::live_conductors(), options, look.draft("live-conductors"));
    }
    page.entry("live-what", &said::live_name(), "", look.draft("live-what"));
    page.entry("live-at", &said::live_where(), "", look.draft("live-at"));
    page.entry("live-screened", &said::live_screened(), "", look.draft("live-screened"));
    page.toned(said::live_save(), "stays-live", Tone::Warn);
}

/// Keeps a correction, or what stays live.
pub(super) fn act(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    let fact = if verb == "system" {
        let PickedSystem { system, earthing, nominal: nominal_millivolts, own } = given(act)?;
        let why = act.need("system-why", AskJob::SystemWhy)?;
        Fact::SystemCorrected { system, earthing, nominal_millivolts, own, why }
    } else {
        let what = act.need("live-what", AskJob::StaysLive)?;
        let at = act.need("live-at", AskJob::StaysLive)?;
        let screened = act.need("live-screened", AskJob::StaysLive)?;
        let conductors = act.given("live-conductors").lines().map(str::to_owned).collect();
        Fact::StaysLive { what, at, screened, conductors }
    };
    act.keep(Some(job), fact).map(drop)
}
