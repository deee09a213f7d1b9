//! From a project's files to a [`Project`].
//!
//! Tables are CSV files or sheets of an XLSX workbook; the building is a TOML file. A table's first row names its
//! columns, and its key column says what it is:
//!
//! | table | key column | other columns |
//! |---|---|---|
//! | marks | `mark` | `title`, `listing`, properties |
//! | joints | `joint` | `mark`, `listing`, `storey`, `barrier`, `grid`, `length`, properties |
//! | barriers | `barrier` | `kind`, `rating`, `smoke_barrier`, `title`, the barrier's properties |
//! | judgments | `joint_or_mark` | `listing`, `item`, `words`, `decision`, `by`, `when`, `basis` |
//!
//! **Properties** are columns named as the vocabulary names them, `packing.density`. A quantity needs its unit
//! (`4 pcf`), but a count or a gauge doesn't; a product is `Maker | Product`; yes and no may be written `y`, `n`, `x`, `true`, `false`.
//!
//! **Options.** Which of a listing's options is built stands in columns of marks or joints named `option.` and what the
//! option is of: `option.configuration` is `Configuration A`, `option.3B` is `3B1`, `option.3C` is `no`. Values are kept as written.
//!
//! **A listing's own.** Which option is built, and what is known of the part that an item describes (`2A:runner.gauge`), is said of one listing:
//! in another the same item may be something else. It is said of the listing that its row names in the column `listing`, or of the one that the
//! heading names after an `@`: `option.3B@hw-d-0412-ed4`, `2A:runner.gauge@hw-d-0412-ed4`. Where neither does, it counts for no listing.
//!
//! **Sources.** Where the row under the headings begins with `#source`, it says where the values of each column come
//! from; a cell may say otherwise in square brackets (`4 pcf [submittal 07 84 43-05]`).
//!
//! **What isn't known.** An empty cell is no fact: a joint then has what is known of its mark. `-`, `n/a`, `?`, `TBD` and `unknown` are no
//! fact either; in a joint's row they say moreover that it isn't known *here*, so that what is known of the mark doesn't count.
//!
//! A column whose heading begins with `#` is the project's own and isn't read.
//!
//! Either everything is imported, or nothing is and every problem is named with its cell.

mod barriers;
mod building;
mod column;
mod csv;
mod encoding;
mod entered;
mod joints;
mod judgments;
mod kind;
mod limits;
mod links;
mod marks;
mod members;
mod names;
mod problem;
mod reading;
mod room;
mod rows;
mod sheet;
mod table;
mod understood;
mod xlsx;

pub use entered::{Refusal, entered, entered_as};
pub use members::Members;
pub use problem::{ImportError, Notice, Problem};
pub use understood::{Column, Means, Understood, understood};

use crate::model::{Cell, Project};
use kind::Kind;
use limits::{MOST_BYTES, MOST_TOLD};
use links::Given;
use names::Names;
use problem::{Findings, Wrong};
use room::Room;
use sheet::Sheet;
use table::Table;

/// A file of the project: its name, by which problems refer to it, and its bytes.
#[derive(Debug, Clone, Copy)]
pub struct File<'b> {
    /// The name. One that ends with `.toml` is the building; tables are told by their contents.
    pub name: &'b str,
    /// The contents.
    pub bytes: &'b [u8],
}

/// An imported project.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Import {
    /// The project.
    pub project: Project,
    /// What is worth knowing of its files.
    pub notices: Vec<Notice>,
}

