#include "card/lamp_mount.h"

#include "card/locate.h"
#include "plan/places.h"

#include <array>

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.05), Length::metres(30)};
constexpr LengthBounds kDrops{Length::metres(0), Length::metres(20)};
constexpr LengthBounds kAlong{Length::metres(0), Length::metres(1000)};

/// In the order of plan::LampMount.
constexpr std::array kHeldWords{"from the grid", "from a pipe", "on a stand", "on a wall",
                                "as a practical"};
constexpr std::size_t kGrid = 0;
constexpr std::size_t kPipe = 1;
constexpr std::size_t kStand = 2;
constexpr std::size_t kWall = 3;

const auto kMount = [](auto& lamp) -> auto& { return lamp.mount; };
const auto kDrop = [](auto& part) -> auto& { return part.drop; };

std::string hang_from_grid(plan::Lamp& lamp, const plan::Plan& plan, const Vec2& at) {
    if (!plan.grid) {
        return "there is no grid to hang it from";
    }
    lamp.mount = edit::mount_near(plan, plan::GridHang{"A1", Length::metres(0.3)}, at);
    return {};
}

std::string hang_from_pipe(plan::Lamp& lamp, const plan::Plan& plan, const Vec2& at) {
    if (plan.pipes.empty()) {
        return "there is no pipe to hang it from";
    }
    lamp.mount =
        edit::mount_near(plan, plan::PipeHang{plan.pipes.front().id, {}, Length::metres(0.3)}, at);
    return {};
}

/// The stand that reaches the height, else the one that reaches highest.
std::string put_on_stand(plan::Lamp& lamp, const catalogue::Catalogue& catalogue, const Vec2& at,
                         Length height) {
    const catalogue::Support* best = nullptr;
    for (const catalogue::Support& support : catalogue.supports) {
        const bool fits = height >= support.height_min && height <= support.height_max;
        if (!support.for_camera
            && (best == nullptr || (fits && height > best->height_max)
                || (!fits && height > best->height_max && support.height_max > best->height_max))) {
            best = &support;
        }
    }
    if (best == nullptr) {
        return "the Stores have no lamp stand";
    }
    lamp.mount =
        plan::StandMount{at, std::clamp(height, best->height_min, best->height_max), best->name};
    return {};
}

std::string clamp_to_wall(plan::Lamp& lamp, const plan::Plan& plan, const Vec2& at, Length height) {
    if (plan.room.outline.empty()) {
        return "there is no wall to clamp it to";
    }
    lamp.mount = edit::mount_near(plan, plan::WallMount{0, {}, height}, at);
    return {};
}

/// Held in another way, as near as may be to where it is.
std::string hold(plan::Lamp& lamp, std::size_t how, const edit::Context& context) {
    if (how == lamp.mount.index()) {
        return {};
    }
    const std::optional<Vec3> point = plan::lamp_point(context.plan, lamp);
    const Vec2 at = point ? floor_of(*point) : Vec2{Vec2::Zero()};
    const Length height = Length::metres(point ? std::max(point->z(), 0.1) : 2.0);
    switch (how) {
    case kGrid:
        return hang_from_grid(lamp, context.plan, at);
    case kPipe:
        return hang_from_pipe(lamp, context.plan, at);
    case kStand:
        return put_on_stand(lamp, context.catalogue, at, height);
    case kWall:
        return clamp_to_wall(lamp, context.plan, at, height);
    default:
        lamp.mount = plan::PracticalMount{at, height};
        return {};
    }
}

Field held_field(const Parts<plan::Lamp>& lamps) {
    const std::vector<std::string> choices{kHeldWords.begin(), kHeldWords.end()};
    Field made = field(
        lamps, {"held", "mount"}, FieldKind::choice,
        [](const plan::Lamp& lamp) { return std::string{kHeldWords[lamp.mount.index()]}; },
        [choices](plan::Lamp& lamp, const std::string& text, const edit::Context& now) {
            std::string fault;
            const auto words = read_choice(text, choices, fault);
            const auto index = std::find(choices.begin(), choices.end(), words.value_or(""));
            return words ? hold(lamp, static_cast<std::size_t>(index - choices.begin()), now)
                         : fault;
        });
    made.choices = choices;
    return made;
}

std::vector<std::string> positions(const plan::Plan& plan) {
    std::vector<std::string> names;
    const int columns = plan.grid ? plan.grid->columns : 0;
    for (int column = 0; column < columns; ++column) {
        for (int row = 0; row < plan.grid->rows; ++row) {
            names.push_back(plan::grid_name(column, row));
        }
    }
    return names;
}

