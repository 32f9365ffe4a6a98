/// Sayings that put things on the floor, hang lamps and take away.

#include "edit/say_make.h"

#include "edit/make.h"
#include "edit/moves.h"
#include "edit/pick.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <map>

namespace throwline::edit {

namespace {

Result<Said> put_item(const Context& context, const Heard& heard) {
    return as_said(put_down(context, heard.items[0], heard.places[0]));
}

Result<Said> put_thing(const Context& context, const Heard& heard) {
    const auto moves = move_sayings();
    const auto row = std::find_if(moves.begin(), moves.end(), [](const SayingRow& one) {
        return one.saying.form == "move THINGS to PLACE";
    });
    return row->make(context, heard);
}

/// How far below the pipe lamps usually hang: that of the most of them, else 30 cm (common
/// practice, no source).
Length usual_drop(const plan::Plan& plan) {
    std::map<Length, int> counts;
    for (const plan::Lamp& lamp : plan.lamps) {
        if (const auto* hang = std::get_if<plan::GridHang>(&lamp.mount)) {
            ++counts[hang->drop];
        }
    }
    const auto most =
        std::max_element(counts.begin(), counts.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == counts.end() ? Length::millimetres(300) : most->first;
}

Result<Said> hang_lamps(const Context& context, const Heard& heard) {
    const Result<void> may = check_movable(context.plan, heard.things[0]);
    if (!may) {
        return tl::unexpected{may.error()};
    }
    return as_said(
        each_in_turn(context, heard.things[0], "Hang", [&](const Context& now, const Thing& thing) {
            Step step{"", now.plan, {}};
            plan::Lamp& lamp = *find(step.plan, plan::Id<plan::Lamp>{thing.name});
            const auto* hung = std::get_if<plan::GridHang>(&lamp.mount);
            const Length drop = hung != nullptr ? hung->drop : usual_drop(now.plan);
            lamp.mount = plan::GridHang{in_capitals(heard.texts[0]), drop};
            return Result<Step>{std::move(step)};
        }));
}

Result<Said> hang_on_pipe(const Context& context, const Heard& heard) {
    const Result<void> may = check_movable(context.plan, heard.things[0]);
    if (!may) {
        return tl::unexpected{may.error()};
    }
    const plan::Id<plan::Pipe> pipe{heard.things[1][0].name};
    return as_said(
        each_in_turn(context, heard.things[0], "Hang", [&](const Context& now, const Thing& thing) {
            Step step{"", now.plan, {}};
            plan::Lamp& lamp = *find(step.plan, plan::Id<plan::Lamp>{thing.name});
            lamp.mount = plan::PipeHang{pipe, heard.lengths[0], usual_drop(now.plan)};
            return Result<Step>{std::move(step)};
        }));
}

Result<Said> hang_item(const Context& context, const Heard& heard) {
    if (heard.items[0].shelf != Shelf::lamp) {
        return failure(fmt::format("\"{}\" is no lamp, so it cannot be hung", heard.items[0].item));
    }
    return as_said(put_down(context, heard.items[0], heard.places[0]));
}

/// The stand that most lamps stand on, else the first of the catalogue that is no camera's.
std::string usual_stand(const Context& context) {
    std::map<std::string, int> counts;
    for (const plan::Lamp& lamp : context.plan.lamps) {
        if (const auto* stand = std::get_if<plan::StandMount>(&lamp.mount)) {
            ++counts[stand->support];
        }
    }
    const auto most =
        std::max_element(counts.begin(), counts.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    if (most != counts.end()) {
        return most->first;
    }
    for (const catalogue::Support& support : context.catalogue.supports) {
        if (!support.for_camera) {
            return support.name;
        }
    }
    return {};
}

Result<Said> stand_lamps(const Context& context, const Heard& heard) {
    const Result<void> may = check_movable(context.plan, heard.things[0]);
    if (!may) {
        return tl::unexpected{may.error()};
    }
    return as_said(each_in_turn(
        context, heard.things[0], "Stand", [&](const Context& now, const Thing& thing) {
            Step step{"", now.plan, {}};
            plan::Lamp& lamp = *find(step.plan, plan::Id<plan::Lamp>{thing.name});
            plan::StandMount stand;
            stand.support = usual_stand(now);
            stand.at = heard.places[0];
            const catalogue::Support* row = now.catalogue.support(stand.support);
            const auto point = plan::lamp_point(now.plan, lamp);
            const Length height = Length::metres(point ? point->z() : 2.0);
            stand.height =
                row == nullptr ? height : std::clamp(height, row->height_min, row->height_max);
            lamp.mount = stand;
            return Result<Step>{std::move(step)};
        }));
}

Result<Said> take_away(const Context& context, const Heard& heard) {
    return as_said(removed(context, whole_groups(context, heard.things[0])));
}

Result<Said> send_off(const Context& context, const Heard& heard) {
    return as_said(removed(context, heard.things[0], true));
}

Result<Said> rename_thing(const Context& context, const Heard& heard) {
    return as_said(renamed(context, heard.things[0][0], heard.texts[0]));
}

constexpr std::array kRows{
    SayingRow{{"put THINGS at PLACE", "Puts what is in the plan at a place", "put Ana at 3 m, 2 m"},
              put_thing},
    SayingRow{{"put ITEM at PLACE", "Puts something from the Stores down",
               "put dining chair at 3 m, 2 m"},
              put_item},
    SayingRow{{"hang LAMPS at POSITION", "Hangs from the grid", "hang lamp 3 at C2"}, hang_lamps},
    SayingRow{{"hang LAMPS on PIPE at LENGTH", "Hangs from a pipe, so far along it",
               "hang lamp 3 on pipe 1 at 1.2 m"},
              hang_on_pipe},
    SayingRow{
        {"hang ITEM at POSITION", "Hangs another lamp from the grid", "hang Fresnel 1 kW at C2"},
        hang_item},
    SayingRow{{"stand LAMPS at PLACE", "Puts lamps on a stand", "stand lamp 3 at 4 m, 1 m"},
              stand_lamps},
    SayingRow{{"take away THINGS", "Takes things off the plan", "take away sofa and rug"},
              take_away},
    SayingRow{{"send off PEOPLE", "Somebody leaves the floor from this beat on", "send off Ana"},
              send_off},
    SayingRow{{"rename THING to TEXT", "Gives another name, everywhere", "rename sofa to couch"},
              rename_thing}};

} // namespace

std::span<const SayingRow> put_sayings() {
    return kRows;
}

} // namespace throwline::edit
