#include "base/closest_point.h"
#include "checks/light_checks.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <optional>
#include <set>

namespace throwline::checks {

namespace {

/// The nearest thing that a lamp heats: what stands in its beam, or somebody beside it.
struct Near {
    double distance_m = 0.0;
    std::string what;
    std::string name;
    Vec2 at = Vec2::Zero();
};

void keep_nearer(std::optional<Near>& nearest, Near candidate) {
    if (!nearest || candidate.distance_m < nearest->distance_m) {
        nearest = std::move(candidate);
    }
}

/// How far off its axis a bright face still heats what it looks at: all of its beam, and never less
/// than a cone of 60 degrees (common practice, no source).
Angle heated_half_angle(const stage::PlacedLamp& lamp) {
    return std::clamp(lamp.beam.beam / 2.0, Angle::degrees(30), Angle::degrees(80));
}

/// The nearest place of a solid that a bright face looks at.
std::optional<Vec3> nearest_place(const stage::Solid& solid, const stage::PlacedLamp& lamp) {
    const double least_cosine = std::cos(heated_half_angle(lamp).rad());
    std::optional<Vec3> nearest;
    for (const auto& [a, b, c] : solid.mesh.triangles) {
        const Vec3 place = closest_on_triangle(lamp.face, solid.mesh.vertices[a],
                                               solid.mesh.vertices[b], solid.mesh.vertices[c]);
        const Vec3 towards = place - lamp.face;
        const bool heated = towards.dot(lamp.axis) >= least_cosine * towards.norm();
        if (heated && (!nearest || towards.norm() < (*nearest - lamp.face).norm())) {
            nearest = place;
        }
    }
    return nearest;
}

std::optional<Near> nearest_thing(const stage::Stage& stage, const stage::PlacedLamp& lamp) {
    std::optional<Near> nearest;
    for (const stage::Solid& solid : stage.solids) {
        const bool own = solid.owner_index == lamp.owner;
        if (const auto place = own ? std::nullopt : nearest_place(solid, lamp)) {
            const stage::Owner& owner = stage.owners[static_cast<std::size_t>(solid.owner_index)];
            keep_nearer(nearest,
                        {(*place - lamp.face).norm(), said(owner), owner.name, floor_of(*place)});
        }
    }
    for (const stage::Figure& figure : stage.figures) {
        for (const Vec3& point : {figure.crown, figure.face, figure.chest}) {
            keep_nearer(nearest, {(point - lamp.face).norm(), figure.person.name,
                                  figure.person.name, floor_of(point)});
        }
    }
    return nearest;
}

Finding too_near(const stage::PlacedLamp& lamp, const Near& near, UnitSystem units) {
    Finding finding;
    finding.check = "lamp-clearance";
    finding.severity = Severity::error;
    finding.things = {lamp.lamp.name, near.name};
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
