//! What goes with a request for an engineering judgment: the condition, the nearest listings, each deviation, what to draw, and
//! what a licensed engineer or the laboratory must answer. Nothing here answers it.

use std::path::Path;

use conformance::{Finding, Subject};
use drawing::{Heading, Known};
use selection::{Answered, Asked, Listed, Search};
use site::{Project, without_listing};

use crate::fault::{Fault, Faults};
use crate::files;
use crate::show::words::{counted, on_one_line};

/// How many of the nearest listings a request holds.
pub(crate) const NEAREST: usize = 3;

/// A request: its files by name, in order.
pub(crate) struct Request {
    pub(crate) files: Vec<(String, Vec<u8>)>,
}

/// The request for a condition, its sections drawn against each of the nearest listings.
pub(crate) fn request(
    project: Option<&Project>,
    search: &Search<'_>,
    asked: &Asked,
    answer: &Answered,
) -> Request {
    let building = project
        .map(|one| one.building.name.as_str())
        .unwrap_or_default();
    let nearest: Vec<&Listed> = answer.near.iter().take(NEAREST).collect();
    let mut files = Vec::new();
    let mut drawn = Vec::new();
    for listed in &nearest {
        let sheet = sheet(search, asked, listed, building);
        drawn.push(sheet.as_ref().map(|(name, _)| name.clone()));
        files.extend(sheet.map(|(name, svg)| (name, svg.into_bytes())));
    }
    let text = text(building, asked, answer, &nearest, &drawn);
    files.insert(0, ("request.md".to_owned(), text.into_bytes()));
    Request { files }
}

/// The section against one listing; nothing where the condition can't be drawn.
fn sheet(
    search: &Search<'_>,
    asked: &Asked,
    listed: &Listed,
    building: &str,
) -> Option<(String, String)> {
    let subject: Subject<'_> = asked.subject();
    let checklist = search.library().checklist(listed.matched.at)?;
    let result = checklist.explain(&subject, &checklist.decide(&subject));
    let known = Known {
        subject: &subject,
        listing: Some((checklist.reading(), &result)),
    };
    let not_met = listed
        .matched
        .changes
        .iter()
        .filter_map(|change| change.findings.first());
    let heading = Heading {
        joint: on_one_line(&asked.name),
        mark: on_one_line(&asked.mark),
        title: on_one_line(&asked.title),
        place: String::new(),
        building: on_one_line(building),
        listing: on_one_line(&listed.designation),
        outcome: Some(result.overall),
        not_met: not_met
            .map(|finding| on_one_line(&finding.explanation.sentence))
            .collect(),
        open: result.counts.open,
        provisional: result.standing == conformance::Standing::Provisional,
    };
    let page = drawing::sheet(&known, &heading).ok()?;
    Some((
        format!("against-{}.svg", listed.listing),
        drawing::svg(&page),
    ))
}

fn text(
    building: &str,
    asked: &Asked,
    answer: &Answered,
    nearest: &[&Listed],
    drawn: &[Option<String>],
) -> String {
    let mut text = String::from("# Request for an engineering judgment\n\n");
    text.push_str(
        "Put together from what is recorded of the joint and from the listings as read. It answers nothing: whether the condition below \
         is acceptable is for a licensed engineer or the laboratory that tested the listing to say, and for the authority having \
         jurisdiction to accept.\n\n",
    );
    text.push_str("## The condition\n\n");
    for (what, words) in [
        ("Building", building),
        ("Joint or mark", &asked.name),
        ("Title", &asked.title),
        ("Joints", &asked.joints.join(", ")),
    ] {
        if !words.is_empty() {
            text.push_str(&format!("- {what}: {}\n", on_one_line(words)));
        }
    }
    text.push_str("\n| what | value | known from |\n|---|---|---|\n");
    for fact in &asked.facts {
        text.push_str(&format!(
            "| {} | {} | {} |\n",
            cell(&titled(&fact.property)),
            cell(&fact.value.to_string()),
            cell(&fact.provenance.to_string())
        ));
    }
    text.push_str("\n## What was searched\n\n");
    text.push_str(&searched(answer));
    text.push_str("\n## The nearest listings\n");
    for (listed, sheet) in nearest.iter().zip(drawn) {
        text.push_str(&one_listing(listed, sheet.as_deref()));
    }
    text.push_str("\n## To attach\n\n");
    for sheet in drawn.iter().flatten() {
        text.push_str(&format!(
            "- [ ] `{sheet}`: the section as known, against that listing (in this folder)\n"
        ));
    }
    for listed in nearest {
        text.push_str(&format!(
            "- [ ] the listing {}, whole, as its publisher issues it\n",
            listing_name(listed)
        ));
    }
    text.push_str("- [ ] the sheets and submittals named above under \"known from\"\n");
    text.push_str("- [ ] photographs of the place, where it is built\n");
    text.push_str("\n## To be answered\n\n");
    text.push_str(&questions(nearest));
    text.push_str(
        "\nThe answer should name the listing and the tests it rests on, the limits within which it holds, who gives it and under which \
         licence, and the date. A judgment holds for this condition and no other.\n",
    );
    text.push_str("\n## Before anybody opens or touches the joint\n\n");
    text.push_str(
        "Mineral wool and cut board give off dust and fibres; heads of walls are high up; old sprayed fireproofing may hold asbestos; what is \
         opened to look at must be made good by its listing. Local codes and the site's own rules decide.\n",
    );
    text
}

