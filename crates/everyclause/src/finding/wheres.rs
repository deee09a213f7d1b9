//! Facts from the command line: `joint.width=1 in.`, read as a cell of a schedule is.

use site::import::{File, import};
use site::{Barrier, Fact, Project};

use crate::fault::{Fault, Faults};

/// Whose word facts of the command line are.
const SOURCE: &str = "stated: as asked on the command line";

/// The properties and values of some facts.
///
/// # Errors
/// When one has no `=`.
fn split(given: &[String]) -> Result<Vec<(&str, &str)>, Faults> {
    let pair = |one: &'_ String| -> Option<(usize, usize)> {
        let at = one.find('=')?;
        (at > 0).then_some((at, at + 1))
    };
    let mut pairs = Vec::new();
    for one in given {
        let places = pair(one).and_then(|(end, start)| Some((one.get(..end)?, one.get(start..)?)));
        match places {
            Some((property, value)) => pairs.push((property.trim(), value.trim())),
            None => {
                return Err(Fault::of_command(format!("`{one}` is no fact"))
                    .help("write a property and its value: `joint.width=1 in.`, `packing.product=Maker | Product`")
                    .into());
            }
        }
    }
    Ok(pairs)
}

/// The facts that were given, each from the source that its square brackets name, else as stated on the command line.
///
/// # Errors
/// When one can't be read: as for the cell of a schedule.
pub(crate) fn facts(given: &[String]) -> Result<Vec<Fact>, Faults> {
    let pairs = split(given)?;
    let is_of_barrier =
        |property: &str| [Barrier::RATING, Barrier::SMOKE_BARRIER].contains(&property);
    let (of_barrier, of_joint): (Vec<_>, Vec<_>) = pairs
        .into_iter()
        .partition(|(property, _)| is_of_barrier(property));
    let mut schedule = vec![("joint", "J", "#source"), ("mark", "M", "")];
    schedule.extend(
        of_joint
            .iter()
            .map(|(property, value)| (*property, *value, SOURCE)),
    );
    let barrier_columns: Vec<(&str, &str, &str)> = of_barrier
        .iter()
        .map(|(property, value)| {
            (
                property.split_once('.').map_or(*property, |(_, one)| one),
                *value,
                SOURCE,
            )
        })
        .collect();
    let mut tables = Vec::new();
    if !barrier_columns.is_empty() {
        schedule.push(("barrier", "B", ""));
        let mut columns = vec![("barrier", "B", "#source")];
        columns.extend(barrier_columns);
        tables.push(("the facts given of the barrier", table(&columns)?));
    }
    tables.push(("the facts given", table(&schedule)?));
    let project = read(&tables)?;
    let joint = project.joints.first();
    Ok(joint
        .map(|joint| project.facts(joint).iter().map(without_cell).collect())
        .unwrap_or_default())
}

fn without_cell(fact: &Fact) -> Fact {
    Fact {
        cell: None,
        ..fact.clone()
    }
}

/// A table of headings, sources and one row.
fn table(columns: &[(&str, &str, &str)]) -> Result<Vec<u8>, Fault> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let rows = [
        columns.iter().map(|column| column.0).collect::<Vec<_>>(),
        columns.iter().map(|column| column.2).collect(),
        columns.iter().map(|column| column.1).collect(),
    ];
    let written = rows.iter().try_for_each(|row| writer.write_record(row));
    let bytes = written
        .map_err(|error| error.to_string())
        .and_then(|()| writer.into_inner().map_err(|error| error.to_string()));
    bytes.map_err(|error| Fault::of_command(format!("the facts can't be read: {error}")))
}

fn read(tables: &[(&str, Vec<u8>)]) -> Result<Project, Faults> {
    let files: Vec<File<'_>> = tables
        .iter()
        .map(|(name, bytes)| File { name, bytes })
        .collect();
    match import(&files) {
        Ok(import) => Ok(import.project),
        Err(error) => Err(Faults {
            faults: error.problems.iter().map(Fault::from).collect(),
            closing: None,
        }),
    }
}
