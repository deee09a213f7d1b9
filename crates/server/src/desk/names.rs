//! Where the joints of a name or of a mark are, whatever the capitals: found without looking at each of them.

use std::cmp::Ordering;
use std::sync::Arc;

use site::{Joint, Project};

/// A project without what is known of its joints, and where in it they are.
#[derive(Debug, Clone)]
pub(crate) struct Outline {
    pub(crate) project: Arc<Project>,
    by_name: Arc<Places>,
    by_mark: Arc<Places>,
}

/// The places of joints in the schedule, in the order of what they are looked up by.
#[derive(Debug)]
struct Places(Vec<usize>);

impl Outline {
    pub(super) fn of(project: Project) -> Self {
        Self {
            by_name: Arc::new(Places::by(&project, |joint| &joint.name)),
            by_mark: Arc::new(Places::by(&project, |joint| &joint.mark)),
            project: Arc::new(project),
        }
    }

    /// The joints of that name or of that mark, in the order of the schedule.
    pub(crate) fn joints(&self, name: &str) -> Vec<&Joint> {
        let by_name = self.by_name.of(name, &self.project, |joint| &joint.name);
        let by_mark = self.by_mark.of(name, &self.project, |joint| &joint.mark);
        let mut places: Vec<usize> = by_name.iter().chain(by_mark).copied().collect();
        places.sort_unstable();
        places.dedup();
        let joints = places.iter();
        joints
            .filter_map(|at| self.project.joints.get(*at))
            .collect()
    }
}

impl Places {
    fn by(project: &Project, key: impl Fn(&Joint) -> &str) -> Self {
        let mut places: Vec<usize> = (0..project.joints.len()).collect();
        let key = |at: &usize| project.joints.get(*at).map_or("", &key);
        places.sort_by(|one, other| in_order(key(one), key(other)));
        Self(places)
    }

    /// Those that are called so.
    fn of(&self, name: &str, project: &Project, key: impl Fn(&Joint) -> &str) -> &[usize] {
        let key = |at: &usize| project.joints.get(*at).map_or("", &key);
        let from = |is_before: fn(Ordering) -> bool| {
            let places = &self.0;
            places.partition_point(|at| is_before(in_order(key(at), name)))
        };
        let (first, end) = (from(Ordering::is_lt), from(Ordering::is_le));
        self.0.get(first..end).unwrap_or_default()
    }
}

/// The order of two names whatever their capitals: those that are equal by it are equal by [`str::eq_ignore_ascii_case`].
fn in_order(one: &str, other: &str) -> Ordering {
    let one = one.bytes().map(|letter| letter.to_ascii_lowercase());
    one.cmp(other.bytes().map(|letter| letter.to_ascii_lowercase()))
}
