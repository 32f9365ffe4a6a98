#pragma once

#include "base/vec.h"

#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

/// A tape survey as numbers: points, what was read between them, and what is assumed. Nothing here
/// knows of rooms; names and units are kept by who asks.
namespace throwline::survey {

/// A tape from one point straight to another; value in metres.
struct Distance {
    int from = 0;
    int to = 0;

    bool operator==(const Distance&) const = default;
};

/// The corner between two others is believed to be square; value is the angle at `corner` from
/// `before` to `after`, radians: +pi/2 or -pi/2, which mean the same. On which side a corner opens
/// is seen from the readings; what is reported of it has the sign of the value given.
struct Corner {
    int before = 0;
    int corner = 0;
    int after = 0;

    bool operator==(const Corner&) const = default;
};

/// How far along the line from `from` to `to` a point lies (its foot on the line); metres.
struct Along {
    int point = 0;
    int from = 0;
    int to = 0;

    bool operator==(const Along&) const = default;
};

/// How far a point stands off the line from `from` to `to`, square to it, left positive; metres.
struct Offset {
    int point = 0;
    int from = 0;
    int to = 0;

    bool operator==(const Offset&) const = default;
};

using Sight = std::variant<Distance, Corner, Along, Offset>;

struct Observation {
    Sight sight;
    /// Metres, or radians for a corner.
    double value = 0.0;
    /// Standard error, same unit, > 0.
    double sigma = 0.0;
    /// Believed, not read: never named as a wrong reading ahead of a reading that explains as much.
    bool assumed = false;
};

/// Which way round the outline was walked, seen from above.
enum class Walk { anticlockwise, clockwise };

/// Point 0 is the origin and point 1 lies on the positive x axis.
/// Points 0 .. outline - 1 are the corners of the room in walking order; those above are others.
struct Network {
    int points = 0;
    /// Number of corners of the outline, at least 3.
    int outline = 0;
    Walk walk = Walk::anticlockwise;
    std::vector<Observation> observations;
    /// A point above the outline that could lie on either side of a line lies inside the room,
    /// unless its number is here.
    std::vector<int> outside;
};

} // namespace throwline::survey
