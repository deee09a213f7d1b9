//! Drawing a joint, as a person asks for it.

mod common;

use common::{run, small};

#[test]
fn a_joint_and_the_first_of_a_mark_are_drawn() {
    let folder = small();
    run(folder.path(), ["demo", "demo-project"]);
    let of_joint = run(
        folder.path(),
        ["draw", "J-016", "--project", "demo-project"],
    );
    let of_mark = run(folder.path(), ["draw", "hw4", "--project", "demo-project"]);
    assert_eq!(of_joint.code, Some(1), "J-016 doesn't conform");
    assert!(of_joint.out.starts_with("<svg "));
    assert_eq!(of_joint.out, of_mark.out);
    for words in [
        "Fully closed",
        "Fully open",
        "Packing in the flutes",
        // Why it doesn't conform is no part of the section, and stands on the sheet all the same.
        "Not met, and open",
        "The barrier is a smoke barrier, and the listing gives no leakage at elevated temperature",
        "clauses are open: nobody has shown yet",
        // A profile that nobody has measured says so.
        "not recorded, drawn as listed or usual: width of the ribs at the top",
        "3/16 in. (≈ 4.8 mm) wet,",
        "the authority having jurisdiction decides",
    ] {
        assert!(of_joint.out.contains(words), "{words}");
    }
}

#[test]
fn files_are_written_by_their_ending() {
    let folder = small();
    run(folder.path(), ["demo", "demo-project"]);
    let svg = [
        "draw",
        "J-001",
        "--project",
        "demo-project",
        "--out",
        "j-001.svg",
    ];
    let png = [
        "draw",
        "J-001",
        "--project",
        "demo-project",
        "--out",
        "j-001.PNG",
    ];
    assert_eq!(run(folder.path(), svg).code, Some(0));
    assert_eq!(run(folder.path(), png).out, "J-001 drawn in j-001.PNG\n");
    let read = |name: &str| std::fs::read(folder.path().join(name)).unwrap();
    assert!(read("j-001.svg").starts_with(b"<svg "));
    let picture = read("j-001.PNG");
    // The signature and the width that PNG (ISO/IEC 15948) puts at byte 16: 420 mm at 8 pixels each.
    assert!(picture.starts_with(b"\x89PNG\r\n\x1a\n"));
    assert_eq!(picture[16..20], 3360_u32.to_be_bytes());
}

#[test]
fn what_cannot_be_drawn_leaves_nothing_behind() {
    let folder = small();
    run(folder.path(), ["demo", "demo-project"]);
    let gif = run(
        folder.path(),
        [
            "draw",
            "J-001",
            "--project",
            "demo-project",
            "--out",
            "j.gif",
        ],
    );
    assert_eq!(gif.code, Some(2));
    assert!(gif.err.contains("`.svg` or `.png`"), "{}", gif.err);
    let unknown = run(
        folder.path(),
        [
            "draw",
            "J-0016",
            "--project",
            "demo-project",
            "--out",
            "j.svg",
        ],
    );
    assert_eq!(unknown.code, Some(2));
    assert!(unknown.err.contains("has no joint"), "{}", unknown.err);
    assert!(!folder.path().join("j.gif").exists() && !folder.path().join("j.svg").exists());
}
