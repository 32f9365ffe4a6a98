#include "edit/moves.h"
#include "edit/pick.h"
#include "edit/placing.h"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

/// The whole room, when all its walls are among the things: it moves as it is, openings and all.
bool has_all_walls(const Context& context, std::span<const Thing> things) {
    const auto walls = static_cast<std::size_t>(std::count_if(
        things.begin(), things.end(), [](const Thing& thing) { return thing.kind == Kind::wall; }));
    return walls > 0 && walls == context.plan.room.outline.size();
}

bool has_wall_of(const Context& context, std::span<const Thing> things, const Thing& opening) {
    for (const plan::Opening& other : context.plan.room.openings) {
        if (other.id.name == opening.name) {
            return std::find(things.begin(), things.end(), Thing{Kind::wall, {}, other.wall})
                   != things.end();
        }
    }
    return false;
}

/// Puts all of them; the first error ends it. `skip` leaves some where they are.
Result<plan::Plan> all_put(const Context& context, std::span<const Thing> things,
                           const Placing& placing) {
    if (const auto movable = check_movable(context.plan, things); !movable) {
        return tl::unexpected{movable.error()};
    }
    plan::Plan plan = context.plan;
    const bool whole_room = has_all_walls(context, things);
    if (whole_room) {
        placing.to.place(plan.room.outline);
        if (const auto sound = check_walls(plan); !sound) {
            return tl::unexpected{sound.error()};
        }
    }
    for (const Thing& thing : things) {
        const bool carried =
            (thing.kind == Kind::wall && whole_room)
            || (thing.kind == Kind::opening && has_wall_of(context, things, thing));
        if (carried) {
            continue;
        }
        if (const auto done = put(plan, context, thing, placing); !done) {
            return tl::unexpected{done.error()};
        }
    }
    return plan;
}

Result<Step> named(Result<plan::Plan> plan, std::string name) {
    return std::move(plan).map(
        [&](plan::Plan&& made) { return Step{std::move(name), std::move(made), {}}; });
}

bool turns(const Context& context, const Thing& thing) {
    switch (thing.kind) {
    case Kind::wall:
    case Kind::opening:
        return false;
    case Kind::lamp: {
        const plan::Lamp* lamp = plan::find(context.plan, plan::Id<plan::Lamp>{thing.name});
        return std::holds_alternative<plan::StandMount>(lamp->mount)
               || std::holds_alternative<plan::PracticalMount>(lamp->mount);
    }
    case Kind::pipe:
    case Kind::scenery:
    case Kind::person:
    case Kind::camera:
    case Kind::boom:
    case Kind::outlet:
        return true;
    }
    return true;
}

/// Those that can be turned; an error when none can.
Result<std::vector<Thing>> turning(const Context& context, std::span<const Thing> things) {
    if (const auto movable = check_movable(context.plan, things); !movable) {
        return tl::unexpected{movable.error()};
    }
    std::vector<Thing> left;
    std::copy_if(things.begin(), things.end(), std::back_inserter(left),
                 [&](const Thing& thing) { return turns(context, thing); });
    if (left.empty()) {
        return failure(fmt::format("{} keeps the direction of what holds it", words_for(things)));
    }
    return left;
}

/// An isometry that leaves a point where it is.
plan::Isometry about(const Vec2& point, bool mirror, Angle turn) {
    plan::Isometry to{mirror, turn, Vec2::Zero()};
    to.by = point - to.point(point);
    return to;
}

struct Box {
    Thing thing;
    Vec2 low = Vec2::Zero();
    Vec2 high = Vec2::Zero();

    Vec2 middle() const { return (low + high) / 2.0; }
};

std::vector<Box> boxes_of(const Context& context, std::span<const Thing> things) {
    std::vector<Box> boxes;
    for (const Thing& thing : things) {
        const Polygon outline = outline_of(context, thing);
        if (outline.empty()) {
            continue;
        }
        Box box{thing, outline.front(), outline.front()};
        for (const Vec2& corner : outline) {
            box.low = box.low.cwiseMin(corner);
            box.high = box.high.cwiseMax(corner);
        }
        boxes.push_back(box);
    }
    return boxes;
}

