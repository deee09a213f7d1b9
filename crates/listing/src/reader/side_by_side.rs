//! The same done for many things on as many processors as there are, in the order of the things.

use std::panic::resume_unwind;
use std::thread::{available_parallelism, scope};

/// What is made of each thing and its place, in order: the same as one after the other, and sooner where there are many.
pub(super) fn side_by_side<T: Sync, M: Send>(
    things: &[T],
    make: impl Fn(usize, &T) -> M + Sync,
) -> Vec<M> {
    /// Fewer are made sooner than another thread is begun.
    const FEWEST: usize = 200;
    let threads = available_parallelism().map_or(1, usize::from);
    let most = things.len().div_ceil(threads).max(FEWEST);
    let make_all = |(at, chunk): (usize, &[T])| -> Vec<M> {
        let placed = chunk.iter().enumerate();
        placed
            .map(|(own, thing)| make(at * most + own, thing))
            .collect()
    };
    if things.len() <= most {
        return make_all((0, things));
    }
    let make_all = &make_all;
    scope(|scope| {
        let chunks = things.chunks(most).enumerate();
        let begun: Vec<_> = chunks
            .map(|chunk| scope.spawn(move || make_all(chunk)))
            .collect();
        let all = begun.into_iter().flat_map(|thread| match thread.join() {
            Ok(yielded) => yielded,
            Err(panic) => resume_unwind(panic),
        });
        all.collect()
    })
}
