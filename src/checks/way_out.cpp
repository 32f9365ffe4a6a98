#include "checks/floor_checks.h"
#include "checks/occupants.h"
#include "checks/opening_place.h"
#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace throwline::checks {

namespace {

/// How deep into the room the approach to a way out is kept clear: a person with a load turns in it
/// (common practice, no source).
constexpr double kApproach_m = 1.2;
/// A tape reads a gap no finer than this.
constexpr double kTapeSlack_m = 0.005;

/// People walk away by themselves, so they do not narrow a way out; what stands does.
bool stands_still(const Occupant& thing) {
    switch (thing.takes) {
    case Takes::standing_person:
    case Takes::seated_person:
    case Takes::lying_person:
    case Takes::camera_operator:
    case Takes::boom_operator:
        return false;
    case Takes::flat:
    case Takes::drape:
    case Takes::platform:
    case Takes::seat:
    case Takes::table:
    case Takes::furniture:
    case Takes::camera_support:
    case Takes::lamp_stand:
        return true;
    }
    return true;
}

/// The part of an opening's width that something in front of it takes, metres along the wall.
struct Taken {
    double from_m = 0.0;
    double to_m = 0.0;
    std::string by;
};

Polygon approach(const OpeningPlace& place) {
    const Vec2 deep = place.inward * kApproach_m;
    return {place.start, place.end, place.end + deep, place.start + deep};
}

std::vector<Taken> taken_of(const OpeningPlace& place, const plan::Opening& opening,
                            const std::vector<Occupant>& things) {
    std::vector<Taken> all;
    const Polygon clear = approach(place);
    for (const Occupant& thing : things) {
        if (!stands_still(thing) || thing.bottom_z_m >= opening.head.m()
            || thing.top_z_m < kHeightSlack_m) {
            continue;
        }
        for (const Polygon& part : parts_shared(clear, thing.outline)) {
            Taken taken{place.width_m, 0.0, thing.name};
            for (const Vec2& corner : part) {
                const double along_m = (corner - place.start).dot(place.along);
                taken.from_m = std::min(taken.from_m, along_m);
                taken.to_m = std::max(taken.to_m, along_m);
            }
            all.push_back(std::move(taken));
        }
    }
    std::sort(all.begin(), all.end(),
              [](const Taken& a, const Taken& b) { return a.from_m < b.from_m; });
    return all;
}

double widest_gap_m(double width_m, const std::vector<Taken>& taken) {
    double widest = 0.0;
    double reached = 0.0;
    for (const Taken& part : taken) {
        widest = std::max(widest, part.from_m - reached);
        reached = std::max(reached, part.to_m);
    }
    return std::max(widest, width_m - reached);
}

std::vector<std::string> names_of(const std::vector<Taken>& taken) {
    std::vector<std::string> names;
    for (const Taken& part : taken) {
        if (std::find(names.begin(), names.end(), part.by) == names.end()) {
            names.push_back(part.by);
        }
    }
    return names;
}

Finding narrowed(const CheckInput& input, const plan::Opening& opening, const OpeningPlace& place,
                 const std::vector<Taken>& taken, double gap_m) {
    const UnitSystem units = input.plan.units;
    const std::vector<std::string> names = names_of(taken);
    Finding finding;
    finding.check = "way-out";
    finding.severity = Severity::error;
    finding.things = {opening.id.name};
    finding.things.insert(finding.things.end(), names.begin(), names.end());
    finding.at = place.middle() + place.inward * (kApproach_m / 2.0);
    finding.weight = 1.0 + 1.0 - gap_m / place.width_m;
    finding.message = capitalised(fmt::format("The way out {} is narrowed to {} by {}; the venue "
                                              "and local code say what must stay clear.",
                                              opening.id.name, shown(Length::metres(gap_m), units),
                                              listed(names)));
    finding.working = {
        "clear width = widest gap along the opening, over the approach in front of it",
        {{"", "opening", shown(opening.width, units)},
         {"", "approach", shown(Length::metres(kApproach_m), units) + " deep"},
         {"", "asked for",
          shown(std::min(input.plan.targets.way_out_width, opening.width), units)}},
        shown(Length::metres(gap_m), units),
        "common practice, no source; local code and the venue decide"};
    return finding;
}

/// When a stage is looked at.
struct Moment {
    const stage::Stage& stage;
    plan::Id<plan::Shot> shot;
    plan::Id<plan::Beat> beat;
};

std::vector<Occupant> everything_on(const CheckInput& input, const stage::Stage& stage) {
    std::vector<Occupant> things = scenery_occupants(stage, input.plan, input.catalogue);
    for (Occupant& thing : moving_occupants(stage, input.plan, input.catalogue)) {
        things.push_back(std::move(thing));
    }
    return things;
}

/// What the same things leave of each way out, at its worst.
using WorstByThings = std::map<std::vector<std::string>, Finding>;

void look(WorstByThings& worst, const CheckInput& input, const plan::Opening& opening,
          const Moment& when) {
    const OpeningPlace place = place_of(input.plan.room, opening);
    const std::vector<Taken> taken = taken_of(place, opening, everything_on(input, when.stage));
    const double gap_m = widest_gap_m(place.width_m, taken);
    const double asked_m = std::min(input.plan.targets.way_out_width.m(), opening.width.m());
    if (gap_m >= asked_m - kTapeSlack_m) {
        return;
    }
    Finding finding = narrowed(input, opening, place, taken, gap_m);
    finding.shot = when.shot;
    finding.beat = when.beat;
    const auto [told, is_new] = worst.try_emplace(finding.things, finding);
    if (!is_new && finding.weight > told->second.weight) {
        told->second = std::move(finding);
    }
}

} // namespace

std::vector<Finding> way_out(const CheckInput& input, const std::stop_token& stop) {
    WorstByThings worst;
    for (const plan::Opening& opening : input.plan.room.openings) {
        if (!opening.way_out || stop.stop_requested()) {
            continue;
        }
        for (const BeatScene& beat : input.beats) {
            look(worst, input, opening, {beat.stage, {}, {}});
        }
        for (const ShotScene& shot : input.shots) {
            look(worst, input, opening, {shot.stage, shot.shot->id, shot.beat->id});
        }
    }
    std::vector<Finding> findings;
    for (auto& [things, finding] : worst) {
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace throwline::checks
