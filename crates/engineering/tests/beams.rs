//! Beams against published examples, and against a numerical integration of the same beam.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::cast_precision_loss,
    clippy::many_single_char_names,
    clippy::needless_range_loop,
    clippy::similar_names,
    clippy::type_complexity,
    reason = "a test may stop where it fails; the integration is written as textbooks write it"
)]

mod common;

use common::{decimals, float, known, n, q};
use engineering::movement::section::{Shape, second_moment};
use engineering::movement::{
    BeamAsked, PointLoad, SpanAsked, Supports, deflection, deflection_limit,
};
use engineering::{Error, Standing};
use measure::Number;
use proptest::prelude::*;

fn span(length: &str, uniform: Option<&str>, points: &[(&str, &str)]) -> SpanAsked {
    let point = |(force, at): &(&str, &str)| PointLoad {
        force: known(force),
        at: known(at),
    };
    SpanAsked {
        length: known(length),
        uniform: uniform.map(known),
        points: points.iter().map(point).collect(),
    }
}

fn beam(spans: Vec<SpanAsked>, supports: Supports, inertia: &str) -> BeamAsked {
    BeamAsked {
        spans,
        supports,
        modulus: known("29000 ksi"),
        inertia: known(inertia),
        joint: None,
        limit: None,
    }
}

fn mid(mut ask: BeamAsked, at: &str) -> Number {
    ask.joint = Some((1, known(at)));
    deflection(&ask).unwrap().value.at_joint.unwrap()
}

/// University of Oregon, structures course, lecture 40: 24 ft, 2 kip/ft and 16 kip at mid-span, I = 1330 in⁴:
/// 0.387 + 0.206 = 0.593 in., under L/360 = 0.80 in.
#[test]
fn uniform_and_centre_load() {
    let one = |uniform, points: &[_]| {
        mid(
            beam(
                vec![span("24 ft", uniform, points)],
                Supports::Pinned,
                "1330 in4",
            ),
            "12 ft",
        )
    };
    let point = [("16 kip", "12 ft")];
    assert_eq!(one(Some("2 kip/ft"), &[]).to_decimal(3), "0.387");
    assert_eq!(one(None, &point).to_decimal(3), "0.206");
    // The page adds the rounded two; together they are 0.5935.
    assert_eq!(one(Some("2 kip/ft"), &point).to_decimal(4), "0.5935");
    let mut ask = beam(
        vec![span("24 ft", Some("2 kip/ft"), &point)],
        Supports::Pinned,
        "1330 in4",
    );
    ask.limit = Some(360);
    let found = deflection(&ask).unwrap();
    assert_eq!(found.worked.standing(), Standing::Met);
    assert_eq!(found.value.down.low.to_decimal(4), "0.5935");
    assert_eq!(
        decimals(deflection_limit(&known("24 ft"), 360).unwrap().value, 2),
        "0.80"
    );
    // At a quarter of the span the uniform part is 0.7125 of that at mid-span.
    assert_eq!(
        mid(
            beam(
                vec![span("24 ft", Some("2 kip/ft"), &[])],
                Supports::Pinned,
                "1330 in4"
            ),
            "6 ft"
        )
        .to_decimal(4),
        "0.2758"
    );
}

/// University of Oklahoma, lecture 13: 16 ft, 10 kip in all, I = 156 in⁴: 0.204 in.
#[test]
fn ten_kips_on_sixteen_feet() {
    let ask = beam(
        vec![span("16 ft", Some("0.625 kip/ft"), &[])],
        Supports::Pinned,
        "156 in4",
    );
    assert_eq!(mid(ask, "8 ft").to_decimal(3), "0.204");
}

#[test]
fn beyond_its_limit() {
    let mut ask = beam(
        vec![span("30 ft", Some("1 kip/ft"), &[])],
        Supports::Pinned,
        "375 in4",
    );
    ask.limit = Some(360);
    let found = deflection(&ask).unwrap();
    assert_eq!(found.value.down.low.to_decimal(3), "1.676");
    assert_eq!(found.worked.standing(), Standing::NotMet);
}

