//! From the TOML files to the typed vocabulary.

mod component_file;
mod other_files;

use crate::vocabulary::Vocabulary;

pub(crate) use other_files::Common;

/// The name and text of a component's file.
macro_rules! component_file {
    ($name:literal) => {
        (
            concat!("components/", $name, ".toml"),
            include_str!(concat!("../../data/components/", $name, ".toml")),
        )
    };
}

/// The component files, in the order in which components are listed.
const COMPONENTS: &[(&str, &str)] = &[
    component_file!("joint"),
    component_file!("barrier"),
    component_file!("floor"),
    component_file!("deck"),
    component_file!("concrete"),
    component_file!("beam"),
    component_file!("fireproofing"),
    component_file!("wall"),
    component_file!("curtain_wall"),
    component_file!("stud"),
    component_file!("runner"),
    component_file!("clip"),
    component_file!("angle"),
    component_file!("strip"),
    component_file!("fastener"),
    component_file!("board"),
    component_file!("packing"),
    component_file!("coating"),
    component_file!("sealant"),
    component_file!("primer"),
    component_file!("seal"),
    component_file!("tape"),
    component_file!("backer"),
    component_file!("other"),
];

/// What is wrong with a data file.
#[derive(Debug, thiserror::Error)]
#[error("{file}: {problem}")]
pub(crate) struct DataError {
    file: String,
    problem: String,
}

impl DataError {
    fn new(file: &str, problem: &impl ToString) -> Self {
        Self {
            file: file.to_owned(),
            problem: problem.to_string(),
        }
    }
}

/// Reads every data file.
pub(crate) fn load() -> Result<Vocabulary, DataError> {
    let mut components = Vec::new();
    for (file, text) in COMPONENTS {
        components.push(component_file::read(file, text)?);
    }
    Ok(Vocabulary::new(components, other_files::read()?))
}
