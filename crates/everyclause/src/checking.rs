//! Every joint of a project against its listing, as one value that tables and JSON show.

use std::collections::BTreeMap;
use std::time::{Duration, Instant};

use conformance::{JointResult, Overall, Question, Standing, Subject, questions};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use schemars::JsonSchema;
use serde::Serialize;
use site::import::Import;
use site::{Joint, Project};

use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::{Held, Shelf, State};

/// What a check came to.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Check {
    /// The building's name; empty where none was given.
    pub(crate) building: String,
    /// The edition of the building code, as the project states it.
    pub(crate) code_edition: Option<String>,
    /// How many joints came to what.
    pub(crate) totals: Totals,
    /// The listings that joints were checked against, by file.
    pub(crate) listings: Vec<ListingUsed>,
    /// The joints, in the order of the schedule.
    pub(crate) joints: Vec<Checked>,
    /// What to ask whom so that nothing stays open.
    pub(crate) questions: Vec<Question>,
    /// What is worth knowing of the files.
    pub(crate) notices: Vec<site::Notice>,
    /// What must stand wherever results are shown.
    pub(crate) standing_lines: Vec<String>,
}

/// How many joints came to what.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub(crate) struct Totals {
    /// All joints.
    pub(crate) joints: usize,
    /// Every clause that applies is met or judged.
    pub(crate) conform: usize,
    /// At least one clause isn't met.
    pub(crate) do_not_conform: usize,
    /// Nothing is known to be unmet, but at least one clause is open, or there is no listing to check against.
    pub(crate) open: usize,
    /// Of the open ones: those without a listing.
    pub(crate) without_listing: usize,
    /// Joints whose result is provisional, as their listing isn't confirmed.
    pub(crate) provisional: usize,
}

/// A listing that joints were checked against.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub(crate) struct ListingUsed {
    /// Its file's name without the ending, as marks name it.
    pub(crate) name: String,
    /// Its file.
    pub(crate) file: String,
    /// Its designation.
    pub(crate) designation: String,
    /// Its edition, as written.
    pub(crate) edition: String,
    /// SHA-256 of its bytes.
    pub(crate) sha256: String,
    /// Whether its reading is confirmed.
    pub(crate) standing: Standing,
    /// How many of its clauses a person has confirmed or corrected.
    pub(crate) confirmed: usize,
    /// How many clauses it has.
    pub(crate) clauses: usize,
    /// How many joints were checked against it.
    pub(crate) joints: usize,
}

/// A joint, where it is, and what was found.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Checked {
    /// The joint.
    pub(crate) joint: String,
    /// Its mark.
    pub(crate) mark: String,
    /// Its mark in words.
    pub(crate) title: String,
    /// Its storey.
    pub(crate) storey: Option<String>,
    /// The barrier it lies in.
    pub(crate) barrier: Option<String>,
    /// Its place on the grid.
    pub(crate) grid: Option<String>,
    /// The listing it was checked against, by its file's name without the ending.
    pub(crate) listing: Option<String>,
    /// What was found; nothing when there is no listing to check against.
    pub(crate) result: Option<JointResult>,
}

impl Checked {
    /// What the joint comes to; open without a listing.
    pub(crate) fn overall(&self) -> Overall {
        self.result
            .as_ref()
            .map_or(Overall::Open, |result| result.overall)
    }

    /// Where it is, in a few words.
    pub(crate) fn place(&self) -> String {
        let parts = [&self.storey, &self.grid, &self.barrier];
        parts
            .into_iter()
            .flatten()
            .map(String::as_str)
            .collect::<Vec<_>>()
            .join(" ")
    }
}

/// What must stand wherever results are shown.
pub(crate) const STANDING_LINES: [&str; 2] = [
    "A joint that conforms matches every clause of its listing as read and recorded here: no more is said of it.",
    "Approval belongs to the authority having jurisdiction; local codes and licensed practice decide.",
];

