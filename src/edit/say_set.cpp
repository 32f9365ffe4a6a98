/// Sayings that set values.

#include "edit/say_make.h"

#include "base/length_text.h"
#include "edit/handles.h"
#include "edit/moves.h"
#include "edit/placing.h"

#include <array>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// A focal length: what the handle at the edge of the coverage takes.
Result<Said> set_focal(const Context& context, const Heard& heard) {
    const Thing& camera = heard.things[0][0];
    const Result<plan::Id<plan::Shot>> shot = shot_of(context, camera);
    if (!shot) {
        return tl::unexpected{shot.error()};
    }
    if (is_locked(context.plan, camera)) {
        return failure(fmt::format("{} is locked; unlock it first", name_of(camera)));
    }
    const Handle edge{camera, HandleKind::coverage_left, 0, Vec2::Zero()};
    return as_said(typed(context, edge, shortest(heard.lengths[0].mm()) + " mm"));
}

Result<Said> set_level(const Context& context, const Heard& heard) {
    const double level = heard.numbers[0];
    if (level < 0.0 || level > 1.0) {
        return failure("a dimmer goes from 0 % to 100 %");
    }
    return as_said(
        each_in_turn(context, heard.things[0], "Dim", [&](const Context& now, const Thing& thing) {
            Step step{"", now.plan, {}};
            find(step.plan, plan::Id<plan::Lamp>{thing.name})->level = level;
            return Result<Step>{std::move(step)};
        }));
}

Result<Said> plug(const Context& context, const Heard& heard) {
    return as_said(
        each_in_turn(context, heard.things[0], "Plug", [&](const Context& now, const Thing& thing) {
            Step step{"", now.plan, {}};
            find(step.plan, plan::Id<plan::Lamp>{thing.name})->circuit = heard.circuits[0];
            return Result<Step>{std::move(step)};
        }));
}

Result<Said> set_value_of(const Context&, const Heard& heard) {
    return Said{FieldWish{heard.things[0], heard.texts[0], heard.texts[1]}};
}

Result<Said> set_value(const Context&, const Heard& heard) {
    return Said{FieldWish{{}, heard.texts[0], heard.texts[1]}};
}

constexpr std::array kRows{
    SayingRow{{"set CAMERA to LENGTH", "The focal length of the shot that it takes now",
               "set camera 1 to 35 mm"},
              set_focal},
    SayingRow{{"dim LAMPS to PERCENT", "The dimmer setting", "dim key to 60 %"}, set_level},
    SayingRow{{"plug LAMPS into CIRCUIT", "The circuit that it draws from", "plug lamp 3 into C1"},
              plug},
    SayingRow{{"set VALUE of THINGS to TEXT", "Any value that stands in the Card",
               "set height of key to 2.4 m"},
              set_value_of},
    SayingRow{{"set VALUE to TEXT", "A value of what is chosen; of the production when nothing is",
               "set title to Saturday kitchen"},
              set_value}};

} // namespace

std::span<const SayingRow> set_sayings() {
    return kRows;
}

} // namespace throwline::edit