/// Each of them moved by a shift of its own.
Result<plan::Plan> each_moved(const Context& context, const std::vector<Box>& boxes,
                              const std::vector<Vec2>& shifts) {
    plan::Plan plan = context.plan;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const Placing placing{{false, {}, shifts[i]}, false};
        if (const auto done = put(plan, context, boxes[i].thing, placing); !done) {
            return tl::unexpected{done.error()};
        }
    }
    return plan;
}

Vec2 shift_to(const Box& box, const Vec2& low, const Vec2& high, AlignTo to) {
    const Vec2 middle = (low + high) / 2.0;
    switch (to) {
    case AlignTo::left:
        return {low.x() - box.low.x(), 0.0};
    case AlignTo::middle_across:
        return {middle.x() - box.middle().x(), 0.0};
    case AlignTo::right:
        return {high.x() - box.high.x(), 0.0};
    case AlignTo::top:
        return {0.0, high.y() - box.high.y()};
    case AlignTo::middle_up:
        return {0.0, middle.y() - box.middle().y()};
    case AlignTo::bottom:
        return {0.0, low.y() - box.low.y()};
    }
    return Vec2::Zero();
}

} // namespace

Result<Step> moved(const Context& context, std::span<const Thing> things, const Vec2& by_m) {
    return named(all_put(context, things, {{false, {}, by_m}, false}),
                 fmt::format("Move {}", words_for(things)));
}

Result<Step> turned(const Context& context, std::span<const Thing> things, const Vec2& point,
                    Angle by) {
    const Result<std::vector<Thing>> left = turning(context, things);
    if (!left) {
        return tl::unexpected{left.error()};
    }
    return named(all_put(context, *left, {about(point, false, by), true}),
                 fmt::format("Turn {}", words_for(*left)));
}

Result<Step> mirrored(const Context& context, std::span<const Thing> things, const Vec2& on,
                      Angle direction) {
    const Result<std::vector<Thing>> left = turning(context, things);
    if (!left) {
        return tl::unexpected{left.error()};
    }
    // A mirror along the y axis followed by a turn of twice what the line is away from that axis.
    const Angle turn = Angle::radians(2.0 * direction.rad() - std::numbers::pi);
    return named(all_put(context, *left, {about(on, true, turn), true}),
                 fmt::format("Mirror {}", words_for(*left)));
}

Result<Step> aligned(const Context& context, std::span<const Thing> things, AlignTo to) {
    if (const auto movable = check_movable(context.plan, things); !movable) {
        return tl::unexpected{movable.error()};
    }
    const std::vector<Box> boxes = boxes_of(context, things);
    if (boxes.size() < 2) {
        return failure("choose two things or more to line them up");
    }
    Vec2 low = boxes.front().low;
    Vec2 high = boxes.front().high;
    for (const Box& box : boxes) {
        low = low.cwiseMin(box.low);
        high = high.cwiseMax(box.high);
    }
    std::vector<Vec2> shifts;
    for (const Box& box : boxes) {
        shifts.push_back(shift_to(box, low, high, to));
    }
    return named(each_moved(context, boxes, shifts), fmt::format("Line up {}", words_for(things)));
}

Result<Step> distributed(const Context& context, std::span<const Thing> things,
                         DistributeAlong along) {
    if (const auto movable = check_movable(context.plan, things); !movable) {
        return tl::unexpected{movable.error()};
    }
    std::vector<Box> boxes = boxes_of(context, things);
    if (boxes.size() < 3) {
        return failure("choose three things or more to spread them out");
    }
    const Eigen::Index axis = along == DistributeAlong::across ? 0 : 1;
    std::stable_sort(boxes.begin(), boxes.end(), [&](const Box& a, const Box& b) {
        return a.middle()[axis] < b.middle()[axis];
    });
    const double first_m = boxes.front().middle()[axis];
    const double step_m =
        (boxes.back().middle()[axis] - first_m) / static_cast<double>(boxes.size() - 1);
    std::vector<Vec2> shifts;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        Vec2 shift = Vec2::Zero();
        shift[axis] = first_m + static_cast<double>(i) * step_m - boxes[i].middle()[axis];
        shifts.push_back(shift);
    }
    return named(each_moved(context, boxes, shifts),
                 fmt::format("Spread out {}", words_for(things)));
}

} // namespace throwline::edit
