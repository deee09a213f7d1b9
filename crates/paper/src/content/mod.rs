//! What a page shows: its drawing operations followed, as ISO 32000-1 has them (8 graphics, 9 text, 14.6 marked content).

mod drawing;
mod glyph;
mod marked;
mod state;
mod writing;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use hayro_font::kurbo::Affine;
use hayro_font::{
    CMapResolverFn, Font, FontCache, FontQuery, FontResolverFn, StandardFont, hayro_cmap,
};
use hayro_syntax::content::TypedIter;
use hayro_syntax::content::ops::TypedInstruction as Op;
use hayro_syntax::object::{Array, Dict, Name, Object, Stream};
use hayro_syntax::page::Resources;
use hayro_syntax::xref::XRef;

pub(crate) use glyph::Glyph;

use crate::error::PaperError;
use crate::limits::{Budget, MOST_NESTED};
use crate::model::{PageSize, Rect};
use drawing::Path;
use marked::Marked;
use state::States;

/// What a page shows, in the coordinates of the page as it is seen.
#[derive(Debug, Clone, Default)]
pub(crate) struct Shown {
    /// How large it is.
    pub(crate) size: Option<PageSize>,
    /// Its characters, in the order in which they are drawn.
    pub(crate) glyphs: Vec<Glyph>,
    /// Straight level and upright lines.
    pub(crate) rules: Vec<Rect>,
    /// Whatever else is drawn: slanted lines, curves, shapes.
    pub(crate) drawn: Vec<Rect>,
    /// Pictures.
    pub(crate) images: Vec<Rect>,
    /// Text that is kept off the page by a layer that is turned off, or lies beyond its edge; how many characters, and where.
    pub(crate) hidden: Option<(usize, Rect)>,
    /// Parts that couldn't be read, in words.
    pub(crate) faults: Vec<String>,
}

/// A page to be followed.
pub(crate) struct Contents<'p, 'a> {
    /// Its drawing operations.
    pub(crate) operations: &'p [u8],
    /// What they name.
    pub(crate) resources: &'p Resources<'a>,
    /// From its own coordinates to those of the page as it is seen.
    pub(crate) to_page: [f64; 6],
    /// What was put onto it: stamps, fields, notes.
    pub(crate) annotations: Option<Array<'a>>,
    /// How large it is as it is seen.
    pub(crate) size: PageSize,
}

/// Follows drawing operations, page by page; fonts are kept from one to the next.
pub(crate) struct Interpreter<'a> {
    fonts: FontCache<'a>,
    font_resolver: FontResolverFn,
    cmap_resolver: CMapResolverFn,
    /// Layers that are turned off.
    off: BTreeSet<(u32, i32)>,
    budget: Budget,
}

/// What is under way on one page.
struct Work<'a> {
    states: States<'a>,
    path: Path,
    marked: Marked,
    shown: Shown,
    size: PageSize,
    nested: usize,
}

impl<'a> Interpreter<'a> {
    /// One for a document.
    pub(crate) fn new(xref: &'a XRef) -> Self {
        Self {
            fonts: FontCache::new(),
            font_resolver: Arc::new(|query| match query {
                FontQuery::Standard(font) => Some(font.get_font_data()),
                FontQuery::Fallback(font) => Some(font.pick_standard_font().get_font_data()),
            }),
            cmap_resolver: Arc::new(hayro_cmap::load_embedded),
            off: marked::layers_off(xref),
            budget: Budget::default(),
        }
    }

    /// What a page shows.
    ///
    /// # Errors
    /// When the document asks for more work than a listing can.
    pub(crate) fn page(&mut self, page: &Contents<'_, 'a>) -> Result<Shown, PaperError> {
        let mut work = Work {
            states: States::new(Affine::new(page.to_page)),
            path: Path::default(),
            marked: Marked::default(),
            shown: Shown {
                size: Some(page.size),
                ..Shown::default()
            },
            size: page.size,
            nested: 0,
        };
        self.follow(page.operations, page.resources, &mut work)?;
        for annotation in page.annotations.iter().flat_map(Array::iter::<Dict<'_>>) {
            self.annotation(&annotation, page.resources, &mut work)?;
        }
        Ok(work.shown)
    }

