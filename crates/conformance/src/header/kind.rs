//! Whether the listing is for this kind of joint: a head-of-wall listing proves nothing of a floor joint.

use site::Value;
use vocabulary::Designation;

use super::{Context, Head};
use crate::assessment::Assessment;
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence, property};
use crate::verdict::{Reason, Verdict};

pub(super) const PROPERTY: &str = "joint.kind";

/// The kind that the designation names against the joint's. A designation that doesn't follow the North American
/// convention names none, and a person must say.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> Head<'a> {
    let found = match context.designation {
        Some(designation) => against(context, designation),
        None => unread(context),
    };
    Head {
        id: "header/kind",
        property: PROPERTY,
        span: None,
        found,
    }
}

fn unread<'a>(context: &Context<'a, '_>) -> Assessment<'a> {
    let known = evidence(PROPERTY, context.subject).fact();
    Assessment::open(Reason::ListingUnclear).on(known).saying(
        "a joint of the kind that the listing is for",
        "What kind of joint the listing is for couldn't be read: a person must say whether it is this joint's.",
    )
}

fn against<'a>(context: &Context<'a, '_>, designation: Designation) -> Assessment<'a> {
    let (code, listed) = (designation.kind.code(), designation.kind.title());
    let requirement = format!("a {listed} ({code})");
    match evidence(PROPERTY, context.subject) {
        Evidence::Shown(fact) => {
            let known = match &fact.value {
                Value::Text(text) => {
                    property(PROPERTY).and_then(|property| property.text_value(text))
                }
                _ => None,
            };
            match known {
                Some(kind) if kind.name == designation.kind.value_name() => {
                    Assessment::plain(Verdict::Met, Reason::Holds)
                        .on(fact)
                        .saying(
                            requirement,
                            format!("The joint is a {listed}, and so is the listing's."),
                        )
                }
                Some(kind) => Assessment::plain(Verdict::NotMet, Reason::Fails)
                    .on(fact)
                    .saying(
                        requirement,
                        format!(
                            "The joint is of the kind {}; the listing is for a {listed}.",
                            kind.title
                        ),
                    ),
                None => Assessment::open(Reason::Unreadable).on(fact).saying(
                    requirement,
                    format!(
                        "`{}` is no kind of joint that the vocabulary knows.",
                        fact.value
                    ),
                ),
            }
        }
        other => Assessment::open(reason_of(other)).on(other.fact()).saying(
            requirement,
            format!("The listing is for a {listed}; nobody has shown what kind of joint this is."),
        ),
    }
}
