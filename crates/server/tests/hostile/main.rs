//! What the desk does with input that is meant to harm: each is refused with words, and nothing is changed.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod connections;
#[path = "../support/ground.rs"]
mod ground;
mod input;
#[path = "../support/mod.rs"]
mod support;
