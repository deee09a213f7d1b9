//! The deflected line of one span: exact, as a sum of the textbook curves.
//!
//! Lengths, forces and moduli are in one consistent system. Downward is positive, and so is a sagging moment.

use measure::Number;

use crate::error::Error;
use crate::exact::{Exact, exact};

const WHAT: &str = "the deflection";

/// A span with its loads and the moments at its ends.
#[derive(Debug, Clone)]
pub(crate) struct Span {
    pub(crate) length: Number,
    /// Force for each length.
    pub(crate) uniform: Number,
    /// Forces and their distance from the left support.
    pub(crate) points: Vec<(Number, Number)>,
    /// Moments at the left and right support; for a cantilever they are not used.
    pub(crate) ends: (Number, Number),
    /// Fixed at the left and free at the right.
    pub(crate) is_cantilever: bool,
}

impl Span {
    /// Deflection times E I at a distance from the left.
    pub(crate) fn at(&self, x: Number) -> Result<Number, Error> {
        if self.is_cantilever {
            self.cantilever(x)
        } else {
            self.between_supports(x)
        }
    }

    fn cantilever(&self, x: Number) -> Result<Number, Error> {
        let (l, w) = (exact(self.length), exact(self.uniform));
        let square = exact(x).power(2);
        let mut sum = w * square * (l * l * 6 - l * x * 4 + square) / 24;
        for (force, a) in &self.points {
            let a = exact(*a);
            let part = if a.get(WHAT)? >= x {
                square * (a * 3 - x)
            } else {
                a * a * (exact(x) * 3 - a)
            };
            sum = sum + part * *force / 6;
        }
        sum.get(WHAT)
    }

    fn between_supports(&self, x: Number) -> Result<Number, Error> {
        let l = exact(self.length);
        let at = exact(x) / self.length;
        let rest = exact(1) - at;
        let (cube, fourth) = (at.power(3), at.power(4));
        let mut sum = l.power(4) * self.uniform / 24 * (at - cube * 2 + fourth);
        for (force, a) in &self.points {
            let left = exact(*a) / self.length;
            let right = exact(1) - left;
            let curve = |far: Exact, near: Exact| far * near * (exact(1) - far * far - near * near);
            let part = if x <= *a {
                curve(right, at)
            } else {
                curve(left, rest)
            };
            sum = sum + l.power(3) * *force / 6 * part;
        }
        let (first, last) = self.ends;
        let of_first = (at / 3 - at * at / 2 + cube / 6) * first;
        let of_last = (at / 6 - cube / 6) * last;
        (sum + l * l * (of_first + of_last)).get(WHAT)
    }

    /// A moment that no place of the span exceeds, whatever its sign.
    pub(crate) fn moment_bound(&self) -> Result<Number, Error> {
        let (l, mut sum) = (
            exact(self.length),
            exact(self.ends.0.abs()) + self.ends.1.abs(),
        );
        let (of_uniform, of_point) = if self.is_cantilever { (2, 1) } else { (8, 4) };
        sum = sum + l * l * self.uniform.abs() / of_uniform;
        for (force, _) in &self.points {
            sum = sum + l * force.abs() / of_point;
        }
        sum.get(WHAT)
    }

    /// What the three-moment equation has for this span at its left and right support.
    fn loads_at_supports(&self) -> (Exact, Exact) {
        let l = exact(self.length);
        let uniform = l.power(3) * self.uniform / 4;
        self.points
            .iter()
            .fold((uniform, uniform), |(left, right), (force, a)| {
                let (a, b) = (exact(*a), l - *a);
                let of = |from: Exact| from * *force * (l * l - from * from) / self.length;
                (left + of(b), right + of(a))
            })
    }
}

/// Puts the moments over the supports into spans in a row, by Clapeyron's three-moment equation for one E I.
pub(crate) fn make_continuous(spans: &mut [Span], fixed: (bool, bool)) -> Result<(), Error> {
    // One equation a support: below, diagonal, above, right-hand side.
    let mut rows: Vec<[Exact; 4]> = Vec::new();
    let nothing = exact(0);
    for at in 0..=spans.len() {
        let before = at.checked_sub(1).and_then(|before| spans.get(before));
        let after = spans.get(at);
        let is_end = before.is_none() || after.is_none();
        let is_fixed = if before.is_none() { fixed.0 } else { fixed.1 };
        if is_end && !is_fixed {
            rows.push([nothing, exact(1), nothing, nothing]);
            continue;
        }
        let length = |span: Option<&Span>| span.map_or(nothing, |span| exact(span.length));
        let (left, right) = (length(before), length(after));
        let loads = before.map_or(nothing, |span| span.loads_at_supports().1)
            + after
                .map_or(nothing, |span| span.loads_at_supports().0)
                .get(WHAT)?;
        rows.push([
            left,
            (left + right.get(WHAT)?) * 2,
            right,
            nothing - loads.get(WHAT)?,
        ]);
    }
    let moments = solved(rows)?;
    for (span, pair) in spans.iter_mut().zip(moments.windows(2)) {
        if let [first, last] = pair {
            span.ends = (*first, *last);
        }
    }
    Ok(())
}

/// Gauss's elimination of a tridiagonal system.
fn solved(mut rows: Vec<[Exact; 4]>) -> Result<Vec<Number>, Error> {
    let mut done: Option<[Exact; 4]> = None;
    for row in &mut rows {
        if let Some([_, diagonal, above, right]) = done {
            let [below, own, own_above, own_right] = *row;
            let factor = below / diagonal.get(WHAT)?;
            let own = own - (factor * above.get(WHAT)?).get(WHAT)?;
            let own_right = own_right - (factor * right.get(WHAT)?).get(WHAT)?;
            *row = [exact(0), own, own_above, own_right];
        }
        done = Some(*row);
    }
    let mut found: Vec<Number> = Vec::new();
    for [_, diagonal, above, right] in rows.into_iter().rev() {
        let next = found.last().copied().unwrap_or(Number::ZERO);
        let known = (above * next).get(WHAT)?;
        found.push(((right - known) / diagonal.get(WHAT)?).get(WHAT)?);
    }
    found.reverse();
    Ok(found)
}
