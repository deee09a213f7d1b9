//! The section of a joint: the sheet, and the joint at any state of its movement.

use std::sync::Arc;

use axum::extract::{Path, Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use conformance::{JointResult, Standing, Subject, Verdict};
use drawing::{Condition, Heading, Known, Moved, at_one_state};
use maud::{Markup, html};
use serde::Deserialize;

use super::joint::{listing, title};
use super::{layout, path_of_joint};
use crate::desk::{Desk, Seen};
use crate::trouble::Trouble;

/// How far the joint is to be drawn moved, in percent of its way: below zero closed, above it open.
#[derive(Debug, Deserialize)]
pub(super) struct Moving {
    #[serde(default)]
    pub(super) moved: i64,
}

/// By how much the slider goes on.
const STEP: usize = 10;

/// The section of a joint, as a picture.
pub(super) async fn sheet(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
) -> Result<Response, Trouble> {
    let seen = desk.look(&name).await?;
    let subject = Subject::of(&seen.project, &seen.joint);
    let drawn = drawing::sheet(&known(&seen, &subject), &heading(&seen));
    Ok(match drawn {
        Ok(page) => picture(drawing::svg(&page)),
        Err(why) => (StatusCode::NOT_FOUND, why.to_string()).into_response(),
    })
}

/// The joint moved so far, as a picture.
pub(super) async fn moved(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
    Query(moving): Query<Moving>,
) -> Result<Response, Trouble> {
    let seen = desk.look(&name).await?;
    let subject = Subject::of(&seen.project, &seen.joint);
    let condition = Condition::of(&known(&seen, &subject));
    let page = condition.map(|condition| at_one_state(&condition, Moved::percent(moving.moved)));
    Ok(match page {
        Ok(Some(page)) => picture(drawing::svg(&page)),
        Ok(None) => {
            let words = "nothing says that the joint moves that way";
            (StatusCode::NOT_FOUND, words).into_response()
        }
        Err(why) => (StatusCode::NOT_FOUND, why.to_string()).into_response(),
    })
}

fn picture(svg: String) -> Response {
    ([(header::CONTENT_TYPE, "image/svg+xml")], svg).into_response()
}

fn known<'s>(seen: &'s Seen, subject: &'s Subject<'s>) -> Known<'s> {
    Known {
        subject,
        listing: seen
            .listing
            .as_ref()
            .map(|read| &*read.state)
            .zip(seen.result.as_ref()),
    }
}

/// The section on the joint's page, and the joint as it moves; or why it can't be drawn.
pub(super) fn drawn(seen: &Seen, moved: i64) -> Markup {
    let name = &seen.joint.name;
    let subject = Subject::of(&seen.project, &seen.joint);
    match Condition::of(&known(seen, &subject)) {
        Ok(condition) => html! {
            figure {
                img src={ (path_of_joint(name)) "/section.svg" }
                    alt={ "Section of joint " (name) ", to scale: what it shows stands in words below." };
            }
            (movement(seen, &condition, moved))
        },
        Err(why) => html! {
            p.note { "The section can't be drawn yet: " (layout::told(&why.to_string())) ". " a href="#known" { "What is known" } }
        },
    }
}

/// The joint from closed to open; nothing where nothing says that it moves.
fn movement(seen: &Seen, condition: &Condition, moved: i64) -> Markup {
    let closes = condition.motion.closing.is_some();
    let opens = condition.motion.opening.is_some();
    if !closes && !opens {
        return html! {};
    }
    let (least, most) = (if closes { -100 } else { 0 }, if opens { 100 } else { 0 });
    let moved = moved.clamp(least, most);
    let path = path_of_joint(&seen.joint.name);
    let at_once = [(-100, "Fully closed"), (0, "As found"), (100, "Fully open")];
    html! {
        section.movement aria-labelledby="movement" {
            h2 id="movement" tabindex="-1" { "As it moves" }
            form.slide method="get" action={ (path) "#movement" } {
                label for="moved" { "From closed to open" }
                input id="moved" type="range" name="moved" min=(least) max=(most) step=(STEP) value=(moved) list="states";
                datalist id="states" { option value="0" label="as found" {} }
                button { "Draw" }
            }
            p.ways {
                @for (percent, words) in at_once {
                    @if (least..=most).contains(&percent) {
                        @if percent == moved { strong { (words) } } @else { a href={ (path) "?moved=" (percent) "#movement" } { (words) } }
                        " "
                    }
                }
            }
            figure {
                img id="moving" src={ (path) "/moved.svg?moved=" (moved) } data-src={ (path) "/moved.svg?moved=" } alt=(described(condition, moved));
            }
        }
    }
}

fn described(condition: &Condition, moved: i64) -> String {
    let page = at_one_state(condition, Moved::percent(moved));
    page.map_or_else(String::new, |page| page.description)
}

fn heading(seen: &Seen) -> Heading {
    let result = seen.result.as_ref();
    let sentences = |result: &JointResult| {
        let not_met = result.with(Verdict::NotMet);
        not_met
            .map(|finding| finding.explanation.sentence.clone())
            .collect()
    };
    Heading {
        joint: seen.joint.name.clone(),
        mark: seen.joint.mark.clone(),
        title: title(seen).to_owned(),
        place: seen.place(),
        building: seen.project.building.name.clone(),
        listing: result.map(listing).unwrap_or_default(),
        outcome: result.map(|result| result.overall),
        not_met: result.map(sentences).unwrap_or_default(),
        open: result.map_or(0, |result| result.counts.open),
        provisional: result.is_some_and(|result| result.standing == Standing::Provisional),
    }
}
