//! Which circuits have a supply, and which lose it.

use std::collections::BTreeMap;

use super::model::Position;
use super::network::{Network, NetworkFault, SupplyError};

/// Where links stand now, by their ids; those that are not in it stand as they normally do.
pub type States = BTreeMap<String, Position>;

/// What is supplied before anything is locked.
pub(super) struct Supplied<'a> {
    network: &'a Network,
    /// Which links are closed.
    pub closed: Vec<bool>,
    before: Vec<bool>,
}

impl<'a> Supplied<'a> {
    pub fn new(network: &'a Network, states: &States) -> Result<Supplied<'a>, SupplyError> {
        let closed = closed(network, states)?;
        let mut supplied = Supplied { network, closed, before: Vec::new() };
        supplied.before = supplied.with(|_| false);
        Ok(supplied)
    }

    /// The nodes that are supplied when nothing flows into those of `off`.
    ///
    /// Supplied means: closed links lead to a source that circuits can be expected to run on. It is no word on what is dead.
    fn with(&self, off: impl Fn(usize) -> bool) -> Vec<bool> {
        let nodes = self.network.nodes();
        let mut on = vec![false; nodes.len()];
        let mut open: Vec<usize> = Vec::new();
        for i in (0..nodes.len()).filter(|i| self.network.is_source(*i)) {
            if nodes[i].sort.holds_supply() && !off(i) {
                on[i] = true;
                open.push(i);
            }
        }
        while let Some(node) = open.pop() {
            for step in self.network.around(node) {
                let to = step.to as usize;
                if self.closed[step.link as usize] && !on[to] && !off(to) {
                    on[to] = true;
                    open.push(to);
                }
            }
        }
        on
    }

    /// The nodes that lose their supply when nothing flows into those of `off`, in the network's order.
    pub fn lost(&self, off: impl Fn(usize) -> bool) -> Vec<usize> {
        let after = self.with(off);
        (0..after.len()).filter(|i| self.before[*i] && !after[*i]).collect()
    }

    /// How many circuits lose their supply when nothing flows into the nodes of `off`.
    pub fn circuits_lost(&self, off: impl Fn(usize) -> bool) -> usize {
        let after = self.with(off);
        let nodes = self.network.nodes();
        (0..after.len()).filter(|i| self.before[*i] && !after[*i] && nodes[*i].is_circuit()).count()
    }
}

/// Which links are closed: as `states` says, else as they normally are. What has no open position is closed.
pub(super) fn closed(network: &Network, states: &States) -> Result<Vec<bool>, SupplyError> {
    let ids: Vec<&String> = states.keys().collect();
    let (found, missing) = network.find_links(&ids);
    if let Some(id) = missing.first().map(|i| ids[*i]) {
        return Err(SupplyError::whole(NetworkFault::NoLink { id: id.clone() }));
    }
    let links = network.links();
    let mut closed: Vec<bool> = links.iter().map(|l| !l.kind.switches() || l.normally == Position::Closed).collect();
    for i in found {
        if links[i].kind.switches() {
            closed[i] = states[&links[i].id] == Position::Closed;
        }
    }
    Ok(closed)
}
