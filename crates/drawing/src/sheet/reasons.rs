//! Why a joint doesn't conform, or that something is open: parts that meet their clauses mustn't hide it.

use conformance::Verdict;

use super::heading::Heading;
use crate::layout::wrapped;
use crate::plane::{Box2, pt};
use crate::svg::{Group, Ink};

const SIZE: f64 = 2.4;
const LINE: f64 = 3.1;
/// How many lines a reason takes at most.
const LINES: usize = 3;
/// How much of the room the reasons take at most.
const SHARE: f64 = 0.5;

/// What isn't met, each in a sentence, then how many clauses are open; and where the next thing may begin.
pub(super) fn reasons(heading: &Heading, room: Box2) -> Option<(Group, f64)> {
    if heading.not_met.is_empty() && heading.open == 0 {
        return None;
    }
    let mut list = List {
        ink: Vec::new(),
        room,
        y: room.min.y + 2.8,
    };
    if heading.not_met.is_empty() {
        list.y -= LINE + 0.6;
    } else {
        let words = if heading.open > 0 {
            "Not met, and open"
        } else {
            "Not met"
        };
        let title = Ink::bold(pt(room.min.x, list.y), 2.8, words);
        list.ink.push(title);
    }
    let foot = room.min.y + room.height() * SHARE;
    for (at, sentence) in heading.not_met.iter().enumerate() {
        if list.y + LINE * 4.0 > foot {
            let rest = heading.not_met.len() - at;
            list.add(None, &format!("and {rest} more"));
            break;
        }
        list.add(Some(Verdict::NotMet), sentence);
    }
    if heading.open > 0 {
        let clauses = if heading.open == 1 {
            "clause is"
        } else {
            "clauses are"
        };
        let words = format!(
            "{} {clauses} open: nobody has shown yet that the joint is so.",
            heading.open
        );
        list.add(Some(Verdict::Open), &words);
    }
    let next = list.y + LINE + 2.0;
    let group = Group {
        id: "reasons".to_owned(),
        title: "Not met and open".to_owned(),
        ink: list.ink,
    };
    Some((group, next))
}

struct List {
    ink: Vec<Ink>,
    room: Box2,
    y: f64,
}

impl List {
    fn add(&mut self, verdict: Option<Verdict>, words: &str) {
        let left = self.room.min.x;
        self.y += 0.6;
        for (at, line) in wrapped(words, SIZE, false, self.room.width() - 6.0, LINES)
            .into_iter()
            .enumerate()
        {
            self.y += LINE;
            if let Some(verdict) = verdict.filter(|_| at == 0) {
                self.ink
                    .push(Ink::Mark(pt(left + 1.4, self.y - 0.9), verdict));
            }
            self.ink
                .push(Ink::words(pt(left + 4.0, self.y), SIZE, line));
        }
    }
}
