//! What is offered as one of several, and what isn't: a clause that is wrongly taken to be one would be open where it is not met. The wordings are invented;
//! what they mean is common practice.

mod common;

use common::check;

const SLAB: &str = "1. Floor - Min 5 in. thick.\n\n2. Wall - Concrete block, nom 8 in. thick.\n\n";
const SLAB_READ: [&str; 2] = [
    "floor.thickness: at least 5 in",
    "wall.thickness: nominal 8 in",
];

/// What a text reads as behind a floor and a wall.
#[track_caller]
fn behind_wall(text: &str, expected: &[&str]) {
    let all: Vec<&str> = SLAB_READ.iter().chain(expected).copied().collect();
    check(&format!("{SLAB}{text}"), &all);
}

/// The options of the bounds of one item, in order.
#[track_caller]
fn options(text: &str, item: &str, expected: &[Option<&str>]) {
    let reading = listing::read_text("offered.txt", text);
    let bounds = reading
        .clauses
        .iter()
        .filter(|clause| clause.item == item && clause.bound().is_some());
    let found: Vec<Option<&str>> = bounds.map(|clause| clause.option.as_deref()).collect();
    assert_eq!(found, expected, "{text}");
}

/// The conditions of the bounds of one item, in order.
#[track_caller]
fn conditions(text: &str, item: &str, expected: &[Option<&str>]) {
    let reading = listing::read_text("offered.txt", text);
    let found: Vec<Option<String>> = reading
        .clauses
        .iter()
        .filter(|clause| clause.item == item && clause.bound().is_some())
        .map(|clause| clause.condition.as_ref().map(|own| own.expr.to_string()))
        .collect();
    let found: Vec<Option<&str>> = found.iter().map(Option::as_deref).collect();
    assert_eq!(found, expected, "{text}");
}

#[test]
fn an_item_whose_name_offers_it_is_for_a_person() {
    for (name, words) in [
        ("Sealant instead (small gaps)", "instead (small gaps)"),
        ("Or sealant", "Or sealant"),
        ("Alternate sealant", "Alternate sealant"),
    ] {
        conditions(
            &format!(
                "{SLAB}3. Method 1, coating. Coating 1/8 in. wet min.\n\n4. {name}. Sealant 1/2 in. deep min.\n"
            ),
            "4",
            &[Some(&format!("\"{words}\""))],
        );
    }
    for name in [
        // Every second stud offers nothing.
        "Screws in alternate studs",
        "No alternate sealant",
        // There is no other method, so a label is a name.
        "Option 2",
    ] {
        conditions(
            &format!("{SLAB}4. {name}. Sealant 1/2 in. deep min.\n"),
            "4",
            &[None],
        );
    }
}

#[test]
fn a_framed_wall_is_one_of_several_where_there_are_solid_ones() {
    let walls = |other: &str| {
        format!(
            "1. Floor - Min 5 in. thick.\n\n2. Walls\n\n2.1 {other}: min 6 in. thick.\n\n2.2 Flexible wall: min 4 in. thick.\n"
        )
    };
    conditions(&walls("Rigid wall"), "2.2", &[Some("\"Flexible wall\"")]);
    conditions(&walls("Rigid wall"), "2.1", &[None]);
    // The only wall that the listing knows is no choice.
    conditions(&walls("Upper part"), "2.2", &[None]);
}

#[test]
fn a_sentence_offers_what_it_says_of_the_other() {
    behind_wall(
        "3. Fill - Sealant 1/2 in. deep min. In lieu of sealant, a coating 1/8 in. wet min may be sprayed.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "coating.wet_thickness: at least 1/8 in if \"In lieu of\"",
        ],
    );
    // What must not be built in the place of the sealant offers nothing.
    behind_wall(
        "3. Fill - Sealant 1/2 in. deep min. Do not use tape in lieu of sealant 1/2 in. deep.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "3:sealant_depth: nominal 1/2 in",
        ],
    );
}

#[test]
fn what_may_be_added_is_for_whoever_adds_it() {
    conditions(
        "1. Cover. A steel plate 1/8 in. thick may be laid over the joint. It shall lap 2 in. min.\n",
        "1",
        &[Some("\"may be laid\""), Some("\"may be laid\"")],
    );
    // A measure that is allowed limits everybody.
    conditions(
        "1. Clips. A spacing of 24 in. max may be used. Clips 2 in. wide.\n",
        "1",
        &[None, None],
    );
    conditions(
        "1. Cover. The steel plate 1/8 in. thick is laid over the joint. It shall lap 2 in. min.\n",
        "1",
        &[None, None],
    );
}

