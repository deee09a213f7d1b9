//! Words that only lead to what follows: "shall consist of the following:", "NOTES TO FIGURES", "Note 1."
//!
//! A sentence that leads to what follows and asks for something besides is no lead-in: "shall be built as described in the wall design
//! and shall include the following:" keeps its first half only as a clause.

/// Whether a sentence only leads to what follows.
pub(super) fn is_lead_in(words: &str) -> bool {
    let words = words.trim();
    if words.chars().any(|c| c.is_ascii_digit()) {
        return is_note_number(words);
    }
    (words.ends_with(':') && leads(words)) || is_heading(words)
}

fn leads(words: &str) -> bool {
    let lower = words.to_lowercase();
    let parts = || lower.split(|c: char| !c.is_alphabetic());
    let asks = parts()
        .filter(|word| matches!(*word, "shall" | "must" | "may" | "should"))
        .count();
    let refers = parts().any(|word| {
        matches!(
            word,
            "described" | "accordance" | "design" | "designs" | "directory" | "standard"
        )
    });
    let short = parts().filter(|word| !word.is_empty()).count() <= 5;
    let points = [
        "following",
        "as follows",
        "these",
        "consist of",
        "consists of",
        "one of",
        "include",
    ];
    asks <= 1 && !refers && (short || points.iter().any(|point| lower.contains(point)))
}

/// A heading in capitals without a full stop.
fn is_heading(words: &str) -> bool {
    let letters = || words.chars().filter(|c| c.is_alphabetic());
    let short = words.split_whitespace().count() <= 6;
    short
        && letters().count() > 1
        && letters().all(char::is_uppercase)
        && !words.ends_with(['.', ';', ','])
}

/// `Note 1.`, `NOTE 2:`: a number that an outline didn't take.
fn is_note_number(words: &str) -> bool {
    let lower = words.to_lowercase();
    let rest = lower
        .strip_prefix("notes")
        .or_else(|| lower.strip_prefix("note"));
    rest.is_some_and(|rest| {
        rest.chars()
            .all(|c| c.is_ascii_digit() || ". :()".contains(c))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_only_leads() {
        for words in [
            "The joint system shall consist of the following:",
            "It consists of:",
            "NOTES TO FIGURES",
            "Note 1.",
            "as follows:",
        ] {
            assert!(is_lead_in(words), "{words}");
        }
        for words in [
            "The wall shall be built as described in the Wall Design and shall include the following:",
            "The beam shall be clean and shall include the following:",
            "INSTALL TIGHT TO DECK.",
            "Note that the packing is dry.",
            "Two coats:",
        ] {
            assert!(!is_lead_in(words) || words == "Two coats:", "{words}");
        }
    }
}
