#include "checks/hanging.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"
#include "lists/lamp_schedule.h"
#include "lists/place_text.h"
#include "plan/places.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <map>
#include <tuple>

namespace throwline::lists {

namespace {

constexpr std::array kColumns{LampColumn::position, LampColumn::lamp,  LampColumn::instrument,
                              LampColumn::role,     LampColumn::aim,   LampColumn::height,
                              LampColumn::drop,     LampColumn::power, LampColumn::filters,
                              LampColumn::focus,    LampColumn::cut,   LampColumn::channel,
                              LampColumn::circuit,  LampColumn::level, LampColumn::mass,
                              LampColumn::beats,    LampColumn::notes};

/// Where a crew comes past a lamp: pipes of the grid one after the other, single pipes, walls,
/// stands, and what is part of the set.
struct Stop {
    int kind = 0;
    /// Which pipe or wall of its kind, in the order of the plan.
    int number = 0;
    /// How far along it.
    double along = 0.0;
    std::string heading;
    /// Its name among what hangs; empty for what hangs nowhere.
    std::string load;
};

struct StopOf {
    const plan::Plan& plan;

    Stop operator()(const plan::GridHang& hang) const {
        const auto [column, row] = column_and_row(hang.position);
        const bool by_letter = plan.grid->run == plan::PipeRun::along_numbers;
        const std::string name = checks::grid_position(hang.position);
        const std::size_t digits = name.find_first_of("0123456789");
        const std::string pipe =
            "grid pipe " + (by_letter ? name.substr(0, digits) : name.substr(digits));
        return {0, by_letter ? column : row, static_cast<double>(by_letter ? row : column),
                checks::capitalised(pipe), pipe};
    }
    Stop operator()(const plan::PipeHang& hang) const {
        const auto pipe =
            std::find_if(plan.pipes.begin(), plan.pipes.end(),
                         [&](const plan::Pipe& each) { return each.id == hang.pipe; });
        const std::string name = checks::said(hang.pipe);
        return {1, static_cast<int>(pipe - plan.pipes.begin()), hang.along.m(),
                checks::capitalised(name), name};
    }
    Stop operator()(const plan::WallMount& mount) const {
        return {2, mount.wall, mount.along.m(),
                checks::capitalised(wall_text(plan.room, mount.wall)), ""};
    }
    Stop operator()(const plan::StandMount&) const { return {3, 0, 0.0, "On stands", ""}; }
    Stop operator()(const plan::PracticalMount&) const { return {4, 0, 0.0, "In the set", ""}; }

    /// Counted from 0, as the grid counts.
    std::pair<int, int> column_and_row(const std::string& position) const {
        const plan::Grid& grid = *plan.grid;
        const Vec2 at = plan::grid_point(grid, position).value_or(grid.origin);
        const Vec2 in_grid = rotated(at - grid.origin, -grid.turn.rad());
        return {static_cast<int>(std::lround(in_grid.x() / grid.pitch_x.m())),
                static_cast<int>(std::lround(in_grid.y() / grid.pitch_y.m()))};
    }
};

std::string load_remark(const std::string& name, const checks::Hanging& hanging, UnitSystem units) {
    if (hanging.limit_kg <= 0.0) {
        return fmt::format("{} carries {} of lamps; the plan gives no limit of the venue for it.",
                           checks::capitalised(name), checks::mass_text(hanging.mass_kg, units));
    }
    const double over_kg = hanging.mass_kg - hanging.limit_kg;
    return fmt::format("{} carries {} of lamps; the plan gives {} from the venue's papers{}.",
                       checks::capitalised(name), checks::mass_text(hanging.mass_kg, units),
                       checks::mass_text(hanging.limit_kg, units),
                       over_kg > checks::kMassRounding_kg
                           ? fmt::format(", {} less", checks::mass_text(over_kg, units))
                           : std::string{});
}

} // namespace

Table lamps_by_position(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    Table table = lamp_table("lamps-by-position", "Lamp schedule by position", kColumns);
    std::map<std::tuple<int, int>, std::vector<std::pair<Stop, const plan::Lamp*>>> by_place;
    for (const plan::Lamp& lamp : plan.lamps) {
        Stop stop = std::visit(StopOf{plan}, lamp.mount);
        by_place[{stop.kind, stop.number}].emplace_back(std::move(stop), &lamp);
    }
    const checks::HangingByName hanging = checks::everything_hanging(plan, input.catalogue);
    for (auto& [place, lamps] : by_place) {
        std::stable_sort(lamps.begin(), lamps.end(), [](const auto& a, const auto& b) {
            return a.first.along < b.first.along;
        });
        const Stop& stop = lamps.front().first;
        Section& section = table.sections.emplace_back();
        section.heading = stop.heading;
        for (const auto& [at, lamp] : lamps) {
            section.rows.push_back(lamp_row(input, *lamp, kColumns));
        }
        section.rows.push_back(lamp_total(table, section, plan.units));
        if (const auto load = hanging.find(stop.load); load != hanging.end()) {
            section.remarks.push_back(load_remark(stop.load, load->second, plan.units));
        }
    }
    table.cautions = cautions_about({checks::Danger::overhead, checks::Danger::hot_lamps,
                                     checks::Danger::mains, checks::Danger::ways_and_cables});
    return table;
}

} // namespace throwline::lists
