//! Lines of an item that are a case and nothing more, over the lines for it: `1 Hr Rating -` above `Min depth 3 in.`, `FOR JOINTS OVER 2 IN. WIDE`. One counts
//! where another, as far in, is above or below it: one alone may limit what the joint may be. Lines that stand farther in are under it; where none does, all up
//! to the next case are, and under the last as many as under the case before it.
//!
//! What it would misread: more lines under the last case than under the one before, none of them farther in: those are read as said of every joint, which asks
//! for too much.

use std::collections::{BTreeMap, BTreeSet};

use super::super::Paragraph;
use super::Builder;
use super::case_lines::CaseLines;
use super::case_words::{is_rating, may_open, sets_joints_apart, speaks_of_time};
use super::closing::Setting;
use super::labels::is_bullet;
use crate::conditions::is_small_word;
use crate::layout::Line;
use crate::model::Span;
use crate::outline::marker::marker;

/// How many lines there are at most under a case.
const LONGEST: usize = 14;

/// The lines under a case, each with the line that states it.
#[derive(Debug, Default)]
pub(super) struct CaseHeads(BTreeMap<usize, usize>);

/// A line that states a case, with the lines under it.
struct Section {
    head: usize,
    under: Vec<usize>,
    hangs: bool,
}

impl CaseHeads {
    pub(super) fn of(lines: &[Line<'_>], setting: Setting, case_lines: &CaseLines) -> Self {
        let heads: BTreeSet<usize> = (0..lines.len())
            .filter(|at| lines.get(*at).is_some_and(|line| is_head(line.text.trim())))
            .collect();
        let mut found = Self::default();
        let mut run: Vec<Section> = Vec::new();
        for head in &heads {
            let section = section(lines, &heads, *head);
            let goes_on = run.last().is_some_and(|last| {
                indent(lines, last.head) == indent(lines, *head)
                    && lies_between(lines, last.head, *head)
            });
            if !goes_on {
                found.take(lines, setting, case_lines, &mut run);
            }
            run.push(section);
        }
        found.take(lines, setting, case_lines, &mut run);
        found
    }

    /// Takes a run of cases that stand one below the other.
    fn take(
        &mut self,
        lines: &[Line<'_>],
        setting: Setting,
        case_lines: &CaseLines,
        run: &mut Vec<Section>,
    ) {
        let mut run = core::mem::take(run);
        let Some(first) = run.first().map(|section| section.head) else {
            return;
        };
        let words = |at: usize| lines.get(at).map_or("", |line| line.text.trim());
        let differ = run
            .windows(2)
            .all(|pair| matches!(pair, [one, other] if words(one.head) != words(other.head)));
        let plain = run.iter().all(|section| {
            !section.under.is_empty()
                && (section.hangs || leads(words(section.head)))
                && !section.under.iter().any(|at| case_lines.contains_key(at))
                && !(is_rating(bare(words(section.head)))
                    && section.under.iter().any(|at| speaks_of_time(words(*at))))
        });
        let above = first.checked_sub(1).map_or("", words);
        if run.len() < 2 || !differ || !plain || !is_apart(lines, first, setting) {
            return;
        }
        if is_rating(bare(words(first))) && speaks_of_time(above) {
            return;
        }
        let counted = |section: &Section| {
            let begins = section.under.iter().filter(|at| begins(words(**at)));
            begins.count()
        };
        let before = run.iter().rev().nth(1).map_or(0, counted);
        if let Some(last) = run.last_mut().filter(|last| !last.hangs) {
            let mut begun = 0;
            last.under.retain(|at| {
                begun += usize::from(begins(words(*at)));
                begun <= before
            });
        }
        for section in run {
            self.0
                .extend(section.under.iter().map(|at| (*at, section.head)));
            self.0.insert(section.head, section.head);
        }
    }
}

/// The lines under one that states a case.
fn section(lines: &[Line<'_>], heads: &BTreeSet<usize>, head: usize) -> Section {
    let own = indent(lines, head);
    let mut found = Section {
        head,
        under: Vec::new(),
        hangs: indent(lines, head + 1) > own,
    };
    let mut at = head + 1;
    while let Some(line) = lines.get(at).filter(|_| found.under.len() < LONGEST) {
        let ends = if line.is_blank() {
            !found.hangs || indent(lines, at + 1) <= own
        } else {
            let left = if found.hangs {
                line.indent <= own
            } else {
                line.indent < own
            };
            left || heads.contains(&at) || marker(line.text.trim()).is_some()
        };
        if ends {
            break;
        }
        if !line.is_blank() {
            found.under.push(at);
        }
        at += 1;
    }
    found
}

/// Whether nothing between two lines stands farther left than they do, or begins an item or a part.
fn lies_between(lines: &[Line<'_>], from: usize, to: usize) -> bool {
    let own = indent(lines, from);
    to - from <= 2 * LONGEST
        && lines.get(from + 1..to).is_some_and(|between| {
            between.iter().all(|line| {
                line.is_blank() || line.indent >= own && marker(line.text.trim()).is_none()
            })
        })
}

/// How far in a line stands; a blank one nowhere.
fn indent(lines: &[Line<'_>], at: usize) -> usize {
    let line = lines.get(at).filter(|line| !line.is_blank());
    line.map_or(0, |line| line.indent)
}

/// Whether a line goes on with nothing above it.
fn is_apart(lines: &[Line<'_>], at: usize, setting: Setting) -> bool {
    let above = at.checked_sub(1).and_then(|above| lines.get(above));
    let (Some(above), Some(own)) = (above, lines.get(at)) else {
        return true;
    };
    let words = above.text.trim_end();
    let first = own.text.split_whitespace().next().unwrap_or_default();
    let last = words.rsplit(' ').next().unwrap_or_default();
    let has_room = words.len() + 1 + first.len() < setting.widest;
    let open = words.ends_with([',', '-', '/']) || is_small_word(&last.to_uppercase());
    words.is_empty() || words.ends_with([':', ';']) || words.ends_with('.') || has_room && !open
}

/// A case without the sign behind it.
fn bare(line: &str) -> &str {
    line.trim_end_matches([':', '-', '–', '—', ' '])
}

/// Whether a line is a case and nothing more.
fn is_head(line: &str) -> bool {
    const LONGEST: usize = 70;
    if line.len() > LONGEST || is_bullet(line) || !may_open(line) || line.contains("  ") {
        return false;
    }
    let case = bare(line);
    let begins = case.len() < line.len()
        || line.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit());
    begins && (is_rating(case) || sets_joints_apart(case))
}

/// Whether a line that is a case says that something follows for it: `Joint width up to 2 in.` alone may be all that is said.
fn leads(line: &str) -> bool {
    let first = line.split_whitespace().next().unwrap_or_default();
    let opens = ["for", "in"]
        .iter()
        .any(|word| first.eq_ignore_ascii_case(word));
    opens || bare(line).len() < line.len() || is_rating(line)
}

/// Whether a line below a case begins what it says, and doesn't go on with the line above.
fn begins(line: &str) -> bool {
    is_bullet(line) || line.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
}

impl Builder<'_> {
    /// Takes a line that is a case, or stands under one.
    pub(super) fn headed_case(&mut self, at: usize, content: Span) -> bool {
        let head = self.case_heads.0.get(&at).copied();
        let case = head.and_then(|head| Some((head, self.lines.get(head)?.content())));
        let Some((head, case)) = case else {
            return false;
        };
        let words = content.of(self.source);
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        let ended = self.last_sentence_ended()
            || above.is_some_and(|above| above.is_blank() || self.setting.breaks_off(above, words));
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index));
        let Some(item) = item else { return false };
        if at == head {
            return true;
        }
        match item.paragraphs.last_mut() {
            Some(Paragraph::Case { case: own, text })
                if own.as_slice() == [case] && !(begins(words) && (ended || is_bullet(words))) =>
            {
                text.push(content);
            }
            _ => item.paragraphs.push(Paragraph::Case {
                case: vec![case],
                text: vec![content],
            }),
        }
        true
    }
}
