//! An item's marker as printed at the start of a line: `1.`, `2A1.`, `3.1.2`, `(b)`, `III.`, `§ 4.`, `C-1a`, `Item 2:`.

use measure::notation;

/// One part of a marker's label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Part {
    Number(u32),
    Letters(String),
}

impl Part {
    /// Whether a list may begin with this part: `1`, `A`, `a`, `I`, `i`.
    pub(crate) fn is_first(&self) -> bool {
        match self {
            Self::Number(n) => *n == 1,
            Self::Letters(letters) => {
                letter(letters) == Some(1) || roman(letters) == Some(1) || letters == ALTERNATE
            }
        }
    }

    /// Whether this part follows another, with at most one left out between.
    pub(crate) fn follows(&self, before: &Self) -> bool {
        let next =
            |a: Option<u32>, b: Option<u32>| a.zip(b).is_some_and(|(a, b)| b > a && b - a <= 2);
        match (before, self) {
            (Self::Number(a), Self::Number(b)) => next(Some(*a), Some(*b)),
            (Self::Letters(a), Self::Letters(b)) => {
                same_case(a, b) && (next(letter(a), letter(b)) || next(roman(a), roman(b)))
            }
            _ => false,
        }
    }

    /// Whether it may be a Roman numeral: `I`, `ii`.
    pub(crate) fn is_roman(&self) -> bool {
        matches!(self, Self::Letters(letters) if roman(letters).is_some())
    }

    /// Numbers, capitals and small letters are three kinds of label.
    pub(crate) fn kind(&self) -> u8 {
        match self {
            Self::Number(_) => 0,
            Self::Letters(letters) if letters.starts_with(char::is_uppercase) => 1,
            Self::Letters(_) => 2,
        }
    }
}

/// What stands behind a label in the place of a letter where the item is an alternate of that: `D-ALT.`
pub(crate) const ALTERNATE: &str = "ALT";

fn same_case(a: &str, b: &str) -> bool {
    a.starts_with(char::is_uppercase) == b.starts_with(char::is_uppercase)
}

fn letter(letters: &str) -> Option<u32> {
    let mut chars = letters.chars();
    let first = chars.next()?.to_ascii_lowercase();
    chars
        .next()
        .is_none()
        .then(|| u32::from(first) - u32::from('a') + 1)
}

fn roman(letters: &str) -> Option<u32> {
    const NUMERALS: [&str; 20] = [
        "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii", "xiii", "xiv",
        "xv", "xvi", "xvii", "xviii", "xix", "xx",
    ];
    let lower = letters.to_ascii_lowercase();
    let at = NUMERALS.iter().position(|numeral| *numeral == lower)?;
    u32::try_from(at + 1).ok()
}

/// How the label is closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Close {
    /// `1.`
    Dot,
    /// `a)`
    Paren,
    /// `(a)`
    Parens,
    /// `[1]`
    Brackets,
    /// `<1>`
    Angles,
    /// `Item 1:`
    Colon,
    /// `A-  USE`
    Dash,
    /// `.2`, a part of the number above, behind a stop in place of it.
    LedByDot,
    /// `3.1.2` and then the text.
    Nothing,
}

/// A marker as printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Marker {
    /// The parts of its label.
    pub(crate) parts: Vec<Part>,
    /// The label as printed, without what closes it.
    pub(crate) label: String,
    /// How it is closed.
    pub(crate) close: Close,
    /// Whether a word or sign for an item stands before it.
    pub(crate) introduced: bool,
    /// Whether that is the sign for a section or a word for one, and the path is cited with the sign.
    pub(crate) signed: bool,
    /// How many bytes of the line it takes, the white space after it included.
    pub(crate) len: usize,
}

/// The labels in brackets that begin more than one line: `[a] Makers: ...` below each item that has the mark `[a]`. No outline has an item twice.
pub(crate) fn note_marks<'l>(lines: impl Iterator<Item = &'l str>) -> Vec<String> {
    let begun = lines
        .map(str::trim_start)
        .filter(|words| words.starts_with('['));
    let mut labels: Vec<String> = begun.filter_map(marker).map(|own| own.label).collect();
    labels.sort_unstable();
    let twice = labels.windows(2).filter_map(|pair| match pair {
        [one, other] if one == other => Some(one.clone()),
        _ => None,
    });
    twice.collect()
}

