//! A number of stocks that no way of cutting can go below.

/// The greater of two bounds: all pieces end to end, and Martello and Toth's L2 (1990), in which pieces longer than
/// half a stock can't share one, and what is left beside them is filled without cutting losses.
///
/// `pieces` are (length, count), the longest first; each length is at most `stock`.
pub(super) fn least(stock: u64, pieces: &[(u64, u64)]) -> u64 {
    let total: u128 = pieces
        .iter()
        .map(|(length, count)| u128::from(*length) * u128::from(*count))
        .sum();
    let all = whole(total, stock);
    let half = stock / 2;
    let small: Vec<u64> = pieces
        .iter()
        .map(|(length, _)| *length)
        .filter(|length| *length <= half)
        .collect();
    let with = |limit: u64| {
        let mut alone = 0_u64;
        let mut beside = 0_u64;
        let mut room = 0_u128;
        let mut filling = 0_u128;
        for (length, count) in pieces {
            if *length > stock - limit {
                alone += count;
            } else if *length > half {
                beside += count;
                room += u128::from(stock - length) * u128::from(*count);
            } else if *length >= limit {
                filling += u128::from(*length) * u128::from(*count);
            }
        }
        alone + beside + whole(filling.saturating_sub(room), stock)
    };
    small
        .into_iter()
        .map(with)
        .chain([with(0)])
        .fold(all, u64::max)
}

fn whole(length: u128, stock: u64) -> u64 {
    u64::try_from(length.div_ceil(u128::from(stock.max(1)))).unwrap_or(u64::MAX)
}
