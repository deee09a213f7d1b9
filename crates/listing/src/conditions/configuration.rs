//! Configurations named in a sentence: "In Configuration A", "(Configuration B)", "for Config A and B".

use crate::rules::Sentence;

/// A mention of configurations.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Mentioned {
    /// Tokens `[first, last)`.
    pub(crate) first: usize,
    pub(crate) last: usize,
    /// The names, as `Configuration A`.
    pub(crate) names: Vec<String>,
}

/// The configurations that a sentence names, in order.
pub(crate) fn configurations(sentence: &Sentence<'_>) -> Vec<Mentioned> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < sentence.tokens.len() {
        let names_one = sentence.is_any(at, &["configuration", "configurations", "config", "configs", "condition", "arrangement", "case", "scheme"]);
        let skip = usize::from(sentence.is_sign(at + 1, '.'));
        let mut next = at + 1 + skip;
        let mut names = Vec::new();
        while names_one {
            let joint = sentence.is_any(next, &["and", "or"]) || sentence.is_sign(next, ',') || sentence.is_sign(next, '&');
            let place = if joint && !names.is_empty() { next + 1 } else { next };
            let Some(label) = label(sentence, place) else { break };
            names.push(format!("Configuration {label}"));
            next = place + 1;
        }
        if names.is_empty() {
            at += 1;
        } else {
            found.push(Mentioned { first: at, last: next, names });
            at = next;
        }
    }
    found
}

/// A capital letter, or a small number, that names a configuration.
fn label(sentence: &Sentence<'_>, at: usize) -> Option<String> {
    let span = sentence.token(at)?.span;
    let text = span.of(sentence.text);
    let capital = text.len() == 1 && text.chars().all(|c| c.is_ascii_uppercase());
    let numeral = text.len() == 1 && text.chars().all(|c| c.is_ascii_digit()) && sentence.amount_at(at).is_none();
    (capital || numeral).then(|| text.to_owned())
}