/// The words and signs that introduce an item's number.
const INTRODUCTIONS: [&str; 12] = [
    "§",
    "item ",
    "items ",
    "note ",
    "art. ",
    "section ",
    "clause ",
    "step ",
    "part ",
    "article ",
    "paragraph ",
    "chapter ",
];

/// Reads the marker at the start of a line's visible text.
pub(crate) fn marker(line: &str) -> Option<Marker> {
    let signs = note_signs(line);
    let own = unsigned_marker(line.get(signs..)?)?;
    // A number that nothing closes may count what a line of a list speaks of: `* 2 screws`.
    let closed = own.close != Close::Nothing;
    (signs == 0 || closed).then(|| Marker {
        len: signs + own.len,
        ..own
    })
}

/// The marker that a cell is, whole.
pub(crate) fn cell_marker(words: &str) -> Option<Marker> {
    let closed = format!("{}. x", words.trim().trim_end_matches('.'));
    let marker = marker(&closed)?;
    (marker.len + 1 == closed.len() || marker.len >= closed.len() - 2).then_some(marker)
}

/// How much of a line the sign of a note before its marker takes: the `** ` of `** 2A. Strap` and of `**2A. Strap`, which a legend explains.
fn note_signs(line: &str) -> usize {
    const SIGNS: [char; 4] = ['*', '†', '‡', '#'];
    const MOST: usize = 3;
    let len = |signs: &str| line.len() - signs.len();
    let rest = line.trim_start_matches(SIGNS);
    let few = line.chars().take_while(|c| SIGNS.contains(c)).count() <= MOST;
    if few { len(rest.trim_start()) } else { 0 }
}

fn unsigned_marker(line: &str) -> Option<Marker> {
    let introduction = INTRODUCTIONS.iter().find(|word| {
        line.get(..word.len())
            .is_some_and(|head| head.eq_ignore_ascii_case(word))
    });
    let skipped = introduction.map_or(0, |word| word.len());
    let body = line.get(skipped..)?;
    let spaces = body.len() - body.trim_start().len();
    let body = body.trim_start();
    let opening = body
        .chars()
        .next()
        .filter(|c| matches!(c, '(' | '[' | '<' | '.'));
    let open = opening.map_or(0, char::len_utf8);
    let (parts, label_len) = label(body.get(open..)?)?;
    let label = body.get(open..open + label_len)?.to_owned();
    let after = body.get(open + label_len..)?;
    let (close, closing) = close(opening, after)?;
    let rest = after.get(closing..)?;
    // `d.* Board`, which a legend explains
    let behind = rest.trim_start_matches('*');
    let signed = close != Close::Nothing && behind.starts_with(' ');
    let (closing, rest) = if signed {
        (closing + rest.len() - behind.len(), behind)
    } else {
        (closing, rest)
    };
    let gap = rest.len() - rest.trim_start().len();
    // `A - Hangers. Steel`
    let dash = dashed(&parts, introduction.is_some(), rest);
    let (close, closing, gap) = match dash.filter(|_| close == Close::Nothing) {
        Some(dash) => (Close::Dash, closing + dash, 1),
        None => (close, closing, gap),
    };
    if gap == 0 && !rest.is_empty() && !(close == Close::Dot && runs_into_name(&parts, rest)) {
        return None;
    }
    let introduced = introduction.is_some();
    let plausible = match close {
        Close::Nothing => introduced || stands_alone(&parts, &label, rest, body),
        Close::Dot | Close::Paren | Close::Colon | Close::Dash => {
            !rest.trim_start().is_empty() || label.len() <= 6
        }
        Close::Parens | Close::Brackets | Close::Angles => true,
        Close::LedByDot => is_part_of_above(&parts, rest, body),
    };
    plausible.then(|| Marker {
        parts,
        label,
        close,
        introduced,
        signed: introduction
            .is_some_and(|word| matches!(*word, "§" | "art. " | "section " | "clause ")),
        len: skipped + spaces + open + label_len + closing + gap,
    })
}

/// How many bytes the dash takes with the blank before it that parts a capital letter, or what a word for an item introduces, from a name: `A - Hangers`,
/// `Item 3 -- Support clips`.
fn dashed(parts: &[Part], introduced: bool, rest: &str) -> Option<usize> {
    let lettered = matches!(parts, [Part::Letters(letter)] if letter.len() == 1 && letter.starts_with(char::is_uppercase));
    let dash = [" - ", " – ", " — ", " -- "]
        .into_iter()
        .find(|dash| rest.starts_with(dash))?;
    let name = rest.get(dash.len()..)?;
    let mut chars = name.chars();
    let capital = chars.next().is_some_and(char::is_uppercase);
    let word = chars.next().is_some_and(char::is_lowercase);
    (capital && (introduced || lettered && word)).then_some(dash.len() - 1)
}

