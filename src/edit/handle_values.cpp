#include "edit/handles.h"

#include "base/length_text.h"
#include "edit/camera_handles.h"
#include "edit/floor_handles.h"
#include "edit/pick.h"
#include "edit/placing.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// Nearer than this two places have no direction between them.
constexpr double kNowhere_m = 1e-6;

/// A handle as it is in the plan now.
std::optional<Handle> handle_now(const Context& context, const Handle& handle) {
    for (const Handle& now : handles_of(context, handle.thing)) {
        if (now.kind == handle.kind && now.index == handle.index) {
            return now;
        }
    }
    return std::nullopt;
}

/// The handle that a length to another is measured from: of three or more the one before it, else
/// the other; of the first, the next.
std::optional<Vec2> neighbour(const Context& context, const Handle& handle) {
    std::optional<Vec2> next;
    std::optional<Vec2> any;
    for (const Handle& other : handles_of(context, handle.thing)) {
        if (other.kind != handle.kind || other.index == handle.index) {
            continue;
        }
        if (other.index == handle.index - 1) {
            return other.at;
        }
        if (other.index == handle.index + 1) {
            next = other.at;
        }
        any = other.at;
    }
    return next ? next : any;
}

/// Where the length that a handle sets is measured from.
std::optional<Vec2> measured_from(const Context& context, const Handle& handle) {
    switch (handle.kind) {
    case HandleKind::aim:
        return place_of(context, handle.thing);
    case HandleKind::microphone: {
        const plan::Boom* boom = plan::find(context.plan, plan::Id<plan::Boom>{handle.thing.name});
        return boom == nullptr ? std::nullopt : std::optional{boom->operator_at};
    }
    case HandleKind::path: {
        // A camera's move begins where it stands.
        if (handle.thing.kind == Kind::camera && handle.index == 0) {
            return place_of(context, handle.thing);
        }
        const std::optional<Vec2> other = neighbour(context, handle);
        return other ? other : place_of(context, handle.thing);
    }
    case HandleKind::corner:
    case HandleKind::edge:
        return neighbour(context, handle);
    case HandleKind::coverage_left:
    case HandleKind::coverage_right:
    case HandleKind::pool:
    case HandleKind::turn:
        break;
    }
    return std::nullopt;
}

std::optional<AimedLamp> pool_of(const Context& context, const Thing& thing) {
    const plan::Lamp* lamp = plan::find(context.plan, plan::Id<plan::Lamp>{thing.name});
    return lamp == nullptr ? std::nullopt : aimed_now(context, *lamp);
}

/// "35 mm", "13.5 mm"
std::string focal_text(Length focal) {
    return fmt::format("{:g} mm", std::round(focal.mm() * 10.0) / 10.0);
}

std::string length_shown(const Context& context, const Handle& handle) {
    const std::optional<Vec2> from = measured_from(context, handle);
    const std::optional<Handle> now = handle_now(context, handle);
    return from && now ? shown(Length::metres((now->at - *from).norm()), context.plan.units)
                       : std::string{};
}

std::string turn_shown(const Context& context, const Handle& handle) {
    const std::optional<Vec2> at = place_of(context, handle.thing);
    const std::optional<Handle> now = handle_now(context, handle);
    return at && now ? "turn " + degrees_text(Angle::radians(angle_of(now->at - *at)), 0)
                     : std::string{};
}

Result<Step> length_typed(const Context& context, const Handle& handle, Length length) {
    const std::optional<Vec2> from = measured_from(context, handle);
    if (!from || (handle.at - *from).norm() < kNowhere_m) {
        return failure("there is nothing to measure a length from");
    }
    if (length.m() <= 0.0) {
        return failure("a length is above 0");
    }
    return dragged(context, handle, *from + (handle.at - *from).normalized() * length.m());
}

Result<Step> focal_typed(const Context& context, const Handle& handle, const std::string& text) {
    // A bare number is millimetres, as it is engraved on the lens.
    const bool is_bare = text.find_first_not_of("0123456789.,+- ") == std::string::npos;
    const auto framed = framed_now(context, {handle.thing.name});
    return parse_length(is_bare ? text + " mm" : text).and_then([&](Length focal) -> Result<Step> {
        if (framed && !(framed->reach.focal_min <= focal && focal <= framed->reach.focal_max)) {
            return failure(fmt::format("the lens goes from {} to {}",
                                       focal_text(framed->reach.focal_min),
                                       focal_text(framed->reach.focal_max)));
        }
        return focal_set(context, {handle.thing.name}, focal);
    });
}

Result<Step> pool_typed(const Context& context, const Handle& handle, Length across) {
    const auto aimed = pool_of(context, handle.thing);
    if (!aimed) {
        return failure(fmt::format("{} is not there any more", handle.thing.name));
    }
    const Length least = Length::metres(2.0 * aimed->least_radius_m);
    const Length most = Length::metres(2.0 * aimed->most_radius_m);
    if (aimed->has_range && !(least <= across && across <= most)) {
        return failure(fmt::format("the pool goes from {} to {} across there",
                                   throwline::shown(least, context.plan.units),
                                   throwline::shown(most, context.plan.units)));
    }
    return dragged(context, handle, floor_of(aimed->target) + Vec2{across.m() / 2.0, 0.0});
}

} // namespace

std::string value_shown(const Context& context, const Handle& handle) {
    switch (handle.kind) {
    case HandleKind::coverage_left:
    case HandleKind::coverage_right: {
        const auto framed = framed_now(context, {handle.thing.name});
        return framed ? focal_text(framed->framing.focal) : std::string{};
    }
    case HandleKind::turn:
        return turn_shown(context, handle);
    case HandleKind::pool: {
        const auto aimed = pool_of(context, handle.thing);
        return aimed ? shown(Length::metres(2.0 * aimed->radius_m), context.plan.units) + " across"
                     : std::string{};
    }
    case HandleKind::aim:
    case HandleKind::corner:
    case HandleKind::microphone:
    case HandleKind::path:
    case HandleKind::edge:
        return length_shown(context, handle);
    }
    return {};
}

Result<Step> typed(const Context& context, const Handle& handle, const std::string& text) {
    const Thing things[]{handle.thing};
    if (const auto movable = check_movable(context.plan, things); !movable) {
        return tl::unexpected{movable.error()};
    }
    const LengthReading reading{.bare_unit = context.plan.units};
    switch (handle.kind) {
    case HandleKind::coverage_left:
    case HandleKind::coverage_right:
        return focal_typed(context, handle, text);
    case HandleKind::turn:
        return parse_angle(text).and_then(
            [&](Angle direction) { return direction_set(context, handle.thing, direction); });
    case HandleKind::pool:
        return parse_length(text, reading).and_then([&](Length across) {
            return pool_typed(context, handle, across);
        });
    case HandleKind::aim:
    case HandleKind::corner:
    case HandleKind::microphone:
    case HandleKind::path:
    case HandleKind::edge:
        return parse_length(text, reading).and_then([&](Length length) {
            return length_typed(context, handle, length);
        });
    }
    return failure("that cannot be typed");
}

} // namespace throwline::edit
