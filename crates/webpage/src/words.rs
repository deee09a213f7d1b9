//! The words of a row, every byte of them once.

use maud::{Markup, PreEscaped, Render, html};
use wording::text::on_one_line;

use crate::stretches::{Kind, Stretch};

/// The words of a stretch as they stand, with what is lit together with them. White space that is `soft` may flow where the page is
/// narrow.
pub(crate) fn words(text: &str, stretch: &Stretch, is_soft: bool, page: &mut usize) -> Markup {
    let anchors = html! {
        @for clause in &stretch.begins { span id={ "w" (clause) } {} }
        @for warning in &stretch.warned { span id={ "u" (warning) } {} }
    };
    let letters = letters(stretch.span.of(text), page);
    let lit = spaced(&stretch.clauses);
    let own = spaced(&stretch.numbers);
    let condition = stretch.is_condition.then_some("condition");
    let is_blank = stretch.span.of(text).trim().is_empty();
    let soft = is_soft.then_some("soft");
    let words = if is_blank {
        if soft.is_some() || lit.is_some() {
            html! { span class=[soft] data-lit=[lit] { (letters) } }
        } else {
            letters
        }
    } else if let Some(warning) = stretch.unread {
        let spoken = format!(
            "{}, a number nobody read",
            on_one_line(stretch.span.of(text))
        );
        html! { a.unread href={ "#v" (warning) } aria-label=(spoken) data-lit=[lit] { (letters) } }
    } else if let Some(clause) = stretch.numbers.first() {
        let unsure = (stretch.kind == Kind::Doubtful).then_some("unsure");
        let spoken =
            unsure.map(|_| format!("{}, read with a doubt", on_one_line(stretch.span.of(text))));
        html! { a.number.(unsure.unwrap_or("sure")) href={ "#c" (clause) } aria-label=[spoken] data-lit=[lit] data-own=[own] { (letters) } }
    } else {
        html! { span.(stretch.kind.class()).(condition.unwrap_or("plain")) data-lit=[lit] { (letters) } }
    };
    html! { (anchors) (words) }
}

fn spaced(indices: &[usize]) -> Option<String> {
    let words: Vec<String> = indices.iter().map(ToString::to_string).collect();
    (!words.is_empty()).then(|| words.join(" "))
}

/// Letters as the page can hold them: what a browser would drop, change or obey is shown by its number instead.
fn letters(words: &str, page: &mut usize) -> Markup {
    let mut shown = String::with_capacity(words.len());
    let mut plain = String::new();
    for c in words.chars() {
        if !is_odd(c) {
            plain.push(c);
            continue;
        }
        plain.render_to(&mut shown);
        plain.clear();
        let number = format!("{:x}", u32::from(c));
        match c {
            '\u{c}' => {
                *page += 1;
                html! { span.break data-char=(number) { "page " (*page) } }
            }
            '\r' => html! { span data-char=(number) {} },
            _ => {
                html! { span.odd data-char=(number) title="a character that doesn't show" { (number) } }
            }
        }
        .render_to(&mut shown);
    }
    plain.render_to(&mut shown);
    PreEscaped(shown)
}

/// Whether a character would be dropped or changed by a browser, or turns the direction of writing.
fn is_odd(c: char) -> bool {
    let is_control = c.is_control() && !matches!(c, '\n' | '\t');
    let turns =
        matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    is_control
        || turns
        || matches!(
            c,
            '\u{feff}' | '\u{fffe}' | '\u{ffff}' | '\u{2028}' | '\u{2029}'
        )
}
