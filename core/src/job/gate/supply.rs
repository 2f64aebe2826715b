//! What the supply network has to say: parts that fit, work that rests on a cut zone, points that nobody else counts on.

use super::{Gate, Verdict, no};
use crate::job::Job;
use crate::job::known::{BETWEEN_PROOFS, PROOF_HOLDS};
use crate::journal::Fact;
use crate::supply::{Drawn, Position, Restore, States, restore};

impl Gate<'_> {
    /// Whether a site's network, or its rules, take in `fact`.
    pub fn network(&self, drawn: &Drawn, fact: &Fact) -> Verdict {
        self.person()?;
        let known = |id: &String| {
            drawn.nodes().iter().any(|n| n.part.id == *id) || drawn.links().iter().any(|l| l.part.id == *id)
        };
        match fact {
            Fact::NodeNoted { node } if drawn.links().iter().any(|l| l.part.id == node.id) => {
                no(format!("{} is the name of a link already. Give another name.", node.id))
            }
            Fact::NodeNoted { node } => drawn.fits(std::slice::from_ref(node), &[]),
            Fact::LinkNoted { link } if drawn.nodes().iter().any(|n| n.part.id == link.id) => {
                no(format!("{} is the name of a board, source or load already. Give another name.", link.id))
            }
            Fact::LinkNoted { link } => drawn.fits(&[], std::slice::from_ref(link)),
            Fact::PartGone { part, .. } if !known(part) => no(format!("{part} is not in this network.")),
            Fact::PartGone { why, .. } if why.trim().is_empty() => no("Write how you know that it is not there."),
            Fact::PartGone { part, .. } => self.not_counted_on(part),
            Fact::LinkSeen { link, .. } if !drawn.links().iter().any(|l| l.part.id == *link) => {
                no(format!("{link} is not in this network."))
            }
            Fact::LinkSeen { .. } => Ok(()),
            Fact::SiteRuled { between_proofs, proof_holds } => {
                let fits = (1..=BETWEEN_PROOFS).contains(between_proofs) && (1..=PROOF_HOLDS).contains(proof_holds);
                if fits {
                    Ok(())
                } else {
                    no(format!(
                        "A site sets less, not more: 1 to {BETWEEN_PROOFS} min between two proofs, 1 to {PROOF_HOLDS} min for a proof."
                    ))
                }
            }
            _ => no("This is not about a site."),
        }
    }

    /// A part with a lock on it is there.
    fn not_counted_on(&self, part: &str) -> Verdict {
        match self.locks.iter().find(|l| l.on && l.switch.as_deref() == Some(part)) {
            Some(lock) => no(format!(
                "A lock of {} is on {part}, {}: it cannot be crossed out while it is.",
                self.name(lock.owner),
                lock.job_title
            )),
            None => Ok(()),
        }
    }

    pub(super) fn supply(&self, job: &Job, fact: &Fact) -> Verdict {
        match (fact, self.cut) {
            (Fact::ZoneNoted { zone }, Some(cut)) => {
                match zone.iter().find(|id| cut.network.node(id).is_none() && cut.network.link(id).is_none()) {
                    Some(id) => no(format!("{id} is not in the supply network.")),
                    None => Ok(()),
                }
            }
            (Fact::ZoneNoted { .. } | Fact::CutDiffers { .. } | Fact::PointDrawn { .. }, None) => {
                no("No supply network is drawn for this site yet.")
            }
            (Fact::CutDiffers { why, .. }, _) if why.trim().chars().count() < 5 => no(super::REASON),
            (Fact::CutDiffers { why, .. }, _) if !crate::names::says_something(why) => no(super::REASON),
            (Fact::PointAdded { switch: Some(switch), .. } | Fact::PointDrawn { switch, .. }, Some(cut)) => {
                match cut.network.link(switch) {
                    None => no(format!("{switch} is not in the supply network.")),
                    Some(_) if job.points.iter().any(|p| p.switch.as_ref() == Some(switch)) => {
                        no(format!("{switch} is a point of this job already."))
                    }
                    Some(_) => Ok(()),
                }
            }
            (Fact::IndicatorProved { run: None, works: true, .. } | Fact::WorkBegan { .. }, Some(cut)) => {
                match cut.against(job) {
                    Some(way) => no(format!(
                        "The supply network shows a way that no lock cuts. {way} Lock it, or say under Supply network why it does not count."
                    )),
                    None => Ok(()),
                }
            }
            (Fact::PointClosed { point, .. }, Some(cut)) => {
                let Some(point) = job.point(*point) else { return Ok(()) };
                let Some(switch) = &point.switch else { return Ok(()) };
                if let Some((_, lock)) = cut.shared.iter().find(|(link, _)| link == switch) {
                    return no(format!(
                        "{} stays open: lock {} of {} is on it, for {}.",
                        point.label,
                        lock.label,
                        self.name(lock.owner),
                        lock.job_title
                    ));
                }
                let wanted = States::from([(switch.clone(), Position::Closed)]);
                match restore(&cut.network, &cut.standing(job), &wanted, self.held) {
                    Ok(Restore::Refused { why, .. }) => no(format!("{} stays open. {}", point.label, why.join(" "))),
                    _ => Ok(()),
                }
            }
            _ => Ok(()),
        }
    }
}
