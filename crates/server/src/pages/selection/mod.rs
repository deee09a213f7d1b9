//! Which listings of the store fit a mark or joint, what stands in the way of the rest, and what would turn it.

pub(super) mod substitute;

use std::sync::{Arc, LazyLock};

use axum::extract::{Query, State};
use conformance::Standing;
use maud::{Markup, PreEscaped, html};
use selection::answer::MATCH_LINE;
use selection::substitution::supposing;
use selection::{Answered, Change, Listed, Turned};
use serde::Deserialize;
use site::Fact;
use site::import::entered;
use vocabulary::{Trade, vocabulary};
use wording::text::{counted, listed};

use super::{joints, layout, path_of_joint, piece};
use crate::board::Filter;
use crate::desk::Desk;
use crate::listings::working;
use crate::person::Person;
use crate::selecting::Opened;
use crate::trouble::Trouble;

/// The most questions that are shown of one listing.
const MOST_QUESTIONS: usize = 12;

/// Whose word a supposed fact is.
const SUPPOSED: &str = "stated: as supposed at the desk";

/// What a page is asked for.
#[derive(Debug, Default, Deserialize)]
pub(super) struct Wish {
    /// The joint or mark.
    #[serde(default)]
    of: String,
    /// What is supposed to be otherwise.
    #[serde(default)]
    property: String,
    #[serde(default)]
    value: String,
}

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Query(wish): Query<Wish>,
) -> Result<Markup, Trouble> {
    let found = match wish.of.trim() {
        "" => None,
        _ => Some(found(&desk, &wish).await),
    };
    let status = match &found {
        Some(Err(trouble @ Trouble::Refused { .. })) => Some(trouble),
        _ => None,
    };
    let body = html! {
        h1 { "Selection" }
        p { "Which listings of the store fit a mark or a joint, and what stands in the way of the rest. "
            a href="/selection/substitute" { "A product at hand in place of another" } }
        @if let Some(trouble) = status { div.trouble role="alert" { (trouble.shown()) } }
        (wishing(&desk, &wish))
        @match &found {
            None | Some(Err(_)) => (marks(&desk)),
            Some(Ok((opened, answer))) => (answered(opened, answer, &wish)),
        }
    };
    if let Some(Err(trouble)) = found
        && !matches!(trouble, Trouble::Refused { .. })
    {
        return Err(trouble);
    }
    Ok(layout::page(&person, "Selection", "/selection", &body))
}

/// What was found, with the listings it was found in.
async fn found(desk: &Desk, wish: &Wish) -> Result<(Opened, Answered), Trouble> {
    let known = desk.asked(&wish.of).await?;
    let supposed = supposed(&[(&wish.property, &wish.value)])?;
    let opened = desk.opened().await?;
    if opened.len() == 0 {
        return Err(Trouble::Refused {
            message: "there are no listings to select from".to_owned(),
            help: "import some first".to_owned(),
        });
    }
    working(move || {
        let answer = if supposed.is_empty() {
            opened.answer(&known)
        } else {
            opened.answer_if(&known, &supposing(&known, &supposed))
        };
        Ok((opened, answer?))
    })
    .await?
}

/// The facts that are supposed; pairs that are empty aren't meant.
fn supposed(pairs: &[(&str, &str)]) -> Result<Vec<Fact>, Trouble> {
    let meant = pairs
        .iter()
        .filter(|(property, value)| !property.trim().is_empty() || !value.trim().is_empty());
    meant
        .map(|(property, value)| Ok(entered(property, value, SUPPOSED)?))
        .collect()
}

/// The form.
fn wishing(desk: &Desk, wish: &Wish) -> Markup {
    html! {
        form.enter method="get" action="/selection" {
            label for="of" { "Mark or joint" }
            input id="of" name="of" list="of-these" required autocomplete="off" value=(wish.of);
            label for="property" { "Suppose another value of" }
            input id="property" name="property" list="properties" autocomplete="off" placeholder="empty: as it is known" value=(wish.property);
            label for="value" { "The value supposed" }
            input id="value" name="value" autocomplete="off" placeholder="4 pcf, or Maker | Product" value=(wish.value);
            button { "Find listings" }
        }
        datalist id="of-these" { @for mark in &desk.project().marks { option value=(mark.name) { (mark.title) } } }
        (properties())
    }
}

/// Every property, for a field to offer: the same on each page.
fn properties() -> PreEscaped<&'static str> {
    static OFFERED: LazyLock<String> = LazyLock::new(|| {
        let offered = html! {
            datalist id="properties" {
                @for component in vocabulary().components() {
                    @for property in &component.properties { option value=(property.name) { (property.title) } }
                }
            }
        };
        offered.into_string()
    });
    PreEscaped(&OFFERED)
}

fn marks(desk: &Desk) -> Markup {
    let project = desk.project();
    html! {
        h2 { "Marks of the project" }
        @if project.marks.is_empty() { p { "There are no marks yet. " a href="/import" { "Import" } " a schedule to begin." } }
        ul {
            @for mark in &project.marks {
                li { a href={ "/selection?of=" (piece(&mark.name)) } { (mark.name) } @if !mark.title.is_empty() { ": " (mark.title) } }
            }
        }
    }
}

