//! Bringing listings and tables: what was understood of them first, and nothing is taken until the person says so.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Multipart, Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use site::import::{ImportError, Means, Understood};
use vocabulary::vocabulary;
use wording::text::{counted, listed};

use super::{layout, path_of_joint};
use crate::desk::Desk;
use crate::person::{By, Person, Reviewer};
use crate::taking::Chosen;
use crate::taking::arriving::{Arrived, MOST_FILES, MOST_IN_ALL, MOST_IN_FILE};
use crate::taking::looking::{Brought, Changes, Heard, Look, Standing, Tables};
use crate::taking::waiting::Lot;
use crate::trouble::Trouble;

/// How many names of a kind are shown one by one.
const MOST_NAMED: usize = 60;

/// A table with more columns is folded, unless something in it isn't understood.
const MOST_COLUMNS_OPEN: usize = 12;

/// How many problems of a table are shown.
const MOST_PROBLEMS: usize = 100;

/// Where files are brought.
pub(super) async fn page(person: By<Reviewer>) -> Markup {
    asking(&person, None)
}

fn asking(person: &Person, trouble: Option<&Trouble>) -> Markup {
    let body = html! {
        h1 { "Import" }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        p {
            "Bring listings (plain text or PDF) and tables (CSV or XLSX): as many at once as you like. "
            "You see what was understood of them first; nothing is taken until you say so."
        }
        form.drop method="post" action="/import" enctype="multipart/form-data" {
            (person.field())
            label for="files" { "Choose files, or drop them here" }
            input id="files" type="file" name="files" multiple required
                accept=".txt,.text,.pdf,.csv,.xlsx,.toml" aria-describedby="most";
            p.quiet id="most" {
                "At most " (MOST_FILES) " files, " (MOST_IN_FILE >> 20) " MB each and " (MOST_IN_ALL >> 20) " MB together."
            }
            button { "See what is understood of them" }
        }
        script type="module" src="/assets/import.js" {}
        h2 { "What a table is" }
        p { "The first row names the columns. The column that names each row says what the table is of:" }
        dl.plain {
            dt { code { "joint" } } dd { "a schedule: " code { "mark" } ", " code { "listing" } ", " code { "storey" } ", " code { "barrier" } ", " code { "grid" } ", " code { "length" } " and properties such as " code { "joint.width" } " or " code { "packing.density" } }
            dt { code { "mark" } } dd { "the types of joint: " code { "title" } ", " code { "listing" } " and properties" }
            dt { code { "barrier" } } dd { "rated walls and floors: " code { "kind" } ", " code { "rating" } ", " code { "title" } }
            dt { code { "joint_or_mark" } } dd { "judgments that people have recorded" }
        }
        p {
            "A value has its unit (" code { "3/4 in." } "). A row under the headings that begins with " code { "#source" }
            " says where the values of each column come from. A schedule alone will do to begin with."
        }
    };
    layout::page(person, "Import", "/import", &body)
}

/// Takes files in to be looked at.
pub(super) async fn bring(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    form: Multipart,
) -> Response {
    match Arrived::read(form).await {
        Ok(arrived) => {
            let number = desk.waiting.put(&person.name, arrived);
            Redirect::to(&format!("/import/{number}")).into_response()
        }
        Err(trouble) => (trouble.status(), asking(&person, Some(&trouble))).into_response(),
    }
}

fn lot(desk: &Desk, person: &Person, number: u64) -> Result<Arc<Lot>, Trouble> {
    desk.waiting.get(number, &person.name).ok_or_else(|| {
        Trouble::Unknown(
            "These files don't wait any more: they were taken, or others came since. Bring them again."
                .to_owned(),
        )
    })
}

pub(super) async fn look(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(number): Path<u64>,
) -> Result<Markup, Trouble> {
    let lot = lot(&desk, &person, number)?;
    let look = desk.understand(&lot).await?;
    Ok(shown(&person, number, &look, None))
}

