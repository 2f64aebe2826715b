//! What a player who does everything right says of the network, and which points they add.

use std::collections::BTreeSet;

use stillbar_core::journal::fact::SourceRef;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::point::PointKind;
use stillbar_core::supply::NodeKind;

use super::alike::alike;
use super::plan::Desk;

impl Desk<'_> {
    /// What the network of the site shows, if somebody drew one: the zone, the points in it, and ways that do not count.
    pub fn network(&self) -> Option<Fact> {
        let (mut parts, mut sources) = (BTreeSet::new(), Vec::new());
        for e in self.entries {
            match &e.body.fact {
                Fact::NodeNoted { node } => {
                    parts.insert(node.id.as_str());
                    sources.extend((node.kind == NodeKind::Source).then_some(node.id.as_str()));
                }
                Fact::LinkNoted { link } => drop(parts.insert(link.id.as_str())),
                Fact::PartGone { part, .. } => drop(parts.remove(part.as_str())),
                _ => {}
            }
        }
        sources.retain(|s| parts.contains(s));
        for id in sources {
            let source = SourceRef::Drawn(id.into());
            if id != "GRID" && !self.has(|f| matches!(f, Fact::SourceElsewhere { source: s, .. } if *s == source)) {
                return Some(Fact::SourceElsewhere { source, why: "It feeds another board, traced by hand".into() });
            }
        }
        if parts.contains(self.plan.equipment) && !self.has(|f| matches!(f, Fact::ZoneNoted { .. })) {
            return Some(Fact::ZoneNoted { zone: vec![self.plan.equipment.into()] });
        }
        let point = self.all().find(|e| matches!(e.body.fact, Fact::PointAdded { cuts: None, .. }))?.id;
        if parts.contains("Q4") && !self.has(|f| matches!(f, Fact::PointDrawn { .. })) {
            return Some(Fact::PointDrawn { point, switch: "Q4".into(), stays_open: false });
        }
        if self.again && parts.contains("Q9") && !self.has(|f| matches!(f, Fact::CutDiffers { .. })) {
            return Some(Fact::CutDiffers { ways: vec!["Q9".into()], why: "The set is away, seen in the yard".into() });
        }
        None
    }

    /// What cannot be made dead is named, with its place and how it is screened.
    pub fn stays_live(&self) -> Option<Fact> {
        let plan = self.plan;
        let named = plan.live.is_empty() || self.has(|f| matches!(f, Fact::StaysLive { .. }));
        (!named).then(|| Fact::StaysLive {
            what: "What comes in from the yard".into(),
            at: "Left of the rail, behind cover 3".into(),
            screened: plan.screened.into(),
            conductors: plan.live.clone(),
        })
    }

    pub fn points(&self) -> Option<Fact> {
        if !self.has(|f| matches!(f, Fact::PointAdded { cuts: None, .. })) {
            return Some(self.point(self.plan.point.0, self.plan.point.1, self.plan.opened(), None));
        }
        for source in self.all().filter(|e| matches!(e.body.fact, Fact::SourceAnswered { found: Some(_), .. })) {
            let Fact::SourceAnswered { found: Some(found), terminals, .. } = &source.body.fact else { continue };
            if !self.has(|f| matches!(f, Fact::PointAdded { cuts: Some(s), .. } if *s == source.id)) {
                let poles = if terminals.is_empty() { self.plan.lines_and_neutral() } else { terminals.clone() };
                return Some(self.point(&format!("Switch of {}", found.what), &found.at, poles, Some(source.id)));
            }
        }
        None
    }

    fn point(&self, label: &str, at: &str, poles: Vec<String>, cuts: Option<EntryId>) -> Fact {
        let same_as = self.entries.iter().find_map(|e| match &e.body.fact {
            Fact::PointAdded { label: l, at: a, .. }
                if e.job() != Some(self.job) && alike(l, label) && alike(a, at) =>
            {
                Some(e.id)
            }
            _ => None,
        });
        let kind = PointKind::ALL[0];
        Fact::PointAdded {
            label: label.into(),
            at: at.into(),
            kind,
            lockable: true,
            poles,
            cuts,
            switch: None,
            stays_open: false,
            same_as,
        }
    }
}
