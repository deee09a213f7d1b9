//! What an import gives: facts, where they come from, and which of them a joint has.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a failed expectation is the point of a test"
)]

mod common;

use common::{check_notices, imported, known};
use site::{Decision, Scope};

const BUILDING: &str = r#"
name = "Tollbrek Depot"
code_edition = "IBC 2021"

[[storeys]]
name = "L1"
elevation = "-4 ft"

[[storeys]]
name = "L2"
"#;

const BARRIERS: &str = "\
barrier,kind,rating,smoke_barrier,title
#source,,drawing A-601,drawing A-601,
FB-1,wall,2 hr,no,\"Fire barrier, store\"
SB-1,wall,1 hr,y,
SB-2,floor,,?,
";

const MARKS: &str = "\
mark,title,listing,joint.rating,packing.density,packing.product,packing.flush,board.layers,deck.direction
#source,,,drawing A-801,submittal 07 84 43-03,submittal 07 84 43-03,witnessed,,drawing S-301
HW1,Head of wall,hw-d-9001,1 hr,4 pcf,Brandolf Wool | Brandmat 4,yes,2,Perpendicular to the flutes
HW2,,,2 hr,64 kg/m3,,n,1,
";

const JOINTS: &str = "\
joint,mark,storey,barrier,grid,length,joint.width,packing.density,board.layers,listing
#source,,,,,drawing A-801,\"measured: tape, 1/16 in.\",,,
J-1,HW1,L1,FB-1,A/1-2,27 ft 6 in.,3/4 in.,,,
J-2,HW1,L2,SB-1,-,,\"7/8 in. [readings 3/4 in., 7/8 in.; 2026-03-14]\",6 pcf [submittal 07 84 43-05],?,hw-d-9002
J-3,HW2,n/a,SB-2,,,TBD,,,
";

const JUDGMENTS: &str = "\
joint_or_mark,listing,item,words,decision,by,when,basis
HW1,hw-d-9001,3A,\"Seams butted, tightly.\",Accepted,R. Example,2026-03-20,Seen on site
J-3,,1,Sound and dry.,rejected,R. Example,2026-03-21,Wet slab
";

fn files() -> [(&'static str, &'static str); 5] {
    [
        ("building.toml", BUILDING),
        ("barriers.csv", BARRIERS),
        ("marks.csv", MARKS),
        ("schedule.csv", JOINTS),
        ("judgments.csv", JUDGMENTS),
    ]
}

#[track_caller]
fn check_known(joint: &str, property: &str, expected: &str) {
    assert_eq!(
        known(&imported(&files()).project, joint, property),
        expected,
        "{joint} {property}"
    );
}

#[test]
fn a_joint_has_the_facts_of_its_mark_unless_it_has_its_own() {
    check_known("J-1", "packing.density", "4 pcf (submittal 07 84 43-03)");
    check_known("J-2", "packing.density", "6 pcf (submittal 07 84 43-05)");
    check_known("J-3", "packing.density", "64 kg/m³ (submittal 07 84 43-03)");
    check_known(
        "J-1",
        "packing.product",
        "Brandolf Wool | Brandmat 4 (submittal 07 84 43-03)",
    );
    check_known("J-3", "packing.product", "-");
    check_known("J-1", "packing.flush", "yes (witnessed)");
    check_known("J-3", "packing.flush", "no (witnessed)");
    check_known("J-1", "deck.direction", "across (drawing S-301)");
    check_known("J-1", "board.layers", "2 (no source stated)");
}

#[test]
fn what_is_not_known_at_a_joint_is_not_taken_from_its_mark() {
    check_known("J-2", "board.layers", "-");
    check_known("J-3", "joint.width", "-");
}

#[test]
fn measurements_keep_their_instrument_and_readings() {
    check_known("J-1", "joint.width", "3/4 in. (measured: tape, 1/16 in.)");
    check_known(
        "J-2",
        "joint.width",
        "7/8 in. (measured: tape, 1/16 in.; readings 3/4 in., 7/8 in.; 2026-03-14)",
    );
}

