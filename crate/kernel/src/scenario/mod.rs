//! A scenario: one chain and what is asked about it.
//!
//! Either side of the boundary fills one [`Value`] tree; [`Scenario::read`] is the only reader of
//! raw numbers. It gathers every fault with its full path, so that a person mends a file once.

mod chance;
mod corner;
mod drive;
mod fields;
mod grade;
mod lesson;
mod range;
mod section;
mod stated;
mod value;
mod wear;
mod width;

pub use chance::{Band, Cost, Demand, Limit, Matching};
pub use corner::Corner;
pub use drive::{Drive, Motion, Pull};
pub use grade::{deviations_mm, tolerance_mm};
pub use lesson::{Ask, Step};
pub use section::{Friction, Load, Reach, Sampling, Surface, Wheels};
pub use stated::StatedChain;
pub use value::Value;
pub use wear::Wear;
pub use width::Width;

use crate::chain::Dimension;
use crate::error::{Error, Given, Rule};
use fields::{Faults, Fields, item_path};
use range::Range;
pub use section::DEFAULT_TENSION_N;

/// The format that is read and written.
pub const FORMAT: u32 = 1;

/// One teachable situation. A section that its file leaves out is none or empty.
#[derive(Debug, Clone, PartialEq)]
pub struct Scenario {
    /// What it is called.
    pub title: String,
    /// One or two sentences.
    pub about: String,
    /// Where the dimensions come from, and what is chosen.
    pub source: String,
    /// The chain.
    pub chain: StatedChain,
    /// What pulls at it.
    pub load: Option<Load>,
    /// How it moves.
    pub motion: Option<Motion>,
    /// The drive that it runs in.
    pub drive: Option<Drive>,
    /// The limits of its dimensions.
    pub limits: Vec<Limit>,
    /// What its quantities must lie between.
    pub demands: Vec<Demand>,
    /// Parts that are sorted and paired.
    pub matching: Option<Matching>,
    /// What tolerances cost.
    pub cost: Vec<Cost>,
    /// How chance is sampled.
    pub sampling: Option<Sampling>,
    /// How far it has worn.
    pub wear: Option<Wear>,
    /// How narrow it is to be.
    pub width: Option<Width>,
    /// What is to get in.
    pub reach: Option<Reach>,
    /// Its surface.
    pub surface: Option<Surface>,
    /// The steps of its lesson.
    pub lesson: Vec<Step>,
}

impl Scenario {
    /// Reads a scenario.
    ///
    /// # Errors
    /// Every fault of the file, each with its full path; at most a hundred.
    pub fn read(value: &Value) -> Result<Self, Vec<Error>> {
        let faults = Faults::default();
        let scenario = Fields::of(value, "", &faults, Self::read_members).flatten();
        let mut faults = faults.into_all();
        if let Some(scenario) = scenario.filter(|_| faults.is_empty()) {
            faults = faults_of_steps(value, &scenario.lesson);
            if faults.is_empty() {
                return Ok(scenario);
            }
        }
        Err(faults)
    }

    /// The same scenario with another value at a path such as `chain.bore_mm`.
    ///
    /// # Errors
    /// Every fault that the change makes.
    pub fn with(&self, path: &str, value: Value) -> Result<Self, Vec<Error>> {
        let mut whole = self.write();
        whole.put(path, value);
        Self::read(&whole)
    }

