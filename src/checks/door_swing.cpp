#include "checks/floor_checks.h"
#include "checks/occupants.h"
#include "checks/opening_place.h"
#include "checks/wording.h"

#include <cmath>
#include <fmt/format.h>
#include <map>

namespace throwline::checks {

namespace {

/// Corners along the arc that the leaf's edge draws; a chord strays 0.2 mm from a 1 m leaf's arc.
constexpr int kArcSteps = 40;
/// The leaf's clearance under which a thing merely touches it.
constexpr double kTouch_m2 = 0.002;

struct Leaf {
    Vec2 hinge = Vec2::Zero();
    Polygon swept;
};

Leaf leaf_of(const plan::Room& room, const plan::Opening& door) {
    const OpeningPlace place = place_of(room, door);
    const plan::Swing& swing = *door.swing;
    Leaf leaf;
    leaf.hinge = swing.hinge_at_start ? place.start : place.end;
    const Vec2 shut = swing.hinge_at_start ? place.along : Vec2(-place.along);
    const Vec2 into = swing.inward ? place.inward : Vec2(-place.inward);
    leaf.swept.push_back(leaf.hinge);
    for (int i = 0; i <= kArcSteps; ++i) {
        const double turn_rad = swing.widest.rad() * i / kArcSteps;
        leaf.swept.push_back(
            leaf.hinge + place.width_m * (std::cos(turn_rad) * shut + std::sin(turn_rad) * into));
    }
    return leaf;
}

/// How far the door opens before it meets the outline's parts in its way: the least angle, from
/// shut, of anything in the swept area.
Angle opens_to(const Leaf& leaf, const plan::Opening& door, const std::vector<Polygon>& met) {
    const Vec2 shut = leaf.swept[1] - leaf.hinge;
    double least_rad = door.swing->widest.rad();
    for (const Polygon& part : met) {
        for (const Vec2& corner : part) {
            const Vec2 towards = corner - leaf.hinge;
            if (towards.norm() > 0.01) {
                least_rad = std::min(least_rad,
                                     std::abs(std::atan2(cross(shut, towards), shut.dot(towards))));
            }
        }
    }
    return Angle::radians(least_rad);
}

Finding stuck(const CheckInput& input, const plan::Opening& door, const Leaf& leaf,
              const Occupant& thing, const std::vector<Polygon>& met) {
    const Angle opens = opens_to(leaf, door, met);
    Finding finding;
    finding.check = "door-swing";
    finding.severity = door.way_out || door.swing->inward ? Severity::error : Severity::caution;
    finding.things = {door.id.name, thing.name};
    finding.at = centroid(met.front());
    finding.weight = 1.0 - opens.rad() / door.swing->widest.rad();
    finding.message = capitalised(fmt::format(
        "{} opens only to {} of {} before it meets {}.", with_kind("door", door.id.name),
        degrees_text(opens, 0), degrees_text(door.swing->widest, 0), thing.name));
    finding.working = {"the sector that the leaf sweeps about its hinge meets the outline",
                       {{"r", "width of the leaf", shown(door.width, input.plan.units)},
                        {"", "widest", degrees_text(door.swing->widest, 0)}},
                       "opens to " + degrees_text(opens, 0),
                       "plain geometry"};
    return finding;
}

/// What each thing leaves of each door, at its worst.
using WorstByDoorAndThing = std::map<std::pair<std::string, std::string>, Finding>;

/// When a stage is looked at.
struct Moment {
    plan::Id<plan::Shot> shot;
    plan::Id<plan::Beat> beat;
};

void look(WorstByDoorAndThing& worst, const CheckInput& input, const plan::Opening& door,
          const std::vector<Occupant>& things, const Moment& when) {
    const Leaf leaf = leaf_of(input.plan.room, door);
    for (const Occupant& thing : things) {
        const bool over = thing.bottom_z_m >= door.head.m() || thing.top_z_m < kHeightSlack_m;
        if (over) {
            continue;
        }
        const std::vector<Polygon> met = parts_shared(leaf.swept, thing.outline);
        if (total_area(met) < kTouch_m2) {
            continue;
        }
        Finding finding = stuck(input, door, leaf, thing, met);
        finding.shot = when.shot;
        finding.beat = when.beat;
        const auto [told, is_new] = worst.try_emplace({door.id.name, thing.name}, finding);
        if (!is_new && finding.weight > told->second.weight) {
            told->second = std::move(finding);
        }
    }
}

void look_at_every_moment(WorstByDoorAndThing& worst, const CheckInput& input,
                          const plan::Opening& door) {
    if (!input.beats.empty()) {
        look(worst, input, door,
             scenery_occupants(input.beats.front().stage, input.plan, input.catalogue), {});
    }
    for (const BeatScene& beat : input.beats) {
        look(worst, input, door, moving_occupants(beat.stage, input.plan, input.catalogue),
             {{}, beat.beat->id});
    }
    for (const ShotScene& shot : input.shots) {
        look(worst, input, door, moving_occupants(shot.stage, input.plan, input.catalogue),
             {shot.shot->id, shot.beat->id});
    }
}

} // namespace

std::vector<Finding> door_swing(const CheckInput& input, const std::stop_token& stop) {
    WorstByDoorAndThing worst;
    for (const plan::Opening& door : input.plan.room.openings) {
        if (door.swing && !stop.stop_requested()) {
            look_at_every_moment(worst, input, door);
        }
    }
    std::vector<Finding> findings;
    for (auto& [door_and_thing, finding] : worst) {
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace throwline::checks
