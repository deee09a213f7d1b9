//! Files on their way in: piece by piece onto the disk, never whole into memory.

use std::fs::File;
use std::io::Write as _;
use std::path::PathBuf;

use axum::extract::Multipart;
use axum::extract::multipart::{Field, MultipartError};
use tempfile::TempDir;

use crate::trouble::Trouble;

/// The most files at once.
pub(crate) const MOST_FILES: usize = 500;

/// The most bytes of one file. A listing has a few pages; a table of 200,000 rows is smaller.
pub(crate) const MOST_IN_FILE: u64 = 32 << 20;

/// The most bytes of all of them.
pub(crate) const MOST_IN_ALL: u64 = 64 << 20;

/// The most bytes that are read at all. What comes beyond what may be taken is read and thrown away, as a browser shows no answer that
/// comes before it has sent everything.
pub(crate) const MOST_READ: usize = 256 << 20;

/// The most characters of a file's name.
const MOST_IN_NAME: usize = 200;

/// Files that have arrived. They are gone with this value.
#[derive(Debug)]
pub(crate) struct Arrived {
    pub(crate) files: Vec<OnDisk>,
    folder: TempDir,
}

/// A file that has arrived.
#[derive(Debug)]
pub(crate) struct OnDisk {
    /// What its holder calls it, without folders.
    pub(crate) name: String,
    /// Where it is until it is taken.
    pub(crate) path: PathBuf,
}

impl Arrived {
    /// Nothing, and where it will be.
    pub(super) fn none() -> Result<Self, Trouble> {
        Ok(Self {
            files: Vec::new(),
            folder: tempfile::tempdir().map_err(|error| cant(&error))?,
        })
    }

    /// Reads what a form sends in its fields `files`.
    ///
    /// # Errors
    /// When it is too much, names aren't names, or nothing was sent.
    pub(crate) async fn read(mut form: Multipart) -> Result<Self, Trouble> {
        let mut arrived = Self::none()?;
        let mut room = MOST_IN_ALL;
        let mut refused = None;
        while let Some(mut field) = form.next_field().await.map_err(|error| broken(&error))? {
            let named = field.file_name().map(str::to_owned);
            // A field for files in which none were chosen sends one without a name.
            let Some(name) = named.filter(|name| !name.is_empty()) else {
                continue;
            };
            let taken = match refused {
                None => arrived.take(&name, &mut field, &mut room).await,
                Some(_) => Ok(()),
            };
            if let Err(trouble) = taken {
                refused.get_or_insert(trouble);
            }
            while field
                .chunk()
                .await
                .map_err(|error| broken(&error))?
                .is_some()
            {}
        }
        match refused {
            Some(trouble) => Err(trouble),
            None if arrived.files.is_empty() => Err(Trouble::Refused {
                message: "no file was chosen".to_owned(),
                help: "choose one or more listings or tables".to_owned(),
            }),
            None => Ok(arrived),
        }
    }

    async fn take(
        &mut self,
        sent: &str,
        field: &mut Field<'_>,
        room: &mut u64,
    ) -> Result<(), Trouble> {
        let name = name(sent)?;
        if self.files.iter().any(|file| file.name == name) {
            return Err(Trouble::Refused {
                message: format!("two files are called {name}"),
                help: "give one of them another name, or bring them one after the other".to_owned(),
            });
        }
        if self.files.len() >= MOST_FILES {
            return Err(Trouble::Refused {
                message: format!("there are more than {MOST_FILES} files"),
                help: "bring them in several parts".to_owned(),
            });
        }
        let path = self.folder.path().join(self.files.len().to_string());
        let mut file = File::create(&path).map_err(|error| cant(&error))?;
        let mut bytes = 0;
        while let Some(piece) = field.chunk().await.map_err(|error| broken(&error))? {
            let more = u64::try_from(piece.len()).unwrap_or(u64::MAX);
            bytes += more;
            if bytes > MOST_IN_FILE {
                return Err(too_much(&format!("{name} is"), MOST_IN_FILE));
            }
            *room = room
                .checked_sub(more)
                .ok_or_else(|| too_much("the files together are", MOST_IN_ALL))?;
            file.write_all(&piece).map_err(|error| cant(&error))?;
        }
        self.files.push(OnDisk { name, path });
        Ok(())
    }
}

/// The last part of a path, as some browsers send paths.
fn name(sent: &str) -> Result<String, Trouble> {
    let name = sent.rsplit(['/', '\\']).next().unwrap_or_default().trim();
    let is_name = !name.is_empty()
        && name.chars().count() <= MOST_IN_NAME
        && !name.chars().any(char::is_control)
        && !name.chars().all(|c| c == '.');
    if is_name {
        return Ok(name.to_owned());
    }
    let start: String = name.chars().filter(|c| !c.is_control()).take(40).collect();
    Err(Trouble::Refused {
        message: format!("`{start}` is no name of a file"),
        help: format!(
            "give it a name of at most {MOST_IN_NAME} characters, without control characters"
        ),
    })
}

fn too_much(what: &str, most: u64) -> Trouble {
    Trouble::Refused {
        message: format!("{what} larger than {} MB", most >> 20),
        help: "bring less at once; a listing has a few pages, and a table is text".to_owned(),
    }
}

fn broken(error: &MultipartError) -> Trouble {
    Trouble::Refused {
        message: format!("the files didn't come through: {}", error.body_text()),
        help: format!("try again, with at most {} MB at once", MOST_IN_ALL >> 20),
    }
}

fn cant(error: &std::io::Error) -> Trouble {
    Trouble::Broken(format!(
        "the files can't be held until they are taken: {error}"
    ))
}

#[cfg(test)]
mod tests {
    use super::name;

    #[test]
    fn a_name_has_no_folders() {
        assert_eq!(name("../../etc/hw-1.txt").unwrap(), "hw-1.txt");
        assert_eq!(name("C:\\listings\\hw 1.txt").unwrap(), "hw 1.txt");
        assert!(name("listings/").is_err());
        assert!(name("..").is_err());
        assert!(name("a\nb.txt").is_err());
        assert!(name(&"a".repeat(300)).is_err());
    }
}
