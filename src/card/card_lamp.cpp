#include "card/fields.h"
#include "card/locate.h"
#include "checks/light_text.h"
#include "plan/places.h"
#include "stage/light_at.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.05), Length::metres(30)};
constexpr LengthBounds kDrops{Length::metres(0), Length::metres(20)};
constexpr LengthBounds kAlong{Length::metres(0), Length::metres(1000)};

plan::LampMount& mount_of(plan::Lamp& lamp) {
    return lamp.mount;
}

std::vector<std::string> positions(const plan::Plan& plan) {
    std::vector<std::string> names;
    if (plan.grid) {
        for (int column = 0; column < plan.grid->columns; ++column) {
            for (int row = 0; row < plan.grid->rows; ++row) {
                names.push_back(plan::grid_name(column, row));
            }
        }
    }
    return names;
}

constexpr std::array kHeldWords{"from the grid", "from a pipe", "on a stand", "on a wall",
                                "as a practical"};

/// Held in another way, as near as may be to where it is.
std::string hold(plan::Lamp& lamp, const std::string& words, const edit::Context& context) {
    const plan::Plan& plan = context.plan;
    const std::optional<Vec3> point = plan::lamp_point(plan, lamp);
    const Vec2 at = point ? floor_of(*point) : Vec2::Zero();
    const Length height = Length::metres(point ? std::max(point->z(), 0.1) : 2.0);
    if (words == kHeldWords[0]) {
        if (!plan.grid) {
            return "there is no grid to hang it from";
        }
        lamp.mount = edit::mount_near(plan, plan::GridHang{"A1", Length::metres(0.3)}, at);
    } else if (words == kHeldWords[1]) {
        if (plan.pipes.empty()) {
            return "there is no pipe to hang it from";
        }
        lamp.mount = edit::mount_near(
            plan, plan::PipeHang{plan.pipes.front().id, {}, Length::metres(0.3)}, at);
    } else if (words == kHeldWords[2]) {
        const catalogue::Support* stand = context.catalogue.support("medium light stand");
        if (stand == nullptr) {
            return "the Stores have no lamp stand";
        }
        lamp.mount = plan::StandMount{at, std::clamp(height, stand->height_min, stand->height_max),
                                      stand->name};
    } else if (words == kHeldWords[3]) {
        if (plan.room.outline.empty()) {
            return "there is no wall to clamp it to";
        }
        lamp.mount = edit::mount_near(plan, plan::WallMount{0, {}, height}, at);
    } else {
        lamp.mount = plan::PracticalMount{at, height};
    }
    return {};
}

Field held_field(const Parts<plan::Lamp>& lamps) {
    const std::vector<std::string> choices{kHeldWords.begin(), kHeldWords.end()};
    Field made = field(
        lamps, {"held", "mount"}, FieldKind::choice,
        [](const plan::Lamp& lamp) { return std::string{kHeldWords[lamp.mount.index()]}; },
        [choices](plan::Lamp& lamp, const std::string& text, const edit::Context& now) {
            std::string fault;
            const auto words = read_choice(text, choices, fault);
            return words ? hold(lamp, *words, now) : fault;
        });
    made.choices = choices;
    return made;
}

