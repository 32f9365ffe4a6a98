#pragma once

#include "base/polygon.h"
#include "base/quantity.h"
#include "plan/extra.h"
#include "plan/id.h"

#include <optional>
#include <string>
#include <vector>

namespace throwline::plan {

/// A time of day, minutes after midnight on the site's clock.
struct ClockTime {
    int minutes = 0;

    auto operator<=>(const ClockTime&) const = default;
};

/// When the light and the room are ours. `to` before `from` is on the morning after.
struct ShootingWindow {
    ClockTime from;
    ClockTime to;

    bool operator==(const ShootingWindow&) const = default;
};

struct Site {
    std::string place;
    /// Bearing of true north on the page: clockwise from up the page (+y).
    Angle north;
    /// North and east positive. Both or neither.
    std::optional<Angle> latitude;
    std::optional<Angle> longitude;
    /// ISO 8601 calendar date, empty when open.
    std::string date;
    std::optional<ShootingWindow> hours;
    /// Minutes that the site's clock is ahead of UTC on that date.
    std::optional<int> utc_offset_minutes;
    std::vector<std::string> notes;
    Extra extra;

    bool operator==(const Site&) const = default;
};

/// One side of the room, from corner i to corner i + 1 of the outline.
struct Wall {
    Length height;
    Length thickness;
    /// A catalogue finish; empty means the room's.
    std::string finish;
    /// Whether a shot may see it.
    bool dressed = false;

    bool operator==(const Wall&) const = default;
};

/// Walls are counted from 1 in files and in words, from 0 in a Plan.
constexpr int number_of_wall(int index) {
    return index + 1;
}
constexpr int index_of_wall(int number) {
    return number - 1;
}

enum class OpeningKind { door, window, opening };

/// How a door's leaf moves. `inward` is into this room; the hinge is at the end of the opening
/// nearer the wall's start or its end.
struct Swing {
    bool inward = true;
    bool hinge_at_start = true;
    Angle widest = Angle::degrees(90);

    bool operator==(const Swing&) const = default;
};

struct Opening {
    Id<Opening> id;
    OpeningKind kind = OpeningKind::door;
    /// Index of the wall in the outline.
    int wall = 0;
    /// From the wall's start to the nearer edge of the opening.
    Length from_start;
    Length width;
    /// Underside and top above the floor.
    Length sill;
    Length head;
    std::optional<Swing> swing;
    /// Counted on for leaving the room: kept clear at full width.
    bool way_out = false;
    /// Share of the light that a pane lets through; 1 for a hole.
    double transmission = 1.0;
    Extra extra;

    bool operator==(const Opening&) const = default;
};

struct Room {
    /// Inside faces, in walking order either way round.
    Polygon outline;
    /// As many as the outline has corners.
    std::vector<Wall> walls;
    Length height;
    std::string finish;
    std::string floor_finish;
    std::string ceiling_finish;
    bool floor_dressed = true;
    bool ceiling_dressed = false;
    std::vector<Opening> openings;
    Extra extra;

    bool operator==(const Room&) const = default;
};

/// Which way the grid's pipes run: along the row of letters (+x) or along the numbers (+y).
enum class PipeRun { along_letters, along_numbers, both };

/// A pipe grid. Positions are lettered along x and numbered along y: "C2" is the third across,
/// second up. Letters go A..Z, AA, AB, ...
struct Grid {
    Vec2 origin = Vec2::Zero();
    Length pitch_x;
    Length pitch_y;
    int columns = 0;
    int rows = 0;
    Length height;
    /// Turn of the whole grid about its origin, anticlockwise.
    Angle turn;
    PipeRun run = PipeRun::along_letters;
    /// From the venue's papers; 0 when not known.
    double point_load_kg = 0.0;
    double pipe_load_kg = 0.0;
    Extra extra;

    bool operator==(const Grid&) const = default;
};

/// A single pipe, bar or pole that is not part of the grid.
struct Pipe {
    Id<Pipe> id;
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();
    Length height;
    double point_load_kg = 0.0;
    double load_kg = 0.0;
    Extra extra;

    bool operator==(const Pipe&) const = default;
};

struct Circuit {
    Id<Circuit> id;
    double volts = 230.0;
    double breaker_amps = 16.0;
    /// On for three hours or more: planned to 80 % of the breaker.
    bool continuous = true;
    std::vector<Vec2> outlets;
    Extra extra;

    bool operator==(const Circuit&) const = default;
};

/// A scanned or photographed plan beneath everything, placed by two points a known distance apart.
struct Underlay {
    std::string file;
    /// Picture points, pixels right and down from its top left corner.
    Vec2 pixel_a = Vec2::Zero();
    Vec2 pixel_b = Vec2::Zero();
    /// Where these stand on the plan.
    Vec2 at_a = Vec2::Zero();
    Vec2 at_b = Vec2::Zero();
    /// 0 invisible .. 1 as scanned.
    double strength = 0.4;
    /// The picture is flipped left to right (pixel x counts leftwards) before it is placed.
    bool mirrored = false;

    bool operator==(const Underlay&) const = default;
};

} // namespace throwline::plan
