//! The page: nothing lost, everything linked, nothing obeyed.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::panic,
    reason = "a test may stop where it fails"
)]

use std::collections::BTreeSet;

use base64::Engine;
use listing::confirm::{Correction, confirm, confirm_all};
use listing::{Reading, Span, Warning, WarningKind, read_text};
use proptest::prelude::*;
use sha2::Digest;
use webpage::{Marked, page};

const SAMPLE: &str = "\
System HW-D-0190, Edition 2
HEAD OF WALL JOINT

Assembly rating - 2 Hr
Joint width - 3 in. max

1. Wall - Gypsum board, two layers, each 5/8 in. (16 mm) thick, for the 2 Hr rating.
2. Packing - Min 4 in. (102 mm) deep mineral wool, nominal density 4 pcf. Fibers run parallel to the wall.
   A. As an alternate to Item 2, ceramic wool, min 3 in. deep, where the joint is wider than 2 in.
3. Coating - Wet film of 1/8 in. or so; the 7/16 in. of the edge.

Page 1 of 1
";

fn marked<'a>(text: &'a str, reading: &'a Reading) -> Marked<'a> {
    Marked {
        file: "a.txt",
        text,
        reading,
        as_read: reading,
        is_confirmed: false,
        decisions: &[],
        paper: None,
    }
}

fn page_of(text: &str) -> (Reading, String) {
    let reading = read_text("a.txt", text);
    let page = page(&marked(text, &reading));
    (reading, page)
}

/// A piece of the words as the page holds them: what it is lit with, and its letters.
struct Piece {
    lit: Vec<usize>,
    letters: String,
}

/// Every piece of words on a page, with letters put back as they were.
fn pieces(page: &str) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for row in page.split("<div class=\"words ").skip(1) {
        let (_, row) = row.split_once('>').unwrap();
        let (row, _) = row.split_once("</div>").unwrap();
        let mut lit = Vec::new();
        let mut skipping = false;
        let mut rest = row;
        while !rest.is_empty() {
            if let Some(tag) = rest.strip_prefix('<') {
                let (tag, after) = tag.split_once('>').unwrap();
                rest = after;
                if let Some(number) = attribute(tag, "data-char") {
                    let letter = char::from_u32(u32::from_str_radix(number, 16).unwrap()).unwrap();
                    let letters = letter.to_string();
                    pieces.push(Piece {
                        lit: lit.clone(),
                        letters,
                    });
                    skipping = true;
                } else if tag.starts_with('/') {
                    if !std::mem::take(&mut skipping) {
                        lit.clear();
                    }
                } else if let Some(clauses) = attribute(tag, "data-lit") {
                    lit = clauses
                        .split(' ')
                        .map(|clause| clause.parse().unwrap())
                        .collect();
                }
                continue;
            }
            let end = rest.find('<').unwrap_or(rest.len());
            let (letters, after) = rest.split_at(end);
            rest = after;
            if !skipping {
                pieces.push(Piece {
                    lit: lit.clone(),
                    letters: unescaped(letters),
                });
            }
        }
    }
    pieces
}

fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let (_, value) = tag.split_once(&format!(" {name}=\""))?;
    value.split('"').next()
}

fn unescaped(letters: &str) -> String {
    letters
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&amp;", "&")
}

fn whole(page: &str) -> String {
    pieces(page)
        .into_iter()
        .map(|piece| piece.letters)
        .collect()
}

fn listings() -> Vec<String> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../everyclause/demo/listings");
    let mut paths: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    paths.sort();
    paths
        .iter()
        .map(|path| std::fs::read_to_string(path).unwrap())
        .collect()
}

#[test]
fn every_byte_stands_once_and_in_order() {
    for text in listings() {
        assert_eq!(whole(&page_of(&text).1), text);
    }
    let odd = "\n\n1. A\r\n\u{c}\t2. B & <b> \u{1b}[31m \u{202e}x \u{feff} \u{85} \"q\" 'r'\u{0}\n";
    assert_eq!(whole(&page_of(odd).1), odd);
    assert_eq!(whole(&page_of("").1), "");
}

