//! Columns of the head: names over one row of values, each of which is stated by the name over it.

use crate::model::Span;

/// A paragraph as the columns that it holds, each the name and its value, and what stands before and behind them; or as it is.
pub(super) fn columns(source: &str, pieces: &[Span]) -> Vec<Vec<Span>> {
    let found = pieces.windows(2).enumerate().find_map(|(at, pair)| {
        let [names, values] = pair else { return None };
        let (names, values) = (cells(source, *names), cells(source, *values));
        let further = pieces.get(at + 2).map(|next| cells(source, *next));
        // Of several rows each may be of another case.
        let one_row = further.is_none_or(|next| !are_values(source, &next, names.len()));
        let told = are_names(source, &names) && are_values(source, &values, names.len());
        (told && one_row).then_some((at, names, values))
    });
    let Some((at, names, values)) = found else {
        return vec![pieces.to_vec()];
    };
    let before = pieces.get(..at).unwrap_or_default().to_vec();
    let behind = pieces.get(at + 2..).unwrap_or_default().to_vec();
    let each = names.into_iter().zip(values);
    let columns = each.map(|(name, value)| vec![name, value]);
    let all = core::iter::once(before).chain(columns).chain([behind]);
    all.filter(|pieces| !pieces.is_empty()).collect()
}

/// What wide gaps part on a line.
fn cells(source: &str, line: Span) -> Vec<Span> {
    let mut at = line.start();
    let mut found = Vec::new();
    for part in line.of(source).split("  ") {
        let words = part.trim();
        if !words.is_empty() {
            let start = at + (part.len() - part.trim_start().len());
            found.push(Span::new(start, start + words.len()));
        }
        at += part.len() + 2;
    }
    found
}

/// Whether cells name what a head states, one of them at least, and none has a number but a temperature: `L Rating (400 F)`.
fn are_names(source: &str, cells: &[Span]) -> bool {
    const TOPICS: &[&str] = &[
        "rating",
        "width",
        "movement",
        "leakage",
        "opening",
        "resistance",
    ];
    const TEMPERATURES: &[&str] = &["400 F", "400F", "400 °F", "400°F", "204 °C", "204°C"];
    let named = |cell: &Span| {
        let words = cell.of(source);
        let mut plain = words.to_owned();
        for temperature in TEMPERATURES {
            plain = plain.replace(temperature, "");
        }
        words.starts_with(char::is_alphabetic)
            && !plain.contains(|c: char| c.is_ascii_digit() || matches!(c, ':' | ';'))
    };
    let topical = |cell: &Span| {
        let lower = cell.of(source).to_lowercase();
        TOPICS.iter().any(|topic| lower.contains(topic))
    };
    cells.len() > 1 && cells.iter().all(named) && cells.iter().any(topical)
}

/// Whether cells are as many values: numbers, or words for none.
fn are_values(source: &str, cells: &[Span], count: usize) -> bool {
    let is_value = |cell: &Span| {
        let words = cell.of(source);
        words.contains(|c: char| c.is_ascii_digit() || matches!(c, '½' | '¼' | '¾'))
            || matches!(
                words.to_lowercase().as_str(),
                "-" | "–" | "—" | "n/a" | "none"
            )
    };
    cells.len() == count && cells.iter().all(is_value)
}

#[cfg(test)]
mod tests {
    use crate::header::tests::{leakages, rated, read};

    #[test]
    fn a_value_is_stated_by_the_name_over_it() {
        let text = "F Rating  T Rating  L Rating (Ambient)  L Rating (400 F)\n2 Hr  1-1/2 Hr  1 CFM/ft  2 CFM/ft\n";
        assert_eq!(rated(text), "2");
        assert_eq!(leakages(text), "ambient 1, 400 2");
        let bare = "Rating (hours)   Joint width (in.)   Movement (%)\n2                1                   25";
        assert_eq!(rated(bare), "2");
        let width = read(bare).width.and_then(|width| width.lo);
        assert_eq!(width.map(|lo| lo.to_string()).as_deref(), Some("1"));
        let other = "Rating (hours)   Hose stream\n2 hr             1 hr";
        assert_eq!(rated(other), "2");
    }

    #[test]
    fn several_rows_are_of_several_cases() {
        let text = "Rating (hours)   Joint width (in.)\n1   4\n2   2\n";
        assert_eq!(rated(text), "");
        assert_eq!(read(text).width, None);
    }
}
