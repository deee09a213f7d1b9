//! What was understood of some files, and what taking them would change.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use listing::confirm::{Overlay, confirm};
use listing::{Confidence, WarningKind};
use paper::NoteKind;
use shelf::{Document, Named, Which, which};
use site::import::{File, Import, ImportError, Understood, import, understood};
use site::{GoesBy, Project};
use store::attachments::Attached;
use store::project::Proposal;
use store::records::ListingRecord;
use store::{Key, Kind, Owner};

use super::arriving::OnDisk;
use super::waiting::Lot;
use crate::desk::Desk;
use crate::listings::{Heading, working};
use crate::trouble::Trouble;

/// What the file of a confirmation is called: its listing's name, and this.
const CONFIRMED: &str = ".confirmed.toml";

/// What the names of tables, and of the building's file, end with.
const TABLES: [&str; 3] = ["csv", "xlsx", "toml"];

/// What was understood of a lot of files.
#[derive(Debug, Default)]
pub(crate) struct Look {
    /// The listings, by name.
    pub(crate) listings: Vec<Brought>,
    /// The tables, if there are any.
    pub(crate) tables: Option<Tables>,
    /// Files that are neither, and why.
    pub(crate) others: Vec<(String, String)>,
}

/// A listing that was brought.
#[derive(Debug)]
pub(crate) struct Brought {
    /// Its file.
    pub(crate) name: String,
    /// What was read; or why it can't be.
    pub(crate) read: Result<Heard, String>,
}

impl Brought {
    /// What it goes by; none where it can't be read.
    fn goes_by(&self) -> Option<GoesBy<'_>> {
        let heard = self.read.as_ref().ok()?;
        Some(GoesBy {
            file: &self.name,
            designation: &heard.designation,
            sha256: &heard.sha256,
        })
    }
}

/// What was read of a listing.
#[derive(Debug)]
pub(crate) struct Heard {
    /// SHA-256 of its document.
    sha256: String,
    /// Its designation; empty where none was found.
    pub(crate) designation: String,
    /// Its edition.
    pub(crate) edition: String,
    /// How many pages it has, when it is a PDF.
    pub(crate) pages: Option<usize>,
    /// How many clauses.
    pub(crate) clauses: usize,
    /// How many of them no rule could read: words for a person.
    pub(crate) prose: usize,
    /// The numbers that no rule could read, each in its words.
    pub(crate) unread: Vec<String>,
    /// Pages that are pictures, from 1.
    pub(crate) scanned: Vec<usize>,
    /// Nothing was found in it that looks like a listing.
    pub(crate) is_none: bool,
    /// How many of its clauses a confirmation that was brought with it covers, and how many of its entries have lost their words.
    pub(crate) confirmed: Option<(usize, usize)>,
    /// Where it stands to what the store has.
    pub(crate) standing: Standing,
    /// Other files in the store that go by the same designation.
    pub(crate) namesakes: Vec<String>,
    /// What taking it would change.
    pub(crate) proposal: Proposal,
}

/// Where a listing that was brought stands to what the store has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Standing {
    /// There is none of its name.
    New,
    /// It is there, byte for byte.
    Same,
    /// Another document of its name is there, with so many clauses that people have confirmed.
    InPlaceOf(usize),
}

/// Tables that were brought.
#[derive(Debug)]
pub(crate) struct Tables {
    /// What their columns mean.
    pub(crate) understood: Vec<Understood>,
    /// What taking them would change; or what is wrong with them.
    pub(crate) result: Result<Box<Changes>, ImportError>,
}