#[test]
fn paragraphs_headed_by_variants_are_theirs() {
    let text = "1. Splice\n\n    Option S1, sewn. Overlap the ends 6 in. min. Stitches 1 in. long max.\n\n    Option S2, glued. Overlap the ends 12 in. min.\n\n    Splices 48 in. apart min.\n";
    conditions(
        text,
        "1",
        &[
            Some("\"Option S1\""),
            Some("\"Option S1\""),
            Some("\"Option S2\""),
            None,
        ],
    );
    // One alone tells it from no other.
    conditions(
        "1. Board\n\n    Type X, two layers 5/8 in. thick.\n\n    Screws 12 in. apart max.\n",
        "1",
        &[None, None, None],
    );
}

#[test]
fn items_named_as_a_choice_of_one_are_one() {
    let groups = |lead: &str| -> Vec<String> {
        let text = format!(
            "1. Floor - Min 5 in. thick.\n\n2. Wall. {lead}\n\n2A. Panels. Min 4 in. thick.\n\n2B. Glass. Min 1/4 in. thick.\n\n2C. Brackets. Min 2 in. wide.\n"
        );
        let options = listing::read_text("named.txt", &text).options;
        options
            .into_iter()
            .flat_map(|group| group.choices)
            .collect()
    };
    assert_eq!(groups("One of Items 2A or 2B shall be used."), ["2A", "2B"]);
    assert_eq!(groups("Use one of Items 2A and 2B."), ["2A", "2B"]);
    assert_eq!(groups("Use 2A or 2B."), ["2A", "2B"]);
    for lead in [
        "Use 2A and 2B.",
        "Use 2A or 2B, or both.",
        "Use 2A or 2B where the wall is thin.",
        "One of Items 2A or 2B, or both, shall be used.",
        "The bracket bears on one of Items 2A or 2B.",
        "One or more of Items 2A and 2B shall be used.",
    ] {
        assert!(groups(lead).is_empty(), "{lead}");
    }
}

#[test]
fn a_thing_that_an_item_brings_in_for_wide_joints_is_described_for_them() {
    let words = Some("\"In joints exceeding 75 mm\"");
    conditions(
        "1. Retaining plates. In joints exceeding 75 mm, Z-clips of 1.2 mm steel carry the packing. Spacing 450 mm max.\n",
        "1",
        &[Some("joint.width > 75 mm"), words],
    );
    // The packing is in every joint.
    conditions(
        "1. Packing. In joints exceeding 75 mm, strips 50 mm deep carry it. Spacing 450 mm max.\n",
        "1",
        &[Some("joint.width > 75 mm"), None],
    );
    // How far apart they are is told for wide joints, and there are some in every joint.
    conditions(
        "1. Retaining plates. In joints exceeding 75 mm, spacing 450 mm max. Plates 40 mm wide min.\n",
        "1",
        &[Some("joint.width > 75 mm"), None],
    );
    let said = "Required only where mullions stand more than 60 in. apart";
    conditions(
        &format!("1. Stiffener - Angle 20 ga min. It is cut to fit. Set level. {said}.\n"),
        "1",
        &[Some(&format!("\"{said}\""))],
    );
    conditions(
        "1. Packing - Wool 4 pcf min. It is cut to fit. Set level. Required only where mullions stand more than 60 in. apart.\n",
        "1",
        &[None],
    );
}

#[test]
fn cases_side_by_side_have_their_numbers() {
    conditions(
        "1. Packing - Depth 100 mm in floors and 50 mm in walls.\n",
        "1",
        &[Some("\"in floors\""), Some("\"in walls\"")],
    );
    conditions(
        "1. Packing - Depth in walls 50 mm, in floors 100 mm.\n",
        "1",
        &[Some("\"in walls\""), Some("\"in floors\"")],
    );
    // Both in both.
    conditions(
        "1. Packing - Depth 100 mm in floors and walls.\n",
        "1",
        &[None],
    );
    conditions(
        "1. Studs - Steel 25 gauge min for one or two layers; 20 gauge min for three layers.\n",
        "1",
        &[
            Some("\"for one or two layers\""),
            Some("\"for three layers\""),
        ],
    );
    conditions(
        "1. Board - Screws 12 in. apart max with two layers.\n",
        "1",
        &[None, None],
    );
    // Layers that a wall is clad with are required, and no case.
    conditions(
        "1. Wall - Studs 75 mm wide min, clad with two layers of board; the reveal is lined 10 mm thick with one layer.\n",
        "1",
        &[None, None, None, None],
    );
}