#[test]
fn every_clause_is_lit_with_its_words() {
    for text in listings().iter().map(String::as_str).chain([SAMPLE]) {
        let (reading, page) = page_of(text);
        assert!(!reading.clauses.is_empty());
        let mut words = vec![String::new(); reading.clauses.len()];
        for piece in pieces(&page) {
            for clause in piece.lit {
                words[clause].push_str(&piece.letters);
            }
        }
        for (index, clause) in reading.clauses.iter().enumerate() {
            assert_eq!(words[index], clause.words, "{}", clause.id);
            for id in [format!("id=\"w{index}\""), format!("id=\"c{index}\"")] {
                assert_eq!(page.matches(&id).count(), 1, "{id}");
            }
            assert_eq!(page.matches(&format!("href=\"#w{index}\"")).count(), 1);
        }
    }
}

#[test]
fn what_was_not_read_stands_out_and_is_listed() {
    let text = "1. Packing - Min 4 in. deep. Nothing is said of the 35 mm beyond.\n";
    let mut reading = read_text("a.txt", text);
    // The reader may learn what this is; that nothing held it is told by the warning alone.
    let at = text.find("35 mm").unwrap();
    reading.warnings = vec![Warning {
        kind: WarningKind::UnreadNumber,
        span: Span::new(at, at + 5),
        words: "35 mm".to_owned(),
        message: "nothing holds <35 mm>".to_owned(),
    }];
    let page = page(&marked(text, &reading));
    let (_, words) = page
        .split_once("<a class=\"unread\" href=\"#v0\"")
        .expect("the number stands out");
    assert!(words.split_once('>').unwrap().1.starts_with("35 mm</a>"));
    assert!(page.contains("<span id=\"u0\"></span><a class=\"unread\""));
    assert!(
        page.contains("<li class=\"warning missed\" id=\"v0\""),
        "beside the words"
    );
    assert!(
        page.contains("<a class=\"loud\" href=\"#v0\">1 number nobody read</a>: <a class=\"missing\" href=\"#v0\">35 mm</a>"),
        "and above them"
    );
    assert!(
        page.contains("1 unread number</label>"),
        "and can be chosen"
    );
}

#[test]
fn the_unread_numbers_lead_from_one_to_the_next() {
    let text = "1. Packing - Min 4 in. deep. Nothing is said of the 35 mm and the 36 mm beyond.\n";
    let mut reading = read_text("a.txt", text);
    reading.warnings = ["35 mm", "36 mm"]
        .map(|words| {
            let at = text.find(words).unwrap();
            Warning {
                kind: WarningKind::UnreadNumber,
                span: Span::new(at, at + 5),
                words: words.to_owned(),
                message: String::new(),
            }
        })
        .to_vec();
    let page = page(&marked(text, &reading));
    assert_eq!(page.matches("class=\"next\"").count(), 1);
    assert!(page.contains("class=\"next\" href=\"#v1\""));
    reading.warnings.clear();
    let page = webpage::page(&marked(text, &reading));
    assert!(page.contains("Every number with a unit is in a clause"));
}

#[test]
fn a_doubt_is_seen_on_both_sides_with_its_reason() {
    let (reading, page) =
        page_of("1. Packing - Nominal density 4 pcf. Nominal density 6 pcf. Laid by hand.\n");
    let doubtful = reading
        .clauses
        .iter()
        .filter(|clause| clause.confidence == listing::Confidence::WithDoubt)
        .count();
    assert_eq!(doubtful, 2);
    assert!(
        page.contains("<a href=\"#c0\" data-show=\"doubtful\">2 clauses read with a doubt</a>")
    );
    assert!(page.contains("class=\"number unsure\""));
    assert!(page.contains("<span class=\"unsure\">read with a doubt</span>"));
    assert!(page.contains("Doubtful: 1/2 asks for another value of the same thing"));
    assert!(
        page.contains(
            "<a href=\"#c2\" data-show=\"left\">1 clause left for a person to answer</a>"
        )
    );
    assert!(page.contains("“Laid by hand.”"));
}

