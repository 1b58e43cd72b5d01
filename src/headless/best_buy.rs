//! What to buy first: as a table in words, as JSON and as CSV.

use super::evaluate::Opened;
use super::page::table;
use super::sweep::cells;
use super::{REFUSED, open, print, refuse, save};
use crate::explore::{BestBuy, Combination, Offer, Step, Workers, combinations};
use crate::model::{Study, bundled_catalogue};
use crate::season::lean::SeasonFigures;
use crate::units::UnitSystem;
use clap::Args;
use serde::Serialize;
use std::path::PathBuf;
use std::process::ExitCode;

/// Units of what is printed.
const UNITS: UnitSystem = UnitSystem::Metric;
/// Lines of the printed ranking; CSV and JSON hold all.
const LINES: usize = 10;

/// What is asked for.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// Study file with a list of candidates
    file: PathBuf,
    /// Name of the scenario to start from; the reference if left out
    #[arg(long)]
    scenario: Option<String>,
    /// Most that may be spent on buying at once, instead of the study's
    #[arg(long)]
    budget: Option<f64>,
    /// Winters to plan for, instead of the study's
    #[arg(long, value_parser = clap::value_parser!(u32).range(1..=50))]
    winters: Option<u32>,
    /// Print JSON
    #[arg(long)]
    json: bool,
    /// CSV file to write every combination to
    #[arg(long)]
    csv: Option<PathBuf>,
}

pub(super) fn run(asked: &Asked) -> ExitCode {
    let Some(opened) = open(&asked.file) else { return ExitCode::from(REFUSED) };
    match result(asked, &opened) {
        Ok(text) => print(&text),
        Err(reason) => refuse(&reason),
    }
}

fn result(asked: &Asked, opened: &Opened) -> Result<String, String> {
    let named = |error: &dyn std::fmt::Display| format!("{}: {error}", opened.file);
    let study = &opened.study;
    let scenario = opened.scenario_or_reference(asked.scenario.as_deref())?;
    let budget = asked.budget.or(study.prices.budget);
    if budget.is_some_and(|budget| !budget.is_finite() || budget < 0.0) {
        return Err("the budget must be a number from 0 on".to_owned());
    }
    let winters = asked.winters.unwrap_or(study.prices.winters);
    let climate = &opened.weather.climate;
    let all =
        combinations(study, scenario, climate, bundled_catalogue(), Workers::all()).map_err(|error| named(&error))?;
    let best = BestBuy::of(&all, budget, winters);
    if let Some(out) = &asked.csv {
        let text = best.figures(study, UNITS).csv().map_err(|error| named(&error))?;
        save::save(text.as_bytes(), &asked.file, out, "table")?;
    }
    let whose = &study.scenarios[scenario].name;
    Ok(if asked.json { json(opened, whose, &all, &best) } else { page(study, whose, &all, &best) })
}

fn page(study: &Study, whose: &str, all: &[Combination], best: &BestBuy) -> String {
    let money = |amount: f64| format!("{} {amount:.2}", study.prices.currency);
    let budget = best.budget.map_or("no limit to the budget".to_owned(), |b| format!("budget {}", money(b)));
    let mut text = format!("{whose}: {} combinations, {} winters, {budget}\n\n", all.len(), best.winters);
    for sentence in best.verdict(study, UNITS) {
        text.push_str(&format!("{sentence}\n"));
    }
    let shown = if best.ranked.is_empty() { &best.short } else { &best.ranked };
    let titles = ["Buys", "To buy", "In all winters", "A winter", "Fuel bought", "Heat kWh", "Lowest crop air °C"];
    let mut rows = vec![titles.map(str::to_owned).to_vec()];
    rows[0].extend(["Hours below limit", "below setpoint"].map(str::to_owned));
    rows.extend(shown.iter().take(LINES).map(|offer| {
        let mut row = vec![offer.combination.names(study), money(offer.buying), money(offer.total)];
        row.extend(cells(offer.season, &study.prices.currency));
        row
    }));
    text.push_str(&format!("\n{}", table(&rows, 1)));
    text.push_str(&format!("{}\n{}{}", more(shown.len()), next_money(study, best), left_out(study, best)));
    text
}

fn more(found: usize) -> String {
    if LINES < found { format!("and {} more; --csv writes all\n", found - LINES) } else { String::new() }
}

/// What each further sum of money brings.
fn next_money(study: &Study, best: &BestBuy) -> String {
    if best.steps.len() < 2 {
        return String::new();
    }
    let currency = &study.prices.currency;
    let mut rows =
        vec![["Next money", "More to buy", "Saves a winter", "Of each 100", "Paid back"].map(str::to_owned).to_vec()];
    rows.extend(best.steps.iter().skip(1).map(|step| {
        let of_100 = step.saving_per_unit().map_or("-".to_owned(), |saving| format!("{:.1}", saving * 100.0));
        let names = step.offer.combination.names(study);
        vec![
            if step.within_budget { names } else { format!("{names} (beyond the budget)") },
            format!("{currency} {:.2}", step.extra_buying),
            format!("{currency} {:.2}", step.saving_per_winter),
            of_100,
            step.payback().words(),
        ]
    }));
    let first = best.steps[0].offer;
    format!(
        "What the next money brings, from {} ({currency} {:.2} to buy) on:\n{}",
        first.combination.names(study),
        first.buying,
        table(&rows, 1)
    )
}

