//! Order of convergence of the step, and how it damps.

use crate::network::{network, run, run_each, state};
use warmfold::physics::network::Node;

#[test]
fn free_decay_converges_with_the_third_order() {
    // Alexander 1977: the method is of order 3, so halving the step divides the error by 8. The next term of the
    // expansion shifts the observed order by about the step over the time constant, here 1/36 and less: within 0.15.
    let tau_s: f64 = 36_000.0;
    let mut house = network(&[Node::Capacity(tau_s * 20.0)], &[]);
    house.add_boundary(0, 20.0, 0.0);
    let error = |step_s: f64| {
        let end = run(&house, &state(&house, &[10.0]), 20.0, step_s, &[]);
        (end.temperature_c[0] - 10.0 * (-2.0_f64).exp()).abs()
    };
    for step_s in [3600.0, 1800.0, 900.0] {
        let order = (error(step_s) / error(step_s / 2.0)).log2();
        assert!((order - 3.0).abs() < 0.15, "steps of {step_s} s: order {order}");
    }
}

#[test]
fn a_step_far_longer_than_the_time_constant_damps() {
    // L-stable: the damping factor goes to zero with 1/z. At z = 10⁴ less than a thousandth of the start is left.
    let mut house = network(&[Node::Capacity(3.6)], &[]);
    house.add_boundary(0, 10.0, 0.0);
    let end = run(&house, &state(&house, &[10.0]), 1.0, 3600.0, &[]);
    assert!(end.temperature_c[0].abs() < 0.01, "{}", end.temperature_c[0]);
}

#[test]
fn whole_hour_steps_do_not_swing() {
    // Air and 1000 kg of water, whose fast mode of 0.73 h is shorter than the step: both fall at every step.
    let mut house = network(&[Node::Capacity(0.4e6), Node::Capacity(4.186e6)], &[(0, 1, 60.0)]);
    house.add_boundary(0, 90.0, -4.0);
    let mut before = [8.0, 14.0];
    run_each(&house, &state(&house, &before), 48.0, 3600.0, &[], |step| {
        for (node, before_c) in before.iter_mut().enumerate() {
            let now_c = step.end.temperature_c[node];
            assert!(now_c < *before_c, "node {node} rises from {before_c} to {now_c}");
            *before_c = now_c;
        }
    });
}