#[test]
fn the_rest_of_the_joints_in_more_words() {
    conditions(
        "1. Packing - Compressed min 20 % in joints up to 50 mm; not under 35 % in joints beyond that.\n",
        "1",
        &[
            Some("joint.width <= 50 mm"),
            Some("not (joint.width <= 50 mm)"),
        ],
    );
    conditions(
        "1. Packing - Joints of more than 40 mm receive two strips.\n",
        "1",
        &[Some("joint.width > 40 mm")],
    );
    conditions(
        "1. Brackets. From a joint width of 80 mm, steel brackets 30 mm wide are placed below. Spacing 500 mm max.\n",
        "1",
        &[
            Some("joint.width >= 80 mm"),
            Some("\"From a joint width of 80 mm\""),
        ],
    );
    // The wider side of a range is no case.
    conditions(
        "1. Joint - Width from 80 mm to 100 mm. Depth 500 mm max.\n",
        "1",
        &[None, None],
    );
}

#[test]
fn sorts_that_are_named_beside_each_other_are_told_apart() {
    conditions(
        "1. Framing - Of wood studs or steel studs. Wood studs spaced 16 in. max. Steel studs spaced 24 in. max. Studs 4 in. wide min.\n",
        "1",
        &[Some("\"Wood studs\""), Some("\"Steel studs\""), None],
    );
    // Nobody said that they are one or the other.
    conditions(
        "1. Framing - Of wood studs and steel studs. Wood studs spaced 16 in. max. Steel studs spaced 24 in. max.\n",
        "1",
        &[None, None],
    );
}

#[test]
fn an_item_that_is_another_one_changed_is_for_a_person() {
    let text = "1. Runner - Min 20 ga steel, legs 3 in. long min.\n\n   A. Slotted Runner - As Item 1, except legs 2-1/2 in. long min.\n\n   B. Clips - Fastened as Item 1. Clips 2 in. wide min.\n";
    conditions(text, "1A", &[Some("\"As Item 1\"")]);
    conditions(text, "1B", &[None]);
    // What it is changed from holds for itself, whatever the other one drops.
    for lead in [
        "As Item 3",
        "Identical to Item 3",
        "Similar to Item 3",
        "Same as Item 3",
    ] {
        for change in [
            ", except legs 2-1/2 in. long min and clips not required.",
            " but legs 2-1/2 in. long min.",
        ] {
            let text = format!(
                "{SLAB}3. Runner - Min 20 ga steel, legs 3 in. long min.\n\n3A. Runner - {lead}{change}\n"
            );
            conditions(&text, "3A", &[Some(&format!("\"{lead}\""))]);
            conditions(&text, "3", &[None, None]);
        }
    }
}

#[test]
fn things_that_are_used_in_one_case_or_another_are_options() {
    let text = |second: &str| {
        format!(
            "1. The packing shall lie 13 mm below the top where Filling A is used and 3 mm below it where {second} is used.\n\n2. Filling A is a sealant poured to a depth of at least 13 mm, over all of the joint and its ends, with care.\n\n3. The cover shall be at least 2 mm thick.\n"
        )
    };
    conditions(&text("Filling B"), "2", &[Some("\"Filling A\"")]);
    conditions(&text("Filling B"), "3", &[None]);
    // There is no other filling.
    conditions(&text("Filling A"), "2", &[None]);
}

#[test]
fn the_second_of_two_constructions_is_one_of_them() {
    let text = |lead: &str| {
        format!(
            "1. Floor - Min 5 in. thick.\n\n2. Wall - {lead} as follows:\n\n   A. Studs - Min 3-5/8 in. wide.\n\n   B. Board - Min 5/8 in. thick.\n"
        )
    };
    let second = "Concrete, min 5 in. thick, or gypsum board on steel studs";
    conditions(
        &text(second),
        "2A",
        &[Some("\"or gypsum board on steel studs\"")],
    );
    // A finish of which there are two is no second construction.
    conditions(&text("Of steel studs, plain or painted,"), "2A", &[None]);
    conditions(&text("Studs of steel, or wood,"), "2A", &[None]);
}

