//! What the supply network has to say: parts that fit, work that rests on a cut zone, points that nobody else counts on.

use super::{Gate, GateVerdict, no};
use crate::job::known::{BETWEEN_PROOFS, PROOF_HOLDS};
use crate::job::refusal::{AloneRefusal, NetworkRefusal, Refusal};
use crate::job::{Job, company};
use crate::journal::{EntryId, Fact};
use stillbar_values::company::call_read;

use crate::supply::{Drawn, Link, Node, Position, Restore, States, restore};

impl Gate<'_> {
    /// Whether a site's network, or its rules, take in `fact`.
    pub fn network(&self, site: EntryId, drawn: &Drawn, fact: &Fact) -> GateVerdict {
        self.person()?;
        let known = |id: &String| {
            drawn.nodes().iter().any(|n| n.part.id == *id) || drawn.links().iter().any(|l| l.part.id == *id)
        };
        match fact {
            Fact::NodeNoted { node } if drawn.links().iter().any(|l| l.part.id == node.id) => {
                no(NetworkRefusal::LinkNamed { id: node.id.clone() })
            }
            Fact::NodeNoted { node } => fits(drawn, std::slice::from_ref(node), &[]),
            Fact::LinkNoted { link } if drawn.nodes().iter().any(|n| n.part.id == link.id) => {
                no(NetworkRefusal::NodeNamed { id: link.id.clone() })
            }
            Fact::LinkNoted { link } => fits(drawn, &[], std::slice::from_ref(link)),
            Fact::PartGone { part, .. } if !known(part) => no(NetworkRefusal::NotThere { id: part.clone() }),
            Fact::PartGone { why, .. } if why.trim().is_empty() => no(NetworkRefusal::GoneUnsaid),
            Fact::PartGone { part, .. } => self.not_counted_on(part),
            Fact::LinkSeen { link, .. } if !drawn.links().iter().any(|l| l.part.id == *link) => {
                no(NetworkRefusal::NotThere { id: link.clone() })
            }
            Fact::LinkSeen { .. } => Ok(()),
            Fact::SiteRuled { between_proofs, proof_holds } => {
                let fits = (1..=BETWEEN_PROOFS).contains(between_proofs) && (1..=PROOF_HOLDS).contains(proof_holds);
                if fits {
                    Ok(())
                } else {
                    no(NetworkRefusal::RulesTooWide { between_proofs: BETWEEN_PROOFS, proof_holds: PROOF_HOLDS })
                }
            }
            Fact::CompanyRuled { rules, call } => {
                let taken = company::takes(self.world, site, rules, &call_read(call));
                taken.map_err(|wrong| AloneRefusal::Company(wrong).into())
            }
            _ => no(NetworkRefusal::NotOfSite),
        }
    }

    /// A part with a lock on it is there.
    fn not_counted_on(&self, part: &str) -> GateVerdict {
        match self.locks.iter().find(|l| l.on && l.switch.as_deref() == Some(part)) {
            Some(lock) => {
                no(NetworkRefusal::Locked { owner: lock.owner, part: part.to_owned(), job: lock.job_title.clone() })
            }
            None => Ok(()),
        }
    }

    pub(super) fn supply(&self, job: &Job, fact: &Fact) -> GateVerdict {
        match (fact, self.cut) {
            (Fact::ZoneNoted { zone }, Some(cut)) => {
                match zone.iter().find(|id| cut.network.node(id).is_none() && cut.network.link(id).is_none()) {
                    Some(id) => no(NetworkRefusal::NotInNetwork { id: id.clone() }),
                    None => Ok(()),
                }
            }
            (Fact::ZoneNoted { .. } | Fact::CutDiffers { .. } | Fact::PointDrawn { .. }, None) => {
                no(NetworkRefusal::NotDrawn)
            }
            (Fact::CutDiffers { why, .. }, _) if why.trim().chars().count() < 5 => no(Refusal::NoReason),
            (Fact::CutDiffers { why, .. }, _) if !crate::names::says_something(why) => no(Refusal::NoReason),
            (Fact::PointAdded { switch: Some(switch), .. } | Fact::PointDrawn { switch, .. }, Some(cut)) => {
                match cut.network.link(switch) {
                    None => no(NetworkRefusal::NotInNetwork { id: switch.clone() }),
                    Some(_) if job.points.iter().any(|p| p.switch.as_ref() == Some(switch)) => {
                        no(NetworkRefusal::PointAlready { link: switch.clone() })
                    }
                    Some(_) => Ok(()),
                }
            }
            (Fact::IndicatorProved { run: None, works: true, .. } | Fact::WorkBegan { .. }, Some(cut)) => {
                match cut.against(job) {
                    Some(why) => no(NetworkRefusal::Way { why }),
                    None => Ok(()),
                }
            }
            (Fact::PointClosed { point, .. }, Some(cut)) => {
                let Some(point) = job.point(*point) else { return Ok(()) };
                let Some(switch) = &point.switch else { return Ok(()) };
                let at = point.label.clone();
                if let Some((_, lock)) = cut.shared.iter().find(|(link, _)| link == switch) {
                    let (owner, job) = (lock.owner, lock.job_title.clone());
                    return no(NetworkRefusal::Held { at, lock: lock.label.clone(), owner, job });
                }
                let wanted = States::from([(switch.clone(), Position::Closed)]);
                match restore(&cut.network, &cut.standing(job), &wanted, self.held) {
                    Ok(Restore::Refused { why }) => no(NetworkRefusal::NotYet { at, why }),
                    _ => Ok(()),
                }
            }
            _ => Ok(()),
        }
    }
}

fn fits(drawn: &Drawn, nodes: &[Node], links: &[Link]) -> GateVerdict {
    drawn.fits(nodes, links).map_err(|misfit| NetworkRefusal::Misfit(misfit).into())
}
