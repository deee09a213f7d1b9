//! The groups of options of a listing, and the items whose parts are a list of which one is built.

use std::collections::{BTreeMap, BTreeSet};

use super::ItemOption;
use super::head::Head;
use super::inherits::beside_the_other;
use super::listed::{
    Lead, cites, is_beside_the_others, joined_by_or, lead, leads_second, named_choices, requires,
};
use super::paths::Paths;
use super::per_configuration::given_out;
use crate::model::{OptionGroup, OptionGroupKind, Span};
use crate::outline::OutlineItem;

/// Makes the parts of an item that says "one of the following" the choices of one group.
pub(super) fn choose_among_parts(source: &str, items: &[OutlineItem], options: &mut [ItemOption]) {
    let mut all_parts: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (part, item) in items.iter().enumerate() {
        if let Some(parent) = item.parent {
            all_parts.entry(parent).or_default().push(part);
        }
    }
    for (index, parts) in all_parts {
        let Some(item) = items.get(index) else {
            continue;
        };
        if give_to_configurations(source, item, items, options, &parts) {
            continue;
        }
        let named = named_parts(source, item, items, &parts);
        if named.len() > 1 {
            set_apart(source, items, options, &named);
            take_choices(items, options, &named, &item.path);
            continue;
        }
        let joined = || Some((Lead::One(None), joined_by_or(source, items, &parts)?));
        let Some((lead, span)) = lead(source, item).or_else(joined) else {
            if let Some(span) = leads_second(source, item) {
                offer_parts(options, &parts, span);
            }
            continue;
        };
        let refused = refusal(source, items, options, lead, &parts);
        if let Some(why) = refused {
            if let Some(option) = options.get_mut(index) {
                option.doubt.get_or_insert((span, why));
            }
            continue;
        }
        set_apart(source, items, options, &parts);
        take_choices(items, options, &parts, &item.path);
    }
}

/// Gives parts of an item to the configurations that its text says they are used for; says whether it did. Parts that say themselves which they belong to,
/// or that they may be left out, are left as they are.
fn give_to_configurations(
    source: &str,
    item: &OutlineItem,
    items: &[OutlineItem],
    options: &mut [ItemOption],
    parts: &[usize],
) -> bool {
    let path = |part: &usize| items.get(*part).map(|part| part.path.clone());
    let given = given_out(source, item, &Paths::of(parts.iter().filter_map(path)));
    for part in parts {
        let own = given
            .iter()
            .find(|(own, _)| path(part).as_ref() == Some(own));
        let option = options.get_mut(*part);
        let free = option.filter(|option| !option.is_choice() && option.configurations.is_empty());
        if let (Some((_, names)), Some(option)) = (own, free) {
            option.configurations.clone_from(names);
        }
    }
    !given.is_empty()
}

/// Takes those parts out of a choice that take over what another one says.
fn set_apart(source: &str, items: &[OutlineItem], options: &mut [ItemOption], parts: &[usize]) {
    for part in parts {
        if let (Some(part), Some(option)) = (items.get(*part), options.get_mut(*part)) {
            beside_the_other(&Head::of(source, part), option);
        }
    }
}

/// Marks the parts of an item as what a person must say whether it is built.
fn offer_parts(options: &mut [ItemOption], parts: &[usize], words: Span) {
    for part in parts {
        if let Some(option) = options.get_mut(*part).filter(|option| !option.is_choice()) {
            option.offered.get_or_insert(words);
        }
    }
}

/// Those parts of an item of which its text says by name that one is built.
fn named_parts(
    source: &str,
    item: &OutlineItem,
    items: &[OutlineItem],
    parts: &[usize],
) -> Vec<usize> {
    let path = |part: &usize| items.get(*part).map(|part| part.path.clone());
    let paths = Paths::of(parts.iter().filter_map(path));
    let named = named_choices(source, item, &paths);
    let is_named = |part: &&usize| path(part).is_some_and(|path| named.contains(&path));
    parts.iter().filter(is_named).copied().collect()
}