#[test]
fn what_people_decided_is_seen_with_what_was_read() {
    let text = "1. Packing - Nominal density 4 pcf. Nominal density 6 pcf. Max 3 in. deep. Laid by hand.\n";
    let as_read = read_text("a.txt", text);
    let mut overlay = confirm_all(&as_read, "A. Reader", jiff::civil::date(2026, 3, 14));
    let turned = as_read
        .clauses
        .iter()
        .position(|clause| clause.words.contains("Max"))
        .unwrap();
    overlay.entries[turned].correction = Some(Correction {
        relation: Some(listing::Relation::AtLeast),
        lo: Some("3 in.".parse().unwrap()),
        ..Correction::default()
    });
    let laid = confirm(as_read.clone(), &overlay).reading;
    let page = page(&Marked {
        as_read: &as_read,
        decisions: &overlay.entries,
        ..marked(text, &laid)
    });
    assert!(
        page.contains("was read as: <s>at most 3 in. (76.2 mm)</s>"),
        "{page}"
    );
    assert!(page.contains("class=\"clause firm corrected\""));
    assert_eq!(page.matches("The reader was in doubt of it.").count(), 2);
    assert!(page.contains("1 to answer at the joint, confirmed as such"));
    assert!(page.contains("✓ confirmed as one to answer at the joint by A. Reader"));
}

#[test]
fn what_an_alternate_replaces_is_said_to_hold_unless_it_is_built() {
    let (_, page) = page_of(SAMPLE);
    assert!(page.contains("<p class=\"only\">unless 2A is built</p>"));
}

#[test]
fn all_at_once_is_offered_only_where_nothing_is_doubtful() {
    let (_, doubtful) = page_of("1. Packing - Nominal density 4 pcf. Nominal density 6 pcf.\n");
    assert!(!doubtful.contains("--all"));
    let (_, firm) = page_of("1. Packing - Min 4 in. deep.\n");
    assert!(firm.contains("<span class=\"part\">--all</span>"));
    assert!(!firm.contains("at-least"), "no value that could be pasted");
}

#[test]
fn lines_flow_within_a_clause_and_keep_their_indent() {
    let text = "1. Packing - Laid by hand\n   in one\n   piece.\n\n   Held by clips.\n";
    let (_, page) = page_of(text);
    assert_eq!(
        page.matches("class=\"soft\"").count(),
        5,
        "two breaks, three indents: {page}"
    );
    assert!(page.contains("<span class=\"para\" style=\"--l:0;--h:3\">"));
    assert!(page.contains("<span class=\"para\" style=\"--l:3;--h:5\">"));
}

#[test]
fn a_cell_is_quoted_with_its_row_and_column() {
    let text =
        "1. Packing\n\n| | 1 h | 2 h |\n|---|---|---|\n| Packing depth, min, in. | 3 | 4-1/2 |\n";
    let (_, page) = page_of(text);
    assert!(
        page.contains("“Packing depth, min, in., 2 h: <b>4-1/2</b>”"),
        "{page}"
    );
    let (_, row) = page.split_once("Packing depth, min, in.").unwrap();
    let (before, _) = page.split_at(page.len() - row.len());
    let tag = before.rsplit('<').next().unwrap();
    assert!(
        !tag.contains("condition"),
        "the row is what the cell is about: {tag}"
    );
}

#[test]
fn a_page_of_nothing_says_so() {
    let text = "1 Packing\n";
    let mut reading = read_text("a.txt", text);
    reading.clauses.clear();
    let page = page(&marked(text, &reading));
    assert!(page.contains("Nothing was read: no clause was found"));
    assert!(!page.contains("Every number with a unit"));
}

