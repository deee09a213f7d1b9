//! Passwords: which may be one, and their hashes.
//!
//! Argon2id (RFC 9106) with 19 MiB of memory, two passes and one lane: the first of the settings that the OWASP Password Storage Cheat Sheet
//! recommends. A password has at least 15 characters and may be of any kind (NIST SP 800-63B-4, section 3.1.1.2, for passwords that stand alone).

use argon2::password_hash::phc::PasswordHash;
use argon2::{Algorithm, Argon2, Params, PasswordHasher, PasswordVerifier, Version};
use store::people::folded;
use tokio::sync::Semaphore;

use super::tokens::fresh;
use crate::listings::working;
use crate::trouble::Trouble;

/// The fewest characters.
pub(crate) const FEWEST: usize = 15;

/// The most characters.
const MOST: usize = 500;

/// The fewest characters that differ from one another.
const FEWEST_DIFFERENT: usize = 5;

/// Memory, in KiB.
const MEMORY: u32 = 19 * 1024;
const PASSES: u32 = 2;
const LANES: u32 = 1;

/// How many hashes are made at once, so that many who sign in take neither all memory nor all processors.
const AT_ONCE: usize = 2;

/// What is needed to hash passwords and to compare them with their hashes.
#[derive(Debug)]
pub(super) struct Passwords {
    turn: Semaphore,
    /// The hash of a password that nobody knows. Names that are nobody's are compared with it, and take as long as others.
    nobodys: String,
}

impl Passwords {
    pub(super) fn new() -> Result<Self, Trouble> {
        Ok(Self {
            turn: Semaphore::new(AT_ONCE),
            nobodys: hash(&fresh()?)?,
        })
    }

    /// The hash of a password, in the form of the PHC string, with a salt of its own.
    pub(super) async fn hash(&self, password: &str) -> Result<String, Trouble> {
        let password = password.to_owned();
        let _turn = self.turn.acquire().await;
        working(move || hash(&password)).await?
    }

    /// Whether a password has a hash; not, and after the same work, where there is no hash.
    pub(super) async fn is(&self, password: &str, hash: Option<String>) -> Result<bool, Trouble> {
        let password = password.to_owned();
        let is_somebodys = hash.is_some();
        let hash = hash.unwrap_or_else(|| self.nobodys.clone());
        let _turn = self.turn.acquire().await;
        let fits = working(move || {
            let hash = PasswordHash::new(&hash).map_err(broken)?;
            Ok::<_, Trouble>(
                Argon2::default()
                    .verify_password(password.as_bytes(), &hash)
                    .is_ok(),
            )
        });
        Ok(fits.await?? && is_somebodys)
    }
}

fn hash(password: &str) -> Result<String, Trouble> {
    let settings = Params::new(MEMORY, PASSES, LANES, None).map_err(broken)?;
    let hasher = Argon2::new(Algorithm::Argon2id, Version::V0x13, settings);
    let hash = hasher.hash_password(password.as_bytes()).map_err(broken)?;
    Ok(hash.to_string())
}

fn broken(error: impl core::fmt::Display) -> Trouble {
    Trouble::Broken(format!("the password can't be worked with: {error}"))
}

/// Whether a password may be one.
///
/// # Errors
/// When it is too short or too long, would be guessed first, or wasn't typed twice alike.
pub(super) fn may_be(password: &str, again: &str, name: &str) -> Result<(), Trouble> {
    let refused = |message: &str, help: &str| {
        Err(Trouble::Refused {
            message: message.to_owned(),
            help: help.to_owned(),
        })
    };
    let sentence = "a few words that have nothing to do with one another are easy to keep in mind";
    let length = password.chars().count();
    let different: std::collections::BTreeSet<char> = password.chars().collect();
    let small = folded(password);
    let own = folded(name);
    if length < FEWEST {
        return refused(
            &format!("a password has at least {FEWEST} characters, and this one has {length}"),
            sentence,
        );
    }
    if length > MOST {
        return refused(
            &format!("a password has at most {MOST} characters"),
            sentence,
        );
    }
    if different.len() < FEWEST_DIFFERENT || is_row(password) {
        return refused("this password would be guessed soon", sentence);
    }
    if small.contains("everyclause") || (own.chars().count() > 3 && small.contains(&own)) {
        return refused(
            "a password with your name or the program's would be guessed first",
            sentence,
        );
    }
    if password != again {
        return refused(
            "the two passwords aren't the same",
            "type the same one twice",
        );
    }
    Ok(())
}

/// Whether each character follows the one before it, up or down: `abcdefgh`, `87654321`.
fn is_row(password: &str) -> bool {
    let codes: Vec<i64> = password.chars().map(|c| i64::from(u32::from(c))).collect();
    let steps: std::collections::BTreeSet<i64> = codes
        .iter()
        .zip(codes.iter().skip(1))
        .map(|(one, next)| next - one)
        .collect();
    steps.len() < 2
}

#[cfg(test)]
mod tests {
    use super::{Passwords, hash, may_be};

    #[test]
    fn hashes_are_made_as_recommended_each_with_its_own_salt() {
        let one = hash("quiet copper lantern").unwrap();
        // OWASP Password Storage Cheat Sheet, Argon2id: 19 MiB of memory, 2 iterations, 1 degree of parallelism.
        assert!(one.starts_with("$argon2id$v=19$m=19456,t=2,p=1$"), "{one}");
        assert_ne!(one, hash("quiet copper lantern").unwrap());
    }

    #[tokio::test]
    async fn only_the_password_itself_fits_and_nobodys_never_does() {
        let passwords = Passwords::new().unwrap();
        let hash = passwords.hash("quiet copper lantern").await.unwrap();
        assert!(
            passwords
                .is("quiet copper lantern", Some(hash.clone()))
                .await
                .unwrap()
        );
        assert!(
            !passwords
                .is("quiet copper lanterN", Some(hash))
                .await
                .unwrap()
        );
        assert!(!passwords.is("quiet copper lantern", None).await.unwrap());
    }

    #[test]
    fn what_would_be_guessed_is_refused_and_says_why() {
        let said = |password: &str| {
            may_be(password, password, "Kim Ellery").map_err(|trouble| trouble.to_string())
        };
        assert_eq!(said("quiet copper lantern"), Ok(()));
        assert_eq!(said("тихий медный фонарь"), Ok(()));
        for (password, says) in [
            ("short", "at least 15"),
            ("aaaaaaaaaaaaaaaaaaaa", "guessed soon"),
            ("abcdefghijklmnopqrst", "guessed soon"),
            ("Everyclause2026!!!", "the program's"),
            ("I am kim  ellery of old", "your name"),
        ] {
            assert!(said(password).unwrap_err().contains(says), "{password}");
        }
        assert!(said(&"long enough ".repeat(50)).is_err());
        assert!(may_be("quiet copper lantern", "quiet copper", "Kim").is_err());
    }
}