/// What taking some tables would change.
#[derive(Debug)]
pub(crate) struct Changes {
    /// What is worth knowing of them.
    pub(crate) notices: Vec<String>,
    /// The joints that aren't in the store yet.
    pub(crate) new: Vec<String>,
    /// The joints of which something is otherwise.
    pub(crate) changed: Vec<String>,
    /// How many joints are as they were.
    pub(crate) same: usize,
    /// What is in the store and in the tables no longer.
    pub(crate) gone: Vec<Key>,
    /// What stays as people entered it, and why.
    pub(crate) kept: Vec<(Key, &'static str)>,
    /// Names of listings that marks or joints have, and that no listing here goes by; or several do.
    pub(crate) homeless: Vec<String>,
    /// The change, with what is gone removed.
    pub(crate) proposal: Proposal,
}

impl Desk {
    /// What was understood of some files; nothing is changed.
    ///
    /// # Errors
    /// When they, or the store, can't be read.
    pub(crate) async fn understand(&self, lot: &Lot) -> Result<Look, Trouble> {
        self.catch_up().await?;
        let mut look = Look::default();
        let (mut overlays, mut tables) = (BTreeMap::new(), Vec::new());
        let mut listings = Vec::new();
        for file in &lot.arrived.files {
            let bytes = read(file)?;
            let ending = Path::new(&file.name)
                .extension()
                .and_then(|ending| ending.to_str())
                .unwrap_or_default();
            if let Some(of) = file.name.strip_suffix(CONFIRMED) {
                match Overlay::parse(&String::from_utf8_lossy(&bytes)) {
                    Ok(overlay) => drop(overlays.insert(of.to_owned(), overlay)),
                    Err(error) => look.others.push((file.name.clone(), error.to_string())),
                }
            } else if TABLES
                .iter()
                .any(|table| ending.eq_ignore_ascii_case(table))
            {
                tables.push((file.name.clone(), bytes));
            } else if shelf::is_listing(ending) {
                listings.push(file);
            } else {
                let why = "it is neither a listing (.txt, .pdf) nor a table (.csv, .xlsx) nor a building (.toml)";
                look.others.push((file.name.clone(), why.to_owned()));
            }
        }
        for file in listings {
            let overlay = overlays.remove(&file.name);
            look.listings.push(self.hear(file, overlay).await?);
        }
        for of in overlays.into_keys() {
            look.others.push((
                format!("{of}{CONFIRMED}"),
                format!("it is a confirmation of {of}, which wasn't brought with it"),
            ));
        }
        look.listings.sort_by(|a, b| a.name.cmp(&b.name));
        if !tables.is_empty() {
            look.tables = Some(self.tables(tables, &look.listings).await?);
        }
        Ok(look)
    }

    async fn hear(&self, file: &OnDisk, overlay: Option<Overlay>) -> Result<Brought, Trouble> {
        let name = file.name.clone();
        let bytes = read(file)?;
        let attached = Attached::of(&bytes);
        let document = {
            let name = name.clone();
            working(move || Document::read(&name, &bytes)).await?
        };
        let document = match document {
            Ok(document) => document,
            Err(why) => {
                return Ok(Brought {
                    name,
                    read: Err(why.to_string()),
                });
            }
        };
        let proposal = self
            .store
            .propose_listing(
                &name,
                &attached,
                &document.reading.header.designation,
                overlay.as_ref(),
            )
            .await?;
        let held = self
            .store
            .get::<ListingRecord>(&Key::new(Kind::Listing, name.as_str(), ""))
            .await?;
        let standing = match held {
            None => Standing::New,
            Some(held) if held.value.sha256 == attached.sha256 => Standing::Same,
            Some(_) => {
                let overlay = self.store.overlay(&name).await?;
                Standing::InPlaceOf(overlay.map_or(0, |overlay| overlay.entries.len()))
            }
        };
        let designation = document.reading.header.designation.clone();
        let headings = self.listings.headings();
        let namesakes = headings.iter().filter(|held| {
            held.file != name && !designation.is_empty() && held.designation == designation
        });
        let namesakes = namesakes.map(|held| held.file.clone()).collect();
        let read = Heard::of(document, overlay.as_ref(), standing, namesakes, proposal);
        Ok(Brought {
            name,
            read: Ok(read),
        })
    }

    async fn tables(
        &self,
        held: Vec<(String, Vec<u8>)>,
        listings: &[Brought],
    ) -> Result<Tables, Trouble> {
        let (understood, imported) = working(move || {
            let files: Vec<File<'_>> = held
                .iter()
                .map(|(name, bytes)| File { name, bytes })
                .collect();
            (understood(&files), import(&files))
        })
        .await?;
        let result = match imported {
            Ok(import) => Ok(Box::new(self.changes(import, listings).await?)),
            Err(error) => Err(error),
        };
        Ok(Tables { understood, result })
    }

