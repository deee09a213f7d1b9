//! The stack for the widths of a joint, and what it comes to at each of them.

use measure::{Number, Quantity, Unit, print};

use super::compression::{self, Parts, Rule};
use super::report;
use super::stack::{Stack, stacks};
use super::{COMPRESSION_SOURCE, DENSITY_SOURCE};
use crate::between::Between;
use crate::error::Error;
use crate::exact::{ceiling, count, counted, exact};
use crate::known::{Known, Readings, Summary};
use crate::units::rule_step;
use crate::worked::{Computed, Standing, Worked, both, percent_words};

/// Which way the packing is compressed, which isn't the same as how its fibres lie.
///
/// Board and batt have their fibres mainly parallel to the faces (ASTM C612, 1.3).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// Strips stand edge-first in the joint, and their thickness is compressed, across the plane of the fibres.
    ThroughThickness,
    /// Strips lie flat in the joint, and their cut width is compressed, in the plane of the fibres.
    InFibrePlane,
}

impl Direction {
    /// In words, fibres and compression apart.
    pub const fn words(self) -> &'static str {
        match self {
            Self::ThroughThickness => {
                "strips edge-first: fibres lie along the faces of the joint, compression is through the thickness, across the fibres"
            }
            Self::InFibrePlane => {
                "strips flat: fibres lie from face to face of the joint, compression is of the cut width, in the plane of the fibres"
            }
        }
    }
}

/// What is asked of a packing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PackingAsked {
    /// The width of the joint as found or drawn.
    pub width: Readings,
    /// How deep the packing stands in the joint.
    pub depth: Known,
    /// The compression that the listing asks for.
    pub compression: Rule,
    /// The thicknesses at hand.
    pub stock: Vec<Quantity>,
    /// The density as delivered, where it matters.
    pub density: Option<Known>,
    /// Which way it is compressed.
    pub direction: Direction,
    /// How far the joint closes after it is packed.
    pub closing: Option<Known>,
    /// How far it opens.
    pub opening: Option<Known>,
    /// A stack that somebody means to use; without it one is chosen from the stock.
    pub proposed: Option<Stack>,
    /// The smallest division of what that stack's thickness was read with, all strips together; none as delivered.
    pub proposed_read_to: Option<Quantity>,
}

impl PackingAsked {
    /// The thickness laid, within what it was read with where somebody measured the stack proposed.
    pub(super) fn laid(&self, thickness: Number, unit: Unit) -> Result<Between, Error> {
        let (Some(_), Some(step)) = (&self.proposed, self.proposed_read_to) else {
            return Ok(Between::exactly(thickness));
        };
        let input = "the resolution of the thickness";
        let step = Known::new(step, "").above_zero(input, unit)?;
        let laid = Between::around(thickness, (exact(step) / 2).get(input)?, "the thickness")?;
        if laid.low <= Number::ZERO {
            let valid = "above 0 by more than half a division of the instrument";
            return Err(Error::range("the thickness", both(thickness, unit), valid));
        }
        Ok(laid)
    }
}

/// What a packing comes to at one width.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reached {
    /// Which width: "narrowest", "mean", "widest", "narrowest, closed".
    pub at: &'static str,
    /// The width.
    pub width: Quantity,
    /// The compression, as a part of one.
    pub compression: Between,
    /// The density in the joint, where the density as delivered is known.
    pub density: Option<Quantity>,
}

/// A packing, chosen or checked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Packing {
    /// The strips, as they come from the stock.
    pub stack: Stack,
    /// How wide each strip is cut.
    pub cut_width: Quantity,
    /// The uncompressed thickness across the joint.
    pub thickness: Quantity,
    /// What it comes to at each width.
    pub reached: Vec<Reached>,
    /// What is found at the widths as they are now.
    pub standing: Standing,
}