#[test]
fn either_of_the_two_is_a_choice() {
    let groups = |lead: &str| -> Vec<String> {
        let text = format!(
            "1. Floor - Min 5 in. thick.\n\n2. Coating. {lead}\n\n   (a) Spray, min 1/8 in. wet.\n\n   (b) Caulk, min 1/2 in. deep.\n"
        );
        let options = listing::read_text("named.txt", &text).options;
        options
            .into_iter()
            .flat_map(|group| group.choices)
            .collect()
    };
    let both = ["2(a)", "2(b)"];
    assert_eq!(groups("Use either of the two coatings on site:"), both);
    for lead in [
        "Use both of the two coatings on site:",
        "Remove the film from either of the two faces. Notes:",
    ] {
        assert!(groups(lead).is_empty(), "{lead}");
    }
}

#[test]
fn lines_that_name_options_below_each_other_are_theirs() {
    let text = "1. Attachment. Option A or Option B:\n\n     Option A. A steel batten, 16 gauge min,\n     with anchors at least 1/4 in. in diameter.\n     Option B. Hooks of 14 gauge min.\n";
    conditions(
        text,
        "1",
        &[
            Some("\"Option A\""),
            Some("\"Option A\""),
            Some("\"Option B\""),
        ],
    );
    // A sentence that ends in the name of one begins no paragraph.
    conditions(
        "1. Attachment. Battens 16 gauge min as for\n   Option B. Anchors at least 1/4 in. in diameter.\n",
        "1",
        &[None, None],
    );
}

#[test]
fn what_may_be_used_on_terms_is_for_whoever_uses_it() {
    conditions(
        "1. Floor - Slab min 5 in. thick. Hollow-core units may be used provided that they are no less than 8 in. deep.\n",
        "1",
        &[None, Some("\"may be used\"")],
    );
    // The clips were spoken of, and are there.
    conditions(
        "1. Clips - Steel clips 2 in. wide min. The clips may be used provided that they are no less than 4 in. long.\n",
        "1",
        &[None, None],
    );
    conditions(
        "1. Seal - Sprayed to 1/8 in. wet min.\n   • Or, brush it on: each coat 60 mils wet min.\n   • Lap 1/2 in. min.\n",
        "1",
        &[None, Some("\"Or\""), None],
    );
    // A line labelled so is about it to its end.
    conditions(
        "1. Floor\n   Thickness: 5 in. min\n   Alternate: Hollow-core units, 6 in. min deep; cores plugged for 12 in. min\n   Density: 100 pcf min\n",
        "1",
        &[None, Some("\"Alternate\""), Some("\"Alternate\""), None],
    );
}

#[test]
fn the_framed_wall_of_a_joint_between_two_walls_is_its_other_side() {
    let text = |kind: &str| {
        format!(
            "SYSTEM A-1\n{kind}\n\n1. Concrete Wall - Min 5 in. thick.\n\n2. Gypsum Board Wall - Built as follows:\n\n   A. Studs - Min 3-5/8 in. wide.\n"
        )
    };
    conditions(&text("Wall-to-Wall"), "2A", &[None]);
    for kind in ["Head of Wall", "Wall-to-Wall, Floor-to-Wall"] {
        conditions(&text(kind), "2A", &[Some("\"Gypsum Board Wall\"")]);
    }
    // The designation says so, too.
    let named =
        |designation: &str| text("").replace("SYSTEM A-1", &format!("SYSTEM {designation}-D-1"));
    conditions(&named("WW"), "2A", &[None]);
    conditions(&named("HW"), "2A", &[Some("\"Gypsum Board Wall\"")]);
    // As a part it is one of the sorts of wall.
    let sorts = "SYSTEM A-1\nWall-to-Wall\n\n1. Walls\n\n   A. Concrete Wall - Min 5 in. thick.\n\n   B. Gypsum Board Wall - Min 4 in. thick.\n";
    conditions(sorts, "1B", &[Some("\"Gypsum Board Wall\"")]);
}

