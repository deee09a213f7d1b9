//! Notes at the end of a document whose marks stand behind the words above: `(a) Max 2 in.`, `* In walls 6 in. thick.` They are of no item.

use crate::layout::Line;

/// The signs that mark notes.
const SIGNS: &[char] = &['*', '†', '‡', '§'];

/// The line that the notes at the end begin with; none where the end holds none.
pub(super) fn begin(lines: &[Line<'_>]) -> Option<usize> {
    let written = || {
        lines
            .iter()
            .enumerate()
            .filter(|(_, line)| !line.is_blank())
    };
    let margin = written().map(|(_, line)| line.indent).min()?;
    let mut notes = Vec::new();
    for (at, line) in written().collect::<Vec<_>>().into_iter().rev() {
        match mark_of(line.text).filter(|_| line.indent == margin) {
            Some(mark) => notes.push((at, mark)),
            None if line.indent > margin => {}
            None => break,
        }
    }
    let (first, _) = *notes.last()?;
    let above = lines.get(..first)?;
    let once = notes
        .iter()
        .all(|(at, mark)| notes.iter().all(|(other, own)| other == at || own != mark));
    let lettered = notes.iter().filter(|(_, mark)| mark.starts_with('('));
    let cited = lettered.clone().all(|(_, mark)| is_cited(above, mark))
        && notes.iter().any(|(_, mark)| is_cited(above, mark));
    (once && cited).then_some(first)
}

/// The mark that a line begins with: `(a)`, `(12)`, `**`.
pub(super) fn mark_of(line: &str) -> Option<&str> {
    const LONGEST: usize = 2;
    let line = line.trim_start();
    let (mark, rest) = line.split_once(' ')?;
    let signs = !mark.is_empty() && mark.chars().all(|c| SIGNS.contains(&c));
    let label = mark
        .strip_prefix('(')
        .and_then(|inside| inside.strip_suffix(')'));
    let short = label.is_some_and(|label| {
        (1..=LONGEST).contains(&label.len()) && label.chars().all(|c| c.is_ascii_alphanumeric())
    });
    ((signs || short) && !rest.trim().is_empty()).then_some(mark)
}

/// Whether a mark stands behind words, and nowhere as the number of a part: `see (a)`, `Item 3(a)`.
fn is_cited(above: &[Line<'_>], mark: &str) -> bool {
    const LEADS: &[&str] = &[
        "in", "item", "items", "of", "and", "or", "to", "see", "per", "with", "under", "by",
    ];
    let places = above.iter().flat_map(|line| {
        let text = line.text;
        text.match_indices(mark).map(move |(at, _)| {
            let before = text.get(..at).unwrap_or_default();
            (before, text.get(at + mark.len()..).unwrap_or_default())
        })
    });
    let lettered = mark.starts_with('(');
    let mut cited = false;
    for (before, behind) in places {
        let is_other = |c: char| SIGNS.contains(&c);
        if !lettered {
            let own = !before.ends_with(is_other) && !behind.starts_with(is_other);
            cited |= own && before.ends_with(|c: char| !c.is_whitespace());
            continue;
        }
        let word = before.rsplit([' ', '(']).find(|word| !word.is_empty());
        let word = word.unwrap_or_default().to_lowercase();
        if before.trim().is_empty()
            || LEADS.contains(&word.as_str())
            || before.ends_with(|c: char| c.is_ascii_digit())
        {
            return false;
        }
        cited = true;
    }
    cited
}
