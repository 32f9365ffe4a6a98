/// What a production amounts to.

#include "base/polygon.h"
#include "base/words.h"
#include "card/card_kinds.h"
#include "checks/circuit_sum.h"
#include "checks/wording.h"

#include <fmt/format.h>

namespace throwline::card {

namespace {

std::string counted_parts(const plan::Plan& plan) {
    std::vector<std::string> parts;
    const auto add = [&](std::size_t count, std::string_view noun) {
        if (count > 0) {
            parts.push_back(counted(static_cast<int>(count), noun));
        }
    };
    add(plan.beats.size(), "beat");
    add(plan.shots.size(), "shot");
    add(plan.cameras.size(), "camera");
    add(plan.lamps.size(), "lamp");
    add(plan.booms.size(), "boom");
    add(plan.scenery.size(), "set piece");
    return parts.empty() ? "Nothing on the floor yet" : listed(parts);
}

Figure power_figure(const CardInput& input) {
    double watts = 0.0;
    std::vector<WorkingTerm> terms;
    for (const plan::Circuit& circuit : input.context.plan.circuits) {
        const checks::CircuitSum sum =
            checks::sum_of(circuit, input.context.plan, input.context.catalogue);
        watts += sum.power_w;
        terms.push_back(
            {"", checks::said(circuit.id),
             fmt::format("{} W, {} of {} A", fixed(sum.power_w, 0), fixed(sum.current_a, 1),
                         fixed(checks::allowed_a(circuit), 1))});
    }
    const std::string value = fixed(watts / 1000.0, 2) + " kW";
    return {"power", "Power of all circuits", value, [terms, value] {
                return Working{"power = sum over the circuits of their lamps at full", terms, value,
                               "the catalogue's lamps; local code and licensed people decide"};
            }};
}

Figure area_figure(const CardInput& input) {
    const plan::Plan& plan = input.context.plan;
    const double area_m2 = area(plan.room.outline);
    const std::string value = checks::area_text(area_m2, plan.units);
    const std::size_t corners = plan.room.outline.size();
    return {"floor_area", "Floor of the room", value, [value, corners] {
                return Working{"area = half the sum of x y' - x' y over the corners",
                               {{"", "corners", std::to_string(corners)}},
                               value,
                               "plain geometry"};
            }};
}

} // namespace

void production_figures(Card& card, const CardInput& input) {
    const plan::Plan& plan = input.context.plan;
    say(card, {counted_parts(plan) + "."});
    std::vector<Piece> pieces;
    if (!plan.room.outline.empty()) {
        pieces = {"A floor of ", area_figure(input)};
    }
    if (!plan.circuits.empty()) {
        pieces.emplace_back(pieces.empty() ? "Lamps of " : "; lamps of ");
        pieces.emplace_back(power_figure(input));
        pieces.emplace_back(" on " + counted(static_cast<int>(plan.circuits.size()), "circuit"));
    }
    if (!pieces.empty()) {
        pieces.emplace_back(".");
        say(card, std::move(pieces));
    }
}

} // namespace throwline::card