#[test]
fn what_may_be_left_out_in_some_joints_is_asked_for_in_the_rest() {
    let options = |text: &str| listing::read_text("some.txt", text).options.len();
    for head in [
        "Strip - Optional for 1 hr. Min 2 in. wide.",
        "Strip (Optional for 1 hr rating) - Min 2 in. wide.",
        "Strip - Optional where the joint is under 1 in. wide. Min 2 in. wide.",
        "Strip - Optional in joints under 1 in. Min 2 in. wide.",
    ] {
        let text = format!("{SLAB}3. {head}\n");
        assert_eq!(options(&text), 0, "{head}");
        conditions(&text, "3", &[None]);
        let reading = listing::read_text("some.txt", &text);
        assert!(
            reading
                .warnings
                .iter()
                .any(|warning| warning.kind == listing::WarningKind::OptionNotPlaced),
            "{head}"
        );
    }
    let asked =
        format!("{SLAB}3. Strip (Optional, required for joints over 3 in.) - Min 2 in. wide.\n");
    assert_eq!(options(&asked), 0);
    conditions(&asked, "3", &[Some("\"for joints over 3 in.\"")]);
    // Where it is left out, nothing is asked of it.
    conditions(
        "1. Cover - Strip min 2 in. wide, optional for 1 hr.\n",
        "1",
        &[Some("not (joint.rating = 1 hr)")],
    );
    // A name of what is sealed is no case.
    assert_eq!(
        options("1. Strip (Optional under S-1) - Min 2 in. wide.\n"),
        1
    );
}

#[test]
fn an_item_is_asked_for_in_some_joints_only_where_nothing_else_cites_it() {
    let text = |other: &str| {
        format!(
            "{SLAB}3. Packing - Wool, min 4 in. deep. Joints wider than 6 in. require the bars of Item 4.\n\n4. Support Bars - Min 2 in. wide.\n\n5. Clips - {other}\n"
        )
    };
    conditions(
        &text("Min 1 in. wide."),
        "4",
        &[Some("\"Joints wider than 6 in.\"")],
    );
    for other in [
        "Fastened to the bars of Item 4.",
        "Items 3, 4 and 5 shall be cleaned.",
        "Items 3 to 5 shall be cleaned.",
    ] {
        conditions(&text(other), "4", &[None]);
    }
}

#[test]
fn a_list_of_one_may_hold_what_is_optional_besides() {
    let groups = |parts: &str| -> Vec<String> {
        let text =
            format!("1. Floor - One of the following:\n\n{parts}\n2. Wall - Min 6 in. thick.\n");
        let options = listing::read_text("list.txt", &text).options;
        let of_one = options
            .into_iter()
            .filter(|group| group.kind == listing::OptionGroupKind::OneOf);
        of_one.flat_map(|group| group.choices).collect()
    };
    let both = ["1A", "1B"];
    let slab = "   A. Flat slab. Min 5 in. thick.\n\n";
    // What is used with some of them is none.
    for second in [
        "   B. Fluted deck. Min 6 in. deep.\n\n   C. Fireproofing (optional, with Item 1A or 1B). Min 3/8 in. thick.\n",
        "   B. Planks. Min 8 in. deep. Planks shall not be used with Item 2.\n",
        "   B. Roof deck (1 hr only). Min 1-1/2 in. deep.\n",
    ] {
        assert_eq!(groups(&format!("{slab}{second}")), both, "{second}");
    }
    for second in [
        "   B. Edge angle. With Item 1A, min 2 in. wide.\n",
        // What Item 1A asks for besides holds for the planks as well.
        "   B. Planks. As Item 1A except min 8 in. deep.\n",
        "   B. Edge angle. Used with Item 1A, min 2 in. wide.\n",
        "   B. The slab shall be cured for 28 days.\n",
    ] {
        assert!(groups(&format!("{slab}{second}")).is_empty(), "{second}");
    }
}

#[test]
fn walls_that_are_told_apart_by_their_types_are_sorts_but_between_two_walls() {
    let text = |designation: &str, second: &str| {
        format!(
            "SYSTEM {designation}-D-1\n\n1. Wall Type A - Concrete, min 5 in. thick.\n\n2. {second} - Framed, with studs min 3-5/8 in. wide. Board of Type X.\n"
        )
    };
    options(&text("HW", "Wall Type B"), "1", &[Some("Wall Type A")]);
    options(&text("HW", "Wall Type B"), "2", &[Some("Wall Type B")]);
    options(&text("WW", "Wall Type B"), "2", &[None]);
    conditions(&text("WW", "Wall Type B"), "2", &[None]);
    // There is no other type, and a rating is none.
    conditions(&text("HW", "Wall Assembly"), "1", &[None]);
    conditions(&text("HW", "Wall Assembly Rating"), "2", &[None]);
}

