//! A confirmation's file that nests without end is refused, on a thread with no more stack than any other has.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a step that fails must fail the test"
)]

use listing::confirm::Overlay;

#[test]
fn a_confirmation_nested_without_end_is_refused() {
    let deep = 100_000;
    let hostile = [
        format!("source_name = {}", "[".repeat(deep)),
        format!("source_name = {}1{}", "[".repeat(deep), "]".repeat(deep)),
        format!("source_name = {}", "{a=".repeat(deep)),
        format!("{}name = 1", "a.".repeat(deep)),
        format!("[{}name]", "a.".repeat(deep)),
        format!("[[{}name]]", "a.".repeat(deep)),
        format!("source_name = {{{}b = 1}}", "a.".repeat(deep)),
    ];
    for text in hostile {
        let start: String = text.chars().take(20).collect();
        let told = std::thread::Builder::new()
            .stack_size(2 << 20)
            .spawn(move || Overlay::parse(&text).unwrap_err().to_string())
            .unwrap()
            .join();
        let told = told.unwrap_or_else(|_| panic!("{start}"));
        assert!(
            !told.is_empty() && told.len() < 2_000,
            "{start}: {}",
            told.len()
        );
    }
}
