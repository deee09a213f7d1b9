//! A clause before it has its id.

use core::cmp::Ordering;
use core::ops::RangeFrom;

use measure::Quantity;

use crate::model::{
    Bound, Condition, Confidence, Expr, Relation, Requirement, Span, Test, WarningKind,
};

/// A clause before it has its id.
#[derive(Debug, Clone)]
pub(crate) struct Draft {
    pub(crate) span: Span,
    pub(crate) property: String,
    pub(crate) component: String,
    pub(crate) attribute: String,
    pub(crate) requirement: Requirement,
    pub(crate) condition: Option<Condition>,
    pub(crate) options: Vec<String>,
    pub(crate) read_by: Vec<String>,
    pub(crate) confidence: Confidence,
}

/// What an item yields.
#[derive(Debug, Clone, Default)]
pub(crate) struct Yield {
    pub(crate) clauses: Vec<Draft>,
    pub(crate) warnings: Vec<(WarningKind, Span, String)>,
    /// Stretches whose words are all in a clause.
    pub(crate) covered: Vec<Span>,
    /// Stretches that only lead to what follows.
    pub(crate) lead_ins: Vec<Span>,
    /// Configurations that the item's text names.
    pub(crate) configurations: Vec<String>,
    /// The lists of products, with what their leads make of them.
    pub(crate) lists: Vec<ProductList>,
}

/// How far a condition reaches that an item stands under.
pub(crate) struct Reach<'a> {
    /// Where it ends.
    pub(crate) end: usize,
    /// Stretches before that which it doesn't reach.
    pub(crate) but: &'a [Span],
}

impl Reach<'_> {
    fn holds(&self, place: usize) -> bool {
        place < self.end && !self.but.iter().any(|span| span.contains(place))
    }
}

/// A list of products that an item holds.
#[derive(Debug, Clone)]
pub(crate) struct ProductList {
    /// Its entries, without the words that lead to them.
    pub(crate) span: Span,
    /// Whether its names are what is asked for; otherwise its words are left for a person.
    pub(crate) is_taken: bool,
    /// The words that name its part, where they aren't the item's own.
    pub(crate) part: Option<String>,
    /// The words that make a case of it.
    pub(crate) case: Option<Span>,
}

impl Yield {
    /// Puts the clauses from one on under a condition, all but those of some stretches and those that say that they hold in every case.
    pub(crate) fn put_under(
        &mut self,
        condition: &Condition,
        source: &str,
        clauses: RangeFrom<usize>,
        but: &[Span],
    ) {
        for draft in self.clauses.iter_mut().skip(clauses.start) {
            let excepted = but.iter().any(|span| span.contains(draft.span.start()));
            if !excepted && !holds_always(draft.span.of(source)) {
                draft.under(condition, None);
            }
        }
    }

    /// Puts the clauses that a condition reaches under it, all but those that say that they hold in every case. `of` is the component
    /// that the condition's title names.
    pub(crate) fn put_under_before(
        &mut self,
        condition: &Condition,
        of: Option<&str>,
        source: &str,
        reach: &Reach<'_>,
    ) {
        for draft in &mut self.clauses {
            let words = draft.span.of(source);
            let always = holds_always(words) && !is_what_remains(condition, words);
            if reach.holds(draft.span.start()) && !always {
                draft.under(condition, of);
            }
        }
    }

    /// Drops the numbers that stand in the words of a case: they say for which joints the rest holds.
    pub(crate) fn leave_case(&mut self, case: Span) {
        self.clauses.retain(|draft| {
            !matches!(&draft.requirement, Requirement::Bound(bound)
                if case.start() <= bound.at.start() && bound.at.end() <= case.end())
        });
    }

    /// Drops what was read in a heading that only says for which joints the text under it is, with the configuration that it may name.
    pub(crate) fn leave_heading(&mut self, heading: Span, source: &str) {
        let holds = |span: Span| heading.start() <= span.start() && span.end() <= heading.end();
        if !self.covered.iter().any(|span| holds(*span)) {
            return;
        }
        self.leave_case(heading);
        self.clauses.retain(|draft| !holds(draft.span));
        self.warnings.retain(|(_, span, _)| !holds(*span));
        self.covered.retain(|span| !holds(*span));
        self.lead_ins.push(heading);
        let mut words = heading.of(source).split(|c: char| !c.is_alphanumeric());
        let label = words.nth(1);
        let clauses = &self.clauses;
        self.configurations.retain(|own| {
            let used = clauses.iter().any(|draft| draft.options.contains(own));
            used || own.rsplit(' ').next() != label
        });
    }

