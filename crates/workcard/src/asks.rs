//! What the listing asks of one joint, as the check bound it: the clauses that apply, by property.

use conformance::{JointResult, Verdict};
use engineering::Known;
use listing::{Bound, Clause, Reading, Relation};
use measure::Quantity;

/// What applies to a joint.
pub(super) struct Asks<'a> {
    clauses: Vec<&'a Clause>,
    bounds: Vec<(&'a Clause, &'a Bound)>,
}

impl<'a> Asks<'a> {
    /// The clauses of a reading that apply to a joint.
    pub(super) fn of(result: &JointResult, reading: &'a Reading) -> Self {
        let applies = |clause: &&Clause| {
            result
                .finding(&clause.id)
                .is_some_and(|finding| finding.verdict != Verdict::NotApplicable)
        };
        Self::from(reading.clauses.iter().filter(applies).collect())
    }

    fn from(clauses: Vec<&'a Clause>) -> Self {
        let with_bound = |clause: &&'a Clause| Some((*clause, clause.bound()?));
        Self {
            bounds: clauses.iter().filter_map(with_bound).collect(),
            clauses,
        }
    }

    /// The ids of the clauses about some properties, in the listing's order; a name that ends with `*` stands for all that begin so.
    pub(super) fn clauses(&self, properties: &[&str]) -> Vec<String> {
        ids(self.clauses.iter().copied(), properties)
    }

    /// Those of them that stand in one item.
    pub(super) fn clauses_in(&self, item: &str, properties: &[&str]) -> Vec<String> {
        let of_item = self.clauses.iter().copied();
        ids(of_item.filter(|clause| clause.item == item), properties)
    }

    /// Every property that is asked, with the item it stands in, in the listing's order.
    pub(super) fn properties(&self) -> impl Iterator<Item = (&'a str, &'a str)> {
        self.bounds
            .iter()
            .map(|(clause, _)| (clause.property.as_str(), clause.item.as_str()))
    }

    /// Whether anything is asked of a property.
    pub(super) fn speaks_of(&self, property: &str) -> bool {
        self.properties().any(|(asked, _)| asked == property)
    }

    /// Whether anything is asked of properties that begin so.
    pub(super) fn has(&self, begin: &str) -> bool {
        self.properties()
            .any(|(property, _)| property.starts_with(begin))
    }

    /// The items in which a property is asked, each once, in the listing's order.
    pub(super) fn items_of(&self, property: &str) -> impl Iterator<Item = &'a str> {
        let mut items: Vec<&str> = Vec::new();
        for (asked, item) in self.properties() {
            if asked == property && !items.contains(&item) {
                items.push(item);
            }
        }
        items.into_iter()
    }

    /// The number of things that an item asks exactly.
    pub(super) fn exact_in(&self, property: &str, item: &str) -> Option<u64> {
        let mut bounds = self
            .bounds
            .iter()
            .filter(|(clause, _)| clause.property == property && clause.item == item);
        let (_, bound) = bounds.next().filter(|_| bounds.next().is_none())?;
        let number = bound
            .low()
            .filter(|_| bound.relation == Relation::Exactly)?
            .number;
        number
            .is_whole()
            .then(|| u64::try_from(number.numerator()).ok())
            .flatten()
    }

    /// The first item that asks something of a property.
    pub(super) fn item_of(&self, property: &str) -> Option<&'a str> {
        self.properties()
            .find(|(asked, _)| *asked == property)
            .map(|(_, item)| item)
    }

    /// The last item that asks something of a property.
    pub(super) fn last_item_of(&self, property: &str) -> Option<&'a str> {
        self.properties()
            .filter(|(asked, _)| *asked == property)
            .last()
            .map(|(_, item)| item)
    }

    /// The least that is asked of a property: the greatest of those that apply.
    pub(super) fn least(&self, property: &str) -> Option<Known> {
        let low = |bound: &Bound| match bound.relation {
            Relation::AtLeast | Relation::MoreThan | Relation::Exactly | Relation::Between => {
                bound.low()
            }
            _ => None,
        };
        self.strictest(property, low, core::cmp::Ordering::Greater)
    }

    /// The most that is asked of a property: the least of those that apply.
    pub(super) fn most(&self, property: &str) -> Option<Known> {
        let high = |bound: &Bound| match bound.relation {
            Relation::AtMost | Relation::LessThan | Relation::Between => bound.high(),
            Relation::Exactly => bound.low(),
            _ => None,
        };
        self.strictest(property, high, core::cmp::Ordering::Less)
    }

    /// The nominal value that is asked of a property.
    pub(super) fn nominal(&self, property: &str) -> Option<Known> {
        let nominal = |bound: &Bound| {
            if bound.relation == Relation::Nominal {
                bound.low()
            } else {
                None
            }
        };
        self.strictest(property, nominal, core::cmp::Ordering::Greater)
    }

    /// The most that one item asks of a property.
    pub(super) fn most_in(&self, property: &str, item: &str) -> Option<Known> {
        let of_item = self.clauses.iter().filter(|clause| clause.item == item);
        Self::from(of_item.copied().collect()).most(property)
    }

    fn strictest(
        &self,
        property: &str,
        of: impl Fn(&Bound) -> Option<Quantity>,
        order: core::cmp::Ordering,
    ) -> Option<Known> {
        let mut strictest: Option<Known> = None;
        for (clause, bound) in self
            .bounds
            .iter()
            .filter(|(clause, _)| clause.property == property)
        {
            let Some(quantity) = of(bound) else { continue };
            let is_stricter = strictest
                .as_ref()
                .is_none_or(|than| quantity.compare(than.quantity) == Some(order));
            if is_stricter {
                strictest = Some(Known::new(
                    quantity,
                    format!("listing, item {}", clause.item),
                ));
            }
        }
        strictest
    }
}

fn ids<'c>(clauses: impl Iterator<Item = &'c Clause>, properties: &[&str]) -> Vec<String> {
    let is_one = |clause: &&Clause| {
        properties
            .iter()
            .any(|property| match property.strip_suffix('*') {
                Some(begin) => clause.property.starts_with(begin),
                None => clause.property == *property,
            })
    };
    clauses
        .filter(is_one)
        .map(|clause| clause.id.clone())
        .collect()
}
