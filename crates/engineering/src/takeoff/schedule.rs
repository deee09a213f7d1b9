//! Quantities of a schedule by mark and storey, and what to order for all of it.
//!
//! Packing is cut twice: batts are sawn into strips as wide as the packing is deep, and the rests that whole strips leave
//! at the ends of runs are cut from strips again. Both cuts are worked out for the whole schedule together.

use std::collections::BTreeMap;

use measure::{Number, Quantity, Unit, print};

use super::asked::{Kind, Line, MarkAsked, Packing, Run, Schedule, Stock};
use super::cutting::{solve, words};
use super::order::Order;
use super::spacing::places;
use crate::error::Error;
use crate::exact::{Exact, ceiling, count, counted, exact, floor};
use crate::worked::{Computed, Worked, percent_words};

const WHAT: &str = "the take-off";

/// The key of strips that are cut alike from like stock.
type StripKey<'a> = (&'a str, Number, Stock, Number);

/// The key of a line: mark, storey, kind and what it is.
type LineKey<'a> = (&'a str, &'a str, Kind, String);

/// The sum of a line: its amount and unit, and board feet where it is packing.
struct Sum {
    amount: Exact,
    unit: Unit,
    board_feet: Option<Exact>,
}

#[derive(Default)]
struct Tally<'a> {
    lines: BTreeMap<LineKey<'a>, Sum>,
    /// Whole strips and rests, by strip.
    strips: BTreeMap<StripKey<'a>, (u64, BTreeMap<Number, u64>)>,
    coatings: BTreeMap<&'a str, (Exact, Exact)>,
    sealants: BTreeMap<(&'a str, Number), (Exact, Exact)>,
    profiles: BTreeMap<&'a str, Exact>,
    fasteners: BTreeMap<&'a str, u64>,
}

/// Takes off a schedule.
///
/// # Errors
/// A run without a length above zero or with a mark that isn't there, strips wider than their stock.
pub fn take_off(marks: &[MarkAsked], runs: &[Run]) -> Result<Computed<Schedule>, Error> {
    let mut tally = Tally::default();
    for run in runs {
        let mark = marks
            .get(run.mark)
            .ok_or_else(|| Error::missing("the mark of a run", "name one of the marks given"))?;
        if run.length <= Number::ZERO {
            return Err(Error::range(
                "the length of a run",
                words(run.length, Unit::Inch),
                "above 0",
            ));
        }
        tally.add(mark, run)?;
    }
    let mut orders = tally.packing_orders()?;
    orders.extend(tally.other_orders()?);
    let lines = tally
        .lines
        .into_iter()
        .map(|((mark, storey, kind, what), sum)| {
            let volume = sum
                .board_feet
                .map(|volume| Ok::<_, Error>(Quantity::new(volume.get(WHAT)?, Unit::BoardFoot)));
            Ok(Line {
                mark: mark.to_owned(),
                storey: storey.to_owned(),
                kind,
                what,
                amount: Quantity::new(sum.amount.get(WHAT)?, sum.unit),
                volume: volume.transpose()?,
            })
        });
    let schedule = Schedule {
        lines: lines.collect::<Result<_, Error>>()?,
        orders,
    };
    Ok(worked(&schedule, runs.len()).with(schedule))
}