fn searched(answer: &Answered) -> String {
    let told = answer.fits.len() + answer.open.len() + answer.near.len();
    let all = told + answer.beyond + answer.untold;
    let mut text = format!(
        "{} searched; {} for such a joint (of another kind, not rated so long, or without the leakage that a smoke barrier asks for). None fits.\n",
        counted(all, "listing was", "listings were"),
        counted(answer.beyond, "isn't", "aren't"),
    );
    if let Some(first) = answer.open.first() {
        text.push_str(&format!(
            "\n**{} may still fit:** nothing known stands in the way of {}, and open questions do. Answer those first; a judgment may not be needed. The first is {}.\n",
            counted(answer.open.len(), "listing", "listings"),
            if answer.open.len() == 1 { "it" } else { "them" },
            listing_name(first),
        ));
    }
    text
}

fn one_listing(listed: &Listed, sheet: Option<&str>) -> String {
    let mut text = format!("\n### {}\n\n", listing_name(listed));
    if listed.matched.standing == conformance::Standing::Provisional {
        text.push_str(
            "Nobody has confirmed the reading of this listing: what follows is provisional.\n\n",
        );
    }
    if let Some(sheet) = sheet {
        text.push_str(&format!("![Section against this listing]({sheet})\n\n"));
    }
    text.push_str(&format!(
        "{}; {} besides.\n\n",
        counted(listed.matched.changes.len(), "deviation", "deviations"),
        counted(
            listed.matched.counts.open,
            "clause is open",
            "clauses are open"
        )
    ));
    text.push_str("| item | what | the listing's words | asks | is | trade that would change it |\n|---|---|---|---|---|---|\n");
    for change in &listed.matched.changes {
        let trade = change.trade.map_or("not known", |trade| trade.title());
        for finding in &change.findings {
            text.push_str(&deviation(finding, trade));
        }
    }
    text
}

fn deviation(finding: &Finding, trade: &str) -> String {
    let explanation = &finding.explanation;
    let item = if explanation.item.is_empty() {
        "head"
    } else {
        &explanation.item
    };
    let is = explanation
        .fact
        .as_ref()
        .map_or("", |fact| fact.value.as_str());
    format!(
        "| {} | {} | {} | {} | {} | {trade} |\n",
        cell(item),
        cell(&explanation.title),
        cell(&explanation.words),
        cell(&explanation.requirement),
        cell(is),
    )
}

fn questions(nearest: &[&Listed]) -> String {
    let mut text = String::new();
    let mut number = 0;
    for listed in nearest {
        for change in &listed.matched.changes {
            number += 1;
            text.push_str(&format!(
                "{number}. {}, {}: {} Is the joint, built so, expected to perform as rated, on the evidence of which tests, and within which limits?\n",
                listing_name(listed),
                change.title.to_lowercase(),
                change
                    .findings
                    .first()
                    .map(|finding| on_one_line(&finding.explanation.sentence))
                    .unwrap_or_default(),
            ));
        }
    }
    number += 1;
    text.push_str(&format!(
        "{number}. Do the deviations together bear on each other, where each alone might be accepted?\n"
    ));
    text
}

fn listing_name(listed: &Listed) -> String {
    let edition = if listed.edition.is_empty() {
        String::new()
    } else {
        format!(", {}", listed.edition)
    };
    let name = if listed.designation.is_empty() {
        &listed.listing
    } else {
        &listed.designation
    };
    on_one_line(&format!("{name}{edition}"))
}

/// A property's title, with the item whose part it is of, if it is of one.
fn titled(property: &str) -> String {
    let property = without_listing(property);
    let (item, plain) = property
        .split_once(':')
        .map_or((None, property), |(item, plain)| (Some(item), plain));
    let known = vocabulary::vocabulary().property(plain);
    let title = known.map_or_else(|| plain.to_owned(), |known| known.title.clone());
    item.map_or(title.clone(), |item| format!("{title}, item {item}"))
}

/// Words that can stand in a cell of a Markdown table.
fn cell(words: &str) -> String {
    on_one_line(words).replace('|', "\\|")
}

/// Writes a request as a new folder: all of it or nothing.
///
/// # Errors
/// When the folder is there already, or can't be written.
pub(crate) fn write(folder: &Path, request: &Request) -> Result<(), Faults> {
    if folder.exists() {
        return Err(
            Fault::of_file("this is there already", files::shown(folder))
                .help("name a folder that isn't: a request is written as a whole")
                .into(),
        );
    }
    let beside = files::with_ending(folder, &format!(".{}.unfinished", std::process::id()));
    let written = || -> Result<(), Fault> {
        files::make_folder(&beside)?;
        for (name, bytes) in &request.files {
            files::write(&beside.join(name), bytes)?;
        }
        files::rename(&beside, folder)
    };
    written().map_err(|fault| {
        let _ = std::fs::remove_dir_all(&beside);
        fault.into()
    })
}
