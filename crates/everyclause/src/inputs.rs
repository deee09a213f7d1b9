//! Which files make a project.

use std::path::{Path, PathBuf};

use clap::Args;
use site::import::{File, Import, import};

use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::Shelf;
use crate::stored::Stored;

/// The most bytes a table is read with; the import has its own, lower limit for what it takes.
const MOST_BYTES: u64 = 256 << 20;

/// The files of a project.
#[derive(Debug, Clone, Args)]
#[command(next_help_heading = "The project's files")]
pub(crate) struct Inputs {
    /// A folder with everything: schedule, marks, barriers and judgments as .csv or .xlsx, building.toml, and the
    /// folder listings
    #[arg(long, value_name = "DIR")]
    project: Option<PathBuf>,
    /// A store that keeps all of it, in place of the files: a file, or a database's URL (see `everyclause keep`)
    #[arg(
        long,
        value_name = "PLACE",
        conflicts_with_all = ["project", "schedule", "listings", "marks", "barriers", "judgments", "building"]
    )]
    store: Option<String>,
    /// The store's attachments, unless they are in the folder beside its file
    #[arg(long, value_name = "PLACE", requires = "store")]
    attachments: Option<String>,
    /// The joints: one row a joint, one column a property (CSV or XLSX)
    #[arg(long, value_name = "FILE")]
    schedule: Option<PathBuf>,
    /// The folder of listings, as plain text or PDF
    #[arg(long, value_name = "DIR")]
    listings: Option<PathBuf>,
    /// The types of joint and their listings (CSV or XLSX)
    #[arg(long, value_name = "FILE")]
    marks: Option<PathBuf>,
    /// The rated walls and floors that the joints lie in (CSV or XLSX)
    #[arg(long, value_name = "FILE")]
    barriers: Option<PathBuf>,
    /// What people have decided about words that no number settles (CSV or XLSX)
    #[arg(long, value_name = "FILE")]
    judgments: Option<PathBuf>,
    /// The building: name, storeys, edition of the code (TOML)
    #[arg(long, value_name = "FILE")]
    building: Option<PathBuf>,
}

impl Inputs {
    /// The inputs of a folder that holds everything.
    pub(crate) const fn of_project(folder: PathBuf) -> Self {
        Self {
            project: Some(folder),
            store: None,
            attachments: None,
            schedule: None,
            listings: None,
            marks: None,
            barriers: None,
            judgments: None,
            building: None,
        }
    }

    /// The project and its listings.
    ///
    /// # Errors
    /// When a file can't be read, or anything in the tables is wrong: all of it at once.
    pub(crate) fn open(&self) -> Result<(Import, Shelf), Faults> {
        if let Some(store) = &self.store {
            let stored = Stored {
                store: store.clone(),
                attachments: self.attachments.clone(),
            };
            return Ok(stored.project()?);
        }
        let import = self.import()?;
        Ok((import, Shelf::open(&self.listings()?)?))
    }

    /// Whether a project is named.
    pub(crate) const fn has_project(&self) -> bool {
        self.project.is_some() || self.schedule.is_some() || self.store.is_some()
    }

    /// Whether they are a store and not files.
    pub(crate) const fn is_a_store(&self) -> bool {
        self.store.is_some()
    }

    /// The folder of listings.
    ///
    /// # Errors
    /// When none is given.
    pub(crate) fn listings(&self) -> Result<PathBuf, Fault> {
        if self.is_a_store() {
            return Err(Fault::of_command(
                "this command reads listings from a folder, and a store is none",
            )
            .help("give the files: `--project DIR`, or `--schedule FILE` and `--listings DIR`"));
        }
        let of_project = || self.project.as_ref().map(|folder| folder.join("listings"));
        self.listings.clone().or_else(of_project).ok_or_else(|| {
            Fault::of_command("no folder of listings is given")
                .help("add `--listings DIR`, or `--project DIR`")
        })
    }

