#include "card/fields.h"
#include "card/locate.h"
#include "checks/circuit_sum.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.1), Length::metres(100)};
constexpr LengthBounds kThicknesses{Length::metres(0.001), Length::metres(5)};
constexpr LengthBounds kAlong{Length::metres(0), Length::metres(1000)};

Parts<plan::Wall> walls_of(const CardInput& input) {
    std::vector<Parts<plan::Wall>::Locate> where;
    for (const edit::Thing& thing : input.chosen) {
        where.push_back([index = static_cast<std::size_t>(thing.index)](
                            plan::Plan& plan, const edit::Context&) -> plan::Wall* {
            return index < plan.room.walls.size() ? &plan.room.walls[index] : nullptr;
        });
    }
    return parts_of<plan::Wall>(input.context, what_of(input.chosen), std::move(where));
}

/// The next corner moves along the wall.
Result<edit::Step> wall_length_set(const edit::Context& context, int wall, Length length) {
    edit::Step step{
        fmt::format("Set length of wall {}", plan::number_of_wall(wall)), context.plan, {}};
    Polygon& outline = step.plan.room.outline;
    const auto index = static_cast<std::size_t>(wall);
    if (index >= outline.size()) {
        return failure("that wall is not there any more");
    }
    Vec2& end = outline[(index + 1) % outline.size()];
    end = outline[index] + (end - outline[index]).normalized() * length.m();
    if (const auto sound = edit::check_walls(step.plan); !sound) {
        return tl::unexpected{sound.error()};
    }
    return step;
}

Field wall_length_field(const CardInput& input, int wall) {
    const Polygon& outline = input.context.plan.room.outline;
    const auto index = static_cast<std::size_t>(wall);
    const double length_m = (outline[(index + 1) % outline.size()] - outline[index]).norm();
    Field made;
    made.key = "length";
    made.label = fmt::format("Length of wall {}", plan::number_of_wall(wall));
    made.kind = FieldKind::length;
    made.value = shown(Length::metres(length_m), input.context.plan.units);
    made.hint = "the corner at its end moves along it";
    made.set = [wall](const edit::Context& context, const std::string& text) -> Result<edit::Step> {
        std::string fault;
        const auto length = read_length(text, context.plan.units,
                                        {Length::metres(0.05), Length::metres(1000)}, fault);
        return length ? wall_length_set(context, wall, *length)
                      : Result<edit::Step>{failure(fault)};
    };
    return made;
}

std::vector<std::string> finishes_or_room(const catalogue::Catalogue& catalogue) {
    std::vector<std::string> finishes = row_names(catalogue.finishes);
    finishes.insert(finishes.begin(), "as the room");
    return finishes;
}

} // namespace

void wall_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const UnitSystem units = context.plan.units;
    const Parts<plan::Wall> walls = walls_of(input);
    if (walls.empty()) {
        return;
    }
    if (input.chosen.size() == 1) {
        say(card, {"", wall_length_field(input, input.chosen.front().index), " long."});
    }
    say(card, {"",
               length_field(
                   walls, {"height", "height"}, units, kHeights,
                   [](const plan::Wall& wall) { return wall.height; },
                   [](plan::Wall& wall, Length height) { wall.height = height; }),
               " high, ",
               length_field(
                   walls, {"thickness", "thickness"}, units, kThicknesses,
                   [](const plan::Wall& wall) { return wall.thickness; },
                   [](plan::Wall& wall, Length thickness) { wall.thickness = thickness; }),
               " thick."});
    say(card,
        {"Finish ",
         choice_field(
             walls, {"finish", "finish"}, finishes_or_room(context.catalogue),
             [](const plan::Wall& wall) {
                 return wall.finish.empty() ? std::string{"as the room"} : wall.finish;
             },
             [](plan::Wall& wall, const std::string& name) {
                 wall.finish = name == "as the room" ? "" : name;
             }),
         "; a shot may see it: ",
         yes_no_field(
             walls, {"dressed", "dressing"}, [](const plan::Wall& wall) { return wall.dressed; },
             [](plan::Wall& wall, bool dressed) { wall.dressed = dressed; }),
         "."});
}

