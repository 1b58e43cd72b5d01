//! Work spread over threads, whose number changes no result.

use crate::season::RunError;
use std::num::NonZeroUsize;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

/// Threads to work on, and how to hear of them and to stop them.
#[derive(Clone, Copy)]
pub struct Workers<'a> {
    /// Threads that work at the same time.
    pub threads: NonZeroUsize,
    /// Hears how many runs are done, from any of the threads.
    pub progress: &'a (dyn Fn(usize) + Sync),
    /// Asked once per simulated day by every thread.
    pub cancelled: &'a (dyn Fn() -> bool + Sync),
}

impl Workers<'_> {
    /// One thread for each processor; nobody listens, and nobody stops them.
    #[must_use]
    pub fn all() -> Self {
        let threads = std::thread::available_parallelism().unwrap_or(NonZeroUsize::MIN);
        Self { threads, progress: &|_| (), cancelled: &|| false }
    }

    /// Does `work` for 0 to `count` − 1, on the threads in whatever order, and gives the results in order.
    ///
    /// # Errors
    /// [`RunError::Cancelled`] of the first work that says so; whatever else `work` returns ends the rest as well.
    pub(super) fn each<T: Send>(
        &self,
        count: usize,
        work: &(dyn Fn(usize) -> Result<T, RunError> + Sync),
    ) -> Result<Vec<T>, RunError> {
        let (next, done, ended) = (AtomicUsize::new(0), AtomicUsize::new(0), AtomicBool::new(false));
        let until_none_is_left = || {
            let mut results = Vec::new();
            while !ended.load(Ordering::Relaxed) {
                let index = next.fetch_add(1, Ordering::Relaxed);
                if count <= index {
                    break;
                }
                let result = work(index);
                ended.fetch_or(result.is_err(), Ordering::Relaxed);
                (self.progress)(done.fetch_add(1, Ordering::Relaxed) + 1);
                results.push((index, result));
            }
            results
        };
        let mut results: Vec<(usize, Result<T, RunError>)> = std::thread::scope(|scope| {
            let others: Vec<_> = (1..self.threads.get().min(count)).map(|_| scope.spawn(until_none_is_left)).collect();
            let own = until_none_is_left();
            let theirs = others.into_iter().flat_map(|thread| match thread.join() {
                Ok(results) => results,
                Err(panic) => std::panic::resume_unwind(panic),
            });
            own.into_iter().chain(theirs).collect()
        });
        results.sort_by_key(|(index, _)| *index);
        results.into_iter().map(|(_, result)| result).collect()
    }
}
