#pragma once

#include "base/quantity.h"
#include "plan/extra.h"

#include <optional>
#include <string>
#include <vector>

/// A recce: what was read with a tape, as taken. The survey room of the house turns it into a Room.
namespace throwline::plan {

/// A tape straight from one named point to another: a wall, a diagonal, or a check over all.
struct TapeReading {
    /// Corners or floor points, different ones.
    std::string from;
    std::string to;
    /// Above 0.
    Length length;
    std::string note;

    bool operator==(const TapeReading&) const = default;
};

/// What a stretch of wall in a chain holds.
enum class StretchKind { wall, door, window, opening, thing };

/// One stretch of a chain, in the order in which the tape met it. Bare wall has a width alone;
/// doors, windows and openings have no depth; a thing has a name.
struct Stretch {
    std::string name;
    StretchKind kind = StretchKind::wall;
    /// Along the wall, above 0.
    Length width;
    /// Of a thing: how far it stands out from the wall. 0 when not read.
    Length depth;
    /// From its underside to its top. 0 when not read.
    Length height;
    /// Underside above the floor: the sill of a window, the foot of a shelf.
    Length sill;

    bool operator==(const Stretch&) const = default;
};

/// Readings one after the other along a wall, from one of its corners towards the other. They need
/// not reach its end: then `to_the_end` is false and nothing is closed.
struct Chain {
    std::string from;
    std::string to;
    std::vector<Stretch> stretches;
    bool to_the_end = true;

    bool operator==(const Chain&) const = default;
};

/// A place in the middle of the floor, or the corner of a thing there: distances to it from two or
/// more named points are plain readings; `outside` tells that it lies outside the room.
struct FloorPoint {
    std::string name;
    bool outside = false;

    bool operator==(const FloorPoint&) const = default;
};

/// A column or another solid on the floor: its corners, points in walking order (three or more),
/// or one point in its middle and a diameter.
struct FloorThing {
    std::string name;
    std::vector<std::string> points;
    /// 0 for a thing with corners.
    Length diameter;
    /// 0: up to the ceiling.
    Length height;

    bool operator==(const FloorThing&) const = default;
};

/// Height of the ceiling, at a corner or floor point, or anywhere (empty).
struct HeightReading {
    std::string at;
    Length height;

    bool operator==(const HeightReading&) const = default;
};

/// An outlet on a wall, with the circuit that feeds it as labelled at the panel.
struct OutletReading {
    std::string circuit;
    /// The wall's corners; `along` is read from the first of them.
    std::string from;
    std::string to;
    Length along;
    /// Above the floor; 0 when not read.
    Length height;

    bool operator==(const OutletReading&) const = default;
};

enum class SiteNoteKind { power, breaker, noise, sun, light, access, other };

struct SiteNote {
    SiteNoteKind kind = SiteNoteKind::other;
    std::string text;

    bool operator==(const SiteNote&) const = default;
};

struct Survey {
    /// In walking order.
    std::vector<std::string> corners;
    /// Which way round they were walked, seen from above.
    bool clockwise = false;
    /// Corners believed to be square.
    std::vector<std::string> square_corners;
    /// Standard error of that belief (own choice; 0.2 to 1 degree with the age of the building).
    Angle squareness = Angle::degrees(0.5);
    std::vector<TapeReading> readings;
    std::vector<Chain> chains;
    std::vector<FloorPoint> points;
    std::vector<FloorThing> things;
    std::vector<HeightReading> heights;
    std::vector<OutletReading> outlets;
    /// Bearing from the first corner to the second, clockwise from true north, when taken.
    std::optional<Angle> first_wall_bearing;
    /// Standard error of a reading: a fixed part, and a part per length read (own choice, sag and
    /// slack included).
    Length precision = Length::millimetres(2);
    double precision_per_metre_mm = 0.5;
    std::vector<SiteNote> notes;
    Extra extra;

    bool operator==(const Survey&) const = default;
};

/// Index of the wall between two corners, whichever comes first: that from the corner of the same
/// index to the next. Nothing when they are not neighbours.
std::optional<int> wall_between(const Survey& survey, const std::string& from,
                                const std::string& to);

} // namespace throwline::plan
