//! What an import says of files that are wrong: every slip, with its cell and what would be right.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a failed expectation is the point of a test"
)]

mod between_tables;
#[path = "../common/mod.rs"]
mod common;

use common::{check_problem, import, problems};

/// A schedule with one joint, whose one property is a value.
fn schedule(property: &str, value: &str) -> String {
    format!("joint,{property}\nJ-1,\"{}\"\n", value.replace('"', "\"\""))
}

#[track_caller]
fn check_cell(property: &str, value: &str, message: &str, help: &str) {
    check_problem(
        &[("s.csv", &schedule(property, value))],
        "s.csv, cell B2",
        message,
        help,
    );
}

#[test]
fn cells_that_say_something_else() {
    check_cell(
        "joint.width",
        "2.5",
        "`2.5` has no unit",
        "`2.5 in.` or `2.5 mm`",
    );
    check_cell(
        "packing.density",
        "4 in.",
        "packing.density is a density; `4 in.` is a length",
        "`4 pcf`",
    );
    check_cell(
        "packing.material",
        "straw",
        "isn't a value of packing.material",
        "`mineral-wool`",
    );
    check_cell(
        "packing.flush",
        "maybe",
        "neither yes nor no",
        "`yes` or `no`",
    );
    check_cell(
        "packing.product",
        "A|B|C",
        "isn't one product",
        "Maker | Product",
    );
    check_cell("length", "twelve", "no number", "in.");
    check_cell("joint.width", "#VALUE!", "formula's error", "formula");
    check_cell("mark", "#N/A", "formula's error", "formula");
    check_cell(
        "joint.width",
        "4-Mar",
        "is a date",
        "format the column as text",
    );
    check_cell(
        "joint.width",
        "2 in. [measured: tape, 1/16 in.; readings 1 in., 1-1/2 in.]",
        "isn't within its readings, 1 in., 1-1/2 in.",
        "correct",
    );
}

#[track_caller]
fn check_schedule(text: &str, place: &str, message: &str, help: &str) {
    check_problem(&[("s.csv", text)], place, message, help);
}

#[test]
fn headings() {
    check_schedule(
        "joint,packing.densty\nJ-1,4\n",
        "s.csv, cell B1",
        "`packing.densty` isn't a column of joints",
        "`packing.density`",
    );
    check_schedule(
        "joint,sotrey\nJ-1,L1\n",
        "s.csv, cell B1",
        "isn't a column",
        "`storey`",
    );
    check_schedule(
        "joint,cost centre\nJ-1,4\n",
        "s.csv, cell B1",
        "isn't a column",
        "begin the heading with `#`",
    );
    check_schedule(
        "joint,joint.width,joint.width\nJ-1,1 in.,2 in.\n",
        "s.csv, cell C1",
        "stands twice",
        "column B",
    );
    check_schedule(
        "joint,length,joint.length\nJ-1,1 ft,2 ft\n",
        "s.csv, cell C1",
        "`joint.length` stands twice",
        "column B",
    );
    check_schedule(
        "joint,Joint\nJ-1,1\n",
        "s.csv, cell B1",
        "`joint` stands twice",
        "column A",
    );
    check_schedule(
        "joint,,mark\nJ-1,4,HW1\nJ-2,4,HW1\n",
        "s.csv, cell B2",
        "the column has no heading",
        "name it",
    );
    check_schedule(
        "jiont,joint.width\nJ-1,1 in.\n",
        "s.csv, row 1",
        "none of the columns",
        "`joint`",
    );
    check_schedule(
        "title,elsewhere\nx,y\n",
        "s.csv, row 1",
        "none of the columns `joint_or_mark`, `joint`",
        "column `joint`",
    );
    let barriers = "barrier,packing.density\nFB-1,4 pcf\n";
    check_problem(
        &[("b.csv", barriers)],
        "b.csv, cell B1",
        "whose properties stand elsewhere",
        "joints or marks",
    );
    let judgments = "joint_or_mark,listing,item,words,decision,by,when\n";
    check_problem(
        &[("j.csv", judgments)],
        "j.csv, row 1",
        "no column `basis`",
        "add it",
    );
    check_problem(
        &[("m.csv", "mark\nHW1\n"), ("s.csv", "joint\nJ-1\n")],
        "s.csv, row 1",
        "no column `mark`",
        "add it",
    );
}

#[test]
fn rows() {
    check_schedule(
        "joint,mark,grid\nJ-1,HW1\n",
        "s.csv, row 2",
        "2 cells where the headings have 3",
        "double quotes",
    );
    check_schedule(
        "joint,mark,grid\nJ-1,HW1,A,B\n",
        "s.csv, row 2",
        "4 cells where the headings have 3",
        "double quotes",
    );
    check_schedule(
        "joint,mark\n,HW1\n",
        "s.csv, cell A2",
        "no `joint`",
        "every row needs one",
    );
    check_schedule(
        "joint,mark\n?,HW1\n",
        "s.csv, cell A2",
        "no `joint`",
        "every row needs one",
    );
    check_schedule(
        "joint,mark\nJ-1,A\nJ-1,B\n",
        "s.csv, cell A3",
        "`J-1` stands twice; it is first in s.csv, cell A2",
        "own name",
    );
    check_schedule(
        "joint,mark\nJ-1,A\n#source,\n",
        "s.csv, cell A3",
        "isn't a name",
        "right under the headings",
    );
    check_schedule(
        "joint,mark\n#sauce,\nJ-1,A\n",
        "s.csv, cell A2",
        "isn't a name",
        "right under the headings",
    );
    check_schedule(
        "joint,mark\nJ-1,\"A\nJ-2,B\n",
        "s.csv, cell B2",
        "never closed",
        "close it",
    );
    check_problem(
        &[("m.csv", "mark\nA\nA\n")],
        "m.csv, cell A3",
        "`A` stands twice",
        "own name",
    );
    check_problem(
        &[("b.csv", "barrier\nA\n"), ("c.csv", "barrier\nA\n")],
        "c.csv, cell A2",
        "first in b.csv, cell A2",
        "own name",
    );
}