/// Why the parts of an item are no plain choice of one, if so.
fn refusal(
    source: &str,
    items: &[OutlineItem],
    options: &[ItemOption],
    lead: Lead,
    parts: &[usize],
) -> Option<String> {
    let required = "every part of this item stays required until a person decides";
    let (count, may_be) = match lead {
        Lead::One(count) => (count, false),
        Lead::MayBe => (None, true),
        Lead::Unclear => {
            return Some(format!(
                "the words leave a choice, but not plainly of one part; {required}"
            ));
        }
    };
    let choices = choices(options, parts);
    if let Some(count) = count.filter(|count| *count != choices.len()) {
        return Some(format!(
            "the words speak of {count}, and there are {}; {required}",
            choices.len()
        ));
    }
    // What may be left out is none of them, whatever it is used with.
    let items: Vec<&OutlineItem> = choices.iter().filter_map(|part| items.get(*part)).collect();
    let is_titled =
        |part: &&&OutlineItem| !part.title.is_empty() || is_named(&Head::of(source, part));
    let titled = items.iter().filter(is_titled).count();
    let beside = items.iter().any(|part| {
        let head = Head::of(source, part);
        let cites_another = !is_alternate(options, &choices, &items, part)
            && items
                .iter()
                .any(|other| other.path != part.path && cites(&head, &other.path));
        is_beside_the_others(head.words())
            || requires(&head)
            || may_be && says_what_is_done(&head)
            || cites_another
    });
    // What has a title and what has none are seldom things of one sort.
    let mixed = titled > 0 && titled < items.len();
    (beside || mixed).then(|| format!("a part seems to be built beside the others; {required}"))
}

/// Whether a part says what is done to a thing, and not what the thing is: `Covered with min 1/2 in. board`. All of that may be done to one.
fn says_what_is_done(head: &Head) -> bool {
    const BEHIND: &[&str] = &["with", "by", "on", "onto", "to", "in", "at", "over", "from"];
    let own = head.part(head.title_end, head.words().len()).to_lowercase();
    let mut words = own.split_whitespace();
    let done = words.next().is_some_and(|word| word.ends_with("ed"));
    done && words.next().is_some_and(|word| BEHIND.contains(&word))
}

/// Whether the text of a part begins with its name, as a title would say it: "Roof deck (1 hr only). Max 1-1/2 in. deep steel deck".
fn is_named(head: &Head) -> bool {
    const LONGEST: usize = 4;
    let words = head.part(head.title_end, head.words().len());
    let Some(stop) = (head.title_end..head.words().len())
        .find(|at| head.sentence_ends(*at, at + 2))
        .map(|at| at - head.title_end)
    else {
        return false;
    };
    let opening = words.get(..stop).unwrap_or_default();
    let name = opening.split('(').next().unwrap_or_default().trim();
    let bare = name
        .chars()
        .all(|c| c.is_alphabetic() || matches!(c, ' ' | '-' | '*'));
    let closed = name.len() == opening.trim().len() || opening.trim_end().ends_with(')');
    let short = (1..=LONGEST).contains(&name.split_whitespace().count());
    bare && closed && short
}

/// Whether a part says that it stands in the place of another.
fn is_alternate(
    options: &[ItemOption],
    parts: &[usize],
    items: &[&OutlineItem],
    part: &OutlineItem,
) -> bool {
    let place = items.iter().position(|item| item.path == part.path);
    let option = place
        .and_then(|at| parts.get(at))
        .and_then(|at| options.get(*at));
    option.is_some_and(|option| !option.replaces.is_empty())
}

/// The parts that are choices: all but those that may be left out.
fn choices(options: &[ItemOption], parts: &[usize]) -> Vec<usize> {
    let is_choice = |part: &&usize| {
        options
            .get(**part)
            .is_some_and(|option| !option.optional || option.labelled)
    };
    parts.iter().filter(is_choice).copied().collect()
}

fn take_choices(items: &[OutlineItem], options: &mut [ItemOption], parts: &[usize], path: &str) {
    let choices = choices(options, parts);
    let paths: Vec<&str> = choices
        .iter()
        .filter_map(|part| items.get(*part))
        .map(|part| part.path.as_str())
        .collect();
    let of = |part: &usize| options.get(*part);
    let firsts = choices
        .iter()
        .filter_map(of)
        .filter(|option| option.replaces.is_empty())
        .count();
    // Where each but the first says that it is an alternate to it, that is the group.
    let outside = choices
        .iter()
        .filter_map(of)
        .flat_map(|option| &option.replaces)
        .any(|item| !paths.contains(&item.as_str()));
    if firsts < 2 || outside {
        return;
    }
    for part in choices {
        if let Some(option) = options.get_mut(part) {
            option.replaces.clear();
            option.optional = false;
            option.choice_of = Some(path.to_owned());
        }
    }
}

