//! A finding in half a line.

use conformance::{Explanation, Reason};
use measure::print;

use super::words::on_one_line;

/// Why a clause isn't met or is open, in half a line.
pub(crate) fn reason(explanation: &Explanation) -> String {
    let title = on_one_line(&explanation.title);
    let why = match explanation.reason {
        Reason::Fails => return on_one_line(&failing(explanation, &title)),
        Reason::NoFact => "nobody has shown it",
        Reason::NotSeen => {
            return format!(
                "{title}: known from {} only, not seen in place",
                source(explanation)
            );
        }
        Reason::WhichPart => "of which part it is known isn't said",
        Reason::NoSource => "nobody says where it is known from",
        Reason::Unreadable => "the value can't be compared",
        Reason::TooClose => "closer to the limit than the instrument can tell",
        Reason::Scattered => "the value lies outside its own readings",
        Reason::Deviates => "off the value asked for, and no cited tolerance covers it",
        Reason::BetweenStatements => {
            "the listing states the value twice, and the two disagree here"
        }
        Reason::MakerUnknown => "who made it isn't known",
        Reason::NeedsAPerson => "words for a person to answer",
        Reason::ConditionUndecided => "whether the clause applies can't be told",
        Reason::ReadingInDoubt => "how the clause was read isn't confirmed",
        _ if explanation.share.is_some() => {
            let sentence = without_conversion(&explanation.sentence);
            return on_one_line(&sentence).trim_end_matches('.').to_owned();
        }
        _ => {
            return on_one_line(&explanation.sentence)
                .trim_end_matches('.')
                .to_owned();
        }
    };
    format!("{title}: {why}")
}

/// The value against what is asked for, each in one system.
fn failing(explanation: &Explanation, title: &str) -> String {
    let Some(fact) = &explanation.fact else {
        return explanation.sentence.trim_end_matches('.').to_owned();
    };
    let value = fact
        .quantity
        .map_or_else(|| fact.value.clone(), print::trade);
    if explanation.requirement.starts_with("one of ") {
        return format!("{title} {value} is none of those listed");
    }
    format!(
        "{title} {value}; must be {}",
        without_conversion(&explanation.requirement)
    )
}

/// The words without what stands in parentheses.
fn without_conversion(words: &str) -> String {
    let mut depth = 0_usize;
    let mut kept = String::new();
    for letter in words.chars() {
        match letter {
            '(' => {
                depth += 1;
                kept.truncate(kept.trim_end().len());
            }
            ')' => depth = depth.saturating_sub(1),
            _ if depth == 0 => kept.push(letter),
            _ => {}
        }
    }
    kept
}

/// Where the value is known from.
fn source(explanation: &Explanation) -> String {
    let fact = explanation.fact.as_ref();
    fact.map_or_else(
        || "what is written".to_owned(),
        |fact| on_one_line(&fact.provenance),
    )
}

#[cfg(test)]
mod tests {
    #[test]
    fn conversions_are_left_out() {
        let check =
            |words: &str, expected: &str| assert_eq!(super::without_conversion(words), expected);
        check("at least 4 in. (102 mm)", "at least 4 in.");
        check("51 mm (2 in.) to 102 mm (4 in.)", "51 mm to 102 mm");
        check("required", "required");
    }
}
