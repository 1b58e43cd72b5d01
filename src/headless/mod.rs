//! The commands that need no window, and what happens where no window can be had.

mod best_buy;
mod evaluate;
mod hours_csv;
mod json;
mod page;
mod report;
mod save;
mod sensitivity;
mod sweep;
mod table;
mod window;
mod winters;

use crate::units::UnitSystem;
use clap::{Parser, Subcommand, ValueEnum};
use evaluate::{Evaluated, Opened};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Exit code where a file or a request was refused.
pub const REFUSED: u8 = 2;

/// What a winter costs in a small heated plant house.
#[derive(Debug, Parser)]
#[command(name = "warmfold", version, about, args_conflicts_with_subcommands = true)]
struct Arguments {
    #[command(subcommand)]
    command: Option<Command>,
    /// Study to open in the window; the worked example if left out
    file: Option<PathBuf>,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Print the season of every scenario
    Run {
        /// Study files
        #[arg(required = true)]
        files: Vec<PathBuf>,
        /// Print JSON: one object for one file, a list for several
        #[arg(long)]
        json: bool,
    },
    /// Write the hours of one scenario as a table
    Hours {
        /// Study file
        file: PathBuf,
        /// Name of the scenario
        #[arg(long)]
        scenario: String,
        /// CSV file to write
        #[arg(long)]
        out: PathBuf,
    },
    /// Write a report that prints: one HTML page without script or network
    Report {
        /// Study file
        file: PathBuf,
        /// HTML file to write
        #[arg(long)]
        out: PathBuf,
        /// Units on the page
        #[arg(long, value_enum, default_value_t)]
        units: Units,
        /// With many winters, what matters and the best buy: hundreds of seasons of every scenario
        #[arg(long)]
        thorough: bool,
    },
    /// Write a table: the scenarios side by side, if nothing else is asked for
    Table {
        /// Study file
        file: PathBuf,
        /// Which table
        #[arg(long, value_enum, default_value_t)]
        table: table::Which,
        /// CSV file to write
        #[arg(long)]
        out: PathBuf,
        /// Units of the numbers
        #[arg(long, value_enum, default_value_t)]
        units: Units,
    },
    /// Try every combination of the study's candidates: which hold the crop, and which cost least in all
    BestBuy(best_buy::Asked),
    /// Move one input, or two, over a range, and print what the season then comes to
    Sweep(sweep::Asked),
    /// Run every scenario through many winters made up by chance: cost, crop and fuel of one winter in ten
    Winters {
        /// Study file
        file: PathBuf,
        /// Winters instead of the study's number of them
        #[arg(long)]
        count: Option<u32>,
        /// Print JSON
        #[arg(long)]
        json: bool,
        /// CSV file to write every winter to
        #[arg(long)]
        csv: Option<PathBuf>,
    },
    /// Tell what matters to one scenario: its doubtful inputs moved one at a time, and the weather
    Sensitivity(sensitivity::Asked),
    /// Open the window, drag setpoints, and print what the frames cost
    #[cfg(feature = "gui")]
    Frames,
    /// Check study files without running them
    Check {
        /// Study files
        #[arg(required = true)]
        files: Vec<PathBuf>,
    },
}

/// Units of what is written.
#[derive(Debug, Clone, Copy, Default, ValueEnum)]
enum Units {
    /// °C and metres
    #[default]
    Metric,
    /// °F and feet
    Imperial,
}

impl From<Units> for UnitSystem {
    fn from(units: Units) -> Self {
        match units {
            Units::Metric => Self::Metric,
            Units::Imperial => Self::Imperial,
        }
    }
}

/// Does what the command line asks for.
#[must_use]
pub fn main() -> ExitCode {
    let arguments = Arguments::parse();
    match arguments.command {
        None => window::open(arguments.file),
        Some(Command::Run { files, json }) => run(&files, json),
        Some(Command::Hours { file, scenario, out }) => hours_csv::write(&file, &scenario, &out),
        Some(Command::Report { file, out, units, thorough }) => report::write(&file, &out, units.into(), thorough),
        Some(Command::Table { file, table, out, units }) => table::write(&file, &out, table, units.into()),
        Some(Command::BestBuy(asked)) => best_buy::run(&asked),
        Some(Command::Sweep(asked)) => sweep::run(&asked),
        Some(Command::Winters { file, count, json, csv }) => winters::run(&file, count, json, csv.as_deref()),
        Some(Command::Sensitivity(asked)) => sensitivity::run(&asked),
        #[cfg(feature = "gui")]
        Some(Command::Frames) => window::measure(),
        Some(Command::Check { files }) => check(&files),
    }
}

/// All files are checked before anything is printed: a script gets the whole result or none.
fn run(files: &[PathBuf], json: bool) -> ExitCode {
    let Some(opened) = open_all(files) else { return ExitCode::from(REFUSED) };
    let mut evaluated = Vec::new();
    for study in opened {
        match study.evaluate() {
            Ok(results) => evaluated.push(results),
            Err(complaint) => return refuse(&complaint),
        }
    }
    match if json { json::text(&evaluated) } else { Ok(pages(&evaluated)) } {
        Ok(text) => print(&text),
        Err(complaint) => refuse(&complaint),
    }
}

fn pages(evaluated: &[Evaluated]) -> String {
    evaluated.iter().map(page::text).collect::<Vec<_>>().join("\n")
}

fn check(files: &[PathBuf]) -> ExitCode {
    match open_all(files) {
        Some(opened) => print(&opened.iter().map(|study| format!("{}: sound\n", study.file)).collect::<String>()),
        None => ExitCode::from(REFUSED),
    }
}

/// Opens every file; the complaints of all are printed, and none is returned if one was refused.
fn open_all(files: &[PathBuf]) -> Option<Vec<Opened>> {
    let opened: Vec<_> = files.iter().map(|file| evaluate::open(file)).collect();
    for complaint in opened.iter().flat_map(evaluate::complaints) {
        eprintln!("{complaint}");
    }
    opened.into_iter().map(Result::ok).collect()
}

/// Opens a file; its complaints are printed, and none is returned if it was refused.
fn open(file: &Path) -> Option<Opened> {
    let opened = evaluate::open(file);
    for complaint in evaluate::complaints(&opened) {
        eprintln!("{complaint}");
    }
    opened.ok()
}

/// Prints the reason and gives the exit code.
fn refuse(reason: &str) -> ExitCode {
    eprintln!("{reason}");
    ExitCode::from(REFUSED)
}

/// Prints a result. A reader that has seen enough and closes the pipe is no failure.
fn print(text: &str) -> ExitCode {
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            refuse(&format!("the result could not be printed: {error}"))
        }
        _ => ExitCode::SUCCESS,
    }
}
