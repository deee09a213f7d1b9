//! The listings of a folder, each with its confirmation, and which of them a mark means.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use listing::confirm::{Entry, Overlay};
use listing::{Reading, Span};
use paper::Paper;
pub(crate) use shelf::State;
use shelf::{Document, Laid, Named, Which, which};

use crate::fault::{Fault, Place};
use crate::files;
use crate::show::words::listed;
use crate::source::{self, MOST_BYTES};

/// What the name of a confirmation ends with.
const CONFIRMED: &str = ".confirmed.toml";

/// A listing with its text and its confirmation.
#[derive(Debug, Clone)]
pub(crate) struct Held {
    /// Its file, as shown.
    pub(crate) file: String,
    /// Its file's name without the ending.
    pub(crate) stem: String,
    /// Its text, into which spans point.
    pub(crate) text: String,
    /// The pages that the text was taken from, when the file is a PDF.
    pub(crate) paper: Option<Paper>,
    /// The reading, confirmed or not.
    pub(crate) state: State,
    /// The confirmation's file, where there is one.
    pub(crate) confirmation: Option<Confirmation>,
}

/// A confirmation as laid over a reading.
#[derive(Debug, Clone)]
pub(crate) struct Confirmation {
    /// Its file, as shown.
    pub(crate) file: String,
    /// What it holds.
    pub(crate) overlay: Overlay,
    /// The reading without it.
    as_read: Box<Reading>,
    /// Entries whose words the listing doesn't have any more.
    pub(crate) lost: Vec<Entry>,
    /// Whether it was made on another edition of the source.
    pub(crate) other_source: bool,
}

impl Held {
    /// Reads a listing and lays its confirmation over it.
    ///
    /// # Errors
    /// When the file can't be read, is neither text nor a PDF with text, or its confirmation can't be read.
    pub(crate) fn open(path: &Path) -> Result<Self, Fault> {
        let source = source::read(path)?;
        let overlay = overlay(path)?.map(|overlay| (files::shown(&overlay_path(path)), overlay));
        Ok(Self::of(source, path, overlay))
    }

    /// A listing from its path as read, with its confirmation and where that lies.
    fn of(document: Document, path: &Path, overlay: Option<(String, Overlay)>) -> Self {
        let Document {
            reading,
            text,
            paper,
        } = document;
        let (state, confirmation) = match overlay {
            None => (State::Draft(Box::new(reading)), None),
            Some((file, overlay)) => {
                let as_read = Box::new(reading.clone());
                let laid = Laid::over(reading, &overlay);
                let confirmation = Confirmation {
                    file,
                    overlay,
                    as_read,
                    lost: laid.lost,
                    other_source: laid.other_source,
                };
                (laid.state, Some(confirmation))
            }
        };
        let stem = path
            .file_stem()
            .map(|stem| files::shown(Path::new(stem)))
            .unwrap_or_default();
        Self {
            file: files::shown(path),
            stem,
            text,
            paper,
            state,
            confirmation,
        }
    }

    /// The reading, confirmed or not.
    pub(crate) fn reading(&self) -> &Reading {
        &self.state
    }

    /// The reading as the reader left it, whatever people have corrected.
    pub(crate) fn as_read(&self) -> &Reading {
        self.confirmation
            .as_ref()
            .map_or_else(|| self.reading(), |confirmation| &confirmation.as_read)
    }

    /// What people have decided of its clauses.
    pub(crate) fn decisions(&self) -> &[Entry] {
        self.confirmation
            .as_ref()
            .map_or(&[], |confirmation| &confirmation.overlay.entries)
    }

    /// Its designation with its edition, for telling it apart.
    fn described(&self) -> String {
        let header = &self.reading().header;
        let edition = if header.edition.is_empty() {
            "no edition stated"
        } else {
            &header.edition
        };
        format!("`{}` is {} ({edition})", self.stem, header.designation)
    }
}

/// Where a listing's confirmation lies.
pub(crate) fn overlay_path(listing: &Path) -> PathBuf {
    files::with_ending(listing, CONFIRMED)
}

/// A listing's confirmation, where there is one.
fn overlay(listing: &Path) -> Result<Option<Overlay>, Fault> {
    let path = overlay_path(listing);
    // A path that can't be looked at is tried, so that its fault is told and not passed over.
    if matches!(path.try_exists(), Ok(false)) {
        return Ok(None);
    }
    let bytes = files::read(&path, "a confirmation", MOST_BYTES)?;
    let shown = files::shown(&path);
    let keep = "put it right by hand, or move it away and confirm anew; it was left as it is";
    let text = String::from_utf8(bytes)
        .map_err(|_| Fault::of_file("the confirmation isn't in UTF-8", shown.clone()).help(keep))?;
    match Overlay::parse(&text) {
        Ok(overlay) => Ok(Some(overlay)),
        Err(error) => Err(at_its_place(&error.to_string(), &shown, &text).help(keep)),
    }
}

