//! The width along a run: its readings against what the listing allows.

use measure::{Quantity, Unit, print};

use super::notes::long_length;
use crate::known::{Condition, as_number};
use crate::layout::wrapped;
use crate::plane::{Box2, Point, pt};
use crate::svg::{Anchor, Group, Ink, Pen, Words};

/// The most readings whose values are written.
const MOST_WRITTEN: usize = 8;

/// The chart in a frame; none where there are fewer than two readings.
pub(super) fn chart(frame: Box2, condition: &Condition) -> Option<Group> {
    let run = &condition.run;
    if run.readings.len() < 2 {
        return None;
    }
    let Box2 { min, max } = frame;
    let mut ink = Vec::new();
    let long = run
        .length
        .map(|length| format!(", {} long", long_length(length)))
        .unwrap_or_default();
    let count = run.readings.len();
    ink.push(Ink::bold(
        pt(min.x, min.y + 3.2),
        2.8,
        "Width along the run",
    ));
    let about = format!(
        "{count} readings ({}), in the order taken{long}; their places aren't recorded",
        run.instrument
    );
    for line in wrapped(&about, 2.4, false, frame.width(), 1) {
        ink.push(Ink::words(pt(min.x, min.y + 6.8), 2.4, line));
    }
    let plot = Box2::of(pt(min.x + 4.0, min.y + 12.0), pt(max.x - 40.0, max.y - 5.0));
    let limits = [run.greatest, run.least];
    let shown = run
        .readings
        .iter()
        .copied()
        .chain(limits.into_iter().flatten());
    let values: Vec<f64> = shown.map(mm).collect();
    let least = values.iter().copied().fold(f64::INFINITY, f64::min);
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let spare = ((most - least) * 0.25).max(2.0);
    let axis = Axis {
        low: (least - spare).max(0.0),
        high: most + spare,
        plot,
    };
    ink.push(Ink::frame(plot, Pen::Thin));
    limit_lines(&mut ink, condition, &axis);
    readings_in(&mut ink, condition, &axis);
    Some(Group {
        id: "width-along-the-run".to_owned(),
        title: format!("Width along the run: {about}"),
        ink,
    })
}

struct Axis {
    low: f64,
    high: f64,
    plot: Box2,
}

impl Axis {
    fn level(&self, value: f64) -> f64 {
        self.plot.max.y - (value - self.low) / (self.high - self.low) * self.plot.height()
    }
}

fn mm(length: Quantity) -> f64 {
    length
        .to(Unit::Millimetre)
        .map_or(0.0, |length| as_number(length.number))
}

fn limit_lines(ink: &mut Vec<Ink>, condition: &Condition, axis: &Axis) {
    let Box2 { min, max } = axis.plot;
    let mut levels: Vec<f64> = Vec::new();
    for (limit, words) in [
        (condition.run.greatest, "at most"),
        (condition.run.least, "at least"),
    ] {
        let Some(limit) = limit else { continue };
        let y = axis.level(mm(limit));
        let points = vec![pt(min.x, y), pt(max.x + 1.5, y)];
        ink.push(Ink::Line {
            points,
            closed: false,
            pen: Pen::CutThin,
            dashed: true,
        });
        let free = levels.iter().all(|other| (other - y).abs() > 3.0);
        let baseline = if free { y + 0.8 } else { y + 4.2 };
        ink.push(Ink::words(
            pt(max.x + 2.5, baseline),
            2.3,
            format!("{words} {}", print::both(limit)),
        ));
        levels.push(baseline);
    }
}

/// Each reading: a dot where the listing allows it, a cross where it doesn't.
fn readings_in(ink: &mut Vec<Ink>, condition: &Condition, axis: &Axis) {
    let run = &condition.run;
    let Box2 { min, max } = axis.plot;
    let count = u32::try_from(run.readings.len()).unwrap_or(u32::MAX);
    let step = (max.x - min.x) / f64::from(count);
    let mut line: Vec<Point> = Vec::new();
    let mut marks = Vec::new();
    for (at, reading) in (0_u32..).zip(&run.readings) {
        let point = pt(
            min.x + step * (f64::from(at) + 0.5),
            axis.level(mm(*reading)),
        );
        line.push(point);
        let too_much = run
            .greatest
            .and_then(|most| reading.compare(most))
            .is_some_and(core::cmp::Ordering::is_gt);
        let too_little = run
            .least
            .and_then(|least| reading.compare(least))
            .is_some_and(core::cmp::Ordering::is_lt);
        if too_much || too_little {
            marks.push(Ink::Mark(point, conformance::Verdict::NotMet));
        } else {
            marks.push(Ink::Dot(point, 0.9));
        }
        if run.readings.len() <= MOST_WRITTEN {
            // At the foot of the plot, out of the way of the limits.
            marks.push(Ink::Words(Words {
                at: pt(point.x, max.y + 3.2),
                anchor: Anchor::Middle,
                size: 2.2,
                bold: false,
                words: print::trade(*reading),
            }));
        }
    }
    ink.push(Ink::path(line, Pen::Thin));
    ink.extend(marks);
}
