use std::collections::BTreeSet;
use std::fmt::Write as _;

use conformance::Verdict;

use super::hatch;
use super::ink::{Anchor, Fill, Group, Ink, Page, Words};
use crate::plane::{Point, pt};
use crate::section::Material;

/// The page as SVG: by itself, with no font, picture or style from elsewhere. The same page always gives the same bytes.
pub fn svg(page: &Page) -> String {
    let mut svg = String::new();
    let (width, height) = (number(page.width), number(page.height));
    put(
        &mut svg,
        format_args!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\" role=\"img\" aria-labelledby=\"title description\" font-family=\"'Liberation Sans', Arial, Helvetica, sans-serif\">\n<title id=\"title\">{}</title>\n<desc id=\"description\">{}</desc>\n",
            escaped(&page.title),
            escaped(&page.description)
        ),
    );
    svg.push_str(&patterns(page));
    put(
        &mut svg,
        format_args!("<path d=\"M0 0h{width}v{height}H0z\" fill=\"#fff\"/>\n"),
    );
    for group in &page.groups {
        put(
            &mut svg,
            format_args!("<g id=\"{}\">\n", escaped(&group.id)),
        );
        if !group.title.is_empty() {
            put(
                &mut svg,
                format_args!("<title>{}</title>\n", escaped(&group.title)),
            );
        }
        for ink in &group.ink {
            one(&mut svg, ink);
        }
        svg.push_str("</g>\n");
    }
    svg.push_str("</svg>\n");
    svg
}

/// Writes to a string, which can't fail.
fn put(svg: &mut String, words: core::fmt::Arguments<'_>) {
    let _ = svg.write_fmt(words);
}

fn patterns(page: &Page) -> String {
    let used: BTreeSet<Material> = page
        .groups
        .iter()
        .flat_map(|Group { ink, .. }| ink)
        .filter_map(|ink| match ink {
            Ink::Area(_, Fill::Material(material)) => Some(*material),
            _ => None,
        })
        .collect();
    let mut svg = String::from("<defs>\n");
    for material in used {
        if let Some((side, inside)) = hatch::tile(material) {
            let name = hatch::name(material);
            put(
                &mut svg,
                format_args!(
                    "<pattern id=\"hatch-{name}\" patternUnits=\"userSpaceOnUse\" width=\"{side}\" height=\"{side}\">{inside}</pattern>\n"
                ),
            );
        }
    }
    svg.push_str("</defs>\n");
    svg
}

fn one(svg: &mut String, ink: &Ink) {
    match ink {
        Ink::Area(points, fill) => {
            let fill = match fill {
                Fill::White => "#fff".to_owned(),
                Fill::Material(material) if hatch::tile(*material).is_some() => {
                    format!("url(#hatch-{})", hatch::name(*material))
                }
                Fill::Material(material) => hatch::colour(*material).to_owned(),
            };
            put(
                svg,
                format_args!("<path d=\"{}z\" fill=\"{fill}\"/>\n", path(points)),
            );
        }
        Ink::Line {
            points,
            closed,
            pen,
            dashed,
        } => {
            let end = if *closed { "z" } else { "" };
            let dashes = if *dashed {
                " stroke-dasharray=\"1.6 .8\""
            } else {
                ""
            };
            put(
                svg,
                format_args!(
                    "<path d=\"{}{end}\" fill=\"none\" stroke=\"#000\" stroke-width=\"{}\" stroke-linejoin=\"round\"{dashes}/>\n",
                    path(points),
                    number(pen.width())
                ),
            );
        }
        Ink::Leader(from, to) => {
            put(
                svg,
                format_args!(
                    "<path d=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\".15\"/>\n",
                    path(&[*from, *to])
                ),
            );
            dot(svg, *to, 0.55);
        }
        Ink::Dot(at, radius) => dot(svg, *at, *radius),
        Ink::Words(words) => text(svg, words),
        Ink::Mark(at, verdict) => mark(svg, *at, *verdict),
    }
}

fn dot(svg: &mut String, at: Point, radius: f64) {
    put(
        svg,
        format_args!(
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\" stroke=\"#fff\" stroke-width=\".2\"/>\n",
            number(at.x),
            number(at.y),
            number(radius)
        ),
    );
}

fn text(svg: &mut String, words: &Words) {
    let anchor = match words.anchor {
        Anchor::Start => "",
        Anchor::Middle => " text-anchor=\"middle\"",
        Anchor::End => " text-anchor=\"end\"",
    };
    let weight = if words.bold {
        " font-weight=\"bold\""
    } else {
        ""
    };
    put(
        svg,
        format_args!(
            "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{weight}{anchor} textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\">{}</text>\n",
            number(words.at.x),
            number(words.at.y),
            number(words.size),
            number(words.length()),
            escaped(&words.words)
        ),
    );
}

/// A verdict's mark, drawn: no font needs to have it. Its word always stands beside it.
fn mark(svg: &mut String, at: Point, verdict: Verdict) {
    let place = |x: f64, y: f64| pt(at.x + x, at.y + y);
    let heavy = " fill=\"none\" stroke=\"#000\" stroke-width=\".45\" stroke-linecap=\"round\" stroke-linejoin=\"round\"";
    let drawn = match verdict {
        Verdict::Met => path(&[place(-1.0, 0.1), place(-0.3, 0.9), place(1.1, -0.9)]),
        Verdict::NotMet => format!(
            "{}{}",
            path(&[place(-0.9, -0.9), place(0.9, 0.9)]),
            path(&[place(-0.9, 0.9), place(0.9, -0.9)])
        ),
        Verdict::Open => format!(
            "{}{}",
            path(&[
                place(-0.7, -0.5),
                place(-0.4, -1.0),
                place(0.2, -1.1),
                place(0.7, -0.6),
                place(0.5, -0.1),
                place(0.0, 0.2),
                place(0.0, 0.5)
            ]),
            path(&[place(0.0, 1.1), place(0.01, 1.1)])
        ),
        Verdict::Judged => format!(
            "{}z",
            path(&[
                place(0.0, -1.1),
                place(0.9, 0.0),
                place(0.0, 1.1),
                place(-0.9, 0.0)
            ])
        ),
        Verdict::NotApplicable => path(&[place(-0.9, 0.0), place(0.9, 0.0)]),
    };
    put(svg, format_args!("<path d=\"{drawn}\"{heavy}/>\n"));
}

fn path(points: &[Point]) -> String {
    let mut path = String::new();
    for (at, point) in points.iter().enumerate() {
        let step = if at == 0 { 'M' } else { 'L' };
        put(
            &mut path,
            format_args!("{step}{} {}", number(point.x), number(point.y)),
        );
    }
    path
}

/// A number to a thousandth of a millimetre, without needless digits.
fn number(value: f64) -> String {
    let written = format!("{value:.3}");
    let short = written.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" {
        "0".to_owned()
    } else {
        short.to_owned()
    }
}

/// Text as XML can hold it: marked signs escaped, and what XML has no place for left out.
fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for one in text.chars() {
        match one {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\t' | '\n' | '\r' => escaped.push(' '),
            one if one.is_control() || matches!(one, '\u{fffe}' | '\u{ffff}') => {}
            one => escaped.push(one),
        }
    }
    escaped
}
