//! Scales: those of ISO 5455, and those of an architect's rule in feet and inches (from memory: 6 in., 3 in. and 1-1/2 in. to the foot).

use crate::plane::Box2;

/// A scale of reduction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scale {
    /// How many millimetres of the building one of paper stands for.
    times: u8,
    /// As it is written.
    pub(super) words: &'static str,
}

const SCALES: &[Scale] = &[
    Scale {
        times: 1,
        words: "1:1 (full size)",
    },
    Scale {
        times: 2,
        words: "1:2 (6 in. = 1 ft)",
    },
    Scale {
        times: 4,
        words: "1:4 (3 in. = 1 ft)",
    },
    Scale {
        times: 5,
        words: "1:5",
    },
    Scale {
        times: 8,
        words: "1:8 (1-1/2 in. = 1 ft)",
    },
    Scale {
        times: 10,
        words: "1:10",
    },
    Scale {
        times: 20,
        words: "1:20",
    },
    Scale {
        times: 50,
        words: "1:50",
    },
    Scale {
        times: 100,
        words: "1:100",
    },
];

impl Scale {
    /// The largest at which a frame fits into so much paper.
    pub(super) fn fitting(frame: Box2, wide: f64, high: f64) -> Self {
        let fits = |scale: &&Self| {
            frame.width() * scale.of_paper() <= wide && frame.height() * scale.of_paper() <= high
        };
        let smallest = Self {
            times: 100,
            words: "1:100",
        };
        SCALES.iter().find(fits).copied().unwrap_or(smallest)
    }

    /// Millimetres of paper for one of the building.
    pub(super) fn of_paper(self) -> f64 {
        1.0 / f64::from(self.times)
    }
}