pub(super) async fn take(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(number): Path<u64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let lot = lot(&desk, &person, number)?;
    let (mut chosen, mut mark) = (Chosen::default(), 0);
    for (name, value) in fields {
        match name.as_str() {
            "listing" => chosen.listings.push(value),
            "tables" => chosen.tables = true,
            "remove" => chosen.remove = true,
            "shown" => mark = value.parse().unwrap_or_default(),
            _ => {}
        }
    }
    let trouble = match desk.take(&person, &lot, &chosen, mark).await {
        Ok(Some(_)) => return Ok(Redirect::to(after(&chosen)).into_response()),
        Ok(None) => Trouble::Refused {
            message: "the store was changed since you looked, and the files would come to something else now; nothing was taken".to_owned(),
            help: "look at it again below, and take it where it is right".to_owned(),
        },
        Err(trouble @ (Trouble::Refused { .. } | Trouble::Conflicts(_))) => trouble,
        Err(trouble) => return Err(trouble),
    };
    let look = desk.understand(&lot).await?;
    let status = match trouble {
        Trouble::Conflicts(_) => StatusCode::CONFLICT,
        _ => trouble.status(),
    };
    Ok((status, shown(&person, number, &look, Some(&trouble))).into_response())
}

/// Where one goes on with what was taken.
const fn after(chosen: &Chosen) -> &'static str {
    if chosen.tables { "/" } else { "/listings" }
}

fn shown(person: &Person, number: u64, look: &Look, trouble: Option<&Trouble>) -> Markup {
    let changes = look
        .tables
        .as_ref()
        .and_then(|tables| tables.result.as_ref().ok());
    let has_new = |one: &Brought| matches!(&one.read, Ok(heard) if !heard.proposal.is_empty());
    let is_worth = look.listings.iter().any(has_new)
        || changes.is_some_and(|changes| !changes.proposal.is_empty());
    let body = html! {
        h1 { "What was understood" }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        @if is_worth { p { "Nothing is taken yet. Untick what you don't want; then take the rest." } }
        @else { p { strong { "There is nothing here to take." } " What the store says already, and what can't be read, is told below." } }
        form method="post" action={ "/import/" (number) } {
            (person.field())
            input type="hidden" name="shown" value=(look.mark());
            (act(is_worth))
            @if !look.listings.is_empty() {
                section aria-labelledby="listings" {
                    h2 id="listings" { "Listings" }
                    @for (at, one) in look.listings.iter().enumerate() { (listing(one, at)) }
                }
            }
            @if let Some(held) = &look.tables { (tables(held)) }
            @if !look.others.is_empty() {
                section aria-labelledby="others" {
                    h2 id="others" { "Not understood" }
                    ul { @for (name, why) in &look.others { li { strong { (name) } ": " (why) } } }
                }
            }
            (act(is_worth))
        }
    };
    layout::page(person, "What was understood", "/import", &body)
}

fn act(is_worth: bool) -> Markup {
    html! {
        p.act {
            @if is_worth { button { "Take what is ticked" } " " }
            a href="/import" { "Bring other files" }
        }
    }
}

fn listing(one: &Brought, at: usize) -> Markup {
    html! {
        article.brought {
            @match &one.read {
                Err(why) => {
                    h3 { (one.name) }
                    p.not-met { strong { "Can't be read" } ": " (why) "." }
                    p.quiet { "Give it as text, or as a PDF that holds text." }
                }
                Ok(heard) => {
                    h3 {
                        @if heard.proposal.is_empty() { (one.name) } @else {
                            label.tick for={ "listing-" (at) } {
                                input id={ "listing-" (at) } type="checkbox" name="listing" value=(one.name) checked[!heard.is_none];
                                (one.name)
                            }
                        }
                    }
                    (self::heard(heard))
                }
            }
        }
    }
}

