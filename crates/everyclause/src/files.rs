//! Reading and writing files. What is written is written whole or not at all.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use crate::fault::Fault;
use crate::show::words::printable;

/// A path as it is shown: without control characters, whatever its encoding.
pub(crate) fn shown(path: &Path) -> String {
    printable(&path.to_string_lossy()).replace('\n', "\u{fffd}")
}

/// A file's bytes, when there are at most so many.
///
/// # Errors
/// When the path is no file, can't be read, or holds more; `what` says what the file should be.
pub(crate) fn read(path: &Path, what: &str, most: u64) -> Result<Vec<u8>, Fault> {
    let name = shown(path);
    let open = || -> io::Result<(bool, Vec<u8>)> {
        let file = File::open(path)?;
        let is_folder = file.metadata()?.is_dir();
        let mut bytes = Vec::new();
        if !is_folder {
            file.take(most.saturating_add(1)).read_to_end(&mut bytes)?;
        }
        Ok((is_folder, bytes))
    };
    match open() {
        Ok((true, _)) => Err(
            Fault::of_file(format!("this is a folder; {what} is a file"), name).help(inside(path)),
        ),
        Ok((false, bytes)) if u64::try_from(bytes.len()).is_ok_and(|length| length > most) => {
            let problem = format!(
                "the file has more than {} MB, too much for {what}",
                most >> 20
            );
            Err(Fault::of_file(problem, name)
                .help("is it the right file? If it holds several documents, split it"))
        }
        Ok((false, bytes)) => Ok(bytes),
        Err(error) => Err(unreadable(path, what, &error)),
    }
}

fn unreadable(path: &Path, what: &str, error: &io::Error) -> Fault {
    let name = shown(path);
    match error.kind() {
        io::ErrorKind::NotFound => {
            let fault = Fault::of_file("there is no such file", name);
            match nearest_beside(path) {
                Some(near) => fault.help(format!("is `{near}` meant?")),
                None => fault.help(format!("give the path of {what}")),
            }
        }
        io::ErrorKind::PermissionDenied => Fault::of_file("the file may not be read", name)
            .help("give yourself the right to read it, or copy it"),
        _ => Fault::of_file(format!("the file can't be read: {error}"), name)
            .help(format!("give the path of {what}")),
    }
}

/// What lies in a folder, as help for somebody who named the folder.
fn inside(folder: &Path) -> String {
    let names: Vec<String> = names_in(folder).into_iter().take(4).collect();
    if names.is_empty() {
        "the folder is empty".to_owned()
    } else {
        format!("in it are {}", quoted(&names))
    }
}

/// The file beside a path that doesn't exist whose name is nearest to it.
fn nearest_beside(path: &Path) -> Option<String> {
    let name = path.file_name()?.to_string_lossy().to_lowercase();
    let folder = path
        .parent()
        .filter(|parent| !parent.as_os_str().is_empty())
        .unwrap_or(Path::new("."));
    nearest(&name, names_in(folder)).map(|near| shown(&path.with_file_name(near)))
}

/// The name nearest to a mistyped one, if any is near.
pub(crate) fn nearest(name: &str, names: impl IntoIterator<Item = String>) -> Option<String> {
    let name = name.to_lowercase();
    let scored = names
        .into_iter()
        .map(|other| (strsim::jaro_winkler(&name, &other.to_lowercase()), other));
    scored
        .filter(|(score, _)| *score > 0.85)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, other)| other)
}

fn names_in(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut names: Vec<String> = entries
        .map(|entry| shown(Path::new(&entry.file_name())))
        .collect();
    names.sort();
    names
}

fn quoted(names: &[String]) -> String {
    names
        .iter()
        .map(|name| format!("`{name}`"))
        .collect::<Vec<_>>()
        .join(", ")
}

/// The files of a folder, by name.
///
/// # Errors
/// When the path is no folder or can't be read; `what` says what the folder should hold.
pub(crate) fn in_folder(folder: &Path, what: &str) -> Result<Vec<PathBuf>, Fault> {
    let name = shown(folder);
    let fault = |problem: String| {
        Fault::of_file(problem, name.clone()).help(format!("give the folder of {what}"))
    };
    if folder.is_file() {
        return Err(fault(format!(
            "this is a file; {what} are looked for in a folder"
        )));
    }
    let entries = fs::read_dir(folder).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => fault("there is no such folder".to_owned()),
        io::ErrorKind::PermissionDenied => fault("the folder may not be read".to_owned()),
        _ => fault(format!("the folder can't be read: {error}")),
    })?;
    let mut files: Vec<PathBuf> = entries
        .flatten()
        .map(|entry| entry.path())
        .filter(|path| !path.is_dir())
        .collect();
    files.sort();
    Ok(files)
}

/// A path with something put after its whole name: `a.txt` and `.confirmed.toml` make `a.txt.confirmed.toml`.
pub(crate) fn with_ending(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.file_name().map(OsString::from).unwrap_or_default();
    name.push(ending);
    path.with_file_name(name)
}

/// Whether two paths lead to one file that is there.
pub(crate) fn are_one(one: &Path, other: &Path) -> bool {
    match (fs::canonicalize(one), fs::canonicalize(other)) {
        (Ok(one), Ok(other)) => one == other,
        _ => false,
    }
}

/// Writes a file whole or not at all: beside its place first, then put in it.
///
/// # Errors
/// When it can't be written; what was there before is still there.
pub(crate) fn write(path: &Path, text: &[u8]) -> Result<(), Fault> {
    let beside = with_ending(path, &format!(".{}.unfinished", std::process::id()));
    let written = || -> io::Result<()> {
        let mut file = File::create(&beside)?;
        file.write_all(text)?;
        file.sync_all()?;
        fs::rename(&beside, path)
    };
    written().map_err(|error| {
        let _ = fs::remove_file(&beside);
        unwritable(path, &error)
    })
}

/// Makes a folder and those above it.
///
/// # Errors
/// When it can't be made.
pub(crate) fn make_folder(path: &Path) -> Result<(), Fault> {
    fs::create_dir_all(path).map_err(|error| unwritable(path, &error))
}

/// Gives a file or folder another name.
///
/// # Errors
/// When it can't be given.
pub(crate) fn rename(from: &Path, to: &Path) -> Result<(), Fault> {
    fs::rename(from, to).map_err(|error| unwritable(to, &error))
}

fn unwritable(path: &Path, error: &io::Error) -> Fault {
    let problem = match error.kind() {
        io::ErrorKind::PermissionDenied => "this may not be written".to_owned(),
        _ => format!("this can't be written: {error}"),
    };
    Fault::of_file(problem, shown(path))
        .help("nothing was changed; give another place, or the right to write there")
}