    /// The file of this scenario: reading it gives the same scenario.
    pub fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_number("format", FORMAT.into());
        whole.put_text("title", &self.title);
        whole.put_text("about", &self.about);
        whole.put_text("source", &self.source);
        whole.put("chain", self.chain.write());
        put_section(&mut whole, "load", self.load.as_ref().map(Load::write));
        put_section(&mut whole, "motion", self.motion.as_ref().map(Motion::write));
        put_section(&mut whole, "drive", self.drive.as_ref().map(Drive::write));
        put_list(&mut whole, "limits", self.limits.iter().map(Limit::write));
        put_list(&mut whole, "demands", self.demands.iter().map(Demand::write));
        put_section(&mut whole, "matching", self.matching.as_ref().map(Matching::write));
        put_list(&mut whole, "cost", self.cost.iter().map(Cost::write));
        put_section(&mut whole, "sampling", self.sampling.as_ref().map(Sampling::write));
        put_section(&mut whole, "wear", self.wear.as_ref().map(Wear::write));
        put_section(&mut whole, "width", self.width.as_ref().map(Width::write));
        put_section(&mut whole, "reach", self.reach.as_ref().map(Reach::write));
        put_section(&mut whole, "surface", self.surface.as_ref().map(Surface::write));
        put_list(&mut whole, "lesson", self.lesson.iter().map(Step::write));
        whole
    }

    /// Reads every member; none when there can be no scenario for want of a chain.
    fn read_members(fields: &mut Fields) -> Option<Self> {
        let format = f64::from(FORMAT);
        fields.number("format", Range::whole(format, format), None);
        let title = fields.required_text("title");
        let (about, source) = (fields.text("about"), fields.text("source"));
        let chain = read_chain(fields);
        let load = fields.section("load", Load::read);
        let tension_n = load.map_or(DEFAULT_TENSION_N, |load| load.tension_n);
        let motion = fields.section("motion", Motion::read);
        let sizes = chain.as_ref().map(|chain| *chain.chain().sizes());
        let drive = fields.section("drive", |drive| Drive::read(drive, tension_n, sizes.as_ref()));
        let limits = fields.each("limits", |limit| Limit::read(limit, sizes.as_ref()));
        refuse_repeated(fields, "limits", limits.iter().map(|limit| limit.dimension));
        corner::refuse_impossible(fields, sizes.as_ref(), &limits);
        let demands = fields.each("demands", Demand::read);
        if demands.iter().any(Demand::needs_drive) && !fields.is_given("drive") {
            fields.missing("drive");
        }
        let matching = fields.section("matching", Matching::read);
        let cost = fields.each("cost", Cost::read);
        refuse_repeated(fields, "cost", cost.iter().map(|cost| cost.dimension));
        let sampling = fields.section("sampling", Sampling::read);
        let wear = fields.section("wear", |wear| Wear::read(wear, sizes.as_ref()));
        let width = fields.section("width", |width| Width::read(width, sizes.as_ref()));
        let reach = fields.section("reach", Reach::read);
        let surface = fields.section("surface", Surface::read);
        let lesson = fields.each("lesson", Step::read);
        #[rustfmt::skip]
        let scenario = Self {
            title, about, source, chain: chain?, load, motion, drive, limits, demands, matching, cost,
            sampling, wear, width, reach, surface, lesson,
        };
        Some(scenario)
    }
}

/// The chain, which must be there.
fn read_chain(fields: &mut Fields) -> Option<StatedChain> {
    let value = fields.required("chain")?;
    Fields::of(value, "chain", fields.faults(), StatedChain::read)?
}

/// Refuses a dimension that a list names twice. Items with faults of their own are left alone.
fn refuse_repeated(fields: &Fields, list: &str, named: impl Iterator<Item = Dimension>) {
    if fields.has_fault(list) {
        return;
    }
    let mut seen = Vec::new();
    for (i, dimension) in named.enumerate() {
        if seen.contains(&dimension) {
            let name = Given::Text(dimension.key().to_owned());
            fields.fault(&[&item_path(list, i), ".dimension"].concat(), name, Rule::Repeated);
        }
        seen.push(dimension);
    }
}

/// What is wrong with the scenarios that the steps of a lesson lead to, one after the other.
fn faults_of_steps(value: &Value, steps: &[Step]) -> Vec<Error> {
    let mut whole = value.clone();
    whole.put("lesson", Value::Null);
    for (i, step) in steps.iter().enumerate() {
        for (path, value) in &step.set {
            whole.put(path, value.clone());
        }
        if let Err(faults) = Scenario::read(&whole) {
            let section = [&item_path("lesson", i), ".set"].concat();
            return faults.into_iter().map(|fault| fault.within(&section)).collect();
        }
    }
    Vec::new()
}

/// A section that is written only where there is one.
fn put_section(whole: &mut Value, key: &str, section: Option<Value>) {
    if let Some(section) = section {
        whole.put(key, section);
    }
}

/// A list that is written only when it holds something.
fn put_list(whole: &mut Value, key: &str, items: impl ExactSizeIterator<Item = Value>) {
    if items.len() > 0 {
        whole.put(key, Value::List(items.collect()));
    }
}

#[cfg(test)]
pub(crate) mod sample;
#[cfg(test)]
mod tests;
