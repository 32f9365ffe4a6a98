#include "card/place_fields.h"

#include "base/words.h"
#include "card/field_workings.h"
#include "card/read_values.h"
#include "edit/moves.h"
#include "edit/pick.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::card {

namespace {

Field coordinate(const edit::Context& context, const edit::Thing& thing, const Vec2& at,
                 Eigen::Index axis) {
    Field made;
    made.key = std::string{axis == 0 ? "x" : "y"};
    made.label = fmt::format("{} of {}", axis == 0 ? "Place across" : "Place up the page",
                             edit::name_of(thing));
    made.kind = FieldKind::length;
    made.value = shown(Length::metres(at[axis]), context.plan.units);
    made.hint = axis == 0 ? "from the plan's origin, to the right" : "from the plan's origin, up";
    made.working = length_working(Length::metres(at[axis]));
    made.set = [thing, axis](const edit::Context& now,
                             const std::string& text) -> Result<edit::Step> {
        std::string fault;
        const auto length = read_length(text, now.plan.units, kPlaces, fault);
        const std::optional<Vec2> place = edit::place_of(now, thing);
        if (!length || !place) {
            return failure(length ? edit::name_of(thing) + " is not on the floor now" : fault);
        }
        Vec2 by = Vec2::Zero();
        by[axis] = length->m() - (*place)[axis];
        return edit::moved(now, std::vector{thing}, by);
    };
    return made;
}

/// Of a yes or no that an edit sets of all things.
struct Holding {
    const char* key;
    const char* words;
    bool (*is)(const plan::Plan&, const edit::Thing&);
    Result<edit::Step> (*put)(const edit::Context&, std::span<const edit::Thing>, bool);
};

Field holding_field(const edit::Context& context, std::span<const edit::Thing> things,
                    const std::string& what, const Holding& holding) {
    Field made;
    made.key = holding.key;
    made.label = fmt::format("{} of {}", holding.words, what);
    made.kind = FieldKind::yes_no;
    made.choices = {"yes", "no"};
    const bool first = holding.is(context.plan, things.front());
    made.mixed = std::any_of(things.begin(), things.end(), [&](const edit::Thing& thing) {
        return holding.is(context.plan, thing) != first;
    });
    if (!made.mixed) {
        made.value = std::string{first ? "yes" : "no"};
    }
    made.set = [all = std::vector(things.begin(), things.end()), put = holding.put](
                   const edit::Context& now, const std::string& text) -> Result<edit::Step> {
        std::string fault;
        const auto yes = read_yes_no(text, fault);
        return yes ? put(now, all, *yes) : Result<edit::Step>{failure(fault)};
    };
    return made;
}

} // namespace

Field name_field(const edit::Thing& thing) {
    Field made;
    made.key = "name";
    made.label = fmt::format("Name of {}", edit::name_of(thing));
    made.value = thing.name;
    made.hint = "what the crew calls it";
    made.set = [thing](const edit::Context& context, const std::string& text) {
        return edit::renamed(context, thing, trimmed(text));
    };
    return made;
}

std::vector<Piece> place_pieces(const edit::Context& context, const edit::Thing& thing) {
    const std::optional<Vec2> at = edit::place_of(context, thing);
    if (!at) {
        return {};
    }
    return {"At ", coordinate(context, thing, *at, 0), " across, ",
            coordinate(context, thing, *at, 1), " up the page."};
}

std::vector<Piece> held_pieces(const edit::Context& context, std::span<const edit::Thing> things,
                               const std::string& what) {
    return {
        "Locked ",
        holding_field(context, things, what, {"locked", "Lock", edit::is_locked, edit::locked}),
        ", hidden ",
        holding_field(context, things, what, {"hidden", "Hiding", edit::is_hidden, edit::hidden}),
        "."};
}

} // namespace throwline::card