fn answered(opened: &Opened, answer: &Answered, wish: &Wish) -> Markup {
    html! {
        section aria-labelledby="found" {
            h2 id="found" { (answer.name) @if !answer.title.is_empty() { ": " (answer.title) } }
            ul.counts {
                li { strong { (opened.len()) } " listings" }
                li.met { strong { (answer.fits.len()) } " fit" }
                li.open { strong { (answer.open.len()) } " open" }
                li.not-met { strong { (answer.near.len()) } " but for changes" @if answer.untold > 0 { ", the nearest" } }
                @if answer.untold > 0 { li { strong { (answer.untold) } " farther off" } }
                @if answer.beyond > 0 { li { strong { (answer.beyond) } " not for such a joint" } }
            }
            @for note in &answer.notes { p.note { (layout::told(note)) } }
            @for file in opened.unread() { p.open { (file) " can't be read, and isn't in the answer." } }
            @if let Some(turned) = &answer.turned { (self::turned(turned, answer, wish)) }
        }
        @if !answer.fits.is_empty() {
            section aria-labelledby="fits" {
                h2 id="fits" { "Fits" }
                @for listed in &answer.fits { article.finding { (head(opened, listed, answer)) p { (counted(listed.matched.counts.met, "clause", "clauses")) " met" @if listed.matched.counts.judged > 0 { ", " (listed.matched.counts.judged) " judged" } } } }
            }
        }
        @if !answer.open.is_empty() {
            section aria-labelledby="open" {
                h2 id="open" { "Nothing in the way, but questions open" }
                @for listed in &answer.open { (open(opened, listed, answer)) }
            }
        }
        @if !answer.near.is_empty() {
            section aria-labelledby="near" {
                h2 id="near" { "Would fit, but for" }
                @for listed in &answer.near { (near(opened, listed, answer)) }
            }
        }
        @if answer.fits.is_empty() && answer.open.is_empty() && answer.near.is_empty() { p { "Nothing here fits or is near. " a href="/import" { "Import further listings" } " to look among those, too." } }
        @if answer.fits.is_empty() && !answer.near.is_empty() {
            p { "Where none fits, whether the condition can be accepted otherwise is for a licensed engineer or the laboratory to judge, and for the authority having jurisdiction to accept." }
        }
        p.quiet { (MATCH_LINE) }
        @match answer.joints.as_slice() {
            [] => {},
            [one] => p { a href=(path_of_joint(one)) { "To joint " (one) } },
            several => p { a href=(joints::path(&Filter { mark: answer.name.clone(), ..Filter::default() })) { "To the " (several.len()) " joints of " (answer.name) } },
        }
    }
}

fn turned(turned: &Turned, answer: &Answered, wish: &Wish) -> Markup {
    html! {
        div.brought {
            p { strong { "Supposing " (answer.supposed.join("; ")) } }
            p { "No longer ruled out: " @if turned.enter.is_empty() { "none" } @else { (listed(&turned.enter)) } "." }
            p { "Ruled out then: " @if turned.leave.is_empty() { "none" } @else { (listed(&turned.leave)) } "." }
            p { a href={ "/selection?of=" (piece(&wish.of)) } { "As it is known" } }
        }
    }
}

/// A listing's name with what tells it apart.
fn head(opened: &Opened, listed: &Listed, answer: &Answered) -> Markup {
    let words = [listed.designation.as_str(), listed.edition.as_str()];
    let words: Vec<&str> = words
        .into_iter()
        .filter(|words| !words.is_empty())
        .collect();
    html! {
        h3 {
            @match opened.file(listed.matched.at) {
                Some(file) => a href={ "/listings/" (piece(file)) } { (listed.listing) },
                None => (listed.listing),
            }
            @if !words.is_empty() { " " span.quiet { (words.join(", ")) } }
        }
        @if answer.own.as_ref() == Some(&listed.listing) { p.quiet { "The listing that the schedule names." } }
        @if listed.matched.standing == Standing::Provisional { p.quiet { "Provisional: the reading isn't confirmed." } }
    }
}

fn trade(trade: Option<Trade>) -> &'static str {
    trade.map_or("Nobody in particular", Trade::title)
}

fn open(opened: &Opened, listed: &Listed, answer: &Answered) -> Markup {
    let who: Vec<String> = listed
        .matched
        .open
        .iter()
        .map(|one| format!("{} {}", trade(one.trade), one.open))
        .collect();
    html! {
        article.finding {
            (head(opened, listed, answer))
            p { strong.open { (listed.matched.counts.open) " open" } ". Who can answer: " (who.join(", ")) "." }
            @if !listed.questions.is_empty() {
                details {
                    summary { "What to ask" span.hidden { " for " (listed.listing) } }
                    dl {
                        @for question in listed.questions.iter().take(MOST_QUESTIONS) {
                            dt { (trade(question.trade)) } dd { (question.sentence) }
                        }
                    }
                    @if listed.questions.len() > MOST_QUESTIONS { p { "and " (listed.questions.len() - MOST_QUESTIONS) " more" } }
                }
            }
        }
    }
}

fn near(opened: &Opened, listed: &Listed, answer: &Answered) -> Markup {
    html! {
        article.finding {
            (head(opened, listed, answer))
            p {
                strong.not-met { (counted(listed.matched.changes.len(), "change", "changes")) }
                @if listed.matched.counts.open > 0 { ", " (listed.matched.counts.open) " open besides" }
            }
            (changes(&listed.matched.changes))
        }
    }
}

/// What would have to change, by trade.
fn changes(changes: &[Change]) -> Markup {
    html! { dl { @for change in changes { dt { (trade(change.trade)) } dd { (change.words) ": " (change.numbers) } } } }
}