/// A confirmation's error, at the line and column that it names.
fn at_its_place(error: &str, file: &str, text: &str) -> Fault {
    let why = error
        .lines()
        .rev()
        .map(str::trim)
        .find(|line| !line.is_empty())
        .unwrap_or_default();
    let problem = format!("the confirmation can't be read: {why}");
    let number = |after: &str| -> Option<usize> {
        let (_, rest) = error.split_once(after)?;
        rest.split(|c: char| !c.is_ascii_digit())
            .next()?
            .parse()
            .ok()
    };
    match (number("at line "), number("column ")) {
        (Some(line), Some(column)) => {
            let above: usize = text
                .split_inclusive('\n')
                .take(line.saturating_sub(1))
                .map(str::len)
                .sum();
            let start = above + column.saturating_sub(1);
            let end = text
                .get(start..)
                .and_then(|rest| rest.lines().next())
                .map_or(start, |line| start + line.len());
            Fault::of_words(problem, file, text, Span::new(start, end))
        }
        _ => Fault::of_file(problem, file),
    }
}

/// The listings of a folder.
#[derive(Debug)]
pub(crate) struct Shelf {
    /// Where they lie, as shown.
    folder: String,
    /// The listings, by file name.
    pub(crate) held: Vec<Held>,
    /// Files that couldn't be read as a listing.
    pub(crate) unread: Vec<Fault>,
}

impl Shelf {
    /// The listings by their files' names without the ending, as marks name them.
    pub(crate) fn by_stem(&self) -> BTreeMap<&str, &Held> {
        let held = self.held.iter();
        held.map(|held| (held.stem.as_str(), held)).collect()
    }

    /// Reads every listing of a folder: text files and PDFs.
    ///
    /// # Errors
    /// When the folder can't be read, or holds no listing.
    pub(crate) fn open(folder: &Path) -> Result<Self, Fault> {
        let files = files::in_folder(folder, "listings")?;
        let mut shelf = Self {
            folder: files::shown(folder),
            held: Vec::new(),
            unread: Vec::new(),
        };
        for path in files.iter().filter(|path| source::is_listing(path)) {
            match Held::open(path) {
                Ok(held) => shelf.held.push(held),
                Err(fault) => shelf.unread.push(fault),
            }
        }
        if shelf.held.is_empty() && shelf.unread.is_empty() {
            return Err(
                Fault::of_file("there is no listing in the folder", shelf.folder)
                    .help("put the listings into it as plain text or PDF, their names ending with `.txt` or `.pdf`"),
            );
        }
        Ok(shelf)
    }

    /// The listings that a store holds, each with its bytes and what people have confirmed of it, by file name.
    pub(crate) fn of_store(store: &str, listings: Vec<(String, Vec<u8>, Option<Overlay>)>) -> Self {
        let mut shelf = Self {
            folder: store.to_owned(),
            held: Vec::new(),
            unread: Vec::new(),
        };
        for (file, bytes, overlay) in listings {
            let overlay = overlay.map(|overlay| (format!("{store}, {file}"), overlay));
            match source::of_bytes(&file, &bytes, &format!("{store}, {file}")) {
                Ok(source) => shelf.held.push(Held::of(source, Path::new(&file), overlay)),
                Err(fault) => shelf.unread.push(fault),
            }
        }
        shelf.held.sort_by(|a, b| a.file.cmp(&b.file));
        shelf
    }

    /// The listing that a mark means: by its file's name without the ending, else by its designation.
    ///
    /// # Errors
    /// When none goes by that name, or several do.
    pub(crate) fn find(&self, name: &str) -> Result<usize, Fault> {
        let names = self.held.iter().map(|held| Named {
            stem: &held.stem,
            designation: &held.reading().header.designation,
        });
        match which(name, &names.collect::<Vec<_>>()) {
            Which::One(at) => Ok(at),
            Which::Nothing => Err(self.unknown(name)),
            Which::Several(several) => Err(self.ambiguous(name, &several)),
        }
    }

    fn unknown(&self, name: &str) -> Fault {
        let names = self
            .held
            .iter()
            .flat_map(|held| [held.stem.clone(), held.reading().header.designation.clone()]);
        let near = files::nearest(name, names.filter(|name| !name.is_empty()));
        let fault = Fault::of_file(format!("no listing goes by `{name}`"), self.folder.clone());
        let fault = match near {
            Some(near) => fault.help(format!("is `{near}` meant?")),
            None => fault.help("put the listing's text into the folder; a mark names it by its file or its designation"),
        };
        fault.help("until you have it, leave the cell empty: the joints then stay open for want of a listing")
    }

    fn ambiguous(&self, name: &str, places: &[usize]) -> Fault {
        let several: Vec<&Held> = places.iter().filter_map(|at| self.held.get(*at)).collect();
        let described: Vec<String> = several.iter().map(|held| held.described()).collect();
        let one_stem = several.windows(2).all(|pair| match pair {
            [a, b] => a.stem == b.stem,
            _ => true,
        });
        let which = if one_stem {
            "keep one of them in the folder, and move the others out of it".to_owned()
        } else {
            format!(
                "in the mark's `listing` cell write the file's name without its ending, such as `{}`",
                several.first().map_or(name, |held| held.stem.as_str())
            )
        };
        Fault {
            problem: format!(
                "{} listings go by `{name}`, and nothing says which is meant",
                several.len()
            ),
            place: Place::Files(several.iter().map(|held| held.file.clone()).collect()),
            help: vec![
                format!("{}; an edition is a listing of its own", listed(&described)),
                which,
            ],
        }
    }
}
