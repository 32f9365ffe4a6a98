#include "checks/wording.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

std::string_view kind_word(stage::OwnerKind kind) {
    switch (kind) {
    case stage::OwnerKind::camera:
        return "camera";
    case stage::OwnerKind::lamp:
        return "lamp";
    case stage::OwnerKind::boom:
        return "boom";
    case stage::OwnerKind::room:
    case stage::OwnerKind::scenery:
    case stage::OwnerKind::cast:
    case stage::OwnerKind::crew:
        return "";
    }
    return "";
}

/// Parts of the room and of scenery are the thing itself to whoever looks.
bool is_thing_itself(stage::Part part) {
    switch (part) {
    case stage::Part::wall:
    case stage::Part::floor:
    case stage::Part::ceiling:
    case stage::Part::window_pane:
    case stage::Part::flat_front:
    case stage::Part::body:
        return true;
    case stage::Part::door_leaf:
    case stage::Part::flat_back:
    case stage::Part::head:
    case stage::Part::neck:
    case stage::Part::torso:
    case stage::Part::arms:
    case stage::Part::legs:
    case stage::Part::feet:
    case stage::Part::camera_body:
    case stage::Part::lens_barrel:
    case stage::Part::support:
    case stage::Part::camera_operator:
    case stage::Part::housing:
    case stage::Part::stand:
    case stage::Part::pole:
    case stage::Part::microphone:
    case stage::Part::boom_operator:
        return false;
    }
    return false;
}

} // namespace

std::string said(const plan::Id<plan::Shot>& shot) {
    return with_kind("shot", shot.name);
}
std::string said(const plan::Id<plan::Beat>& beat) {
    return with_kind("beat", beat.name);
}
std::string said(const plan::Id<plan::Camera>& camera) {
    return with_kind("camera", camera.name);
}
std::string said(const plan::Id<plan::Lamp>& lamp) {
    return with_kind("lamp", lamp.name);
}
std::string said(const plan::Id<plan::Circuit>& circuit) {
    return with_kind("circuit", circuit.name);
}
std::string said(const plan::Id<plan::Pipe>& pipe) {
    return with_kind("pipe", pipe.name);
}
std::string said(const plan::Id<plan::Boom>& boom) {
    return with_kind("boom", boom.name);
}
std::string said(const plan::Id<plan::Person>& person) {
    return person.name;
}
std::string said(const plan::Id<plan::Scenery>& scenery) {
    return scenery.name;
}
std::string said(const stage::Owner& owner) {
    return with_kind(kind_word(owner.kind), owner.name);
}

std::string said_part(stage::Part part, const stage::Owner& owner) {
    if (is_thing_itself(part)) {
        return said(owner);
    }
    return fmt::format("the {} of {}", stage::name_of(part), said(owner));
}

std::string in_shot(const plan::Shot& shot, const plan::Id<plan::Beat>& beat) {
    std::string text = fmt::format("in {}", said(shot.id));
    if (shot.beats.size() > 1) {
        text += " at " + said(beat);
    }
    return text;
}

std::string stops_text(double stops) {
    const double rounded = std::round(std::abs(stops) * 100.0) / 100.0;
    return shortest(rounded) + (rounded == 1.0 ? " stop" : " stops");
}

std::string angle_text(Angle angle) {
    return degrees_text(angle, std::abs(angle.deg()) >= 9.95 ? 0 : 1);
}

std::string area_text(double area_m2, UnitSystem units) {
    constexpr double kSquareFeetPerSquareMetre = 1.0 / (0.3048 * 0.3048);
    return units == UnitSystem::imperial ? fixed(area_m2 * kSquareFeetPerSquareMetre, 1) + " sq ft"
                                         : fixed(area_m2, 2) + " m²";
}

std::string size_text(Length width, Length height, UnitSystem units) {
    return shown(width, units) + " x " + shown(height, units);
}

} // namespace throwline::checks
