//! Sets the text of a listing as a PDF: `cargo run -p everyclause-paper --example typeset -- plain in.txt out.pdf`.
//!
//! It makes the demo's PDFs, the same bytes each time. Pages, heads and feet are those of the text; its paragraphs are broken into
//! lines anew, in a proportional face. Three manners: `plain` (one column, head and foot between rules), `block` (statements at the
//! head side by side in two columns) and `fine` (justified, words broken at line ends, powers raised, fractions built).

#![expect(clippy::print_stderr, reason = "what it says when it can't")]

mod face;
mod layout;
mod sheet;

use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [manner, from, to] = arguments.as_slice() else {
        eprintln!("typeset plain|block|fine LISTING.txt LISTING.pdf");
        return ExitCode::FAILURE;
    };
    let Some(manner) = layout::Manner::named(manner) else {
        eprintln!("a manner is plain, block or fine");
        return ExitCode::FAILURE;
    };
    let made = std::fs::read_to_string(from)
        .map(|text| sheet::pdf(&layout::pages(&text, manner), manner))
        .and_then(|pdf| std::fs::write(to, pdf));
    match made {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{from}: {error}");
            ExitCode::FAILURE
        }
    }
}
