//! What is known of one joint, and what of it counts where the joint is checked against a listing.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::said::{GoesBy, is_of_a_listing, parted, said_of, without_listing};
use super::{Fact, Joint};

/// What is known of one joint, one fact a property. Nothing is decided from it as it is: what was said of one listing's own requirement
/// counts for that listing alone, so that a verdict takes what [`for_listing`](Self::for_listing) leaves.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Facts<'a> {
    general: Arc<BTreeMap<&'a str, &'a Fact>>,
    /// Those on properties that a listing has for itself, by their whole names.
    own: Arc<BTreeMap<&'a str, Own<'a>>>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Own<'a> {
    fact: &'a Fact,
    layer: Layer,
}

/// Whose fact it is: a joint's goes before its barrier's, that before its mark's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Layer {
    Mark,
    Barrier,
    Joint,
}

/// What is known of a joint as far as it counts where it is checked against one listing, or against none in particular.
#[derive(Debug, Clone, Default)]
pub struct FactsFor<'a> {
    general: Arc<BTreeMap<&'a str, &'a Fact>>,
    /// Those that were said of this listing, by the names that it has for their properties.
    own: BTreeMap<&'a str, &'a Fact>,
}

impl<'a> Facts<'a> {
    /// A joint's own facts, over its barrier's, over its mark's.
    pub(super) fn of(
        joint: &'a Joint,
        mark: Option<&'a BTreeMap<String, Fact>>,
        barrier: Option<&'a BTreeMap<String, Fact>>,
    ) -> Self {
        let layers = [
            (Layer::Mark, mark),
            (Layer::Barrier, barrier),
            (Layer::Joint, Some(&joint.facts)),
        ];
        let mut own = BTreeMap::new();
        let mut general = BTreeMap::new();
        for (layer, facts) in layers {
            for (name, fact) in facts.into_iter().flatten() {
                if joint.not_known.contains(name) {
                    continue;
                }
                if is_of_a_listing(name) {
                    if layer == Layer::Joint || !is_not_known(joint, name) {
                        own.insert(name.as_str(), Own { fact, layer });
                    }
                } else {
                    general.insert(name.as_str(), fact);
                }
            }
        }
        Self {
            general: Arc::new(general),
            own: Arc::new(own),
        }
    }

    /// What counts where the joint is checked against a listing: what is said of any, and what was said of this one.
    pub fn for_listing(&self, listing: &GoesBy<'_>) -> FactsFor<'a> {
        let mut best: BTreeMap<&'a str, Candidate<'a>> = BTreeMap::new();
        for (name, own) in &*self.own {
            let (plain, Some(said)) = parted(name) else {
                continue;
            };
            if !listing.is_meant(said) {
                continue;
            }
            let candidate = Candidate {
                rank: (own.layer, said.document.is_some()),
                fact: Some(own.fact),
            };
            best.entry(plain)
                .and_modify(|best| *best = best.or(candidate))
                .or_insert(candidate);
        }
        let own = best.into_iter();
        FactsFor {
            general: self.general.clone(),
            own: own
                .filter_map(|(plain, best)| Some((plain, best.fact?)))
                .collect(),
        }
    }

    /// What counts whatever the listing.
    pub fn for_any_listing(&self) -> FactsFor<'a> {
        FactsFor {
            general: self.general.clone(),
            own: BTreeMap::new(),
        }
    }

    /// Facts on properties that a listing has for itself which don't count where the joint is checked against this one: they were said of
    /// another, or nobody knows of which.
    pub fn not_for_listing(&self, listing: &GoesBy<'_>) -> impl Iterator<Item = &'a Fact> {
        let own = self.own.iter().filter(|(name, _)| {
            let said = parted(name).1;
            !said.is_some_and(|said| listing.is_meant(said))
        });
        own.map(|(_, own)| own.fact)
    }

    /// Whether anything was said of this listing alone.
    pub fn any_said_of(&self, listing: &GoesBy<'_>) -> bool {
        let mut said = self.own.keys().filter_map(|name| said_of(name));
        said.any(|said| listing.is_meant(said))
    }

    /// The facts on properties that a listing has for itself, whichever listing they were said of.
    pub fn of_listings(&self) -> impl Iterator<Item = &'a Fact> {
        self.own.values().map(|own| own.fact)
    }