/// Checks every joint of a project.
///
/// # Errors
/// When a mark names a listing that isn't there, or that several are.
pub(crate) fn check(import: &Import, shelf: &Shelf) -> Result<Check, Faults> {
    let project = &import.project;
    let listings = Listings::of(project, shelf)?;
    let mut progress = Progress::of(project.joints.len());
    let mut joints = Vec::new();
    for joint in &project.joints {
        joints.push(checked(project, joint, listings.of_joint(project, joint)));
        progress.step();
    }
    progress.finish();
    let results = joints.iter().filter_map(|joint| joint.result.as_ref());
    Ok(Check {
        building: project.building.name.clone(),
        code_edition: project.building.code_edition.clone(),
        totals: Totals::of(&joints),
        listings: used(shelf, &joints),
        questions: questions(results),
        notices: import.notices.clone(),
        standing_lines: STANDING_LINES
            .iter()
            .map(|line| (*line).to_owned())
            .collect(),
        joints,
    })
}

/// Checks one joint of a project; also gives the listing it was checked against, where one is named.
///
/// # Errors
/// When the schedule has no such joint, or as [`check`] does.
pub(crate) fn check_one<'s>(
    import: &Import,
    shelf: &'s Shelf,
    name: &str,
) -> Result<(Checked, Option<&'s Held>), Faults> {
    let project = &import.project;
    let in_capitals_or_not = |joint: &&Joint| joint.name.eq_ignore_ascii_case(name.trim());
    let joint = project
        .joint(name)
        .or_else(|| project.joints.iter().find(in_capitals_or_not));
    let Some(joint) = joint else {
        return Err(unknown(name, project).into());
    };
    let held = match project.listing(joint) {
        Some(listing) => shelf.held.get(shelf.find(listing)?),
        None => None,
    };
    Ok((checked(project, joint, held), held))
}

fn unknown(name: &str, project: &Project) -> Fault {
    let fault = Fault::of_command(format!("the schedule has no joint `{name}`"));
    match files::nearest(name, project.joints.iter().map(|joint| joint.name.clone())) {
        Some(near) => fault.help(format!("is `{near}` meant?")),
        None => fault.help("give the joint's name as it stands in the column `joint`"),
    }
}

fn checked(project: &Project, joint: &Joint, held: Option<&Held>) -> Checked {
    Checked {
        joint: joint.name.clone(),
        mark: joint.mark.clone(),
        title: project
            .mark(&joint.mark)
            .map(|mark| mark.title.clone())
            .unwrap_or_default(),
        storey: joint.storey.clone(),
        barrier: joint.barrier.clone(),
        grid: joint.grid.clone(),
        listing: held.map(|held| held.stem.clone()),
        result: held.map(|held| result(project, joint, held)),
    }
}

/// A confirmed listing gives a final result, a draft a provisional one.
fn result(project: &Project, joint: &Joint, held: &Held) -> JointResult {
    let subject = Subject::of(project, joint);
    match &held.state {
        State::Draft(reading) => conformance::check_draft(reading, &subject).into(),
        State::Confirmed(listing) => conformance::check_confirmed(listing, &subject).into(),
    }
}

/// The listing of each name that joints are to be built to.
struct Listings<'a>(BTreeMap<&'a str, &'a Held>);