/// AISC Manual, Table 3-23, as factors of w L⁴ / EI and P L³ / EI (last figures from memory).
#[test]
fn handbook_factors() {
    // E I = 29000 × 1000/29 = 10⁶ kip·in²: with w = 12 kip/ft = 1 kip/in and L = 100 in., w L⁴ / EI = 100 in.
    let of = |spans, supports| {
        deflection(&BeamAsked {
            inertia: known("1000/29 in4"),
            ..beam(spans, supports, "1 in4")
        })
        .unwrap()
        .value
    };
    let hundred = |uniform, points: &[_]| span("100 in.", uniform, points);
    let w = Some("12 kip/ft");
    let close = |found: Number, expected: f64| {
        assert!((float(found) - expected).abs() < 6e-3, "{found} {expected}");
    };
    close(
        of(vec![hundred(w, &[])], Supports::Pinned).down.high,
        500.0 / 384.0,
    );
    close(
        of(vec![hundred(w, &[])], Supports::Fixed).down.high,
        100.0 / 384.0,
    );
    close(
        of(vec![hundred(w, &[])], Supports::FixedLeft).down.high,
        100.0 / 184.6,
    );
    assert_eq!(
        of(vec![hundred(w, &[])], Supports::Cantilever).down.high,
        n("25/2")
    );
    // 1 kip: P L³ / EI = 1 in.
    close(
        of(vec![hundred(None, &[("1 kip", "50 in.")])], Supports::Fixed)
            .down
            .high,
        1.0 / 192.0,
    );
    assert_eq!(
        of(
            vec![hundred(None, &[("1 kip", "100 in.")])],
            Supports::Cantilever
        )
        .down
        .high,
        n("1/3")
    );
    // Two equal spans, both loaded 0.0054, one loaded 0.0092; three loaded 0.0069.
    close(
        of(vec![hundred(w, &[]); 2], Supports::Pinned).down.high,
        0.54,
    );
    let one = of(vec![hundred(w, &[]), hundred(None, &[])], Supports::Pinned);
    close(one.down.high, 0.915);
    assert!(one.up.low > Number::ZERO);
    close(
        of(vec![hundred(w, &[]); 3], Supports::Pinned).down.high,
        0.688,
    );
}

/// Section properties of rolled shapes (AISC Manual, Table 1-1, from memory): plates alone come within 3 % below.
#[test]
fn section_properties() {
    for (d, b, tf, tw, handbook) in [
        ("21 in.", "8.24 in.", "0.615 in.", "0.400 in.", 1330.0),
        ("15.9 in.", "5.53 in.", "0.440 in.", "0.275 in.", 375.0),
        ("12.3 in.", "4.03 in.", "0.425 in.", "0.260 in.", 156.0),
    ] {
        let shape = Shape::WideFlange {
            depth: known(d),
            flange_width: known(b),
            flange_thickness: known(tf),
            web_thickness: known(tw),
        };
        let found = float(second_moment(&shape).unwrap().value.number);
        assert!(
            found <= handbook * 1.005 && found >= handbook * 0.97,
            "{d}: {found} {handbook}"
        );
    }
    let strip = Shape::Rectangle {
        width: known("12 in."),
        depth: known("8 in."),
    };
    assert_eq!(second_moment(&strip).unwrap().value, q("512 in4"));
    let bad = Shape::WideFlange {
        depth: known("1 in."),
        flange_width: known("4 in."),
        flange_thickness: known("0.5 in."),
        web_thickness: known("0.2 in."),
    };
    assert!(
        second_moment(&bad)
            .unwrap_err()
            .to_string()
            .contains("less than half of the depth")
    );
}

