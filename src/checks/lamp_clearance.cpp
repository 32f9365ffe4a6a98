#include "base/closest_point.h"
#include "checks/light_checks.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <optional>
#include <utility>

namespace throwline::checks {

namespace {

/// What a lamp heats: something in its beam, or somebody there or beside it.
struct Near {
    plan::Id<plan::Beat> beat;
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

bool is_somebody(const stage::Owner& owner) {
    return owner.kind == stage::OwnerKind::cast || owner.kind == stage::OwnerKind::crew;
}

/// The nearest thing, and everybody however near that is: a thing hides nobody from the rule.
std::vector<Near> near_things(const stage::Stage& stage, const stage::PlacedLamp& lamp) {
    std::optional<Near> thing;
    std::map<int, std::optional<Near>> people;
    for (const stage::Solid& solid : stage.solids) {
        const bool own = solid.owner_index == lamp.owner;
        if (const auto place = own ? std::nullopt : nearest_place(solid, lamp)) {
            const stage::Owner& owner = stage.owners[static_cast<std::size_t>(solid.owner_index)];
            keep_nearer(is_somebody(owner) ? people[solid.owner_index] : thing,
                        {stage.beat, (*place - lamp.face).norm(), said(owner), owner.name,
                         floor_of(*place)});
        }
    }
    for (const stage::Figure& figure : stage.figures) {
        for (const Vec3& point : {figure.crown, figure.face, figure.chest}) {
            keep_nearer(people[figure.owner],
                        {stage.beat, (point - lamp.face).norm(), figure.person.name,
                         figure.person.name, floor_of(point)});
        }
    }
    std::vector<Near> near;
    if (thing) {
        near.push_back(*thing);
    }
    for (const auto& [owner, somebody] : people) {
        near.push_back(*somebody);
    }
    return near;
}

Finding too_near(const stage::PlacedLamp& lamp, const Near& near, UnitSystem units) {
    Finding finding;
    finding.check = "lamp-clearance";
    finding.severity = Severity::error;
    finding.beat = near.beat;
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

/// Lamp and thing, in the order in which they were met, at the nearest of all beats.
struct Search {
    std::map<std::pair<std::string, std::string>, std::size_t> index;
    std::vector<Finding> findings;
    std::vector<double> distances_m;
};

void keep_nearest(Search& search, const stage::PlacedLamp& lamp, const Near& near,
                  UnitSystem units) {
    const auto [at, is_new] =
        search.index.try_emplace({lamp.lamp.name, near.what}, search.findings.size());
    if (is_new) {
        search.findings.push_back(too_near(lamp, near, units));
        search.distances_m.push_back(near.distance_m);
    } else if (near.distance_m < search.distances_m[at->second]) {
        search.findings[at->second] = too_near(lamp, near, units);
        search.distances_m[at->second] = near.distance_m;
    }
}

void look(Search& search, const stage::Stage& stage, UnitSystem units) {
    for (const stage::PlacedLamp& lamp : stage.lamps) {
        if (lamp.instrument->clearance <= Length{}) {
            continue;
        }
        for (const Near& near : near_things(stage, lamp)) {
            if (near.distance_m < lamp.instrument->clearance.m()) {
                keep_nearest(search, lamp, near, units);
            }
        }
    }
}

} // namespace

std::vector<Finding> lamp_clearance(const CheckInput& input, const std::stop_token& stop) {
    Search search;
    for (const BeatScene& beat : input.beats) {
        if (!stop.stop_requested()) {
            look(search, beat.stage, input.plan.units);
        }
    }
    return std::move(search.findings);
}

} // namespace throwline::checks