fn heard(heard: &Heard) -> Markup {
    html! {
        p {
            @if heard.designation.is_empty() { strong { "No designation was found" } }
            @else { strong { (heard.designation) } @if !heard.edition.is_empty() { ", " (heard.edition) } }
            @if let Some(pages) = heard.pages { "; " (counted(pages, "page", "pages")) }
            "; " (counted(heard.clauses, "clause", "clauses"))
            @if heard.prose > 0 { ", of which no rule could read " (heard.prose) ": they are left as words for a person" }
            "."
        }
        @if heard.is_none { p.not-met { "Nothing in it looks like a listing. Tick it only if you are sure." } }
        @match heard.standing {
            Standing::New => {}
            Standing::Same => { p.quiet { "The store has it already, byte for byte." } }
            Standing::InPlaceOf(0) => { p.open { "The store has another document of this name. Taken, this one stands in its place; the other stays in the journal." } }
            Standing::InPlaceOf(confirmed) => {
                p.open {
                    "The store has another document of this name, with " (counted(confirmed, "clause", "clauses"))
                    " that people have confirmed. Taken, this one stands in its place: what was confirmed holds where the words are the same. "
                    "If it is another edition, give the file another name and compare the two."
                }
            }
        }
        @for file in &heard.namesakes {
            p.open { (file) " goes by the same designation: a mark that names the designation won't say which is meant." }
        }
        @if !heard.scanned.is_empty() {
            p.not-met {
                "Pages that are pictures, whose text isn't surely in the file: "
                (listed(&heard.scanned.iter().map(ToString::to_string).collect::<Vec<_>>()))
                ". Read them yourself against the paper."
            }
        }
        @if let Some((held, lost)) = heard.confirmed {
            p {
                "Confirmed by people: " (counted(held, "clause", "clauses"))
                @if lost > 0 { "; of " (lost) " more the words aren't in it any more" }
                "."
            }
        }
        @if !heard.unread.is_empty() {
            details {
                summary { "Numbers that no rule could read: " (heard.unread.len()) }
                ul { @for words in &heard.unread { li { q { (words) } } } }
            }
        }
    }
}

fn tables(tables: &Tables) -> Markup {
    html! {
        section aria-labelledby="tables" {
            h2 id="tables" { "Tables" }
            @match &tables.result {
                Ok(held) => (changes(held)),
                Err(error) => (problems(error)),
            }
            @for table in &tables.understood { (understood(table)) }
        }
    }
}

fn problems(error: &ImportError) -> Markup {
    let count = error.problems.len() + error.left_out;
    html! {
        div.trouble role="alert" {
            p { strong { (counted(count, "place", "places")) " must be put right before any of the tables can be taken." } }
            p { "Put them right in the file and bring it again. Tables are taken whole or not at all, so that no row is lost unseen." }
        }
        div.wide tabindex="0" role="region" aria-label="What is wrong with the tables" {
            table {
                thead { tr { th scope="col" { "Where" } th scope="col" { "What stands there" } th scope="col" { "What is wrong" } th scope="col" { "What would be right" } } }
                tbody {
                    @for problem in error.problems.iter().take(MOST_PROBLEMS) {
                        tr { th scope="row" { (problem.cell) } td { (problem.words) } td { (problem.message) } td { (problem.help) } }
                    }
                }
            }
        }
        @if count > MOST_PROBLEMS { p { "and " (count - MOST_PROBLEMS) " more" } }
    }
}

fn changes(changes: &Changes) -> Markup {
    let is_empty = changes.proposal.is_empty();
    html! {
        @if is_empty { p { "The store says all of it already." } } @else {
            h3 {
                label.tick for="take-tables" {
                    input id="take-tables" type="checkbox" name="tables" value="yes" checked;
                    "Take the tables: " (counted(changes.proposal.edits.len() - changes.proposal.removed, "record", "records"))
                }
            }
        }
        ul.counts {
            li { strong { (changes.new.len()) } " joints new" }
            li { strong { (changes.changed.len()) } " changed" }
            li { strong { (changes.same) } " the same" }
        }
        (named("New joints", &changes.new, false))
        (named("Changed joints", &changes.changed, true))
        @if !changes.gone.is_empty() {
            div.brought {
                p {
                    strong { (counted(changes.gone.len(), "thing is", "things are")) " in the store and not in these tables." }
                    " They stay, unless you tick this:"
                }
                label.tick for="remove" {
                    input id="remove" type="checkbox" name="remove" value="yes";
                    "The tables are the whole project: remove what they don't have"
                }
                details {
                    summary { "What would be removed" }
                    p { @for key in changes.gone.iter().take(MOST_NAMED) { (key) ", " } @if changes.gone.len() > MOST_NAMED { "and " (changes.gone.len() - MOST_NAMED) " more" } }
                }
            }
        }
        @if !changes.kept.is_empty() {
            div.brought {
                p.open { strong { "In conflict: " (changes.kept.len()) "." } " The tables say otherwise, and what people entered stays:" }
                ul {
                    @for (key, why) in changes.kept.iter().take(MOST_NAMED) { li { (key) ": " (why) } }
                }
                @if changes.kept.len() > MOST_NAMED { p { "and " (changes.kept.len() - MOST_NAMED) " more" } }
            }
        }
        @if !changes.homeless.is_empty() {
            p.open {
                "No one listing, here or in the store, goes by "
                (listed(&changes.homeless.iter().map(|name| format!("“{name}”")).collect::<Vec<_>>()))
                ": joints that name it stay open until it is there."
            }
        }
        @if !changes.notices.is_empty() {
            details { summary { "Worth knowing: " (changes.notices.len()) } ul { @for notice in &changes.notices { li { (notice) } } } }
        }
    }
}

