//! Files that come with a submittal: a product sheet, a letter. They are kept by the hash of their bytes; what they are, the bytes say, and not
//! their names.

use store::records::{AttachmentRecord, Held};
use store::{Done, Edit, Entry, Key, Owner};

use crate::desk::Desk;
use crate::person::{By, Inspector};
use crate::taking::arriving::Arrived;
use crate::trouble::Trouble;

/// The most bytes of one file.
pub(crate) const MOST_IN_FILE: u64 = 16 << 20;

/// The most files of one submittal.
pub(crate) const MOST_FILES: usize = 40;

/// What may be attached, by its content.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Content {
    Pdf,
    Png,
    Jpeg,
    Tiff,
    Text,
}

impl Content {
    /// All of them, in words.
    pub(crate) const WORDS: &str = "PDF, PNG, JPEG, TIFF or plain text";

    /// What some bytes are: by the signatures that ISO 32000-1 (7.5.2), the PNG specification (5.2), ITU-T T.81 (B.1) and TIFF 6.0 (section 2)
    /// give, or text in UTF-8 without control characters. None where they are something else.
    pub(crate) fn of(bytes: &[u8]) -> Option<Self> {
        const SIGNATURES: [(&[u8], Content); 5] = [
            (b"%PDF-", Content::Pdf),
            (b"\x89PNG\r\n\x1a\n", Content::Png),
            (b"\xff\xd8\xff", Content::Jpeg),
            (b"II*\0", Content::Tiff),
            (b"MM\0*", Content::Tiff),
        ];
        let mut signatures = SIGNATURES.iter();
        let signed = signatures.find(|(signature, _)| bytes.starts_with(signature));
        signed
            .map(|(_, content)| *content)
            .or_else(|| is_text(bytes).then_some(Self::Text))
    }

    /// The media type.
    pub(crate) const fn media_type(self) -> &'static str {
        match self {
            Self::Pdf => "application/pdf",
            Self::Png => "image/png",
            Self::Jpeg => "image/jpeg",
            Self::Tiff => "image/tiff",
            Self::Text => "text/plain; charset=utf-8",
        }
    }

    /// The endings of names of such files; the first is the usual one.
    const fn endings(self) -> &'static [&'static str] {
        match self {
            Self::Pdf => &["pdf"],
            Self::Png => &["png"],
            Self::Jpeg => &["jpg", "jpeg"],
            Self::Tiff => &["tif", "tiff"],
            Self::Text => &["txt", "text"],
        }
    }

    /// A name whose ending says what the file is: nobody's machine opens it as something else.
    fn named(self, name: &str) -> String {
        let ending = name.rsplit_once('.').map(|(_, ending)| ending);
        let endings = self.endings();
        let says_it = |ending: &str| endings.iter().any(|one| ending.eq_ignore_ascii_case(one));
        match endings.first() {
            Some(usual) if !ending.is_some_and(says_it) => format!("{name}.{usual}"),
            _ => name.to_owned(),
        }
    }
}

fn is_text(bytes: &[u8]) -> bool {
    let is_plain = |c: char| !c.is_control() || matches!(c, '\t' | '\n' | '\r' | '\u{c}');
    !bytes.is_empty() && core::str::from_utf8(bytes).is_ok_and(|text| text.chars().all(is_plain))
}

/// A file of a submittal.
#[derive(Debug)]
pub(crate) struct Attached {
    /// As it is kept.
    pub(crate) held: Held<AttachmentRecord>,
    /// The entry of the journal that brought it: who attached it, and when.
    pub(crate) by: Option<Entry>,
}

fn refused(message: String, help: impl Into<String>) -> Trouble {
    Trouble::Refused {
        message,
        help: help.into(),
    }
}

fn owner(number: &str) -> Owner {
    Owner::Submittal(number.to_owned())
}

