#include "base/length_text.h"
#include "checks/power_checks.h"
#include "checks/wording.h"

#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Protection for at least 125 % of a continuous load means planning to 80 % of the breaker.
/// NFPA 70 (NEC) 210.20(A), from code summaries.
constexpr double kContinuousShare = 0.8;
/// Sums of quotients stray from a limit that they meet by no more than this.
constexpr double kRounding_a = 1e-9;

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
            {{"P", "load of " + counted(static_cast<int>(load.lamps.size()), "lamp") + " at full",
              fixed(load.watts, 0) + " W"},
             {"V", "supply", fixed(circuit.volts, 0) + " V"},
             {"", "breaker", shortest(circuit.breaker_amps) + " A"},
             {"", "allowed", fixed(allowed_a, 1) + " A"}},
            fixed(load.amps, 2) + " A",
            "P = V I pf; continuous loads to 80 % of the breaker: NFPA 70 210.20(A), from code "
            "summaries. Local code and a licensed electrician decide."};
}

std::optional<Finding> judged(const plan::Circuit& circuit, const CheckInput& input) {
    const Load load = load_of(circuit, input);
    const double allowed_a = circuit.breaker_amps * (circuit.continuous ? kContinuousShare : 1.0);
    if (load.amps <= allowed_a + kRounding_a) {
        return std::nullopt;
    }
    const bool trips = load.amps > circuit.breaker_amps + kRounding_a;
    Finding finding;
    finding.check = "circuit-load";
    finding.severity = Severity::error;
    finding.things = {circuit.id.name};
    finding.things.insert(finding.things.end(), load.lamps.begin(), load.lamps.end());
    finding.at = load.at;
    finding.weight = load.amps / circuit.breaker_amps;
    finding.message = capitalised(fmt::format(
        "{} would carry {} A ({} W) from {} on a {} A breaker, {}.", said(circuit.id),
        fixed(load.amps, 1), fixed(load.watts, 0),
        counted(static_cast<int>(load.lamps.size()), "lamp"), shortest(circuit.breaker_amps),
        trips ? "more than the breaker holds"
              : "over the " + fixed(allowed_a, 1) + " A planned for loads that stay on"));
    finding.working = working_of(circuit, load, allowed_a);
    return finding;
}

/// A note about all lamps on no circuit; nothing when there are none.
std::optional<Finding> without_circuit(const plan::Plan& plan) {
    Finding finding;
    int points = 0;
    for (const plan::Lamp& lamp : plan.lamps) {
        if (!lamp.circuit.empty()) {
            continue;
        }
        finding.things.push_back(lamp.id.name);
        if (const std::optional<Vec3> point = plan::lamp_point(plan, lamp)) {
            finding.at += (floor_of(*point) - finding.at) / ++points;
        }
    }
    const int lamps = static_cast<int>(finding.things.size());
    if (lamps == 0) {
        return std::nullopt;
    }
    finding.check = "circuit-load";
    finding.severity = Severity::note;
    finding.message = fmt::format("{} on no circuit, so {} load is counted nowhere.",
                                  counted(lamps, "lamp") + (lamps == 1 ? " is" : " are"),
                                  lamps == 1 ? "its" : "their");
    finding.working = {"lamps whose circuit is empty", {}, counted(lamps, "lamp"), "plain count"};
    return finding;
}

} // namespace

std::vector<Finding> circuit_load(const CheckInput& input, const std::stop_token&) {
    std::vector<Finding> findings;
    for (const plan::Circuit& circuit : input.plan.circuits) {
        if (std::optional<Finding> finding = judged(circuit, input)) {
            findings.push_back(std::move(*finding));
        }
    }
    if (input.plan.circuits.empty()) {
        return findings;
    }
    if (std::optional<Finding> loose = without_circuit(input.plan)) {
        findings.push_back(std::move(*loose));
    }
    return findings;
}

} // namespace throwline::checks
