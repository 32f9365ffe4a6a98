#include "base/length_text.h"
#include "checks/power_checks.h"

#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Protection for at least 125 % of a continuous load means planning to 80 % of the breaker.
/// NFPA 70 (NEC) 210.20(A), from code summaries.
constexpr double kContinuousShare = 0.8;

struct Load {
    double watts = 0.0;
    double amps = 0.0;
    std::vector<std::string> lamps;
    Vec2 at = Vec2::Zero();
};

Load load_of(const plan::Circuit& circuit, const CheckInput& input) {
    Load load;
    for (const plan::Lamp& lamp : input.plan.lamps) {
        const catalogue::Instrument* instrument = input.catalogue.instrument(lamp.instrument);
        if (lamp.circuit != circuit.id || instrument == nullptr) {
            continue;
        }
        load.watts += instrument->watts;
        load.amps += instrument->watts / (circuit.volts * instrument->power_factor);
        load.lamps.push_back(lamp.id.name);
        if (const std::optional<Vec3> point = plan::lamp_point(input.plan, lamp)) {
            load.at += floor_of(*point);
        }
    }
    if (!circuit.outlets.empty()) {
        load.at = circuit.outlets.front();
    } else if (!load.lamps.empty()) {
        load.at /= static_cast<double>(load.lamps.size());
    }
    return load;
}

Working working_of(const plan::Circuit& circuit, const Load& load, double allowed_a) {
    return {"I = sum of P / (V pf); allowed = breaker x "
                + fixed(circuit.continuous ? 0.8 : 1.0, 2),
            {{"P", "load of " + std::to_string(load.lamps.size()) + " lamps at full",
              fixed(load.watts, 0) + " W"},
             {"V", "supply", fixed(circuit.volts, 0) + " V"},
             {"", "breaker", fixed(circuit.breaker_amps, 1) + " A"},
             {"", "allowed", fixed(allowed_a, 1) + " A"}},
            fixed(load.amps, 2) + " A",
            "P = V I pf; continuous loads to 80 % of the breaker: NFPA 70 210.20(A), from code "
            "summaries. Local code and a licensed electrician decide."};
}

std::optional<Finding> judged(const plan::Circuit& circuit, const CheckInput& input) {
    const Load load = load_of(circuit, input);
    const double allowed_a = circuit.breaker_amps * (circuit.continuous ? kContinuousShare : 1.0);
    if (load.amps <= allowed_a) {
        return std::nullopt;
    }
    const bool trips = load.amps > circuit.breaker_amps;
    Finding finding;
    finding.check = "circuit-load";
    finding.severity = trips || circuit.continuous ? Severity::error : Severity::caution;
    finding.things = {circuit.id.name};
    finding.things.insert(finding.things.end(), load.lamps.begin(), load.lamps.end());
    finding.at = load.at;
    finding.weight = load.amps / circuit.breaker_amps;
    finding.message = fmt::format(
        "Circuit {} would carry {} A ({} W) from {} lamps on a {} A breaker, {}.", circuit.id.name,
        fixed(load.amps, 1), fixed(load.watts, 0), load.lamps.size(),
        fixed(circuit.breaker_amps, 0),
        trips ? "more than the breaker holds"
              : "over the " + fixed(allowed_a, 1) + " A planned for loads that stay on");
    finding.working = working_of(circuit, load, allowed_a);
    return finding;
}

Finding without_circuit(const std::vector<std::string>& lamps) {
    Finding finding;
    finding.check = "circuit-load";
    finding.severity = Severity::note;
    finding.things = lamps;
    finding.message =
        fmt::format("{} of the lamps {} on no circuit, so their load is counted nowhere.",
                    lamps.size(), lamps.size() == 1 ? "is" : "are");
    finding.working = {
        "lamps whose circuit is empty", {}, std::to_string(lamps.size()) + " lamps", "plain count"};
    return finding;
}

} // namespace

std::vector<Finding> circuit_load(const CheckInput& input, std::stop_token) {
    std::vector<Finding> findings;
    for (const plan::Circuit& circuit : input.plan.circuits) {
        if (std::optional<Finding> finding = judged(circuit, input)) {
            findings.push_back(std::move(*finding));
        }
    }
    std::vector<std::string> loose;
    for (const plan::Lamp& lamp : input.plan.lamps) {
        if (lamp.circuit.empty() && !input.plan.circuits.empty()) {
            loose.push_back(lamp.id.name);
        }
    }
    if (!loose.empty()) {
        findings.push_back(without_circuit(loose));
    }
    return findings;
}

} // namespace throwline::checks
