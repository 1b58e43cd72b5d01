//! Work spread over threads, whose number changes no result: each piece depends on its own number alone.

use super::error::RunError;
use std::num::NonZeroUsize;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::mpsc::{SyncSender, sync_channel};

/// Threads to work on, and how to hear of them and to stop them.
#[derive(Clone, Copy)]
pub struct Workers<'a> {
    /// Threads that work at the same time, beside the one that asks.
    pub threads: NonZeroUsize,
    /// Hears how many pieces are done, in the thread that asks.
    pub progress: &'a dyn Fn(usize),
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

    /// Does `work` for 0 to `count` − 1 on the threads and hands each result over as it is ready, in whatever order.
    ///
    /// # Errors
    /// [`RunError::Cancelled`] or whatever else `work` returns first; it ends the rest as well.
    pub(crate) fn each_when_ready<T: Send>(
        &self,
        count: usize,
        work: &(dyn Fn(usize) -> Result<T, RunError> + Sync),
        ready: &mut dyn FnMut(usize, T),
    ) -> Result<(), RunError> {
        let (next, ended) = (AtomicUsize::new(0), AtomicBool::new(false));
        let until_none_is_left = |sender: &SyncSender<(usize, Result<T, RunError>)>| {
            while !ended.load(Ordering::Relaxed) {
                let index = next.fetch_add(1, Ordering::Relaxed);
                // Who asked may have gone: then there is nobody to tell.
                if count <= index || sender.send((index, work(index))).is_err() {
                    return;
                }
            }
        };
        std::thread::scope(|scope| {
            let (sender, receiver) = sync_channel(2 * self.threads.get());
            for _ in 0..self.threads.get().min(count) {
                let (sender, work) = (sender.clone(), &until_none_is_left);
                scope.spawn(move || work(&sender));
            }
            drop(sender);
            let (mut outcome, mut done) = (Ok(()), 0);
            for (index, result) in receiver {
                match result {
                    Ok(result) if outcome.is_ok() => {
                        ready(index, result);
                        done += 1;
                        (self.progress)(done);
                    }
                    Ok(_) => {}
                    Err(error) => {
                        ended.store(true, Ordering::Relaxed);
                        outcome = outcome.and(Err(error));
                    }
                }
            }
            outcome
        })
    }
}

/// What came in whatever order, in the order of its numbers.
pub(crate) fn in_order<T>(mut numbered: Vec<(usize, T)>) -> Vec<T> {
    numbered.sort_by_key(|(number, _)| *number);
    numbered.into_iter().map(|(_, result)| result).collect()
}
