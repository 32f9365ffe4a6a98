/// Sayings that move, turn, copy and line up.

#include "edit/say_make.h"

#include "base/length_text.h"
#include "base/words.h"
#include "edit/moves.h"
#include "edit/pick.h"
#include "edit/placing.h"

#include <array>
#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

Result<Said> move_by(const Context& context, const Heard& heard) {
    Vec2 by = Vec2::Zero();
    for (std::size_t i = 0; i < heard.lengths.size(); ++i) {
        by += direction_of(heard.words[i]) * heard.lengths[i].m();
    }
    return as_said(moved(context, whole_groups(context, heard.things[0]), by));
}

/// Somebody who is off the floor comes onto it.
Result<Step> entered(const Context& context, const Thing& thing, const Vec2& at) {
    Step step{fmt::format("Put {} on the floor", name_of(thing)), context.plan, {thing}};
    plan::Beat* beat = find(step.plan, context.now.beat);
    if (beat == nullptr) {
        return failure("there is no beat yet; say \"new beat\" first");
    }
    plan::Mark mark;
    mark.at = at;
    beat->marks[{thing.name}] = mark;
    return step;
}

Result<Said> move_to(const Context& context, const Heard& heard) {
    const std::vector<Thing>& things = heard.things[0];
    if (things.size() == 1 && things[0].kind == Kind::person && !place_of(context, things[0])) {
        return as_said(entered(context, things[0], heard.places[0]));
    }
    const Result<Vec2> middle = middle_of(context, things);
    if (!middle) {
        return tl::unexpected{middle.error()};
    }
    return as_said(moved(context, whole_groups(context, things), heard.places[0] - *middle));
}

Result<Said> move_towards(const Context& context, const Heard& heard) {
    const Result<Vec2> from = middle_of(context, heard.things[0]);
    if (!from) {
        return tl::unexpected{from.error()};
    }
    const Vec2 way = heard.places[0] - *from;
    if (way.norm() < 1e-6) { // a direction needs two places
        return failure("it stands there already, so no direction leads there");
    }
    const double sign = heard.words[0] == "towards" ? 1.0 : -1.0;
    return as_said(moved(context, whole_groups(context, heard.things[0]),
                         Vec2{way.normalized() * (sign * heard.lengths[0].m())}));
}

Result<Said> turn(const Context& context, const Heard& heard) {
    const Result<Vec2> about = middle_of(context, heard.things[0]);
    if (!about) {
        return tl::unexpected{about.error()};
    }
    const bool is_right =
        !heard.words.empty() && (heard.words[0] == "right" || heard.words[0] == "clockwise");
    return as_said(turned(context, whole_groups(context, heard.things[0]), *about,
                          is_right ? -heard.angles[0] : heard.angles[0]));
}

Result<Said> mirror(const Context& context, const Heard& heard, Angle line) {
    const Result<Vec2> on = middle_of(context, heard.things[0]);
    if (!on) {
        return tl::unexpected{on.error()};
    }
    return as_said(mirrored(context, whole_groups(context, heard.things[0]), *on, line));
}

Result<Said> mirror_across(const Context& context, const Heard& heard) {
    return mirror(context, heard, Angle::degrees(90));
}

Result<Said> mirror_up(const Context& context, const Heard& heard) {
    return mirror(context, heard, Angle::degrees(0));
}

Result<Said> copy(const Context& context, const Heard& heard) {
    const Vec2 by = direction_of(heard.words[0]) * heard.lengths[0].m();
    return as_said(copied(context, whole_groups(context, heard.things[0]), by));
}

Result<Said> copy_times(const Context& context, const Heard& heard) {
    constexpr double kMostCopies = 200.0;
    const double times = heard.numbers[0];
    if (times < 1.0 || times > kMostCopies || times != std::floor(times)) {
        return failure("copies are counted from 1 to 200");
    }
    Array array;
    array.columns = static_cast<int>(times) + 1;
    array.column_step_m = direction_of(heard.words[0]) * heard.lengths[0].m();
    return as_said(arrayed(context, whole_groups(context, heard.things[0]), array));
}

Result<Said> line_up(const Context& context, const Heard& heard) {
    const std::string& edge = heard.words[0];
    const AlignTo to = edge == "left"    ? AlignTo::left
                       : edge == "right" ? AlignTo::right
                       : edge == "top"   ? AlignTo::top
                                         : AlignTo::bottom;
    return as_said(aligned(context, heard.things[0], to));
}

template <AlignTo to>
Result<Said> line_up_middles(const Context& context, const Heard& heard) {
    return as_said(aligned(context, heard.things[0], to));
}

Result<Said> spread_out(const Context& context, const Heard& heard) {
    return as_said(
        distributed(context, heard.things[0],
                    heard.words[0] == "across" ? DistributeAlong::across : DistributeAlong::up));
}