#[test]
fn sources() {
    let with = |source: &str| format!("joint,joint.width\n#source,\"{source}\"\nJ-1,1 in.\n");
    check_schedule(
        &with("rumour"),
        "s.csv, cell B2",
        "isn't a source",
        "`drawing A-801`",
    );
    check_schedule(
        &with("measured: tape; readings 1 in."),
        "s.csv, cell B2",
        "not of a column",
        "in the cell",
    );
    check_schedule(
        &with("measured: tape, 1 %"),
        "s.csv, cell B3",
        "a percentage; joint.width is a length",
        "leave it out",
    );
    check_schedule(
        &with("witnessed; 14.3.2026"),
        "s.csv, cell B2",
        "isn't a day",
        "2026-03-14",
    );
}

#[test]
fn a_row_of_sources_that_is_out_of_step() {
    check_schedule(
        "joint,joint.width,packing.depth\n#source,measured: tape, 1/16 in.,witnessed\nJ-1,1 in.,2 in.\n",
        "s.csv, row 2",
        "4 cells where the headings have 3",
        "double quotes",
    );
}

#[test]
fn every_problem_is_named_in_one_go_in_order() {
    let marks = "mark,packing.density\nHW1,4\nHW1,4 pcf\n";
    let schedule = "\
joint,mark,joint.width,colour,packing.density
#source,,rumour,,
J-1,HW9,0.75,red,4 in.
J-2,HW1,1 in.
J-2,HW1,1 in.,,4 pcf,6
,HW1,1 in.,,yes
";
    let found = problems(&[("schedule.csv", schedule), ("marks.csv", marks)]);
    let places: Vec<_> = found
        .iter()
        .map(|problem| problem.cell.to_string())
        .collect();
    assert_eq!(
        places,
        [
            "schedule.csv, cell D1",
            "schedule.csv, cell C2",
            "schedule.csv, cell B3",
            "schedule.csv, cell C3",
            "schedule.csv, cell E3",
            "schedule.csv, row 4",
            "schedule.csv, row 5",
            "schedule.csv, cell A5",
            "schedule.csv, cell A6",
            "schedule.csv, cell E6",
            "marks.csv, cell B2",
            "marks.csv, cell A3",
        ]
    );
}

#[test]
fn an_error_reads_as_a_list() {
    let error = import(&[("s.csv", "joint,joint.width\nJ-1,1\nJ-2,4 pcf\n")]).unwrap_err();
    assert_eq!(
        error.to_string(),
        "2 problems; nothing was imported\n  \
         s.csv, cell B2: `1` has no unit; joint.width is a length; write for example `1 in.` or `1 mm`\n  \
         s.csv, cell B3: joint.width is a length; `4 pcf` is a density; write for example `4 in.` or `4 mm`"
    );
}

#[test]
fn a_row_with_a_problem_is_a_name_all_the_same() {
    let marks = ("m.csv", "mark,packing.density\nHW1,4\n");
    check_problem(
        &[marks, ("s.csv", "joint,mark\nJ-1,HW1\n")],
        "m.csv, cell B2",
        "no unit",
        "pcf",
    );
}

#[test]
fn columns_of_options() {
    let joints = |text: &'static str| [("joints.csv", text)];
    check_problem(
        &joints("joint,option.\nJ-1,no\n"),
        "joints.csv, cell B1",
        "doesn't say which option",
        "`option.configuration`",
    );
    check_problem(
        &joints("joint,option.3C,option.3c\nJ-1,no,no\n"),
        "joints.csv, cell C1",
        "stands twice",
        "column B",
    );
    check_problem(
        &joints("joint,option.3C\nJ-1,#REF!\n"),
        "joints.csv, cell B2",
        "formula's error",
        "mend the formula",
    );
    check_problem(
        &joints("joint,option.3C\nJ-1,no [seen]\n"),
        "joints.csv, cell B2",
        "isn't a source",
        "",
    );
    check_problem(
        &joints("joint,option.3C\nJ-1,no [measured: tape; readings 1 in.]\n"),
        "joints.csv, cell B2",
        "option.3C isn't measured in readings",
        "leave the readings out",
    );
    check_problem(
        &joints("joint,options.3C\nJ-1,no\n"),
        "joints.csv, cell B1",
        "isn't a column of joints",
        "begin the heading with `#`",
    );
    check_problem(
        &[("barriers.csv", "barrier,option.3C\nFB-1,no\n")],
        "barriers.csv, cell B1",
        "isn't a column of barriers",
        "table of joints or marks",
    );
}