std::vector<Piece> mount_pieces(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    const UnitSystem units = context.plan.units;
    const auto drop = [&](const auto& parts) {
        return length_field(
            parts, {"drop", "drop"}, units, kDrops, [](const auto& part) { return part.drop; },
            [](auto& part, Length length) { part.drop = length; });
    };
    const auto height = [&](const auto& parts) {
        return length_field(
            parts, {"height", "height"}, units, kHeights,
            [](const auto& part) { return part.height; },
            [](auto& part, Length length) { part.height = length; });
    };
    std::vector<Piece> pieces{"Held ", held_field(lamps)};
    if (const auto parts = alternatives<plan::GridHang>(context, lamps, mount_of); !parts.empty()) {
        pieces.insert(pieces.end(), {" at ",
                                     choice_field(
                                         parts, {"position", "position"}, positions(context.plan),
                                         [](const plan::GridHang& part) { return part.position; },
                                         [](plan::GridHang& part, const std::string& name) {
                                             part.position = name;
                                         }),
                                     ", ", drop(parts), " below the pipe"});
    }
    if (const auto parts = alternatives<plan::PipeHang>(context, lamps, mount_of); !parts.empty()) {
        pieces.insert(
            pieces.end(),
            {" ",
             choice_field(
                 parts, {"pipe", "pipe"}, id_names(context.plan.pipes),
                 [](const plan::PipeHang& part) { return part.pipe.name; },
                 [](plan::PipeHang& part, const std::string& name) { part.pipe.name = name; }),
             ", ",
             length_field(
                 parts, {"along", "place along the pipe"}, units, kAlong,
                 [](const plan::PipeHang& part) { return part.along; },
                 [](plan::PipeHang& part, Length along) { part.along = along; }),
             " along it, ", drop(parts), " below"});
    }
    if (const auto parts = alternatives<plan::StandMount>(context, lamps, mount_of);
        !parts.empty()) {
        pieces.insert(
            pieces.end(),
            {", a ",
             choice_field(
                 parts, {"stand", "stand"}, row_names(context.catalogue.supports),
                 [](const plan::StandMount& part) { return part.support; },
                 [](plan::StandMount& part, const std::string& name) { part.support = name; }),
             ", ", height(parts), " up"});
    }
    if (const auto parts = alternatives<plan::WallMount>(context, lamps, mount_of);
        !parts.empty()) {
        pieces.insert(pieces.end(), {", ", height(parts), " up"});
    }
    if (const auto parts = alternatives<plan::PracticalMount>(context, lamps, mount_of);
        !parts.empty()) {
        pieces.insert(pieces.end(), {", ", height(parts), " up"});
    }
    pieces.emplace_back(".");
    return pieces;
}

Field aim_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    const UnitSystem units = context.plan.units;
    Field made = field(
        lamps, {"aim", "aim"}, FieldKind::text,
        [units](const plan::Lamp& lamp) {
            return std::holds_alternative<std::monostate>(lamp.aim) ? std::string{"straight down"}
                                                                    : aim_text(lamp.aim, units);
        },
        [](plan::Lamp& lamp, const std::string& text, const edit::Context& now) {
            return put_aim(lamp.aim, text == "straight down" ? "" : text, now, lamp.id.name);
        });
    made.choices = aimable(context.plan);
    made.hint = "a name, or a place: across, up the page, height";
    return made;
}

template <class Get, class Put>
Field percent_field(const Parts<plan::Lamp>& lamps, FieldName name, Get get, Put put) {
    return number_field(
        lamps, std::move(name), 0, 100, " %",
        [get](const plan::Lamp& lamp) { return std::round(get(lamp) * 1000.0) / 10.0; },
        [put](plan::Lamp& lamp, double percent) { put(lamp, percent / 100.0); });
}

Field filters_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    Field made = field(
        lamps, {"filters", "filters"}, FieldKind::text,
        [](const plan::Lamp& lamp) {
            return lamp.filters.empty() ? std::string{"no filter"} : joined(lamp.filters);
        },
        [](plan::Lamp& lamp, const std::string& text, const edit::Context& now) {
            std::string fault;
            if (text.empty() || text == "no filter") {
                lamp.filters.clear();
            } else if (auto names = read_names(text, row_names(now.catalogue.filters), fault)) {
                lamp.filters = std::move(*names);
            }
            return fault;
        });
    made.choices = row_names(context.catalogue.filters);
    made.hint = "nearest the lamp first, with commas between";
    return made;
}

Field circuit_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    std::vector<std::string> circuits = id_names(context.plan.circuits);
    circuits.insert(circuits.begin(), "none");
    return choice_field(
        lamps, {"circuit", "circuit"}, circuits,
        [](const plan::Lamp& lamp) {
            return lamp.circuit.empty() ? std::string{"none"} : lamp.circuit.name;
        },
        [](plan::Lamp& lamp, const std::string& name) {
            lamp.circuit.name = name == "none" ? "" : name;
        });
}

Field beats_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    Field made = field(
        lamps, {"beats", "beats"}, FieldKind::text,
        [](const plan::Lamp& lamp) {
            std::vector<std::string> names;
            for (const auto& beat : lamp.beats) {
                names.push_back(beat.name);
            }
            return names.empty() ? std::string{"all beats"} : joined(names);
        },
        [](plan::Lamp& lamp, const std::string& text, const edit::Context& now) {
            std::string fault;
            if (text.empty() || text == "all beats") {
                lamp.beats.clear();
                return fault;
            }
            if (const auto names = read_names(text, id_names(now.plan.beats), fault)) {
                lamp.beats.clear();
                for (const plan::Beat& beat : now.plan.beats) {
                    if (std::find(names->begin(), names->end(), beat.id.name) != names->end()) {
                        lamp.beats.push_back(beat.id);
                    }
                }
            }
            return fault;
        });
    made.choices = id_names(context.plan.beats);
    return made;
}