    /// Follows a run of drawing operations.
    #[expect(
        clippy::too_many_lines,
        reason = "one arm an operator, as the standard lists them"
    )]
    fn follow(
        &mut self,
        operations: &[u8],
        resources: &Resources<'a>,
        work: &mut Work<'a>,
    ) -> Result<(), PaperError> {
        self.budget.drawing(operations.len())?;
        let depth = work.states.depth();
        let mut fonts: BTreeMap<Vec<u8>, Option<Font<'a>>> = BTreeMap::new();
        let mut each = TypedIter::new(operations);
        while let Some(op) = each.next() {
            self.budget.operation()?;
            match op {
                Op::SaveState(_) => work.states.save(),
                Op::RestoreState(_) => work.states.restore(depth),
                Op::Transform(m) => {
                    let matrix = [m.0, m.1, m.2, m.3, m.4, m.5].map(|number| number.as_f64());
                    work.states.now().matrix *= Affine::new(matrix);
                }
                Op::BeginText(_) => work.states.now().begin_text(Affine::IDENTITY),
                Op::SetTextMatrix(m) => {
                    let matrix = [m.0, m.1, m.2, m.3, m.4, m.5].map(|number| number.as_f64());
                    work.states.now().begin_text(Affine::new(matrix));
                }
                Op::NextLine(n) => work.states.now().next_line(n.0.as_f64(), n.1.as_f64()),
                Op::NextLineAndSetLeading(n) => {
                    work.states.now().leading = -n.1.as_f64();
                    work.states.now().next_line(n.0.as_f64(), n.1.as_f64());
                }
                Op::NextLineUsingLeading(_) => work.states.now().next_leading(),
                Op::TextLeading(l) => work.states.now().leading = l.0.as_f64(),
                Op::CharacterSpacing(s) => work.states.now().char_space = s.0.as_f64(),
                Op::WordSpacing(s) => work.states.now().word_space = s.0.as_f64(),
                Op::HorizontalScaling(s) => work.states.now().stretch = s.0.as_f64() / 100.0,
                Op::TextRise(r) => work.states.now().rise = r.0.as_f64(),
                Op::TextRenderingMode(m) => {
                    // Mode 3 is neither filled nor stroked, and mode 7 only clips (ISO 32000-1, table 106).
                    work.states.now().invisible = matches!(m.0.as_i64(), 3 | 7);
                }
                Op::TextFont(f) => {
                    let font = fonts.entry(f.0.as_ref().to_vec()).or_insert_with(|| {
                        let dict = resources.get_font(f.0)?;
                        self.fonts
                            .font(&dict, &self.font_resolver, &self.cmap_resolver)
                    });
                    let font = font.clone().or_else(|| self.stand_in());
                    work.states.now().font = font;
                    work.states.now().size = f.1.as_f64();
                }
                Op::ShowText(s) => self.write(s.0.as_bytes(), work)?,
                Op::NextLineAndShowText(s) => {
                    work.states.now().next_leading();
                    self.write(s.0.as_bytes(), work)?;
                }
                Op::ShowTextWithParameters(s) => {
                    work.states.now().word_space = s.0.as_f64();
                    work.states.now().char_space = s.1.as_f64();
                    work.states.now().next_leading();
                    self.write(s.2.as_bytes(), work)?;
                }
                Op::ShowTexts(s) => {
                    for part in s.0.iter::<Object<'_>>() {
                        match part {
                            Object::Number(shift) => work.states.now().shift(shift.as_f64()),
                            Object::String(words) => self.write(words.as_bytes(), work)?,
                            _ => {}
                        }
                    }
                }
                Op::MoveTo(p) => work.path.move_to(p.0.as_f64(), p.1.as_f64()),
                Op::LineTo(p) => work.path.line_to(p.0.as_f64(), p.1.as_f64()),
                Op::CubicTo(c) => {
                    work.path
                        .curve(&[(c.0, c.1), (c.2, c.3), (c.4, c.5)].map(point));
                }
                Op::CubicStartTo(c) => {
                    work.path.curve(&[(c.0, c.1), (c.2, c.3)].map(point));
                }
                Op::CubicEndTo(c) => {
                    work.path.curve(&[(c.0, c.1), (c.2, c.3)].map(point));
                }
                Op::RectPath(r) => {
                    work.path
                        .rectangle(r.0.as_f64(), r.1.as_f64(), r.2.as_f64(), r.3.as_f64());
                }
                Op::ClosePath(_) => work.path.close(),
                Op::StrokePath(_) | Op::FillAndStrokeNonZero(_) | Op::FillAndStrokeEvenOdd(_) => {
                    work.paint(false);
                }
                Op::CloseAndStrokePath(_)
                | Op::CloseFillAndStrokeNonZero(_)
                | Op::CloseFillAndStrokeEvenOdd(_) => {
                    work.path.close();
                    work.paint(false);
                }
                Op::FillPathNonZero(_)
                | Op::FillPathNonZeroCompatibility(_)
                | Op::FillPathEvenOdd(_) => work.paint(true),
                Op::EndPath(_) => work.path.clear(),
                Op::InlineImage(_) => work.image(),
                Op::XObject(name) => {
                    if let Some(object) = resources.get_x_object(name.0) {
                        self.object(&object, resources, work)?;
                    } else {
                        work.fault("something that the page names can't be found");
                    }
                }
                Op::BeginMarkedContent(_) => {
                    work.marked.begin(false, None, work.shown.glyphs.len());
                }
                Op::BeginMarkedContentWithProperties(b) => {
                    let (hidden, instead) = self.properties(b.1, resources);
                    let at = work.shown.glyphs.len();
                    work.marked.begin(hidden, instead, at);
                }
                Op::EndMarkedContent(_) => work.marked.end(&mut work.shown.glyphs),
                _ => {}
            }
        }
        work.path.clear();
        work.states.restore_to(depth);
        Ok(())
    }

    /// The font in place of one that can't be read: what is written is told by its codes alone.
    fn stand_in(&self) -> Option<Font<'a>> {
        self.fonts
            .standard_font(StandardFont::Helvetica, &self.font_resolver)
    }

    /// Something that the page names: a picture, or a drawing of its own.
    fn object(
        &mut self,
        object: &Stream<'a>,
        resources: &Resources<'a>,
        work: &mut Work<'a>,
    ) -> Result<(), PaperError> {
        let dict = object.dict();
        if self.is_off(dict) {
            return Ok(());
        }
        match dict.get::<Name<'_>>("Subtype").as_deref() {
            Some(b"Image") => work.image(),
            Some(b"Form") => {
                let matrix = dict
                    .get::<[f64; 6]>("Matrix")
                    .map_or(Affine::IDENTITY, Affine::new);
                self.form(object, matrix, resources, work)?;
            }
            _ => {}
        }
        Ok(())
    }

    /// A drawing of its own, laid into the page (ISO 32000-1, 8.10).
    fn form(
        &mut self,
        form: &Stream<'a>,
        matrix: Affine,
        resources: &Resources<'a>,
        work: &mut Work<'a>,
    ) -> Result<(), PaperError> {
        if work.nested >= MOST_NESTED {
            work.fault("drawings lie in one another too deep to follow");
            return Ok(());
        }
        let Ok(operations) = form.decoded_data() else {
            work.fault("a part of the page can't be unpacked");
            return Ok(());
        };
        let own = form.dict().get::<Dict<'a>>("Resources").map(Resources::new);
        let depth = work.states.depth();
        work.states.save_always();
        work.states.now().matrix *= matrix;
        work.nested += 1;
        let path = core::mem::take(&mut work.path);
        let done = self.follow(&operations, own.as_ref().unwrap_or(resources), work);
        work.path = path;
        work.nested -= 1;
        work.states.restore_to(depth);
        done
    }

    /// What was put onto the page: its appearance, fitted into its rectangle (ISO 32000-1, 12.5.5).
    fn annotation(
        &mut self,
        annotation: &Dict<'a>,
        resources: &Resources<'a>,
        work: &mut Work<'a>,
    ) -> Result<(), PaperError> {
        const HIDDEN: u32 = 1 << 1;
        const NO_VIEW: u32 = 1 << 5;
        if annotation.get::<u32>("F").unwrap_or(0) & (HIDDEN | NO_VIEW) != 0 {
            return Ok(());
        }
        let normal = annotation
            .get::<Dict<'_>>("AP")
            .and_then(|looks| looks.get::<Object<'_>>("N"));
        let look = match normal {
            Some(Object::Stream(stream)) => stream,
            Some(Object::Dict(states)) => {
                let state = annotation.get::<Name<'_>>("AS");
                match state.and_then(|state| states.get::<Stream<'_>>(state)) {
                    Some(stream) => stream,
                    None => return Ok(()),
                }
            }
            _ => return Ok(()),
        };
        let place = annotation.get::<[f64; 4]>("Rect");
        let bounds = look.dict().get::<[f64; 4]>("BBox");
        let (Some(place), Some(bounds)) = (place, bounds) else {
            return Ok(());
        };
        let matrix = look
            .dict()
            .get::<[f64; 6]>("Matrix")
            .map_or(Affine::IDENTITY, Affine::new);
        let rect = |r: [f64; 4]| {
            let [a, b, c, d] = r;
            hayro_font::kurbo::Rect::new(a.min(c), b.min(d), a.max(c), b.max(d))
        };
        let place = rect(place);
        let seen = matrix.transform_rect_bbox(rect(bounds));
        if seen.width() <= 0.0 || seen.height() <= 0.0 {
            return Ok(());
        }
        let (sx, sy) = (place.width() / seen.width(), place.height() / seen.height());
        let fit = Affine::new([
            sx,
            0.0,
            0.0,
            sy,
            place.x0 - sx * seen.x0,
            place.y0 - sy * seen.y0,
        ]);
        self.form(&look, fit * matrix, resources, work)
    }
}

impl Work<'_> {
    /// Notes a part that couldn't be read, once.
    fn fault(&mut self, words: &str) {
        if !self.shown.faults.iter().any(|fault| fault == words) {
            self.shown.faults.push(words.to_owned());
        }
    }
}

fn point((x, y): (hayro_syntax::object::Number, hayro_syntax::object::Number)) -> (f64, f64) {
    (x.as_f64(), y.as_f64())
}
