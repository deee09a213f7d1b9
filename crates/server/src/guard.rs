//! Who may ask, and what a page may do.
//!
//! A desk of one machine answers to that machine alone; but every page that its browser has open can send requests here. A team's desk
//! answers to whoever the network lets through. So:
//!
//! - the `Host` must be this machine's, or the team's public one: a name of somebody else's that was made to lead here (DNS rebinding) could read
//!   everything;
//! - what changes something must come from the desk's own pages: by `Origin`, or by `Sec-Fetch-Site` (W3C Fetch Metadata), and on a team's desk by
//!   a token in each form too (`body`);
//! - on a team's desk nobody sees anything before they have signed in;
//! - a page runs the desk's own scripts and styles, sends forms to it alone, and stands in nobody's frame (W3C Content Security Policy).

use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use store::Store;
use store::people::Role;

use crate::people::{AtTeam, Front, Team};
use crate::person::Person;
use crate::trouble::Trouble;
use crate::{api, body};

/// What a page may do.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
                      form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

/// A browser that has once come by TLS comes by nothing else for a year (RFC 6797).
const ONLY_TLS: &str = "max-age=31536000";

/// The most bytes of an address with its query.
const MOST_IN_ADDRESS: usize = 4 << 10;

/// Who may ask, and in whose name.
#[derive(Debug, Clone)]
pub struct Access(Kind);

#[derive(Debug, Clone)]
enum Kind {
    /// This machine, as browsers name it, and whoever sits at it.
    Here { hosts: [String; 3], person: Person },
    /// People who sign in.
    Team(Arc<Team>),
}

impl Access {
    /// This machine alone, through a port of it. Whoever asks is `by`, and may do everything.
    pub fn here(by: &str, port: u16) -> Self {
        let host = |name: &str| format!("{name}:{port}");
        Self(Kind::Here {
            hosts: [host("127.0.0.1"), host("localhost"), host("[::1]")],
            person: Person {
                name: by.trim().to_owned(),
                role: Role::Administrator,
                form_token: None,
            },
        })
    }

    /// The people of a store, who come in by a front.
    ///
    /// # Errors
    /// When the system has no randomness to give.
    pub fn team(store: Store, front: Front) -> Result<Self, Trouble> {
        Ok(Self(Kind::Team(Arc::new(Team::of(store, front)?))))
    }

    /// Whether it is for this machine alone, and asks nobody who they are.
    pub(crate) const fn is_of_one_machine(&self) -> bool {
        matches!(self.0, Kind::Here { .. })
    }

    fn is_host(&self, host: &str) -> bool {
        match &self.0 {
            Kind::Here { hosts, .. } => hosts.iter().any(|here| here == host),
            Kind::Team(team) => team.front.is_host(host),
        }
    }

    fn is_origin(&self, origin: &str) -> bool {
        match &self.0 {
            Kind::Here { .. } => origin
                .strip_prefix("http://")
                .is_some_and(|host| self.is_host(host)),
            Kind::Team(team) => team.front.is_origin(origin),
        }
    }

    /// Whether a request is from the desk's own pages, or from a program that says what it sends.
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
            (None, None) => body::is_json(headers),
        }
    }

    /// Whoever may not ask at all is told so here, before anything of the body is read.
    fn turned_away(&self, request: &Request) -> Option<Response> {
        let headers = request.headers();
        // Of two, a proxy may have gone by the other (RFC 9112, section 3.2).
        let mut hosts = headers.get_all(header::HOST).into_iter();
        let host = match (hosts.next(), hosts.next()) {
            (Some(host), None) => host.to_str().ok(),
            _ => None,
        };
        let address = request.uri().path_and_query();
        if address.is_some_and(|address| address.as_str().len() > MOST_IN_ADDRESS) {
            let words = "The address is longer than any of this desk. Nothing was done.\n";
            Some((StatusCode::URI_TOO_LONG, words).into_response())
        } else if !host.is_some_and(|host| self.is_host(host)) {
            let words = match self.0 {
                Kind::Here { .. } => {
                    "This desk answers to its own machine alone: use the address that it printed when it started.\n"
                }
                Kind::Team(_) => "This desk answers at another address.\n",
            };
            Some((StatusCode::MISDIRECTED_REQUEST, words).into_response())
        } else if changes(request) && !self.is_own(headers) {
            let words =
                "Refused: the request didn't come from a page of this desk. Nothing was changed.\n";
            Some((StatusCode::FORBIDDEN, words).into_response())
        } else {
            None
        }
    }

    /// Puts whoever asks into the request; or says that they must sign in first.
    async fn admit(&self, request: &mut Request) -> Result<Option<Response>, Trouble> {
        let team = match &self.0 {
            Kind::Here { person, .. } => {
                request.extensions_mut().insert(person.clone());
                return Ok(None);
            }
            Kind::Team(team) => team,
        };
        request.extensions_mut().insert(AtTeam(team.clone()));
        let signed_in = team.signed_in(request.headers()).await?;
        if let Some(signed_in) = signed_in {
            request.extensions_mut().insert(signed_in.as_person());
            request.extensions_mut().insert(signed_in);
            return Ok(None);
        }
        let path = request.uri().path();
        let stands_open =
            path == "/sign-in" || path.starts_with("/invitations/") || path.starts_with("/assets/");
        if stands_open {
            return Ok(None);
        }
        if path.starts_with(api::PREFIX) {
            return Ok(Some(api::problem(Trouble::NotSignedIn)));
        }
        if changes(request) {
            return Err(Trouble::NotSignedIn);
        }
        let whither = utf8_percent_encode(path, NON_ALPHANUMERIC);
        let sign_in = format!("/sign-in?to={whither}");
        Ok(Some(Redirect::to(&sign_in).into_response()))
    }

    async fn answer(&self, mut request: Request, next: Next) -> Response {
        if let Some(response) = self.turned_away(&request) {
            return response;
        }
        match self.admit(&mut request).await {
            Ok(None) => {}
            Ok(Some(response)) => return response,
            Err(trouble) => return self.as_told_outside(trouble.into_response()),
        }
        let is_outside = request.extensions().get::<Person>().is_none();
        let needs_token = matches!(self.0, Kind::Team(_)) && changes(&request);
        match body::read(request, needs_token).await {
            Ok(request) => {
                let response = next.run(request).await;
                if is_outside {
                    self.as_told_outside(response)
                } else {
                    response
                }
            }
            Err(refused) => refused.into_response(),
        }
    }

    /// An answer as it is given to somebody who hasn't signed in: why something is broken, and where, isn't for everybody.
    fn as_told_outside(&self, response: Response) -> Response {
        if self.is_of_one_machine() || !response.status().is_server_error() {
            return response;
        }
        let words = "The desk can't answer at the moment. Nothing was changed.\n";
        (response.status(), words).into_response()
    }
}

fn changes(request: &Request) -> bool {
    !matches!(*request.method(), Method::GET | Method::HEAD)
}

/// Lets through what may be asked, and says what a page may do.
pub(crate) async fn guard(State(access): State<Access>, request: Request, next: Next) -> Response {
    let mut response = access.answer(request, next).await;
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
    if matches!(&access.0, Kind::Team(team) if team.front.is_secure()) {
        headers.insert(
            header::STRICT_TRANSPORT_SECURITY,
            HeaderValue::from_static(ONLY_TLS),
        );
    }
    headers
        .entry(header::CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    response
}
