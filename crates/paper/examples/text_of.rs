//! Prints the text of a PDF and what a person should know beside it.

#![expect(clippy::print_stdout, clippy::print_stderr, reason = "what it is for")]

fn main() {
    for path in std::env::args().skip(1) {
        let bytes = std::fs::read(&path).unwrap_or_default();
        match paper::read(&bytes) {
            Ok(paper) => {
                print!("{}", paper.text);
                for note in &paper.notes {
                    eprintln!("page {}: {:?}: {}", note.place.page, note.kind, note.words);
                }
            }
            Err(error) => eprintln!("{path}: {error}"),
        }
    }
}
