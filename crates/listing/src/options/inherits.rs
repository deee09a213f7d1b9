//! Choices that are another one changed: "Same as Item 2A except studs 4 in. wide". Whoever chose such a one would drop all that it takes over, so it is
//! no choice: what it is changed from stays in force, and it may be built besides.

use super::ItemOption;
use super::head::Head;

/// Said of a choice that takes over what another one says.
const TAKES_OVER: &str = "the words take over what another item says; all of that item stays required until a person decides";

/// Words by which the text of an item begins that is another one.
const LEADS: [&str; 14] = [
    "same as ",
    "the same as ",
    "identical to ",
    "identical with ",
    "similar to ",
    "like item ",
    "as above",
    "as item ",
    "as for item ",
    "as in item ",
    "as per item ",
    "as described ",
    "as specified ",
    "built as item ",
];

/// Words by which an item takes over the rest of another one.
const REST: [&str; 8] = [
    "otherwise as ",
    "otherwise same as ",
    "otherwise the same as ",
    "otherwise identical to ",
    "otherwise per item ",
    "all else as ",
    "the rest as ",
    "in all other respects as ",
];

/// Where an item says that it is another one, as far as it says nothing else.
fn inherits(head: &Head) -> Option<(usize, usize)> {
    let words = head.words();
    let text = words.get(head.title_end..)?;
    let opening = text.trim_start_matches([' ', '-', '–', '—', ':', '.', '*']);
    // "(Alternate to Item 2A) - Same as Item 2A, with ..."
    let opening = match opening
        .strip_prefix('(')
        .and_then(|own| own.split_once(')'))
    {
        Some((_, behind)) => behind.trim_start_matches([' ', '-', '–', '—', ':', '.', '*']),
        None => opening,
    };
    let start = words.len() - opening.len();
    let led = LEADS
        .iter()
        .find(|lead| opening.starts_with(**lead))
        .map(|lead| (start, start + lead.len()));
    let numbered = || {
        let label = opening.strip_prefix("as ")?.split([',', ';', ' ']).next()?;
        let is_label = label.starts_with(|c: char| c.is_ascii_digit())
            && label.len() <= 5
            && label.ends_with(|c: char| c.is_alphanumeric() || c == ')');
        is_label.then_some((start, start + "as ".len() + label.len()))
    };
    let rest = || {
        let found = REST.iter().filter_map(|lead| {
            let at = text.find(lead)?;
            Some((head.title_end + at, head.title_end + at + lead.len()))
        });
        found.min()
    };
    led.or_else(numbered).or_else(rest)
}

/// Makes of a choice that takes over what another one says one that may be built beside it.
pub(super) fn beside_the_other(head: &Head, option: &mut ItemOption) {
    let Some((start, end)) = inherits(head) else {
        return;
    };
    option.replaces.clear();
    option.labelled = false;
    option.optional = true;
    let end = head.end_of_phrase(end, false);
    option.doubt = Some((head.span(start, end), TAKES_OVER.to_owned()));
}