impl<'a> Listings<'a> {
    fn of(project: &'a Project, shelf: &'a Shelf) -> Result<Self, Faults> {
        let mut found = BTreeMap::new();
        let mut faults: BTreeMap<&str, (Fault, Vec<&str>)> = BTreeMap::new();
        for joint in &project.joints {
            let Some(name) = project.listing(joint) else {
                continue;
            };
            if found.contains_key(name) {
                continue;
            }
            match shelf.find(name) {
                Ok(at) => {
                    found.extend(shelf.held.get(at).map(|held| (name, held)));
                }
                Err(fault) => {
                    let (_, marks) = faults.entry(name).or_insert_with(|| (fault, Vec::new()));
                    if !marks.contains(&joint.mark.as_str()) {
                        marks.push(&joint.mark);
                    }
                }
            }
        }
        if faults.is_empty() {
            return Ok(Self(found));
        }
        let named = faults.into_values().map(|(mut fault, marks)| {
            let marks: Vec<String> = marks.iter().map(|mark| format!("`{mark}`")).collect();
            fault.problem = format!("{}; {} so", fault.problem, says(&marks));
            fault
        });
        // A listing that couldn't be read is the likely cause of one that isn't found.
        let faults = named.chain(shelf.unread.iter().cloned()).collect();
        Err(Faults {
            faults,
            closing: Some("Nothing was checked.".to_owned()),
        })
    }

    fn of_joint(&self, project: &Project, joint: &Joint) -> Option<&'a Held> {
        self.0.get(project.listing(joint)?).copied()
    }
}

fn says(marks: &[String]) -> String {
    let verb = if marks.len() == 1 { "mark" } else { "marks" };
    let says = if marks.len() == 1 { "says" } else { "say" };
    format!("{verb} {} {says}", crate::show::words::listed(marks))
}

impl Totals {
    fn of(joints: &[Checked]) -> Self {
        let mut totals = Self {
            joints: joints.len(),
            ..Self::default()
        };
        for joint in joints {
            match joint.overall() {
                Overall::Conforms => totals.conform += 1,
                Overall::DoesNotConform => totals.do_not_conform += 1,
                Overall::Open => totals.open += 1,
            }
            match &joint.result {
                None => totals.without_listing += 1,
                Some(result) => {
                    totals.provisional += usize::from(result.standing == Standing::Provisional);
                }
            }
        }
        totals
    }
}

fn used(shelf: &Shelf, joints: &[Checked]) -> Vec<ListingUsed> {
    let count = |held: &Held| {
        joints
            .iter()
            .filter(|joint| joint.listing.as_ref() == Some(&held.stem))
            .count()
    };
    let with_joints = shelf
        .held
        .iter()
        .map(|held| (held, count(held)))
        .filter(|(_, joints)| *joints > 0);
    with_joints
        .map(|(held, joints)| {
            let reading = held.reading();
            ListingUsed {
                name: held.stem.clone(),
                file: held.file.clone(),
                designation: reading.header.designation.clone(),
                edition: reading.header.edition.clone(),
                sha256: reading.source.sha256.clone(),
                standing: match held.state {
                    State::Draft(_) => Standing::Provisional,
                    State::Confirmed(_) => Standing::Final,
                },
                confirmed: reading
                    .clauses
                    .iter()
                    .filter(|clause| clause.status != listing::Status::Draft)
                    .count(),
                clauses: reading.clauses.len(),
                joints,
            }
        })
        .collect()
}

/// How far long work has come, on standard error when that is a terminal.
struct Progress {
    since: Instant,
    of: usize,
    done: usize,
    bar: Option<ProgressBar>,
}

/// Work that takes less shows no progress.
const PATIENCE: Duration = Duration::from_millis(400);

impl Progress {
    fn of(of: usize) -> Self {
        Self {
            since: Instant::now(),
            of,
            done: 0,
            bar: None,
        }
    }

    fn step(&mut self) {
        self.done += 1;
        if self.bar.is_none() && self.since.elapsed() > PATIENCE {
            let bar = ProgressBar::with_draw_target(
                u64::try_from(self.of).ok(),
                ProgressDrawTarget::stderr(),
            );
            if let Ok(style) =
                ProgressStyle::with_template("{pos} of {len} joints checked {wide_bar}")
            {
                bar.set_style(style);
            }
            self.bar = Some(bar);
        }
        if let (Some(bar), Ok(done)) = (&self.bar, u64::try_from(self.done)) {
            bar.set_position(done);
        }
    }

    fn finish(self) {
        if let Some(bar) = self.bar {
            bar.finish_and_clear();
        }
    }
}
