//! An item's title: the words between its marker and its text.

use measure::notation;

use crate::phrase::count_word;

/// Dashes between the parts of a title, or between a maker and its products.
const DASHES: [&str; 4] = [" -- ", " — ", " – ", " - "];

/// The longest title, in words.
const LONGEST: usize = 10;

/// How many bytes of an item's running text are its title, with the dash or stop that ends it; none when it begins
/// with its text at once.
///
/// The awkward shapes: a title of several parts joined by dashes (`LIGHT GAUGE FRAMING* -- SLOTTED RUNNER -- (As an
/// alternate) -- Slotted ...`); a title closed by a stop (`Floor slabs. Both ...`), which must be short, hold no
/// quantity and no verb; a title in capitals alone on its line.
pub(crate) fn title_len(text: &str) -> usize {
    let whole = text.trim();
    if heads_what_is_ruled_out(whole) {
        return text.len();
    }
    let words = whole.split_whitespace().count();
    if words <= 7
        && !holds_quantity(whole)
        && !holds_class(whole)
        && !has_verb(whole)
        && !whole.contains([',', ';'])
        && !whole.contains(": ")
        && !whole.contains(". ")
        && !DASHES.iter().any(|dash| whole.contains(dash))
    {
        return text.len();
    }
    let mut end = 0;
    while let Some(part) = part(text.get(end..).unwrap_or_default(), end == 0) {
        end += part;
    }
    end
}

/// Whether a title heads what is not allowed, or what the listing says nothing of.
pub(crate) fn heads_what_is_ruled_out(title: &str) -> bool {
    const RULED_OUT: &[&str] = &[
        "not permitted",
        "not allowed",
        "prohibited",
        "not accepted",
        "forbidden",
        "not covered",
        "exclusions",
        "excluded",
        "out of scope",
        "outside the scope",
        "not included",
        "not classified",
    ];
    RULED_OUT.contains(
        &title
            .trim()
            .trim_end_matches(['.', ':'])
            .to_lowercase()
            .as_str(),
    )
}

/// The length of one part of a title with its dash or stop.
fn part(text: &str, first: bool) -> Option<usize> {
    let (at, mark) = ending(text)?;
    let words = text.get(..at)?;
    let count = words.split_whitespace().count();
    let parenthesis = words.starts_with('(') && words.trim_end_matches(['*', ' ']).ends_with(')');
    let heading = if first {
        true
    } else {
        parenthesis || (is_capitals(words) && !counts(words))
    };
    let named = before_offer(words);
    let count = named.split_whitespace().count().min(count);
    let holds_number = !parenthesis && (holds_quantity(named) || holds_class(named));
    let reads = heading && count > 0 && count <= LONGEST && !holds_number && !has_verb(named);
    (reads || (parenthesis && count <= LONGEST * 3)).then_some(at + mark)
}

/// The words before the bracket that ends them and says of which joints the thing is, or what it replaces: `Cover plate` of "Cover plate (Configuration B, not
/// shown)", `Sealant` of "Sealant (alternative to 2.3, not shown)". All of the words where no such bracket does. A size in a bracket stays text.
fn before_offer(words: &str) -> &str {
    const OFFERS: [&str; 8] = [
        "alternate to",
        "alternative to",
        "alternate for",
        "alternative for",
        "as an alternate",
        "as an alternative",
        "in lieu of",
        "in place of",
    ];
    const KINDS: [&str; 6] = [
        "configuration",
        "config",
        "optional",
        "option",
        "not shown",
        "where used",
    ];
    let whole = words.trim_end_matches(['*', ' ']);
    let Some((named, bracket)) = whole
        .strip_suffix(')')
        .and_then(|whole| whole.split_once(" ("))
    else {
        return words;
    };
    let lower = bracket.to_lowercase();
    let opens = |any: &[&str]| any.iter().any(|word| lower.starts_with(word));
    if (opens(&OFFERS) || opens(&KINDS)) && !holds_quantity(bracket) && !holds_class(bracket) {
        named
    } else {
        words
    }
}

