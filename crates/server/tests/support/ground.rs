//! Each story on both databases, by the ground that the tests of `store` have.

#![allow(dead_code, reason = "each file of tests uses some of it")]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::string_slice,
    reason = "a step that fails must fail the test"
)]

#[path = "../../../store/tests/support/ground.rs"]
mod places;

pub(crate) use places::{Ground, on_postgres};

/// Makes two tests of each story: one on SQLite; and one on PostgreSQL, which says that it wasn't run where there is none.
macro_rules! on_each {
    ($($story:ident),+ $(,)?) => {
        mod on_sqlite {
            $(#[tokio::test(flavor = "multi_thread")]
            async fn $story() {
                super::$story(crate::ground::Ground::sqlite()).await;
            })+
        }
        mod on_postgres {
            $(#[tokio::test(flavor = "multi_thread")]
            async fn $story() {
                crate::ground::on_postgres(stringify!($story), super::$story).await;
            })+
        }
    };
}

pub(crate) use on_each;