#[test]
fn a_joint_has_what_is_known_of_its_barrier() {
    check_known("J-1", "barrier.rating", "2 hr (drawing A-601)");
    check_known("J-1", "barrier.smoke_barrier", "no (drawing A-601)");
    check_known("J-2", "barrier.smoke_barrier", "yes (drawing A-601)");
    check_known("J-3", "barrier.smoke_barrier", "-");
    let project = imported(&files()).project;
    let smoke: Vec<_> = project
        .barriers
        .iter()
        .map(site::Barrier::smoke_barrier)
        .collect();
    assert_eq!(smoke, [Some(false), Some(true), None]);
    assert_eq!(
        project.barriers[0]
            .rating()
            .map(|rating| rating.to_string())
            .as_deref(),
        Some("2 hr")
    );
    assert_eq!(project.barriers[0].title, "Fire barrier, store");
}

#[test]
fn a_joint_has_its_place() {
    let project = imported(&files()).project;
    let joint = project.joint("J-1").unwrap();
    let place = (
        joint.storey.as_deref(),
        joint.barrier.as_deref(),
        joint.grid.as_deref(),
    );
    assert_eq!(place, (Some("L1"), Some("FB-1"), Some("A/1-2")));
    assert_eq!(
        joint.length.map(|length| length.to_string()).as_deref(),
        Some("330 in.")
    );
    assert_eq!(
        known(&project, "J-1", "joint.length"),
        "330 in. (drawing A-801)"
    );
    let joint = project.joint("J-3").unwrap();
    assert_eq!(
        (joint.storey.as_deref(), joint.grid.as_deref(), joint.length),
        (None, None, None)
    );
}

#[test]
fn a_joint_has_the_listing_of_its_mark_unless_it_has_its_own() {
    let project = imported(&files()).project;
    let listing = |name| project.listing(project.joint(name).unwrap());
    assert_eq!(
        [listing("J-1"), listing("J-2"), listing("J-3")],
        [Some("hw-d-9001"), Some("hw-d-9002"), None]
    );
}

#[test]
fn all_joints_at_once_have_the_same_facts() {
    let project = imported(&files()).project;
    let all: Vec<_> = project.joints_with_facts().collect();
    let each: Vec<_> = project
        .joints
        .iter()
        .map(|joint| (joint, project.facts(joint)))
        .collect();
    assert_eq!(all, each);
}

#[test]
fn facts_come_in_property_order_and_know_their_cell() {
    let project = imported(&files()).project;
    let facts = project.facts(project.joint("J-1").unwrap());
    let properties: Vec<_> = facts.iter().map(|fact| fact.property.as_str()).collect();
    assert!(properties.is_sorted(), "{properties:?}");
    assert_eq!(properties.len(), facts.len());
    let cell = |property| {
        facts
            .get(property)
            .unwrap()
            .cell
            .clone()
            .unwrap()
            .to_string()
    };
    assert_eq!(cell("joint.width"), "schedule.csv, cell G3");
    assert_eq!(cell("packing.density"), "marks.csv, cell E3");
    assert_eq!(cell("barrier.rating"), "barriers.csv, cell C3");
}

#[test]
fn the_building_and_the_judgments() {
    let project = imported(&files()).project;
    assert_eq!(project.building.name, "Tollbrek Depot");
    let storeys: Vec<_> = project
        .building
        .storeys
        .iter()
        .map(|storey| storey.name.as_str())
        .collect();
    assert_eq!(storeys, ["L1", "L2"]);
    assert_eq!(
        project.building.storeys[0].elevation.unwrap().to_string(),
        "-4 ft"
    );
    let [first, second] = &project.judgments[..] else {
        panic!("{:?}", project.judgments)
    };
    assert_eq!(
        (&first.scope, first.decision),
        (&Scope::Mark("HW1".to_owned()), Decision::Accepted)
    );
    assert_eq!(
        (first.words.as_str(), first.when.to_string().as_str()),
        ("Seams butted, tightly.", "2026-03-20")
    );
    assert_eq!(
        (&second.scope, second.decision),
        (&Scope::Joint("J-3".to_owned()), Decision::Rejected)
    );
    let on = |name| project.judgments_on(project.joint(name).unwrap()).count();
    assert_eq!([on("J-1"), on("J-2"), on("J-3")], [1, 1, 1]);
}

#[test]
fn a_project_is_the_same_after_json() {
    let project = imported(&files()).project;
    let json = serde_json::to_string_pretty(&project).unwrap();
    assert_eq!(
        serde_json::from_str::<site::Project>(&json).unwrap(),
        project
    );
    let provenance = &project.joints[1].facts["joint.width"].provenance;
    let json = serde_json::to_value(provenance).unwrap();
    assert_eq!(
        (json["source"].as_str(), json["date"].as_str()),
        (Some("measured"), Some("2026-03-14"))
    );
}

