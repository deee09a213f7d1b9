//! What tables there are, and which columns each has.

use vocabulary::Property;

/// What a table is a table of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    Judgments,
    Joints,
    Barriers,
    Marks,
}

/// A column that a table may have besides properties.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Named {
    pub heading: &'static str,
    /// The property it is short for.
    pub property: Option<&'static str>,
    pub required: bool,
}

const fn plain(heading: &'static str) -> Named {
    Named {
        heading,
        property: None,
        required: false,
    }
}

const fn required(heading: &'static str) -> Named {
    Named {
        heading,
        property: None,
        required: true,
    }
}

const fn short_for(heading: &'static str, property: &'static str) -> Named {
    Named {
        heading,
        property: Some(property),
        required: false,
    }
}

const JUDGMENTS: &[Named] = &[
    required("joint_or_mark"),
    plain("listing"),
    required("item"),
    required("words"),
    required("decision"),
    required("by"),
    required("when"),
    required("basis"),
];

const JOINTS: &[Named] = &[
    required("joint"),
    plain("mark"), // required where marks are given
    plain("listing"),
    plain("storey"),
    plain("barrier"),
    plain("grid"),
    short_for("length", "joint.length"),
];

const BARRIERS: &[Named] = &[
    required("barrier"),
    plain("kind"),
    short_for("rating", "barrier.rating"),
    short_for("smoke_barrier", "barrier.smoke_barrier"),
    plain("title"),
];

const MARKS: &[Named] = &[required("mark"), plain("title"), plain("listing")];

impl Kind {
    /// Every kind, in the order in which the key columns tell them: a table of joints has a column `mark` too.
    pub(crate) const ALL: &'static [Self] =
        &[Self::Judgments, Self::Joints, Self::Barriers, Self::Marks];

    /// The columns besides properties, the key first.
    pub(crate) const fn columns(self) -> &'static [Named] {
        match self {
            Self::Judgments => JUDGMENTS,
            Self::Joints => JOINTS,
            Self::Barriers => BARRIERS,
            Self::Marks => MARKS,
        }
    }

    /// The heading of the column that names each row.
    pub(crate) fn key(self) -> &'static str {
        self.columns().first().map_or("", |column| column.heading)
    }

    /// Whether a table of this kind may have a column for the property.
    pub(crate) fn takes(self, property: &Property) -> bool {
        match self {
            Self::Joints | Self::Marks => true,
            Self::Barriers => property.component == "barrier",
            Self::Judgments => false,
        }
    }

    /// Whether a table of this kind may have columns that say which option of a listing is built.
    pub(crate) const fn takes_options(self) -> bool {
        matches!(self, Self::Joints | Self::Marks)
    }

    /// What the table is of, in a word.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Judgments => "judgments",
            Self::Joints => "joints",
            Self::Barriers => "barriers",
            Self::Marks => "marks",
        }
    }
}
