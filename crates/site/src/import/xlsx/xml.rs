//! Small steps over a part's XML.

use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

use super::package::damaged;
use crate::import::problem::Wrong;

/// What a part's XML is a sequence of.
pub(super) enum Piece {
    /// An element begins.
    Start(Element),
    /// An element ends.
    End(String),
    /// Text.
    Text(String),
}

/// An element's beginning. Names are without their namespace's prefix.
pub(super) struct Element {
    pub name: String,
    attributes: Vec<(String, String)>,
}

impl Element {
    pub(super) fn attribute(&self, name: &str) -> Option<&str> {
        self.attributes
            .iter()
            .find(|(key, _)| key == name)
            .map(|(_, value)| value.as_str())
    }

    /// An attribute that is a number; `or` when it isn't there.
    pub(super) fn number(&self, name: &str, or: usize) -> Result<usize, Wrong> {
        let Some(text) = self.attribute(name) else {
            return Ok(or);
        };
        text.parse()
            .map_err(|_| damaged(&format_args!("`{name}` is `{text}`, not a number")))
    }

    /// Whether an attribute is set.
    pub(super) fn flag(&self, name: &str) -> bool {
        matches!(self.attribute(name), Some("1" | "true"))
    }
}

/// The pieces of a part, one after the other.
pub(super) struct Pieces<'x> {
    reader: Reader<&'x [u8]>,
    depth: usize,
}

impl<'x> Pieces<'x> {
    pub(super) fn of(xml: &'x str) -> Self {
        let mut reader = Reader::from_str(xml);
        reader.config_mut().expand_empty_elements = true;
        Self { reader, depth: 0 }
    }

    /// The next piece; none at the end.
    pub(super) fn next(&mut self) -> Result<Option<Piece>, Wrong> {
        loop {
            let event = self.reader.read_event().map_err(|error| damaged(&error))?;
            return match event {
                Event::Start(start) => {
                    self.depth += 1;
                    self.element(&start)
                        .map(|element| Some(Piece::Start(element)))
                }
                Event::End(end) => {
                    self.depth = self.depth.saturating_sub(1);
                    Ok(Some(Piece::End(local(end.local_name().as_ref()))))
                }
                Event::Text(text) => {
                    let text = text.unescape().map_err(|error| damaged(&error))?;
                    Ok(Some(Piece::Text(text.into_owned())))
                }
                Event::CData(text) => {
                    let text = text.decode().map_err(|error| damaged(&error))?;
                    Ok(Some(Piece::Text(text.into_owned())))
                }
                Event::Eof if self.depth > 0 => Err(damaged(&"a part of it is cut short")),
                Event::Eof => Ok(None),
                _ => continue,
            };
        }
    }

    fn element(&self, start: &BytesStart<'_>) -> Result<Element, Wrong> {
        let mut attributes = Vec::new();
        for attribute in start.attributes() {
            let attribute = attribute.map_err(|error| damaged(&error))?;
            let value = attribute.decode_and_unescape_value(self.reader.decoder());
            let value = value.map_err(|error| damaged(&error))?;
            attributes.push((
                local(attribute.key.local_name().as_ref()),
                value.into_owned(),
            ));
        }
        Ok(Element {
            name: local(start.local_name().as_ref()),
            attributes,
        })
    }
}

fn local(name: &[u8]) -> String {
    String::from_utf8_lossy(name).into_owned()
}