#[test]
fn the_next_step_is_one_that_a_shell_takes() {
    let reading = read_text("a.txt", SAMPLE);
    let page = page(&Marked {
        file: "it's a.txt",
        ..marked(SAMPLE, &reading)
    });
    assert!(page.contains(r#"<span class="part">'it'\''s a.txt'</span>"#));
}

#[test]
fn hostile_text_is_words() {
    let hostile = "</title><script>alert(1)</script> \" onload=\"x\" ' &lt; <img src=x onerror=y> \u{1b}]0;t\u{7} \u{202e}";
    let text = format!(
        "System {hostile}\n{hostile}\n\nConfiguration {hostile}\n\n1. {hostile} - {hostile}, min 4 in. deep, for {hostile}.\n1A. {hostile}\n"
    );
    let reading = read_text(hostile, &text);
    let correction = Correction {
        property: Some(hostile.to_owned()),
        ..Correction::default()
    };
    let mut overlay = confirm_all(&reading, hostile, jiff::civil::date(2026, 3, 14));
    overlay.entries[0].correction = Some(correction);
    let overlaid = confirm(reading, &overlay);
    let page = page(&Marked {
        file: hostile,
        decisions: &overlay.entries,
        ..marked(&text, &overlaid.reading)
    });
    assert_eq!(page.matches("<script").count(), 1);
    assert_eq!(page.matches("</script").count(), 1);
    assert_eq!(page.matches("</title").count(), 1);
    assert!(!page.contains("<img"));
    assert!(
        !page
            .chars()
            .any(|c| c.is_control() && c != '\n' && c != '\t')
    );
    assert!(!page.contains('\u{202e}'));
    // Behind every bracket that opens stands an element of ours, with our attributes.
    let (_, body) = page.split_once("<body>").unwrap();
    let (body, _) = body.split_once("<script>").unwrap();
    let attributes = [
        "id",
        "class",
        "href",
        "style",
        "tabindex",
        "data-lit",
        "data-own",
        "data-char",
        "data-show",
        "open",
        "disabled",
        "title",
        "aria-label",
        "aria-labelledby",
        "aria-hidden",
        "type",
        "name",
        "checked",
        "viewBox",
        "preserveAspectRatio",
        "x",
        "width",
        "height",
    ];
    for tag in body.split('<').skip(1) {
        let tag = tag.split('>').next().unwrap();
        for name in tag
            .split("=\"")
            .filter_map(|part| part.rsplit_once(['"', ' ']))
            .map(|(_, name)| name.trim())
        {
            assert!(
                name.is_empty() || attributes.contains(&name),
                "{name} in <{tag}>"
            );
        }
    }
    assert_eq!(whole(&page), text);
}

#[test]
fn nothing_is_fetched_and_no_other_script_runs() {
    let (_, page) = page_of(SAMPLE);
    for way in [
        "http:",
        "https:",
        "//www",
        "src=",
        "@import",
        "url(",
        "fetch(",
        "XMLHttp",
        "javascript:",
    ] {
        assert!(!page.contains(way), "{way}");
    }
    let script = page
        .split("<script>")
        .nth(1)
        .unwrap()
        .split("</script>")
        .next()
        .unwrap();
    let digest = base64::prelude::BASE64_STANDARD.encode(sha2::Sha256::digest(script));
    assert!(page.contains(&format!("script-src 'sha256-{digest}'")));
    assert!(page.contains("default-src 'none'"));
}

#[test]
fn every_way_within_the_page_leads_somewhere() {
    for text in listings() {
        let (_, page) = page_of(&text);
        let ids: BTreeSet<&str> = page
            .split(" id=\"")
            .skip(1)
            .filter_map(|rest| rest.split('"').next())
            .collect();
        for way in page
            .split("href=\"#")
            .skip(1)
            .filter_map(|rest| rest.split('"').next())
        {
            assert!(ids.contains(way), "{way}");
        }
        let all = page.matches(" id=\"").count();
        assert_eq!(all, ids.len(), "no id stands twice");
    }
}

#[test]
fn what_is_shown() {
    let reading = read_text("a.txt", SAMPLE);
    let content = webpage::content(&marked(SAMPLE, &reading)).into_string();
    let lines = [
        "<header",
        "<section",
        "<main",
        "<footer",
        "<div",
        "<li",
        "<p",
        "<h",
        "<svg",
        "<fieldset",
        "<label",
    ]
    .iter()
    .fold(content, |text, tag| text.replace(tag, &format!("\n{tag}")));
    insta::assert_snapshot!(lines);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_text_stands_whole(
        parts in prop::collection::vec(
            prop::sample::select(vec![
                "1. Wall - ", "2A. ", "min 4 in. (102 mm)", "deep", "\n", "\n\n", "\r\n", "\u{c}", "<b>", "&amp;", "\"", "'", "½", "  ",
                "for the 2 Hr rating", "|", "---", "Page 1 of 2", "max", "7 mm", "\u{7f}", "\u{200f}", "where ", ". ", "as an alternate to Item 1",
            ]),
            0..60,
        )
    ) {
        let text = parts.concat();
        let (reading, page) = page_of(&text);
        prop_assert_eq!(whole(&page), text);
        for index in 0..reading.clauses.len() {
            let id = format!("id=\"w{index}\"");
            prop_assert_eq!(page.matches(&id).count(), 1);
        }
    }
}