/// Imports a project from its files, which may be any of: a building, tables as CSV, workbooks of tables.
/// Tables of one kind are joined. A schedule of joints alone will do.
///
/// # Errors
/// When anything in the files is wrong: every problem, each with its place and what would be right.
///
/// ```
/// use site::import::{File, import};
/// let schedule = "joint,mark,joint.width\n#source,,drawing A-801\nJ-1,HW1,3/4 in.\n";
/// let file = File { name: "schedule.csv", bytes: schedule.as_bytes() };
/// let project = import(&[file]).unwrap().project;
/// let facts = project.facts(&project.joints[0]);
/// assert_eq!(facts.get("joint.width").unwrap().value.to_string(), "3/4 in.");
///
/// let wrong = File { name: "schedule.csv", bytes: b"joint,mark,joint.width\nJ-1,HW1,0.75\n" };
/// let error = import(&[wrong]).unwrap_err().problems[0].to_string();
/// assert_eq!(
///     error,
///     "schedule.csv, cell C2: `0.75` has no unit; joint.width is a length; \
///      write for example `0.75 in.` or `0.75 mm`"
/// );
/// ```
pub fn import(files: &[File<'_>]) -> Result<Import, ImportError> {
    let mut findings = Findings::default();
    let (buildings, files): (Vec<_>, Vec<_>) = files
        .iter()
        .partition(|file| file.name.to_lowercase().ends_with(".toml"));
    let building = building::of_files(&buildings, &mut findings);
    let mut room = Room::default();
    let sheets: Vec<Sheet> = files
        .iter()
        .flat_map(|file| sheets(file, &mut room, &mut findings))
        .collect();
    let mut tables: Vec<Table<'_>> = sheets
        .iter()
        .filter_map(|sheet| Table::of(sheet, &mut findings))
        .collect();
    leave_out_too_much(&mut tables, &mut findings);
    let of_kind = |kind| tables.iter().filter(move |table| table.kind == kind);

    let mut names = Names::default();
    let barriers = barriers::read(of_kind(Kind::Barriers), &mut names, &mut findings);
    let marks = marks::read(of_kind(Kind::Marks), &mut names, &mut findings);
    let given = Given {
        marks: of_kind(Kind::Marks).next().is_some(),
        barriers: of_kind(Kind::Barriers).next().is_some(),
    };
    let joints = joints::read(
        of_kind(Kind::Joints),
        given.marks,
        &mut names,
        &mut findings,
    );
    let mut project = Project {
        building,
        barriers,
        marks,
        joints,
        judgments: Vec::new(),
    };
    links::check(&mut project, given, &mut names, &mut findings);
    project.judgments = judgments::read(of_kind(Kind::Judgments), &names, &mut findings);
    let notices = findings.finish()?;
    Ok(Import { project, notices })
}

/// Leaves out tables that would tell more than fits, before anything is made of them.
fn leave_out_too_much(tables: &mut Vec<Table<'_>>, findings: &mut Findings) {
    let mut told = 0_usize;
    tables.retain(|table| {
        told = told.saturating_add(table.told());
        let fits = told <= MOST_TOLD;
        if !fits {
            let message = format!(
                "with this table more than {MOST_TOLD} properties of joints, marks and barriers are told"
            );
            let help = "bring the tables in several parts";
            findings.problem(table.sheet.place(), "", Wrong::new(message, help));
        }
        fits
    });
}

/// The tables of a file, told by its first bytes.
fn sheets(file: &File<'_>, room: &mut Room, findings: &mut Findings) -> Vec<Sheet> {
    let place = || Cell {
        file: file.name.to_owned(),
        sheet: None,
        row: 0,
        column: String::new(),
    };
    findings.begin(place());
    if let Some(wrong) = unreadable(file.bytes) {
        findings.problem(place(), "", wrong);
        return Vec::new();
    }
    if file.bytes.starts_with(b"PK\x03\x04") {
        let sheets = xlsx::sheets(file.name, file.bytes, room, findings);
        for sheet in &sheets {
            findings.begin(sheet.place());
        }
        return sheets;
    }
    match encoding::text(file.bytes) {
        Ok(text) => {
            if text.assumed {
                let message =
                    "the file isn't in UTF-8 and was read as Windows-1252; check its ½, ° and µ";
                findings.notice(place(), message);
            }
            csv::sheet(file.name, &text.text, room, findings)
                .into_iter()
                .collect()
        }
        Err(wrong) => {
            findings.problem(place(), "", wrong);
            Vec::new()
        }
    }
}

/// Why a file can't be a table, as far as its size and first bytes tell.
fn unreadable(bytes: &[u8]) -> Option<Wrong> {
    let save = "save the table as CSV in UTF-8, or as an .xlsx workbook";
    if bytes.iter().all(u8::is_ascii_whitespace) {
        return Some(Wrong::new(
            "the file is empty",
            "give a table whose first row names its columns",
        ));
    }
    if bytes.len() > MOST_BYTES {
        let message = format!("the file is larger than {} MB", MOST_BYTES >> 20);
        return Some(Wrong::new(message, "split it into several"));
    }
    let other = [
        (&b"\xd0\xcf\x11\xe0"[..], "an old or a protected workbook"),
        (b"%PDF", "a PDF"),
    ];
    let (_, what) = other.iter().find(|(start, _)| bytes.starts_with(start))?;
    Some(Wrong::new(format!("the file is {what}"), save))
}
