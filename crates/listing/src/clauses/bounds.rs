//! The numbers of a sentence to bounds: each with its relation, two that are one range joined, a list of counts taken together.

mod counts;
mod range;
mod whose;

pub(super) use self::counts::list_end;

use measure::Unit;

use self::counts::join_counts;
use self::range::join_range;
use self::whose::{
    is_beside_a_bare_number, is_denied_above, is_elsewhere, is_numbered_limit, is_or_so,
    is_part_of_that, shares_a_limit, would_be_denied,
};
use super::Around;
use super::carried::Carried;
use super::column_limits::ColumnLimits;
use super::counter_case::is_of_one_side;
use super::limit_heads::{LimitHeads, is_listed};
use super::unclaimed::Unclaimed;
use crate::conditions::Attached;
use crate::model::{Bound, Relation, SecondValue};
use crate::outline::heads_what_is_ruled_out;
use crate::phrase::Amount;
use crate::rules::{Finding, Sentence, bounded, is_spaced};

/// A number of a sentence with all that was found about it.
pub(super) struct Reading {
    /// The amounts it is made of: one, or two that a range joins.
    pub(super) amounts: Vec<usize>,
    pub(super) bound: Bound,
    pub(super) rule: &'static str,
    pub(super) from: usize,
    pub(super) doubtful: bool,
}

/// What the headings over a sentence say of the bare values in it.
pub(super) struct Headings<'a> {
    /// The opening of the list that it stands in.
    carried: Option<Carried>,
    /// The headings of limits in its text.
    heads: &'a LimitHeads,
    /// The values that stand in columns of limits.
    columns: &'a ColumnLimits,
    /// Whether it is a list of what must not be.
    denied: bool,
    /// The title of its item.
    title: &'a str,
}

impl<'a> Headings<'a> {
    /// What is over the sentences of a text.
    pub(super) fn of(around: &'a Around, heads: &'a LimitHeads) -> Self {
        Self {
            carried: around.carried,
            heads,
            columns: &around.column_limits,
            denied: around.denied,
            title: &around.subject.title,
        }
    }

    fn over(&self, sentence: &Sentence<'_>, amount: &Amount) -> Option<Carried> {
        let place = sentence.source(amount.at);
        if let Some(relation) = self.columns.over(place) {
            return Some(Carried::of_any(relation));
        }
        let listed = || is_listed(sentence, amount);
        let carried = self.carried.filter(|own| !own.is_of_a_list() || listed());
        self.heads.over(sentence, amount).or(carried)
    }
}

/// Every number that bounds something, and those that no rule dared to read.
pub(super) fn bounds(
    sentence: &Sentence<'_>,
    headings: &Headings<'_>,
    attached: &[Attached],
) -> (Vec<Reading>, Vec<usize>) {
    let forbids = heads_what_is_ruled_out(headings.title);
    let mut readings: Vec<Reading> = Vec::new();
    let mut unread = Vec::new();
    let findings: Vec<Option<(Finding, &'static str)>> = (0..sentence.amounts.len())
        .map(|index| bounded(sentence, index).filter(|_| sentence.is_bound(index)))
        .collect();
    let unclaimed = Unclaimed::of(sentence, &findings);
    for index in (0..sentence.amounts.len()).filter(|index| sentence.is_bound(*index)) {
        let Some(amount) = sentence.amount(index) else {
            continue;
        };
        let Some((finding, rule)) = findings.get(index).copied().flatten() else {
            unread.push(index);
            continue;
        };
        let denied = forbids || headings.denied || is_denied_above(sentence, amount);
        let counts_nothing = amount.unit == Unit::Count && is_numbered_limit(sentence, amount);
        if counts_nothing
            || headings.columns.is_left_by(sentence.source(amount.at))
            || is_of_one_side(sentence, index)
            || is_part_of_that(sentence, amount)
            || is_beside_a_bare_number(sentence, amount)
            || denied
                && (would_be_denied(finding.relation, rule, forbids) || is_or_so(sentence, amount))
        {
            unread.push(index);
            continue;
        }
        // Under "Not permitted" what compares is to be kept from: "pieces < 12 in. long".
        let finding = match finding.relation {
            Relation::LessThan | Relation::MoreThan if forbids => Finding {
                relation: finding.relation.negated().unwrap_or(finding.relation),
                ..finding
            },
            _ => finding,
        };
        let over = headings.over(sentence, amount);
        // "Clips (min)" over "Spacing: 12 in. OC" can't mean the spacing, and nobody knows what it is then.
        let least = over
            .is_some_and(|carried| carried.relation == Relation::AtLeast && carried.is_of_any());
        if least && rule == "bare value" && is_spaced(sentence, amount.last) {
            unread.push(index);
            continue;
        }
        let (finding, rule) = match over {
            // "Minimum depth:" over a list speaks for its bare values.
            Some(carried)
                if rule == "bare value"
                    && amount.unit != Unit::Count
                    && carried.reaches(sentence, amount) =>
            {
                (
                    Finding::sure(carried.relation, finding.from),
                    "qualifier of the heading",
                )
            }
            _ => (finding, rule),
        };
        if rule == "bare value"
            && (unclaimed.is_beside(sentence, index) || is_elsewhere(sentence, index))
        {
            unread.push(index);
            continue;
        }
        let paired = attached.get(index).is_some_and(|own| own.part.is_some());
        let joined = readings.last().and_then(|last| {
            join_range(sentence, last, amount, (&finding, rule))
                .or_else(|| join_counts(sentence, last, index).filter(|_| !paired))
        });
        if let Some(joined) = joined {
            if let Some(last) = readings.last_mut() {
                last.bound = joined;
                last.amounts.push(index);
                last.rule = "range or tolerance";
            }
            continue;
        }
        readings.push(Reading {
            amounts: vec![index],
            bound: bound(sentence, amount, &finding, rule),
            rule,
            from: finding.from,
            doubtful: finding.doubtful
                || rule == "bare value" && shares_a_limit(sentence, index, &findings),
        });
    }
    (readings, unread)
}

fn bound(sentence: &Sentence<'_>, amount: &Amount, finding: &Finding, rule: &str) -> Bound {
    let (lo, hi) = match (finding.relation, amount.hi) {
        (_, Some(hi)) => (Some(amount.lo), Some(hi)),
        (Relation::AtMost | Relation::LessThan, None) => (None, Some(amount.lo)),
        _ => (Some(amount.lo), None),
    };
    let second = amount.second.as_ref().map(|second| SecondValue {
        lo: Some(second.lo),
        hi: second.hi,
        unit: second.unit,
        agreement: second.agreement,
    });
    Bound {
        relation: finding.relation,
        lo,
        hi,
        unit: amount.unit,
        lo_excluded: false,
        bare: rule == "bare value",
        at: sentence.source(amount.at),
        second,
    }
}
