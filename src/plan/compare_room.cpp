#include "plan/compare_parts.h"
#include "plan/difference_words.h"

#include <algorithm>
#include <cmath>
#include <fmt/ranges.h>

namespace throwline::plan {

namespace {

const Vec2& corner(const Polygon& outline, std::size_t index) {
    return outline[index % outline.size()];
}

std::string wall_name(std::size_t index) {
    return fmt::format("wall {}", number_of_wall(static_cast<int>(index)));
}

std::vector<Vec2> wall_ends(const Room& room, std::size_t index) {
    return index < room.outline.size()
               ? std::vector<Vec2>{room.outline[index], corner(room.outline, index + 1)}
               : std::vector<Vec2>{};
}

Subject wall_subject(const Room& old, const Room& now, std::size_t index) {
    return {{ThingKind::wall, wall_name(index), wall_ends(old, index), wall_ends(now, index)},
            wall_name(index)};
}

/// How far a wall went out of the room, square to itself; nothing when it turned as well.
std::optional<Length> outward_shift(const Polygon& old, const Polygon& now, std::size_t index) {
    const Vec2 along = corner(old, index + 1) - corner(old, index);
    if (along.norm() < kSlightMove.m()) {
        return std::nullopt;
    }
    // Inside is to the left of an outline that runs anticlockwise.
    const Vec2 outward = turned_left(along).normalized() * (signed_area(old) > 0.0 ? -1.0 : 1.0);
    const double first_m = (now[index] - old[index]).dot(outward);
    const double second_m = (corner(now, index + 1) - corner(old, index + 1)).dot(outward);
    if (std::abs(first_m - second_m) >= kSlightMove.m()) {
        return std::nullopt;
    }
    return Length::metres((first_m + second_m) / 2.0);
}

Working outward_working(const Length shift, UnitSystem units) {
    return {.formula = "distance = shift of either end, square to the wall",
            .inputs = {{"", "outward", metres_text(shift, 4)}},
            .result = distance_text(shift, units),
            .source = "plain geometry"};
}

/// Walls that only went in or out; false, and nothing told, when that does not explain it all.
bool told_by_walls(DifferenceLedger& ledger, const Room& old, const Room& now) {
    std::vector<LedgerEntry> entries;
    for (std::size_t i = 0; i < now.outline.size(); ++i) {
        const std::optional<Length> shift = outward_shift(old.outline, now.outline, i);
        if (!shift) {
            return false;
        }
        const double size_m = std::abs(shift->m());
        if (size_m < kSlightMove.m()) {
            continue;
        }
        LedgerEntry entry;
        const Subject subject = wall_subject(old, now, i);
        entry.said = subject.said;
        entry.size_m = size_m;
        entry.difference.change = Change::moved;
        entry.difference.things = {subject.thing};
        entry.difference.sentence = capitalised(fmt::format("{} moved {} by {}.", subject.said,
                                                            *shift < Length{} ? "in" : "out",
                                                            distance_text(*shift, ledger.units())));
        entry.difference.working = outward_working(*shift, ledger.units());
        entries.push_back(std::move(entry));
    }
    for (LedgerEntry& entry : entries) {
        ledger.add(std::move(entry));
    }
    return !entries.empty();
}

void tell_corners(DifferenceLedger& ledger, const Polygon& old, const Polygon& now) {
    for (std::size_t i = 0; i < now.size(); ++i) {
        const std::string name = fmt::format("corner {} of the room", i + 1);
        const std::vector<Vec2> before{old[i]};
        const std::vector<Vec2> after{now[i]};
        ledger.moved({{ThingKind::room, name, before, after}, name}, before, after);
    }
}

void compare_outline(DifferenceLedger& ledger, const Room& old, const Room& now) {
    const Subject room{{ThingKind::room, {}, old.outline, now.outline}, "room"};
    if (old.outline == now.outline) {
        return;
    }
    if (old.outline.size() != now.outline.size()) {
        ledger.tell(Change::changed, room,
                    fmt::format("the room has {} walls instead of {}", now.outline.size(),
                                old.outline.size()));
    } else if (shifted_alike(old.outline, now.outline)) {
        ledger.moved(room, old.outline, now.outline);
    } else if (!told_by_walls(ledger, old, now)) {
        tell_corners(ledger, old.outline, now.outline);
    }
}

std::string wall_phrases(const DifferenceLedger& ledger, const Wall& old, const Wall& now) {
    const auto& [height, thickness, finish, dressed] = now;
    FieldChanges fields = ledger.fields();
    fields.length("height", old.height, height);
    fields.length("thickness", old.thickness, thickness);
    fields.name("finish", old.finish, finish);
    fields.flag(old.dressed, dressed, "a shot may see it now", "no shot may see it now");
    return fmt::format("{}", fmt::join(fields.phrases(), "; "));
}

/// "wall 3", "walls 1 and 2", "all walls"
std::string said_walls(const std::vector<std::size_t>& walls, std::size_t count) {
    if (walls.size() == 1) {
        return wall_name(walls.front());
    }
    std::vector<std::string> numbers;
    for (const std::size_t wall : walls) {
        numbers.push_back(std::to_string(number_of_wall(static_cast<int>(wall))));
    }
    return walls.size() == count ? std::string{"all walls"} : "walls " + listed(numbers);
}

/// Walls of which the same is to be said are told together.
void compare_walls(DifferenceLedger& ledger, const Room& old, const Room& now) {
    std::vector<std::pair<std::string, std::vector<std::size_t>>> told;
    for (std::size_t i = 0; i < std::min(old.walls.size(), now.walls.size()); ++i) {
        const std::string phrases = wall_phrases(ledger, old.walls[i], now.walls[i]);
        const auto known = std::find_if(told.begin(), told.end(),
                                        [&](const auto& entry) { return entry.first == phrases; });
        if (phrases.empty()) {
            continue;
        }
        if (known == told.end()) {
            told.push_back({phrases, {i}});
        } else {
            known->second.push_back(i);
        }
    }
    for (const auto& [phrases, walls] : told) {
        Subject subject = wall_subject(old, now, walls.front());
        subject.said = said_walls(walls, now.walls.size());
        ledger.tell(Change::changed, subject, fmt::format("{}: {}", subject.said, phrases));
    }
    if (old.walls.size() != now.walls.size() && old.outline.size() == now.outline.size()) {
        ledger.tell(Change::changed, placeless(ThingKind::wall, {}, "walls"),
                    fmt::format("{} walls are described instead of {}", now.walls.size(),
                                old.walls.size()));
    }
}

} // namespace

void compare_room(DifferenceLedger& ledger, const Room& old, const Room& now) {
    const auto& [outline, walls, height, finish, floor_finish, ceiling_finish, floor_dressed,
                 ceiling_dressed, openings, extra] = now;
    compare_outline(ledger, old, now);
    compare_walls(ledger, old, now);
    FieldChanges fields = ledger.fields();
    fields.length("height", old.height, height);
    fields.name("finish", old.finish, finish);
    fields.name("finish of the floor", old.floor_finish, floor_finish);
    fields.name("finish of the ceiling", old.ceiling_finish, ceiling_finish);
    fields.flag(old.floor_dressed, floor_dressed, "a shot may see the floor now",
                "no shot may see the floor now");
    fields.flag(old.ceiling_dressed, ceiling_dressed, "a shot may see the ceiling now",
                "no shot may see the ceiling now");
    fields.extra(old.extra, extra);
    ledger.changed(placeless(ThingKind::room, {}, "room"), fields);
    compare_openings(ledger, old, now);
}

} // namespace throwline::plan