void lamp_figures(Card& card, const CardInput& input, const plan::Lamp& lamp) {
    if (input.analysis == nullptr) {
        return;
    }
    for (const checks::BeatScene& scene : input.analysis->beats) {
        if (scene.beat->id != input.context.now.beat) {
            continue;
        }
        for (std::size_t i = 0; i < scene.stage.lamps.size(); ++i) {
            const stage::PlacedLamp& placed = scene.stage.lamps[i];
            if (placed.lamp != lamp.id || !placed.target) {
                continue;
            }
            const auto light = stage::light_from(scene.stage, static_cast<int>(i), *placed.target);
            const Length throw_length = Length::metres(light.throw_m);
            const UnitSystem units = input.context.plan.units;
            Figure level{"level", checks::level_text(light.level_square_lx(), units),
                         [light, throw_length, units] {
                             return Working{
                                 "level = intensity / throw squared, times the share of the face "
                                 "that is seen",
                                 {{"I", "intensity towards the aim",
                                   checks::intensity_text(light.intensity_cd)},
                                  {"d", "throw", shown(throw_length, units)},
                                  {"s", "share of the face seen", fixed(light.seen_share, 2)}},
                                 checks::level_text(light.level_square_lx(), units),
                                 "inverse square law; soft faces by Lambert's polygon formula"};
                         }};
            say(card, {"Throws " + shown(throw_length, units) + " and gives ", level,
                       " square to the beam at its aim."});
        }
    }
}

} // namespace

void lamp_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const Parts<plan::Lamp> lamps = entities<plan::Lamp>(input);
    if (lamps.empty()) {
        return;
    }
    say(card, {"A ",
               choice_field(
                   lamps, {"instrument", "instrument"}, row_names(context.catalogue.instruments),
                   [](const plan::Lamp& lamp) { return lamp.instrument; },
                   [](plan::Lamp& lamp, const std::string& name) { lamp.instrument = name; }),
               " as ",
               choice_field(
                   lamps, {"role", "role"}, choice_names(kLampRoleNames),
                   [](const plan::Lamp& lamp) { return std::string{plan::name_of(lamp.role)}; },
                   [](plan::Lamp& lamp, const std::string& name) {
                       lamp.role = choice_named(kLampRoleNames, name);
                   }),
               ", aimed at ", aim_field(context, lamps), "."});
    say(card, mount_pieces(context, lamps));
    say(card,
        {"Burns at ",
         percent_field(
             lamps, {"level", "level"}, [](const plan::Lamp& lamp) { return lamp.level; },
             [](plan::Lamp& lamp, double level) { lamp.level = level; }),
         ", flooded ",
         percent_field(
             lamps, {"flood", "flood"}, [](const plan::Lamp& lamp) { return lamp.focus; },
             [](plan::Lamp& lamp, double focus) { lamp.focus = focus; }),
         ", in ", beats_field(context, lamps), ", with ", filters_field(context, lamps), "."});
    say(card, {"On circuit ", circuit_field(context, lamps), ", channel ",
               number_field(
                   lamps, {"channel", "channel"}, 0, 9999, "",
                   [](const plan::Lamp& lamp) { return static_cast<double>(lamp.channel); },
                   [](plan::Lamp& lamp, double channel) {
                       lamp.channel = static_cast<int>(std::lround(channel));
                   }),
               "."});
    const auto cut = [&](const char* key, const char* words, double plan::BeamCut::* side) {
        return percent_field(
            lamps, {key, words}, [side](const plan::Lamp& lamp) { return lamp.cut.*side; },
            [side](plan::Lamp& lamp, double share) { lamp.cut.*side = share; });
    };
    say(card, {"Barn doors in: top ", cut("cut_top", "top barn door", &plan::BeamCut::top),
               ", bottom ", cut("cut_bottom", "bottom barn door", &plan::BeamCut::bottom),
               ", left ", cut("cut_left", "left barn door", &plan::BeamCut::left), ", right ",
               cut("cut_right", "right barn door", &plan::BeamCut::right), "."});
    if (input.chosen.size() == 1) {
        lamp_figures(card, input, lamps.first());
    }
}

} // namespace throwline::card
