//! What to ask whom.

use conformance::Question;
use vocabulary::{Stage, Trade};

use super::page::{heading, labelled, wrapped};
use super::paint::{QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, in_runs, on_one_line};

/// The questions under their trades and stages.
pub(crate) fn questions(questions: &[Question]) -> String {
    if questions.is_empty() {
        return "Nothing is open: there is nothing to ask.\n".to_owned();
    }
    let mut text = format!(
        "{}\n",
        paint(STRONG, &counted(questions.len(), "question", "questions"))
    );
    let mut last: Option<(Option<Trade>, Option<Stage>)> = None;
    for question in questions {
        let group = (question.trade, question.stage);
        if last.is_none_or(|(trade, _)| trade != question.trade) {
            text.push_str(&heading(trade(question.trade)));
        }
        if last != Some(group) {
            text.push_str(&paint(UNKNOWN, &format!("  {}", stage(question.stage))));
            text.push('\n');
        }
        last = Some(group);
        text.push_str(&one(question));
    }
    text
}

fn one(question: &Question) -> String {
    let mut text = wrapped(&format!("? {}", on_one_line(&question.sentence)), 4, 2);
    let joints = joints(question);
    if joints.len() > 3 {
        text.push_str(&labelled("joints", &in_runs(&joints), 6, 8));
    }
    if !question.help.is_empty() {
        text.push_str(&paint(QUIET, wrapped(&question.help, 6, 0).trim_end()));
        text.push('\n');
    }
    text
}

/// The joints that a question concerns, each once.
fn joints(question: &Question) -> Vec<&str> {
    let mut joints: Vec<&str> = Vec::new();
    for concern in &question.concerns {
        if !joints.contains(&concern.joint.as_str()) {
            joints.push(&concern.joint);
        }
    }
    joints
}

/// A trade as a heading.
pub(crate) fn trade(trade: Option<Trade>) -> &'static str {
    trade.map_or("Nobody in particular", Trade::title)
}

/// A stage as a heading.
pub(crate) fn stage(stage: Option<Stage>) -> &'static str {
    match stage {
        None => "whenever it can be seen",
        Some(Stage::Drawings) => "on drawings and submittals",
        Some(Stage::Delivery) => "on delivery at the latest",
        Some(Stage::BeforeClosing) => "before closing at the latest",
        Some(Stage::Placing) => "during placing at the latest",
        Some(Stage::Wet) => "while wet at the latest",
        Some(Stage::AfterCure) => "after cure",
        Some(Stage::OpeningUp) => "only by opening up, and making good again",
    }
}

/// One row a joint and clause, for a spreadsheet.
pub(crate) fn csv(questions: &[Question]) -> String {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let headings = [
        "trade",
        "stage",
        "property",
        "title",
        "question",
        "what_to_do",
        "instrument",
        "joint",
        "mark",
        "listing",
        "clause",
        "asks_for",
        "words",
        "why_open",
    ];
    // Writing into memory doesn't fail.
    let _ = writer.write_record(headings);
    for question in questions {
        for concern in &question.concerns {
            let _ = writer.write_record([
                question.trade.map_or("", Trade::name),
                question.stage.map_or("", Stage::name),
                &question.property,
                &question.title,
                &on_one_line(&question.sentence),
                &question.help,
                question.instrument.as_deref().unwrap_or_default(),
                &concern.joint,
                &concern.mark,
                &concern.listing,
                &concern.clause,
                &concern.requirement,
                &on_one_line(&concern.words),
                &concern.sentence,
            ]);
        }
    }
    writer
        .into_inner()
        .ok()
        .and_then(|bytes| String::from_utf8(bytes).ok())
        .unwrap_or_default()
}