/// Reads a marker of a number and a letter that only a blank parts from a name, `3A Sealant`: one only where the item around says that there is such.
pub(crate) fn bare_marker(line: &str) -> Option<Marker> {
    let (parts, len) = label(line)?;
    let name = line.get(len..)?.strip_prefix(' ')?;
    let lettered = matches!(parts.as_slice(), [Part::Number(_), Part::Letters(_)]);
    (lettered && name.starts_with(char::is_uppercase)).then(|| Marker {
        parts,
        label: line.get(..len).unwrap_or_default().to_owned(),
        close: Close::Nothing,
        introduced: false,
        signed: false,
        len: len + 1,
    })
}

/// The label's parts and length: digits and letters, joined directly or by a dot or hyphen.
fn label(text: &str) -> Option<(Vec<Part>, usize)> {
    let mut parts = Vec::new();
    let mut at = 0;
    loop {
        let rest = text.get(at..)?;
        let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
        let letters = rest.bytes().take_while(u8::is_ascii_alphabetic).count();
        let padded = is_padded(&parts, text.get(..at)?, rest, digits);
        if (1..=3).contains(&digits) && (digits == 1 || !rest.starts_with('0') || padded) {
            parts.push(Part::Number(rest.get(..digits)?.parse().ok()?));
            at += digits;
        } else if letters > 0 && (letters == 1 || roman(rest.get(..letters)?).is_some()) {
            parts.push(Part::Letters(rest.get(..letters)?.to_owned()));
            at += letters;
        } else {
            return None;
        }
        if parts.len() > 6 {
            return None;
        }
        let rest = text.get(at..)?;
        let mut next = rest.chars();
        match (next.next(), next.next()) {
            (Some('.' | '-'), Some(after)) if joins(after, next.next()) => at += 1,
            (Some(c), _) if c.is_ascii_alphanumeric() => {}
            _ => break,
        }
    }
    let rest = text.get(at..)?;
    // `J-2(b)`, a letter in brackets behind a number.
    let mut behind = rest.chars();
    if let (Some('('), Some(letter), Some(')')) = (behind.next(), behind.next(), behind.next())
        && letter.is_ascii_lowercase()
        && matches!(parts.as_slice(), [Part::Letters(_), Part::Number(_)])
    {
        parts.push(Part::Letters(letter.to_string()));
        at += 3;
    } else if rest.starts_with("-ALT.") || rest.starts_with("-ALT ") {
        parts.push(Part::Letters(ALTERNATE.to_owned()));
        at += "-ALT".len();
    }
    // `06.0A` is `06A`.
    if let [Part::Number(_), Part::Number(0), Part::Letters(_)] = parts.as_slice() {
        parts.remove(1);
    }
    // `2.0` is item 2, and so is `2.00`.
    if parts.len() > 1 && parts.last() == Some(&Part::Number(0)) {
        parts.pop();
    }
    (!parts.contains(&Part::Number(0))).then_some((parts, at))
}

/// Whether digits count in two figures: the `01` of `2.01`, of `01. FLOOR` and of `01A`.
fn is_padded(parts: &[Part], before: &str, rest: &str, digits: usize) -> bool {
    let behind_part = matches!(parts, [Part::Number(_)]) && before.ends_with('.');
    (parts.is_empty() || behind_part) && digits == 2 && rest.starts_with('0')
}

/// Whether a dot or hyphen before this joins another part: a digit, or a single letter.
fn joins(after: char, beyond: Option<char>) -> bool {
    after.is_ascii_digit()
        || (after.is_ascii_alphabetic() && !beyond.is_some_and(|c| c.is_ascii_alphabetic()))
}