#[test]
fn metric_and_customary_agree() {
    let metric = BeamAsked {
        spans: vec![span("9 m", Some("20 kN/m"), &[("50 kN", "3 m")])],
        supports: Supports::Pinned,
        modulus: known("200000 MPa"),
        inertia: known("40000 cm4"),
        joint: Some((1, known("3 m"))),
        limit: None,
    };
    let found = deflection(&metric).unwrap().value;
    // By the formulas in SI: w x (L³ - 2 L x² + x³) / 24 EI + P a² b² / 3 EIL.
    let (l, x, ei) = (9.0_f64, 3.0_f64, 200e9 * 4e-4);
    let y = 20e3 * x * (l.powi(3) - 2.0 * l * x * x + x.powi(3)) / (24.0 * ei)
        + 50e3 * 9.0 * 36.0 / (3.0 * ei * l);
    assert!((float(found.at_joint.unwrap()) - y * 1000.0).abs() < 1e-6);
}

#[test]
fn what_can_not_be_is_refused() {
    let refuse = |ask: &BeamAsked| deflection(ask).unwrap_err().to_string();
    let mut ask = beam(
        vec![span("24 ft", Some("2 kip/ft"), &[("1 kip", "25 ft")])],
        Supports::Pinned,
        "1330 in4",
    );
    assert_eq!(
        refuse(&ask),
        "the place of the force is 25 ft; it must be at most the span, 24 ft"
    );
    ask.spans[0].points.clear();
    ask.inertia = known("0 in4");
    assert!(refuse(&ask).starts_with("the second moment of area is 0 in⁴"));
    ask.inertia = known("4 in.");
    assert!(matches!(
        deflection(&ask).unwrap_err(),
        Error::WrongKind { .. }
    ));
    ask.inertia = known("4 in4");
    ask.joint = Some((2, known("1 ft")));
    assert!(refuse(&ask).contains("1 to 1"));
    ask.spans.clear();
    assert!(refuse(&ask).contains("the number of spans"));
}

/// A beam of spans, integrated step by step from the left: what isn't known there is found from what must hold.
struct Numeric {
    /// Length, uniform load, forces and their places.
    spans: Vec<(f64, f64, Vec<(f64, f64)>)>,
    supports: Supports,
}

impl Numeric {
    const STEPS: usize = 4000;

    /// Deflections with E I = 1 at every step, for starting values (slope, moment, shear) and reactions.
    fn run(
        &self,
        start: (f64, f64, f64),
        reactions: &[f64],
        loaded: bool,
    ) -> (Vec<Vec<f64>>, [f64; 4], Vec<f64>) {
        let (mut y, mut slope, mut m, mut v) = (0.0, start.0, start.1, start.2);
        let mut lines = Vec::new();
        let mut at_supports = Vec::new();
        for (number, (length, uniform, points)) in self.spans.iter().enumerate() {
            let w = if loaded { *uniform } else { 0.0 };
            let h = length / Self::STEPS as f64;
            let mut line = vec![y];
            for step in 0..Self::STEPS {
                // Exact within a step: constant load, cubic slope.
                y += slope * h - m * h * h / 2.0 - v * h.powi(3) / 6.0 + w * h.powi(4) / 24.0;
                slope += -m * h - v * h * h / 2.0 + w * h.powi(3) / 6.0;
                m += v * h - w * h * h / 2.0;
                v -= w * h;
                let x = (step + 1) as f64 * h;
                for (force, at) in points {
                    if loaded && (x - at).abs() < h / 2.0 {
                        v -= force;
                    }
                }
                line.push(y);
            }
            lines.push(line);
            at_supports.push(y);
            v += reactions.get(number).copied().unwrap_or(0.0);
        }
        (lines, [y, slope, m, v], at_supports)
    }

