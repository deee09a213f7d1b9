//! Conditions of a mark that come to the same, told once.

use super::{OfCondition, Outcome, Substitution};

/// Conditions of a mark at which all that is told comes to the same, with their joints.
#[derive(Debug, Clone)]
pub struct Row<'s, T> {
    /// The first of the conditions.
    pub first: &'s OfCondition,
    /// The joints of all of them.
    pub joints: Vec<String>,
    /// Whether they are all joints of the mark.
    pub is_whole_mark: bool,
    /// What is told besides.
    pub told: T,
}

impl Substitution {
    /// The conditions of one outcome, those of a mark told once that have the same product and the same listing, which stands alike
    /// before and after, and of which the same is told besides.
    pub fn rows<T: PartialEq>(
        &self,
        outcome: Outcome,
        tell: impl Fn(&OfCondition) -> T,
    ) -> Vec<Row<'_, T>> {
        let mut rows: Vec<Row<'_, T>> = Vec::new();
        for one in self.conditions.iter().filter(|one| one.outcome == outcome) {
            let told = tell(one);
            let is_alike = |row: &&mut Row<'_, T>| row.first.stands_like(one) && row.told == told;
            match rows.iter_mut().find(is_alike) {
                Some(row) => row.joints.extend(one.answer.joints.iter().cloned()),
                None => rows.push(Row {
                    first: one,
                    joints: one.answer.joints.clone(),
                    is_whole_mark: false,
                    told,
                }),
            }
        }
        for row in &mut rows {
            row.is_whole_mark = self.joints_of(&row.first.answer.name) == row.joints.len();
        }
        rows
    }

    /// How many joints a mark has, those without such a product too.
    fn joints_of(&self, mark: &str) -> usize {
        let with = self.conditions.iter().map(|one| &one.answer);
        let with = with.filter(|answer| answer.name == mark);
        let without = self.untouched.iter().filter(|one| one.mark == mark);
        with.map(|answer| answer.joints.len())
            .chain(without.map(|one| one.joints.len()))
            .sum()
    }

    /// How many joints come to it.
    pub fn joints(&self, outcome: Outcome) -> usize {
        let ours = self.conditions.iter().filter(|one| one.outcome == outcome);
        ours.map(|one| one.answer.joints.len()).sum()
    }
}

impl OfCondition {
    /// Whether both are of one mark, with the same product and listing, which stands alike before and after.
    fn stands_like(&self, other: &Self) -> bool {
        let (ours, theirs) = (&self.answer, &other.answer);
        (&ours.name, &ours.own, ours.own_rank) == (&theirs.name, &theirs.own, theirs.own_rank)
            && (&self.now, self.before) == (&other.now, other.before)
    }
}