fn close(opening: Option<char>, after: &str) -> Option<(Close, usize)> {
    match opening {
        Some('(') => after.starts_with(')').then_some((Close::Parens, 1)),
        Some('<') => after.starts_with('>').then_some((Close::Angles, 1)),
        Some('.') => after.starts_with(' ').then_some((Close::LedByDot, 0)),
        Some(_) => after.starts_with(']').then_some((Close::Brackets, 1)),
        None if after.starts_with('.') => Some((Close::Dot, 1)),
        None if after.starts_with("):") => Some((Close::Paren, 2)),
        None if after.starts_with(')') => Some((Close::Paren, 1)),
        None if after.starts_with("-  ") => Some((Close::Dash, 1)),
        None if after.starts_with(':') => Some((Close::Colon, 1)),
        None => Some((Close::Nothing, 0)),
    }
}

/// Whether an unclosed label reads as a marker, and not as the number or article that begins a line of text.
fn stands_alone(parts: &[Part], label: &str, rest: &str, line: &str) -> bool {
    let text = rest.trim_start();
    let gap = rest.len() - text.len();
    // `1.1 – Hollow-core slab`: of a number alone, `2 - No. 10 screws`, nobody knows whether it counts.
    let behind_dash = ["– ", "— ", "- "]
        .iter()
        .find_map(|dash| text.strip_prefix(dash))
        .filter(|_| label.contains('.'));
    let name = behind_dash.unwrap_or(text);
    let capital = name.starts_with(|c: char| c.is_uppercase() || c == '"');
    // `2C      Board` and `2-C Cross-laminated timber` are no temperatures.
    let of_letters = parts.iter().any(|part| matches!(part, Part::Letters(_)));
    let lettered = parts.len() > 1 && capital && (gap >= 2 || of_letters && label.contains('-'));
    let apart = gap >= 2 || parts.len() > 1 && label.contains('.');
    let quantity =
        !(lettered || apart && opens_with_word(text)) && notation::quantity_at(line, 0).is_some();
    let numbered = parts.iter().any(|part| matches!(part, Part::Number(_)));
    match parts {
        _ if quantity || text.is_empty() => false,
        // No number has two points: `3.1.1 100 mm or greater`.
        [Part::Number(_), Part::Number(_), Part::Number(_), ..] if !of_letters => gap > 0,
        [Part::Number(_)] => capital || gap >= 2,
        [Part::Letters(_)] => gap >= 2 && capital,
        _ if numbered && label.contains('.') => capital || gap >= 2,
        // `2-A Concrete or block`, `3-B-1 Sealant`
        [Part::Number(_), Part::Letters(_), ..] if label.contains('-') => capital || gap >= 2,
        // `C-3A Alternate seal`
        [Part::Letters(_), Part::Number(_), Part::Letters(_)] if label.contains('-') => {
            capital || gap >= 2
        }
        _ => numbered && gap >= 2,
    }
}

/// Whether a number behind a stop counts the parts of an item, `.2 Walls: 4 in. thick`, and is no decimal fraction: `.5 in. thick`.
fn is_part_of_above(parts: &[Part], rest: &str, line: &str) -> bool {
    const MOST: u32 = 20;
    let counts = matches!(parts, [Part::Number(number)] if *number <= MOST);
    let text = rest.trim_start();
    let words = text.starts_with(char::is_alphabetic);
    counts && words && (opens_with_word(text) || notation::quantity_at(line, 0).is_none())
}

/// Whether a number with a letter runs into the name behind its stop: `2A1.Clipped track`.
fn runs_into_name(parts: &[Part], rest: &str) -> bool {
    let mut letters = rest.chars();
    let capital = letters.next().is_some_and(char::is_uppercase);
    let small = letters.next().is_some_and(char::is_lowercase);
    matches!(parts, [Part::Number(_), Part::Letters(_), ..]) && capital && small
}