template <class Mount, class Get>
Field length_of(const Parts<Mount>& parts, FieldName name, UnitSystem units, LengthBounds bounds,
                Get get) {
    return length_field(parts, std::move(name), units, bounds, get,
                        [get](Mount& part, Length length) { get(part) = length; });
}

template <class Mount>
Field height_of(const Parts<Mount>& parts, UnitSystem units) {
    return length_of(parts, {"height", "height"}, units, kHeights,
                     [](auto& part) -> auto& { return part.height; });
}

template <class Mount>
Field along_of(const Parts<Mount>& parts, const char* words, UnitSystem units) {
    return length_of(parts, {"along", words}, units, kAlong,
                     [](auto& part) -> auto& { return part.along; });
}

std::vector<Piece> grid_pieces(const edit::Context& context, const Parts<plan::GridHang>& parts) {
    return {" at ",
            choice_field(
                parts, {"position", "position"}, positions(context.plan),
                [](const plan::GridHang& part) { return part.position; },
                [](plan::GridHang& part, const std::string& name) { part.position = name; }),
            ", ", length_of(parts, {"drop", "drop"}, context.plan.units, kDrops, kDrop),
            " below it"};
}

std::vector<Piece> pipe_pieces(const edit::Context& context, const Parts<plan::PipeHang>& parts) {
    const UnitSystem units = context.plan.units;
    return {": ",
            choice_field(
                parts, {"pipe", "pipe"}, id_names(context.plan.pipes),
                [](const plan::PipeHang& part) { return part.pipe.name; },
                [](plan::PipeHang& part, const std::string& name) { part.pipe.name = name; }),
            ", ",
            along_of(parts, "place along the pipe", units),
            " along it, ",
            length_of(parts, {"drop", "drop"}, units, kDrops, kDrop),
            " below"};
}

std::vector<Piece> stand_pieces(const edit::Context& context,
                                const Parts<plan::StandMount>& parts) {
    const UnitSystem units = context.plan.units;
    return {", a ",
            row_field(parts, {"stand", "stand"}, context.catalogue.supports, units,
                      [](auto& part) -> auto& { return part.support; }),
            ", ", height_of(parts, units), " up"};
}

std::vector<Piece> wall_pieces(const edit::Context& context, const Parts<plan::WallMount>& parts) {
    const UnitSystem units = context.plan.units;
    std::vector<std::string> walls;
    for (std::size_t i = 0; i < context.plan.room.walls.size(); ++i) {
        walls.push_back(std::to_string(plan::number_of_wall(static_cast<int>(i))));
    }
    return {": wall ",
            choice_field(
                parts, {"wall", "wall"}, walls,
                [](const plan::WallMount& part) {
                    return std::to_string(plan::number_of_wall(part.wall));
                },
                [walls](plan::WallMount& part, const std::string& name) {
                    part.wall = static_cast<int>(std::find(walls.begin(), walls.end(), name)
                                                 - walls.begin());
                }),
            ", ",
            along_of(parts, "place along the wall", units),
            " along it, ",
            height_of(parts, units),
            " up"};
}

} // namespace

std::vector<Piece> mount_pieces(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    std::vector<Piece> pieces{"Held ", held_field(lamps)};
    const auto add = [&](const auto& parts, auto make) {
        if (!parts.empty()) {
            for (Piece& piece : make(context, parts)) {
                pieces.push_back(std::move(piece));
            }
        }
    };
    // Lamps that are held in several ways have no more in common than that.
    const std::size_t how = lamps.first().mount.index();
    const bool alike = std::all_of(lamps.now.begin(), lamps.now.end(), [&](const plan::Lamp& lamp) {
        return lamp.mount.index() == how;
    });
    if (alike) {
        add(alternatives<plan::GridHang>(context, lamps, kMount), grid_pieces);
        add(alternatives<plan::PipeHang>(context, lamps, kMount), pipe_pieces);
        add(alternatives<plan::StandMount>(context, lamps, kMount), stand_pieces);
        add(alternatives<plan::WallMount>(context, lamps, kMount), wall_pieces);
        add(alternatives<plan::PracticalMount>(context, lamps, kMount),
            [](const edit::Context& now, const auto& parts) {
                return std::vector<Piece>{", ", height_of(parts, now.plan.units), " up"};
            });
    }
    pieces.emplace_back(".");
    return pieces;
}

} // namespace throwline::card
