//! Another product: which listings of the schedule still hold, which joints need another, and which have none.

use std::sync::Arc;

use axum::extract::{Query, State};
use maud::{Markup, PreEscaped, html};
use selection::Rank;
use selection::answer::MATCH_LINE;
use selection::substitution::{OfCondition, Outcome, Row, Substitution, substituted};
use serde::Deserialize;
use site::Value;
use vocabulary::vocabulary;
use wording::joints::{OfMark, in_marks};
use wording::text::{counted, listed};

use super::{changes, properties, supposed};
use crate::desk::Desk;
use crate::listings::working;
use crate::pages::{layout, piece};
use crate::person::Person;
use crate::trouble::Trouble;

/// How many other listings are told for each condition.
const MOST: usize = 3;

/// What a page is asked for.
#[derive(Debug, Default, Deserialize)]
pub(in crate::pages) struct Wish {
    #[serde(default)]
    component: String,
    #[serde(default)]
    product: String,
    /// What is known of the product besides.
    #[serde(default)]
    property: String,
    #[serde(default)]
    value: String,
}

pub(in crate::pages) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Query(wish): Query<Wish>,
) -> Result<Markup, Trouble> {
    let made = match wish.product.trim() {
        "" => None,
        _ => Some(made(&desk, &wish).await),
    };
    let (made, trouble) = match made {
        None => (None, None),
        Some(Ok(made)) => (Some(made), None),
        Some(Err(trouble @ Trouble::Refused { .. })) => (None, Some(trouble)),
        Some(Err(trouble)) => return Err(trouble),
    };
    let body = html! {
        h1 { "A product at hand" }
        p { "What another product would come to: which listings of the schedule still hold, which joints need another, and which have none. "
            a href="/selection" { "Back to selection" } }
        @if let Some(trouble) = &trouble { div.trouble role="alert" { (trouble.shown()) } }
        (wishing(&wish))
        @if let Some(made) = &made { (shown(made)) }
        p.quiet { (MATCH_LINE) }
    };
    Ok(layout::page(
        &person,
        "A product at hand",
        "/selection",
        &body,
    ))
}

async fn made(desk: &Desk, wish: &Wish) -> Result<Substitution, Trouble> {
    let property = format!("{}.product", wish.component.trim());
    let facts = supposed(&[(&property, &wish.product)])?;
    let product = facts
        .into_iter()
        .find(|fact| matches!(fact.value, Value::Product(_)));
    let product = product.ok_or_else(|| Trouble::Refused {
        message: format!("{} has no product", wish.component),
        help: "choose a component that is a product, such as packing or coating".to_owned(),
    })?;
    let besides = supposed(&[(&wish.property, &wish.value)])?;
    // The project is read when it is one's turn, so that it isn't in memory many times over.
    let opened = desk.opened().await?;
    let project = desk.store.project().await?;
    working(move || {
        opened.search(|search| substituted(&project, search, &product, &besides, MOST, &[]))
    })
    .await?
}

fn wishing(wish: &Wish) -> Markup {
    html! {
        form.enter method="get" action="/selection/substitute" {
            label for="component" { "Component" }
            select id="component" name="component" {
                @for component in vocabulary().components().iter().filter(|component| component.properties.iter().any(|property| property.name.ends_with(".product"))) {
                    option value=(component.name) selected[component.name == wish.component || (wish.component.is_empty() && component.name == "packing")] { (component.title) }
                }
            }
            label for="product" { "Product" }
            input id="product" name="product" required autocomplete="off" placeholder="Maker | Product" value=(wish.product);
            label for="property" { "Known of it besides: a property" }
            input id="property" name="property" list="properties" autocomplete="off" placeholder="packing.density" value=(wish.property);
            label for="value" { "Its value" }
            input id="value" name="value" autocomplete="off" placeholder="4 pcf" value=(wish.value);
            button { "See what it would come to" }
        }
        p.quiet { "What was known of the product before (its density, its thickness) isn't known of the other one, until it is said." }
        (properties())
    }
}

fn shown(made: &Substitution) -> Markup {
    let conditions = made.conditions.iter();
    let all: usize = conditions.map(|one| one.answer.joints.len()).sum();
    let untouched = made.untouched.iter().map(|one| OfMark {
        mark: &one.mark,
        joints: &one.joints,
        is_whole_mark: one.is_whole_mark,
    });
    html! {
        h2 { (made.product) }
        p {
            "In place of what " (counted(all, "joint has", "joints have")) " now."
            @if !made.with.is_empty() { " Known of it: " (made.with.join("; ")) "." }
        }
        @for (outcome, title) in [
            (Outcome::NoListing, "No listing here holds"),
            (Outcome::AnotherListing, "Another listing is needed"),
            (Outcome::Holds, "The listing holds"),
        ] {
            @let rows = made.rows(outcome, |one| others(one).into_string());
            @if !rows.is_empty() {
                h3 { (title) " at " (counted(made.joints(outcome), "joint", "joints")) }
                @for row in &rows { (of_row(row)) }
            }
        }
        @if !made.untouched.is_empty() { p { "No such product is named for " (in_marks(untouched)) "." } }
    }
}

/// The joints of a mark at which it comes to the same.
fn of_row(row: &Row<'_, String>) -> Markup {
    let answer = &row.first.answer;
    let joints = OfMark {
        mark: &answer.name,
        joints: &row.joints,
        is_whole_mark: row.is_whole_mark,
    };
    let asked = match row.joints.as_slice() {
        [first, ..] if !row.is_whole_mark => first,
        _ => &answer.name,
    };
    html! {
        article.finding {
            h4 { a href={ "/selection?of=" (piece(asked)) } { (joints.in_words()) } @if !answer.title.is_empty() { " – " (answer.title) } }
            p { "Now: " (row.first.now) "." }
            @match &answer.own {
                Some(own) => p { "Its listing, " (own) ": " (stands(row.first.before)) " before, " (stands(answer.own_rank)) " with it." },
                None => p { "Its listing isn't here." },
            }
            (PreEscaped(&row.told))
        }
    }
}

/// What else would do, or comes nearest.
fn others(one: &OfCondition) -> Markup {
    let answer = &one.answer;
    html! {
        @match one.outcome {
            Outcome::Holds => {},
            Outcome::AnotherListing => {
                @let fits: Vec<String> = answer.fits.iter().map(|one| one.listing.clone()).collect();
                @let open: Vec<String> = answer.open.iter().map(|one| format!("{} ({} open)", one.listing, one.matched.counts.open)).collect();
                p { "Others that would do: " (listed(&[fits, open].concat())) "." }
            },
            Outcome::NoListing => {
                @if let Some(near) = answer.near.first() {
                    p { "Nearest: " (near.listing) ", but for" }
                    (changes(&near.matched.changes))
                } @else {
                    p { "No listing here is for such a joint." }
                }
            },
        }
    }
}

fn stands(rank: Option<Rank>) -> String {
    match rank {
        None => "isn't here".to_owned(),
        Some(Rank::Fits { .. }) => "fits".to_owned(),
        Some(Rank::Open { open, .. }) => format!("{open} open"),
        Some(Rank::Near { changes, .. }) => counted(changes, "change needed", "changes needed"),
        Some(Rank::Beyond) => "isn't for such a joint".to_owned(),
    }
}