/// Where the first dash, colon or stop that may end a title stands, and its length with the space after it.
fn ending(text: &str) -> Option<(usize, usize)> {
    let mut depth = 0_i32;
    let whole = text.trim_end();
    for (at, c) in text.char_indices() {
        let rest = text.get(at..)?;
        match c {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ if depth > 0 => {}
            ' ' => {
                let dash = DASHES.iter().find(|dash| rest.starts_with(**dash));
                // `density 2300 - 2450 kg/m3` is a range.
                let range = dash.is_some_and(|dash| {
                    let after = rest.get(dash.len()..).unwrap_or_default();
                    after.starts_with(|c: char| c.is_ascii_digit())
                        && text
                            .get(..at)
                            .is_some_and(|before| before.ends_with(|c: char| c.is_ascii_digit()))
                });
                if let Some(dash) = dash.filter(|_| !range) {
                    return Some((at, dash.len()));
                }
            }
            ':' if rest.starts_with(": ") => return Some((at, 2)),
            '.' if rest
                .trim_start_matches(['.', '*', '†', '‡'])
                .starts_with(' ') =>
            {
                let abbreviated = text
                    .get(..at)
                    .is_some_and(crate::sentences::ends_in_abbreviation);
                if !abbreviated {
                    return Some((at, rest.find(' ').unwrap_or(1) + 1));
                }
            }
            _ => {}
        }
        if at > 160 {
            return None;
        }
    }
    is_capitals(whole).then_some((whole.len(), text.len() - whole.len()))
}

fn is_capitals(words: &str) -> bool {
    let letters = words.chars().filter(|c| c.is_alphabetic());
    letters.clone().count() > 1 && letters.clone().all(char::is_uppercase)
}

/// Whether words hold a fire-resistance class: `EI 90`, `EI90-H`.
fn holds_class(words: &str) -> bool {
    let numbered = |rest: &str| rest.starts_with(|c: char| c.is_ascii_digit());
    let mut last = "";
    words.split_whitespace().any(|word| {
        let letters = word.trim_start_matches(|c: char| c.is_ascii_uppercase());
        let class = word.get(..word.len() - letters.len()).unwrap_or_default();
        let is_class = |class: &str| matches!(class, "E" | "EI" | "EW" | "REI");
        let found = (is_class(last) && numbered(word)) || (is_class(class) && numbered(letters));
        last = word;
        found
    })
}

pub(crate) fn holds_quantity(words: &str) -> bool {
    words
        .char_indices()
        .any(|(at, c)| c.is_ascii_digit() && notation::quantity_at(words, at).is_some())
}

/// Words that make a sentence of what would else be a title.
fn has_verb(words: &str) -> bool {
    const VERBS: [&str; 20] = [
        "shall",
        "is",
        "are",
        "be",
        "may",
        "must",
        "consist",
        "consists",
        "has",
        "have",
        "bears",
        "not",
        "installed",
        "secured",
        "applied",
        "used",
        "permitted",
        "required",
        "spaced",
        "measured",
    ];
    words
        .split(|c: char| !c.is_alphabetic())
        .any(|word| VERBS.iter().any(|verb| verb.eq_ignore_ascii_case(word)))
        && !words.starts_with('(')
}

/// Whether words that stand as a title demand something, and so are text as well: `STUDS - (2) #10 SCREWS EACH END`, `Fill the flutes solid.`
pub(crate) fn demands(title: &str) -> bool {
    counts(title) || begins_with_order(title)
}

/// Whether words count or limit: `two layers`, `(2) SCREWS`, `#10`, `EACH END MIN.`
fn counts(words: &str) -> bool {
    const LIMITS: &[&str] = &["min", "max", "minimum", "maximum"];
    let mut after_name = false;
    words.split_whitespace().any(|word| {
        let bare = word.trim_matches(|c: char| !(c.is_alphanumeric() || c == '#' || c == '-'));
        let lower = bare.to_ascii_lowercase();
        let number = bare.trim_start_matches('#');
        let is_number = !number.is_empty() && number.chars().all(|c| c.is_ascii_digit());
        let sized = bare.starts_with('#') && is_number;
        let counted = is_number && word.starts_with('(') && word.ends_with(')') && !after_name;
        // "One", "single" and "double" name things as often as they count them.
        let many = count_word(bare).is_some_and(|count| count > 1)
            && !matches!(lower.as_str(), "double" | "twin" | "triple");
        after_name = is_number || bare.len() > 1;
        sized || counted || many || LIMITS.contains(&lower.as_str())
    })
}

