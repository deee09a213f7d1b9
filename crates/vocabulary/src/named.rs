//! What enums with a name and a title have in common: reading the name, printing the title.

/// A name that none of a list has.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("`{found}` is not a {what}; known are {known}")]
pub struct UnknownName {
    /// What was asked for.
    pub found: String,
    /// What kind of thing it should have been.
    pub what: &'static str,
    /// The names there are, joined by commas.
    pub known: String,
}

/// Reads the kebab-case name and prints the title of an enum that has `ALL`, `name` and `title`.
macro_rules! named {
    ($Type:ident, $what:literal) => {
        impl fmt::Display for $Type {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(self.title())
            }
        }

        impl core::str::FromStr for $Type {
            type Err = crate::named::UnknownName;

            fn from_str(name: &str) -> Result<Self, Self::Err> {
                let known = Self::ALL.iter().copied().find(|one| one.name() == name);
                known.ok_or_else(|| crate::named::UnknownName {
                    found: name.to_owned(),
                    what: $what,
                    known: Self::ALL
                        .iter()
                        .map(|one| one.name())
                        .collect::<Vec<_>>()
                        .join(", "),
                })
            }
        }
    };
}

pub(crate) use named;
