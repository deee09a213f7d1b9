//! The work card of a mark: what its listing asks, and what that comes to at each of its joints.
//!
//! | module | what lives there |
//! |---|---|
//! | [`asks`] | what the listing asks of a joint, as the check bound it |
//! | [`facts`] | what the schedule knows of it |
//! | [`packing`], [`fills`] | its packing; its coating and sealant |
//! | [`fireproofing`] | what was measured of the fireproofing there |
//! | [`framing`] | how far the runner lets studs and board move, the board's screws |
//! | [`flutes`] | the flutes of a deck across the wall |
//! | [`notes`] | what the card takes to be so, and leaves out |
//! | [`rows`] | fasteners, clips and runners along a joint |
//! | [`joint`] | all the work at one joint |
//! | [`order`] | what all the joints of the mark take together |
//! | [`quantities`] | what all the joints of a project take, by mark and storey |
//! | [`leakage`] | air through the joints of its smoke barriers |
//!
//! Nothing is computed here: the values go to the library, and its worked calculations come back.

mod asks;
mod facts;
mod fills;
mod fireproofing;
mod flutes;
mod framing;
mod joint;
pub(crate) mod leakage;
mod notes;
mod order;
mod packing;
pub(crate) mod quantities;
mod rows;

use conformance::{Standing, Verdict};
use measure::Quantity;
use schemars::JsonSchema;
use serde::Serialize;
use site::import::Import;

pub(crate) use flutes::Flutes;
pub(crate) use framing::Way;
pub(crate) use joint::JointWork;
pub(crate) use order::Ordered;

use crate::checking;
use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::Shelf;

/// What the installer has at hand, where the schedule doesn't say.
#[derive(Debug, Clone)]
pub(crate) struct AtHand {
    /// Thicknesses of packing.
    pub(crate) stock: Vec<Quantity>,
    /// Width and length of a batt.
    pub(crate) batt: (Quantity, Quantity),
    /// Loss of coating and sealant, as a percentage of what is used.
    pub(crate) loss: Quantity,
    /// Volume of a package of sealant.
    pub(crate) package: Quantity,
}

/// The work card of a mark.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Card {
    /// The mark.
    pub(crate) mark: String,
    /// The mark in words.
    pub(crate) title: String,
    /// The listing's designation.
    pub(crate) listing: String,
    /// Its edition.
    pub(crate) edition: String,
    /// Whether its reading is confirmed.
    pub(crate) standing: Option<Standing>,
    /// What to hold the work against: everything the listing asks of these joints, in its order.
    pub(crate) asks: Vec<Asked>,
    /// The joints.
    pub(crate) joints: Vec<JointWork>,
    /// What they take together.
    pub(crate) orders: Vec<Ordered>,
    /// What was taken to be so, and what is not on the card.
    pub(crate) notes: Vec<String>,
    /// What must be said beside it.
    pub(crate) cautions: Vec<String>,
}

/// One thing that the listing asks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub(crate) struct Asked {
    /// The item it stands in; empty for the head.
    pub(crate) item: String,
    /// What it is about.
    pub(crate) title: String,
    /// What is asked; the listing's words where they are no bound.
    pub(crate) requirement: String,
    /// How many of the joints meet it, don't, and are open.
    pub(crate) met: usize,
    /// Joints that don't meet it.
    pub(crate) not_met: usize,
    /// Joints at which it is open.
    pub(crate) open: usize,
}

