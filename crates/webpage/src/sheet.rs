//! The whole page, its style, script and policy.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use listing::Reading;
use maud::{DOCTYPE, Markup, PreEscaped, html};
use sha2::{Digest, Sha256};
use wording::text::on_one_line;

use crate::known::Known;
use crate::paragraphs::paragraphs;
use crate::rows::{Beside, Row, rows};
use crate::stretches::{Stretch, stretches};
use crate::{Marked, clauses, head, pages, todo, words};

/// The page's style.
pub const STYLE: &str = include_str!("page.css");

/// The page's script: it lights what belongs together, and leads from clause to clause by the keys. The page says the same without.
pub const SCRIPT: &str = include_str!("page.js");

/// From how many clauses on a browser need not lay out what isn't in view.
const MANY: usize = 300;

/// From how many lines on the words of a row may have to be scrolled to be seen whole beside their clauses.
const MOST_LINES_IN_VIEW: usize = 24;

/// The whole page, as one document that fetches nothing.
pub fn page(marked: &Marked<'_>) -> String {
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta http-equiv="Content-Security-Policy" content=(policy());
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="referrer" content="no-referrer";
                meta name="robots" content="noindex";
                title { (head::name(marked.reading)) ", clause by clause" }
                style { (PreEscaped(STYLE)) }
                noscript { style { (PreEscaped(without_script(marked.reading))) } }
            }
            body {
                (content(marked))
                script { (PreEscaped(SCRIPT)) }
            }
        }
    }
    .into_string()
}

/// What the page shows, without the frame around it; [`STYLE`] and [`SCRIPT`] belong to it.
pub fn content(marked: &Marked<'_>) -> Markup {
    let rows = rows(marked.text, marked.reading);
    let stretches = stretches(marked.text, marked.reading, &rows);
    let known = Known::of(marked);
    html! {
        a.skip href=(if marked.reading.clauses.is_empty() { "#beside" } else { "#c0" }) { "To the first clause" }
        (head::head(marked))
        div.above {
            (todo::to_look_at(marked))
            (todo::next(marked))
            (head::legend(marked, &stretches))
        }
        @if let Some(paper) = marked.paper { (pages::outlines(paper, marked.reading)) }
        main.(if marked.reading.clauses.len() > MANY { "many" } else { "few" }) id="beside" aria-label="The listing as written, beside the clauses read from it" {
            div.bar-above {
                h2 { "The words, and what was read" }
                (head::choice(marked))
                (keys(marked))
            }
            @if marked.reading.clauses.is_empty() { p.nothing { "Nothing was read: no clause was found in this document." } }
            (all_rows(&known, &rows, &stretches))
        }
        footer {
            p {
                "This page shows how the listing was read, and judges no joint. Whether a joint may stand is for the authority having \
                 jurisdiction; local codes and licensed practice decide."
            }
            p { "The listing belongs to its holder. Keep this page as you keep the listing; don't publish it." }
        }
    }
}

/// What the keys do.
fn keys(marked: &Marked<'_>) -> Markup {
    let has = |firmness: &str| {
        let mut clauses = marked.reading.clauses.iter();
        clauses.any(|clause| clauses::firmness(clause) == firmness)
    };
    html! {
        p.keys {
            kbd { "↑" } kbd { "↓" } kbd { "Home" } kbd { "End" } " from clause to clause, " kbd { "←" } " to its words, " kbd { "→" } " back"
            @if has("doubtful") { ", " kbd { "d" } " to the next doubt" }
            @if has("left") { ", " kbd { "p" } " to the next for a person" }
            @if clauses::unread(marked).next().is_some() { ", " kbd { "n" } " to the next unread number" }
        }
    }
}

fn all_rows(known: &Known<'_>, rows: &[Row<'_>], stretches: &[Stretch]) -> Markup {
    let text = known.marked.text;
    let mut page = 1;
    let mut rest = stretches;
    html! {
        @for row in rows {
            @let within = next(&mut rest, row);
            section.row aria-label=[label(row)] {
                @let own = row.span.of(text);
                @let columns = is_table(own);
                @let widest = widest(own);
                div.words.(if columns { "table" } else { "running" }) tabindex=[(columns || own.lines().count() > MOST_LINES_IN_VIEW).then_some("0")] {
                    span.sheet.(fit(widest)) style=[columns.then(|| format!("--columns:{}", widest.max(1)))] {
                        @if columns { @for stretch in within { (words::words(text, stretch, false, &mut page)) } }
                        @else { (paragraphs(text, within, widest, &mut page)) }
                    }
                }
                div.beside {
                    @if let Some(item) = row.item { h3 { (on_one_line(&item.path)) " " (on_one_line(&item.title)) } }
                    @if !row.beside.is_empty() { ul { @for beside in &row.beside { (one(known, *beside)) } } }
                }
            }
        }
    }
}

/// The page's style knows by ten letters how wide the words of a row are, so that they flow or scroll where they don't fit.
const WIDTHS: [(usize, &str); 11] = [
    (40, "fit-40"),
    (50, "fit-50"),
    (60, "fit-60"),
    (70, "fit-70"),
    (80, "fit-80"),
    (90, "fit-90"),
    (100, "fit-100"),
    (110, "fit-110"),
    (120, "fit-120"),
    (130, "fit-130"),
    (140, "fit-140"),
];

fn fit(widest: usize) -> &'static str {
    let mut widths = WIDTHS.into_iter();
    widths
        .find(|(width, _)| widest <= *width)
        .map_or("fit-none", |(_, name)| name)
}

/// The stretches of the next row.
fn next<'s>(rest: &mut &'s [Stretch], row: &Row<'_>) -> &'s [Stretch] {
    let end = rest.partition_point(|stretch| stretch.span.start() < row.span.end());
    let (within, after) = rest.split_at(end);
    *rest = after;
    within
}

fn one(known: &Known<'_>, beside: Beside) -> Markup {
    let reading = known.marked.reading;
    match beside {
        Beside::Clause(index) => html! {
            @if let Some(clause) = reading.clauses.get(index) { (clauses::clause(known, index, clause)) }
        },
        Beside::Warning(index) => html! {
            @if let Some(warning) = reading.warnings.get(index) { (clauses::warning(known.marked, index, warning)) }
        },
    }
}

/// What a row is called, where an item begins with it.
fn label(row: &Row<'_>) -> Option<String> {
    let item = row.item?;
    Some(format!(
        "item {} {}",
        on_one_line(&item.path),
        on_one_line(&item.title)
    ))
}

/// Whether words are set in columns, which must not be broken up.
fn is_table(words: &str) -> bool {
    let columns = |line: &&str| line.trim().contains("   ") || line.matches('|').count() > 1;
    words.lines().filter(columns).count() > 1
}

/// How many characters the widest line has.
fn widest(words: &str) -> usize {
    let widths = words.lines().map(|line| line.trim_end().chars().count());
    widths.max().unwrap_or(0)
}

/// Nothing is fetched, and no script runs but the page's own.
fn policy() -> String {
    let digest = BASE64_STANDARD.encode(Sha256::digest(SCRIPT));
    format!(
        "default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
    )
}

/// Without the script: a rule for each clause that lights it together with its words.
fn without_script(reading: &Reading) -> String {
    let rules = (0..reading.clauses.len()).map(|index| {
        format!(
            "body:has([data-lit~=\"{index}\"]:is(:hover,:focus,:focus-within,:target)) [data-lit~=\"{index}\"]{{background:var(--lit)}}\n"
        )
    });
    rules.chain([".keys{display:none}".to_owned()]).collect()
}
