//! Winters side by side on several threads. Each depends on the study's seed and its own number alone, so that their
//! number changes no figure; results come in as they are ready.

use super::{OneWinter, ScenarioWinters, one_winter};
use crate::model::{Catalogue, Study};
use crate::season::error::RunError;
use crate::weather::Climate;
use crate::weather::winters::WinterMaker;
use std::num::NonZeroUsize;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::mpsc::{SyncSender, sync_channel};

/// One winter of every scenario, in the order of the study.
type Done = Result<Vec<OneWinter>, RunError>;

/// Runs every scenario of a study through its winters, on this many threads beside the one that asks. `so_far` is told of
/// the weather year first, and then after every winter; `cancelled` is asked once per simulated day.
///
/// # Errors
/// As [`crate::season::run_scenario`].
pub fn many_winters(
    study: &Study,
    climate: &Climate,
    catalogue: &Catalogue,
    threads: NonZeroUsize,
    so_far: &mut dyn FnMut(&[ScenarioWinters]),
    cancelled: &(dyn Fn() -> bool + Sync),
) -> Result<Vec<ScenarioWinters>, RunError> {
    let mut gathered = weather_year(study, climate, catalogue, cancelled)?;
    so_far(&gathered);
    let (next, given_up) = (AtomicU32::new(0), AtomicBool::new(false));
    let work = Work { study, catalogue, maker: WinterMaker::of(climate), next, given_up, cancelled };
    std::thread::scope(|scope| {
        let (sender, receiver) = sync_channel(2 * threads.get());
        for _ in 0..threads.get() {
            let (work, sender) = (&work, sender.clone());
            scope.spawn(move || work.until_none_is_left(&sender));
        }
        drop(sender);
        let mut outcome = Ok(());
        for done in receiver {
            match done {
                Ok(winters) if outcome.is_ok() => {
                    gather(&mut gathered, winters);
                    so_far(&gathered);
                }
                Ok(_) => {}
                Err(error) => {
                    work.given_up.store(true, Ordering::Relaxed);
                    outcome = Err(error);
                }
            }
        }
        outcome
    })?;
    Ok(gathered)
}

/// The scenarios on the weather year itself.
fn weather_year(
    study: &Study,
    climate: &Climate,
    catalogue: &Catalogue,
    cancelled: &(dyn Fn() -> bool + Sync),
) -> Result<Vec<ScenarioWinters>, RunError> {
    let of_scenario = |scenario| {
        let (weather_year, fuels, days) = one_winter(study, scenario, climate, catalogue, 0, &|| cancelled())?;
        Ok(ScenarioWinters { name: scenario.name.clone(), weather_year, fuels, days, winters: Vec::new() })
    };
    study.scenarios.iter().map(of_scenario).collect()
}

/// Puts the winters of the scenarios in their places.
fn gather(gathered: &mut [ScenarioWinters], winters: Vec<OneWinter>) {
    for (scenario, winter) in gathered.iter_mut().zip(winters) {
        let place = scenario.winters.partition_point(|before| before.number < winter.number);
        scenario.winters.insert(place, winter);
    }
}

/// What the threads share.
struct Work<'a> {
    study: &'a Study,
    catalogue: &'a Catalogue,
    maker: WinterMaker<'a>,
    next: AtomicU32,
    given_up: AtomicBool,
    cancelled: &'a (dyn Fn() -> bool + Sync),
}

impl Work<'_> {
    /// Takes one winter after another. Who asked may have gone: then there is nobody to tell.
    fn until_none_is_left(&self, sender: &SyncSender<Done>) {
        loop {
            let number = self.next.fetch_add(1, Ordering::Relaxed);
            if number >= self.study.many_winters.count || self.given_up.load(Ordering::Relaxed) {
                return;
            }
            if sender.send(self.winter(number)).is_err() {
                return;
            }
        }
    }

    fn winter(&self, number: u32) -> Done {
        let climate = self.maker.winter(self.study.many_winters.seed, number);
        let stop = || self.given_up.load(Ordering::Relaxed) || (self.cancelled)();
        let of_scenario = |scenario| Ok(one_winter(self.study, scenario, &climate, self.catalogue, number, &stop)?.0);
        self.study.scenarios.iter().map(of_scenario).collect()
    }
}
