//! Who may ask, and what a page may do.
//!
//! The desk answers to this machine alone; but any page of the web that is open in a browser on it can send requests here. So:
//!
//! - the `Host` must be this machine's, or a name of somebody else's that was made to lead here (DNS rebinding) could read everything;
//! - what changes something must come from the desk's own pages: by `Origin`, or by `Sec-Fetch-Site` (W3C Fetch Metadata);
//! - a page runs the desk's own scripts and styles, sends forms to it alone, and stands in nobody's frame (W3C Content Security Policy).

use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use store::people::Role;

use crate::person::Person;

/// What a page may do.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
                      form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

/// Who may ask, and in whose name: this machine, as browsers name it, and whoever sits at it.
#[derive(Debug, Clone)]
pub struct Access {
    hosts: [String; 3],
    person: Person,
}

impl Access {
    /// This machine alone, through a port of it. Whoever asks is `by`, and may do everything.
    pub fn here(by: &str, port: u16) -> Self {
        let host = |name: &str| format!("{name}:{port}");
        Self {
            hosts: [host("127.0.0.1"), host("localhost"), host("[::1]")],
            person: Person {
                name: by.trim().to_owned(),
                role: Role::Administrator,
                form_token: None,
            },
        }
    }

    fn is_host(&self, host: &str) -> bool {
        self.hosts.iter().any(|here| here == host)
    }

    fn is_origin(&self, origin: &str) -> bool {
        origin
            .strip_prefix("http://")
            .is_some_and(|host| self.is_host(host))
    }

    /// Whether a request is from the desk's own pages, or from a program of this machine that says what it sends.
    fn is_own(&self, headers: &HeaderMap) -> bool {
        let text = |name: HeaderName| headers.get(name).map(|value| value.to_str().unwrap_or("?"));
        match (
            text(header::ORIGIN),
            text(HeaderName::from_static("sec-fetch-site")),
        ) {
            (Some(origin), site) => {
                self.is_origin(origin) && site.is_none_or(|site| site == "same-origin")
            }
            (None, Some(site)) => site == "same-origin",
            // No browser sends JSON to another site without asking it first.
            (None, None) => {
                text(header::CONTENT_TYPE).is_some_and(|sent| sent.starts_with("application/json"))
            }
        }
    }
}

/// Lets through what may be asked, and says what a page may do.
pub(crate) async fn guard(
    State(access): State<Access>,
    mut request: Request,
    next: Next,
) -> Response {
    let headers = request.headers();
    let host = headers
        .get(header::HOST)
        .and_then(|host| host.to_str().ok());
    let is_safe = matches!(*request.method(), Method::GET | Method::HEAD);
    let mut response = if !host.is_some_and(|host| access.is_host(host)) {
        let words = "This desk answers to its own machine alone: use the address that it printed when it started.\n";
        (StatusCode::MISDIRECTED_REQUEST, words).into_response()
    } else if !is_safe && !access.is_own(headers) {
        let words =
            "Refused: the request didn't come from a page of this desk. Nothing was changed.\n";
        (StatusCode::FORBIDDEN, words).into_response()
    } else {
        request.extensions_mut().insert(access.person.clone());
        next.run(request).await
    };
    let headers = response.headers_mut();
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "same-origin"),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            "same-origin",
        ),
        (
            HeaderName::from_static("cross-origin-resource-policy"),
            "same-origin",
        ),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers
        .entry(header::CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    response
}
