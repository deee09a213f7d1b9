//! Pieces cut from stock of one length.

use std::collections::BTreeMap;

use measure::{Number, Quantity, Unit};

use super::search::{Found, search};
use super::{bound, fit, pricing};
use crate::error::Error;
use crate::exact::{count, exact};
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Worked, both, percent_words, trade};

/// Pieces in one stock, as (length, count).
pub(super) type Pattern = Vec<(u64, u64)>;

/// Pieces of one length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Piece {
    /// How long.
    pub length: Quantity,
    /// How many.
    pub count: u64,
}

/// What is asked of a saw.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CuttingAsked {
    /// The length of a stock.
    pub stock: Known,
    /// What a cut takes away; none for a knife.
    pub kerf: Option<Known>,
    /// The pieces.
    pub pieces: Vec<Piece>,
}

/// Stocks cut alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cut {
    /// The pieces of one of them.
    pub pieces: Vec<Piece>,
    /// How many are cut so.
    pub times: u64,
}

/// A way of cutting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cutting {
    /// The stocks, those cut alike together.
    pub cuts: Vec<Cut>,
    /// How many stocks it takes.
    pub stocks: u64,
    /// How many any way takes at least. Where it is the same, this way is the best there is.
    pub at_least: u64,
    /// The part of the stocks that doesn't end up in pieces.
    pub waste: Number,
}

/// The most different lengths, and the most pieces, for which the best way is looked for beyond the quick one.
const SEARCHED: (usize, u64) = (40, 5_000);

/// Cuts pieces from stock: the fewest stocks where that can be proven, else few, with a bound on how far they can be
/// from the fewest.
///
/// # Errors
/// A length that isn't above zero, a piece longer than the stock, lengths without a common measure of reasonable size.
pub fn cutting(asked: &CuttingAsked) -> Result<Computed<Cutting>, Error> {
    let unit = length_unit(asked.stock.quantity.unit);
    let stock = asked.stock.above_zero("the stock", unit)?;
    let kerf = asked.kerf.as_ref().map_or(Ok(Number::ZERO), |kerf| {
        kerf.not_negative("the saw's cut", unit)
    })?;
    let mut pieces: BTreeMap<Number, u64> = BTreeMap::new();
    for piece in &asked.pieces {
        let length = Known::new(piece.length, "").above_zero("the length of a piece", unit)?;
        if length > stock {
            return Err(Error::range(
                "the length of a piece",
                piece.length,
                format!("at most the stock, {}", asked.stock.quantity),
            ));
        }
        *pieces.entry(length).or_default() += piece.count;
    }
    let solved = solve(stock, kerf, &pieces, unit)?;
    let mut worked = Worked::of("Stock cut to lengths");
    worked.given("stock", &asked.stock);
    worked.given_if("taken by a cut", asked.kerf.as_ref());
    for (length, count) in pieces.iter().rev() {
        worked.chosen(
            "pieces",
            &format!("{count} of {}", both(*length, unit)),
            "as given",
        );
    }
    worked.formula(
        "fewest stocks; no way takes fewer than the bound",
        "one-dimensional cutting stock: best fit and search; bound L2 of Martello and Toth (1990)",
    );
    for cut in &solved.cuts {
        let words: Vec<String> = cut
            .pieces
            .iter()
            .map(|piece| format!("{} of {}", piece.count, piece.length))
            .collect();
        worked.step(format!("{} × [{}]", cut.times, words.join(", ")));
    }
    report(&solved, &mut worked)?;
    Ok(worked.with(solved))
}

/// Says how many stocks, and whether it can be fewer.
fn report(solved: &Cutting, worked: &mut Worked) -> Result<(), Error> {
    worked.result("stocks", count(solved.stocks)?, Unit::Count);
    worked.result(
        "no way takes fewer than",
        count(solved.at_least)?,
        Unit::Count,
    );
    worked.step(format!("waste {}", percent_words(solved.waste)));
    worked.note(solved.words());
    Ok(())
}

impl Cutting {
    /// Whether it is the best there is, in words.
    pub fn words(&self) -> String {
        match self.stocks.saturating_sub(self.at_least) {
            0 => "this is the fewest there can be".to_owned(),
            over => format!("at most {over} more than the fewest there can be"),
        }
    }
}

