#include "edit/floor_handles.h"

#include "edit/pick.h"
#include "edit/placing.h"
#include "plan/places.h"
#include "stage/moment.h"

#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

/// How far from somebody's middle the handle stands that turns them.
constexpr double kTurnReach_m = 0.6;
/// Nearer to the middle than this a handle points nowhere.
constexpr double kNowhere_m = 0.01;

Result<Step> look_set(const Context& context, const Thing& person, const plan::Facing& faces,
                      std::string name) {
    Step step{std::move(name), context.plan, {}};
    plan::Mark* mark = own_mark(step.plan, plan::Id<plan::Person>{person.name}, context.now.beat);
    if (mark == nullptr) {
        return failure(fmt::format("{} is not on the floor in this beat", person.name));
    }
    mark->faces = faces;
    return step;
}

} // namespace

bool can_be_followed(const Thing& thing) {
    switch (thing.kind) {
    case Kind::scenery:
    case Kind::person:
    case Kind::camera:
    case Kind::lamp:
    case Kind::boom:
        return true;
    case Kind::wall:
    case Kind::opening:
    case Kind::pipe:
    case Kind::outlet:
        return false;
    }
    return false;
}

std::vector<Handle> person_handles(const Context& context, const Thing& thing) {
    const auto marks = plan::marks_at(context.plan, context.now.beat);
    const auto mark = marks.find(plan::Id<plan::Person>{thing.name});
    if (mark == marks.end()) {
        return {};
    }
    const stage::Moment moment{context.plan, context.catalogue, context.now.beat, context.now.shot};
    const double facing_rad = stage::facing_of(moment, mark->second).rad();
    std::vector<Handle> handles{
        {thing, HandleKind::turn, 0, mark->second.at + kTurnReach_m * unit_at(facing_rad)}};
    const plan::Beat* beat = plan::find(context.plan, context.now.beat);
    if (beat != nullptr && beat->marks.contains(mark->first)) {
        for (std::size_t i = 0; i < mark->second.path.size(); ++i) {
            handles.push_back({thing, HandleKind::path, static_cast<int>(i), mark->second.path[i]});
        }
    }
    return handles;
}

Result<Step> drag_path(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Change the way of {}", handle.thing.name), context.plan, {}};
    plan::Mark* mark =
        own_mark(step.plan, plan::Id<plan::Person>{handle.thing.name}, context.now.beat);
    const auto index = static_cast<std::size_t>(handle.index);
    if (mark == nullptr || handle.index < 0 || index >= mark->path.size()) {
        return failure("that place of the way is not there any more");
    }
    mark->path[index] = to;
    return step;
}

Result<Step> direction_set(const Context& context, const Thing& thing, Angle direction) {
    const Angle turned = Angle::radians(wrapped(direction.rad()));
    std::string name = fmt::format("Turn {}", thing.name);
    if (thing.kind == Kind::person) {
        return look_set(context, thing, turned, std::move(name));
    }
    Step step{std::move(name), context.plan, {}};
    plan::Scenery* piece = find(step.plan, plan::Id<plan::Scenery>{thing.name});
    if (piece == nullptr) {
        return failure(fmt::format("{} cannot be turned", name_of(thing)));
    }
    // The front looks to -y of its own.
    const Angle turn = Angle::radians(wrapped(direction.rad() + std::numbers::pi / 2.0));
    if (auto* stock = std::get_if<plan::StockPiece>(&piece->shape)) {
        stock->turn = turn;
    } else if (auto* box = std::get_if<plan::BoxPiece>(&piece->shape)) {
        box->turn = turn;
    } else if (auto* riser = std::get_if<plan::Riser>(&piece->shape)) {
        riser->turn = turn;
    }
    return step;
}

Result<Step> drag_turn(const Context& context, const Handle& handle, const Vec2& to,
                       const std::optional<Thing>& onto) {
    const Thing& thing = handle.thing;
    if (thing.kind == Kind::person && onto && can_be_followed(*onto) && onto->name != thing.name) {
        return look_set(context, thing, plan::ThingName{onto->name},
                        fmt::format("Turn {} to {}", thing.name, onto->name));
    }
    const std::optional<Vec2> at = place_of(context, thing);
    if (!at || (to - *at).norm() < kNowhere_m) {
        return failure("drag the handle away from the middle");
    }
    return direction_set(context, thing, Angle::radians(angle_of(to - *at)));
}

} // namespace throwline::edit
