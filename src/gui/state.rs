//! Everything the window holds: the document, the results, and what is on show.

use super::asked::Asked;
use super::board::{Board, Season, Standing};
use super::command::Command;
use super::document::{Document, ScenarioId};
use super::drawing::Playback;
use super::editor::Section;
use super::exporting::Export;
use super::figures_table::FiguresTable;
use super::filing::Filing;
use super::handout::Handout;
use super::history::Edits;
use super::importing::Import;
use super::insights::Insights;
use super::keeping::Keeping;
use super::matters::Matters;
use super::nights::Nights;
use super::outlook::Outlook;
use super::plots::PlotShelf;
use super::prefs::Prefs;
use super::purchases::Purchases;
use super::sweeps::Sweeps;
use super::verdicts::Verdicts;
use super::views::{AirPlot, BuyView, ColdestView, MattersView, SideView, SweepView, WinterView};
use super::worker::{Inputs, Worker};
use super::workings::Workings;
use crate::checks::Check;
use crate::model::validate::{Problem, Severity, problems};
use crate::model::{Catalogue, Study};
use crate::season::airing::{AirChanges, air_changes};
use crate::storage::LeftDraft;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The views beside the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum View {
    /// The whole winter.
    #[default]
    Winter,
    /// The coldest nights.
    Coldest,
    /// Scenarios side by side.
    Side,
    /// Air and damp.
    Air,
    /// What could hurt someone or spoil the plan.
    Checks,
    /// The same through many winters.
    Winters,
    /// Which of the doubtful inputs matter.
    Matters,
    /// Inputs moved over a range.
    Sweep,
    /// Which measures to buy.
    Buy,
}

impl View {
    /// Whether the house is drawn above it.
    #[must_use]
    pub fn has_drawing(self) -> bool {
        // Tables, and what is more than one winter, need the room and have no hour.
        !matches!(self, Self::Side | Self::Winters | Self::Matters | Self::Sweep | Self::Buy)
    }
}

/// A window that explains something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Leaflet {
    /// The user guide.
    Guide,
    /// About the program.
    About,
    /// Cautions.
    Cautions,
    /// Figures from outside.
    Evidence,
    /// Shortcuts.
    Shortcuts,
}

/// A short message with a way back.
#[derive(Debug, Clone)]
pub struct Toast {
    /// What happened.
    pub text: String,
    /// Whether an undo is offered.
    pub offers_undo: bool,
    /// Time of the context at which it goes.
    pub until_s: f64,
}

/// The state of the window.
pub struct State {
    /// The open study.
    pub document: Document,
    /// Preferences.
    pub prefs: Prefs,
    /// Results.
    pub board: Board,
    /// Open and save.
    pub filing: Filing,
    /// Keeps unsaved changes aside; none in a window that is not to leave any.
    pub keeping: Option<Keeping>,
    /// Drafts that were left behind and wait for a decision.
    pub left: Vec<LeftDraft>,
    /// Whether another window has the file open too.
    pub opened_twice: bool,
    /// The program's catalogues.
    pub catalogue: Arc<Catalogue>,
    /// The program's rows with the study's own.
    pub rows: Arc<Catalogue>,
    /// What is wrong.
    pub troubles: Vec<Problem>,
    /// View on show.
    pub view: View,
    /// Hour of the season under the time cursor; none until a season is there.
    pub hour: Option<usize>,
    /// Spell that the time cursor is running through.
    pub playback: Option<Playback>,
    /// Section of the editor to bring into sight.
    pub sought: Option<Section>,
    /// Whether the section of the place is to be opened.
    pub site_sought: bool,
    /// Whether a change goes to all scenarios.
    pub to_all: bool,
    /// Whether the section of the prices is to be opened.
    pub prices_sought: bool,
    /// Scenario being renamed.
    pub renaming: Option<ScenarioId>,
    /// Explanation on show.
    pub leaflet: Option<Leaflet>,
    /// How a figure was worked out.
    pub workings: Workings,
    /// Message on show.
    pub toast: Option<Toast>,
    /// Text that came from the clipboard in this frame while nothing was being typed.
    pub pasted: Option<String>,
    /// Commands given in this frame.
    pub queue: Vec<Command>,
    /// Changes of this frame.
    pub edits: Edits,
    /// Data drawn in the plots.
    pub plots: PlotShelf,
    /// Checks of every scenario.
    pub verdicts: Verdicts,
    /// What the winter view shows.
    pub winter: WinterView,
    /// What the view of the coldest nights shows.
    pub coldest: ColdestView,
    /// What hard nights do to the chosen scenario.
    pub nights: Nights,
    /// What the view side by side shows.
    pub side: SideView,
    /// What the view of air and damp shows.
    pub air_plot: AirPlot,
    /// What other air would change in the chosen scenario.
    pub air: Asked<Arc<Inputs>, AirChanges>,
    /// Where the view was drawn last.
    pub view_rect: egui::Rect,
    /// A report, picture or table that is being written.
    pub export: Option<Export>,
    /// A weather file that is being read.
    pub import: Option<Import>,
    /// What of a plot waits for the name of its file.
    pub handout: Option<Handout>,
    /// Other winters of the scenarios on show.
    pub outlook: Outlook,
    /// Which of its doubtful inputs matter to a scenario.
    pub matters: Matters,
    /// What the view of them shows.
    pub matters_view: MattersView,
    /// Inputs moved over a range.
    pub sweeps: Sweeps,
    /// What the view of them shows.
    pub sweep_view: SweepView,
    /// The chosen scenario with every combination of measures.
    pub purchases: Purchases,
    /// What the view of them shows.
    pub buy_view: BuyView,
    /// Figures of a plot on show as a table.
    pub table: Option<FiguresTable>,
    /// What else is known of the chosen scenario.
    pub insights: Insights,
    /// Text typed in the search for stations.
    pub station_search: String,
    /// Whether the window may close without a question.
    pub may_close: bool,
    /// Title last given to the window.
    pub title: String,
    worker: Option<Worker>,
    settled: u64,
}

