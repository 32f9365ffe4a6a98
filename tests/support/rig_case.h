#pragma once

#include "support/check_case.h"

#include <string>

/// A room with circuits, pipes and lamps of round figures.
namespace throwline::support {

/// The test catalogue with lamps "one kilowatt" (1000 W, power factor 1, 10 kg) and "led lamp"
/// (570 W, power factor 0.95, 4 kg).
const catalogue::Catalogue& rig_catalogue();

/// A circuit without outlets, for loads that stay on.
plan::Circuit& put_circuit(plan::Plan& plan, const std::string& name, double volts,
                           double breaker_amps);
/// A grid of 4 by 3 points 2 m apart from (1, 1), 3.5 m high, with unknown limits.
plan::Grid& put_grid(plan::Plan& plan, plan::PipeRun run);
/// A pipe of 6 m along x at y = 7 and 3.5 m high.
plan::Pipe& put_pipe(plan::Plan& plan, const std::string& name, double load_kg);

/// A lamp at a grid position, on no circuit.
plan::Lamp& hang_on_grid(plan::Plan& plan, const std::string& name, const std::string& position,
                         const std::string& instrument = "one kilowatt");
/// A lamp on a pipe so far from its start, on no circuit.
plan::Lamp& hang_on_pipe(plan::Plan& plan, const std::string& name, const std::string& pipe,
                         double along_m, const std::string& instrument = "one kilowatt");
/// A lamp on a stand in a free corner, on a circuit.
plan::Lamp& plug_in(plan::Plan& plan, const std::string& name, const std::string& circuit,
                    const std::string& instrument = "one kilowatt");

/// What a check says about a plan with the lamps.
std::vector<checks::Finding> rig_findings(CheckFunction check, const plan::Plan& plan);

} // namespace throwline::support
