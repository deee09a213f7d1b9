//! Cases written as inequalities of a letter: `10 ≤ w ≤ 30`, `30 < w ≤ 60`, `w > 100`; or with a comma between their ends: `Over 2 in., to 4 in.`

/// The same in words that a cell may be read from, `10 to 30`, `over 30 to 60`, `> 100`; none where it is no such inequality. An upper end that is
/// left out, `w < 60` behind a lower one, has no such words.
pub(super) fn spelled(text: &str) -> Option<String> {
    let text = text.trim();
    if let Some((lower, upper)) = text.split_once(", to ") {
        let over = ["over ", "above ", "from "];
        let begins = over
            .iter()
            .any(|over| lower.to_lowercase().starts_with(over));
        return (begins && has_number(upper)).then(|| format!("{lower} to {upper}"));
    }
    let at = text.find(is_sign)?;
    let (before, sign, behind) = parted(text, at)?;
    if let Some(second) = behind.find(is_sign) {
        let (letter, other, hi) = parted(behind, second)?;
        let lower = match (sign, other) {
            ("≤" | "<=", "≤" | "<=") => before.to_owned(),
            ("<", "≤" | "<=") => format!("over {before}"),
            _ => return None,
        };
        return (is_letter(letter) && has_number(before) && has_number(hi))
            .then(|| format!("{lower} to {hi}"));
    }
    (is_letter(before) && has_number(behind)).then(|| format!("{sign} {behind}"))
}

/// What stands before a sign, the sign, and what stands behind it.
fn parted(text: &str, at: usize) -> Option<(&str, &str, &str)> {
    let (before, rest) = text.split_at_checked(at)?;
    let end = rest
        .find(|c: char| !is_sign(c) && c != '=')
        .unwrap_or(rest.len());
    let (sign, behind) = rest.split_at_checked(end)?;
    Some((before.trim(), sign, behind.trim()))
}

const fn is_sign(c: char) -> bool {
    matches!(c, '≤' | '≥' | '<' | '>')
}

/// `w`, `B`
fn is_letter(text: &str) -> bool {
    let mut letters = text.chars();
    letters.next().is_some_and(char::is_alphabetic) && letters.next().is_none()
}

fn has_number(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_digit()) && !text.contains(is_sign)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inequalities_of_a_letter() {
        for (text, expected) in [
            ("10 ≤ w ≤ 30", Some("10 to 30")),
            ("30 < w ≤ 60 mm", Some("over 30 to 60 mm")),
            ("30<w<=60", Some("over 30 to 60")),
            ("w > 100", Some("> 100")),
            ("Over 2 in., to 4 in.", Some("Over 2 in. to 4 in.")),
            ("2 in., to 4 in.", None),
            ("b ≤ 20 mm", Some("≤ 20 mm")),
            // The upper end isn't in it.
            ("30 ≤ w < 60", None),
            ("60 ≥ w > 30", None),
            ("≤ 30", None),
            ("10 to 30", None),
            ("wall ≥ 120", None),
        ] {
            assert_eq!(spelled(text).as_deref(), expected, "{text}");
        }
    }
}
