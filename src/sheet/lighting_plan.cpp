#include "sheet/lighting_plan.h"

#include "base/length_text.h"
#include "checks/cautions.h"
#include "checks/circuit_sum.h"
#include "checks/light_checks.h"
#include "checks/power_checks.h"
#include "checks/wording.h"
#include "plan/places.h"
#include "sheet/lamp_key.h"
#include "sheet/symbols.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

/// How far what is not a lamp is drawn back.
constexpr double kSetBack = 0.5;
constexpr double kPeopleBack = 0.6;
/// To the words of a lamp in the middle of a crowded rig.
constexpr double kLongLeader_mm = 130.0;

/// Where a lamp hangs or stands, and how high: "D3, drop 1'-0\"", "on a stand, 7'-0\" up".
struct MountWords {
    UnitSystem units;

    std::string operator()(const plan::GridHang& hang) const {
        return fmt::format("{}, drop {}", hang.position, shown(hang.drop, units));
    }
    std::string operator()(const plan::PipeHang& hang) const {
        return fmt::format("{} at {}, drop {}", hang.pipe.name, shown(hang.along, units),
                           shown(hang.drop, units));
    }
    std::string operator()(const plan::StandMount& stand) const {
        return fmt::format("stand, {} up", shown(stand.height, units));
    }
    std::string operator()(const plan::WallMount& wall) const {
        return fmt::format("wall {}, {} up", plan::number_of_wall(wall.wall),
                           shown(wall.height, units));
    }
    std::string operator()(const plan::PracticalMount& practical) const {
        return fmt::format("{} up", shown(practical.height, units));
    }
};

std::vector<LabelLine> lamp_lines(const plan::Lamp& lamp, const stage::PlacedLamp& placed,
                                  UnitSystem units) {
    std::vector<LabelLine> lines = lamp_name_lines(lamp, placed);
    lines.push_back(
        {fmt::format("{} at {}", placed.instrument->name, checks::share_text(lamp.level))});
    for (const std::string& filter : lamp.filters) {
        lines.push_back({filter});
    }
    lines.push_back({std::visit(MountWords{units}, lamp.mount)});
    return lines;
}

/// A small cross at every place of the grid, where a clamp can go.
void draw_hanging_places(Board& board, const plan::Plan& plan) {
    constexpr double kArm_mm = 0.7;
    if (!plan.grid) {
        return;
    }
    const Pen fine = pen(Ink::power, kFine_mm);
    for (int column = 0; column < plan.grid->columns; ++column) {
        for (int row = 0; row < plan.grid->rows; ++row) {
            const auto place = plan::grid_point(*plan.grid, plan::grid_name(column, row));
            if (!place) {
                continue;
            }
            const Vec2 at = board.frame.at(*place);
            for (const Vec2& arm : {Vec2{kArm_mm, 0.0}, Vec2{0.0, kArm_mm}}) {
                board.add(PlanLayer::ground, line(at - arm, at + arm, fine), Crowd::light);
            }
        }
    }
}

/// What the lamps stand over, weaker than they are; its names give way to theirs.
void draw_behind(Board& board, const SheetInput& input, const Selection& selection) {
    const plan::Plan& plan = *input.analysis.plan;
    draw_room(board, plan);
    draw_scenery(board, plan, input.catalogue);
    for (LabelRequest& label : board.labels) {
        label.may_drop = true;
    }
    draw_people(board, plan, selection);
    board.draw_back(PlanLayer::built, kSetBack);
    board.draw_back(PlanLayer::standing, kSetBack);
    board.draw_back(PlanLayer::people, kPeopleBack);
}

void keep_to_light(std::set<LegendEntry>& used) {
    constexpr std::array kShown{LegendEntry::person,        LegendEntry::hung_lamp,
                                LegendEntry::standing_lamp, LegendEntry::practical,
                                LegendEntry::pool,          LegendEntry::outlet,
                                LegendEntry::pipe};
    std::erase_if(used, [&](LegendEntry entry) {
        return std::find(kShown.begin(), kShown.end(), entry) == kShown.end();
    });
}

void draw_plan(Board& board, const SheetInput& input, const PlanShown& shown,
               const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    const auto& [selection, lamps, extent] = shown;
    if (options.ground) {
        draw_ground(board, plan);
    }
    draw_hanging_places(board, plan);
    draw_behind(board, input, selection);
    if (options.pools) {
        draw_pools(board, plan, lamps);
    }
    const std::size_t others = board.labels.size();
    draw_lamps(board, plan, lamps, [&](const plan::Lamp& lamp, const stage::PlacedLamp& placed) {
        return lamp_lines(lamp, placed, plan.units);
    });
    for (std::size_t i = others; i < board.labels.size(); ++i) {
        board.labels[i].farthest_mm = kLongLeader_mm;
    }
    draw_outlets(board, plan);
    letter_grid(board, plan, extent);
    draw_overall_sizes(board, plan, extent);
    keep_to_light(board.used);
}

bool is_about_light(const checks::Finding& finding) {
    for (const auto& family : {checks::light_checks(), checks::power_checks()}) {
        for (const checks::Check& check : family) {
            if (check.id == finding.check) {
                return true;
            }
        }
    }
    return false;
}

} // namespace

Result<Drawing> lighting_plan_sheet(const SheetInput& input, const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    if (plan.lamps.empty()) {
        return failure("the plan has no lamps to draw");
    }
    const Result<PlanShown> shown = plan_shown(input, options);
    if (!shown) {
        return tl::unexpected{shown.error()};
    }
    ScaledSheet sheet;
    sheet.extent = shown->extent;
    sheet.draw = [&](Board& board) { draw_plan(board, input, *shown, options); };
    sheet.findings = selected_findings(input.analysis, options);
    std::erase_if(sheet.findings, [](const checks::Finding* f) { return !is_about_light(*f); });
    sheet.before_findings = [&](Marks& marks, const Box& box) {
        return draw_lamp_key(marks, box, input);
    };
    sheet.cautions = checks::cautions_for(plan);
    return composed(input, options, sheet);
}

Result<std::vector<SheetJob>> lighting_plan_jobs(const SheetInput& input,
                                                 const SheetOptions& /*options*/) {
    std::vector<SheetJob> jobs;
    if (!input.analysis.plan->lamps.empty()) {
        jobs.push_back({"Lighting plan", [input](const SheetOptions& options) {
                            return lighting_plan_sheet(input, options);
                        }});
    }
    return jobs;
}

} // namespace throwline::sheet
