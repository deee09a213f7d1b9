//! How wide the letters of the faces are that every reader of PDF has.

use std::sync::Arc;

use hayro_font::{Font, FontCache, FontQuery, StandardFont};

/// A face to set in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Face {
    /// With serifs.
    Times,
    /// Without.
    Helvetica,
}

impl Face {
    /// Its name in a PDF.
    pub(crate) const fn name(self) -> &'static [u8] {
        match self {
            Self::Times => b"Times-Roman",
            Self::Helvetica => b"Helvetica",
        }
    }

    /// Its widths.
    pub(crate) fn widths(self) -> Widths {
        let resolver: hayro_font::FontResolverFn = Arc::new(|query| match query {
            FontQuery::Standard(font) => Some(font.get_font_data()),
            FontQuery::Fallback(_) => None,
        });
        let font = match self {
            Self::Times => StandardFont::TimesRoman,
            Self::Helvetica => StandardFont::Helvetica,
        };
        Widths(FontCache::new().standard_font(font, &resolver))
    }
}

/// The widths of a face.
pub(crate) struct Widths(Option<Font<'static>>);

impl Widths {
    /// How wide a text is at a size, in points.
    pub(crate) fn of(&self, text: &str, size: f64) -> f64 {
        text.chars().map(|c| self.of_char(c)).sum::<f64>() * size / 1000.0
    }

    fn of_char(&self, c: char) -> f64 {
        let advance = |code: u32| {
            self.0
                .as_ref()
                .map_or(500.0, |font| font.code_advance(code).x)
        };
        match c {
            // The degree has another place in the encoding that the widths are asked in.
            '°' => 400.0,
            c if c.is_ascii() => advance(u32::from(c)),
            _ => 500.0,
        }
    }
}

/// A text in the encoding of the faces, Windows-1252 as far as the demo needs it.
pub(crate) fn encoded(text: &str) -> Vec<u8> {
    text.chars()
        .map(|c| match c {
            '–' => 0x96,
            '—' => 0x97,
            c => u8::try_from(u32::from(c)).unwrap_or(b'?'),
        })
        .collect()
}