    /// Puts the clauses of a stretch under a condition in words, all but those that say that they hold in every case.
    pub(crate) fn put_under_within(&mut self, condition: &Condition, source: &str, within: Span) {
        for draft in &mut self.clauses {
            let start = draft.span.start();
            let is_within = within.start() <= start && start < within.end();
            if is_within && !holds_always(draft.span.of(source)) {
                draft.under(condition, None);
            }
        }
    }

    /// Puts what is said in a stretch under a condition in words: the clauses whose number stands in it, and those without one that begin in it.
    pub(crate) fn put_under_said(&mut self, condition: &Condition, source: &str, within: Span) {
        for draft in &mut self.clauses {
            let place = match &draft.requirement {
                Requirement::Bound(bound) => bound.at.start(),
                _ => draft.span.start(),
            };
            let is_within = within.start() <= place && place < within.end();
            if is_within && !holds_always(draft.span.of(source)) {
                draft.under(condition, None);
            }
        }
    }

    /// Takes an option from the clauses from a place on.
    pub(crate) fn leave_option_from(&mut self, option: &str, place: usize) {
        let behind = self.clauses.iter_mut();
        for draft in behind.filter(|draft| draft.span.start() >= place) {
            draft.options.retain(|held| held != option);
        }
    }

    /// Takes in what another stretch of the item yields.
    pub(crate) fn append(&mut self, mut other: Self) {
        self.clauses.append(&mut other.clauses);
        self.warnings.append(&mut other.warnings);
        self.covered.append(&mut other.covered);
        self.lead_ins.append(&mut other.lead_ins);
        self.configurations.append(&mut other.configurations);
        self.lists.append(&mut other.lists);
    }
}

/// A name local to an item: its path and a few of the clause's words.
pub(crate) fn local_property(item: &str, words: &str) -> String {
    let slug: Vec<String> = words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .take(5)
        .map(str::to_lowercase)
        .collect();
    let item = if item.is_empty() { "head" } else { item };
    format!("{item}:{}", slug.join("_"))
}

/// Gives a bare value a limit.
pub(crate) fn limit(bound: &mut Bound, relation: Relation) {
    bound.relation = relation;
    bound.bare = false;
    if matches!(relation, Relation::AtMost | Relation::LessThan) && bound.hi.is_none() {
        bound.hi = bound.lo.take();
        if let Some(second) = &mut bound.second {
            second.hi = second.lo.take();
        }
    }
}

impl Draft {
    /// Makes it one that a person must read, in the item with the given path.
    pub(crate) fn leave_as_words(&mut self, item: &str) {
        self.property = local_property(item, &format!("{} {}", self.component, self.attribute));
        self.requirement = Requirement::Prose;
        self.read_by = vec!["left as words".to_owned()];
        self.confidence = Confidence::Prose;
    }

    /// Puts it under a condition that is said of all that stands where it does, besides its own. Only of a clause on the component that the title
    /// with the condition names is it sure that it is meant; of any other it is a guess, and so a condition in words: the clause is open where nobody
    /// has said whether that holds, and never left out.
    pub(crate) fn under(&mut self, around: &Condition, of: Option<&str>) {
        // "Required only where the joint exceeds 2 in. In joints up to 2 in., ...": no joint is both.
        if self
            .condition
            .as_ref()
            .is_some_and(|held| exclude(&held.expr, &around.expr))
        {
            return;
        }
        let held = self.condition.take();
        let own = self
            .property
            .split_once('.')
            .map(|(component, _)| component);
        let sure = held.is_none() && of.is_some() && own == of;
        let around = &Condition {
            expr: if sure || is_denied_words(&around.expr) {
                around.expr.clone()
            } else {
                in_words(&around.words)
            },
            ..around.clone()
        };
        // Words that the clause is under already aren't said twice.
        let overlaps = |held: Span| {
            let mut own = around.spans();
            own.any(|own| held.start() < own.end() && own.start() < held.end())
        };
        let said = held.as_ref().is_some_and(|held| held.spans().any(overlaps));
        self.condition = Some(match held {
            Some(held) if said => held,
            Some(held) => around.clone().and(held),
            None => around.clone(),
        });
    }
}

