//! Ways of cutting that are quick and usually good: each piece, the longest first, from the shortest rest it fits.

use std::collections::BTreeMap;

use super::cutting::Pattern;

/// Best fit, decreasing. Stocks cut alike are kept together, so that many thousand pieces take no longer than their
/// different lengths.
pub(super) fn best_fit(stock: u64, pieces: &[(u64, u64)]) -> Vec<(Pattern, u64)> {
    // Rest of the stock, then how it is cut, then how many are.
    let mut open: BTreeMap<u64, BTreeMap<Pattern, u64>> = BTreeMap::new();
    for (length, count) in pieces {
        let mut left = *count;
        while left > 0 {
            let found = open.range(*length..).next().map(|(rest, _)| *rest);
            let Some(rest) = found else {
                let per = (stock / length).max(1);
                let full = left / per;
                put(&mut open, stock - per * length, vec![(*length, per)], full);
                let over = left % per;
                if over > 0 {
                    put(&mut open, stock - over * length, vec![(*length, over)], 1);
                }
                break;
            };
            left -= fill(&mut open, rest, *length, left);
        }
    }
    let all = open.into_values().flatten();
    all.collect()
}

fn put(open: &mut BTreeMap<u64, BTreeMap<Pattern, u64>>, rest: u64, pattern: Pattern, times: u64) {
    if times > 0 {
        *open.entry(rest).or_default().entry(pattern).or_default() += times;
    }
}

/// Cuts pieces of a length from stocks with one rest; says how many.
fn fill(
    open: &mut BTreeMap<u64, BTreeMap<Pattern, u64>>,
    rest: u64,
    length: u64,
    left: u64,
) -> u64 {
    let Some(mut patterns) = open.remove(&rest) else {
        return left;
    };
    let Some((pattern, times)) = patterns.pop_first() else {
        return left;
    };
    if !patterns.is_empty() {
        open.insert(rest, patterns);
    }
    let per = (rest / length).max(1);
    let stocks = (left / per).min(times);
    let cut = |pieces: u64| {
        let mut pattern = pattern.clone();
        pattern.push((length, pieces));
        pattern
    };
    if stocks == 0 {
        // Fewer pieces left than one rest takes.
        put(open, rest, pattern.clone(), times - 1);
        put(open, rest - left * length, cut(left), 1);
        return left;
    }
    put(open, rest, pattern.clone(), times - stocks);
    put(open, rest - per * length, cut(per), stocks);
    per * stocks
}