/// What has no result, each reason once.
fn left_out(study: &Study, best: &BestBuy) -> String {
    let mut reasons: Vec<(String, String, usize)> = Vec::new();
    for combination in &best.left_out {
        let reason = combination.season.as_ref().err().map_or(String::new(), |refusal| refusal.text(UNITS));
        match reasons.iter_mut().find(|(known, ..)| *known == reason) {
            Some((_, _, others)) => *others += 1,
            None => reasons.push((reason, combination.names(study), 0)),
        }
    }
    let line = |(reason, names, others): &(String, String, usize)| {
        let others = if *others == 0 { String::new() } else { format!(" and {others} more") };
        format!("Left out: {names}{others}: {reason}\n")
    };
    let lines: String = reasons.iter().map(line).collect();
    if lines.is_empty() { lines } else { format!("\n{lines}") }
}

/// The README documents the keys.
#[derive(Serialize)]
struct BestBuyResult<'a> {
    study: &'a str,
    file: &'a str,
    program_version: &'static str,
    currency: &'a str,
    scenario: &'a str,
    winters: u32,
    budget: Option<f64>,
    combinations: usize,
    verdict: Vec<String>,
    best: Option<OfferResult<'a>>,
    runner_up: Option<OfferResult<'a>>,
    least_bad: Option<OfferResult<'a>>,
    next_money: Vec<StepResult<'a>>,
    ranked: Vec<OfferResult<'a>>,
    beyond_budget: Vec<OfferResult<'a>>,
    short: Vec<OfferResult<'a>>,
    left_out: Vec<LeftOut<'a>>,
}

#[derive(Serialize)]
struct OfferResult<'a> {
    buys: Vec<&'a str>,
    buying_cost: f64,
    buying_cost_over_winters: f64,
    total_cost: f64,
    #[serde(flatten)]
    season: &'a SeasonFigures,
}

#[derive(Serialize)]
struct StepResult<'a> {
    buys: Vec<&'a str>,
    extra_buying: f64,
    saving_per_winter: f64,
    saving_per_unit_of_money: Option<f64>,
    payback: String,
    within_budget: bool,
}

#[derive(Serialize)]
struct LeftOut<'a> {
    buys: Vec<&'a str>,
    reason: String,
}

impl<'a> OfferResult<'a> {
    fn of(offer: &Offer<'a>, study: &'a Study) -> Self {
        Self {
            buys: buys(offer.combination, study),
            buying_cost: offer.buying,
            buying_cost_over_winters: offer.buying_over,
            total_cost: offer.total,
            season: offer.season,
        }
    }

    fn all(offers: &[Offer<'a>], study: &'a Study) -> Vec<Self> {
        offers.iter().map(|offer| Self::of(offer, study)).collect()
    }
}

impl<'a> StepResult<'a> {
    fn of(step: &Step<'a>, study: &'a Study) -> Self {
        Self {
            buys: buys(step.offer.combination, study),
            extra_buying: step.extra_buying,
            saving_per_winter: step.saving_per_winter,
            saving_per_unit_of_money: step.saving_per_unit(),
            payback: step.payback().words(),
            within_budget: step.within_budget,
        }
    }
}

fn buys<'a>(combination: &Combination, study: &'a Study) -> Vec<&'a str> {
    combination.candidates.iter().filter_map(|index| Some(study.candidates.get(*index)?.name.as_str())).collect()
}

fn json(opened: &Opened, whose: &str, all: &[Combination], best: &BestBuy) -> String {
    let study = &opened.study;
    let left_out = |combination: &&Combination| LeftOut {
        buys: buys(combination, study),
        reason: combination.season.as_ref().err().map_or(String::new(), |refusal| refusal.text(UNITS)),
    };
    let result = BestBuyResult {
        study: &study.title,
        file: &opened.file,
        program_version: env!("CARGO_PKG_VERSION"),
        currency: &study.prices.currency,
        scenario: whose,
        winters: best.winters,
        budget: best.budget,
        combinations: all.len(),
        verdict: best.verdict(study, UNITS),
        best: best.best().map(|offer| OfferResult::of(offer, study)),
        runner_up: best.runner_up().map(|offer| OfferResult::of(offer, study)),
        least_bad: best.least_bad().map(|offer| OfferResult::of(offer, study)),
        next_money: best.steps.iter().map(|step| StepResult::of(step, study)).collect(),
        ranked: OfferResult::all(&best.ranked, study),
        beyond_budget: OfferResult::all(&best.beyond_budget, study),
        short: OfferResult::all(&best.short, study),
        left_out: best.left_out.iter().map(left_out).collect(),
    };
    // Texts, numbers and lists under fixed keys can always be written.
    serde_json::to_string_pretty(&result).unwrap_or_default() + "\n"
}