impl State {
    /// A window on a study; `path` is its file.
    #[must_use]
    pub fn new(ctx: &egui::Context, study: Study, path: Option<PathBuf>, prefs: Prefs) -> Self {
        let catalogue = Arc::new(crate::model::catalogue_rows::bundled().clone());
        let mut state = Self {
            document: Document::new(study, path),
            board: Board::default(),
            filing: Filing::default(),
            keeping: None,
            left: Vec::new(),
            opened_twice: false,
            rows: Arc::clone(&catalogue),
            catalogue,
            troubles: Vec::new(),
            view: View::default(),
            hour: None,
            playback: None,
            sought: None,
            site_sought: false,
            to_all: false,
            prices_sought: false,
            renaming: None,
            leaflet: None,
            workings: Workings::default(),
            toast: None,
            pasted: None,
            queue: Vec::new(),
            edits: Edits::default(),
            plots: PlotShelf::default(),
            verdicts: Verdicts::default(),
            winter: WinterView::default(),
            coldest: ColdestView::default(),
            nights: Nights::default(),
            side: SideView::default(),
            air_plot: AirPlot::default(),
            air: Asked::default(),
            view_rect: egui::Rect::NOTHING,
            export: None,
            import: None,
            handout: None,
            outlook: Outlook::default(),
            matters: Matters::default(),
            matters_view: MattersView::default(),
            sweeps: Sweeps::default(),
            sweep_view: SweepView::default(),
            purchases: Purchases::default(),
            buy_view: BuyView::default(),
            table: None,
            insights: Insights::default(),
            station_search: String::new(),
            may_close: false,
            title: String::new(),
            worker: None,
            settled: 0,
            prefs,
        };
        match Worker::start(ctx) {
            Ok(worker) => state.worker = Some(worker),
            Err(error) => {
                state.filing.error = Some(format!("No thread for the calculation, results stay empty ({error})"))
            }
        }
        state
    }

    /// Shows another study.
    pub fn open(&mut self, study: Study, path: Option<PathBuf>) {
        self.show(Document::new(study, path));
    }

    /// Shows another document.
    pub fn show(&mut self, document: Document) {
        // What is still being written is written, and no longer concerns this window.
        self.filing.saving = None;
        self.document = document;
        self.opened_twice = false;
        self.board = Board::after(&self.board);
        self.hour = None;
        self.playback = None;
        self.renaming = None;
        self.import = None;
        self.outlook = Outlook::default();
        self.sweeps = Sweeps::default();
        self.purchases = Purchases::default();
        self.settled = 0;
    }

    /// Folder of the study.
    #[must_use]
    pub fn folder(&self) -> Option<PathBuf> {
        self.document.path.as_deref().and_then(Path::parent).map(Path::to_owned)
    }

    /// Takes in finished runs, and asks for new ones where the study changed.
    pub fn refresh(&mut self) {
        if self.settled != self.document.revision {
            self.let_go();
        }
        let Some(worker) = &self.worker else { return };
        self.board.take_in(worker);
        let seasons = self.document.draft.tags.iter().filter_map(|tag| Some((tag.id, self.board.season(tag.id)?.0)));
        self.verdicts.settle(seasons, &self.rows, self.prefs.units);
        if self.settled == self.document.revision {
            return;
        }
        self.settled = self.document.revision;
        let study = &self.document.draft.study;
        self.rows = Arc::new(self.catalogue.with_own(&study.own));
        self.troubles = problems(study, &self.catalogue);
        let blocked: Vec<bool> = (0..study.scenarios.len()).map(|i| self.blocked(i)).collect();
        let folder = self.document.path.as_deref().and_then(Path::parent).map(Path::to_owned);
        self.board.want(&self.document.draft, folder, &blocked, &self.catalogue, worker);
    }

