/// Walls and what is in them.

#include "card/card_kinds.h"
#include "card/locate.h"

#include <array>

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.1), Length::metres(100)};
constexpr LengthBounds kThicknesses{Length::metres(0.001), Length::metres(5)};
constexpr LengthBounds kAlong{Length::metres(0), Length::metres(1000)};
constexpr LengthBounds kLengths{Length::metres(0.05), Length::metres(1000)};

constexpr std::array kSwings{"has no leaf", "opens in, hinged at the start",
                             "opens in, hinged at the end", "opens out, hinged at the start",
                             "opens out, hinged at the end"};

const auto kOpenings = [](auto& plan) -> auto& { return plan.room.openings; };

Parts<plan::Wall> walls_of(const CardInput& input) {
    std::vector<Locator<plan::Wall>> where;
    for (const edit::Thing& thing : input.chosen) {
        where.push_back(
            locator<plan::Wall>([index = static_cast<std::size_t>(thing.index)](auto& plan) {
                return index < plan.room.walls.size() ? &plan.room.walls[index] : nullptr;
            }));
    }
    return parts_of<plan::Wall>(input.context, what_of(input.chosen), where,
                                {input.chosen.begin(), input.chosen.end()});
}

/// The next corner moves along the wall.
Result<edit::Step> wall_length_set(const edit::Context& context, const edit::Thing& wall,
                                   Length length) {
    if (std::string lock = lock_on(context.plan, {wall}); !lock.empty()) {
        return failure(std::move(lock));
    }
    edit::Step step{"Set length of " + edit::name_of(wall), context.plan, {}};
    Polygon& outline = step.plan.room.outline;
    const auto index = static_cast<std::size_t>(wall.index);
    if (index >= outline.size()) {
        return failure(edit::name_of(wall) + " is not there any more");
    }
    Vec2& end = outline[(index + 1) % outline.size()];
    end = outline[index] + (end - outline[index]).normalized() * length.m();
    if (const auto sound = edit::check_walls(step.plan); !sound) {
        return tl::unexpected{sound.error()};
    }
    edit::keep_lamps_on_walls(step.plan);
    return step;
}

Field wall_length_field(const CardInput& input, const edit::Thing& wall) {
    const Polygon& outline = input.context.plan.room.outline;
    const auto index = static_cast<std::size_t>(wall.index);
    const Length now =
        Length::metres((outline[(index + 1) % outline.size()] - outline[index]).norm());
    Field made;
    made.key = "length";
    made.label = "Length of " + edit::name_of(wall);
    made.kind = FieldKind::length;
    made.value = shown(now, input.context.plan.units);
    made.hint = "the corner at its end moves along it";
    made.working = length_working(now);
    made.set = [wall](const edit::Context& context, const std::string& text) -> Result<edit::Step> {
        std::string fault;
        const auto length = read_length(text, context.plan.units, kLengths, fault);
        return length ? wall_length_set(context, wall, *length)
                      : Result<edit::Step>{failure(fault)};
    };
    return made;
}

std::vector<Piece> wall_size_pieces(const CardInput& input, const Parts<plan::Wall>& walls) {
    const UnitSystem units = input.context.plan.units;
    std::vector<Piece> pieces;
    if (input.chosen.size() == 1) {
        pieces = {wall_length_field(input, input.chosen.front()), " long, "};
    }
    pieces.insert(pieces.end(),
                  {length_field(
                       walls, {"height", "height"}, units, kHeights,
                       [](const plan::Wall& wall) { return wall.height; },
                       [](plan::Wall& wall, Length height) { wall.height = height; }),
                   " high, ",
                   length_field(
                       walls, {"thickness", "thickness"}, units, kThicknesses,
                       [](const plan::Wall& wall) { return wall.thickness; },
                       [](plan::Wall& wall, Length thickness) { wall.thickness = thickness; }),
                   " thick."});
    return pieces;
}

Field opening_wall_field(const CardInput& input, const Parts<plan::Opening>& openings) {
    std::vector<std::string> walls;
    for (std::size_t i = 0; i < input.context.plan.room.walls.size(); ++i) {
        walls.push_back(std::to_string(plan::number_of_wall(static_cast<int>(i))));
    }
    return choice_field(
        openings, {"wall", "wall"}, walls,
        [](const plan::Opening& opening) {
            return std::to_string(plan::number_of_wall(opening.wall));
        },
        [walls](plan::Opening& opening, const std::string& number) {
            opening.wall =
                static_cast<int>(std::find(walls.begin(), walls.end(), number) - walls.begin());
        });
}