impl Card {
    /// Whether everything asked is met, nothing is left to be shown, and nothing that was computed is against it.
    pub(crate) fn is_settled(&self) -> bool {
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
}

/// The cautions of every card.
pub(crate) const CAUTIONS: [&str; 5] = [
    "Dust and fibres: cutting mineral wool takes gloves, sleeves, glasses and a particulate mask; cutting concrete or block makes respirable silica (29 CFR 1926.1153).",
    "Heights: fall protection from 6 ft up in construction (29 CFR 1926.501).",
    "Spray: eye and lung protection while mixing and spraying, ventilation during and after.",
    "Old sprayed fireproofing may hold asbestos: don't disturb it before it is tested.",
    "A sample that is opened leaves a rated barrier open: repair it the same day with the same listed system, and record it.",
];

/// Makes the card of a mark.
///
/// # Errors
/// When the project has no such mark or no joint of it, or a value of the schedule can't be computed with.
pub(crate) fn card(
    import: &Import,
    shelf: &Shelf,
    name: &str,
    at_hand: &AtHand,
) -> Result<Card, Faults> {
    let project = &import.project;
    let Some(mark) = project
        .marks
        .iter()
        .find(|mark| mark.name.eq_ignore_ascii_case(name.trim()))
    else {
        return Err(unknown(name, project).into());
    };
    let mut card = Card {
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
    for joint in project
        .joints
        .iter()
        .filter(|joint| joint.mark == mark.name)
    {
        let (checked, held) = checking::check_one(import, shelf, &joint.name)?;
        let Some((result, held)) = checked.result.as_ref().zip(held) else {
            card.notes.push(format!(
                "{} has no listing to be built to: nothing is worked out for it",
                joint.name
            ));
            continue;
        };
        if !card.listing.is_empty() && card.listing != result.listing {
            card.notes.push(format!("{} is built to another listing, {}: see what is asked of it with `everyclause explain {}`", joint.name, result.listing, joint.name));
        } else {
            card.listing.clone_from(&result.listing);
            card.edition.clone_from(&result.edition);
            card.standing = Some(result.standing);
            tally(&mut card.asks, result);
        }
        let asks = asks::Asks::of(result, held.reading());
        let facts = project.facts(joint);
        let mut made = joint::work(
            joint,
            &checked.place(),
            held.reading(),
            &asks,
            &facts,
            at_hand,
        );
        if made.fireproofing.is_none() && asks.least(fireproofing::THICKNESS).is_some() {
            let words = "fireproofing: nobody has measured its thickness at the joint";
            made.gaps.push(words.to_owned());
        }
        if !made.are_faces_stated {
            let words = "how many faces are coated or sealed isn't stated: one is counted";
            made.gaps.push(words.to_owned());
        }
        let mut seen: Vec<&str> = Vec::new();
        for finding in result.with(Verdict::NotMet) {
            let explanation = &finding.explanation;
            if !seen.contains(&explanation.property.as_str()) {
                seen.push(&explanation.property);
                made.not_met.push(explanation.sentence.clone());
            }
        }
        made.mark_what_is_not_listed(&seen);
        card.joints.push(made);
    }
    if card.joints.is_empty() && card.notes.is_empty() {
        card.notes
            .push("the schedule has no joint of this mark".to_owned());
    }
    card.orders = order::orders(&card.joints, at_hand)
        .map_err(|error| Fault::of_command(error.to_string()))?;
    card.notes.extend(notes::notes(&card.joints, at_hand));
    Ok(card)
}

fn unknown(name: &str, project: &site::Project) -> Fault {
    let fault = Fault::of_command(format!("the project has no mark `{name}`"));
    match files::nearest(name, project.marks.iter().map(|mark| mark.name.clone())) {
        Some(near) => fault.help(format!("is `{near}` meant?")),
        None => fault.help("give the mark's name as it stands in the column `mark`"),
    }
}

/// Counts what is asked of the joints.
fn tally(asks: &mut Vec<Asked>, result: &conformance::JointResult) {
    for finding in &result.findings {
        let explanation = &finding.explanation;
        if finding.verdict == Verdict::NotApplicable {
            continue;
        }
        let is_words =
            explanation.requirement.is_empty() || explanation.requirement == "as the words say";
        let asked = if is_words {
            format!("\"{}\"", explanation.words.trim())
        } else {
            explanation.requirement.clone()
        };
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