/// Chooses the stack for a joint, or checks the one proposed, and says what it comes to at every width.
///
/// The fewest strips that keep the rule at every reading are chosen, and of equals the stack nearest to what is asked;
/// one that is half as thick again as need be only where nothing else does. Where no stack does, the nearest is named.
///
/// # Errors
/// A length that isn't above zero, a compression outside 0 to below 100 %, no stock.
pub fn packing(asked: &PackingAsked) -> Result<Computed<Packing>, Error> {
    let unit = asked.width.length_unit("the width")?;
    let widths = asked.width.summary("the width", unit)?;
    if widths.least <= widths.half {
        let valid = "above 0, and above half of what the instrument can tell";
        return Err(Error::range("the width", both(widths.least, unit), valid));
    }
    let depth = asked.depth.above_zero("the depth of the packing", unit)?;
    let rule = asked.compression.parts()?;
    let mut worked = inputs(asked);
    let need = compression::needed(widths.mean, rule.aim())?;
    worked.step(format!(
        "to reach {} at the mean width: T = {} / (1 - {}) = {}",
        percent_words(rule.aim()),
        both(widths.mean, unit),
        crate::error::plain(rule.aim()),
        both(need, unit)
    ));
    let chosen = match asked.direction {
        Direction::ThroughThickness => through(asked, &widths, rule, depth, unit, &mut worked)?,
        Direction::InFibrePlane => flat(asked, &widths, rule, depth, unit)?,
    };
    worked.step(format!(
        "laid: {}, T = {}",
        chosen.stack.words(),
        print::both(chosen.thickness)
    ));
    worked.result("uncompressed thickness, T", chosen.thickness.number, unit);
    worked.result("strips cut to a width of", chosen.cut_width.number, unit);
    report::report(&chosen, rule, &mut worked);
    let reached = report::with_movement(asked, &widths, &chosen, unit, &mut worked)?;
    Ok(worked.with(Packing { reached, ..chosen }))
}

fn inputs(asked: &PackingAsked) -> Worked {
    let mut worked = Worked::of("Packing from stock");
    worked.read("width of the joint, W", &asked.width);
    worked.given("depth of the packing", &asked.depth);
    worked.given_if("least compression", asked.compression.least.as_ref());
    worked.given_if("greatest compression", asked.compression.most.as_ref());
    worked.given_if("nominal compression", asked.compression.nominal.as_ref());
    let stock: Vec<String> = asked.stock.iter().map(|q| print::both(*q)).collect();
    if !stock.is_empty() {
        worked.chosen("thicknesses at hand", &stock.join(", "), "as given");
    }
    worked.given_if("density as delivered, ρ", asked.density.as_ref());
    worked.given_if("closing after packing", asked.closing.as_ref());
    worked.given_if("opening after packing", asked.opening.as_ref());
    worked.chosen("direction", asked.direction.words(), "as given");
    worked.formula("c = (T - W) / T, so T = W / (1 - c)", COMPRESSION_SOURCE);
    if asked.density.is_some() {
        worked.formula("ρ in the joint = ρ T / W", DENSITY_SOURCE);
    }
    worked
}

/// What a thickness comes to at the narrowest, mean and widest reading.
fn reach(
    asked: &PackingAsked,
    widths: &Summary,
    thickness: (Number, Between),
    unit: Unit,
) -> Result<Vec<Reached>, Error> {
    let at = [
        ("narrowest", widths.least),
        ("mean", widths.mean),
        ("widest", widths.greatest),
    ];
    let all_one = widths.least == widths.greatest;
    let kept = at.iter().filter(|(name, _)| !all_one || *name == "mean");
    kept.map(|(name, width)| reached(asked, name, *width, widths.half, thickness, unit))
        .collect()
}

pub(super) fn reached(
    asked: &PackingAsked,
    at: &'static str,
    width: Number,
    half: Number,
    (thickness, laid): (Number, Between),
    unit: Unit,
) -> Result<Reached, Error> {
    let density = asked.density.as_ref();
    let density = density.map(|delivered| compression::density(delivered, thickness, width));
    let density = density
        .transpose()?
        .map(|(number, unit)| Quantity::new(number, unit));
    Ok(Reached {
        at,
        width: Quantity::new(width, unit),
        compression: compression::within(laid, Between::around(width, half, "the width")?)?,
        density,
    })
}

fn standing(rule: Parts, reached: &[Reached]) -> Standing {
    let each = reached.iter().map(|one| {
        // The mean is no place in the joint where it can fail alone: the ends decide, unless there is but one.
        if one.at == "mean" && reached.len() > 1 {
            Standing::Note
        } else {
            rule.standing(one.compression)
        }
    });
    each.fold(Standing::Note, Standing::and)
}