    async fn changes(&self, import: Import, listings: &[Brought]) -> Result<Changes, Trouble> {
        let Import {
            mut project,
            notices,
        } = import;
        let headings = self.listings.headings();
        // A listing that was brought with the tables is the one that they name, and not the one whose place it takes.
        let brought = |file: &str| listings.iter().any(|one| one.name == file);
        let held = headings.iter().filter(|heading| !brought(&heading.file));
        let held = held.map(Heading::goes_by);
        let of_brought = listings.iter().filter_map(Brought::goes_by);
        project.say_of_documents(&held.chain(of_brought).collect::<Vec<_>>());
        let proposal = self.store.propose(&project).await?;
        let mut touched = BTreeSet::new();
        let mut fresh = BTreeSet::new();
        let mut gone = Vec::new();
        for edit in &proposal.edits {
            let key = &edit.key;
            match key.kind {
                Kind::Joint | Kind::Mark | Kind::Barrier if edit.after().is_none() => {
                    gone.push(key.clone());
                }
                Kind::Joint if edit.seen == 0 => drop(fresh.insert(key.name.clone())),
                Kind::Joint => drop(touched.insert(key.name.clone())),
                Kind::Fact => {
                    if let Ok(Owner::Joint(name)) = key.name.parse() {
                        touched.insert(name);
                    }
                }
                _ => {}
            }
        }
        let joints = || project.joints.iter().map(|joint| joint.name.clone());
        let new: Vec<String> = joints().filter(|name| fresh.contains(name)).collect();
        let is_changed = |name: &String| touched.contains(name) && !fresh.contains(name);
        let changed: Vec<String> = joints().filter(is_changed).collect();
        Ok(Changes {
            same: project.joints.len() - new.len() - changed.len(),
            homeless: self.homeless(&project, listings),
            notices: notices.iter().map(ToString::to_string).collect(),
            kept: proposal
                .kept
                .iter()
                .map(|kept| (kept.key.clone(), kept.why))
                .collect(),
            new,
            changed,
            gone,
            proposal,
        })
    }

    /// The listings' names in the tables which no listing of the store or of the lot goes by, or more than one.
    fn homeless(&self, project: &Project, listings: &[Brought]) -> Vec<String> {
        let brought = listings.iter().filter_map(|one| {
            Some((
                one.name.clone(),
                one.read.as_ref().ok()?.designation.clone(),
            ))
        });
        let mut here: BTreeMap<String, String> = brought.collect();
        for held in self.listings.headings().iter() {
            here.entry(held.file.clone())
                .or_insert_with(|| held.designation.clone());
        }
        let here: Vec<(&str, &str)> = here
            .iter()
            .map(|(file, designation)| (stem(file), designation.as_str()))
            .collect();
        let named: Vec<Named<'_>> = here
            .iter()
            .map(|(stem, designation)| Named { stem, designation })
            .collect();
        let marks = project
            .marks
            .iter()
            .filter_map(|mark| mark.listing.as_deref());
        let joints = project
            .joints
            .iter()
            .filter_map(|joint| joint.listing.as_deref());
        let meant: BTreeSet<&str> = marks.chain(joints).collect();
        let is_homeless = |name: &&str| !matches!(which(name, &named), Which::One(_));
        meant
            .into_iter()
            .filter(is_homeless)
            .map(str::to_owned)
            .collect()
    }
}

impl Heard {
    fn of(
        document: Document,
        overlay: Option<&Overlay>,
        standing: Standing,
        namesakes: Vec<String>,
        proposal: Proposal,
    ) -> Self {
        let pages = document.paper.as_ref().map(|paper| paper.pages.len());
        let notes = document.paper.iter().flat_map(|paper| &paper.notes);
        let scanned =
            notes.filter(|note| matches!(note.kind, NoteKind::Scanned | NoteKind::BehindScan));
        let scanned: BTreeSet<usize> = scanned.map(|note| note.place.page).collect();
        let reading = document.reading;
        let of_kind = |kind: WarningKind| {
            let warnings = reading.warnings.iter();
            warnings.filter(move |warning| warning.kind == kind)
        };
        let prose = reading
            .clauses
            .iter()
            .filter(|clause| clause.confidence == Confidence::Prose);
        Self {
            sha256: reading.source.sha256.clone(),
            designation: reading.header.designation.clone(),
            edition: reading.header.edition.clone(),
            clauses: reading.clauses.len(),
            prose: prose.count(),
            unread: of_kind(WarningKind::UnreadNumber)
                .map(|warning| warning.words.clone())
                .collect(),
            is_none: of_kind(WarningKind::NotAListing).next().is_some(),
            confirmed: overlay.map(|overlay| {
                let laid = confirm(reading.clone(), overlay);
                let entries = overlay.entries.len();
                (entries - laid.lost.len(), laid.lost.len())
            }),
            pages,
            scanned: scanned.into_iter().collect(),
            standing,
            namesakes,
            proposal,
        }
    }
}

/// A file's name without its ending.
pub(crate) fn stem(file: &str) -> &str {
    file.rsplit_once('.').map_or(file, |(stem, _)| stem)
}

/// A file's bytes.
pub(super) fn read(file: &OnDisk) -> Result<Vec<u8>, Trouble> {
    std::fs::read(&file.path)
        .map_err(|error| Trouble::Broken(format!("{} isn't there any more: {error}", file.name)))
}