#[test]
fn an_optional_item_that_is_asked_for_is_no_option() {
    const CLIPS: &str = "4. Support Clips (Optional) - Min 20 ga steel, spaced 12 in. max.";
    let of_clips = |own: &str, other: &str| {
        let text = format!(
            "{SLAB}3. Packing - Min 4 in. deep.\n\n{CLIPS}{own}\n\n5. Sealant - Min 1/2 in. deep. {other}\n"
        );
        let reading = listing::read_text("asked.txt", &text);
        let mut clips = reading
            .clauses
            .into_iter()
            .filter(|clause| clause.item == "4" && clause.bound().is_some());
        let first = clips.next().expect("a clause of the clips");
        let said = first.condition.map(|own| own.words);
        let warned = reading
            .warnings
            .iter()
            .any(|warning| warning.kind == listing::WarningKind::OptionNotPlaced);
        (first.option, said, warned)
    };
    for said in [
        "Item 4 is required where the joint is over 2 in",
        "Joints over 2 in. require Item 4",
        "Joints over 2 in. require the support clips of Item 4",
        "Where the joint exceeds 2 in., Item 4 shall be used",
        "For joints over 2 in., support clips (Item 4) must be installed",
        "The support clips are required in joints wider than 2 in",
        "In joints over 2 in. use Item 4",
    ] {
        let read = of_clips("", &format!("{said}."));
        assert_eq!(read, (None, Some(said.to_owned()), true), "{said}");
    }
    for own in [
        "Required where the joint is wider than 2 in",
        "Clips are mandatory in joints wider than 2 in",
        "Support clips shall be provided where the joint exceeds 2 in",
    ] {
        let read = of_clips(&format!(" {own}."), "");
        assert_eq!(read, (None, Some(own.to_owned()), true), "{own}");
    }
    // In the rest it is asked for, and two sentences may each ask for it.
    for said in [
        "Item 4 is not required in joints under 2 in.",
        "Item 4 is required.",
        "Joints over 2 in. require Item 4. Item 4 is required where the wall is of block.",
    ] {
        assert_eq!(of_clips("", said), (None, None, true), "{said}");
    }
    for (own, said) in [
        ("", "When Item 4 is used, the depth is min 1 in."),
        ("", "Used with Item 4."),
        ("", "Item 4 shall be spaced 10 in. max where used."),
        ("", "Where Item 4 is required by others, see Item 3."),
        ("", "Joints under 2 in. do not require Item 4."),
        (
            " Screws are required at each clip where clips are used.",
            "",
        ),
        (" Clips shall be installed where the studs stand.", ""),
    ] {
        let read = of_clips(own, said);
        assert_eq!(
            (read.0.as_deref(), read.2),
            (Some("4"), false),
            "{own}{said}"
        );
    }
}

#[test]
fn a_choice_that_is_another_one_changed_lets_nothing_of_that_one_fall_away() {
    let options = |own: &str, more: &str| {
        let text = format!(
            "1. Floor - Min 5 in. thick.\n\n2. Wall - One of the following:\n\n   A. Stud wall - Studs min 20 ga.\n\n   B. Shaft wall - {own}\n{more}"
        );
        let reading = listing::read_text("inherits.txt", &text);
        let warned = reading
            .warnings
            .iter()
            .any(|warning| warning.kind == listing::WarningKind::OptionNotPlaced);
        let of = |item: &str| {
            let mut clauses = reading.clauses.iter();
            let clause = clauses.find(|clause| clause.item == item)?;
            clause.option.clone()
        };
        (of("2A"), of("2B"), of("2C"), warned)
    };
    let item = |path: &str| Some(path.to_owned());
    let concrete = "\n   C. Concrete wall - Min 6 in. thick.\n";
    for own in [
        "Same as Item 2A except studs 4 in. wide min.",
        "Same as Item 2A, with studs 4 in. wide min.",
        "As 2A, studs 4 in. wide min.",
        "As above, except studs 4 in. wide min.",
        "Studs 4 in. wide min. Otherwise as 2A.",
        "(Alternate to Item 2A) - Same as Item 2A, except studs 4 in. wide min.",
    ] {
        assert_eq!(options(own, ""), (None, item("2B"), None, true), "{own}");
    }
    let own = "Same as Item 2A except studs 4 in. wide min.";
    let read = options(own, concrete);
    assert_eq!(read, (item("2A"), item("2B"), item("2C"), true));
    // What says all of itself is a choice.
    let own = "Studs 4 in. wide min, as tall as the wall.";
    assert_eq!(options(own, ""), (item("2A"), item("2B"), None, false));
    // An alternate outside of a list, too.
    let text = format!(
        "{SLAB}3. Runner - Min 20 ga steel.\n\n3A. Runner (Alternate to Item 3) - Same as Item 3 except legs 3 in. long min.\n"
    );
    let reading = listing::read_text("inherits.txt", &text);
    let runner = reading.clauses.iter().find(|clause| clause.item == "3");
    assert_eq!(runner.and_then(|clause| clause.option.clone()), None);
}

