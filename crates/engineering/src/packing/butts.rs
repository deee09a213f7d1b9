//! Pieces in a run of packing, where they butt, and how the butt joints of strips side by side are kept apart.

use measure::{Number, Quantity, Unit};

use crate::error::Error;
use crate::exact::{ceiling, count, counted, exact};
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Standing, Worked, both, trade};

/// What is asked of the pieces of a run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ButtsAsked {
    /// The length of the run.
    pub run: Known,
    /// The length of a strip as it comes.
    pub piece: Known,
    /// The least distance between butt joints that the listing asks for.
    pub spacing: Option<Known>,
    /// How many strips lie side by side.
    pub strips: u64,
}

/// The pieces of a run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Butts {
    /// The lengths of the pieces, strip by strip, in order along the run.
    pub pieces: Vec<Vec<Quantity>>,
    /// The least distance between two butt joints, of one strip or of two that lie side by side; none without two.
    pub nearest: Option<Quantity>,
    /// What is found against the spacing asked for.
    pub standing: Standing,
}

impl Butts {
    /// How many pieces there are in all.
    pub fn count(&self) -> usize {
        self.pieces.iter().map(Vec::len).sum()
    }
}

/// Lays out the pieces: whole ones first, every second strip shifted by half a piece. Where the rest at the end would
/// be shorter than the spacing, the last two pieces are shared evenly, unless that brings the butt joints of two strips
/// too near each other and a short rest doesn't.
///
/// # Errors
/// A length that isn't above zero, no strips, or more than a hundred thousand pieces.
pub fn butts(asked: &ButtsAsked) -> Result<Computed<Butts>, Error> {
    let unit = length_unit(asked.run.quantity.unit);
    let run = asked.run.above_zero("the length of the run", unit)?;
    let piece = asked.piece.above_zero("the length of a strip", unit)?;
    let spacing = asked.spacing.as_ref();
    let spacing = spacing
        .map(|s| s.not_negative("the spacing of butt joints", unit))
        .transpose()?;
    let rows = counted(ceiling((exact(run) / piece).get("the run")?), "pieces")?;
    if asked.strips == 0 || rows.saturating_mul(asked.strips) > 100_000 {
        return Err(Error::range(
            "the number of strips",
            asked.strips,
            "1 or more, and no more than 100,000 pieces in all",
        ));
    }
    let mut worked = Worked::of("Pieces and butt joints of a run");
    worked.given("length of the run", &asked.run);
    worked.given("length of a strip", &asked.piece);
    worked.given_if("least distance between butt joints", asked.spacing.as_ref());
    worked.chosen("strips side by side", &asked.strips.to_string(), "as given");
    worked.formula(
        "pieces = L / P, the rest shared with the last whole piece where it is shorter than the spacing and that keeps the spacing; every second strip starts with half a piece",
        "layout by common practice; the spacing is the listing's",
    );
    let least = spacing.unwrap_or(Number::ZERO);
    let (odd, even) = layout(run, piece, least, asked.strips > 1)?;
    let rows: Vec<Vec<Number>> = (0..asked.strips)
        .map(|strip| if strip % 2 == 0 { &odd } else { &even }.clone())
        .collect();
    let nearest = nearest(&rows)?;
    let standing = match (spacing, nearest) {
        (None, _) => Standing::Note,
        (Some(_), None) => Standing::Met,
        (Some(least), Some(nearest)) if nearest >= least => Standing::Met,
        _ => Standing::NotMet,
    };
    for (at, row) in rows.iter().take(2).enumerate() {
        let name = if at == 0 { "odd strips" } else { "even strips" };
        let name = if asked.strips == 1 { "strip" } else { name };
        worked.step(format!("{name}: {}", in_words(row, unit)));
    }
    let total: usize = rows.iter().map(Vec::len).sum();
    worked.result("pieces", count(total as u64)?, Unit::Count);
    if let Some(nearest) = nearest {
        worked.result("least distance between butt joints", nearest, unit);
    }
    if let Some(least) = spacing {
        let words = match standing {
            Standing::Met => format!("butt joints are at least {} apart", both(least, unit)),
            _ => format!(
                "laid so, butt joints aren't {} apart: use longer strips, or lay them out otherwise",
                both(least, unit)
            ),
        };
        worked.find(standing, words);
    }
    let pieces = rows
        .into_iter()
        .map(|row| row.into_iter().map(|n| Quantity::new(n, unit)).collect());
    Ok(worked.with(Butts {
        pieces: pieces.collect(),
        nearest: nearest.map(|n| Quantity::new(n, unit)),
        standing,
    }))
}

/// The pieces of odd and of even strips: the first layout that keeps the spacing, else that with all rests shared.
fn layout(
    run: Number,
    piece: Number,
    least: Number,
    side_by_side: bool,
) -> Result<(Vec<Number>, Vec<Number>), Error> {
    let shared = |odd: bool, even: bool| -> Result<_, Error> {
        let share = |share: bool| if share { least } else { Number::ZERO };
        Ok((
            row(run, piece, share(odd), false)?,
            row(run, piece, share(even), true)?,
        ))
    };
    for (odd, even) in [(true, true), (false, true), (true, false), (false, false)] {
        let (odd, even) = shared(odd, even)?;
        let strips = if side_by_side {
            vec![odd.clone(), even.clone()]
        } else {
            vec![odd.clone()]
        };
        if nearest(&strips)?.is_none_or(|nearest| nearest >= least) {
            return Ok((odd, even));
        }
    }
    shared(true, true)
}

/// The pieces of one strip; a rest below `least` shares what it and the piece before it have.
fn row(run: Number, piece: Number, least: Number, shifted: bool) -> Result<Vec<Number>, Error> {
    let what = "the pieces of a run";
    let mut pieces = Vec::new();
    let mut left = run;
    let half = (exact(piece) / 2).get(what)?;
    if shifted && run > half {
        pieces.push(half);
        left = (exact(left) - half).get(what)?;
    }
    while left > piece {
        pieces.push(piece);
        left = (exact(left) - piece).get(what)?;
    }
    if left < least
        && let Some(last) = pieces.pop()
    {
        let share = ((exact(left) + last) / 2).get(what)?;
        pieces.push(share);
        left = share;
    }
    pieces.push(left);
    Ok(pieces)
}

/// The least distance between butt joints in one strip or two neighbouring ones.
fn nearest(rows: &[Vec<Number>]) -> Result<Option<Number>, Error> {
    let mut places: Vec<Vec<Number>> = Vec::new();
    for row in rows.iter().take(2) {
        let mut at = exact(0);
        let mut of_row = Vec::new();
        for piece in row.iter().take(row.len().saturating_sub(1)) {
            at = at + *piece;
            of_row.push(at.get("the place of a butt joint")?);
        }
        places.push(of_row);
    }
    let mut all: Vec<Number> = places.into_iter().flatten().collect();
    all.sort_unstable();
    let gaps = all.windows(2).filter_map(|pair| match pair {
        [one, next] => next.minus(*one),
        _ => None,
    });
    Ok(gaps.min())
}

/// "6 of 4 ft, 1 of 2 ft".
fn in_words(row: &[Number], unit: Unit) -> String {
    let mut groups: Vec<(Number, usize)> = Vec::new();
    for piece in row {
        match groups.last_mut() {
            Some((length, times)) if length == piece => *times += 1,
            _ => groups.push((*piece, 1)),
        }
    }
    let words: Vec<String> = groups
        .iter()
        .map(|(length, times)| format!("{times} of {}", trade(*length, unit)))
        .collect();
    words.join(", then ")
}