#[test]
fn a_schedule_alone_names_its_marks() {
    let schedule =
        "joint,mark,listing,joint.width\nJ-1,HW1,hw-d-9001,1 in.\nJ-2,HW1,,2 in.\nJ-3,,,3 in.\n";
    let project = imported(&[("schedule.csv", schedule)]).project;
    let marks: Vec<_> = project
        .marks
        .iter()
        .map(|mark| mark.name.as_str())
        .collect();
    assert_eq!(marks, ["HW1", "J-3"]);
    assert_eq!(project.joints[2].mark, "J-3");
    assert_eq!(project.listing(&project.joints[0]), Some("hw-d-9001"));
    let no_mark = imported(&[("schedule.csv", "Joint,Joint.Width\n1,1 in.\n")]).project;
    assert_eq!(
        known(&no_mark, "1", "joint.width"),
        "1 in. (no source stated)"
    );
    let judged = imported(&[
        ("s.csv", schedule),
        (
            "j.csv",
            "joint_or_mark,item,words,decision,by,when,basis\nHW1,1,w,accepted,b,2026-01-01,x\n",
        ),
    ]);
    assert_eq!(
        judged.project.judgments[0].scope,
        Scope::Mark("HW1".to_owned())
    );
}

#[test]
fn tables_of_one_kind_are_joined() {
    let project = imported(&[("a.csv", "joint\nJ-1\n"), ("b.csv", "joint\nJ-2\n")]).project;
    assert_eq!(project.joints.len(), 2);
}

#[test]
fn nothing_is_an_empty_project() {
    assert_eq!(imported(&[]).project, site::Project::default());
}

#[test]
fn what_is_worth_knowing() {
    let marks = ("marks.csv", "mark\nHW1\nHW2\n");
    let barriers = ("barriers.csv", "barrier\nFB-1\nFB-2\n");
    check_notices(
        &[
            ("schedule.csv", "joint,mark,barrier\nJ-1,HW1,FB-2\n"),
            marks,
            barriers,
        ],
        &[
            "marks.csv, cell A3: mark `HW2` has no joint",
            "barriers.csv, cell A2: barrier `FB-1` has no joint",
        ],
    );
    // Marks alone are a project under way, not one with marks to spare.
    check_notices(&[marks, barriers], &[]);
    check_notices(&[("schedule.csv", "joint,joint.width\nJ-1,\n")], &[]);
}

#[test]
fn tables_as_spreadsheets_of_other_countries_save_them() {
    let check = |bytes: &[u8], width: &str| {
        let files = [site::File {
            name: "s.csv",
            bytes,
        }];
        let project = site::import::import(&files)
            .unwrap_or_else(|error| panic!("{error}"))
            .project;
        assert_eq!(known(&project, "J-1", "joint.width"), width);
    };
    check(
        b"joint;joint.width\r\nJ-1;12,5 mm\r\n",
        "12.5 mm (no source stated)",
    );
    check(
        b"joint\tjoint.width\nJ-1\t12 mm\n",
        "12 mm (no source stated)",
    );
    check(
        "\u{feff}joint,joint.width\nJ-1,2½ in.\n".as_bytes(),
        "2-1/2 in. (no source stated)",
    );
    check(
        b"joint,joint.width\nJ-1,2\xbd in.\n",
        "2-1/2 in. (no source stated)",
    );
    let utf16: Vec<u8> = "\u{feff}joint\tjoint.width\nJ-1\t2½ in.\n"
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    check(&utf16, "2-1/2 in. (no source stated)");
}

#[test]
fn an_assumed_encoding_is_said() {
    let bytes = b"joint,joint.width\nJ-1,2\xbd in.\n";
    let import = site::import::import(&[site::File {
        name: "s.csv",
        bytes,
    }])
    .unwrap();
    let notices: Vec<_> = import.notices.iter().map(ToString::to_string).collect();
    assert_eq!(
        notices,
        ["s.csv: the file isn't in UTF-8 and was read as Windows-1252; check its ½, ° and µ"]
    );
}

#[test]
fn a_column_of_the_projects_own_is_not_read() {
    let project = imported(&[(
        "s.csv",
        "joint,#remark,joint.width\n#source,anything,drawing A-1\nJ-1,why not,1 in.\n",
    )])
    .project;
    assert_eq!(known(&project, "J-1", "joint.width"), "1 in. (drawing A-1)");
}