fn named(title: &str, names: &[String], with_links: bool) -> Markup {
    html! {
        @if !names.is_empty() {
            details {
                summary { (title) ": " (names.len()) }
                p {
                    @for name in names.iter().take(MOST_NAMED) {
                        @if with_links { a href=(path_of_joint(name)) { (name) } } @else { (name) } " "
                    }
                    @if names.len() > MOST_NAMED { "and " (names.len() - MOST_NAMED) " more" }
                }
            }
        }
    }
}

fn understood(table: &Understood) -> Markup {
    let place = table.sheet.as_ref().map_or_else(
        || table.file.clone(),
        |sheet| format!("{}, sheet {sheet}", table.file),
    );
    html! {
        @let unknown = table.columns.iter().filter(|column| column.means == Means::Nothing).count();
        details.brought open[unknown > 0 || table.columns.len() <= MOST_COLUMNS_OPEN] {
            summary {
                strong { (place) } ": a table of " (table.of) ", " (counted(table.rows, "row", "rows")) "; "
                (counted(table.columns.len(), "column", "columns"))
                @if unknown > 0 { ", of which " strong.not-met { (unknown) " not understood" } } @else { ", each understood" }
            }
            div.wide tabindex="0" role="region" aria-label={ "What the columns of " (place) " mean" } {
                table {
                    thead { tr { th scope="col" { "Column" } th scope="col" { "Its heading" } th scope="col" { "What it means" } } }
                    tbody {
                        @for column in &table.columns {
                            tr { th scope="row" { (column.letters) } td { code { (column.heading) } } td { (means(&column.means)) } }
                        }
                    }
                }
            }
        }
    }
}

fn means(means: &Means) -> Markup {
    html! {
        @match means {
            Means::Own(name) => (own(name)),
            Means::Property(name) => {
                @let (item, plain) = name.split_once(':').map_or((None, name.as_str()), |(item, plain)| (Some(item), plain));
                @if let Some(known) = vocabulary().property(plain) { (known.title) } @else { (plain) }
                @if let Some(item) = item { ", of the part that item " (item) " of the listing describes" }
            },
            Means::Option(name) => { "Which option of the listing is built: " (name.trim_start_matches("option.")) },
            Means::Apart => span.quiet { "the project’s own, not read" },
            Means::Nothing => strong.not-met { "not understood" },
        }
    }
}

/// A table's own column in plain words.
fn own(name: &str) -> &str {
    match name {
        "joint" => "The joint's name",
        "mark" => "The mark: which type of joint it is",
        "listing" => "The listing it is to be built to",
        "storey" => "The storey",
        "barrier" => "The rated wall or floor",
        "grid" => "The place on the grid",
        "title" => "What it is, in words",
        "kind" => "What kind of barrier it is",
        "joint_or_mark" => "The joint or mark that was judged",
        "item" => "The item of the listing",
        "words" => "The words that were judged",
        "decision" => "The decision",
        "by" => "Who decided",
        "when" => "When",
        "basis" => "On what ground",
        other => other,
    }
}
