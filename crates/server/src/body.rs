//! Bodies: how long one may take to come, how much of it is held, and whether a form is the desk's own.
//!
//! A form is read whole here, as it is small. An upload isn't: it goes on as it comes, and whoever takes it says how large it may be. Only its
//! first part is looked at, which is to be the form's token.

use std::time::Duration;

use axum::body::{Body, Bytes, to_bytes};
use axum::extract::Request;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Response};
use futures_util::{StreamExt, stream};
use tokio::time::{Instant, timeout, timeout_at};

use crate::MOST_IN_FORM;
use crate::people::Team;
use crate::person::FORM_TOKEN;

/// How long a form may take to come.
const FORM_WITHIN: Duration = Duration::from_secs(20);

/// How long an upload may take to come.
const UPLOAD_WITHIN: Duration = Duration::from_mins(10);

/// In how many bytes of an upload its token must have come.
const TOKEN_WITHIN: usize = 4 << 10;

/// Why a body is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Refused {
    TooLarge,
    TooSlow,
    BrokenOff,
    NotOwn,
}

impl IntoResponse for Refused {
    fn into_response(self) -> Response {
        let (status, words) = match self {
            Self::TooLarge => (
                StatusCode::PAYLOAD_TOO_LARGE,
                "Refused: that is more than a form of this desk can hold. Nothing was changed.\n",
            ),
            Self::TooSlow => (
                StatusCode::REQUEST_TIMEOUT,
                "Refused: what was sent took too long to come. Nothing was changed.\n",
            ),
            Self::BrokenOff => (
                StatusCode::BAD_REQUEST,
                "What was sent broke off. Nothing was changed.\n",
            ),
            Self::NotOwn => (
                StatusCode::FORBIDDEN,
                "Refused: the form isn't one that this desk gave you, or you have signed in again since. \
                 Nothing was changed; load the page again.\n",
            ),
        };
        (status, words).into_response()
    }
}

/// Whether a request says that it sends JSON.
pub(crate) fn is_json(headers: &HeaderMap) -> bool {
    kind(headers).starts_with("application/json")
}

fn kind(headers: &HeaderMap) -> &str {
    let kind = headers.get(header::CONTENT_TYPE);
    kind.and_then(|kind| kind.to_str().ok()).unwrap_or_default()
}

/// Reads the body of a request, or looks at how it begins; with `needs_token`, a form must hold one that belongs to its cookies. JSON needs
/// none: no other site's page can send it.
///
/// # Errors
/// When it is too large, too slow, broken off or not the desk's own.
pub(crate) async fn read(request: Request, needs_token: bool) -> Result<Request, Refused> {
    let (parts, body) = request.into_parts();
    let is_upload = kind(&parts.headers).starts_with("multipart/form-data");
    let needs_token = needs_token && !is_json(&parts.headers);
    let is_own = |token: Option<String>| {
        !needs_token || token.is_some_and(|token| Team::is_own_form(&parts.headers, &token))
    };
    let body = if is_upload {
        let (token, body) = begun(body, needs_token).await?;
        is_own(token).then_some(body).ok_or(Refused::NotOwn)?
    } else {
        let bytes = whole(&parts.headers, body).await?;
        is_own(in_form(&bytes))
            .then_some(())
            .ok_or(Refused::NotOwn)?;
        Body::from(bytes)
    };
    Ok(Request::from_parts(parts, body))
}

/// A small body, whole.
async fn whole(headers: &HeaderMap, body: Body) -> Result<Bytes, Refused> {
    let said = headers
        .get(header::CONTENT_LENGTH)
        .and_then(|length| length.to_str().ok()?.parse::<u64>().ok());
    let most = u64::try_from(MOST_IN_FORM).unwrap_or(u64::MAX);
    if said.is_some_and(|said| said > most) {
        return Err(Refused::TooLarge);
    }
    match timeout(FORM_WITHIN, to_bytes(body, MOST_IN_FORM)).await {
        Err(_) => Err(Refused::TooSlow),
        Ok(Ok(bytes)) => Ok(bytes),
        Ok(Err(error)) => {
            let is_long = std::error::Error::source(&error)
                .is_some_and(|source| source.to_string().contains("length limit"));
            Err(if is_long {
                Refused::TooLarge
            } else {
                Refused::BrokenOff
            })
        }
    }
}

/// The token of a form that is sent as an address's query is written.
fn in_form(bytes: &[u8]) -> Option<String> {
    let text = core::str::from_utf8(bytes).ok()?;
    let mut values = text
        .split('&')
        .filter_map(|pair| pair.split_once('='))
        .filter(|(name, _)| *name == FORM_TOKEN)
        .map(|(_, value)| value.to_owned());
    values.next()
}

/// An upload as it comes, with a moment by which it must have come; with `look`, also the token that it begins with.
async fn begun(body: Body, look: bool) -> Result<(Option<String>, Body), Refused> {
    let until = Instant::now() + UPLOAD_WITHIN;
    let mut coming = body.into_data_stream();
    let mut start = Vec::new();
    let mut token = None;
    while look && token.is_none() && start.len() < TOKEN_WITHIN {
        match timeout(FORM_WITHIN, coming.next()).await {
            Err(_) => return Err(Refused::TooSlow),
            Ok(None) => break,
            Ok(Some(Err(_))) => return Err(Refused::BrokenOff),
            Ok(Some(Ok(bytes))) => start.extend_from_slice(&bytes),
        }
        token = in_first_part(&start);
    }
    let first = stream::iter([Ok(Bytes::from(start))]);
    let rest = stream::unfold(coming, move |mut coming| async move {
        let next = match timeout_at(until, coming.next()).await {
            Ok(next) => next?,
            Err(_) => Err(axum::Error::new("it took too long to come")),
        };
        Some((next, coming))
    });
    Ok((token, Body::from_stream(first.chain(rest))))
}

/// The token in the first part of an upload (RFC 7578), once all of that part has come.
fn in_first_part(start: &[u8]) -> Option<String> {
    let seen = start.get(..TOKEN_WITHIN.min(start.len()))?;
    let text = String::from_utf8_lossy(seen);
    let (head, rest) = text.split_once("\r\n\r\n")?;
    let named = format!("name=\"{FORM_TOKEN}\"");
    let (value, _) = rest.split_once("\r\n--")?;
    head.contains(&named).then(|| value.to_owned())
}

#[cfg(test)]
mod tests {
    use super::{in_first_part, in_form};

    #[test]
    fn a_token_is_found_in_a_form_and_at_the_head_of_an_upload() {
        assert_eq!(in_form(b"form_token=ab&x=1").as_deref(), Some("ab"));
        assert_eq!(in_form(b"x=form_token%3Dab&my_form_token=cd"), None);
        assert_eq!(in_form(b"\xff"), None);
        let part = |name: &str, value: &str| {
            format!("--b\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n")
        };
        let own = part("form_token", "ab") + &part("file", "cd") + "--b--";
        assert_eq!(in_first_part(own.as_bytes()).as_deref(), Some("ab"));
        // Not before all of it has come, and not where it stands behind something else.
        assert_eq!(in_first_part(&own.as_bytes()[..60]), None);
        let behind = part("file", "cd") + &part("form_token", "ab") + "--b--";
        assert_eq!(in_first_part(behind.as_bytes()), None);
    }
}
