//! A site's supply network: what is drawn of it, and the way to draw more.

pub(super) mod cut;
pub(super) mod part;

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go};
use super::parts::Tone;
use crate::app::NotDone;
use crate::journal::EntryId;
use crate::supply::Shown;
use crate::text;
use crate::text::screens::supply as said;

/// The network of a site.
pub fn network(look: &Look, site: EntryId) -> Page {
    let mut page = Page::new(said::of(look.world.sites.get(&site).cloned().unwrap_or_else(said::unknown_site)));
    page.caution(Tone::Warn, text::other_sources());
    let mut drawn = look.drawn.clone();
    if drawn.is_empty() {
        page.para(said::nothing_drawn());
    } else {
        let states: Vec<_> = drawn.states().iter().map(|(id, at)| (id.clone(), *at)).collect();
        let locked = locked(look, site);
        let shown = Shown { locked: &locked, states: &states, ..Shown::default() };
        let (drawing, words) = text::draw(&drawn.network(), &shown);
        page.drawing(words, drawing);
    }
    page.button(said::add_link(), go(Route::NewLink(site)));
    if !drawn.nodes().is_empty() {
        page.heading(said::nodes());
    }
    for noted in drawn.nodes() {
        let node = &noted.part;
        let mut lines = vec![part::node_word(node)];
        lines.extend([&node.label, &node.place].into_iter().filter(|t| !t.is_empty()).cloned());
        if !node.stops.is_empty() {
            lines.push(said::stops(&node.stops));
        }
        if !node.untraced.is_empty() {
            lines.push(said::not_traced(&node.untraced));
        }
        lines.push(look.by(&noted.stamp));
        page.row(node.id.clone(), lines, go(Route::Part(site, noted.stamp.id)));
    }
    if !drawn.links().is_empty() {
        page.heading(said::links());
    }
    for noted in drawn.links() {
        let link = &noted.part;
        let mut lines = vec![said::link(&link.from, &link.to, part::link_word(link))];
        lines.extend(drawn.states().get(&link.id).map(|at| text::seen(*at)));
        lines.extend([&link.label, &link.place].into_iter().filter(|t| !t.is_empty()).cloned());
        lines.push(look.by(&noted.stamp));
        page.row(link.id.clone(), lines, go(Route::Part(site, noted.stamp.id)));
    }
    page.main(said::add_node(), go(Route::NewNode(site)));
    page
}

/// The links of a site's network with a lock on, whoever's it is.
pub(super) fn locked(look: &Look, site: EntryId) -> Vec<String> {
    let on = look.locks.iter().filter(|l| l.on && l.site == Some(site));
    on.filter_map(|l| l.switch.clone()).collect()
}

/// Nothing is done on the network's own screen but going on to its parts.
pub fn act(_act: &mut Act, _site: EntryId, _verb: &str, _arg: &str) -> Result<(), NotDone> {
    Err(UNKNOWN.into())
}
