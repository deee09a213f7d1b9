//! The card of a mark, and that of one joint.

use conformance::{JointResult, Standing, Verdict};
use engineering::Error;
use schemars::JsonSchema;
use serde::Serialize;
use site::Mark;

use crate::asks::Asks;
use crate::{
    AtHand, BuiltTo, CAUTIONS, Checked, JointWork, Line, Ordered, fireproofing, joint, line, notes,
    order, words,
};

/// The work card of a mark.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Card {
    /// The mark.
    pub mark: String,
    /// The mark in words.
    pub title: String,
    /// The listing's designation.
    pub listing: String,
    /// Its edition.
    pub edition: String,
    /// Whether its reading is confirmed.
    pub standing: Option<Standing>,
    /// What to hold the work against: everything the listing asks of these joints, in its order.
    pub asks: Vec<Asked>,
    /// The joints.
    pub joints: Vec<JointWork>,
    /// What they take together.
    pub orders: Vec<Ordered>,
    /// What was taken to be so, and what is not on the card.
    pub notes: Vec<String>,
    /// What must be said beside it.
    pub cautions: Vec<String>,
}

/// One thing that the listing asks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Asked {
    /// The item it stands in; empty for the head.
    pub item: String,
    /// What it is about.
    pub title: String,
    /// What is asked; the listing's words where they are no bound.
    pub requirement: String,
    /// How many of the joints meet it, don't, and are open.
    pub met: usize,
    /// Joints that don't meet it.
    pub not_met: usize,
    /// Joints at which it is open.
    pub open: usize,
}

impl Card {
    /// Whether everything asked is met, nothing is left to be shown, and nothing that was computed is against it.
    pub fn is_settled(&self) -> bool {
        let is_kept =
            |worked: &engineering::Worked| worked.standing() <= engineering::Standing::Met;
        self.asks
            .iter()
            .all(|asked| asked.not_met == 0 && asked.open == 0)
            && self
                .joints
                .iter()
                .all(|joint| joint.gaps.is_empty() && joint.worked().all(is_kept))
    }

    /// The card of a mark, from its joints in their order.
    ///
    /// # Errors
    /// When what the joints take together can't be computed.
    pub fn of(mark: &Mark, joints: &[Checked<'_>], at_hand: &AtHand) -> Result<Self, Error> {
        let mut card = Self {
            mark: mark.name.clone(),
            title: mark.title.clone(),
            listing: String::new(),
            edition: String::new(),
            standing: None,
            asks: Vec::new(),
            joints: Vec::new(),
            orders: Vec::new(),
            notes: Vec::new(),
            cautions: CAUTIONS
                .iter()
                .map(|caution| (*caution).to_owned())
                .collect(),
        };
        for checked in joints {
            card.add(checked, at_hand);
        }
        if card.joints.is_empty() && card.notes.is_empty() {
            card.notes
                .push("the schedule has no joint of this mark".to_owned());
        }
        card.orders = order::orders(&card.joints, at_hand)?;
        card.notes.extend(notes::notes(&card.joints, at_hand));
        Ok(card)
    }

    fn add(&mut self, checked: &Checked<'_>, at_hand: &AtHand) {
        let name = &checked.joint.name;
        let Some(built_to) = checked.built_to else {
            self.notes.push(format!(
                "{name} has no listing to be built to: nothing is worked out for it"
            ));
            return;
        };
        let result = built_to.result;
        if !self.listing.is_empty() && self.listing != result.listing {
            self.notes.push(format!("{name} is built to another listing, {}: see what is asked of it with `everyclause explain {name}`", result.listing));
        } else {
            self.listing.clone_from(&result.listing);
            self.edition.clone_from(&result.edition);
            self.standing = Some(result.standing);
            tally(&mut self.asks, result);
        }
        self.joints.push(work(checked, built_to, at_hand));
    }
}

/// The work card of one joint.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct JointCard {
    /// The work, as it was worked out.
    pub work: JointWork,
    /// The same in words, each line with the clauses it rests on.
    pub lines: Vec<Line>,
    /// What it takes.
    pub orders: Vec<Brought>,
    /// What was taken to be so, and what is not on the card.
    pub notes: Vec<String>,
}