#[test]
fn what_stands_below_a_heading_of_work_is_no_part_of_the_option_before_it() {
    let text = "A. Floor. Min 5 in. thick.\n\nB. Seal. Spray 1/8 in. wet min.\n\n   B1. In place of B: silicone 1/4 in. deep min.\n\nInstallation\n\n1. Fit the clips 12 in. apart max.\n2. Lap the spray 1 in. min.\n";
    let reading = listing::read_text("work.txt", text);
    let option = |words: &str| {
        let mut clauses = reading.clauses.iter();
        let clause = clauses.find(|clause| clause.words.contains(words));
        clause.map(|clause| clause.option.as_deref())
    };
    assert_eq!(option("12 in. apart"), Some(None));
    assert_eq!(option("1 in. min"), Some(None));
    assert_eq!(option("1/4 in. deep"), Some(Some("B1")));
}

#[test]
fn paragraphs_headed_by_types_of_wall_or_methods_are_theirs() {
    let text = "1. Walls\n\n  Wall Type 1 - Under the beam. Studs 4 in.\n     wide min.\n  Wall Type 2 - Offset. Studs 6 in.\n     wide min.\n";
    let types = [Some("Wall Type 1"), Some("Wall Type 2")];
    options(text, "1", &types);
    let one = text.replace("Wall Type 2", "Wall Base 2");
    conditions(&one, "1", &[None, None]);
    options(
        "1. Packing - Min 4 in. deep.\n\nALTERNATE METHOD A - BLOCKS\n\n   Blocks are 3 in. deep min.\n\nALTERNATE METHOD B - SEALANT\n\n   Sealant 1/4 in. deep min.\n",
        "1",
        &[None, Some("Alternate Method A"), Some("Alternate Method B")],
    );
}

#[test]
fn items_headed_by_systems_or_types_of_wall_are_choices() {
    let seals = |second: &str| {
        format!(
            "{SLAB}3. Joint\n\n   3.1 System X (sealant). Sealant 1/2 in. deep min.\n\n   3.2 {second} (strip). Strip 1 in. deep min.\n"
        )
    };
    options(&seals("System Y"), "3.1", &[Some("System X")]);
    options(&seals("System Y"), "3.2", &[Some("System Y")]);
    conditions(&seals("Filling"), "3.1", &[None]);
    let walls = |second: &str| {
        format!(
            "A. Parts\n\n  A1  Walls - Type 1. Concrete panel, 6 in. thick min.\n\n  A2  Walls - {second}. Studs 4 in. wide min.\n"
        )
    };
    options(&walls("Type 2"), "A1", &[Some("Type 1")]);
    options(&walls("Type 2"), "A2", &[Some("Type 2")]);
    conditions(&walls("Framed"), "A1", &[None]);
}

#[test]
fn what_is_said_of_walls_of_a_type_is_theirs() {
    conditions(
        "1. Track - On Type 2 walls use track 16 ga min. Track legs 2 in. long min (for Wall Type 4 only). Board 1/2 in. thick min.\n",
        "1",
        &[Some("\"On Type 2\""), Some("\"for Wall Type 4\""), None],
    );
    // A sort of board is no wall.
    conditions(
        "1. Board - Type X board 5/8 in. thick min. Not on Type 2 walls under 4 in. thick.\n",
        "1",
        &[None, None],
    );
}