    /// Asks what else is worth knowing of the chosen scenario once its figures are of today.
    pub fn look_further(&mut self, ctx: &egui::Context) {
        self.insights.take_in();
        self.air.take_in();
        self.nights.take_in();
        self.outlook.take_in();
        self.sweeps.take_in();
        self.purchases.take_in();
        let chosen =
            self.chosen_season().filter(|(season, standing)| *standing == Standing::Fresh && !season.is_empty());
        if let Some(season) = chosen.map(|(season, _)| season.clone()) {
            self.insights.ask(&season, &self.catalogue, ctx);
            if self.view == View::Air {
                self.ask_air(&season, ctx);
            }
        }
        self.attend_to_what_matters(ctx);
    }

    /// Asks what other air would change; only while that is on show, for it takes some winters.
    fn ask_air(&mut self, season: &Season, ctx: &egui::Context) {
        let (theirs, catalogue) = (season.clone(), Arc::clone(&self.catalogue));
        self.air.ask("air", Arc::clone(&season.inputs), ctx, move |progress| {
            let (study, scenario) = (&theirs.inputs.study, &theirs.inputs.scenario);
            let (climate, whole) = (&theirs.climate, &theirs.run.summary);
            air_changes(study, scenario, climate, &catalogue, whole, &|| progress.given_up()).map_err(|e| e.to_string())
        });
    }

    /// Lets go of long questions about a study that has changed since, unless their view is on show and asks anew.
    fn let_go(&mut self) {
        if self.view != View::Winters {
            self.outlook.let_go();
        }
        if self.view != View::Sweep {
            self.sweeps.let_go();
        }
        if self.view != View::Buy {
            self.purchases.let_go();
        }
    }

    /// Whether anything on show is being worked out, read or written beside the window.
    #[must_use]
    pub fn working(&self) -> bool {
        let short = self.insights.working() || self.air.working() || self.nights.working();
        let matters = self.view == View::Matters && self.matters.working();
        let long = self.outlook.working() || self.sweeps.working() || self.purchases.working() || matters;
        let files = self.export.is_some() || self.import.is_some() || self.filing.saving();
        self.board.working() || short || long || files
    }

    /// Whether a problem keeps this scenario from being run.
    #[must_use]
    pub fn blocked(&self, scenario: usize) -> bool {
        let concerns = |p: &Problem| p.scenario.is_none_or(|s| s == scenario);
        self.troubles.iter().any(|p| p.severity() == Severity::Error && concerns(p))
    }

    /// Season of the chosen scenario, and where it stands.
    #[must_use]
    pub fn chosen_season(&self) -> Option<(&Season, Standing)> {
        let tag = self.document.draft.tags.get(self.document.draft.selected())?;
        self.board.season(tag.id)
    }

    /// Checks of the chosen scenario, and where its season stands.
    #[must_use]
    pub fn chosen_checks(&self) -> Option<(Arc<Vec<Check>>, Standing)> {
        let tag = self.document.draft.tags.get(self.document.draft.selected())?;
        let (season, standing) = self.board.season(tag.id)?;
        let checks = self.verdicts.of(tag.id).filter(|_| !season.is_empty())?;
        Some((Arc::clone(checks), standing))
    }

    /// Season of the reference scenario.
    #[must_use]
    pub fn reference_season(&self) -> Option<(&Season, Standing)> {
        let tag = self.document.draft.tags.get(self.document.draft.study.reference)?;
        self.board.season(tag.id)
    }

    /// Hour under the time cursor within a season of `len` hours; at first the coldest of the chosen scenario.
    pub fn hour_within(&mut self, len: usize) -> usize {
        let start = self.chosen_season().map(|(season, _)| coldest_hour(season));
        if self.hour.is_none() {
            self.hour = start;
        }
        self.hour.unwrap_or(0).min(len.saturating_sub(1))
    }

    /// Shows a message for some seconds.
    pub fn say(&mut self, ctx: &egui::Context, text: impl Into<String>, offers_undo: bool) {
        let until_s = ctx.input(|i| i.time) + if offers_undo { 10.0 } else { 4.0 };
        self.toast = Some(Toast { text: text.into(), offers_undo, until_s });
    }
}

/// First hour of the lowest crop-zone air; the lowest outdoors while the house is held.
#[must_use]
pub fn coldest_hour(season: &Season) -> usize {
    let at = season.run.summary.crop_zone_min_at;
    let named = at.and_then(|at| (0..season.len()).find(|hour| season.stamp(*hour) == Some(at)));
    let outdoors = || {
        let outdoor = season.run.hours.outdoor_c.iter().enumerate();
        outdoor.min_by(|a, b| a.1.total_cmp(b.1)).map_or(0, |(hour, _)| hour)
    };
    named.unwrap_or_else(outdoors)
}
