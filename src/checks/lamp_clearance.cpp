#include "checks/light_checks.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <optional>
#include <set>

namespace throwline::checks {

namespace {

/// The nearest thing that a lamp heats: what stands in its beam, or somebody beside it.
struct Near {
    double distance_m = 0.0;
    std::string what;
    Vec2 at = Vec2::Zero();
};

/// The axis and a ring of directions at half the beam: what the bright face looks at.
std::vector<Vec3> beam_directions(const stage::PlacedLamp& lamp) {
    std::vector<Vec3> directions{lamp.axis};
    constexpr double kWidest_rad = 1.2;
    const double half_rad = std::min(lamp.beam.beam.rad() / 2.0, kWidest_rad);
    for (int i = 0; i < 8; ++i) {
        const Vec2 ring = unit_at(std::numbers::pi * i / 4.0);
        directions.push_back((lamp.axis * std::cos(half_rad)
                              + (lamp.right * ring.x() + lamp.up * ring.y()) * std::sin(half_rad))
                                 .normalized());
    }
    return directions;
}

void keep_nearer(std::optional<Near>& nearest, Near candidate) {
    if (!nearest || candidate.distance_m < nearest->distance_m) {
        nearest = std::move(candidate);
    }
}

std::optional<Near> nearest_thing(const stage::Stage& stage, const stage::PlacedLamp& lamp) {
    std::optional<Near> nearest;
    const double clearance_m = lamp.instrument->clearance.m();
    for (const Vec3& direction : beam_directions(lamp)) {
        if (const auto hit =
                stage.rays->nearest_hit(lamp.face, direction, clearance_m, {lamp.owner, -1})) {
            const stage::Owner& owner = stage.owners[static_cast<std::size_t>(hit->owner)];
            keep_nearer(nearest, {hit->distance_m, said(owner),
                                  floor_of(lamp.face + direction * hit->distance_m)});
        }
    }
    for (const stage::Figure& figure : stage.figures) {
        for (const Vec3& point : {figure.crown, figure.face, figure.chest}) {
            keep_nearer(nearest, {(point - lamp.face).norm(), figure.person.name, floor_of(point)});
        }
    }
    return nearest;
}

Finding too_near(const stage::PlacedLamp& lamp, const Near& near, UnitSystem units) {
    Finding finding;
    finding.check = "lamp-clearance";
    finding.severity = Severity::error;
    finding.things = {lamp.lamp.name, near.what};
    finding.at = near.at;
    finding.weight = 1.0 + 1.0 - near.distance_m / lamp.instrument->clearance.m();
    finding.message = capitalised(
        fmt::format("{} is {} from {}; its kind asks for {}. The maker's instructions decide.",
                    said(lamp.lamp), shown(Length::metres(near.distance_m), units), near.what,
                    shown(lamp.instrument->clearance, units)));
    finding.working = {
        "distance from the bright face, along its beam or to a person",
        {{"", "clearance of " + lamp.instrument->name, shown(lamp.instrument->clearance, units)}},
        shown(Length::metres(near.distance_m), units),
        lamp.instrument->source + "; the maker's instructions decide"};
    return finding;
}

void look(std::vector<Finding>& findings, std::set<std::string>& said, const stage::Stage& stage,
          UnitSystem units, const plan::Id<plan::Beat>& beat) {
    for (const stage::PlacedLamp& lamp : stage.lamps) {
        if (lamp.instrument->clearance <= Length{}) {
            continue;
        }
        const std::optional<Near> near = nearest_thing(stage, lamp);
        if (near && near->distance_m < lamp.instrument->clearance.m()
            && said.insert(lamp.lamp.name + "|" + near->what).second) {
            findings.push_back(too_near(lamp, *near, units));
            findings.back().beat = beat;
        }
    }
}

} // namespace

std::vector<Finding> lamp_clearance(const CheckInput& input, std::stop_token stop) {
    std::vector<Finding> findings;
    std::set<std::string> said;
    for (const BeatScene& beat : input.beats) {
        if (!stop.stop_requested()) {
            look(findings, said, beat.stage, input.plan.units, beat.beat->id);
        }
    }
    return findings;
}

} // namespace throwline::checks