Field opening_kind_field(const Parts<plan::Opening>& openings) {
    Field made = enum_field(openings, {"kind", "kind"}, plan::kOpeningKindNames,
                            [](auto& opening) -> auto& { return opening.kind; });
    // Only a door has a leaf.
    made.set = [set = made.set](const edit::Context& context, const std::string& text) {
        Result<edit::Step> step = set(context, text);
        if (step) {
            for (plan::Opening& opening : step->plan.room.openings) {
                if (opening.kind != plan::OpeningKind::door) {
                    opening.swing.reset();
                }
            }
        }
        return step;
    };
    return made;
}

std::string swing_text(const plan::Opening& opening) {
    if (!opening.swing) {
        return kSwings[0];
    }
    return kSwings[(opening.swing->inward ? 1U : 3U) + (opening.swing->hinge_at_start ? 0U : 1U)];
}

void put_swing(plan::Opening& opening, const std::string& words) {
    if (words == kSwings[0]) {
        opening.swing.reset();
        return;
    }
    plan::Swing swing = opening.swing.value_or(plan::Swing{});
    swing.inward = words.starts_with("opens in");
    swing.hinge_at_start = words.ends_with("start");
    opening.swing = swing;
}

void leaf_sentence(Card& card, const CardInput& input, const Parts<plan::Opening>& openings) {
    if (std::any_of(openings.now.begin(), openings.now.end(), [](const plan::Opening& opening) {
            return opening.kind != plan::OpeningKind::door;
        })) {
        return;
    }
    std::vector<Piece> pieces{"It ", choice_field(openings, {"swing", "swing"},
                                                  {kSwings.begin(), kSwings.end()}, swing_text,
                                                  put_swing)};
    std::vector<Locator<plan::Swing>> where;
    for (const Locator<plan::Opening>& door : *openings.where) {
        where.push_back({[door](const edit::Context& context) {
                             const auto opening = door.see(context);
                             return opening ? opening->swing : std::nullopt;
                         },
                         [door](plan::Plan& plan, const edit::Context& context) {
                             plan::Opening* opening = door.reach(plan, context);
                             return opening != nullptr && opening->swing ? &*opening->swing
                                                                         : nullptr;
                         }});
    }
    const auto leaves = parts_of<plan::Swing>(input.context, openings.what, where, openings.things);
    if (!leaves.empty()) {
        Field widest = angle_field(leaves, {"widest", "widest angle of the leaf"},
                                   [](auto& swing) -> auto& { return swing.widest; });
        widest.hint = "from 1° to 180°, from shut";
        pieces.insert(pieces.end(), {", to ", std::move(widest)});
    }
    pieces.emplace_back(".");
    say(card, std::move(pieces));
}

void use_sentence(Card& card, const Parts<plan::Opening>& openings) {
    say(card, {"Counted on as a way out: ",
               yes_no_field(openings, {"way_out", "way out"},
                            [](auto& opening) -> auto& { return opening.way_out; }),
               "; lets through ",
               percent_field(openings, {"transmission", "transmission"},
                             [](auto& opening) -> auto& { return opening.transmission; }),
               " of the light."});
}

} // namespace

void wall_card(Card& card, const CardInput& input) {
    const edit::Context& context = input.context;
    const Parts<plan::Wall> walls = walls_of(input);
    if (walls.empty()) {
        return;
    }
    say(card, wall_size_pieces(input, walls));
    say(card,
        {"Finish ",
         open_row_field(walls, {"finish", "finish"}, context.catalogue.finishes, context.plan.units,
                        "as the room", [](auto& wall) -> auto& { return wall.finish; }),
         "; a shot may see it: ",
         yes_no_field(walls, {"dressed", "dressing"},
                      [](auto& wall) -> auto& { return wall.dressed; }),
         "."});
}

void opening_card(Card& card, const CardInput& input) {
    const UnitSystem units = input.context.plan.units;
    const Parts<plan::Opening> openings = entities<plan::Opening>(input, kOpenings);
    if (openings.empty()) {
        return;
    }
    const auto length = [&](const char* key, const char* words, Length plan::Opening::* part) {
        return length_field(
            openings, {key, words}, units, kAlong,
            [part](const plan::Opening& opening) { return opening.*part; },
            [part](plan::Opening& opening, Length value) { opening.*part = value; });
    };
    say(card, {"A ", opening_kind_field(openings), " in wall ", opening_wall_field(input, openings),
               ", ", length("from_start", "place along the wall", &plan::Opening::from_start),
               " from its start."});
    say(card, {length("width", "width", &plan::Opening::width), " wide, from ",
               length("sill", "sill", &plan::Opening::sill), " to ",
               length("head", "head", &plan::Opening::head), " above the floor."});
    leaf_sentence(card, input, openings);
    use_sentence(card, openings);
}

} // namespace throwline::card
