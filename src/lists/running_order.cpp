#include "base/length_text.h"
#include "checks/walks.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"
#include "lists/place_text.h"
#include "lists/shot_lines.h"
#include "plan/names.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::lists {

namespace {

/// A move shorter than this is a turn on the spot.
constexpr double kNoMove_m = 0.05;

std::vector<Column> columns() {
    return {{"what", "What"},
            {"who", "Who or which"},
            {"length_m", "Way", Align::right},
            {"details", "How"}};
}

Row row_of(Topic topic, std::string what, std::string who, Cell way, std::string details) {
    return {
        {words(std::move(what)), words(std::move(who)), std::move(way), words(std::move(details))},
        false,
        topic};
}

std::string facing_text(const plan::Mark& mark) {
    const auto* thing = std::get_if<plan::ThingName>(&mark.faces);
    return thing != nullptr ? ", faces " + thing->name : std::string{};
}

std::string pose_text(plan::Pose pose) {
    switch (pose) {
    case plan::Pose::stand:
        return "stands";
    case plan::Pose::sit:
        return "sits";
    case plan::Pose::lie:
        return "lies";
    case plan::Pose::crouch:
        return "crouches";
    }
    return {};
}

Row mark_row(const plan::Plan& plan, const checks::Walk& walk, const plan::Mark& mark,
             bool was_there) {
    const double way_m = checks::length_m(walk);
    const bool moves = way_m >= kNoMove_m;
    const std::string what = !was_there ? "comes in" : moves ? "walks" : "turns";
    return row_of(Topic::people, what, walk.person.name,
                  moves ? length(Length::metres(way_m), plan.units) : nothing(),
                  fmt::format("{} at {}{}", pose_text(mark.pose), place_text(plan, mark.at),
                              facing_text(mark)));
}

/// In the order of the plan's people.
void add_people(Section& section, const plan::Plan& plan, std::size_t beat) {
    const std::vector<checks::Walk> walks = checks::walks_into(plan, beat);
    const auto before = beat == 0 ? std::map<plan::Id<plan::Person>, plan::Mark>{}
                                  : plan::marks_at(plan, plan.beats[beat - 1].id);
    for (const plan::Person& person : plan.people) {
        const auto change = plan.beats[beat].marks.find(person.id);
        if (change == plan.beats[beat].marks.end()) {
            continue;
        }
        const bool was_there = before.count(person.id) > 0;
        const auto walk = std::find_if(walks.begin(), walks.end(), [&](const checks::Walk& each) {
            return each.person == person.id;
        });
        if (const auto* mark = std::get_if<plan::Mark>(&change->second);
            mark != nullptr && walk != walks.end()) {
            section.rows.push_back(mark_row(plan, *walk, *mark, was_there));
        } else if (was_there) {
            section.rows.push_back(row_of(Topic::people, "leaves", person.id.name, nothing(), ""));
        }
    }
}

/// Where each camera was left by the shots already told.
using CameraPlaces = std::map<plan::Id<plan::Camera>, Vec2>;

CameraPlaces homes(const plan::Plan& plan) {
    CameraPlaces places;
    for (const plan::Camera& camera : plan.cameras) {
        if (camera.home) {
            places[camera.id] = *camera.home;
        }
    }
    return places;
}

Row shot_row(const ShotLine& line, const checks::ShotScene* scene, const plan::Plan& plan,
             CameraPlaces& places) {
    const plan::Shot& shot = *line.shot;
    const auto left = places.find(shot.camera);
    const double way_m = left != places.end() ? (shot.at - left->second).norm() : 0.0;
    places[shot.camera] = shot.moves.empty() ? shot.at : shot.moves.back();
    const std::string subjects = subjects_text(shot);
    const std::string size = shot.size          ? optics::name_of(*shot.size)
                             : scene != nullptr ? size_got_text(*scene)
                                                : std::string{};
    std::vector<std::string> details{shot.camera.name, size, subjects, shot.composition};
    if (way_m >= kNoMove_m) {
        details.push_back("camera moves there first");
    }
    return row_of(Topic::camera, "shot", shot.id.name,
                  way_m >= kNoMove_m ? length(Length::metres(way_m), plan.units) : nothing(),
                  joined(details));
}

void add_shots(Section& section, const std::vector<ShotLine>& lines, const plan::Plan& plan,
               const plan::Beat& beat, CameraPlaces& places) {
    for (const ShotLine& line : lines) {
        const auto scene =
            std::find_if(line.scenes.begin(), line.scenes.end(),
                         [&](const checks::ShotScene* each) { return each->beat->id == beat.id; });
        if (scene != line.scenes.end()) {
            section.rows.push_back(shot_row(line, *scene, plan, places));
        }
    }
}

std::vector<std::string> burning(const plan::Plan& plan, const plan::Beat& beat) {
    std::vector<std::string> names;
    for (const plan::Lamp& lamp : plan.lamps) {
        if (plan::is_lit(lamp, beat.id)) {
            names.push_back(lamp.id.name);
        }
    }
    return names;
}

std::vector<std::string> only_in_first(const std::vector<std::string>& first,
                                       const std::vector<std::string>& second) {
    std::vector<std::string> only;
    for (const std::string& name : first) {
        if (std::find(second.begin(), second.end(), name) == second.end()) {
            only.push_back(name);
        }
    }
    return only;
}

void add_lamps(Section& section, const std::vector<std::string>& before,
               const std::vector<std::string>& now) {
    const auto add = [&](std::string what, const std::vector<std::string>& lamps) {
        if (!lamps.empty()) {
            section.rows.push_back(row_of(Topic::lamp, std::move(what),
                                          checks::counted(static_cast<int>(lamps.size()), "lamp"),
                                          nothing(), joined(lamps)));
        }
    };
    add("come up", only_in_first(now, before));
    add("go out", only_in_first(before, now));
    add("burn", now);
}

} // namespace

Table running_order(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    Table table{"running-order", "Running order", columns(), {}, {}};
    const std::vector<ShotLine> lines = shot_lines(input.analysis);
    CameraPlaces places = homes(plan);
    std::vector<std::string> before;
    for (const checks::BeatScene& scene : input.analysis.beats) {
        Section& section = table.sections.emplace_back();
        section.heading = beat_heading(*scene.beat);
        if (!plan.beats.empty()) {
            add_people(section, plan, static_cast<std::size_t>(scene.beat - plan.beats.data()));
        }
        add_shots(section, lines, plan, *scene.beat, places);
        const std::vector<std::string> now = burning(plan, *scene.beat);
        add_lamps(section, before, now);
        before = now;
    }
    table.cautions = cautions_about({checks::Danger::hot_lamps, checks::Danger::ways_and_cables});
    return table;
}

} // namespace throwline::lists
