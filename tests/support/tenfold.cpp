#include "support/tenfold.h"

#include "plan/places.h"

#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace throwline::support {

namespace {

using plan::Plan;

std::string numbered(const std::string& name, int copy) {
    return copy == 0 || name.empty() ? name : fmt::format("{} #{}", name, copy + 1);
}

template <class Thing>
void number(plan::Id<Thing>& id, int copy) {
    id.name = numbered(id.name, copy);
}

template <class Choice>
void number_name_in(Choice& choice, int copy) {
    if (auto* name = std::get_if<plan::ThingName>(&choice)) {
        name->name = numbered(name->name, copy);
    }
}

/// Grid positions shift by whole copies of the grid, which grows with the room.
void shift_position(plan::GridHang& hang, const plan::Grid& grid, int copy, int columns_apart) {
    const std::optional<Vec2> at = plan::grid_point(grid, hang.position);
    const int column =
        static_cast<int>(std::lround((at->x() - grid.origin.x()) / grid.pitch_x.m()));
    const int row = static_cast<int>(std::lround((at->y() - grid.origin.y()) / grid.pitch_y.m()));
    hang.position = plan::grid_name(column + copy * columns_apart, row);
}

void number_names(Plan& part, int copy, const std::optional<plan::Grid>& grid, int columns_apart) {
    for (plan::Opening& opening : part.room.openings) {
        number(opening.id, copy);
    }
    for (plan::Circuit& circuit : part.circuits) {
        number(circuit.id, copy);
    }
    for (plan::Pipe& pipe : part.pipes) {
        number(pipe.id, copy);
    }
    for (plan::Scenery& scenery : part.scenery) {
        number(scenery.id, copy);
    }
    for (plan::Person& person : part.people) {
        number(person.id, copy);
    }
    for (plan::Camera& camera : part.cameras) {
        number(camera.id, copy);
    }
    for (plan::Boom& boom : part.booms) {
        number(boom.id, copy);
    }
    for (plan::Shot& shot : part.shots) {
        number(shot.id, copy);
        number(shot.camera, copy);
        number_name_in(shot.aim, copy);
        for (plan::Id<plan::Person>& subject : shot.subjects) {
            number(subject, copy);
        }
        for (plan::Id<plan::Shot>& next : shot.cuts_to) {
            number(next, copy);
        }
    }
    for (plan::Lamp& lamp : part.lamps) {
        number(lamp.id, copy);
        number(lamp.circuit, copy);
        number_name_in(lamp.aim, copy);
        if (auto* hang = std::get_if<plan::GridHang>(&lamp.mount); hang && grid) {
            shift_position(*hang, *grid, copy, columns_apart);
        }
        if (auto* hang = std::get_if<plan::PipeHang>(&lamp.mount)) {
            number(hang->pipe, copy);
        }
    }
    for (plan::Beat& beat : part.beats) {
        decltype(beat.marks) marks;
        for (const auto& [id, change] : beat.marks) {
            plan::Id<plan::Person> person = id;
            auto what = change;
            if (auto* mark = std::get_if<plan::Mark>(&what)) {
                number_name_in(mark->faces, copy);
            }
            number(person, copy);
            marks.emplace(std::move(person), std::move(what));
        }
        beat.marks = std::move(marks);
    }
}

template <class Things>
void append(Things& to, const Things& from) {
    to.insert(to.end(), from.begin(), from.end());
}

void merge(Plan& whole, const Plan& part) {
    append(whole.circuits, part.circuits);
    append(whole.pipes, part.pipes);
    append(whole.scenery, part.scenery);
    append(whole.people, part.people);
    append(whole.cameras, part.cameras);
    append(whole.shots, part.shots);
    append(whole.booms, part.booms);
    append(whole.lamps, part.lamps);
    for (std::size_t i = 0; i < whole.beats.size(); ++i) {
        whole.beats[i].marks.insert(part.beats[i].marks.begin(), part.beats[i].marks.end());
    }
}

} // namespace

Plan repeated(const Plan& plan, int times) {
    Vec2 least = Vec2::Constant(std::numeric_limits<double>::max());
    Vec2 most = -least;
    for (const Vec2& corner : plan.room.outline) {
        least = least.cwiseMin(corner);
        most = most.cwiseMax(corner);
    }
    // Apart by whole steps of the grid, so that its positions stay where the lamps are.
    const double pitch_m = plan.grid ? plan.grid->pitch_x.m() : 1.0;
    const int columns_apart = static_cast<int>(std::ceil((most.x() - least.x()) / pitch_m));
    const double apart_m = columns_apart * pitch_m;

    Plan whole = plan;
    const double width_m = apart_m * (times - 1) + most.x() - least.x();
    whole.room.outline = {least,
                          {least.x() + width_m, least.y()},
                          {least.x() + width_m, most.y()},
                          {least.x(), most.y()}};
    whole.room.walls.resize(4, plan.room.walls.front());
    whole.kit.clear();
    if (whole.grid) {
        whole.grid->columns += columns_apart * (times - 1);
    }
    for (int copy = 1; copy < times; ++copy) {
        Plan part = plan::moved(plan, {apart_m * copy, 0.0}, {});
        number_names(part, copy, plan.grid, columns_apart);
        merge(whole, part);
    }
    return whole;
}

} // namespace throwline::support
