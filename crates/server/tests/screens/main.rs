//! What the desk's screens answer, asked as a browser asks.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod another_listing;
mod answering;
mod attaching;
mod card;
mod correcting;
mod editions;
#[path = "../support/ground.rs"]
mod ground;
mod importing;
mod joint;
mod selecting;
mod selecting_anew;
mod submitting;
mod support;
