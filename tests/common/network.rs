//! Small helpers to build a network and step it through time.

use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{State, Step, Thermostat, advance};
use warmfold::units::SECONDS_PER_HOUR;

/// A network of these nodes and links `(a, b, W/K)`.
pub fn network(nodes: &[Node], links: &[(usize, usize, f64)]) -> Network {
    let pairs: Vec<_> = links.iter().map(|&(a, b, _)| (a, b)).collect();
    let mut network = Network::new(nodes, &pairs).expect("valid network");
    for (i, &(_, _, w_per_k)) in links.iter().enumerate() {
        let link = network.link(i).expect("link");
        network.set_link(link, w_per_k);
    }
    network
}

/// A state of these temperatures, without ice.
pub fn state(network: &Network, temperatures_c: &[f64]) -> State {
    let mut state = State::uniform(network, 0.0);
    for (to, from) in state.temperature_c.iter_mut().zip(temperatures_c) {
        *to = *from;
    }
    state
}

/// Steps through `hours` in equal steps of about `step_s`; gives the end.
pub fn run(network: &Network, start: &State, hours: f64, step_s: f64, thermostats: &[Thermostat]) -> State {
    run_each(network, start, hours, step_s, thermostats, |_| ())
}

/// As [`run`], showing each step.
pub fn run_each(
    network: &Network,
    start: &State,
    hours: f64,
    step_s: f64,
    thermostats: &[Thermostat],
    mut each: impl FnMut(&Step),
) -> State {
    let steps = (hours * SECONDS_PER_HOUR / step_s).round().max(1.0);
    let dt_s = hours * SECONDS_PER_HOUR / steps;
    let mut state = *start;
    for _ in 0..steps as usize {
        let step = advance(network, &state, dt_s, thermostats);
        each(&step);
        state = step.end;
    }
    state
}
