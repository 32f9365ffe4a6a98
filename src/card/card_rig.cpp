/// What lamps hang from, and what feeds them.

#include "base/mass.h"
#include "card/card_kinds.h"
#include "card/locate.h"
#include "card/place_fields.h"
#include "checks/circuit_sum.h"

#include <cmath>

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.1), Length::metres(100)};
constexpr LengthBounds kPitches{Length::metres(0.1), Length::metres(50)};
constexpr double kMostLoad = 100'000;

const auto kPipes = [](auto& plan) -> auto& { return plan.pipes; };
const auto kCircuits = [](auto& plan) -> auto& { return plan.circuits; };

Parts<plan::Grid> grid_part(const edit::Context& context) {
    return parts_of<plan::Grid>(context, "the grid",
                                std::vector{locator<plan::Grid>(
                                    [](auto& plan) { return plan.grid ? &*plan.grid : nullptr; })});
}

/// A mass in the plan's units; either unit may be typed.
template <class Part>
Field mass_field(const Parts<Part>& parts, FieldName name, UnitSystem units, double Part::* load) {
    const bool imperial = units == UnitSystem::imperial;
    Field made = field(
        parts, std::move(name), FieldKind::number,
        [=](const Part& part) {
            const double number = part.*load * (imperial ? kPoundsPerKilogram : 1.0);
            return shortest(std::round(number * 10.0) / 10.0) + (imperial ? " lb" : " kg");
        },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            std::string bare = trimmed(text);
            const bool pounds = bare.ends_with("lb") || (imperial && !bare.ends_with("kg"));
            if (bare.ends_with("lb") || bare.ends_with("kg")) {
                bare.resize(bare.size() - 2);
            }
            if (const auto number = read_number(bare, 0, kMostLoad, fault)) {
                part.*load = pounds ? *number / kPoundsPerKilogram : *number;
            }
            return fault;
        });
    made.hint = "kilograms or pounds; 0 when the papers do not say";
    return made;
}

void grid_count_sentence(Card& card, const Parts<plan::Grid>& grid, UnitSystem units) {
    say(card,
        {"Positions: ",
         whole_field(grid, {"grid_columns", "letters"}, {1, 100},
                     [](auto& part) -> auto& { return part.columns; }),
         " letters by ",
         whole_field(grid, {"grid_rows", "numbers"}, {1, 100},
                     [](auto& part) -> auto& { return part.rows; }),
         " numbers from ",
         point_field(grid, {"grid_origin", "origin"}, units,
                     [](auto& part) -> auto& { return part.origin; }),
         ", turned ",
         angle_field(grid, {"grid_turn", "turn"}, [](auto& part) -> auto& { return part.turn; }),
         "; its pipes run ",
         enum_field(grid, {"grid_run", "run"}, plan::kPipeRunNames,
                    [](auto& part) -> auto& { return part.run; }),
         "."});
}

Field pipe_end(const Parts<plan::Pipe>& pipes, const char* key, UnitSystem units,
               Vec2 plan::Pipe::* end) {
    return point_field(pipes, {key, std::string{"end "} + key}, units,
                       [end](auto& pipe) -> auto& { return pipe.*end; });
}

/// What the lamps on a circuit draw of what may be planned on it.
void load_sentence(Card& card, const CardInput& input, const plan::Circuit& circuit) {
    const checks::CircuitSum sum =
        checks::sum_of(circuit, input.context.plan, input.context.catalogue);
    const std::string result =
        fmt::format("{} of {} A", fixed(sum.current_a, 1), fixed(checks::allowed_a(circuit), 1));
    std::vector<WorkingTerm> terms;
    for (const plan::Lamp* lamp : sum.lamps) {
        const auto* instrument = input.context.catalogue.instrument(lamp->instrument);
        terms.push_back(
            {"", lamp->id.name, fixed(checks::current_a(*instrument, circuit.volts), 2) + " A"});
    }
    terms.push_back({"", "breaker", shortest(circuit.breaker_amps) + " A"});
    const int count = static_cast<int>(sum.lamps.size());
    say(card, {counted(count, "lamp") + (count == 1 ? " on it draws " : " on it draw "),
               Figure{"load", "Load of circuit " + circuit.id.name, result,
                      [terms, result] {
                          return Working{"load = sum of P / (U x power factor); what stays on for "
                                         "three hours or more is planned to 80 % of the breaker",
                                         terms, result,
                                         "NFPA 70 (NEC) 210.20(A), from code summaries; local code "
                                         "decides"};
                      }},
               ". Local code and licensed people decide."});
}

} // namespace