/// The option groups of a listing, from what its items say and from the configurations that its text names.
pub(crate) fn groups(
    items: &[OutlineItem],
    options: &[ItemOption],
    named: &[String],
) -> Vec<OptionGroup> {
    let mut groups = Groups::default();
    let configurations: BTreeSet<&String> = named
        .iter()
        .chain(options.iter().flat_map(|option| &option.configurations))
        .collect();
    for name in configurations {
        groups.add_kind(name);
    }
    for (item, option) in items.iter().zip(options) {
        if let Some(around) = &option.choice_of {
            groups.add_one_of(around, &item.path);
        } else if let [base, others @ ..] = option.replaces.as_slice() {
            groups.add_alternate(&item.path, base, others);
        } else if option.optional {
            groups.open(
                OptionGroupKind::Optional,
                &item.path,
                None,
                vec![item.path.clone()],
            );
        }
    }
    groups.all
}

/// The groups of options as they are found, and where each is.
#[derive(Debug, Default)]
struct Groups {
    all: Vec<OptionGroup>,
    /// The kinds' groups by their sort, "system" or "seal type".
    of_kind: BTreeMap<String, usize>,
    /// The lists of which one is built, by the item around them.
    of_one: BTreeMap<String, usize>,
    /// The alternates' groups by each of their choices.
    of_alternates: BTreeMap<String, usize>,
}

impl Groups {
    /// "Configuration A" and "Configuration B" are choices of one group, "Seal Type 1" and "Seal Type 2" of another.
    fn add_kind(&mut self, name: &str) {
        let sort = name.rsplit_once(' ').map_or("", |(sort, _)| sort);
        let id = sort.to_lowercase().replace(' ', "_");
        let held = self.of_kind.get(&id).copied();
        if let Some(group) = held.and_then(|at| self.all.get_mut(at)) {
            group.choices.push(name.to_owned());
        } else {
            let place = self.open(
                OptionGroupKind::Configurations,
                &id,
                None,
                vec![name.to_owned()],
            );
            self.of_kind.insert(id, place);
        }
    }

    fn add_one_of(&mut self, around: &str, path: &str) {
        let held = self.of_one.get(around).copied();
        if let Some(group) = held.and_then(|at| self.all.get_mut(at)) {
            group.choices.push(path.to_owned());
        } else {
            let place = self.open(OptionGroupKind::OneOf, around, None, vec![path.to_owned()]);
            self.of_one.insert(around.to_owned(), place);
        }
    }

    /// An alternate to an alternate is one more choice beside both.
    fn add_alternate(&mut self, path: &str, base: &str, others: &[String]) {
        let held = self.of_alternates.get(base).copied();
        let place =
            if let Some((place, group)) = held.and_then(|at| Some((at, self.all.get_mut(at)?))) {
                // What this one doesn't replace, no other choice of the group may let fall away.
                let replaced = |held: &String| held == base || others.contains(held);
                group.also_replaced.retain(replaced);
                group.choices.push(path.to_owned());
                place
            } else {
                let choices = vec![base.to_owned(), path.to_owned()];
                let place = self.open(OptionGroupKind::Alternates, base, Some(base), choices);
                if let Some(group) = self.all.get_mut(place) {
                    group.also_replaced = others.to_vec();
                }
                self.of_alternates.insert(base.to_owned(), place);
                place
            };
        // Where two groups have a choice of one label, the first is meant.
        self.of_alternates.entry(path.to_owned()).or_insert(place);
    }

    fn open(
        &mut self,
        kind: OptionGroupKind,
        id: &str,
        base: Option<&str>,
        choices: Vec<String>,
    ) -> usize {
        self.all.push(OptionGroup {
            id: id.to_owned(),
            kind,
            base_item: base.map(str::to_owned),
            also_replaced: Vec::new(),
            choices,
        });
        self.all.len() - 1
    }
}
