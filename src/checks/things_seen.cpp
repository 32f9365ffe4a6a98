#include "checks/things_seen.h"

#include "checks/framing.h"

#include <array>

namespace throwline::checks {

namespace {

constexpr GridSize kGrid{20, 20};
/// Fewer hits of the grid than this are too few to measure by: the solid is thin or mostly hidden.
constexpr int kLeastHits = 8;
/// How often each triangle is cut into four before a point is taken in each piece.
constexpr int kCuts = 2;

/// Sums what is seen, weighted by its share of the frame.
struct Tally {
    double share = 0.0;
    Vec2 place = Vec2::Zero();
    Vec3 at = Vec3::Zero();

    void add(double part, const Vec2& frame_point, const Vec3& point) {
        share += part;
        place += part * frame_point;
        at += part * point;
    }
    SolidSeen seen(int solid) const {
        if (share <= 0.0) {
            return {solid, 0.0, {}, {}};
        }
        return {solid, share, place / share, at / share};
    }
};

Tally over_grid(const ShotScene& scene, const stage::ShotView& view, int solid,
                const FrameBounds& bounds, int& hit_count) {
    Tally tally;
    const std::vector<Vec3> directions = directions_over(view.frame, bounds, kGrid);
    const std::vector<std::optional<stage::Hit>> hits =
        scene.stage.rays->nearest_hits(view.pose.lens, directions, kSight_m, {view.owner, -1});
    const double cell = bounds.share_of_frame() / static_cast<double>(directions.size());
    for (std::size_t i = 0; i < hits.size(); ++i) {
        if (!hits[i] || hits[i]->solid != solid) {
            continue;
        }
        ++hit_count;
        const Vec3 point = view.pose.lens + directions[i] * hits[i]->distance_m;
        tally.add(cell, view.frame.project(point).value_or(bounds.middle()), point);
    }
    return tally;
}

using Triangle = std::array<Vec3, 3>;

/// Adds a small triangle when its middle is in the frame, faces the lens and is not hidden.
void add_piece(Tally& tally, const ShotScene& scene, const stage::ShotView& view,
               const Triangle& piece) {
    const std::optional<Vec2> a = view.frame.project(piece[0]);
    const std::optional<Vec2> b = view.frame.project(piece[1]);
    const std::optional<Vec2> c = view.frame.project(piece[2]);
    if (!a || !b || !c) {
        return;
    }
    // Corners run anticlockwise where the outside is seen; the frame's area is 4.
    const double share = cross(*b - *a, *c - *a) / 2.0 / 4.0;
    const Vec3 middle = (piece[0] + piece[1] + piece[2]) / 3.0;
    if (share > 0.0 && view.frame.contains(middle)
        && !scene.stage.rays->is_blocked({view.pose.lens, middle}, {view.owner, -1})) {
        tally.add(share, (*a + *b + *c) / 3.0, middle);
    }
}

void add_in_pieces(Tally& tally, const ShotScene& scene, const stage::ShotView& view,
                   const Triangle& whole, int cuts) {
    if (cuts == 0) {
        add_piece(tally, scene, view, whole);
        return;
    }
    const Vec3 ab = (whole[0] + whole[1]) / 2.0;
    const Vec3 bc = (whole[1] + whole[2]) / 2.0;
    const Vec3 ca = (whole[2] + whole[0]) / 2.0;
    for (const Triangle& part : {Triangle{whole[0], ab, ca}, Triangle{ab, whole[1], bc},
                                 Triangle{ca, bc, whole[2]}, Triangle{ab, bc, ca}}) {
        add_in_pieces(tally, scene, view, part, cuts - 1);
    }
}

Tally over_triangles(const ShotScene& scene, const stage::ShotView& view, const stage::Mesh& mesh) {
    Tally tally;
    for (const std::array<std::uint32_t, 3>& corners : mesh.triangles) {
        add_in_pieces(
            tally, scene, view,
            {mesh.vertices[corners[0]], mesh.vertices[corners[1]], mesh.vertices[corners[2]]},
            kCuts);
    }
    return tally;
}

} // namespace

SolidSeen solid_seen(const ShotScene& scene, const stage::ShotView& view, int solid) {
    const stage::Mesh& mesh = scene.stage.solids[static_cast<std::size_t>(solid)].mesh;
    const std::optional<FrameBounds> around = bounds_of(view.frame, mesh.vertices);
    const FrameBounds bounds = around ? around->inside_frame() : FrameBounds{};
    if (bounds.is_empty()) {
        return {solid, 0.0, {}, {}};
    }
    int hit_count = 0;
    const Tally by_grid = over_grid(scene, view, solid, bounds, hit_count);
    if (hit_count >= kLeastHits) {
        return by_grid.seen(solid);
    }
    const Tally by_triangles = over_triangles(scene, view, mesh);
    return (by_triangles.share > by_grid.share ? by_triangles : by_grid).seen(solid);
}

} // namespace throwline::checks
