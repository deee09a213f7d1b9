//! What a packing comes to, in words: at the widths as they are, and after the joint has moved.

use measure::{Number, Unit, print};

use super::choose::{Direction, Packing, PackingAsked, Reached, reached};
use super::compression::{self, Parts};
use crate::between::Between;
use crate::error::Error;
use crate::exact::exact;
use crate::known::Summary;
use crate::movement::percent_in_words;
use crate::worked::{Standing, Worked, both, percent_words, trade};

pub(super) fn report(chosen: &Packing, rule: Parts, worked: &mut Worked) {
    for one in &chosen.reached {
        let Between { low, high } = one.compression;
        let compression = if low == high {
            told(low, rule)
        } else {
            format!("{} to {}", told(low, rule), told(high, rule))
        };
        worked.step(format!(
            "{} width, {}: c = {compression}",
            one.at,
            print::both(one.width)
        ));
        if let Some(density) = one.density {
            worked.result(
                format!("density in the joint, {} width", one.at),
                density.number,
                density.unit,
            );
        }
    }
    let asked = asked_words(rule);
    let words = match chosen.standing {
        Standing::Met | Standing::Note => format!("compressed {asked} at every width read"),
        Standing::Open if rule.nominal.is_some() => {
            format!(
                "the listing asks for {asked}, and states no tolerance: whether what is reached may count is for a person to judge"
            )
        }
        Standing::Open => format!(
            "whether it is compressed {asked} can't be told: the readings are too near the limit for their instrument"
        ),
        Standing::NotMet => format!("not compressed {asked} at every width read"),
    };
    worked.find(chosen.standing, words);
}

/// A compression written so that it can't pass for the limit it is nearest to.
fn told(part: Number, rule: Parts) -> String {
    let percent = |part: Number| part.times(Number::whole(100));
    let distance = |limit: &Number| limit.minus(part).map(Number::abs);
    let limits = [rule.least, rule.most, rule.nominal];
    let nearest = limits.into_iter().flatten().min_by_key(distance);
    percent(part).map_or_else(
        || percent_words(part),
        |part| percent_in_words(part, nearest.and_then(percent)),
    )
}

fn asked_words(rule: Parts) -> String {
    match (rule.least, rule.most, rule.nominal) {
        (Some(least), Some(most), _) => {
            format!(
                "between {} and {}",
                percent_words(least),
                percent_words(most)
            )
        }
        (Some(least), None, _) => format!("at least {}", percent_words(least)),
        (None, Some(most), _) => format!("at most {}", percent_words(most)),
        (None, None, Some(nominal)) => format!("nominally {}", percent_words(nominal)),
        (None, None, None) => "as asked".to_owned(),
    }
}

/// The widths as they are now, and after the joint has moved to its two extremes.
pub(super) fn with_movement(
    asked: &PackingAsked,
    widths: &Summary,
    chosen: &Packing,
    unit: Unit,
    worked: &mut Worked,
) -> Result<Vec<Reached>, Error> {
    let mut all = chosen.reached.clone();
    let thickness = chosen.thickness.number;
    // Strips laid flat are cut, not read.
    let laid = match asked.direction {
        Direction::ThroughThickness => asked.laid(thickness, unit)?,
        Direction::InFibrePlane => Between::exactly(thickness),
    };
    if let Some(closing) = &asked.closing {
        let by = closing.not_negative("the closing", unit)?;
        let closed = (exact(widths.least) - by).get("the width")?;
        let left = Between::around(closed, widths.half, "the width")?.above(Number::ZERO);
        if left == Standing::Met {
            all.push(reached(
                asked,
                "narrowest, closed",
                closed,
                widths.half,
                (thickness, laid),
                unit,
            )?);
        } else {
            let leaves = match left {
                Standing::NotMet => "which leaves nothing of its narrowest width",
                _ => {
                    "and whether that leaves anything of its narrowest width can't be told as closely as it was read"
                }
            };
            let words = format!("the joint closes by {}, {leaves}", both(by, unit));
            worked.find(left, words);
        }
    }
    if let Some(opening) = &asked.opening {
        let by = opening.not_negative("the opening", unit)?;
        let open = (exact(widths.greatest) + by).get("the width")?;
        let one = reached(
            asked,
            "widest, opened",
            open,
            widths.half,
            (thickness, laid),
            unit,
        )?;
        let tight = one.compression.at_least(Number::ZERO);
        if tight != Standing::Met {
            let words = format!(
                "the packing of {} hangs loose in the joint opened to {}",
                trade(thickness, unit),
                both(open, unit)
            );
            worked.find(tight, words);
        }
        all.push(one);
    }
    for one in all.iter().skip(chosen.reached.len()) {
        let middle = compression::of(thickness, one.width.number)?;
        worked.step(format!(
            "{} to {}: c = {}",
            one.at,
            print::both(one.width),
            percent_words(middle)
        ));
        if let Some(density) = one.density {
            worked.result(
                format!("density in the joint, {}", one.at),
                density.number,
                density.unit,
            );
        }
    }
    Ok(all)
}