/// Which options are built, said of a mark and at its joints.
const OPTIONS: [(&str, &str); 2] = [
    (
        "marks.csv",
        "mark,option.configuration,option.3C\n#source,drawing A-801,drawing A-802\nHW1,Configuration A,no\n",
    ),
    (
        "joints.csv",
        "joint,mark,option.3B,Option.Configuration\n#source,,witnessed,\nJ-1,HW1,3B1 [submittal 07 84 43-05],\n\
         J-2,HW1,,Configuration B [witnessed; 2031-03-14]\nJ-3,HW1,3b1,?\n",
    ),
];

#[test]
fn which_option_is_built() {
    let project = imported(&OPTIONS).project;
    for (joint, property, expected) in [
        (
            "J-1",
            "option.configuration",
            "Configuration A (drawing A-801)",
        ),
        ("J-1", "option.3C", "no (drawing A-802)"),
        ("J-1", "option.3B", "3B1 (submittal 07 84 43-05)"),
        (
            "J-2",
            "option.configuration",
            "Configuration B (witnessed; 2031-03-14)",
        ),
        ("J-2", "option.3B", "-"),
        ("J-3", "option.3B", "3b1 (witnessed)"),
        ("J-3", "option.configuration", "-"),
    ] {
        assert_eq!(
            known(&project, joint, property),
            expected,
            "{joint} {property}"
        );
    }
    let fact = &project.marks[0].facts["option.3C"];
    assert_eq!(fact.property, "option.3C");
    assert_eq!(fact.value, site::Value::Text("no".to_owned()));
    assert_eq!(
        fact.cell.as_ref().unwrap().to_string(),
        "marks.csv, cell C3"
    );
}

#[test]
fn what_is_a_listings_own_is_said_of_the_listing_that_its_row_or_heading_names() {
    let files = [
        (
            "marks.csv",
            "mark,listing,2A:runner.gauge,option.3C\nHW1,hw-d-1,20 MSG,no\nHW2,hw-d-2,16 MSG,\n",
        ),
        (
            "joints.csv",
            "joint,mark,listing,option.3B,2A:runner.gauge@HW-D-1,joint.width\n\
             J-1,HW1,hw-d-3,3B1,,1 in.\nJ-2,HW1,,3B1,18 MSG,1 in.\nJ-3,HW1,,,?,1 in.\n",
        ),
    ];
    let project = imported(&files).project;
    let names = |joint: &str| -> Vec<String> {
        let facts = project.facts(project.joint(joint).unwrap());
        facts
            .of_listings()
            .map(|fact| fact.property.clone())
            .collect()
    };
    assert_eq!(
        names("J-1"),
        [
            "2A:runner.gauge@hw-d-1",
            "option.3B@hw-d-3",
            "option.3C@hw-d-1"
        ]
    );
    // A row that names no listing says it of none, though its mark has one: the mark may be given another.
    assert_eq!(
        names("J-2"),
        [
            "2A:runner.gauge@HW-D-1",
            "2A:runner.gauge@hw-d-1",
            "option.3B",
            "option.3C@hw-d-1"
        ]
    );
    // What isn't known at a joint isn't, whatever its mark calls the listing.
    assert_eq!(names("J-3"), ["option.3C@hw-d-1"]);
    let listing = |file, designation| site::GoesBy {
        file,
        designation,
        sha256: "",
    };
    let gauge = |joint: &str, file, designation| {
        let facts = project.facts(project.joint(joint).unwrap());
        let facts = facts.for_listing(&listing(file, designation));
        facts
            .get("2A:runner.gauge")
            .map(|fact| fact.value.to_string())
    };
    assert_eq!(
        gauge("J-1", "hw-d-1.txt", "HW-D-1").as_deref(),
        Some("20 gauge")
    );
    assert_eq!(
        gauge("J-2", "hw-d-1.txt", "HW-D-1").as_deref(),
        Some("18 gauge")
    );
    assert_eq!(gauge("J-2", "hw-d-2.txt", "HW-D-2"), None);
    let facts = project.facts(project.joint("J-2").unwrap());
    assert!(
        facts.get("option.3B").is_none(),
        "it decides nothing as it is"
    );
    assert!(facts.for_any_listing().get("2A:runner.gauge").is_none());
    assert!(facts.for_any_listing().get("joint.width").is_some());
}