#[test]
fn an_amount_that_a_type_or_an_item_closes_is_theirs_alone() {
    let read = |text: &str, expected: &[Option<&str>]| {
        conditions(&format!("1. {text}\n"), "1", expected);
    };
    read(
        "Laps - Board 1/2 in. min; deck 1 in. min., 2 in. min at Type 4.",
        &[None, None, Some("\"at Type 4\"")],
    );
    read(
        "Studs - Space them no wider than 24 in. (16 in. in Type 3).",
        &[None, Some("\"in Type 3\"")],
    );
    read(
        "Joint - Max width 1 in., or 1-1/2 in. with Item 2A1.",
        &[None, Some("\"with Item 2A1\"")],
    );
    read(
        "Width - Max 102 mm, except that for Wall Type 3 the joint shall not be wider than 51 mm.",
        &[None, Some("\"for Wall Type 3\"")],
    );
    // What a gap is filled with, and a sort of board, are no cases.
    read(
        "Sealant - Fill the gap to a depth of 1/2 in. with Item 3B.",
        &[None],
    );
    read("Board - 5/8 in. in Type X.", &[None]);
}

#[test]
fn one_of_as_many_parts_as_the_words_say() {
    let wall = |lead: &str| {
        format!(
            "1. Floor - Min 5 in. thick.\n\n2. Wall. {lead}\n\n   a. Type S (shaft wall). Studs 2-1/2 in. deep.\n\n   b. Type P (partition). Studs 3-1/2 in. deep.\n"
        )
    };
    options(&wall("One of the two types:"), "2a", &[Some("2a")]);
    options(&wall("One of the two types:"), "2b", &[Some("2b")]);
    options(&wall("One of the three types:"), "2a", &[None]);
}

#[test]
fn an_alternative_to_the_one_item_before_it() {
    let walls = "1. Floor - Min 5 in. thick.\n\n2. WALL\n\n   2.1 Concrete, min 6 in. thick.\n\n";
    for opening in ["As an alternative, brick", "Alternatively, brick"] {
        let text = format!("{walls}   2.2 {opening}, min 8 in. thick.\n");
        options(&text, "2.2", &[Some("2.2")]);
        options(&text, "2.1", &[None]);
    }
    // Of two it can't be told which.
    let text = format!(
        "{walls}   2.2 Board, min 1/2 in. thick.\n\n   2.3 Alternatively, brick, min 8 in. thick.\n"
    );
    options(&text, "2.3", &[None]);
}

#[test]
fn what_is_for_one_type_of_wall_is_asked_of_no_other() {
    let width = "1. Floor - Min 5 in. thick.\n\n2. Joint. Width not above 2 in. (Type P: not above 1 in.).\n";
    conditions(width, "2", &[None, Some("\"Type P\"")]);
    let depth = "1. Floor - Min 5 in. thick.\n\n2. Packing. Depth: 2-5/8 in. min. on Type S, 3 in. min. on Type P, laid flat.\n";
    conditions(depth, "2", &[Some("\"on Type S\""), Some("\"on Type P\"")]);
    let board = "1. Floor - Min 5 in. thick.\n\n2. Board. 5/8 in. thick (Type X: 1/2 in.), 2 layers on Type X studs.\n";
    conditions(board, "2", &[None, None, None]);
}

#[test]
fn another_thing_that_may_be_used_instead_is_no_offer_of_the_item() {
    let found = common::clauses(
        "1. PACKING - In lieu of mineral wool, ceramic fiber may be used. Packing shall be min 4 in. deep.\n",
    );
    assert!(
        found.contains(&"packing.depth: at least 4 in".to_owned()),
        "{found:?}"
    );
    for (text, clause) in [
        (
            "1. CLIPS - In lieu of steel clips, wood clips, 2 in. wide, may be used. Clips spaced max 24 in. OC.\n",
            "clip.spacing: at most 24 in",
        ),
        (
            "1. BOARD - As an alternate to Type X, Type C board, min 1/2 in. thick, may be used. Board applied in min 2 layers.\n",
            "board.layers: at least 2 count",
        ),
    ] {
        let found = common::clauses(text);
        let whole = found
            .iter()
            .any(|own| own.starts_with(clause) && !own.contains(" if "));
        assert!(whole, "{text} {found:?}");
    }
    // The item itself is offered where it is named, or where the item is cited that it replaces.
    for text in [
        "1. FILL - Sealant.\n2. SPRAY - In lieu of the sealant, spray may be used. Min 1/8 in. thick.\n",
        "1. FILL - Sealant.\n2. SPRAY - In lieu of Item 1, a coating may be used. Min 1/8 in. thick.\n",
    ] {
        let found = common::clauses(text);
        let spray = found.iter().find(|own| own.contains("at least 1/8 in"));
        assert!(
            spray.is_some_and(|own| own.contains(" if ") || own.contains(" in 2")),
            "{text} {found:?}"
        );
    }
}
