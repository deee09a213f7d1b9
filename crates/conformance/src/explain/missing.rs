//! What would close an open clause, and who can supply it while it can still be seen.

use vocabulary::{Stage, Trade};

use super::SubjectMatter;
use crate::assessment::{Assessment, Cause, Detail};
use crate::explanation::{Ask, Missing};
use crate::verdict::Reason;

/// What would close an open clause.
pub(crate) fn of(found: &Assessment<'_>, about: &SubjectMatter) -> Missing {
    let other = found
        .asks
        .filter(|asked| *asked != about.property)
        .map(SubjectMatter::of_property);
    let wanted = other.as_ref().unwrap_or(about);
    // Words that a person must judge, unless the clause's own value makes that needless.
    let is_needless_with = |cause: &Cause<'_>| cause.words.is_some() && found.asks.is_some();
    let (ask, help) = match &found.detail {
        Detail::Condition(cause) if found.reason == Reason::ConditionUndecided => {
            if is_needless_with(cause) {
                (Ask::Value, or_judged(wanted))
            } else {
                let ask = ask_of(cause.reason);
                (ask, help(ask, wanted, true))
            }
        }
        _ => {
            let ask = ask_of(found.reason);
            (ask, help(ask, wanted, false))
        }
    };
    let by_design = matches!(
        found.reason,
        Reason::ReadingInDoubt | Reason::ListingUnclear
    );
    Missing {
        ask,
        property: wanted.property.clone(),
        title: wanted.title.clone(),
        trade: if by_design {
            Some(Trade::Design)
        } else {
            wanted.trade
        },
        stages: wanted.stages.clone(),
        until: wanted.until(),
        instrument: wanted.instrument.clone(),
        help,
    }
}

const fn ask_of(reason: Reason) -> Ask {
    match reason {
        Reason::NoFact | Reason::WhichPart => Ask::Value,
        Reason::NotSeen => Ask::Sight,
        Reason::NoSource => Ask::Source,
        Reason::Unreadable | Reason::Scattered => Ask::Correction,
        Reason::TooClose => Ask::FinerReading,
        Reason::MakerUnknown => Ask::Maker,
        Reason::OptionUnknown => Ask::Option,
        Reason::ReadingInDoubt => Ask::Confirmation,
        _ => Ask::Judgment,
    }
}

fn help(ask: Ask, about: &SubjectMatter, by_condition: bool) -> String {
    let title = about.in_sentence();
    let seen = when_seen(&about.stages);
    match ask {
        Ask::Value => format!("State the {title} and where it is known from.{seen}"),
        Ask::Sight => format!("Have somebody see or measure the {title} in place.{seen}"),
        Ask::Source => format!(
            "Say where the {title} is known from: drawing, submittal, witnessed, measured, or stated by whom."
        ),
        Ask::FinerReading if by_condition => {
            format!(
                "Measure the {title} with a finer instrument at the joint, or have a named person say whether the clause applies."
            )
        }
        Ask::FinerReading => {
            format!(
                "Measure the {title} with a finer instrument, or have a named person judge it.{seen}"
            )
        }
        Ask::Correction => format!("Correct the {title}: what is given can't be used here."),
        Ask::Maker => format!("Say who makes the {title}, as the label has it.{seen}"),
        Ask::Option => format!(
            "Say which is built, in the column `{}` of the schedule.",
            about.property
        ),
        Ask::Judgment if by_condition => {
            "Have a named person judge whether the clause applies here and is met.".to_owned()
        }
        Ask::Judgment => format!("Have a named person judge it, and record on what ground.{seen}"),
        Ask::Confirmation => "Have a named person confirm how the listing was read.".to_owned(),
    }
}

/// For a value that makes it needless to judge whether the clause applies, if it is as asked for.
fn or_judged(about: &SubjectMatter) -> String {
    format!(
        "State the {} and where it is known from, or have a named person judge whether the clause applies here.{}",
        about.in_sentence(),
        when_seen(&about.stages)
    )
}

/// When it can be seen, as a sentence; nothing when that isn't known.
fn when_seen(stages: &[Stage]) -> String {
    let early: Vec<&str> = stages
        .iter()
        .filter(|stage| **stage != Stage::OpeningUp)
        .map(|stage| stage.title())
        .collect();
    let opening = stages.contains(&Stage::OpeningUp);
    match (early.as_slice(), opening) {
        ([], false) => String::new(),
        ([], true) => " It can be seen only by opening up.".to_owned(),
        (early, true) => format!(
            " It can be seen {}, and later only by opening up.",
            early.join(" or ")
        ),
        (early, false) => format!(" It can be seen {}.", early.join(" or ")),
    }
}