/// What is brought for one joint.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Brought {
    /// What, and how much of it.
    pub order: Ordered,
    /// The ids of the clauses that name it, in the listing's order.
    pub clauses: Vec<String>,
}

impl JointCard {
    /// The card of one joint; none where there is no listing to build it to.
    ///
    /// # Errors
    /// When what it takes can't be computed.
    pub fn of(checked: &Checked<'_>, at_hand: &AtHand) -> Result<Option<Self>, Error> {
        let Some(built_to) = checked.built_to else {
            return Ok(None);
        };
        let work = work(checked, built_to, at_hand);
        let asks = Asks::of(built_to.result, built_to.reading);
        let joints = [work];
        let orders = order::orders(&joints, at_hand)?;
        let notes = notes::notes(&joints, at_hand);
        let [work] = joints;
        let named = |order: Ordered| Brought {
            clauses: line::naming(&order, &asks),
            order,
        };
        Ok(Some(Self {
            lines: line::lines(&work, &asks),
            orders: orders.into_iter().map(named).collect(),
            notes,
            work,
        }))
    }
}

/// The work at a joint, what nobody has shown of it among its gaps, and what isn't met said first.
fn work(checked: &Checked<'_>, built_to: BuiltTo<'_>, at_hand: &AtHand) -> JointWork {
    let asks = Asks::of(built_to.result, built_to.reading);
    let mut made = joint::work(checked, built_to.reading, &asks, at_hand);
    if made.fireproofing.is_none() && asks.least(fireproofing::THICKNESS).is_some() {
        let words = "fireproofing: nobody has measured its thickness at the joint";
        made.gaps.push(words.to_owned());
    }
    if !made.are_faces_stated {
        let words = "how many faces are coated or sealed isn't stated: one is counted";
        made.gaps.push(words.to_owned());
    }
    let mut seen: Vec<&str> = Vec::new();
    for finding in built_to.result.with(Verdict::NotMet) {
        let explanation = &finding.explanation;
        if !seen.contains(&explanation.property.as_str()) {
            seen.push(&explanation.property);
            made.not_met.push(explanation.sentence.clone());
        }
    }
    made.mark_what_is_not_listed(&seen);
    made
}

/// Counts what is asked of the joints.
fn tally(asks: &mut Vec<Asked>, result: &JointResult) {
    for finding in &result.findings {
        let explanation = &finding.explanation;
        if finding.verdict == Verdict::NotApplicable {
            continue;
        }
        let asked = words::asked(explanation);
        let at = asks.iter().position(|one| {
            one.item == explanation.item
                && one.title == explanation.title
                && one.requirement == asked
        });
        let at = at.unwrap_or_else(|| {
            let place = place_among(asks, &explanation.item, &explanation.title);
            let one = Asked {
                item: explanation.item.clone(),
                title: explanation.title.clone(),
                requirement: asked,
                met: 0,
                not_met: 0,
                open: 0,
            };
            asks.insert(place, one);
            place
        });
        if let Some(one) = asks.get_mut(at) {
            match finding.verdict {
                Verdict::Met | Verdict::Judged => one.met += 1,
                Verdict::NotMet => one.not_met += 1,
                Verdict::Open => one.open += 1,
                Verdict::NotApplicable => {}
            }
        }
    }
}

/// Where something asked of a later joint alone belongs: behind what is asked alike, else behind its item.
fn place_among(asks: &[Asked], item: &str, title: &str) -> usize {
    let alike = asks
        .iter()
        .rposition(|one| one.item == item && one.title == title);
    let of_item = || asks.iter().rposition(|one| one.item == item);
    alike.or_else(of_item).map_or(asks.len(), |last| last + 1)
}
