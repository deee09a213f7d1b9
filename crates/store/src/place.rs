//! Where a store is.

use core::fmt;
use std::ffi::OsString;
use std::path::{Path, PathBuf};

use percent_encoding::{AsciiSet, CONTROLS, NON_ALPHANUMERIC, percent_encode};
use sqlx::postgres::{PgConnectOptions, PgSslMode};

use crate::error::StoreError;

/// Where a store's records are.
#[derive(Clone, PartialEq, Eq)]
pub enum Place {
    /// In a file of SQLite.
    File(PathBuf),
    /// In a database of PostgreSQL, by its URL. A schema other than the usual one is named by
    /// `?options=-csearch_path%3Dclinic`, so that one database can hold several projects.
    Postgres(String),
}

impl Place {
    /// A place, as it is written: a path, or a URL that begins with `postgres://`.
    ///
    /// # Errors
    /// When it is a URL of something else, or one of another machine and this build has no TLS.
    pub fn parse(text: &str) -> Result<Self, StoreError> {
        let is_postgres = text.starts_with("postgres://") || text.starts_with("postgresql://");
        if is_postgres {
            return Ok(Self::Postgres(guarded(text)?));
        }
        match text.split_once("://") {
            Some((scheme, _)) => Err(StoreError::Place(format!(
                "a store can't be at a URL that begins with `{scheme}://`"
            ))),
            None if text.trim().is_empty() => {
                Err(StoreError::Place("the place is empty".to_owned()))
            }
            None => Ok(Self::File(PathBuf::from(text))),
        }
    }

    /// The URL by which the database is opened. A file must be there already, unless it is to be made.
    pub(crate) fn url(&self, make: bool) -> String {
        match self {
            Self::Postgres(url) => url.clone(),
            Self::File(path) => {
                let mode = if make { "rwc" } else { "rw" };
                format!("sqlite:{}?mode={mode}", encoded(path))
            }
        }
    }

    /// Where its attachments are unless somebody says otherwise: in a folder beside the file.
    pub fn attachments(&self) -> Option<AttachmentsPlace> {
        match self {
            Self::File(path) => {
                let mut name = path.file_name().map(OsString::from).unwrap_or_default();
                name.push(".attachments");
                Some(AttachmentsPlace::Folder(path.with_file_name(name)))
            }
            Self::Postgres(_) => None,
        }
    }
}

impl fmt::Display for Place {
    /// A URL is shown without its user and password, wherever it has them: of its settings only the schema's.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let url = match self {
            Self::File(path) => return write!(f, "{}", path.display()),
            Self::Postgres(url) => url,
        };
        let (scheme, user, rest) = parts(url);
        let (rest, settings) = rest.split_once('?').unwrap_or((rest, ""));
        let user = user.map_or("", |_| "…@");
        write!(f, "{scheme}://{user}{rest}")?;
        let mut settings = settings.split('&');
        match settings.find(|one| one.starts_with("options=")) {
            Some(options) => write!(f, "?{options}"),
            None => Ok(()),
        }
    }
}

impl fmt::Debug for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Place({self})")
    }
}

/// Where a store's attachments are.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AttachmentsPlace {
    /// In a folder.
    Folder(PathBuf),
    /// In a bucket of S3-compatible object storage: `s3://bucket/folder`. Its endpoint and keys come from the usual
    /// environment (`AWS_ENDPOINT`, `AWS_ACCESS_KEY_ID` and so on).
    Bucket(String),
}

impl AttachmentsPlace {
    /// A place, as it is written: a folder's path, or a URL that begins with `s3://`.
    ///
    /// # Errors
    /// When it is a URL of something else.
    pub fn parse(text: &str) -> Result<Self, StoreError> {
        if text.starts_with("s3://") {
            return Ok(Self::Bucket(text.to_owned()));
        }
        match text.split_once("://") {
            Some((scheme, _)) => Err(StoreError::Place(format!(
                "attachments can't be at a URL that begins with `{scheme}://`; give a folder, or `s3://bucket/folder`"
            ))),
            None => Ok(Self::Folder(PathBuf::from(text))),
        }
    }
}

impl fmt::Display for AttachmentsPlace {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Folder(path) => write!(f, "{}", path.display()),
            Self::Bucket(url) => f.write_str(url),
        }
    }
}

/// Characters of a path that a URL would take for its own.
const IN_PATH: &AsciiSet = &CONTROLS
    .add(b' ')
    .add(b'%')
    .add(b'?')
    .add(b'#')
    .add(b'"')
    .add(b'<')
    .add(b'>')
    .add(b'`');

fn encoded(path: &Path) -> String {
    percent_encode(path.as_os_str().as_encoded_bytes(), IN_PATH).to_string()
}