impl<'a> Tally<'a> {
    fn add(&mut self, mark: &'a MarkAsked, run: &'a Run) -> Result<(), Error> {
        let key = |kind: Kind, what: String| (mark.mark.as_str(), run.storey.as_str(), kind, what);
        let length = exact(run.length);
        let joint = key(Kind::Joint, "joint".to_owned());
        self.line(joint, length / 12, Unit::Foot, None);
        for packing in &mark.packing {
            let what = format!(
                "{}, {} thick, cut {} wide",
                packing.product,
                size(packing.thickness),
                size(packing.cut_width)
            );
            let strips = count(packing.strips)?;
            let board_feet = length * strips * packing.cut_width * packing.thickness / 144;
            self.line(
                key(Kind::Packing, what),
                length * strips / 12,
                Unit::Foot,
                Some(board_feet),
            );
            let (whole, rests) = pieces(run.length, packing)?;
            let strip = (
                packing.product.as_str(),
                packing.thickness,
                packing.stock,
                packing.cut_width,
            );
            let (of_whole, of_rests) = self.strips.entry(strip).or_default();
            *of_whole += whole * packing.strips;
            for rest in rests {
                *of_rests.entry(rest).or_default() += packing.strips;
            }
        }
        for coating in &mark.coatings {
            let film = length * coating.band * count(coating.faces)? * coating.wet / 231;
            let used = film / (exact(1) - coating.loss);
            self.line(
                key(Kind::Coating, format!("{}, with loss", coating.product)),
                used,
                Unit::Gallon,
                None,
            );
            let sums = self
                .coatings
                .entry(&coating.product)
                .or_insert((exact(0), exact(0)));
            *sums = (sums.0 + film.get(WHAT)?, sums.1 + used.get(WHAT)?);
        }
        for sealant in &mark.sealants {
            let bead = length * sealant.area * count(sealant.faces)?;
            let used = bead / (exact(1) - sealant.loss);
            self.line(
                key(Kind::Sealant, format!("{}, with loss", sealant.product)),
                used,
                Unit::CubicInch,
                None,
            );
            let sums = self
                .sealants
                .entry((&sealant.product, sealant.package))
                .or_insert((exact(0), exact(0)));
            *sums = (sums.0 + bead.get(WHAT)?, sums.1 + used.get(WHAT)?);
        }
        for profile in &mark.profiles {
            let feet = length * count(profile.rows)? / 12;
            self.line(
                key(Kind::Profile, profile.what.clone()),
                feet,
                Unit::Foot,
                None,
            );
            let sum = self.profiles.entry(&profile.what).or_insert(exact(0));
            *sum = *sum + feet.get(WHAT)?;
        }
        for row in &mark.fasteners {
            let number = places(run.length, row.spacing, row.end)?.saturating_mul(row.at_each);
            self.line(
                key(Kind::Fasteners, row.what.clone()),
                exact(count(number)?),
                Unit::Count,
                None,
            );
            *self.fasteners.entry(&row.what).or_default() += number;
        }
        Ok(())
    }

    fn line(&mut self, key: LineKey<'a>, amount: Exact, unit: Unit, board_feet: Option<Exact>) {
        let sum = self.lines.entry(key).or_insert(Sum {
            amount: exact(0),
            unit,
            board_feet: None,
        });
        sum.amount = added(sum.amount, amount);
        if let Some(volume) = board_feet {
            sum.board_feet = Some(added(sum.board_feet.unwrap_or(exact(0)), volume));
        }
    }

    /// Batts: rests from strips, then strips from batts.
    fn packing_orders(&self) -> Result<Vec<Order>, Error> {
        let mut batts: BTreeMap<(&str, Number, Stock), Sawn> = BTreeMap::new();
        for ((product, thickness, stock, cut_width), (whole, rests)) in &self.strips {
            let cut = solve(stock.length, stock.kerf, rests, Unit::Inch)?;
            let sawn = batts
                .entry((*product, *thickness, *stock))
                .or_insert_with(Sawn::nothing);
            sawn.fewest.insert(*cut_width, whole + cut.at_least);
            sawn.strips.insert(*cut_width, whole + cut.stocks);
            let of_rests = rests.iter().try_fold(exact(0), |sum, (rest, times)| {
                Ok::<_, Error>(sum + exact(*rest) * count(*times)?)
            })?;
            let net =
                (of_rests + exact(stock.length) * count(*whole)?) * *cut_width * *thickness / 144;
            sawn.net = (exact(sawn.net) + net.get(WHAT)?).get(WHAT)?;
        }
        let mut orders = Vec::new();
        for ((product, thickness, stock), sawn) in batts {
            for width in sawn.strips.keys() {
                if *width > stock.width {
                    return Err(Error::range(
                        "the width of a strip",
                        size(*width),
                        format!("at most the batt's, {}", size(stock.width)),
                    ));
                }
            }
            let cut = solve(stock.width, stock.kerf, &sawn.strips, Unit::Inch)?;
            let least = solve(stock.width, stock.kerf, &sawn.fewest, Unit::Inch)?.at_least;
            let bought = (exact(stock.length) * stock.width * thickness / 144 * count(cut.stocks)?)
                .get(WHAT)?;
            let waste = if cut.stocks == 0 {
                Number::ZERO
            } else {
                (exact(1) - (exact(sawn.net) / bought).get(WHAT)?).get(WHAT)?
            };
            orders.push(Order {
                kind: Kind::Packing,
                what: format!(
                    "{product}, {} thick, batts {} × {}",
                    size(thickness),
                    size(stock.width),
                    size(stock.length)
                ),
                net: Quantity::new(sawn.net, Unit::BoardFoot),
                bought: Quantity::new(bought, Unit::BoardFoot),
                pieces: Some(cut.stocks),
                at_least: Some(least),
                waste: Some(waste),
            });
        }
        Ok(orders)
    }

