/// Sayings that aim cameras and lamps, and tell people what to do.

#include "edit/say_make.h"

#include "edit/handles.h"
#include "edit/moves.h"
#include "edit/pick.h"
#include "edit/placing.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// Aims one lamp or camera at a place, or at the thing there.
Result<Step> aimed(const Context& context, const Thing& thing, const Vec2& to,
                   const std::optional<Thing>& onto) {
    const std::vector<Handle> handles = handles_of(context, thing);
    const auto handle = std::find_if(handles.begin(), handles.end(),
                                     [](const Handle& one) { return one.kind == HandleKind::aim; });
    if (handle == handles.end()) {
        if (thing.kind == Kind::camera && !is_locked(context.plan, thing)) {
            const Result<plan::Id<plan::Shot>> shot = shot_of(context, thing);
            if (!shot) {
                return tl::unexpected{shot.error()};
            }
        }
        return failure(
            is_locked(context.plan, thing)
                ? fmt::format("{} is locked; unlock it first", name_of(thing))
                : fmt::format("{} cannot be aimed; lamps and cameras can", name_of(thing)));
    }
    return dragged(context, *handle, to, onto);
}

Result<Said> aim_at_thing(const Context& context, const Heard& heard) {
    const Thing& onto = heard.things[1][0];
    const auto to = place_of(context, onto);
    if (!to) {
        return failure(fmt::format("{} is not on the floor now", name_of(onto)));
    }
    return as_said(
        each_in_turn(context, heard.things[0], "Aim", [&](const Context& now, const Thing& thing) {
            return aimed(now, thing, *to, onto);
        }));
}

Result<Said> aim_at_place(const Context& context, const Heard& heard) {
    return as_said(
        each_in_turn(context, heard.things[0], "Aim", [&](const Context& now, const Thing& thing) {
            return aimed(now, thing, heard.places[0], std::nullopt);
        }));
}

/// Changes marks of now.
Result<Said> with_marks(const Context& context, std::span<const Thing> people,
                        const std::function<void(plan::Mark&)>& change, const std::string& verb) {
    const Result<void> may = check_movable(context.plan, people);
    if (!may) {
        return tl::unexpected{may.error()};
    }
    return as_said(
        each_in_turn(context, people, verb, [&](const Context& now, const Thing& person) {
            Step step{"", now.plan, {}};
            plan::Mark* mark = own_mark(step.plan, {person.name}, now.now.beat);
            if (mark == nullptr) {
                return Result<Step>{
                    failure(fmt::format("{} is not on the floor now", name_of(person)))};
            }
            change(*mark);
            return Result<Step>{std::move(step)};
        }));
}

Result<Said> let_face_thing(const Context& context, const Heard& heard) {
    const plan::ThingName towards{heard.things[1][0].name};
    return with_marks(
        context, heard.things[0], [&](plan::Mark& mark) { mark.faces = towards; }, "Turn");
}

Result<Said> let_face_place(const Context& context, const Heard& heard) {
    return with_marks(
        context, heard.things[0], [&](plan::Mark& mark) { mark.faces = heard.places[0]; }, "Turn");
}

Result<Said> let_pose(const Context& context, const Heard& heard) {
    const std::string& word = heard.words[0];
    const plan::Pose pose = word == "sit"      ? plan::Pose::sit
                            : word == "lie"    ? plan::Pose::lie
                            : word == "crouch" ? plan::Pose::crouch
                                               : plan::Pose::stand;
    return with_marks(
        context, heard.things[0], [&](plan::Mark& mark) { mark.pose = pose; }, "Change pose of");
}

Result<Said> walk(const Context& context, const Heard& heard) {
    return with_marks(
        context, heard.things[0],
        [&](plan::Mark& mark) {
            mark.at = heard.places[0];
            mark.path.clear();
            for (std::size_t i = 1; i < heard.places.size(); ++i) {
                mark.path.push_back(heard.places[i]);
            }
        },
        "Walk");
}

constexpr std::array kRows{
    SayingRow{
        {"aim THINGS at THING", "Aims lamps or cameras at somebody or something", "aim key at Ana"},
        aim_at_thing},
    SayingRow{{"aim THINGS at PLACE", "Aims at a place, at the height that it had",
               "aim lamp 3 at 2 m, 4 m"},
              aim_at_place},
    SayingRow{
        {"walk PEOPLE to PLACE", "Where somebody stands from this beat on", "walk Ana to 3 m, 2 m"},
        walk},
    SayingRow{{"walk PEOPLE to PLACE by PLACE", "By a place on the way",
               "walk Ana to 3 m, 2 m by 1 m left of table"},
              walk},
    SayingRow{{"let PEOPLE face THING", "Looks at somebody or something", "let Ana face camera 1"},
              let_face_thing},
    SayingRow{{"let PEOPLE face PLACE", "Looks towards a place", "let Ana face 3 m, 0 m"},
              let_face_place},
    SayingRow{{"let PEOPLE stand|sit|lie|crouch", "Changes the pose", "let Ana sit"}, let_pose}};

} // namespace

std::span<const SayingRow> aim_sayings() {
    return kRows;
}

} // namespace throwline::edit
