//! How wide a text is.
//!
//! The advance widths are those of Liberation Sans 2.1.5 (SIL Open Font License 1.1), which has the widths of the sans serif that most
//! viewers have at hand; a test holds the table against the font itself. Every text is drawn with its width written beside it, so that
//! another font takes no more room.

const UNITS: f64 = 2048.0;

/// Advance widths of the characters from space to tilde.
const REGULAR: [u16; 95] = [
    569, 569, 727, 1139, 1139, 1821, 1366, 391, 682, 682, 797, 1196, 569, 682, 569, 569, 1139,
    1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 569, 569, 1196, 1196, 1196, 1139, 2079,
    1366, 1366, 1479, 1479, 1366, 1251, 1593, 1479, 569, 1024, 1366, 1139, 1706, 1479, 1593, 1366,
    1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 569, 569, 569, 961, 1139, 682,
    1139, 1139, 1024, 1139, 1139, 569, 1139, 1139, 455, 455, 1024, 455, 1706, 1139, 1139, 1139,
    1139, 682, 1024, 569, 1139, 1024, 1479, 1024, 1024, 1024, 684, 532, 684, 1196,
];

/// The same in bold.
const BOLD: [u16; 95] = [
    569, 682, 971, 1139, 1139, 1821, 1479, 487, 682, 682, 797, 1196, 569, 682, 569, 569, 1139,
    1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 1139, 682, 682, 1196, 1196, 1196, 1251, 1997,
    1479, 1479, 1479, 1479, 1366, 1251, 1593, 1479, 569, 1139, 1479, 1251, 1706, 1479, 1593, 1366,
    1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 682, 569, 682, 1196, 1139, 682,
    1139, 1251, 1139, 1251, 1139, 682, 1251, 1251, 569, 569, 1139, 569, 1821, 1251, 1251, 1251,
    1251, 797, 1139, 682, 1251, 1139, 1593, 1139, 1139, 1024, 797, 573, 797, 1196,
];

/// How wide a text is at a size, in millimetres.
pub(crate) fn width(words: &str, size: f64, bold: bool) -> f64 {
    let units: u32 = words.chars().map(|one| u32::from(advance(one, bold))).sum();
    f64::from(units) * size / UNITS
}

fn advance(one: char, bold: bool) -> u16 {
    let table = if bold { &BOLD } else { &REGULAR };
    let of_table = u32::from(one)
        .checked_sub(u32::from(' '))
        .and_then(|place| table.get(usize::try_from(place).ok()?));
    if let Some(width) = of_table {
        return *width;
    }
    match one {
        '°' => 819,
        '×' => 1196,
        '·' | '²' | '³' => 682,
        '±' | '≈' | '≥' | '≤' => 1124,
        '–' | '§' => 1139,
        '½' | '¼' | '¾' => 1708,
        'µ' => 1180,
        // As wide as any letter: room enough for what isn't in the table.
        _ => 2048,
    }
}

/// A text broken into lines no wider than `most`, at most so many; what doesn't fit ends in three dots.
pub(crate) fn wrapped(words: &str, size: f64, bold: bool, most: f64, lines: usize) -> Vec<String> {
    let mut wrapped: Vec<String> = Vec::new();
    let fits = |line: &str| width(line, size, bold) <= most;
    for word in together(words) {
        let longer = match wrapped.last() {
            Some(line) => format!("{line} {word}"),
            None => word.clone(),
        };
        match wrapped.last_mut() {
            Some(line) if fits(&longer) => *line = longer,
            _ => wrapped.extend(pieces(&word, &fits)),
        }
    }
    if wrapped.len() > lines {
        wrapped.truncate(lines);
        if let Some(last) = wrapped.last_mut() {
            while !fits(&format!("{last}...")) && last.pop().is_some() {}
            last.push_str("...");
        }
    }
    wrapped
}

/// The words, those that belong together as one: a number with its unit, and with the sign before it.
fn together(words: &str) -> Vec<String> {
    let mut joined: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        let is_unit = ["in.", "mm", "ft", "m", "pcf", "kg/m³", "%"]
            .iter()
            .any(|unit| word.trim_end_matches([')', ',', ';', '.']) == unit.trim_end_matches('.'));
        match joined.last_mut() {
            Some(last)
                if last.ends_with('≈')
                    || (is_unit && last.ends_with(|one: char| one.is_ascii_digit())) =>
            {
                last.push(' ');
                last.push_str(word);
            }
            _ => joined.push(word.to_owned()),
        }
    }
    joined
}

/// A word in pieces that fit; almost always one.
fn pieces(word: &str, fits: &impl Fn(&str) -> bool) -> Vec<String> {
    let mut pieces = vec![String::new()];
    for one in word.chars() {
        if let Some(piece) = pieces.last_mut() {
            let longer = format!("{piece}{one}");
            if piece.is_empty() || fits(&longer) {
                *piece = longer;
            } else {
                pieces.push(one.to_string());
            }
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The table against the font itself, which the command line draws pictures with.
    #[test]
    fn the_widths_are_those_of_the_font() {
        let regular = include_bytes!("../../../everyclause/fonts/LiberationSans-Regular.ttf");
        let heavy = include_bytes!("../../../everyclause/fonts/LiberationSans-Bold.ttf");
        for (bytes, bold) in [(regular.as_slice(), false), (heavy.as_slice(), true)] {
            let face = ttf_parser::Face::parse(bytes, 0).unwrap();
            assert!((f64::from(face.units_per_em()) - UNITS).abs() < f64::EPSILON);
            for one in (' '..='~').chain("°×·±–≈≥≤²³½¼¾µ§".chars()) {
                let glyph = face.glyph_index(one).unwrap();
                assert_eq!(
                    face.glyph_hor_advance(glyph),
                    Some(advance(one, bold)),
                    "{one}"
                );
            }
        }
    }

    #[test]
    fn lines_fit_and_nothing_is_lost_where_there_is_room() {
        let text = "packing compressed at least 33 % in thickness and placed cut edge first";
        let lines = wrapped(text, 2.5, false, 40.0, 9);
        assert!(lines.iter().all(|line| width(line, 2.5, false) <= 40.0));
        assert_eq!(lines.join(" "), text);
    }

    #[test]
    fn what_does_not_fit_says_so() {
        let lines = wrapped("one two three four five six seven", 2.5, false, 12.0, 2);
        assert_eq!(lines.len(), 2);
        assert!(lines.iter().all(|line| width(line, 2.5, false) <= 12.0));
        assert!(lines.last().is_some_and(|line| line.ends_with("...")));
    }

    #[test]
    fn a_word_wider_than_a_line_is_broken() {
        let lines = wrapped("Feuerwiderstandsklasse", 2.5, false, 10.0, 9);
        assert!(lines.len() > 1);
        assert_eq!(lines.concat(), "Feuerwiderstandsklasse");
    }
}
