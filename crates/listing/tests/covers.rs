//! The width of what covers a joint is no width of the joint.

mod common;

use common::check_item;

#[test]
fn a_pan_or_a_cover_has_a_width_of_its_own() {
    check_item(
        "Joint System - Max 4 in. wide. Steel pan min 8 in. wide over the joint.",
        &["joint.width: at most 4 in", "2:joint_width: at least 8 in"],
    );
    check_item(
        "Joint System - Max 4 in. wide.\n   A. Steel Cover - Min 6 in. wide.",
        &["joint.width: at most 4 in", "2A:joint_width: at least 6 in"],
    );
}

#[test]
fn what_is_said_of_joints_with_a_strip_in_them_is_said_of_the_joints() {
    check_item(
        "Joint System - Joints filled with the strip are not wider than 2 in.",
        &["joint.width: at most 2 in"],
    );
}

#[test]
fn two_limits_behind_a_number_say_for_which_joints_it_is() {
    check_item(
        "T Rating - 2 hr for joints up to 1 in.; 1 hr for joints 1 to 2 in.",
        &[
            "2:t_rating: nominal 2 hr if joint.width <= 1 in.",
            "2:t_rating: nominal 1 hr if joint.width from 1 in. to 2 in.",
        ],
    );
}
