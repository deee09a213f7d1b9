//! How often somebody may try to sign in: by address, by name, and by both.
//!
//! Names that are nobody's are counted like others, so that the limits don't tell which there are.

use core::num::NonZeroU32;
use std::time::Duration;

use governor::clock::{Clock, DefaultClock};
use governor::{DefaultKeyedRateLimiter, Quota, RateLimiter};
use store::people::folded;

use super::tokens::hashed;

/// How many keys are remembered before those are forgotten that have waited long enough.
const MOST_KEPT: usize = 10_000;

/// How often somebody may try.
#[derive(Debug)]
pub(super) struct Limits {
    clock: DefaultClock,
    address: DefaultKeyedRateLimiter<String>,
    pair: DefaultKeyedRateLimiter<String>,
    name: DefaultKeyedRateLimiter<String>,
}

/// So many tries at once, and then one after each so many seconds.
fn quota(at_once: u32, seconds: u32) -> Option<Quota> {
    let (Some(at_once), Some(period)) = (
        NonZeroU32::new(at_once),
        Quota::with_period(Duration::from_secs(u64::from(seconds))),
    ) else {
        return None;
    };
    Some(period.allow_burst(at_once))
}

fn limiter(at_once: u32, seconds: u32) -> DefaultKeyedRateLimiter<String> {
    let strictest = Quota::per_hour(NonZeroU32::MIN);
    RateLimiter::keyed(quota(at_once, seconds).unwrap_or(strictest))
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            clock: DefaultClock::default(),
            // An office behind one address signs in on one morning.
            address: limiter(30, 10),
            // A person who has forgotten which password it was.
            pair: limiter(6, 60),
            // From anywhere: many, or whoever likes could keep a person out.
            name: limiter(60, 60),
        }
    }
}

impl Limits {
    /// Counts a try.
    ///
    /// # Errors
    /// When there were too many: how long to wait.
    pub(super) fn count(&self, address: &str, name: &str) -> Result<(), Duration> {
        let name = hashed(&folded(name));
        let pair = format!("{address} {name}");
        for (limiter, key) in [
            (&self.address, address),
            (&self.pair, pair.as_str()),
            (&self.name, name.as_str()),
        ] {
            if limiter.len() > MOST_KEPT {
                limiter.retain_recent();
            }
            limiter
                .check_key(&key.to_owned())
                .map_err(|too_soon| too_soon.wait_time_from(self.clock.now()))?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::Limits;

    #[test]
    fn tries_are_counted_by_name_and_by_address() {
        let limits = Limits::default();
        for _ in 0..6 {
            assert!(limits.count("192.0.2.1", "Kim").is_ok());
        }
        let wait = limits.count("192.0.2.1", "  KIM ").unwrap_err();
        assert!(wait.as_secs() > 30 && wait.as_secs() <= 60, "{wait:?}");
        // Others, and Kim from elsewhere, may.
        assert!(limits.count("192.0.2.1", "Lee").is_ok());
        assert!(limits.count("192.0.2.2", "Kim").is_ok());
        // One address can't try name after name.
        let tried = (0..100).filter(|n| limits.count("192.0.2.3", &format!("person {n}")).is_ok());
        assert!(tried.count() <= 31);
        // Nor many addresses one name.
        let tried = (0..200).filter(|n| limits.count(&format!("198.51.100.{n}"), "Sam").is_ok());
        assert!(tried.count() <= 61);
    }
}
