//! Whether the same is known, whatever cell it was read from.

use core::hash::{Hash, Hasher};

use site::Fact;

/// Feeds what is known; two facts that are the same feed the same.
pub(crate) fn feed(fact: &Fact, hasher: &mut impl Hasher) {
    (&fact.property, &fact.value, &fact.provenance).hash(hasher);
}

/// Whether two facts are the same value of the same property from the same source.
pub(crate) fn is_same(one: &Fact, other: &Fact) -> bool {
    one.property == other.property && one.value == other.value && one.provenance == other.provenance
}
