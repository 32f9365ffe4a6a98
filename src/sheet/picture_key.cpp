#include "sheet/picture_key.h"

#include "base/digest.h"

#include <algorithm>
#include <array>

namespace throwline::sheet {

namespace {

/// Inward normals of the four sides of the pyramid that the lens takes in.
std::array<Vec3, 4> sides_of(const optics::Frame& frame) {
    const std::array<Vec3, 4> corners = frame.corner_directions();
    std::array<Vec3, 4> sides;
    for (std::size_t i = 0; i < 4; ++i) {
        sides[i] = corners[(i + 1) % 4].cross(corners[i]);
        if (sides[i].dot(frame.axes().forward) < 0.0) {
            sides[i] = -sides[i];
        }
    }
    return sides;
}

/// Whether a solid may reach into the picture: not wholly outside one side of the pyramid.
bool may_be_seen(const stage::Solid& solid, const Vec3& lens, const std::array<Vec3, 4>& sides) {
    return std::none_of(sides.begin(), sides.end(), [&](const Vec3& side) {
        return std::all_of(solid.mesh.vertices.begin(), solid.mesh.vertices.end(),
                           [&](const Vec3& vertex) { return side.dot(vertex - lens) < 0.0; });
    });
}

void add_solid(Digest& digest, const stage::Solid& solid) {
    digest.add(solid.owner);
    const std::array<int, 3> words{static_cast<int>(solid.kind), static_cast<int>(solid.part),
                                   solid.dressed ? 1 : 0};
    digest.add(words.data(), sizeof words);
    digest.add(solid.reflectance);
    for (const Vec3& vertex : solid.mesh.vertices) {
        digest.add(vertex);
    }
}

} // namespace

std::optional<std::uint64_t> picture_key(const checks::ShotScene& scene) {
    if (!scene.view) {
        return std::nullopt;
    }
    const stage::ShotView& view = *scene.view;
    Digest digest;
    digest.add(view.pose.lens);
    digest.add(Vec3{view.pose.pan.rad(), view.pose.tilt.rad(), view.pose.roll.rad()});
    digest.add(view.frame.tan_half_h());
    digest.add(view.frame.tan_half_v());
    for (const plan::Id<plan::Person>& subject : scene.shot->subjects) {
        digest.add(subject.name);
    }
    const std::array<Vec3, 4> sides = sides_of(view.frame);
    for (const stage::Solid& solid : scene.stage.solids) {
        if (solid.owner_index != view.owner && may_be_seen(solid, view.pose.lens, sides)) {
            add_solid(digest, solid);
        }
    }
    return digest.value();
}

} // namespace throwline::sheet