    /// The project, without its listings.
    ///
    /// # Errors
    /// When no project is named, a file can't be read, or anything in the tables is wrong: all of it at once.
    pub(crate) fn import(&self) -> Result<Import, Faults> {
        if !self.has_project() {
            return Err(Fault::of_command("no project is given")
                .help("add `--project DIR`, or `--schedule FILE` and `--listings DIR`")
                .into());
        }
        if self.is_a_store() {
            return Ok(self.open()?.0);
        }
        let mut paths: Vec<PathBuf> = Vec::new();
        for (name, given) in [
            ("schedule", &self.schedule),
            ("marks", &self.marks),
            ("barriers", &self.barriers),
            ("judgments", &self.judgments),
        ] {
            let path = match (given, &self.project) {
                (Some(path), _) => Some(path.clone()),
                (None, Some(folder)) => table_in(folder, name)?,
                (None, None) => None,
            };
            // One workbook may hold several of the tables.
            paths.extend(path.filter(|path| !paths.contains(path)));
        }
        let of_project = || {
            self.project
                .as_ref()
                .map(|folder| folder.join("building.toml"))
                .filter(|path| path.exists())
        };
        let building = self.building.clone().or_else(of_project);
        let mut held = Vec::new();
        for path in &paths {
            held.push((
                name_among(path, &paths),
                files::read(path, "a table", MOST_BYTES)?,
            ));
        }
        if let Some(path) = building {
            let shown = files::shown(&path);
            // The import tells a building by its ending.
            let name = if shown.to_lowercase().ends_with(".toml") {
                shown
            } else {
                shown + " (as building.toml)"
            };
            held.push((name, files::read(&path, "a building", MOST_BYTES)?));
        }
        let files: Vec<File<'_>> = held
            .iter()
            .map(|(name, bytes)| File { name, bytes })
            .collect();
        let import = import(&files).map_err(|error| Faults {
            faults: error.problems.iter().map(Fault::from).collect(),
            closing: Some(closing(error.problems.len() + error.left_out)),
        })?;
        if import.project.joints.is_empty() {
            let schedule = paths
                .first()
                .map(|path| files::shown(path))
                .unwrap_or_default();
            return Err(Fault::of_file("there are no joints in the schedule", schedule)
                .help("a schedule's first row names its columns, `joint` among them; every row below is a joint")
                .into());
        }
        Ok(import)
    }
}

/// A table's name where its cells are cited: the file's name, or the path where two files have one name.
fn name_among(path: &Path, paths: &[PathBuf]) -> String {
    let shares = paths
        .iter()
        .filter(|other| other.file_name() == path.file_name())
        .count()
        > 1;
    match path.file_name() {
        Some(name) if !shares => files::shown(Path::new(name)),
        _ => files::shown(path),
    }
}

fn closing(count: usize) -> String {
    let (things, them) = if count == 1 {
        ("problem", "it")
    } else {
        ("problems", "them")
    };
    format!("{count} {things} in the tables; nothing was checked. Put {them} right and try again.")
}

/// A project's table of that name, as CSV or as a workbook; the schedule must be there.
fn table_in(folder: &Path, name: &str) -> Result<Option<PathBuf>, Fault> {
    if !folder.is_dir() {
        return files::in_folder(folder, "a project").map(|_| None);
    }
    let found: Vec<PathBuf> = ["csv", "xlsx"]
        .iter()
        .map(|ending| folder.join(format!("{name}.{ending}")))
        .filter(|path| path.exists())
        .collect();
    match found.as_slice() {
        [] if name == "schedule" => Err(Fault::of_file(
            "there is no schedule in the folder",
            files::shown(folder),
        )
        .help("a project's joints stand in `schedule.csv` or `schedule.xlsx`")),
        [] => Ok(None),
        [one] => Ok(Some(one.clone())),
        _ => Err(Fault::of_file(
            format!("there are `{name}.csv` and `{name}.xlsx`"),
            files::shown(folder),
        )
        .help(format!(
            "move one away, or say which counts: `--{name} FILE`"
        ))),
    }
}
