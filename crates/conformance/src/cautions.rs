//! What must be said before anybody touches anything: work on joints can hurt people.

use vocabulary::Stage;

use crate::result::JointResult;
use crate::verdict::Verdict;

/// Opening a joint up.
const OPENING_UP: &str = "Some of this shows only when a joint is opened up. That destroys it: open as few as the inspection plan asks for, \
     keep dust and fibres off people, work from a proper platform, and have every sample made good as the listing says.";

/// Old fireproofing.
const FIREPROOFING: &str = "Fireproofing in an older building may hold asbestos: have it tested before anybody scrapes, probes or cuts it.";

/// The cautions that what is open or not met calls for.
pub fn cautions<'r>(
    results: impl IntoIterator<Item = &'r JointResult, IntoIter: Clone>,
) -> Vec<&'static str> {
    let results = results.into_iter();
    let opening_up = results.clone().any(|result| {
        let mut missing = result
            .with(Verdict::Open)
            .filter_map(|finding| finding.explanation.missing.as_ref());
        missing.any(|missing| missing.stages.contains(&Stage::OpeningUp))
    });
    let fireproofing = results.flat_map(|result| &result.findings).any(|finding| {
        finding.explanation.property.starts_with("fireproofing.")
            && matches!(finding.verdict, Verdict::Open | Verdict::NotMet)
    });
    let mut cautions = Vec::new();
    cautions.extend(opening_up.then_some(OPENING_UP));
    cautions.extend(fireproofing.then_some(FIREPROOFING));
    cautions
}
