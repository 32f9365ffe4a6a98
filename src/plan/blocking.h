#pragma once

#include "base/trade_words.h"
#include "plan/site.h"

#include <map>
#include <variant>

namespace throwline::plan {

/// A thing of any kind, by its name; which kind is found by looking in the plan.
struct ThingName {
    std::string name;

    auto operator<=>(const ThingName&) const = default;
};

/// What somebody faces: a bearing on the plan, something with a name, or a place.
using Facing = std::variant<Angle, ThingName, Vec2>;

enum class Pose { stand, sit, lie, crouch };

/// cast may be in the frame; crew may not.
enum class PersonKind { cast, crew };

struct Person {
    Id<Person> id;
    Length stature = Length::metres(1.70);
    PersonKind kind = PersonKind::cast;
    Extra extra;

    bool operator==(const Person&) const = default;
};

/// Where a person stands in a beat, and how they came there from the beat before.
struct Mark {
    Vec2 at = Vec2::Zero();
    Facing faces = Angle{};
    Pose pose = Pose::stand;
    /// Of the soles above the floor; without it, the top of the riser under the mark, else 0.
    std::optional<Length> elevation;
    /// Of the seat above what the feet stand on; without it, that of the seat under the mark, else
    /// the height that fits the person.
    std::optional<Length> seat_height;
    /// Points walked through on the way here.
    std::vector<Vec2> path;

    bool operator==(const Mark&) const = default;
};

/// Gone from the floor.
struct OffFloor {
    bool operator==(const OffFloor&) const = default;
};

struct Beat {
    Id<Beat> id;
    std::string name;
    /// Who moves in this beat. Whoever is not named stays as the beat before left them.
    std::map<Id<Person>, std::variant<Mark, OffFloor>> marks;
    Extra extra;

    bool operator==(const Beat&) const = default;
};

struct Camera {
    Id<Camera> id;
    /// Catalogue names.
    std::string sensor;
    std::string lens;
    std::string support;
    /// Lens above what the support stands on; each shot may differ.
    Length eye_height = Length::metres(1.5);
    /// Exposure: speed, and the time each picture is open.
    double iso = 800.0;
    double exposure_s = 0.02;
    /// Where it waits before its first shot; without it, it is not on the floor until then.
    std::optional<Vec2> home;
    Extra extra;

    bool operator==(const Camera&) const = default;
};

/// What a camera looks at: the middle of its subjects when empty.
using Aim = std::variant<std::monostate, ThingName, Vec3>;

struct Shot {
    Id<Shot> id;
    /// One or more beats, in order.
    std::vector<Id<Beat>> beats;
    Id<Camera> camera;
    Vec2 at = Vec2::Zero();
    /// Overrides the camera's eye height.
    std::optional<Length> height;
    Aim aim;
    /// As the picture sees it, with the extender where that is in. Without it: the focal length
    /// that gives the wanted size, within the lens.
    std::optional<Length> focal;
    /// T-number; without it, the lens's widest at that focal length.
    std::optional<double> stop;
    /// Distance that is in focus; without it, the first subject's nearer eye.
    std::optional<Length> focus;
    bool extender = false;
    std::vector<Id<Person>> subjects;
    std::optional<ShotSize> size;
    std::string composition;
    std::vector<std::string> notes;
    /// Where the camera goes during the shot, after `at`.
    std::vector<Vec2> moves;
    /// Shots that this one is cut straight to; without it, the next shot in the file when they
    /// share a beat or a subject.
    std::vector<Id<Shot>> cuts_to;
    Extra extra;

    bool operator==(const Shot&) const = default;
};

struct Boom {
    Id<Boom> id;
    Vec2 operator_at = Vec2::Zero();
    Length pole = Length::metres(3);
    /// Where the microphone hangs, on the plan.
    Vec2 microphone = Vec2::Zero();
    Length height = Length::metres(2.2);
    /// Beats in which it is on the floor; all when empty.
    std::vector<Id<Beat>> beats;
    Extra extra;

    bool operator==(const Boom&) const = default;
};

} // namespace throwline::plan
