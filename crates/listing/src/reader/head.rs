//! The head of a document: the lines that state what the listing is, and those that demand something.

use crate::header::is_prose;
use crate::layout::Flow;
use crate::model::Span;
use crate::naming::components_in;

/// The paragraphs of the head, and apart from them the lines that demand something: "For use only beneath floors not less than 6 in.
/// thick" states nothing of the joint, and must be met. A line that goes on in small letters belongs to the one before it.
pub(super) fn split_head(text: &str, head: &[Vec<Span>]) -> (Vec<Vec<Span>>, Vec<Vec<Span>>) {
    let mut stated = Vec::new();
    let mut demanded: Vec<Vec<Span>> = Vec::new();
    for pieces in head {
        let flow = Flow::of(text, pieces.iter().copied());
        if is_prose(flow.text()) {
            stated.push(pieces.clone());
            continue;
        }
        let mut kept = Vec::new();
        let mut demanding = false;
        for (index, piece) in pieces.iter().enumerate() {
            let words = piece.of(text).trim_start();
            let next = pieces.get(index + 1).map(|next| next.of(text).trim_start());
            // "Minimum depth", and the number on the next line.
            let whole = next.is_none_or(|next| next.starts_with(char::is_uppercase));
            let goes_on = demanding && words.starts_with(char::is_lowercase);
            demanding = goes_on || demands(words) || whole && limits_a_part(words);
            match demanded.last_mut().filter(|_| goes_on) {
                Some(last) => last.push(*piece),
                None if demanding => demanded.push(vec![*piece]),
                None => kept.push(*piece),
            }
        }
        if !kept.is_empty() {
            stated.push(kept);
        }
    }
    (stated, demanded)
}

/// Whether a line of the head demands something, and names none of the things that a head states.
fn demands(line: &str) -> bool {
    const DEMANDS: &[&str] = &[
        "shall ",
        "must ",
        "for use ",
        "only ",
        "not less than",
        "no less than",
        "not to be",
        "not permitted",
        "limited to",
        "do not ",
        "required",
    ];
    const STATED: &[&str] = &[
        "rating", "width", "movement", "leakage", "class ", "opening", "design",
    ];
    // "Sealant must be kept from movement for a day" demands; "the joint width must not exceed 2 in." states.
    const COMMANDS: &[&str] = &["shall ", "must ", "do not ", "not permitted", "not to be"];
    let lower = line.to_lowercase();
    let states = |words: &str| STATED.iter().any(|stated| words.contains(stated));
    let command = COMMANDS.iter().filter_map(|words| lower.find(words)).min();
    match command.and_then(|at| lower.get(..at)) {
        Some(subject) => !states(subject),
        None => DEMANDS.iter().any(|words| lower.contains(words)) && !states(&lower),
    }
}

/// Whether a line limits a part of the joint, and states nothing of the joint itself: "Sealant min 1/2 in. deep".
fn limits_a_part(line: &str) -> bool {
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum", "least", "most"];
    const OF_THE_JOINT: &[&str] = &[
        "joint",
        "joints",
        "gap",
        "rating",
        "ratings",
        "hr",
        "hour",
        "hours",
        "movement",
        "leakage",
        "opening",
        "design",
        "width",
        "separation",
        "class",
    ];
    let lower = line.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphanumeric());
    let limits = words.clone().any(|word| LIMITS.contains(&word));
    let numbered = lower.contains(|c: char| c.is_ascii_digit());
    let of_joint = words.any(|word| OF_THE_JOINT.contains(&word));
    let named = || {
        components_in(&lower)
            .iter()
            .any(|(component, weak, _)| !weak && component.name != "joint")
    };
    limits && numbered && !of_joint && named()
}