/// Strips edge-first: their thicknesses add up.
fn through(
    asked: &PackingAsked,
    widths: &Summary,
    rule: Parts,
    depth: Number,
    unit: Unit,
    worked: &mut Worked,
) -> Result<Packing, Error> {
    let weigh = |stack: Stack, laid: Between| -> Result<Packing, Error> {
        let reached = reach(asked, widths, (stack.thickness.number, laid), unit)?;
        Ok(Packing {
            cut_width: Quantity::new(depth, unit),
            thickness: stack.thickness,
            standing: standing(rule, &reached),
            reached,
            stack,
        })
    };
    let nearest = || -> Result<Option<Packing>, Error> {
        let most = compression::needed(widths.greatest, rule.most.unwrap_or_else(|| rule.aim()))?;
        let most = (exact(most) * 2).get("the uncompressed thickness")?;
        let aim = compression::needed(widths.mean, rule.aim())?;
        let mut best: Option<(Packing, _)> = None;
        for stack in stacks(&asked.stock, unit, most)? {
            let thickness = Between::exactly(stack.thickness.number);
            let candidate = weigh(stack, thickness)?;
            let key = preference(&candidate, rule, aim)?;
            if best.as_ref().is_none_or(|(_, than)| key < *than) {
                best = Some((candidate, key));
            }
        }
        Ok(best.map(|(packing, _)| packing))
    };
    if let Some(proposed) = &asked.proposed {
        worked.chosen("stack proposed", &proposed.words(), "as given");
        let stack = Stack::of(proposed.layers.clone(), unit)?;
        let laid = asked.laid(stack.thickness.number, unit)?;
        let proposed = weigh(stack, laid)?;
        if proposed.standing >= Standing::Open
            && let Some(other) = nearest()?
            && other.standing < proposed.standing
        {
            let words = format!(
                "the nearest stack of the stock that can: {}, T = {}",
                other.stack.words(),
                print::both(other.thickness)
            );
            worked.note(words);
        }
        return Ok(proposed);
    }
    let help = "give the thicknesses at hand, such as 1 in., 1-1/2 in. and 2 in.";
    nearest()?.ok_or_else(|| Error::missing("the stock", help))
}

/// What is preferred, the lesser first: within the rule, nearest to it, not half as thick again as need be, few strips,
/// near the aim, one thickness.
type Preference = (Standing, Number, bool, u64, Number, usize);

fn preference(packing: &Packing, rule: Parts, aim: Number) -> Result<Preference, Error> {
    let off_aim = (exact(packing.thickness.number) - aim)
        .get("the thickness")?
        .abs();
    let mut miss = Number::ZERO;
    if packing.standing >= Standing::Open {
        for one in &packing.reached {
            let short = rule
                .least
                .map(|least| (exact(least) - one.compression.low).get("the compression"));
            let over = rule
                .most
                .map(|most| (exact(one.compression.high) - most).get("the compression"));
            for by in [short.transpose()?, over.transpose()?]
                .into_iter()
                .flatten()
            {
                miss = miss.max(by);
            }
        }
        if rule.nominal.is_some() {
            miss = miss.max(off_aim);
        }
    }
    let thick = (exact(aim) * 3 / 2).get("the thickness")?;
    Ok((
        packing.standing,
        miss,
        packing.thickness.number > thick,
        packing.stack.strips(),
        off_aim,
        packing.stack.layers.len(),
    ))
}

/// Strips flat: the cut width is compressed, the thicknesses fill the depth.
fn flat(
    asked: &PackingAsked,
    widths: &Summary,
    rule: Parts,
    depth: Number,
    unit: Unit,
) -> Result<Packing, Error> {
    let step = rule_step(unit)?;
    let at = if rule.least.is_some() {
        exact(widths.greatest) + widths.half
    } else {
        exact(widths.mean)
    };
    let need = compression::needed(at.get("the width")?, rule.aim())?;
    let steps = counted(
        ceiling((exact(need) / step).get("the width")?),
        "the cut width",
    )?;
    let cut = (exact(step) * count(steps)?).get("the cut width")?;
    let mut best: Option<Stack> = None;
    for thickness in &asked.stock {
        let thick = Known::new(*thickness, "").above_zero("a thickness of the stock", unit)?;
        let strips = counted(ceiling((exact(depth) / thick).get("the depth")?), "strips")?;
        let layer = super::Layer {
            strips,
            thickness: *thickness,
        };
        let stack = Stack::of(vec![layer], unit)?;
        let better = |than: &Stack| {
            (stack.thickness.number, stack.strips()) < (than.thickness.number, than.strips())
        };
        if best.as_ref().is_none_or(better) {
            best = Some(stack);
        }
    }
    let help = "give the thicknesses at hand, such as 1 in., 1-1/2 in. and 2 in.";
    let stack = best.ok_or_else(|| Error::missing("the stock", help))?;
    let reached = reach(asked, widths, (cut, Between::exactly(cut)), unit)?;
    Ok(Packing {
        stack,
        cut_width: Quantity::new(cut, unit),
        thickness: Quantity::new(cut, unit),
        standing: standing(rule, &reached),
        reached,
    })
}
