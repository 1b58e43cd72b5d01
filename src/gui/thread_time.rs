//! Processor time of one thread: what it costs itself, whatever else the machine is busy with.

use std::time::Duration;

/// Processor time that the calling thread has used.
#[cfg(unix)]
#[must_use]
pub fn thread_time() -> Duration {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::ThreadCPUTime);
    Duration::new(u64::try_from(time.tv_sec).unwrap_or(0), u32::try_from(time.tv_nsec).unwrap_or(0))
}

/// Where a thread's own time cannot be asked for, the clock on the wall stands for it.
#[cfg(not(unix))]
#[must_use]
pub fn thread_time() -> Duration {
    static BEGAN: std::sync::LazyLock<std::time::Instant> = std::sync::LazyLock::new(std::time::Instant::now);
    BEGAN.elapsed()
}
