#include "base/length_text.h"
#include "checks/circuit_sum.h"
#include "checks/power_checks.h"
#include "checks/wording.h"

#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Where to look: the first outlet, else the middle of the lamps.
Vec2 place_of(const plan::Circuit& circuit, const CircuitSum& load, const plan::Plan& plan) {
    if (!circuit.outlets.empty()) {
        return circuit.outlets.front();
    }
    Vec2 sum = Vec2::Zero();
    for (const plan::Lamp* lamp : load.lamps) {
        if (const std::optional<Vec3> point = plan::lamp_point(plan, *lamp)) {
            sum += floor_of(*point);
        }
    }
    return load.lamps.empty() ? sum : Vec2{sum / static_cast<double>(load.lamps.size())};
}

Working working_of(const plan::Circuit& circuit, const CircuitSum& load, double most_a) {
    return {"I = sum of P / (V pf); allowed = breaker x "
                + fixed(circuit.continuous ? kContinuousShare : 1.0, 2),
            {{"P", "load of " + counted(static_cast<int>(load.lamps.size()), "lamp") + " at full",
              fixed(load.power_w, 0) + " W"},
             {"V", "supply", fixed(circuit.volts, 0) + " V"},
             {"", "breaker", shortest(circuit.breaker_amps) + " A"},
             {"", "allowed", fixed(most_a, 1) + " A"}},
            fixed(load.current_a, 2) + " A",
            "P = V I pf; continuous loads to 80 % of the breaker: NFPA 70 210.20(A), from code "
            "summaries. Local code and a licensed electrician decide."};
}

std::optional<Finding> judged(const plan::Circuit& circuit, const CheckInput& input) {
    const CircuitSum load = sum_of(circuit, input.plan, input.catalogue);
    const double most_a = allowed_a(circuit);
    if (load.current_a <= most_a + kCurrentRounding_a) {
        return std::nullopt;
    }
    const bool trips = load.current_a > circuit.breaker_amps + kCurrentRounding_a;
    Finding finding;
    finding.check = "circuit-load";
    finding.severity = Severity::error;
    finding.things = {circuit.id.name};
    for (const plan::Lamp* lamp : load.lamps) {
        finding.things.push_back(lamp->id.name);
    }
    finding.at = place_of(circuit, load, input.plan);
    finding.weight = load.current_a / circuit.breaker_amps;
    finding.message = capitalised(fmt::format(
        "{} would carry {} A ({} W) from {} on a {} A breaker, {}.", said(circuit.id),
        fixed(load.current_a, 1), fixed(load.power_w, 0),
        counted(static_cast<int>(load.lamps.size()), "lamp"), shortest(circuit.breaker_amps),
        trips ? "more than the breaker holds"
              : "over the " + fixed(most_a, 1) + " A planned for loads that stay on"));
    finding.working = working_of(circuit, load, most_a);
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