/// Raises one thing by what may be negative; what hangs from the grid hangs lower instead.
Result<Step> raised_by(const Context& context, const Thing& thing, Length by) {
    Step step{"", context.plan, {}};
    if (plan::Lamp* lamp = find(step.plan, plan::Id<plan::Lamp>{thing.name});
        lamp != nullptr && thing.kind == Kind::lamp) {
        std::visit(
            [&](auto& mount) {
                if constexpr (requires { mount.drop; }) {
                    mount.drop = mount.drop - by;
                } else {
                    mount.height = mount.height + by;
                }
            },
            lamp->mount);
        return step;
    }
    if (plan::Scenery* piece = find(step.plan, plan::Id<plan::Scenery>{thing.name});
        piece != nullptr && thing.kind == Kind::scenery) {
        piece->elevation = piece->elevation + by;
        return step;
    }
    if (plan::Boom* boom = find(step.plan, plan::Id<plan::Boom>{thing.name});
        boom != nullptr && thing.kind == Kind::boom) {
        boom->height = boom->height + by;
        return step;
    }
    plan::Camera* camera = find(step.plan, plan::Id<plan::Camera>{thing.name});
    if (camera == nullptr || thing.kind != Kind::camera) {
        return failure(
            fmt::format("{} has no height that can be raised or lowered", name_of(thing)));
    }
    const Result<plan::Id<plan::Shot>> shot = shot_of(context, thing);
    if (shot) {
        plan::Shot& taken = *find(step.plan, *shot);
        taken.height = taken.height.value_or(camera->eye_height) + by;
    } else {
        camera->eye_height = camera->eye_height + by;
    }
    return step;
}

Result<Said> raise(const Context& context, const Heard& heard) {
    const Result<void> may = check_movable(context.plan, heard.things[0]);
    if (!may) {
        return tl::unexpected{may.error()};
    }
    const bool is_up = heard.words[0] == "raise";
    const Length by = is_up ? heard.lengths[0] : -heard.lengths[0];
    return as_said(each_in_turn(
        context, heard.things[0], is_up ? "Raise" : "Lower",
        [&](const Context& now, const Thing& thing) { return raised_by(now, thing, by); }));
}

constexpr std::array kRows{
    SayingRow{{"move THINGS left|right|up|down LENGTH", "Moves across the sheet",
               "move camera 2 left 40 cm"},
              move_by},
    SayingRow{{"move THINGS left|right LENGTH and up|down LENGTH", "Moves both ways at once",
               "move sofa right 1 m and up 30 cm"},
              move_by},
    SayingRow{{"move THINGS to PLACE", "Moves the middle of them to a place",
               "move boom to 1 m left of Ana"},
              move_to},
    SayingRow{{"move THINGS towards|from PLACE LENGTH", "Moves nearer to, or farther from, a place",
               "move camera 1 towards Ana 50 cm"},
              move_towards},
    SayingRow{{"turn THINGS ANGLE", "Turns anticlockwise, seen from above", "turn sofa 15 deg"},
              turn},
    SayingRow{{"turn THINGS left|right ANGLE", "Turns to the left or to the right",
               "turn sofa right 90 deg"},
              turn},
    SayingRow{{"turn THINGS ANGLE left|right|clockwise|anticlockwise", "The same, said otherwise",
               "turn sofa 30 deg clockwise"},
              turn},
    SayingRow{{"mirror THINGS left to right", "Left becomes right", "mirror sofa left to right"},
              mirror_across},
    SayingRow{{"mirror THINGS top to bottom", "What is up becomes down",
               "mirror sofa and rug top to bottom"},
              mirror_up},
    SayingRow{{"copy THINGS left|right|up|down LENGTH", "Puts a copy beside",
               "copy chair left right 60 cm"},
              copy},
    SayingRow{{"copy THINGS NUMBER times left|right|up|down LENGTH", "Puts a row of copies",
               "copy chair left 5 times right 60 cm"},
              copy_times},
    SayingRow{{"line up THINGS at left|right|top|bottom", "Brings an edge of each to one line",
               "line up them at left"},
              line_up},
    SayingRow{{"line up THINGS side by side", "Brings the middles to one height on the sheet",
               "line up all cast side by side"},
              line_up_middles<AlignTo::middle_up>},
    SayingRow{{"line up THINGS one above the other", "Brings the middles under each other",
               "line up them one above the other"},
              line_up_middles<AlignTo::middle_across>},
    SayingRow{{"spread out THINGS across|up", "Makes the gaps even", "spread out all lamps across"},
              spread_out},
    SayingRow{{"raise|lower THINGS LENGTH", "Changes how high something hangs, stands or looks",
               "raise camera 1 20 cm"},
              raise}};

} // namespace

std::span<const SayingRow> move_sayings() {
    return kRows;
}

} // namespace throwline::edit
