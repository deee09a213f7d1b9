//! Small steps over a part's XML.

use core::fmt;
use std::io::{self, BufRead, Read};

use quick_xml::events::{BytesStart, Event};
use quick_xml::{Decoder, Reader};

use super::package::damaged;
use crate::import::limits::{MOST_IN_PIECE, MOST_UNPACKED};
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

/// The pieces of a part, one after the other, read as it is unpacked.
pub(super) struct Pieces<'l, R> {
    reader: Reader<Metered<'l, R>>,
    piece: Vec<u8>,
    depth: usize,
}

impl<'l, R: BufRead> Pieces<'l, R> {
    /// The pieces of some XML; `left` is how many bytes may be read of it, and of what else is read with it.
    pub(super) fn of(xml: R, left: &'l mut u64) -> Self {
        let mut reader = Reader::from_reader(Metered {
            xml,
            left,
            of_piece: 0,
        });
        reader.config_mut().expand_empty_elements = true;
        Self {
            reader,
            piece: Vec::new(),
            depth: 0,
        }
    }

    /// The next piece; none at the end.
    pub(super) fn next(&mut self) -> Result<Option<Piece>, Wrong> {
        let Self {
            reader,
            piece,
            depth,
        } = self;
        loop {
            piece.clear();
            reader.get_mut().of_piece = 0;
            let event = reader
                .read_event_into(piece)
                .map_err(|error| unreadable(&error))?;
            return match event {
                Event::Start(start) => {
                    *depth += 1;
                    element(&start, reader.decoder()).map(|element| Some(Piece::Start(element)))
                }
                Event::End(end) => {
                    *depth = depth.saturating_sub(1);
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
                Event::Eof if *depth > 0 => Err(damaged(&"a part of it is cut short")),
                Event::Eof => Ok(None),
                _ => continue,
            };
        }
    }
}

fn element(start: &BytesStart<'_>, decoder: Decoder) -> Result<Element, Wrong> {
    let mut attributes = Vec::new();
    for attribute in start.attributes() {
        let attribute = attribute.map_err(|error| damaged(&error))?;
        let value = attribute.decode_and_unescape_value(decoder);
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

fn local(name: &[u8]) -> String {
    String::from_utf8_lossy(name).into_owned()
}

/// XML on its way, of which so much may come in all, and so much of one piece.
struct Metered<'l, R> {
    xml: R,
    left: &'l mut u64,
    of_piece: usize,
}

/// Why no more of it comes.
#[derive(Debug, Clone, Copy)]
enum TooMuch {
    InAll,
    InOne,
}

impl fmt::Display for TooMuch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::InAll => write!(
                f,
                "the workbook unpacks to more than {} MB",
                MOST_UNPACKED >> 20
            ),
            Self::InOne => write!(
                f,
                "the workbook has a text of more than {} MB, which is no cell",
                MOST_IN_PIECE >> 20
            ),
        }
    }
}

impl core::error::Error for TooMuch {}

impl<R: BufRead> Read for Metered<'_, R> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let read = self.fill_buf()?.read(into)?;
        self.consume(read);
        Ok(read)
    }
}

impl<R: BufRead> BufRead for Metered<'_, R> {
    fn fill_buf(&mut self) -> io::Result<&[u8]> {
        let coming = self.xml.fill_buf()?;
        if coming.is_empty() {
            return Ok(coming);
        }
        if self.of_piece >= MOST_IN_PIECE {
            return Err(io::Error::other(TooMuch::InOne));
        }
        if *self.left == 0 {
            return Err(io::Error::other(TooMuch::InAll));
        }
        let left = usize::try_from(*self.left).unwrap_or(usize::MAX);
        let most = coming.len().min(left);
        Ok(coming.get(..most).unwrap_or_default())
    }

    fn consume(&mut self, bytes: usize) {
        self.of_piece = self.of_piece.saturating_add(bytes);
        *self.left = self.left.saturating_sub(bytes as u64);
        self.xml.consume(bytes);
    }
}

/// What is said of XML that can't be read on.
fn unreadable(error: &quick_xml::Error) -> Wrong {
    let too_much = match error {
        quick_xml::Error::Io(error) => error.get_ref(),
        _ => None,
    };
    match too_much.and_then(|error| error.downcast_ref::<TooMuch>()) {
        Some(too_much) => Wrong::new(too_much.to_string(), "save the table alone, as CSV"),
        None => damaged(error),
    }
}
