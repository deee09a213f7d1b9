//! The quantities of a schedule.

use comfy_table::Cell;
use engineering::takeoff::Kind;
use engineering::worked::STANDING;
use measure::{Quantity, print};
use workcard::CAUTIONS;
use workcard::quantities::{Line, Quantities};

use super::page::{heading, wrapped};
use super::paint::{QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, in_runs, on_one_line, to_a_hundredth};
use super::{table, work};

/// All of it: by mark and storey, to bring, left out, and what it rests on.
pub(crate) fn quantities(of: &Quantities) -> String {
    let mut text = format!(
        "{}  {} of {} taken off\n",
        paint(STRONG, &on_one_line(&format!("Quantities {}", of.building))),
        of.taken_off,
        counted(of.joints, "joint", "joints")
    );
    if of.provisional > 0 {
        let words = format!(
            "provisional: nobody has confirmed all of how the listing was read at {}",
            counted(of.provisional, "joint", "joints")
        );
        text.push_str(&paint(UNKNOWN, wrapped(&words, 2, 2).trim_end()));
        text.push('\n');
    }
    if !of.lines.is_empty() {
        text.push_str(&heading("By mark and storey"));
        text.push_str(&lines(&of.lines));
    }
    if !of.orders.is_empty() {
        text.push_str(&heading("What to bring, the whole schedule together"));
        text.push_str(&work::orders(&of.orders));
    }
    if !of.left_out.is_empty() {
        text.push_str(&heading("Left out of all quantities"));
        for one in &of.left_out {
            let joints: Vec<&str> = one.joints.iter().map(String::as_str).collect();
            let words = format!("? {} ({})", on_one_line(&one.why), in_runs(&joints));
            text.push_str(&paint(UNKNOWN, wrapped(&words, 2, 2).trim_end()));
            text.push('\n');
        }
    }
    text.push_str(&heading("What the quantities rest on"));
    for words in &of.basis {
        text.push_str(&wrapped(words, 2, 2));
    }
    for formula in &of.worked.formulas {
        let words = format!("{} <- {}", formula.notation, formula.source);
        text.push_str(&paint(QUIET, wrapped(&words, 2, 2).trim_end()));
        text.push('\n');
    }
    text.push_str(&heading("Cautions"));
    for caution in CAUTIONS {
        text.push_str(&wrapped(caution, 2, 2));
    }
    text.push('\n');
    text.push_str(&paint(QUIET, wrapped(STANDING, 0, 0).trim_end()));
    text.push('\n');
    text
}

fn lines(lines: &[Line]) -> String {
    let mut table = table::table(&["mark", "storey", "what", "amount", "packing, in place"]);
    let mut last: Option<&Line> = None;
    for line in lines {
        let same_mark = last.is_some_and(|last| last.mark == line.mark);
        let same_storey = same_mark && last.is_some_and(|last| last.storey == line.storey);
        last = Some(line);
        let storey = match line.storey.as_str() {
            _ if same_storey => "",
            "" => "not stated",
            named => named,
        };
        let row = [
            on_one_line(if same_mark { "" } else { &line.mark }),
            on_one_line(storey),
            on_one_line(&line.what),
            to_a_hundredth(line.amount),
            line.volume.map_or_else(String::new, to_a_hundredth),
        ];
        table.add_row(row.map(Cell::new));
    }
    for column in [0, 1] {
        table::unwrapped(&mut table, column);
    }
    table::set(&table)
}

/// The headings of the rows for a spreadsheet.
const HEADINGS: [&str; 14] = [
    "part",
    "mark",
    "storey",
    "kind",
    "what",
    "amount",
    "unit",
    "amount_other_system",
    "unit_other_system",
    "volume_bd_ft",
    "in_place",
    "pieces",
    "pieces_at_least",
    "joints",
];

/// One row a quantity, then one each thing to bring, then one each thing left out: the column `part` says which.
pub(crate) fn csv(of: &Quantities) -> String {
    let mut writer = csv::Writer::from_writer(Vec::new());
    // Writing into memory doesn't fail.
    let _ = writer.write_record(HEADINGS);
    for line in &of.lines {
        let [amount, unit, other, other_unit] = amount(line.amount);
        let volume = line.volume.map_or_else(String::new, decimal);
        let _ = writer.write_record([
            "mark and storey",
            &line.mark,
            &line.storey,
            kind(line.kind),
            &line.what,
            &amount,
            &unit,
            &other,
            &other_unit,
            &volume,
            "",
            "",
            "",
            "",
        ]);
    }
    for order in &of.orders {
        let [amount, unit, other, other_unit] = amount(order.brought);
        let number = |number: Option<u64>| number.map_or_else(String::new, |n| n.to_string());
        let _ = writer.write_record([
            "to bring",
            "",
            "",
            kind(order.kind),
            &order.what,
            &amount,
            &unit,
            &other,
            &other_unit,
            "",
            &decimal(order.net),
            &number(order.pieces),
            &number(order.at_least),
            "",
        ]);
    }
    for one in &of.left_out {
        let joints = one.joints.join(" ");
        let why = on_one_line(&one.why);
        let _ = writer.write_record([
            "left out", "", "", "", &why, "", "", "", "", "", "", "", "", &joints,
        ]);
    }
    writer
        .into_inner()
        .ok()
        .and_then(|bytes| String::from_utf8(bytes).ok())
        .unwrap_or_default()
}

/// The amount and its unit, in its own system and in the other.
fn amount(quantity: Quantity) -> [String; 4] {
    let other = print::other_system(quantity.unit).and_then(|unit| quantity.to(unit));
    let unit = |quantity: Quantity| quantity.unit.symbol().to_owned();
    [
        decimal(quantity),
        unit(quantity),
        other.map_or_else(String::new, decimal),
        other.map_or_else(String::new, unit),
    ]
}

/// The number to four places, or whole.
fn decimal(quantity: Quantity) -> String {
    let places = if quantity.number.is_whole() { 0 } else { 4 };
    quantity.number.to_decimal(places)
}

const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Joint => "joint",
        Kind::Packing => "packing",
        Kind::Coating => "coating",
        Kind::Sealant => "sealant",
        Kind::Profile => "profile",
        Kind::Fasteners => "fasteners",
    }
}
