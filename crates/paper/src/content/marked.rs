//! Marked content: layers that are turned off, and what stands in for characters (ISO 32000-1, 8.11 and 14.9.4).

use std::collections::BTreeSet;

use hayro_syntax::object::{Array, Dict, Name, Object, ObjectIdentifier, String as PdfString};
use hayro_syntax::page::Resources;
use hayro_syntax::xref::XRef;

use super::Interpreter;
use super::glyph::{Glyph, Meaning};

/// The marks under way.
#[derive(Debug, Default)]
pub(super) struct Marked {
    marks: Vec<Mark>,
    hiding: usize,
}

#[derive(Debug)]
struct Mark {
    hides: bool,
    /// What the characters within mean together.
    instead: Option<String>,
    /// The first glyph within.
    from: usize,
}

impl Marked {
    pub(super) fn begin(&mut self, hides: bool, instead: Option<String>, from: usize) {
        self.hiding += usize::from(hides);
        self.marks.push(Mark {
            hides,
            instead,
            from,
        });
    }

    pub(super) fn end(&mut self, glyphs: &mut Vec<Glyph>) {
        let Some(mark) = self.marks.pop() else { return };
        self.hiding -= usize::from(mark.hides);
        if let Some(instead) = mark.instead {
            stand_in(&instead, mark.from, glyphs);
        }
    }

    /// Whether what is drawn now doesn't show.
    pub(super) const fn hides(&self) -> bool {
        self.hiding > 0
    }
}

/// Lets a text stand in for glyphs. What is seen governs: only a hyphen that broke a word, and characters to which the font gives no
/// meaning, are replaced.
fn stand_in(instead: &str, from: usize, glyphs: &mut Vec<Glyph>) {
    let Some(shown) = glyphs.get_mut(from..) else {
        return;
    };
    if let [hyphen] = shown
        && matches!(hyphen.only(), Some('-' | '\u{2010}' | '\u{ad}'))
        && matches!(instead, "" | "\u{ad}")
    {
        hyphen.meaning = Some(Meaning::One('\u{ad}'));
        return;
    }
    let [first, rest @ ..] = shown else { return };
    let one_line = rest.iter().all(|glyph| {
        (glyph.base - first.base).abs() < 0.5 && (glyph.turn - first.turn).abs() < 0.5
    });
    let unknown = first.meaning.is_none() || rest.iter().any(|glyph| glyph.meaning.is_none());
    if one_line
        && unknown
        && let Some(meaning) = Meaning::of(instead)
    {
        for glyph in rest {
            first.x1 = first.x1.max(glyph.x1);
            first.rect = first.rect.join(glyph.rect);
        }
        first.meaning = Some(meaning);
        glyphs.truncate(from + 1);
    }
}

/// The layers that are turned off when the document is opened.
pub(super) fn layers_off(xref: &XRef) -> BTreeSet<(u32, i32)> {
    let plan = xref
        .get::<Dict<'_>>(xref.root_id())
        .and_then(|catalog| catalog.get::<Dict<'_>>("OCProperties"));
    let Some(plan) = plan else {
        return BTreeSet::new();
    };
    let listed = |dict: &Dict<'_>, key: &str| -> BTreeSet<(u32, i32)> {
        let refs = dict.get::<Array<'_>>(key);
        refs.iter()
            .flat_map(Array::raw_iter)
            .filter_map(|item| item.as_obj_ref().map(|at| number(at.into())))
            .collect()
    };
    let default = plan.get::<Dict<'_>>("D").unwrap_or_default();
    let mut off = listed(&default, "OFF");
    if default.get::<Name<'_>>("BaseState").as_deref() == Some(b"OFF") {
        off.extend(listed(&plan, "OCGs"));
        for on in listed(&default, "ON") {
            off.remove(&on);
        }
    }
    off
}

const fn number(id: ObjectIdentifier) -> (u32, i32) {
    (id.obj_number, id.gen_number)
}

impl<'a> Interpreter<'a> {
    /// Whether a mark hides what it holds, and what stands in for its characters.
    pub(super) fn properties(
        &self,
        properties: &Object<'_>,
        resources: &Resources<'a>,
    ) -> (bool, Option<String>) {
        if let Object::Name(name) = properties {
            let layer = resources.properties.get_ref(name.as_ref());
            let hides = layer.is_some_and(|at| self.off.contains(&number(at.into())));
            let dict = resources.properties.get::<Dict<'_>>(name);
            let several = dict.as_ref().is_some_and(|dict| self.all_off(dict));
            let instead = dict.and_then(|dict| actual_text(&dict));
            return (hides || several, instead);
        }
        let Object::Dict(dict) = properties else {
            return (false, None);
        };
        (self.is_off(dict), actual_text(dict))
    }

    /// Whether the layer that something belongs to is turned off.
    pub(super) fn is_off(&self, dict: &Dict<'_>) -> bool {
        let layer = dict.get_ref("OC");
        layer.is_some_and(|at| self.off.contains(&number(at.into())))
            || dict
                .get::<Dict<'_>>("OC")
                .is_some_and(|several| self.all_off(&several))
    }

    /// Whether something that belongs to several layers has them all turned off.
    fn all_off(&self, several: &Dict<'_>) -> bool {
        let Some(layers) = several.get::<Array<'_>>("OCGs") else {
            return several
                .get_ref("OCGs")
                .is_some_and(|at| self.off.contains(&number(at.into())));
        };
        let mut each = layers
            .raw_iter()
            .filter_map(|item| item.as_obj_ref())
            .peekable();
        each.peek().is_some() && each.all(|at| self.off.contains(&number(at.into())))
    }
}

/// What a mark says its characters mean.
fn actual_text(dict: &Dict<'_>) -> Option<String> {
    let text = dict.get::<PdfString<'_>>("ActualText")?;
    let bytes = text.as_bytes();
    match bytes.strip_prefix(b"\xfe\xff") {
        Some(wide) => {
            let units = wide.chunks_exact(2).filter_map(|pair| match pair {
                [high, low] => Some(u16::from_be_bytes([*high, *low])),
                _ => None,
            });
            char::decode_utf16(units).collect::<Result<_, _>>().ok()
        }
        None => match bytes.strip_prefix(b"\xef\xbb\xbf") {
            Some(text) => String::from_utf8(text.to_vec()).ok(),
            // What has neither mark is in an encoding that holds ASCII.
            None => bytes
                .iter()
                .map(|byte| byte.is_ascii().then(|| char::from(*byte)))
                .collect(),
        },
    }
}
