#include "edit/seen_thing.h"

#include <algorithm>

namespace throwline::edit {

namespace {

std::optional<Thing> room_part(const plan::Room& room, const std::string& name) {
    for (int wall = 0; wall < static_cast<int>(room.outline.size()); ++wall) {
        if (stage::wall_name(wall) == name) {
            return Thing{Kind::wall, {}, wall};
        }
    }
    const bool is_opening =
        std::any_of(room.openings.begin(), room.openings.end(),
                    [&](const plan::Opening& opening) { return opening.id.name == name; });
    return is_opening ? std::optional{Thing{Kind::opening, name, 0}} : std::nullopt;
}

} // namespace

std::optional<Thing> seen_thing(const plan::Plan& plan, const stage::Owner& owner) {
    switch (owner.kind) {
    case stage::OwnerKind::room:
        return room_part(plan.room, owner.name);
    case stage::OwnerKind::scenery:
        return Thing{Kind::scenery, owner.name, 0};
    case stage::OwnerKind::cast:
    case stage::OwnerKind::crew:
        return Thing{Kind::person, owner.name, 0};
    case stage::OwnerKind::camera:
        return Thing{Kind::camera, owner.name, 0};
    case stage::OwnerKind::lamp:
        return Thing{Kind::lamp, owner.name, 0};
    case stage::OwnerKind::boom:
        return Thing{Kind::boom, owner.name, 0};
    }
    return std::nullopt;
}

} // namespace throwline::edit
