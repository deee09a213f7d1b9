//! Text written: each character with its place.

use hayro_font::hayro_cmap::BfString;
use hayro_font::kurbo::{Affine, Point, Shape, Vec2};
use hayro_font::{Font, FontGlyph};

use super::glyph::{Glyph, Meaning};
use super::{Interpreter, Work};
use crate::error::PaperError;
use crate::model::Rect;

/// Units of a font to its size.
const PER_SIZE: f64 = 1000.0;
/// How far letters reach above and below their base line, in sizes; what most fonts have.
const ABOVE: f64 = 0.75;
const BELOW: f64 = 0.25;
/// How far above the base line the foot of a figure stands that is made as a raised one, in sizes; a level one stands on it.
const RAISED: f64 = 0.15;

impl<'a> Interpreter<'a> {
    /// Writes a string (ISO 32000-1, 9.4.4).
    pub(super) fn write(&mut self, bytes: &[u8], work: &mut Work<'a>) -> Result<(), PaperError> {
        let font = match work.states.now().font.clone() {
            Some(font) => font,
            None => match self.stand_in() {
                Some(font) => font,
                None => return Ok(()),
            },
        };
        let mut at = 0;
        while at < bytes.len() {
            self.budget.glyph()?;
            let (code, length) = font.read_code(bytes, at);
            at += length.max(1);
            let state = work.states.now();
            let wide = font.code_advance(code);
            let space = if code == 32 && length == 1 {
                state.word_space
            } else {
                0.0
            };
            let own = Vec2::new(
                wide.x / PER_SIZE * state.size * state.stretch,
                wide.y / PER_SIZE * state.size,
            );
            let gap = state.char_space + space;
            let step = if state.is_level() {
                Vec2::new(own.x + gap * state.stretch, 0.0)
            } else {
                Vec2::new(0.0, own.y + gap)
            };
            let to_page = state.matrix * state.text;
            let placed = Placed {
                to_page,
                rise: state.rise,
                size: state.size,
                advance: if state.is_level() { own.x } else { state.size },
                invisible: state.invisible,
            };
            state.advance(step);
            let (meaning, raised) = meaning(&font, code);
            if let Some(glyph) = placed.glyph(meaning, raised) {
                work.put(glyph);
            }
        }
        Ok(())
    }
}

/// What the file says a character means, and whether it is a figure whose shape stands raised above the base line.
fn meaning(font: &Font<'_>, code: u32) -> (Option<Meaning>, bool) {
    let glyph = font.glyph(font.map_code(code), code);
    let text = match &glyph {
        FontGlyph::Outline(glyph) => glyph.as_unicode(),
        FontGlyph::Type3(glyph) => glyph.as_unicode(),
    };
    let meaning = match text {
        Some(BfString::Char(one)) => Meaning::of(one.encode_utf8(&mut [0; 4])),
        Some(BfString::String(many)) => Meaning::of(&many),
        None => None,
    };
    let is_figure = matches!(meaning, Some(Meaning::One('0'..='9')));
    let raised = is_figure
        && match &glyph {
            FontGlyph::Outline(glyph) => {
                let bounds = glyph.outline().bounding_box();
                bounds.height() > 0.0 && bounds.y0 > RAISED * PER_SIZE
            }
            FontGlyph::Type3(_) => false,
        };
    (meaning, raised)
}

/// A character's place before it is known what it means.
struct Placed {
    to_page: Affine,
    rise: f64,
    size: f64,
    /// How far it reaches along its line, in the coordinates of text.
    advance: f64,
    invisible: bool,
}

impl Placed {
    fn glyph(&self, meaning: Option<Meaning>, raised: bool) -> Option<Glyph> {
        let at = |x: f64, y: f64| self.to_page * Point::new(x, y + self.rise);
        let origin = at(0.0, 0.0);
        let along = at(1.0, 0.0) - origin;
        let up = at(0.0, self.size) - origin;
        let size = up.hypot();
        if !(0.1..=2000.0).contains(&size) || !origin.is_finite() || along.hypot() < 1e-6 {
            return None;
        }
        let end = at(self.advance, 0.0);
        if !end.is_finite() {
            return None;
        }
        let turn = nearest_turn(along.atan2().to_degrees());
        let (sin, cos) = turn.to_radians().sin_cos();
        let flat = |p: Point| (p.x * cos + p.y * sin, p.y * cos - p.x * sin);
        let (start, base) = flat(origin);
        let (stop, _) = flat(end);
        let corners = [
            origin + up * ABOVE,
            origin - up * BELOW,
            end + up * ABOVE,
            end - up * BELOW,
        ];
        let corner = |p: Point| Rect {
            x0: p.x,
            y0: p.y,
            x1: p.x,
            y1: p.y,
        };
        let rect = corners.into_iter().map(corner).reduce(Rect::join)?;
        Some(Glyph {
            meaning,
            turn,
            x0: start.min(stop),
            x1: start.max(stop),
            base,
            size,
            invisible: self.invisible,
            raised,
            rect,
        })
    }
}

/// The one of the four directions that an angle is within 3 degrees of, else the angle to a degree.
fn nearest_turn(angle: f64) -> f64 {
    let quarter = (angle / 90.0).round() * 90.0;
    let turn = if (angle - quarter).abs() <= 3.0 {
        quarter
    } else {
        angle.round()
    };
    // 180 and -180 are one direction, and so are 0 and -0.
    let turn = if turn <= -180.0 { turn + 360.0 } else { turn };
    turn + 0.0
}

impl Work<'_> {
    /// Puts a glyph on the page, unless it doesn't show there.
    fn put(&mut self, glyph: Glyph) {
        let (x, y) = (
            f64::midpoint(glyph.rect.x0, glyph.rect.x1),
            f64::midpoint(glyph.rect.y0, glyph.rect.y1),
        );
        let page = Rect {
            x0: 0.0,
            y0: 0.0,
            x1: self.size.width,
            y1: self.size.height,
        };
        if page.holds(x, y) && !self.marked.hides() {
            self.shown.glyphs.push(glyph);
        } else if !glyph.is_blank() {
            let (count, rect) = self.shown.hidden.unwrap_or((0, glyph.rect));
            self.shown.hidden = Some((count + 1, rect.join(glyph.rect)));
        }
    }
}