void grid_sentences(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Grid> grid = grid_part(input.context);
    if (grid.empty()) {
        return;
    }
    const auto length = [&](FieldName name, const LengthBounds& bounds, Length plan::Grid::* part) {
        return length_field(
            grid, std::move(name), units, bounds,
            [part](const plan::Grid& whole) { return whole.*part; },
            [part](plan::Grid& whole, Length value) { whole.*part = value; });
    };
    heading(card, "Pipe grid");
    say(card,
        {"Hangs at ", length({"grid_height", "height"}, kHeights, &plan::Grid::height),
         ", a position every ", length({"pitch_x", "pitch across"}, kPitches, &plan::Grid::pitch_x),
         " across and ", length({"pitch_y", "pitch up the page"}, kPitches, &plan::Grid::pitch_y),
         " up the page."});
    grid_count_sentence(card, grid, units);
    say(card,
        {"By the venue's papers it takes ",
         mass_field(grid, {"grid_point_load", "point load"}, units, &plan::Grid::point_load_kg),
         " a point and ",
         mass_field(grid, {"grid_pipe_load", "pipe load"}, units, &plan::Grid::pipe_load_kg),
         " a pipe; 0 when they do not say, and then nothing is compared. The venue and licensed "
         "people decide what may hang."});
}

void pipe_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Pipe> pipes = entities<plan::Pipe>(input, kPipes);
    if (pipes.empty()) {
        return;
    }
    say(card, {length_field(
                   pipes, {"height", "height"}, units, kHeights,
                   [](const plan::Pipe& pipe) { return pipe.height; },
                   [](plan::Pipe& pipe, Length height) { pipe.height = height; }),
               " above the floor, from ", pipe_end(pipes, "from", units, &plan::Pipe::from), " to ",
               pipe_end(pipes, "to", units, &plan::Pipe::to), "."});
    say(card, {"By the venue's papers it takes ",
               mass_field(pipes, {"load", "load"}, units, &plan::Pipe::load_kg), " in all and ",
               mass_field(pipes, {"point_load", "point load"}, units, &plan::Pipe::point_load_kg),
               " at one point; 0 when they do not say, and then nothing is compared. The venue and "
               "licensed people decide what may hang."});
}

void outlet_card(Card& card, const CardInput& input) {
    const Parts<plan::Circuit> circuits = entities<plan::Circuit>(input, kCircuits);
    if (circuits.empty()) {
        return;
    }
    std::vector<Piece> pieces;
    if (input.chosen.size() == 1) {
        pieces = {"On circuit ", name_field(input.chosen.front()), ", "};
    }
    pieces.insert(pieces.end(),
                  {number_field(
                       circuits, {"volts", "voltage"}, {1, 1000, " V"},
                       [](const plan::Circuit& circuit) { return circuit.volts; },
                       [](plan::Circuit& circuit, double volts) { circuit.volts = volts; }),
                   " behind a breaker of ",
                   number_field(
                       circuits, {"breaker", "breaker"}, {0.5, 10'000, " A"},
                       [](const plan::Circuit& circuit) { return circuit.breaker_amps; },
                       [](plan::Circuit& circuit, double amps) { circuit.breaker_amps = amps; }),
                   "; on for three hours or more: ",
                   yes_no_field(circuits, {"continuous", "continuous load"},
                                [](auto& circuit) -> auto& { return circuit.continuous; }),
                   "."});
    say(card, std::move(pieces));
    if (input.chosen.size() == 1) {
        load_sentence(card, input, circuits.first());
    }
}

} // namespace throwline::card
