//! The known name nearest to a mistyped one.

/// The candidates near enough to be what was meant, nearest first, then by name.
///
/// Near enough is an edit distance (a swap of neighbours counts one) of at most a third of the length asked for,
/// and at least one: `packing.densty` is near `packing.density`, and `nail` is far from `seal`.
pub(crate) fn nearest<'c>(
    wanted: &str,
    candidates: impl IntoIterator<Item = &'c str>,
) -> Vec<&'c str> {
    let wanted = wanted.trim().to_lowercase();
    let farthest = (wanted.chars().count() / 3).max(1);
    let mut near: Vec<(usize, &str)> = candidates
        .into_iter()
        .map(|candidate| {
            (
                strsim::damerau_levenshtein(&wanted, &candidate.to_lowercase()),
                candidate,
            )
        })
        .filter(|(distance, _)| *distance <= farthest)
        .collect();
    near.sort_unstable();
    near.dedup();
    near.into_iter().map(|(_, candidate)| candidate).collect()
}

#[cfg(test)]
mod tests {
    use super::nearest;

    #[test]
    fn nearest_comes_first_and_far_ones_not_at_all() {
        assert_eq!(nearest("dept", ["width", "depth", "depths"]), ["depth"]);
        assert_eq!(nearest("depht", ["depth", "deck"]), ["depth"]);
        assert_eq!(nearest("zzzz", ["depth", "width"]), [""; 0]);
    }
}
