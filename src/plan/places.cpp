#include "plan/places.h"

#include <algorithm>

namespace throwline::plan {

namespace {

/// Place of an id in a list, or the list's size.
template <class Thing>
std::size_t index_of(const std::vector<Thing>& things, const Id<Thing>& id) {
    const auto at = std::find_if(things.begin(), things.end(),
                                 [&](const Thing& thing) { return thing.id == id; });
    return static_cast<std::size_t>(at - things.begin());
}

std::optional<Vec3> point_of(const Plan& plan, const GridHang& hang) {
    if (!plan.grid) {
        return std::nullopt;
    }
    const std::optional<Vec2> at = grid_point(*plan.grid, hang.position);
    if (!at) {
        return std::nullopt;
    }
    return raised(*at, (plan.grid->height - hang.drop).m());
}

std::optional<Vec3> point_of(const Plan& plan, const PipeHang& hang) {
    const Pipe* pipe = find(plan, hang.pipe);
    if (pipe == nullptr || pipe->from == pipe->to) {
        return std::nullopt;
    }
    const Vec2 direction = (pipe->to - pipe->from).normalized();
    const Vec2 at = pipe->from + direction * hang.along.m();
    return raised(at, (pipe->height - hang.drop).m());
}

std::optional<Vec3> point_of(const Plan&, const StandMount& stand) {
    return raised(stand.at, stand.height.m());
}

std::optional<Vec3> point_of(const Plan& plan, const WallMount& mount) {
    const Polygon& outline = plan.room.outline;
    if (mount.wall < 0 || static_cast<std::size_t>(mount.wall) >= outline.size()) {
        return std::nullopt;
    }
    const auto start = static_cast<std::size_t>(mount.wall);
    const Vec2& from = outline[start];
    const Vec2& to = outline[(start + 1) % outline.size()];
    if (from == to) {
        return std::nullopt;
    }
    const Vec2 along = (to - from).normalized();
    const Vec2 inwards = signed_area(outline) > 0 ? turned_left(along) : Vec2{-turned_left(along)};
    const Vec2 at = from + along * mount.along.m() + inwards * kWallClearance.m();
    return raised(at, mount.height.m());
}

std::optional<Vec3> point_of(const Plan&, const PracticalMount& mount) {
    return raised(mount.at, mount.height.m());
}

/// Height of the surface that a piece of scenery offers to stand on; nothing when it is none.
std::optional<Length> standing_height(const Scenery& scenery,
                                      const catalogue::Catalogue& catalogue) {
    if (const auto* riser = std::get_if<Riser>(&scenery.shape)) {
        return scenery.elevation + riser->height;
    }
    const auto* piece = std::get_if<StockPiece>(&scenery.shape);
    const catalogue::StockItem* item =
        piece == nullptr ? nullptr : catalogue.stock_item(piece->item);
    if (item == nullptr || item->use != catalogue::StockUse::platform) {
        return std::nullopt;
    }
    const Length surface = item->seat_height > Length{} ? item->seat_height : item->height;
    return scenery.elevation + surface;
}

CameraPlace at_start_of(const Shot& shot, const Camera& camera) {
    return {shot.at, shot.height.value_or(camera.eye_height), shot.id};
}

CameraPlace at_end_of(const Shot& shot, const Camera& camera) {
    const Vec2& at = shot.moves.empty() ? shot.at : shot.moves.back();
    return {at, shot.height.value_or(camera.eye_height), shot.id};
}

/// The camera's shot in a beat: the latest up to the shot being taken, else the first after it.
const Shot* shot_in_beat(const Plan& plan, const Camera& camera, const Id<Beat>& beat,
                         const Id<Shot>& taken) {
    const std::size_t now = index_of(plan.shots, taken);
    const Shot* before = nullptr;
    const Shot* after = nullptr;
    for (std::size_t i = 0; i < plan.shots.size(); ++i) {
        const Shot& shot = plan.shots[i];
        const bool in_beat =
            std::find(shot.beats.begin(), shot.beats.end(), beat) != shot.beats.end();
        if (shot.camera != camera.id || !in_beat) {
            continue;
        }
        if (now < plan.shots.size() && i <= now) {
            before = &shot;
        } else if (after == nullptr) {
            after = &shot;
        }
    }
    return before != nullptr ? before : after;
}

/// The camera's shot that ended latest before a beat; of several, the last in the file.
const Shot* shot_before_beat(const Plan& plan, const Camera& camera, const Id<Beat>& beat) {
    const std::size_t now = index_of(plan.beats, beat);
    const Shot* latest = nullptr;
    std::size_t latest_end = 0;
    for (const Shot& shot : plan.shots) {
        if (shot.camera != camera.id || shot.beats.empty()) {
            continue;
        }
        const std::size_t end = index_of(plan.beats, shot.beats.back());
        if (end < now && (latest == nullptr || end >= latest_end)) {
            latest = &shot;
            latest_end = end;
        }
    }
    return latest;
}

} // namespace

std::map<Id<Person>, Mark> marks_at(const Plan& plan, const Id<Beat>& beat) {
    std::map<Id<Person>, Mark> marks;
    const std::size_t last = index_of(plan.beats, beat);
    for (std::size_t i = 0; last < plan.beats.size() && i <= last; ++i) {
        for (const auto& [person, change] : plan.beats[i].marks) {
            if (const auto* mark = std::get_if<Mark>(&change)) {
                marks[person] = *mark;
            } else {
                marks.erase(person);
            }
        }
    }
    return marks;
}

std::optional<Vec3> lamp_point(const Plan& plan, const Lamp& lamp) {
    return std::visit([&](const auto& mount) { return point_of(plan, mount); }, lamp.mount);
}

Length floor_height_at(const Plan& plan, const catalogue::Catalogue& catalogue, const Vec2& point) {
    Length highest;
    for (const Scenery& scenery : plan.scenery) {
        const std::optional<Length> height = standing_height(scenery, catalogue);
        if (height && *height > highest && contains(footprint(scenery, catalogue), point)) {
            highest = *height;
        }
    }
    return highest;
}

std::optional<CameraPlace> camera_place(const Plan& plan, const Camera& camera,
                                        const Id<Beat>& beat, const Id<Shot>& shot) {
    const Shot* taken = find(plan, shot);
    if (taken != nullptr && taken->camera == camera.id) {
        return at_start_of(*taken, camera);
    }
    if (const Shot* now = shot_in_beat(plan, camera, beat, shot)) {
        return at_start_of(*now, camera);
    }
    if (const Shot* earlier = shot_before_beat(plan, camera, beat)) {
        return at_end_of(*earlier, camera);
    }
    if (camera.home) {
        return CameraPlace{*camera.home, camera.eye_height, {}};
    }
    return std::nullopt;
}

} // namespace throwline::plan
