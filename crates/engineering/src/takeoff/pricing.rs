//! A better way of cutting by prices: what was hard to cut well gets dearer, and is cut earlier the next time.
//!
//! Stock after stock is cut for the greatest sum of prices (a knapsack, solved exactly); prices begin as lengths, and
//! move towards what a length cost in the stocks it was cut from. The sequential value correction of Mukhacheva and
//! others, on whole numbers.

use super::cutting::Pattern;

/// The most rounds; each cuts all the pieces once.
const ROUNDS: u32 = 300;
/// The most that one round may take, in places of the stock times lengths times stocks.
const WORK: u64 = 400_000;
/// Prices are lengths times this at first.
const SCALE: u64 = 1000;

/// The fewest stocks that prices find, if they find fewer than `used`; ends as soon as `enough` will do.
pub(super) fn improve(
    stock: u64,
    pieces: &[(u64, u64)],
    enough: u64,
    used: u64,
) -> Option<Vec<(Pattern, u64)>> {
    let common = pieces
        .iter()
        .fold(0, |common, (length, _)| gcd(common, *length));
    // Only whole measures of the lengths can be filled.
    let (room, common) = (stock / common.max(1), common.max(1));
    let lengths: Vec<u64> = pieces.iter().map(|(length, _)| length / common).collect();
    let work = room
        .saturating_mul(lengths.len() as u64)
        .saturating_mul(used.min(60));
    if work == 0 {
        return None;
    }
    let rounds = ROUNDS.min(u32::try_from(WORK.saturating_mul(100) / work).unwrap_or(ROUNDS));
    let mut prices: Vec<u64> = lengths.iter().map(|length| length * SCALE).collect();
    let mut best: Option<(u64, Vec<(Pattern, u64)>)> = None;
    for _ in 0..rounds {
        let way = round(room, &lengths, pieces, &mut prices);
        let stocks: u64 = way.iter().map(|(_, times)| times).sum();
        let than = best.as_ref().map_or(used, |(stocks, _)| *stocks);
        if stocks < than {
            best = Some((stocks, in_lengths(&way, pieces)));
        }
        if stocks <= enough {
            break;
        }
    }
    best.map(|(_, way)| way)
}

fn in_lengths(way: &[(Vec<u64>, u64)], pieces: &[(u64, u64)]) -> Vec<(Pattern, u64)> {
    let patterns = way.iter().map(|(counts, times)| {
        let held = pieces.iter().zip(counts).filter(|(_, count)| **count > 0);
        (
            held.map(|((length, _), count)| (*length, *count)).collect(),
            *times,
        )
    });
    patterns.collect()
}

/// Cuts all the pieces once, and moves the prices.
fn round(
    room: u64,
    lengths: &[u64],
    pieces: &[(u64, u64)],
    prices: &mut [u64],
) -> Vec<(Vec<u64>, u64)> {
    let mut left: Vec<u64> = pieces.iter().map(|(_, count)| *count).collect();
    let mut way = Vec::new();
    while left.iter().any(|count| *count > 0) {
        let counts = dearest(room, lengths, &left, prices);
        let most = counts.iter().zip(&left).filter(|(count, _)| **count > 0);
        let most = most.map(|(count, left)| left / count).min().unwrap_or(0);
        if most == 0 {
            break;
        }
        let times = (most / 2).max(1);
        for (left, count) in left.iter_mut().zip(&counts) {
            *left -= count * times;
        }
        let used: u64 = counts
            .iter()
            .zip(lengths)
            .map(|(count, length)| count * length)
            .sum();
        for ((price, count), length) in prices.iter_mut().zip(&counts).zip(lengths) {
            if *count > 0 {
                // A length costs the stock it takes, waste included; long ones a little more.
                let cost = length * SCALE * room / used + length * length * SCALE / (room * 25);
                *price = (*price * 3 + cost).div_ceil(4);
            }
        }
        way.push((counts, times));
    }
    way
}

/// The pieces of one stock with the greatest sum of prices, no more of each than are left.
fn dearest(room: u64, lengths: &[u64], left: &[u64], prices: &[u64]) -> Vec<u64> {
    let places = usize::try_from(room)
        .unwrap_or(usize::MAX)
        .saturating_add(1);
    let mut best = vec![0_u64; places];
    let mut taken: Vec<Vec<u32>> = Vec::with_capacity(lengths.len());
    for ((length, left), price) in lengths.iter().zip(left).zip(prices) {
        let mut of_this = vec![0_u32; places];
        let mut next = best.clone();
        for (at, (slot, taken)) in next.iter_mut().zip(&mut of_this).enumerate() {
            let most = (at as u64 / length).min(*left);
            for count in 1..=most {
                let rest = usize::try_from(at as u64 - count * length).unwrap_or(0);
                let value = best.get(rest).copied().unwrap_or(0) + count * price;
                if value > *slot {
                    *slot = value;
                    *taken = u32::try_from(count).unwrap_or(u32::MAX);
                }
            }
        }
        best = next;
        taken.push(of_this);
    }
    let mut at = places - 1;
    let mut counts = vec![0; lengths.len()];
    for ((slot, taken), length) in counts.iter_mut().zip(&taken).zip(lengths).rev() {
        let count = u64::from(taken.get(at).copied().unwrap_or(0));
        *slot = count;
        at = at.saturating_sub(usize::try_from(count * length).unwrap_or(at));
    }
    counts
}

fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}
