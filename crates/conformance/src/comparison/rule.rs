//! By which rule a bound is compared.

use listing::{Bound, Relation};
use vocabulary::{Nature, Property};

use super::guard::is_counted;

/// By which rule a bound is compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Rule {
    /// A limit or two.
    Limit,
    /// That value and no other.
    Exactly,
    /// A nominal value that a product is bought by: that one, neither lighter nor heavier.
    NominalProduct,
    /// A nominal value that is measured in place: that one, within a cited tolerance.
    NominalDimension,
    /// Near that value; how near, a person says.
    About,
}

impl Rule {
    /// The rule for a bound on a property. A bare value ("two layers", "24 in. o.c.") is exact where it is a count, and
    /// nominal elsewhere. A property that the vocabulary doesn't know is taken to be measured, so that a deviation
    /// goes to a person.
    pub(crate) fn of(bound: &Bound, property: Option<&Property>) -> Self {
        let nature = property.map(|property| property.nature);
        let is_count = bound.unit == measure::Unit::Count || nature == Some(Nature::Count);
        let is_product = nature == Some(Nature::Product) || is_counted(bound.unit.dimension());
        let nominal = match (is_count, is_product) {
            (true, _) => Self::Exactly,
            (false, true) => Self::NominalProduct,
            (false, false) => Self::NominalDimension,
        };
        match bound.relation {
            Relation::AtLeast
            | Relation::AtMost
            | Relation::LessThan
            | Relation::MoreThan
            | Relation::Between => Self::Limit,
            Relation::About => Self::About,
            Relation::Exactly if !bound.bare => Self::Exactly,
            Relation::Exactly | Relation::Nominal => nominal,
        }
    }

    /// Whether the rule asks for one value rather than for a side of a limit.
    pub(crate) const fn is_equality(self) -> bool {
        !matches!(self, Self::Limit)
    }
}