void opening_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Opening> openings = entities<plan::Opening>(input);
    if (openings.empty()) {
        return;
    }
    const auto length = [&](const char* key, const char* words, Length plan::Opening::* part) {
        return length_field(
            openings, {key, words}, units, kAlong,
            [part](const plan::Opening& opening) { return opening.*part; },
            [part](plan::Opening& opening, Length value) { opening.*part = value; });
    };
    say(card,
        {"A ",
         choice_field(
             openings, {"kind", "kind"}, choice_names(plan::kOpeningKindNames),
             [](const plan::Opening& opening) { return std::string{plan::name_of(opening.kind)}; },
             [](plan::Opening& opening, const std::string& name) {
                 opening.kind = choice_named(plan::kOpeningKindNames, name);
                 if (opening.kind != plan::OpeningKind::door) {
                     opening.swing.reset();
                 }
             }),
         " in wall ",
         number_field(
             openings, {"wall", "wall"}, 1, 1000, "",
             [](const plan::Opening& opening) {
                 return static_cast<double>(plan::number_of_wall(opening.wall));
             },
             [](plan::Opening& opening, double number) {
                 opening.wall = plan::index_of_wall(static_cast<int>(std::lround(number)));
             }),
         ", ", length("from_start", "place along the wall", &plan::Opening::from_start),
         " from its start."});
    say(card, {"", length("width", "width", &plan::Opening::width), " wide, from ",
               length("sill", "sill", &plan::Opening::sill), " to ",
               length("head", "head", &plan::Opening::head), " above the floor."});
    static const std::vector<std::string> kSwings{"no leaf", "in, hinge at start",
                                                  "in, hinge at end", "out, hinge at start",
                                                  "out, hinge at end"};
    if (openings.first().kind == plan::OpeningKind::door) {
        say(card, {"Its leaf opens ",
                   choice_field(
                       openings, {"swing", "swing"}, kSwings,
                       [](const plan::Opening& opening) {
                           return !opening.swing
                                      ? kSwings[0]
                                      : kSwings[(opening.swing->inward ? 1U : 3U)
                                                + (opening.swing->hinge_at_start ? 0U : 1U)];
                       },
                       [](plan::Opening& opening, const std::string& words) {
                           if (words == kSwings[0]) {
                               opening.swing.reset();
                               return;
                           }
                           plan::Swing swing = opening.swing.value_or(plan::Swing{});
                           swing.inward = words.starts_with("in");
                           swing.hinge_at_start = words.ends_with("start");
                           opening.swing = swing;
                       }),
                   "."});
    }
    say(card, {"Counted on as a way out: ",
               yes_no_field(
                   openings, {"way_out", "way out"},
                   [](const plan::Opening& opening) { return opening.way_out; },
                   [](plan::Opening& opening, bool way_out) { opening.way_out = way_out; }),
               "; lets through ",
               number_field(
                   openings, {"transmission", "transmission"}, 0, 100, " %",
                   [](const plan::Opening& opening) {
                       return std::round(opening.transmission * 1000.0) / 10.0;
                   },
                   [](plan::Opening& opening, double percent) {
                       opening.transmission = percent / 100.0;
                   }),
               " of the light."});
}

void pipe_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Pipe> pipes = entities<plan::Pipe>(input);
    if (pipes.empty()) {
        return;
    }
    const auto load = [&](const char* key, const char* words, double plan::Pipe::* part) {
        return number_field(
            pipes, {key, words}, 0, 100'000, " kg",
            [part](const plan::Pipe& pipe) { return pipe.*part; },
            [part](plan::Pipe& pipe, double kg) { pipe.*part = kg; });
    };
    say(card, {"",
               length_field(
                   pipes, {"height", "height"}, units, kHeights,
                   [](const plan::Pipe& pipe) { return pipe.height; },
                   [](plan::Pipe& pipe, Length height) { pipe.height = height; }),
               " above the floor."});
    say(card,
        {"By the venue's papers it takes ", load("load", "load", &plan::Pipe::load_kg),
         " in all and ", load("point_load", "point load", &plan::Pipe::point_load_kg),
         " at one point; 0 is not known. The venue and licensed people decide what may hang."});
}

void outlet_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const Parts<plan::Circuit> circuits = entities<plan::Circuit>(input);
    if (circuits.empty()) {
        return;
    }
    say(card,
        {"On circuit ", name_field(input.chosen.front()), ", ",
         number_field(
             circuits, {"volts", "voltage"}, 1, 1000, " V",
             [](const plan::Circuit& circuit) { return circuit.volts; },
             [](plan::Circuit& circuit, double volts) { circuit.volts = volts; }),
         " behind a breaker of ",
         number_field(
             circuits, {"breaker", "breaker"}, 0.5, 10'000, " A",
             [](const plan::Circuit& circuit) { return circuit.breaker_amps; },
             [](plan::Circuit& circuit, double amps) { circuit.breaker_amps = amps; }),
         "; on for three hours or more: ",
         yes_no_field(
             circuits, {"continuous", "continuous load"},
             [](const plan::Circuit& circuit) { return circuit.continuous; },
             [](plan::Circuit& circuit, bool continuous) { circuit.continuous = continuous; }),
         "."});
    const checks::CircuitSum sum =
        checks::sum_of(circuits.first(), context.plan, context.catalogue);
    const double allowed_a = checks::allowed_a(circuits.first());
    const std::string result =
        fmt::format("{} of {} A", fixed(sum.current_a, 1), fixed(allowed_a, 1));
    say(card, {fmt::format("{} on it draw ", sum.lamps.size() == 1
                                                 ? std::string{"1 lamp"}
                                                 : fmt::format("{} lamps", sum.lamps.size())),
               Figure{"load", result,
                      [sum, result] {
                          Working working{"current = sum of power / (volts x power factor)",
                                          {},
                                          result,
                                          "NFPA 70 (NEC) 210.20(A) for continuous loads, from "
                                          "code summaries; local code decides"};
                          working.inputs.push_back(
                              {"P", "power", fmt::format("{} W", fixed(sum.power_w, 0))});
                          return working;
                      }},
               ". Local code and licensed people decide."});
}

void boom_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Boom> booms = entities<plan::Boom>(input);
    if (booms.empty()) {
        return;
    }
    say(card, {"A pole of ",
               length_field(
                   booms, {"pole", "pole"}, units, {Length::metres(0.3), Length::metres(20)},
                   [](const plan::Boom& boom) { return boom.pole; },
                   [](plan::Boom& boom, Length pole) { boom.pole = pole; }),
               ", the microphone ",
               length_field(
                   booms, {"height", "height of the microphone"}, units,
                   {Length::metres(0.1), Length::metres(20)},
                   [](const plan::Boom& boom) { return boom.height; },
                   [](plan::Boom& boom, Length height) { boom.height = height; }),
               " up."});
}

} // namespace throwline::card