/// The scheme of a URL, its user with the password if there is any, and the rest.
fn parts(url: &str) -> (&str, Option<&str>, &str) {
    let (scheme, rest) = url.split_once("://").unwrap_or(("", url));
    let authority = rest.find(['/', '?']).unwrap_or(rest.len());
    match rest
        .get(..authority)
        .and_then(|authority| authority.rfind('@'))
    {
        Some(at) => (
            scheme,
            rest.get(..at),
            rest.get(at + 1..).unwrap_or_default(),
        ),
        None => (scheme, None, rest),
    }
}

/// A URL of PostgreSQL, unless it would send a project, or a password, over a network in clear. Where it leads is asked of the driver, which
/// goes by the environment too.
fn guarded(url: &str) -> Result<String, StoreError> {
    let options: PgConnectOptions = url.parse().map_err(|error| {
        StoreError::Place(format!("the database's URL can't be understood: {error}"))
    })?;
    let host = options.get_host();
    let is_here = options.get_socket().is_some()
        || host.starts_with('/')
        || matches!(host, "localhost" | "127.0.0.1" | "::1" | "[::1]");
    if is_here {
        return Ok(url.to_owned());
    }
    if !cfg!(feature = "network") {
        return Err(StoreError::Place(format!(
            "the database is on another machine ({host}), and this program was built without TLS; \
             build it with `--features network`"
        )));
    }
    match options.get_ssl_mode() {
        // Unless somebody says how far the other machine is to be trusted, it must show who it is.
        PgSslMode::Allow | PgSslMode::Prefer => {
            let mark = if url.contains('?') { '&' } else { '?' };
            Ok(format!("{url}{mark}sslmode=verify-full"))
        }
        _ => Ok(url.to_owned()),
    }
}

/// A schema of a database, as a URL's option names it.
pub fn in_schema(url: &str, schema: &str) -> String {
    let mark = if url.contains('?') { '&' } else { '?' };
    let schema = percent_encode(schema.as_bytes(), NON_ALPHANUMERIC);
    format!("{url}{mark}options=-csearch_path%3D{schema}")
}

#[cfg(test)]
mod tests {
    use super::{AttachmentsPlace, Place};

    #[test]
    fn a_path_is_a_file_and_a_url_is_a_database() {
        let place = Place::parse("a folder/clinic?.sqlite").unwrap();
        assert_eq!(
            place.url(false),
            "sqlite:a%20folder/clinic%3F.sqlite?mode=rw"
        );
        let beside = AttachmentsPlace::Folder("a folder/clinic?.sqlite.attachments".into());
        assert_eq!(place.attachments(), Some(beside));
        assert!(Place::parse("https://example.org/clinic").is_err());
        assert!(Place::parse(" ").is_err());
        assert!(AttachmentsPlace::parse("gs://somewhere").is_err());
    }

    #[test]
    fn a_password_is_never_shown() {
        let place = Place::parse("postgres://kim:p@ss@localhost:5433/clinic").unwrap();
        assert_eq!(place.to_string(), "postgres://…@localhost:5433/clinic");
        let place = "postgres://localhost/clinic?user=kim&password=p&options=-csearch_path%3Dwest";
        let place = Place::parse(place).unwrap();
        for shown in [place.to_string(), format!("{place:?}")] {
            assert!(!shown.contains("kim") && !shown.contains("=p"), "{shown}");
            assert!(shown.contains("search_path%3Dwest"), "{shown}");
        }
    }

    #[cfg(feature = "network")]
    #[test]
    fn another_machine_must_show_who_it_is_unless_somebody_says_otherwise() {
        let url = |text: &str| Place::parse(text).unwrap().url(false);
        for (given, ends) in [
            ("postgres://db.example.org/clinic", "?sslmode=verify-full"),
            (
                "postgres://db.example.org/clinic?application_name=sslmode%3Drequire",
                "&sslmode=verify-full",
            ),
            (
                "postgres://db.example.org/clinic?application_name=sslmode=disable",
                "&sslmode=verify-full",
            ),
            (
                "postgres://db.example.org/clinic?sslmode=require",
                "?sslmode=require",
            ),
            ("postgres://localhost/clinic", "/clinic"),
        ] {
            assert!(url(given).ends_with(ends), "{given}: {}", url(given));
        }
    }

    #[cfg(not(feature = "network"))]
    #[test]
    fn nothing_goes_over_a_network_in_clear() {
        for url in [
            "postgres://kim@db.example.org/clinic",
            "postgres://localhost/clinic?host=db.example.org",
            "postgres://localhost/clinic?%68ost=db.example.org",
            "postgres://localhost/clinic?hostaddr=192.0.2.7",
            "postgres://kim@[2001:db8::1]/clinic",
        ] {
            let error = Place::parse(url).unwrap_err().to_string();
            assert!(error.contains("without TLS"), "{url}: {error}");
        }
        assert!(Place::parse("postgres://kim@[::1]:5432/clinic").is_ok());
        assert!(Place::parse("postgres://%2Frun%2Fpostgresql/clinic").is_ok());
    }
}