    fn solve(&self) -> Vec<Vec<f64>> {
        let inner = self.spans.len() - 1;
        let unknowns = 2 + inner;
        let setup = |values: &[f64]| {
            let start = match self.supports {
                Supports::Pinned => (values[0], 0.0, values[1]),
                _ => (0.0, values[0], values[1]),
            };
            (start, values[2..].to_vec())
        };
        let conditions = |end: [f64; 4], at: &[f64]| {
            let mut all: Vec<f64> = at[..inner].to_vec();
            all.extend(match self.supports {
                Supports::Cantilever => [end[2], end[3]],
                Supports::Fixed => [end[0], end[1]],
                _ => [end[0], end[2]],
            });
            all
        };
        let zero = vec![0.0; unknowns];
        let (start, reactions) = setup(&zero);
        let (_, end, at) = self.run(start, &reactions, true);
        let right: Vec<f64> = conditions(end, &at).iter().map(|c| -c).collect();
        let mut matrix = vec![vec![0.0; unknowns + 1]; unknowns];
        for column in 0..unknowns {
            let mut unit = zero.clone();
            unit[column] = 1.0;
            let (start, reactions) = setup(&unit);
            let (_, end, at) = self.run(start, &reactions, false);
            for (row, c) in conditions(end, &at).into_iter().enumerate() {
                matrix[row][column] = c;
            }
        }
        for (row, value) in right.into_iter().enumerate() {
            matrix[row][unknowns] = value;
        }
        let values = gauss(matrix);
        let (start, reactions) = setup(&values);
        self.run(start, &reactions, true).0
    }
}

fn gauss(mut m: Vec<Vec<f64>>) -> Vec<f64> {
    let size = m.len();
    for at in 0..size {
        let best = (at..size)
            .max_by(|a, b| m[*a][at].abs().total_cmp(&m[*b][at].abs()))
            .unwrap();
        m.swap(at, best);
        for row in 0..size {
            if row != at {
                let factor = m[row][at] / m[at][at];
                for column in at..=size {
                    m[row][column] -= factor * m[at][column];
                }
            }
        }
    }
    (0..size).map(|at| m[at][size] / m[at][at]).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// E I is 10⁶ kip·in² in both, lengths in inches, places on the steps of the integration.
    #[test]
    fn a_beam_is_the_beam_integrated(
        lengths in prop::collection::vec(4..12_i32, 1..4),
        loads in prop::collection::vec(0..10_i32, 4),
        forces in prop::collection::vec((0..20_i32, 1..8_i32), 4),
        held in 0..4_usize,
    ) {
        let supports = [Supports::Pinned, Supports::Fixed, Supports::FixedLeft, Supports::Cantilever][held];
        let lengths = if supports == Supports::Cantilever { &lengths[..1] } else { &lengths[..] };
        let mut spans = Vec::new();
        let mut numeric = Numeric { spans: Vec::new(), supports };
        for (at, length) in lengths.iter().enumerate() {
            let (l, (force, eighths)) = (length * 40, forces[at]);
            let place = l * eighths / 8;
            spans.push(span(&format!("{l} in."), Some(&format!("{} kip/ft", loads[at])), &[(&format!("{force} kip"), &format!("{place} in."))]));
            numeric.spans.push((f64::from(l), f64::from(loads[at]) / 12.0, vec![(f64::from(force), f64::from(place))]));
        }
        let lines = numeric.solve();
        let ask = BeamAsked { inertia: known("1000/29 in4"), ..beam(spans, supports, "1 in4") };
        let mut most = 0.0_f64;
        for line in &lines {
            most = line.iter().fold(most, |most, y| most.max(y / 1e6));
        }
        let found = deflection(&ask).unwrap().value;
        let tolerance = 1e-6 + most * 1e-5;
        prop_assert!(float(found.down.low) <= most + tolerance && most <= float(found.down.high) + tolerance, "{:?} {most}", found.down);
        for (number, line) in lines.iter().enumerate() {
            let mut there = ask.clone();
            let l = lengths[number] * 40;
            there.joint = Some((number + 1, known(&format!("{} in.", l / 4))));
            let y = deflection(&there).unwrap().value.at_joint.unwrap();
            prop_assert!((float(y) - line[Numeric::STEPS / 4] / 1e6).abs() <= tolerance);
        }
    }

    #[test]
    fn more_load_goes_down_more(load in 0..50_i32, more in 1..50_i32) {
        let down = |load: i32| {
            let ask = beam(vec![span("24 ft", Some(&format!("{load} kip/ft")), &[])], Supports::Pinned, "1330 in4");
            deflection(&ask).unwrap().value.down
        };
        prop_assert!(down(load + more).low > down(load).low);
    }
}