impl Desk {
    /// The files of a submittal, in the order they came.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn attached(&self, number: &str) -> Result<Vec<Attached>, Trouble> {
        let mut attached = Vec::new();
        for held in self.store.get_all(&owner(number).to_string()).await? {
            let held: Held<AttachmentRecord> = held;
            let mut history = self.store.history(&held.key).await?;
            history.retain(|entry| entry.seq == held.since);
            attached.push(Attached {
                held,
                by: history.pop(),
            });
        }
        Ok(attached)
    }

    /// Attaches files to a submittal: all of them, or none.
    ///
    /// # Errors
    /// When there is no such submittal; when a file is too large, there already or nothing that may be attached; when somebody else was first.
    pub(crate) async fn attach(
        &self,
        person: &By<Inspector>,
        number: &str,
        arrived: Arrived,
    ) -> Result<Done, Trouble> {
        self.submittal(number).await?;
        let there = self.attached(number).await?;
        if there.len() + arrived.files.len() > MOST_FILES {
            return Err(refused(
                format!("a submittal has at most {MOST_FILES} files"),
                "bring several sheets as one PDF",
            ));
        }
        let mut names = Vec::new();
        let mut edits: Vec<Edit> = Vec::new();
        for file in &arrived.files {
            let bytes = read(file)?;
            let content = Content::of(&bytes).ok_or_else(|| {
                refused(
                    format!(
                        "{} is nothing that can be attached, whatever its name says",
                        file.name
                    ),
                    format!("bring it as {}", Content::WORDS),
                )
            })?;
            let attachment = self.store.attach(bytes).await?;
            let key = Key::attachment(&owner(number), &attachment.sha256);
            let same = there.iter().find(|one| one.held.key == key);
            if let Some(same) = same {
                let known = &same.held.value.file;
                return Err(refused(
                    format!("{} is attached already, as {known}", file.name),
                    "bring what isn't there yet",
                ));
            }
            if edits.iter().any(|edit| edit.key == key) {
                return Err(refused(
                    format!("{} is the same as another of these files", file.name),
                    "bring it once",
                ));
            }
            let record = AttachmentRecord {
                file: content.named(&file.name),
                sha256: attachment.sha256,
                bytes: attachment.bytes,
            };
            edits.push(Edit::put(key, 0, &record)?);
            names.push(record.file);
        }
        let what = match names.as_slice() {
            [one] => format!("attached {one} to submittal {number}"),
            several => format!("attached {} files to submittal {number}", several.len()),
        };
        self.change(person, what, edits).await
    }

    /// Takes a file off a submittal. Its bytes stay, and so does what the journal says of it.
    ///
    /// # Errors
    /// When there is no such file, or somebody else was first.
    pub(crate) async fn detach(
        &self,
        person: &By<Inspector>,
        number: &str,
        sha256: &str,
        seen: i64,
    ) -> Result<Done, Trouble> {
        let record = self.record(number, sha256).await?;
        let edit = Edit::remove(Key::attachment(&owner(number), sha256), seen);
        let what = format!("took {} off submittal {number}", record.file);
        self.change(person, what, vec![edit]).await
    }

    /// A file of a submittal with its bytes, when they still have their hash.
    ///
    /// # Errors
    /// When there is no such file, or its bytes aren't what was attached.
    pub(crate) async fn file_of(
        &self,
        number: &str,
        sha256: &str,
    ) -> Result<(AttachmentRecord, Vec<u8>), Trouble> {
        let record = self.record(number, sha256).await?;
        let bytes = self.store.attachment(&record.sha256).await?;
        Ok((record, bytes))
    }

    async fn record(&self, number: &str, sha256: &str) -> Result<AttachmentRecord, Trouble> {
        let key = Key::attachment(&owner(number), sha256);
        let held = self.store.get::<AttachmentRecord>(&key).await?;
        held.map(|held| held.value).ok_or_else(|| {
            Trouble::Unknown(format!("Submittal {number} has no file of that hash."))
        })
    }
}

fn read(file: &crate::taking::arriving::OnDisk) -> Result<Vec<u8>, Trouble> {
    let cant = |error: std::io::Error| {
        Trouble::Broken(format!("{} can't be read any more: {error}", file.name))
    };
    let bytes = std::fs::metadata(&file.path).map_err(cant)?.len();
    if bytes > MOST_IN_FILE {
        return Err(refused(
            format!("{} is larger than {} MB", file.name, MOST_IN_FILE >> 20),
            "attach the sheets that matter, not the whole catalogue",
        ));
    }
    std::fs::read(&file.path).map_err(cant)
}

#[cfg(test)]
mod tests {
    use super::Content;

    #[test]
    fn what_a_file_is_its_bytes_say() {
        for (bytes, content) in [
            (b"%PDF-1.7\n".as_slice(), Some(Content::Pdf)),
            (b"\x89PNG\r\n\x1a\n....", Some(Content::Png)),
            (b"\xff\xd8\xff\xe0..", Some(Content::Jpeg)),
            (b"MM\0*....", Some(Content::Tiff)),
            (
                "Dear reviewer,\r\n\tpacking 4 pcf – as listed\n".as_bytes(),
                Some(Content::Text),
            ),
            // A web page is text, and comes back as such.
            (b"<script>alert(1)</script>", Some(Content::Text)),
            (b"", None),
            (b"PK\x03\x04....", None),
            (b"MZ\x90\0", None),
            (b"\x1b[31mred", None),
            (b"\xff\xfe\x00", None),
            (b"  %PDF-1.7\0", None),
        ] {
            assert_eq!(Content::of(bytes), content, "{bytes:?}");
        }
    }

    #[test]
    fn a_name_says_what_the_bytes_are() {
        let named = |content: Content, name: &str| content.named(name);
        assert_eq!(named(Content::Pdf, "Sheet 4.PDF"), "Sheet 4.PDF");
        assert_eq!(named(Content::Jpeg, "joint.jpeg"), "joint.jpeg");
        assert_eq!(named(Content::Pdf, "sheet.exe"), "sheet.exe.pdf");
        assert_eq!(named(Content::Text, "page.html"), "page.html.txt");
        assert_eq!(named(Content::Text, "letter"), "letter.txt");
    }
}
