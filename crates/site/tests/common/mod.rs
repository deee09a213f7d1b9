//! What the tests of importing share.
#![allow(dead_code, reason = "each test file uses its part")]

use site::{File, Import, ImportError, Problem, Project};

/// Imports texts, each with its file's name.
pub(crate) fn import(files: &[(&str, &str)]) -> Result<Import, ImportError> {
    let files: Vec<_> = files
        .iter()
        .map(|(name, text)| File {
            name,
            bytes: text.as_bytes(),
        })
        .collect();
    site::import::import(&files)
}

/// Imports texts that have nothing wrong.
#[track_caller]
pub(crate) fn imported(files: &[(&str, &str)]) -> Import {
    import(files).unwrap_or_else(|error| panic!("{error}"))
}

/// The value of a property at a joint, with its provenance, as text; `-` where nothing is known.
pub(crate) fn known(project: &Project, joint: &str, property: &str) -> String {
    let joint = project.joint(joint).expect("the joint is there");
    match project.facts(joint).named(property) {
        Some(fact) => format!("{} ({})", fact.value, fact.provenance),
        None => "-".to_owned(),
    }
}

/// The problems of files, as (place, words, message, help).
#[track_caller]
pub(crate) fn problems(files: &[(&str, &str)]) -> Vec<Problem> {
    match import(files) {
        Ok(import) => panic!("imported: {import:?}"),
        Err(error) => error.problems,
    }
}

/// Checks that the only problem of the files stands at a place and says these things.
#[track_caller]
pub(crate) fn check_problem(files: &[(&str, &str)], place: &str, message: &str, help: &str) {
    let problems = problems(files);
    let [problem] = &problems[..] else {
        panic!("not one problem: {problems:#?}")
    };
    assert_eq!(problem.cell.to_string(), place, "{problem}");
    assert!(
        problem.message.contains(message),
        "{message:?} isn't in: {problem}"
    );
    assert!(problem.help.contains(help), "{help:?} isn't in: {problem}");
}

/// Checks the notices of files that have nothing wrong.
#[track_caller]
pub(crate) fn check_notices(files: &[(&str, &str)], expected: &[&str]) {
    let notices = imported(files).notices;
    let notices: Vec<_> = notices.iter().map(ToString::to_string).collect();
    assert_eq!(notices, expected);
}
