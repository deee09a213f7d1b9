//! Lengths on a page to counts and back.

/// The nearest whole number, none below zero, none that no page could need.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to a small positive range just before"
)]
pub(crate) fn whole(length: f64) -> usize {
    if length.is_finite() {
        length.round().clamp(0.0, 10_000.0) as usize
    } else {
        0
    }
}

/// A count as a number to divide by.
#[expect(
    clippy::cast_precision_loss,
    reason = "counts of glyphs and lines are far below 2^52"
)]
pub(crate) fn count(count: usize) -> f64 {
    count as f64
}

/// The middle value, for figures that a few odd ones mustn't sway.
pub(crate) fn median(values: Vec<f64>) -> Option<f64> {
    quantile(values, 2)
}

/// The value that one in `parts` of all are below.
pub(crate) fn quantile(mut values: Vec<f64>, parts: usize) -> Option<f64> {
    values.retain(|value| value.is_finite());
    values.sort_by(f64::total_cmp);
    values.get(values.len() / parts.max(1)).copied()
}