/// A condition in words. What is not needed in some joints is asked for in all others: "Not needed in joints under 4 in." holds where the joint is *not* of those.
fn in_words(words: &str) -> Expr {
    const NEEDED: [&str; 4] = ["needed", "required", "necessary", "reqd"];
    const LEADS: [&str; 7] = ["in", "where", "when", "if", "for", "at", "with"];
    let mut parts = words.trim_start().splitn(3, ' ');
    let mut next = |known: &[&str]| {
        let word = parts.next().unwrap_or_default().to_lowercase();
        known.contains(&word.as_str())
    };
    let denied = next(&["not"]) && next(&NEEDED);
    let case = parts.next().unwrap_or_default().trim_start();
    let lead = case.split(' ').next().unwrap_or_default().to_lowercase();
    if denied && LEADS.contains(&lead.as_str()) {
        Expr::Not(Box::new(Expr::Words(case.to_owned())))
    } else {
        Expr::Words(words.to_owned())
    }
}

/// Whether a condition is that some words do not hold: "Not needed where ...".
fn is_denied_words(expr: &Expr) -> bool {
    matches!(expr, Expr::Not(part) if matches!(**part, Expr::Words(_)))
}

/// Whether no joint meets both of two tests of one property: over 2 in., and up to 2 in.
fn exclude(one: &Expr, other: &Expr) -> bool {
    let (Expr::Test(one), Expr::Test(other)) = (one, other) else {
        return false;
    };
    let below = |low: &Test, high: &Test| {
        let Some(((most, reached), (least, from))) = most(low).zip(least(high)) else {
            return false;
        };
        match most.compare(least) {
            Some(Ordering::Less) => true,
            Some(Ordering::Equal) => !(reached && from),
            _ => false,
        }
    };
    one.property == other.property && (below(one, other) || below(other, one))
}

/// The most that a test allows, and whether that itself is allowed.
fn most(test: &Test) -> Option<(Quantity, bool)> {
    let quantity = match test.relation {
        Relation::AtMost | Relation::LessThan | Relation::Between => test.hi?,
        Relation::Exactly => test.lo?,
        _ => return None,
    };
    Some((quantity, test.relation != Relation::LessThan))
}

/// The least that a test allows, and whether that itself is allowed.
fn least(test: &Test) -> Option<(Quantity, bool)> {
    let quantity = match test.relation {
        Relation::AtLeast | Relation::MoreThan | Relation::Between | Relation::Exactly => test.lo?,
        _ => return None,
    };
    let allowed = test.relation != Relation::MoreThan && !test.lo_excluded;
    Some((quantity, allowed))
}

/// Whether words go on with what holds where their thing isn't let off: "Not needed in joints under 4 in. *Otherwise of 20 gauge steel*".
fn is_what_remains(condition: &Condition, words: &str) -> bool {
    let begins = |words: &str, with: &str| {
        words
            .get(..with.len())
            .is_some_and(|begun| begun.eq_ignore_ascii_case(with))
    };
    begins(&condition.words, "not ") && begins(words, "otherwise")
}

/// Whether words say that they hold whatever the case: "in all joints", "whatever the width".
pub(crate) fn holds_always(words: &str) -> bool {
    const WORDS: &[&str] = &[
        "in all cases",
        "in every case",
        "in any case",
        "in either case",
        "in both cases",
        "for all options",
        "for both options",
        "for all ratings",
        "for both ratings",
        "in all systems",
        "in all joints",
        "in every joint",
        "for all joints",
        "for every joint",
        "whatever the",
        "regardless",
        "always",
        "at any width",
        "of any width",
        "otherwise",
        "elsewhere",
        "all other",
        "other joints",
    ];
    let words = words
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .to_lowercase()
        // "Not otherwise needed" says the contrary.
        .replace("not otherwise", "not");
    WORDS.iter().any(|always| words.contains(always))
}