    fn other_orders(&self) -> Result<Vec<Order>, Error> {
        let mut orders = Vec::new();
        let plain = |kind: Kind, what: &str, net: Quantity, bought: Quantity| Order {
            kind,
            what: what.to_owned(),
            net,
            bought,
            pieces: None,
            at_least: None,
            waste: None,
        };
        for (product, (net, used)) in &self.coatings {
            let gallons =
                |number: Exact| Ok::<_, Error>(Quantity::new(number.get(WHAT)?, Unit::Gallon));
            orders.push(plain(
                Kind::Coating,
                product,
                gallons(*net)?,
                gallons(*used)?,
            ));
        }
        for ((product, package), (net, used)) in &self.sealants {
            let packages = counted(ceiling((*used / *package).get(WHAT)?), WHAT)?;
            let inches =
                |number: Exact| Ok::<_, Error>(Quantity::new(number.get(WHAT)?, Unit::CubicInch));
            let bought = inches(exact(*package) * count(packages)?)?;
            let package = Quantity::new(*package, Unit::CubicInch);
            let package = package.to(Unit::FluidOunce).unwrap_or(package);
            let what = format!("{product}, packages of {}", print::both(package));
            orders.push(Order {
                pieces: Some(packages),
                ..plain(Kind::Sealant, &what, inches(*net)?, bought)
            });
        }
        for (what, feet) in &self.profiles {
            let length = Quantity::new(feet.get(WHAT)?, Unit::Foot);
            orders.push(plain(Kind::Profile, what, length, length));
        }
        for (what, number) in &self.fasteners {
            let things = super::spacing::things(*number)?;
            orders.push(plain(Kind::Fasteners, what, things, things));
        }
        Ok(orders)
    }
}

/// A size as it is likely to have been stated: in inches where a tape has the fraction, else in whole millimetres.
fn size(length: Number) -> String {
    let stated = Quantity::new(length, Unit::Inch);
    let is_on_a_tape = 64 % length.denominator() == 0;
    match stated.to(Unit::Millimetre) {
        Some(metric) if !is_on_a_tape && metric.number.is_whole() => metric.to_string(),
        _ => words(length, Unit::Inch),
    }
}

/// A sum with one more in it; a sum that has left the range stays beyond it.
fn added(sum: Exact, more: Exact) -> Exact {
    match more.get(WHAT) {
        Ok(more) => sum + more,
        Err(_) => more,
    }
}

/// Strips that are sawn from like batts.
struct Sawn {
    /// How many of each width.
    strips: BTreeMap<Number, u64>,
    /// How many at least, however the rests are cut.
    fewest: BTreeMap<Number, u64>,
    /// What ends up in the building, in board feet.
    net: Number,
}

impl Sawn {
    const fn nothing() -> Self {
        Self {
            strips: BTreeMap::new(),
            fewest: BTreeMap::new(),
            net: Number::ZERO,
        }
    }
}

/// Whole strips of one row of a run, and the rests that are cut from others.
fn pieces(run: Number, packing: &Packing) -> Result<(u64, Vec<Number>), Error> {
    let strip = packing.stock.length;
    let whole = counted(floor((exact(run) / strip).get(WHAT)?), WHAT)?;
    let rest = (exact(run)
        - exact(strip)
            .get(WHAT)?
            .times(count(whole)?)
            .ok_or_else(|| Error::Beyond {
                input: WHAT.to_owned(),
            })?)
    .get(WHAT)?;
    if rest.is_zero() {
        return Ok((whole, Vec::new()));
    }
    // A rest that is too short shares what it and a whole strip have.
    if rest < packing.butts_apart && whole > 0 {
        let share = ((exact(rest) + strip) / 2).get(WHAT)?;
        return Ok((whole - 1, vec![share, share]));
    }
    Ok((whole, vec![rest]))
}

fn worked(schedule: &Schedule, runs: usize) -> Worked {
    let mut worked = Worked::of("Take-off of a schedule");
    worked.chosen("runs", &runs.to_string(), "schedule");
    worked.formula(
        "packing: rests of runs from strips, strips from batts, each by cutting stock",
        "best fit and search; bound L2 of Martello and Toth (1990)",
    );
    worked.formula(
        "coating: length × band × faces × wet film / (1 - loss)",
        crate::films::COVERAGE_SOURCE,
    );
    worked.formula(
        "fasteners: (L - 2 e) / s, rounded up, + 1, run by run",
        "geometry",
    );
    for order in &schedule.orders {
        worked.result(order.what.clone(), order.bought.number, order.bought.unit);
        if let (Some(pieces), Some(least), Some(waste)) =
            (order.pieces, order.at_least, order.waste)
        {
            let proof = if pieces == least {
                "the fewest there can be".to_owned()
            } else {
                format!(
                    "at most {} more than the fewest there can be",
                    pieces - least
                )
            };
            worked.step(format!(
                "{}: {pieces} batts, {proof}; {} lost in cutting",
                order.what,
                percent_words(waste)
            ));
        }
    }
    worked
}