/// Whether words begin with what somebody is to do: `Fill the flutes solid.`
fn begins_with_order(words: &str) -> bool {
    const ORDERS: &[&str] = &[
        "provide", "install", "apply", "use", "fasten", "attach", "keep", "hold", "leave", "clean",
        "remove", "stagger", "maintain", "extend", "continue", "compress", "ensure", "do",
        "repair", "check", "measure", "wipe", "mask", "place", "position", "insert", "push",
        "trim", "wait", "allow", "fill", "pack", "cut", "omit", "grout", "brush", "spray", "tape",
        "butt", "secure", "anchor", "tool",
    ];
    let mut words = words.split_whitespace().map(|word| {
        word.trim_matches(|c: char| !c.is_alphanumeric())
            .to_ascii_lowercase()
    });
    let first = words.next().unwrap_or_default();
    // "Fill material", "Spray coating" and "Tape" are things.
    let next = words.next().unwrap_or_default();
    let goes_on = matches!(
        next.as_str(),
        "the"
            | "a"
            | "an"
            | "all"
            | "each"
            | "every"
            | "any"
            | "no"
            | "not"
            | "it"
            | "both"
            | "with"
            | "to"
            | "in"
            | "at"
            | "from"
            | "flutes"
            | "joint"
            | "joints"
            | "only"
            | "and"
            | "off"
            | "over"
            | "down"
            | "out"
            | "up"
            | "solid"
            | "flush"
    );
    ORDERS.contains(&first.as_str()) && goes_on
}

/// A title without the marks that adorn it.
pub(crate) fn clean(words: &str) -> String {
    let plain: String = words
        .chars()
        .filter(|c| !matches!(c, '*' | '†' | '‡'))
        .collect();
    let plain = plain
        .trim()
        .trim_end_matches(['.', ':', '-', '—', '–', ' ']);
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &str) {
        assert_eq!(
            clean(text.get(..title_len(text)).unwrap()),
            expected,
            "{text}"
        );
    }

    #[test]
    fn what_demands_is_more_than_a_title() {
        for text in [
            "STUDS - (2) #10 SCREWS EACH END",
            "TWO LAYERS EACH SIDE",
            "Fill the flutes solid.",
            "SCREWS EA. END MIN.",
            "PACK JOINT FULL DEPTH.",
        ] {
            assert!(demands(text), "{text}");
        }
        for text in [
            "Spray coating [3] (alternate to 4.1)",
            "Fill material*",
            "Packing (1)",
            "Option 2",
            "One of the following",
            "LIGHT GAUGE FRAMING -- SLOTTED CEILING RUNNER",
            "Two-part sealant",
        ] {
            assert!(!demands(text), "{text}");
        }
    }

    #[test]
    fn titles() {
        check(
            "STEEL FLOOR AND FORM UNITS* -- Max 3 in. deep",
            "STEEL FLOOR AND FORM UNITS",
        );
        check(
            "LIGHT GAUGE FRAMING* -- SLOTTED CEILING RUNNER -- (Alternate to Item 2A, Configuration A only) -- Slotted",
            "LIGHT GAUGE FRAMING -- SLOTTED CEILING RUNNER -- (Alternate to Item 2A, Configuration A only)",
        );
        check("Floor slabs. Both slabs forming", "Floor slabs");
        check(
            "Packing Material* -- (Not required for 1 Hr joints 3/8 in. to 1/2 in. wide.) Min 4.0",
            "Packing Material",
        );
        check("SUPPORTING CONSTRUCTION", "SUPPORTING CONSTRUCTION");
        check(
            "The width of the joint, when made, shall be no less than 1/2 in. It",
            "",
        );
        check("Depth of packing: min 100 mm", "Depth of packing");
        check(
            "Spray coating [3] (alternate to 4.1). Wet film 3.2 mm",
            "Spray coating [3] (alternate to 4.1)",
        );
        check(
            "Cover plate (Configuration B, not shown). 1.5 mm steel",
            "Cover plate (Configuration B, not shown)",
        );
        check(
            "Sealant (alternative to 2.3, not shown). Depth 12 mm",
            "Sealant (alternative to 2.3, not shown)",
        );
        check(
            "Board-lined wall (Configuration A only; joints up to 75 mm). Studs",
            "",
        );
        check(
            "PVC-U, for closed or vented piping. Outside diameter up to 160 mm",
            "PVC-U, for closed or vented piping",
        );
    }
}
