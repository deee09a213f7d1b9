//! The files of a submittal: attached, brought back, taken off.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Multipart, Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};
use serde::Deserialize;
use store::people::Role;

use super::{path, review};
use crate::attaching::{Attached, Content, MOST_IN_FILE};
use crate::desk::Desk;
use crate::pages::journal::when;
use crate::person::{By, Inspector, Person};
use crate::submitting::Review;
use crate::taking::arriving::Arrived;
use crate::trouble::Trouble;

/// What may stand in a name after `filename*=` (RFC 8187, section 3.2.1).
const IN_NAME: &AsciiSet = &NON_ALPHANUMERIC.remove(b'.').remove(b'-').remove(b'_');

/// The most bytes that are read of one upload.
pub(super) const MOST_READ: usize = 64 << 20;

/// The files with who attached them, and the form to attach more.
pub(super) fn section(person: &Person, review: &Review) -> Markup {
    html! {
        section aria-labelledby="files" {
            h2 id="files" tabindex="-1" { "Files" }
            @if review.files.is_empty() { p { "None is attached." } }
            @else {
                ul.files { @for file in &review.files { li { (one(person, review, file)) } } }
            }
            @if person.may(Role::Inspector) {
                form.enter method="post" enctype="multipart/form-data" action={ (path(&review.number)) "/files" } {
                    (person.field())
                    label for="attach" { "Attach files" }
                    input id="attach" type="file" name="files" multiple required
                        accept=".pdf,.png,.jpg,.jpeg,.tif,.tiff,.txt" aria-describedby="attachable";
                    p.quiet id="attachable" { "A product sheet, a letter: " (Content::WORDS) ", at most " (MOST_IN_FILE >> 20) " MB each." }
                    button { "Attach" }
                }
            }
        }
    }
}

fn one(person: &Person, review: &Review, file: &Attached) -> Markup {
    let record = &file.held.value;
    html! {
        a href={ (path(&review.number)) "/files/" (record.sha256) } { (record.file) }
        span.quiet {
            ", " (size(record.bytes))
            @if let Some(by) = &file.by { ", attached by " (by.by) ", " (when(by.at)) }
        }
        code.hash { span.quiet { "SHA-256 " } (record.sha256) }
        @if person.may(Role::Inspector) {
            details.change {
                summary { "Take off" span.hidden { " " (record.file) } }
                form method="post" action={ (path(&review.number)) "/files/" (record.sha256) "/take-off" } {
                    (person.field())
                    input type="hidden" name="seen" value=(file.held.version);
                    p { "It isn’t a file of this submittal any more then; the journal and its bytes stay." }
                    button.plain { "Take it off" span.hidden { ": " (record.file) } }
                }
            }
        }
    }
}

/// How large a file is, in words.
pub(super) fn size(bytes: u64) -> String {
    match bytes {
        0..1_000 => format!("{bytes} bytes"),
        1_000..1_000_000 => format!("{} kB", bytes.div_ceil(1_000)),
        _ => format!("{} MB", bytes.div_ceil(1_000_000)),
    }
}

pub(super) async fn attach(
    State(desk): State<Arc<Desk>>,
    person: By<Inspector>,
    Path(number): Path<String>,
    form: Multipart,
) -> Result<Response, Trouble> {
    let arrived = Arrived::read(form).await.map_err(|trouble| match trouble {
        Trouble::Refused { message, .. } => Trouble::Refused {
            message,
            help: format!(
                "attach {}, at most {} MB each",
                Content::WORDS,
                MOST_IN_FILE >> 20
            ),
        },
        other => other,
    });
    let done = match arrived {
        Ok(arrived) => desk.attach(&person, &number, arrived).await,
        Err(trouble) => Err(trouble),
    };
    review::answered(&desk, &person, &number, done.map(|_| "files".to_owned())).await
}

#[derive(Debug, Deserialize)]
pub(super) struct Seen {
    seen: i64,
}

pub(super) async fn take_off(
    State(desk): State<Arc<Desk>>,
    person: By<Inspector>,
    Path((number, sha256)): Path<(String, String)>,
    Form(Seen { seen }): Form<Seen>,
) -> Result<Response, Trouble> {
    let done = desk.detach(&person, &number, &sha256, seen).await;
    review::answered(&desk, &person, &number, done.map(|_| "files".to_owned())).await
}

/// A file, to be kept and never shown by the browser within the desk: what it is, its bytes say.
pub(super) async fn bring_back(
    State(desk): State<Arc<Desk>>,
    _person: Person,
    Path((number, sha256)): Path<(String, String)>,
) -> Result<Response, Trouble> {
    let (record, bytes) = desk.file_of(&number, &sha256).await?;
    let media_type = Content::of(&bytes).map_or("application/octet-stream", Content::media_type);
    let headers = [
        (header::CONTENT_TYPE, media_type.to_owned()),
        (header::CONTENT_DISPOSITION, disposition(&record.file)),
    ];
    Ok((headers, bytes).into_response())
}

/// `attachment` with the name, in letters that every browser reads and in full (RFC 6266, appendix D).
fn disposition(name: &str) -> String {
    let plain = |c: char| {
        let is_plain = c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | '_' | ' ');
        if is_plain { c } else { '_' }
    };
    let ascii: String = name.chars().map(plain).collect();
    let full = utf8_percent_encode(name, IN_NAME);
    format!("attachment; filename=\"{ascii}\"; filename*=UTF-8''{full}")
}

#[cfg(test)]
mod tests {
    use super::{disposition, size};

    #[test]
    fn a_name_can_t_leave_its_header() {
        assert_eq!(
            disposition("Blatt \"4\"; x=é\r\n.pdf"),
            "attachment; filename=\"Blatt _4__ x____.pdf\"; filename*=UTF-8''Blatt%20%224%22%3B%20x%3D%C3%A9%0D%0A.pdf"
        );
    }

    #[test]
    fn sizes_are_never_said_too_small() {
        assert_eq!(size(999), "999 bytes");
        assert_eq!(size(1_001), "2 kB");
        assert_eq!(size(1_000_001), "2 MB");
    }
}