/// Whether words begin with one that only looks like a unit: `3.2 Min length of piece`, `4.1 In joints over 2 in.`, `5.1 F Rating`. A unit in such a place ends in a
/// stop, or begins small.
fn opens_with_word(text: &str) -> bool {
    const LIKE_UNITS: &[&str] = &["min", "in", "f", "c", "h", "m", "g", "l"];
    let word = text.split([' ', '-']).next().unwrap_or_default();
    let goes_on = text.len() > word.len() + 1;
    goes_on
        && word.starts_with(char::is_uppercase)
        && LIKE_UNITS
            .iter()
            .any(|like| word.eq_ignore_ascii_case(like))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_like_units_behind_a_number_in_parts() {
        for line in [
            "3.2 Min length of piece 24 in.",
            "3.4 MIN LENGTH 24 IN.",
            "4.1 In joints over 2 in.",
            "5.1 F Rating",
            "2.6 C-clips",
            "9   MIN WOOL",
            "2-C Cross-laminated timber",
            "C-3A Alternate seal",
            "3.1.1 100 mm or greater",
            "2A1.Clipped track",
            "1.1 – Hollow-core slab (alternative)",
        ] {
            assert!(marker(line).is_some(), "{line}");
        }
        for line in [
            "3.2 min at most",
            "3.2 In. wide",
            "3.5 IN.",
            "4.5 mm deep",
            "10 Min wait",
            "2 - No. 10 screws",
        ] {
            assert!(marker(line).is_none(), "{line}");
        }
    }

    #[test]
    fn markers_in_every_scheme() {
        for (line, label, close, len) in [
            ("1. FLOOR", "1", Close::Dot, 3),
            ("A1. LIGHT", "A1", Close::Dot, 4),
            ("3.1.2 Compression", "3.1.2", Close::Nothing, 6),
            ("(a) The joint", "a", Close::Parens, 4),
            ("a) Supporting", "a", Close::Paren, 3),
            ("§ 1. The floor", "1", Close::Dot, 6),
            ("C-1a  As an", "C-1a", Close::Nothing, 6),
            ("2B.1 Butted", "2B.1", Close::Nothing, 5),
            ("III. SEAL", "III", Close::Dot, 5),
            ("1.0  WALL", "1.0", Close::Nothing, 5),
            ("Item 1: Floor", "1", Close::Colon, 8),
            ("Item 1-a) Deck", "1-a", Close::Paren, 10),
            ("[1] Dun", "1", Close::Brackets, 4),
            ("1 SUPPORTING", "1", Close::Nothing, 2),
            ("A-  USE OF THIS", "A", Close::Dash, 4),
            ("<4a> TRACK", "4a", Close::Angles, 5),
            ("2C    Board*", "2C", Close::Nothing, 6),
            ("2-A Concrete", "2-A", Close::Nothing, 4),
            ("3-B-1 Sealant", "3-B-1", Close::Nothing, 6),
            ("2.01  JOINTS", "2.01", Close::Nothing, 6),
            ("2.00  JOINTS", "2.00", Close::Nothing, 6),
            ("A - Hangers. Steel", "A", Close::Dash, 4),
            ("J-2(b)  Spray", "J-2(b)", Close::Nothing, 8),
            ("06.0A. Fill", "06.0A", Close::Dot, 7),
            ("D-ALT. Butt splice", "D-ALT", Close::Dot, 7),
            ("* 1. Floor", "1", Close::Dot, 5),
            ("**2A. Strap", "2A", Close::Dot, 6),
            ("*a) Board", "a", Close::Paren, 4),
            ("d.* Board", "d", Close::Dot, 4),
            (".1 Floors: 4 in.", "1", Close::LedByDot, 3),
            (".12  joint up to 25 mm", "12", Close::LedByDot, 5),
            (".5  In joints over 75 mm", "5", Close::LedByDot, 4),
            ("Item 3 -- Clips", "3", Close::Dash, 10),
            ("Item 4A - CLIPS", "4A", Close::Dash, 10),
        ] {
            let found = marker(line).unwrap_or_else(|| panic!("`{line}` has no marker"));
            assert_eq!(
                (found.label.as_str(), found.close, found.len),
                (label, close, len),
                "{line}"
            );
        }
    }

    #[test]
    fn markers_that_only_a_blank_closes() {
        let found = bare_marker("3A Sealant").map(|found| (found.label, found.len));
        assert_eq!(found, Some(("3A".to_owned(), 3)));
        for line in ["3A sealant", "3 Sealant", "A Sealant", "3ASealant"] {
            assert_eq!(bare_marker(line), None, "{line}");
        }
    }

    #[test]
    fn lines_that_only_look_marked() {
        for line in [
            "12 in. (305 mm)",
            "a max gap",
            "In the gap",
            "A strip",
            "5/8 in.",
            "2 by 4 in.",
            "1/2 to 1",
            "0.01  JOINTS",
            "2.010  JOINTS",
            "2-01  JOINTS",
            "2.05 in. Long",
            "* 2 screws",
            "* Item 2 bears the mark",
            "**** 1. Floor",
            ".5 in. thick",
            ".5 IN. thick",
            ".5 in wide",
            ".5 mm",
            ".030 galvanised",
            ".25 (6 mm) deep",
            ".1",
        ] {
            assert_eq!(marker(line), None, "{line}");
        }
    }
}
