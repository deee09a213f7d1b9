//! What was understood of tables, and what taking them would change.

use maud::{Markup, html};
use site::import::{ImportError, Means, Understood};
use site::{SaidOf, said_of, without_listing};
use vocabulary::vocabulary;
use wording::text::{counted, listed};

use crate::pages::path_of_joint;
use crate::taking::looking::{Changes, Tables};

/// How many names of a kind are shown one by one.
const MOST_NAMED: usize = 60;

/// How many problems of a table are shown.
const MOST_PROBLEMS: usize = 100;

/// A table with more columns is folded, unless something in it isn't understood.
const MOST_COLUMNS_OPEN: usize = 12;

pub(super) fn tables(tables: &Tables) -> Markup {
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
            table.stacked {
                thead { tr { th scope="col" { "Where" } th scope="col" { "What stands there" } th scope="col" { "What is wrong" } th scope="col" { "What would be right" } } }
                tbody {
                    @for problem in error.problems.iter().take(MOST_PROBLEMS) {
                        tr {
                            th scope="row" { (problem.cell) }
                            td data-of="What stands there: " { (problem.words) }
                            td data-of="What is wrong: " { (problem.message) }
                            td data-of="What would be right: " { (problem.help) }
                        }
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
                table.narrow {
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
                @let (name, listing) = (without_listing(name), said_of(name));
                @let (item, plain) = name.split_once(':').map_or((None, name), |(item, plain)| (Some(item), plain));
                @if let Some(known) = vocabulary().property(plain) { (known.title) } @else { (plain) }
                @if let Some(item) = item { ", of the part that item " (item) " of the listing describes" }
                (of_which(listing))
            },
            Means::Option(name) => {
                "Which option of the listing is built: " (without_listing(name).trim_start_matches("option."))
                (of_which(said_of(name)))
            },
            Means::Apart => span.quiet { "the project’s own, not read" },
            Means::Nothing => strong.not-met { "not understood" },
        }
    }
}

/// Of which listing a column is; where its heading doesn't say it, of the one that each row names.
fn of_which(listing: Option<SaidOf<'_>>) -> String {
    listing.map_or_else(String::new, |said| format!(" (of {})", said.listing))
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
