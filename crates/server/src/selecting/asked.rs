//! The condition of a joint or mark.

use std::collections::BTreeSet;
use std::sync::Arc;

use selection::Asked;
use selection::asking::of_name;
use site::{Barrier, Mark, Project};
use store::Owner;
use store::project::fill;

use crate::desk::{Desk, Outline};
use crate::trouble::Trouble;

impl Desk {
    /// The condition of the joint or mark of that name, as it is now.
    ///
    /// # Errors
    /// When the schedule has neither, or the store can't be read.
    pub(crate) async fn asked(&self, name: &str) -> Result<Arc<Asked>, Trouble> {
        // What is read from here on is no older than this entry.
        let seq = self.catch_up().await?;
        let key = (seq, name.trim().to_owned());
        if let Some(asked) = self.library.conditions.get(&key) {
            return Ok(asked);
        }
        let mut project = only(&self.outline(), &key.1);
        self.fill_in(&mut project).await?;
        let asked = of_name(&project, &key.1).ok_or_else(|| Trouble::Refused {
            message: format!("the project has no joint and no mark `{}`", key.1),
            help: "name a joint or mark of the schedule".to_owned(),
        })?;
        let asked = Arc::new(asked);
        self.library.conditions.keep(key, asked.clone());
        Ok(asked)
    }

    /// Fills in what is known of each joint.
    async fn fill_in(&self, project: &mut Project) -> Result<(), Trouble> {
        let owner = |joint: &site::Joint| Owner::Joint(joint.name.clone());
        let owners: Vec<Owner> = project.joints.iter().map(owner).collect();
        let mut known = self.store.known_of(&owners).await?;
        for (joint, owner) in project.joints.iter_mut().zip(owners) {
            fill(joint, known.remove(&owner).unwrap_or_default());
        }
        Ok(())
    }
}

/// Of a project only the joints that a name means, and what bears upon them.
fn only(outline: &Outline, name: &str) -> Project {
    let project = &outline.project;
    let joints = outline.joints(name);
    let marks: BTreeSet<&str> = joints.iter().map(|joint| joint.mark.as_str()).collect();
    let barriers: BTreeSet<&str> = joints
        .iter()
        .filter_map(|joint| joint.barrier.as_deref())
        .collect();
    let is_meant =
        |mark: &&Mark| mark.name.eq_ignore_ascii_case(name) || marks.contains(mark.name.as_str());
    let is_theirs = |barrier: &&Barrier| barriers.contains(barrier.name.as_str());
    Project {
        building: project.building.clone(),
        marks: project.marks.iter().filter(is_meant).cloned().collect(),
        barriers: project.barriers.iter().filter(is_theirs).cloned().collect(),
        judgments: project.judgments.clone(),
        joints: joints.into_iter().cloned().collect(),
    }
}