/// The same on numbers of one unit.
pub(super) fn solve(
    stock: Number,
    kerf: Number,
    pieces: &BTreeMap<Number, u64>,
    unit: Unit,
) -> Result<Cutting, Error> {
    let what = "the stock and its pieces";
    let scale = pieces
        .keys()
        .chain([&stock, &kerf])
        .try_fold(1_i128, |scale, number| {
            let scale = lcm(scale, number.denominator());
            (scale <= 1_000_000).then_some(scale)
        });
    let scale = scale.ok_or_else(|| Error::Beyond {
        input: what.to_owned(),
    })?;
    let scaled = |number: Number| -> Result<u64, Error> {
        let whole = number.numerator() * (scale / number.denominator());
        u64::try_from(whole)
            .ok()
            .filter(|n| *n < 1 << 40)
            .ok_or_else(|| Error::Beyond {
                input: what.to_owned(),
            })
    };
    // Every piece brings a cut, but for the last of a stock: so the stock is longer by one.
    let cut = scaled(kerf)?;
    let long = scaled(stock)? + cut;
    let mut wanted: Vec<(u64, u64)> = Vec::new();
    for (length, count) in pieces.iter().rev() {
        wanted.push((scaled(*length)? + cut, *count));
    }
    wanted.retain(|(_, count)| *count > 0);
    let (patterns, at_least) = patterns(long, &wanted);
    let stocks: u64 = patterns.iter().map(|(_, times)| times).sum();
    let length = |scaled: u64| -> Result<Quantity, Error> {
        let number = (exact(count(scaled - cut)?) / Number::new(scale, 1).unwrap_or(Number::ONE))
            .get(what)?;
        Ok(Quantity::new(number, unit))
    };
    let mut cuts = Vec::new();
    for (pattern, times) in patterns {
        let pieces: Result<Vec<Piece>, Error> = pattern
            .into_iter()
            .map(|(l, count)| {
                Ok(Piece {
                    length: length(l)?,
                    count,
                })
            })
            .collect();
        cuts.push(Cut {
            pieces: pieces?,
            times,
        });
    }
    cuts.sort_by_key(|cut| core::cmp::Reverse(cut.times));
    let net = pieces.iter().try_fold(exact(0), |sum, (length, times)| {
        Ok::<_, Error>(sum + exact(*length) * count(*times)?)
    })?;
    let waste = if stocks == 0 {
        Number::ZERO
    } else {
        (exact(1) - (net / stock / count(stocks)?).get(what)?).get(what)?
    };
    Ok(Cutting {
        cuts,
        stocks,
        at_least,
        waste,
    })
}

/// The best patterns found, and the proven least number of stocks.
fn patterns(stock: u64, wanted: &[(u64, u64)]) -> (Vec<(Pattern, u64)>, u64) {
    let mut best = fit::best_fit(stock, wanted);
    let mut used: u64 = best.iter().map(|(_, times)| times).sum();
    let mut at_least = bound::least(stock, wanted);
    let how_many: u64 = wanted.iter().map(|(_, count)| count).sum();
    if wanted.len() > SEARCHED.0 || how_many > SEARCHED.1 {
        return (best, at_least);
    }
    if used > at_least
        && let Some(way) = pricing::improve(stock, wanted, at_least, used)
    {
        used = way.iter().map(|(_, times)| times).sum();
        best = way;
    }
    let mut is_proven = true;
    let mut stocks = at_least;
    while stocks < used {
        match search(stock, wanted, stocks) {
            Found::Way(way) => return (way, at_least),
            Found::None if is_proven => at_least = stocks + 1,
            Found::None => {}
            Found::GaveUp => is_proven = false,
        }
        stocks += 1;
    }
    (best, at_least)
}

fn lcm(a: i128, b: i128) -> i128 {
    let (mut x, mut y) = (a, b);
    while y != 0 {
        (x, y) = (y, x % y);
    }
    (a / x.max(1)).saturating_mul(b)
}

/// A length in words, for messages of the take-off.
pub(super) fn words(length: Number, unit: Unit) -> String {
    trade(length, unit)
}
