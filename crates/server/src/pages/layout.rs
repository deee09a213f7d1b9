//! What every page has around it.

use conformance::{Finding, JointResult, Overall, Verdict};
use maud::{DOCTYPE, Markup, html};
use store::people::Role;

use crate::person::Person;

const PLACES: [(&str, &str); 7] = [
    ("/", "Overview"),
    ("/listings", "Listings"),
    ("/questions", "Questions"),
    ("/selection", "Selection"),
    ("/submittals", "Submittals"),
    ("/import", "Import"),
    ("/journal", "Journal"),
];

/// Parts of a team's desk for who manages people.
const MANAGING: [(&str, &str); 2] = [("/people", "People"), ("/audit", "Audit")];

/// A whole page for somebody; `place` is the path of the part of the desk that it belongs to.
pub(super) fn page(person: &Person, title: &str, place: &str, body: &Markup) -> Markup {
    let around = html! {
        (nav(place, Some(person)))
        @if person.signs_in() { (account(person, place)) }
    };
    framed(title, &around, body)
}

/// A whole page for whoever it is.
pub(super) fn unowned(title: &str, body: &Markup) -> Markup {
    framed(title, &nav("", None), body)
}

/// A whole page for who hasn't signed in, and has nowhere else to go.
pub(super) fn at_the_door(title: &str, body: &Markup) -> Markup {
    framed(title, &html! {}, body)
}

/// The parts of the desk that somebody may go to.
fn nav(place: &str, person: Option<&Person>) -> Markup {
    let manages = person.is_some_and(|one| one.signs_in() && one.may(Role::Administrator));
    let imports = person.is_none_or(|one| one.may(Role::Reviewer));
    let managing = MANAGING.iter().filter(|_| manages);
    let places = PLACES
        .iter()
        .filter(|(path, _)| imports || *path != "/import");
    html! {
        nav aria-label="Parts of the desk" {
            @for (path, name) in places.chain(managing) {
                @if *path == place {
                    a href=(path) aria-current="page" { (name) }
                } @else {
                    a href=(path) { (name) }
                }
            }
        }
    }
}

/// Who signed in, and the way out.
fn account(person: &Person, place: &str) -> Markup {
    html! {
        form.account method="post" action="/sign-out" {
            (person.field())
            a href="/account" aria-current=[(place == "/account").then_some("page")] { (person.name) }
            button { "Sign out" }
        }
    }
}

fn framed(title: &str, around: &Markup, body: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (title) " – everyclause" }
                link rel="stylesheet" href="/assets/desk.css";
                link rel="icon" type="image/svg+xml" href="/assets/icon.svg";
                script type="module" src="/assets/desk.js" {}
            }
            body {
                a.skip href="#content" { "To the content" }
                header.top {
                    span.name { "everyclause" }
                    (around)
                }
                main id="content" tabindex="-1" { (body) }
                footer {
                    p {
                        "A joint that conforms matches every clause of its listing as read and recorded here: no more is said of it. "
                        "Approval belongs to the authority having jurisdiction; local codes and licensed practice decide."
                    }
                }
            }
        }
    }
}

/// A verdict with its mark; the mark alone says nothing to a screen reader, the word does.
pub(super) fn verdict(verdict: Verdict) -> Markup {
    let (class, mark) = match verdict {
        Verdict::Met => ("met", "✓"),
        Verdict::NotMet => ("not-met", "✗"),
        Verdict::Open => ("open", "?"),
        Verdict::Judged => ("judged", "◇"),
        Verdict::NotApplicable => ("quiet", "–"),
    };
    html! { span.verdict.(class) { span aria-hidden="true" { (mark) } " " (verdict.words()) } }
}

/// The findings of a result by verdict, those that something is to be done about unfolded.
pub(super) fn by_verdict(result: &JointResult, one: impl Fn(&Finding) -> Markup) -> Markup {
    let groups = [
        (Verdict::NotMet, "Not met"),
        (Verdict::Open, "Open"),
        (Verdict::Judged, "Judged"),
        (Verdict::Met, "Met"),
        (Verdict::NotApplicable, "Not applicable"),
    ];
    html! {
        @for (verdict, title) in groups {
            @let count = result.with(verdict).count();
            @if count > 0 {
                details open[matches!(verdict, Verdict::NotMet | Verdict::Open)] {
                    summary { h3 { (title) ": " (count) } }
                    @for finding in result.with(verdict) { (one(finding)) }
                }
            }
        }
    }
}

/// What a joint comes to.
pub(super) fn overall(overall: Overall) -> Markup {
    let (class, mark) = match overall {
        Overall::Conforms => ("met", "✓"),
        Overall::DoesNotConform => ("not-met", "✗"),
        Overall::Open => ("open", "?"),
    };
    html! { span.verdict.(class) { span aria-hidden="true" { (mark) } " " (overall.words()) } }
}

/// What must be said before anybody touches anything.
pub(super) fn cautions(cautions: &[&str]) -> Markup {
    html! {
        @if !cautions.is_empty() {
            section.cautions aria-labelledby="cautions" {
                h2 id="cautions" { "Before anybody touches anything" }
                ul { @for caution in cautions { li { (caution) } } }
            }
        }
    }
}

/// A sentence of a check, with what stands between backticks set as something to type.
pub(super) fn told(sentence: &str) -> Markup {
    let mut parts = sentence.split('`').peekable();
    let mut is_typed = false;
    let mut told = html! {};
    while let Some(part) = parts.next() {
        // One without its partner is a letter like others.
        let is_closed = parts.peek().is_some();
        told = match (is_typed, is_closed) {
            (true, true) => html! { (told) code { (part) } },
            (true, false) => html! { (told) "`" (part) },
            (false, _) => html! { (told) (part) },
        };
        is_typed = !is_typed;
    }
    told
}
