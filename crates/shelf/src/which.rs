//! Which of several listings a mark means.

/// What a listing goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Named<'n> {
    /// Its file's name without the ending.
    pub stem: &'n str,
    /// Its designation; empty where it has none.
    pub designation: &'n str,
}

/// Which listing goes by a name, by its place among those given.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Which {
    /// One does.
    One(usize),
    /// None does.
    Nothing,
    /// Several do, and nothing says which is meant.
    Several(Vec<usize>),
}

/// The listing that a mark means: by its file's name without the ending, else by its designation.
pub fn which(name: &str, listings: &[Named<'_>]) -> Which {
    let positions = |goes_by: &dyn Fn(&Named<'_>) -> bool| -> Vec<usize> {
        let found = listings.iter().enumerate();
        found
            .filter(|(_, named)| goes_by(named))
            .map(|(at, _)| at)
            .collect()
    };
    let wanted = levelled(name);
    let by_stem = positions(&|named| named.stem == name.trim());
    let by_designation = positions(&|named| {
        let designation = levelled(named.designation);
        !designation.is_empty() && designation == wanted
    });
    let by_loose_stem = positions(&|named| levelled(named.stem) == wanted);
    match (
        by_stem.as_slice(),
        by_designation.as_slice(),
        by_loose_stem.as_slice(),
    ) {
        ([one], ..) | (_, [one], _) | (_, [], [one]) => Which::One(*one),
        (_, [], []) => Which::Nothing,
        (_, [], several) | (_, several, _) => Which::Several(several.to_vec()),
    }
}

/// A name with its capitals, hyphens, spaces and underscores levelled.
fn levelled(name: &str) -> String {
    let apart = |c: char| c.is_whitespace() || matches!(c, '-' | '_' | '\u{2010}'..='\u{2015}');
    name.trim()
        .to_lowercase()
        .split(apart)
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join("-")
}

#[cfg(test)]
mod tests {
    use super::{Named, Which, which};

    #[test]
    fn a_file_s_name_goes_before_a_designation() {
        let named = |stem, designation| Named { stem, designation };
        let held = [
            named("hw-1-ed3", "HW-1"),
            named("hw-1-ed4", "HW-1"),
            named("ff_2", "FF-2"),
        ];
        let find = |name: &str| which(name, &held);
        assert_eq!(find("hw-1-ed4"), Which::One(1));
        assert_eq!(find(" ff 2 "), Which::One(2));
        assert_eq!(find("HW-1"), Which::Several(vec![0, 1]));
        assert_eq!(find("WW-9"), Which::Nothing);
    }
}
