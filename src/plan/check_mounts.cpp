#include "plan/check_names.h"
#include "plan/check_plan.h"

#include "base/length_text.h"

#include <fmt/format.h>

namespace throwline::plan {

namespace {

/// Lengths along a wall or pipe may run over its end by this much: a tape reads no finer.
constexpr double kFit_m = 0.001;

void check_drop(Reading& reading, const Value& lamp, Length drop, Length height) {
    if (drop >= height) {
        reading.wrong(lamp.at("drop"), fmt::format("a drop of {} from a pipe {} high ends on or "
                                                   "below the floor",
                                                   exact_metres(drop), exact_metres(height)));
    }
}

void check_along(Reading& reading, const Value& lamp, Length along, double length_m,
                 std::string_view what) {
    if (along.m() > length_m + kFit_m) {
        reading.wrong(lamp.at("along"),
                      fmt::format("{} is beyond the end of the {}, which is {} long",
                                  exact_metres(along), what,
                                  metres_text(Length::metres(length_m), 3)));
    }
}

void check_mount(Reading& reading, const Value& lamp, const GridHang& hang, const Plan& plan) {
    if (plan.grid) {
        check_drop(reading, lamp, hang.drop, plan.grid->height);
    }
}

void check_mount(Reading& reading, const Value& lamp, const PipeHang& hang, const Plan& plan) {
    if (const Pipe* pipe = find(plan, hang.pipe)) {
        check_drop(reading, lamp, hang.drop, pipe->height);
        check_along(reading, lamp, hang.along, (pipe->to - pipe->from).norm(), "pipe");
    }
}

void check_mount(Reading& reading, const Value& lamp, const WallMount& mount, const Plan& plan) {
    const Polygon& outline = plan.room.outline;
    const auto wall = static_cast<std::size_t>(mount.wall);
    if (wall < outline.size()) {
        const Vec2& to = outline[(wall + 1) % outline.size()];
        check_along(reading, lamp, mount.along, (to - outline[wall]).norm(), "wall");
    }
}

void check_mount(Reading&, const Value&, const StandMount&, const Plan&) {
    // A stand may be anywhere.
}

void check_mount(Reading&, const Value&, const PracticalMount&, const Plan&) {
    // So may a practical.
}

} // namespace

void check_mounts(Reading& reading, const Value& root, const Plan& plan) {
    const bool rig_is_spoilt = reading.is_spoilt(root.at("room").at("outline"))
                               || (plan.grid && reading.is_spoilt(root.at("grid")))
                               || (!plan.pipes.empty() && reading.is_spoilt(root.at("pipes")));
    if (rig_is_spoilt) {
        return;
    }
    each(root, "lamps", plan.lamps, [&](const Value& value, const Lamp& lamp) {
        if (!reading.is_spoilt(value)) {
            std::visit([&](const auto& mount) { check_mount(reading, value, mount, plan); },
                       lamp.mount);
        }
    });
}

} // namespace throwline::plan
