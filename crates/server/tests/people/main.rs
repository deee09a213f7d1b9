//! A team's desk: who comes in, and what each may do.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod coming_in;
mod door;
mod forms;
#[path = "../support/ground.rs"]
mod ground;
mod roles;
mod routes;
#[path = "../support/mod.rs"]
mod support;
mod together;

use sha2::{Digest, Sha256};

/// A fact as a form sends it.
pub(crate) const FACT: &str = "property=joint.width&value=3%2F4+in.&source=witnessed+by+Sam&seen=1";

/// Every page of the desk that has a place in its frame. All routes, and who may ask each, are in `routes`.
pub(crate) const PAGES: [&str; 14] = [
    "/",
    "/joints/J-004",
    "/joints/J-004/section.svg",
    "/listings",
    "/listings/hw-d-0412-ed4.txt",
    "/joints",
    "/questions",
    "/selection?of=HW1",
    "/submittals",
    "/import",
    "/journal",
    "/people",
    "/audit",
    "/account",
];

/// The hash of a cookie's token, as it is kept.
pub(crate) fn hash_of(cookie: &str) -> String {
    let token = cookie.split_once('=').unwrap().1;
    let hash = Sha256::digest(token.as_bytes());
    format!("{hash:x}")
}
