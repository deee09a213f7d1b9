//! What tables, judgments and building files say of one another.

use crate::common::{check_problem, import};

#[test]
fn names_that_nothing_has() {
    let marks = ("m.csv", "mark\nHW1\nHW2\n");
    let barriers = ("b.csv", "barrier\nFB-1\n");
    let building = ("b.toml", "name = \"Depot\"\n[[storeys]]\nname = \"L1\"\n");
    check_problem(
        &[marks, ("s.csv", "joint,mark\nJ-1,hw1\n")],
        "s.csv, cell B2",
        "no mark `hw1`",
        "the nearest is `HW1`",
    );
    check_problem(
        &[marks, ("s.csv", "joint,mark\nJ-1,FLOOR\n")],
        "s.csv, cell B2",
        "no mark `FLOOR`",
        "known are `HW1`, `HW2`",
    );
    check_problem(
        &[marks, ("s.csv", "joint,mark\nJ-1,\n")],
        "s.csv, cell B2",
        "no `mark`",
        "every row needs one",
    );
    check_problem(
        &[barriers, ("s.csv", "joint,barrier\nJ-1,FB1\n")],
        "s.csv, cell B2",
        "no barrier `FB1`",
        "`FB-1`",
    );
    check_problem(
        &[building, ("s.csv", "joint,storey\nJ-1,L10\n")],
        "s.csv, cell B2",
        "no storey `L10`",
        "`L1`",
    );
    let judgment = |name: &str| {
        format!(
            "joint_or_mark,item,words,decision,by,when,basis\n{name},1,w,accepted,b,2026-01-01,x\n"
        )
    };
    let schedule = ("s.csv", "joint,mark\nJ-1,A\nA,A\n");
    check_problem(
        &[schedule, ("j.csv", &judgment("J-2"))],
        "j.csv, cell A2",
        "no joint or mark `J-2`",
        "`J-1`",
    );
    check_problem(
        &[schedule, ("j.csv", &judgment("A"))],
        "j.csv, cell A2",
        "of a joint and of a mark",
        "different names",
    );
    check_problem(
        &[("j.csv", &judgment("J-2"))],
        "j.csv, cell A2",
        "no joint or mark",
        "no joint or mark was given at all",
    );
}

#[test]
fn a_joint_and_its_barrier_that_disagree() {
    let barriers = ("b.csv", "barrier,rating\nFB-1,2 hr\n");
    let check = |rating: &str| format!("joint,barrier,barrier.rating\nJ-1,FB-1,{rating}\n");
    check_problem(
        &[barriers, ("s.csv", &check("1 hr"))],
        "s.csv, cell C2",
        "barrier.rating is 1 hr here and 2 hr in b.csv, cell C2"
            .replace("C2", "B2")
            .as_str(),
        "in one place",
    );
    assert!(import(&[barriers, ("s.csv", &check("120 min"))]).is_ok());
}

#[test]
fn judgments() {
    let check = |row: &str, place: &str, message: &str, help: &str| {
        let table = format!("joint_or_mark,item,words,decision,by,when,basis\n{row}\n");
        check_problem(
            &[("s.csv", "joint\nJ-1\n"), ("j.csv", &table)],
            place,
            message,
            help,
        );
    };
    check(
        "J-1,1,w,approved,b,2026-01-01,x",
        "j.csv, cell D2",
        "`approved` isn't a decision",
        "`accepted` or `rejected`",
    );
    check(
        "J-1,1,w,accepted,,2026-01-01,x",
        "j.csv, cell E2",
        "no `by`",
        "every row",
    );
    check(
        "J-1,1,w,accepted,b,1/2/2026,x",
        "j.csv, cell F2",
        "isn't a day",
        "2026-03-14",
    );
    check(
        "J-1,1,w,accepted,b,2026-01-01,-",
        "j.csv, cell G2",
        "no `basis`",
        "every row",
    );
    check(
        "J-1,,w,accepted,b,2026-01-01,x",
        "j.csv, cell B2",
        "no `item`",
        "every row",
    );
    check(
        ",1,w,accepted,b,2026-01-01,x",
        "j.csv, cell A2",
        "no `joint_or_mark`",
        "every row",
    );
}

#[test]
fn buildings() {
    let check = |text: &str, place: &str, message: &str, help: &str| {
        check_problem(&[("b.toml", text)], place, message, help);
    };
    check(
        "name = \"Depot\"\nstories = 2\n",
        "b.toml, row 2",
        "unknown field `stories`",
        "`[[storeys]]`",
    );
    check("name = \"Depot\n", "b.toml, row 1", "", "`name`");
    check(
        "code_edition = \"IBC 2021\"\n",
        "b.toml, row 1",
        "missing field `name`",
        "`name`",
    );
    check("name = \" \"\n", "b.toml, row 1", "empty name", "drawings");
    check(
        "name = \"D\"\n[[storeys]]\nname = \"L1\"\n[[storeys]]\nname = \"L1\"\n",
        "b.toml, row 5",
        "`L1` stands twice",
        "own name",
    );
    check(
        "name = \"D\"\n[[storeys]]\nname = \"L1\"\nelevation = \"12\"\n",
        "b.toml, row 4",
        "`12` isn't a length",
        "ft",
    );
    check(
        "name = \"D\"\n[[storeys]]\nname = \"L1\"\nelevation = 12\n",
        "b.toml, row 4",
        "expected a string",
        "double quotes",
    );
    check_problem(
        &[("a.toml", "name=\"A\""), ("b.toml", "name=\"B\"")],
        "b.toml",
        "second building",
        "leave one file out",
    );
}
