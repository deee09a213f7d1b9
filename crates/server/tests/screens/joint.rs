//! The page of a joint of which little is known.

use axum::http::StatusCode;

use crate::ground::{Ground, on_each};
use crate::support::{Sat, mark};

on_each![a_section_that_can_t_be_drawn_says_why,];

async fn a_section_that_can_t_be_drawn_says_why(ground: Ground) {
    let sat = Sat::down(&ground).await;
    let table = "joint,mark,joint.width\nJ-1,HW1,1 in.\n";
    let brought = sat
        .bring(&[("schedule.csv", table.as_bytes().to_vec())])
        .await;
    let shown = sat.get(&brought.to).await.text;
    let form = [("tables", "yes"), ("shown", mark(&shown))];
    sat.post(&brought.to, &form).await;
    let page = sat.get("/joints/J-1").await.text;
    assert!(page.contains("The section can't be drawn yet"), "{page}");
    assert!(!page.contains("section.svg"), "{page}");
    let drawn = sat.get("/joints/J-1/section.svg").await;
    assert_eq!(drawn.status, StatusCode::NOT_FOUND);
    assert!(
        page.contains(drawn.text.split('`').next().unwrap()),
        "{}",
        drawn.text
    );
}
