//! What the columns of some tables were taken to mean, to be looked at before anything of them is taken.

use serde::{Deserialize, Serialize};

use super::File;
use super::column::About;
use super::problem::Findings;
use super::room::Room;
use super::sheet::letters;
use super::table::Table;

/// What a table was taken to be.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Understood {
    /// The file.
    pub file: String,
    /// The sheet, in a workbook.
    pub sheet: Option<String>,
    /// What it is a table of: joints, marks, barriers, judgments.
    pub of: String,
    /// How many rows it has under its headings.
    pub rows: usize,
    /// Its columns, from the left.
    pub columns: Vec<Column>,
}

/// A column with a heading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Column {
    /// Its letters, as a spreadsheet has them.
    pub letters: String,
    /// The heading, as written.
    pub heading: String,
    /// What it was taken to mean.
    pub means: Means,
}

/// What a column was taken to mean.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Means {
    /// One of the table's own columns, by its name.
    Own(String),
    /// A property, by the name under which facts of it are kept.
    Property(String),
    /// Which option of a listing is built, by the name under which it is kept.
    Option(String),
    /// The project's own: its heading begins with `#`, and it isn't read.
    Apart,
    /// Nothing: no column of such a table is called so.
    Nothing,
}

/// What each table of some files was taken to be. What is no table is left out; [`import`](super::import()) says what is wrong.
pub fn understood(files: &[File<'_>]) -> Vec<Understood> {
    let (mut room, mut findings) = (Room::default(), Findings::default());
    let is_table = |file: &&File<'_>| !file.name.to_lowercase().ends_with(".toml");
    let mut all = Vec::new();
    for file in files.iter().filter(is_table) {
        for sheet in super::sheets(file, &mut room, &mut findings) {
            all.extend(Table::of(&sheet, &mut findings).map(|table| of(&table)));
        }
    }
    all
}

fn of(table: &Table<'_>) -> Understood {
    let headings = table.sheet.rows.first().map(|row| &row.cells);
    let columns = headings
        .into_iter()
        .flatten()
        .map(|(column, heading)| Column {
            letters: letters(*column),
            heading: heading.clone(),
            means: means(table, *column, heading),
        });
    Understood {
        file: table.sheet.file.clone(),
        sheet: table.sheet.name.clone(),
        of: table.kind.word().to_owned(),
        rows: table.rows.len(),
        columns: columns.collect(),
    }
}

fn means(table: &Table<'_>, column: usize, heading: &str) -> Means {
    if heading.starts_with('#') {
        return Means::Apart;
    }
    let own = table.named.iter().find(|(_, at)| **at == column);
    if let Some((name, _)) = own {
        return Means::Own((*name).to_owned());
    }
    let about = table.properties.iter().find(|(at, ..)| *at == column);
    match about {
        Some((_, about @ About::Option(_), _)) => Means::Option(about.name().to_owned()),
        Some((_, about, _)) => Means::Property(about.name().to_owned()),
        None => Means::Nothing,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_column_says_what_it_was_taken_for() {
        let bytes = b"joint,mark,Length,#own,2A:runner.gauge,option.3C,packing.densty\n#source,,,,,,\nJ-1,HW1,1 ft,x,25 MSG,no,\n";
        let file = File {
            name: "schedule.csv",
            bytes,
        };
        let read = understood(&[file]);
        let table = &read[0];
        assert_eq!((table.of.as_str(), table.rows), ("joints", 1));
        let means: Vec<&Means> = table.columns.iter().map(|column| &column.means).collect();
        let own = |name: &str| Means::Own(name.to_owned());
        let property = |name: &str| Means::Property(name.to_owned());
        assert_eq!(
            means,
            [
                &own("joint"),
                &own("mark"),
                &property("joint.length"),
                &Means::Apart,
                &property("2A:runner.gauge"),
                &Means::Option("option.3C".to_owned()),
                &Means::Nothing,
            ]
        );
    }
}