    /// What is known of a property that is no listing's own; none when nothing is.
    pub fn get(&self, property: &str) -> Option<&'a Fact> {
        self.general.get(property).copied()
    }

    /// The fact of that name, the listing included that it was said of. Whether it counts anywhere, this doesn't say.
    pub fn named(&self, name: &str) -> Option<&'a Fact> {
        let own = || self.own.get(name).map(|own| own.fact);
        self.get(name).or_else(own)
    }

    /// Every fact, in the order of their names.
    pub fn iter(&self) -> impl Iterator<Item = &'a Fact> {
        let own = self.own.iter().map(|(name, own)| (*name, own.fact));
        let general = self.general.iter().map(|(name, fact)| (*name, *fact));
        let mut all: Vec<(&'a str, &'a Fact)> = own.chain(general).collect();
        if !self.own.is_empty() {
            all.sort_unstable_by_key(|(name, _)| *name);
        }
        all.into_iter().map(|(_, fact)| fact)
    }

    /// How many properties something is known of.
    pub fn len(&self) -> usize {
        self.general.len() + self.own.len()
    }

    /// Whether nothing is known.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }
}

/// That the schedule says a property isn't known at the joint: then what its mark or barrier says of it counts for no listing.
fn is_not_known(joint: &Joint, name: &str) -> bool {
    let plain = without_listing(name);
    let mut not_known = joint.not_known.iter();
    not_known.any(|gap| without_listing(gap) == plain)
}

/// The fact that goes before the others which were said of a listing under different names of it.
#[derive(Debug, Clone, Copy)]
struct Candidate<'a> {
    /// Whose it is, and whether it names the document.
    rank: (Layer, bool),
    /// None where two of one rank say otherwise: then nobody knows which holds.
    fact: Option<&'a Fact>,
}

impl Candidate<'_> {
    fn or(self, other: Self) -> Self {
        match self.rank.cmp(&other.rank) {
            core::cmp::Ordering::Less => other,
            core::cmp::Ordering::Greater => self,
            core::cmp::Ordering::Equal => {
                let value = |one: Self| one.fact.map(|fact| (&fact.value, &fact.provenance));
                let is_same = value(self) == value(other);
                Self {
                    fact: self.fact.filter(|_| is_same),
                    ..self
                }
            }
        }
    }
}

impl<'a> FactsFor<'a> {
    /// Whether anything is known that was said of this listing alone.
    pub fn has_own(&self) -> bool {
        !self.own.is_empty()
    }

    /// What is known of a property, by the name that the vocabulary or the listing has for it; none when nothing is.
    pub fn get(&self, property: &str) -> Option<&'a Fact> {
        let own = self.own.get(property);
        own.or_else(|| self.general.get(property)).copied()
    }

    /// Every fact that counts, by the name that the vocabulary or the listing has for its property: those of the listing's own first.
    pub fn iter(&self) -> impl Iterator<Item = (&'a str, &'a Fact)> {
        let all = self.own.iter().chain(&*self.general);
        all.map(|(name, fact)| (*name, *fact))
    }
}

impl<'a> FromIterator<&'a Fact> for Facts<'a> {
    /// Facts that stand outside a project; of two on one property the later counts.
    fn from_iter<I: IntoIterator<Item = &'a Fact>>(facts: I) -> Self {
        let mut own = BTreeMap::new();
        let mut general = BTreeMap::new();
        for fact in facts {
            let name = fact.property.as_str();
            if is_of_a_listing(name) {
                let layer = Layer::Joint;
                own.insert(name, Own { fact, layer });
            } else {
                general.insert(name, fact);
            }
        }
        Self {
            general: Arc::new(general),
            own: Arc::new(own),
        }
    }
}
