#include "sheet/silhouettes.h"

#include "base/convex_hull.h"

#include <algorithm>
#include <limits>
#include <map>

namespace throwline::sheet {

namespace {

/// Things that only touch the cut from behind are not ahead of it.
constexpr double kReaches_m = 0.005;

/// How far ahead of the cut the solids of an owner lie.
struct Reach {
    double nearest_m = std::numeric_limits<double>::max();
    double furthest_m = std::numeric_limits<double>::lowest();

    bool is_shown(const SectionCut& cut) const {
        return furthest_m > kReaches_m && nearest_m <= cut.depth_m;
    }
};

std::map<int, Reach> reaches_of(const SectionCut& cut) {
    std::map<int, Reach> reaches;
    for (const stage::Solid& solid : cut.stage->solids) {
        Reach& reach = reaches[solid.owner_index];
        for (const Vec3& vertex : solid.mesh.vertices) {
            const double ahead_m = cut.ahead_m(floor_of(vertex));
            reach.nearest_m = std::min(reach.nearest_m, ahead_m);
            reach.furthest_m = std::max(reach.furthest_m, ahead_m);
        }
    }
    return reaches;
}

/// Corners of a solid on paper, of what lies ahead of the cut when `from_cut`.
std::vector<Vec2> seen_points(const SectionCut& cut, const stage::Mesh& mesh, bool from_cut) {
    std::vector<Vec2> points;
    for (const Vec3& vertex : mesh.vertices) {
        if (!from_cut || cut.ahead_m(floor_of(vertex)) >= 0.0) {
            points.push_back(cut.at(vertex));
        }
    }
    for (const auto& triangle : from_cut ? mesh.triangles : decltype(mesh.triangles){}) {
        for (std::size_t i = 0; i < triangle.size(); ++i) {
            const Vec3& a = mesh.vertices[triangle[i]];
            const Vec3& b = mesh.vertices[triangle[(i + 1) % triangle.size()]];
            const double ahead_a = cut.ahead_m(floor_of(a));
            const double ahead_b = cut.ahead_m(floor_of(b));
            if ((ahead_a < 0.0) != (ahead_b < 0.0)) {
                points.push_back(cut.at(a + (b - a) * (ahead_a / (ahead_a - ahead_b))));
            }
        }
    }
    return points;
}

double middle_ahead_m(const SectionCut& cut, const stage::Mesh& mesh) {
    double sum = 0.0;
    for (const Vec3& vertex : mesh.vertices) {
        sum += cut.ahead_m(floor_of(vertex));
    }
    return mesh.vertices.empty() ? 0.0 : sum / static_cast<double>(mesh.vertices.size());
}

/// The part of a convex outline on one side of an upright line: right of it, or left.
Polygon beside(const Polygon& outline, double s_m, bool right) {
    const auto is_kept = [&](const Vec2& point) {
        return right ? point.x() >= s_m : point.x() <= s_m;
    };
    Polygon kept;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& a = outline[i];
        const Vec2& b = outline[(i + 1) % outline.size()];
        if (is_kept(a)) {
            kept.push_back(a);
        }
        if (is_kept(a) != is_kept(b)) {
            kept.push_back(a + (b - a) * ((s_m - a.x()) / (b.x() - a.x())));
        }
    }
    return kept;
}

/// What is seen of a shape where the cut is inside the room. Only scenery is clipped: the rest is
/// shown whole or not at all.
std::vector<Polygon> seen_outlines(const SectionCut& cut, const Polygon& outline, bool is_clipped,
                                   bool is_always_seen) {
    Extent extent;
    for (const Vec2& corner : outline) {
        extent.include(corner);
    }
    const double middle_m = (extent.low.x() + extent.high.x()) / 2.0;
    const CutStretch reach = is_clipped ? CutStretch{extent.low.x(), extent.high.x() + kReaches_m}
                                        : CutStretch{middle_m, middle_m + kReaches_m};
    std::vector<Polygon> seen;
    for (const CutStretch& part : seen_parts(cut, reach)) {
        seen.push_back(is_clipped && outline.size() > 2
                           ? beside(beside(outline, part.from_m, true), part.to_m, false)
                           : outline);
    }
    if (seen.empty() && is_always_seen) {
        seen.push_back(outline);
    }
    return seen;
}

/// Where things of a kind are sorted by: a whole person lies before or behind another.
double order_m(const SectionCut& cut, const stage::Solid& solid, const Reach& reach) {
    const bool by_owner = solid.kind != stage::OwnerKind::scenery;
    return by_owner ? (reach.nearest_m + reach.furthest_m) / 2.0 : middle_ahead_m(cut, solid.mesh);
}

} // namespace

std::vector<Silhouette> silhouettes(const SectionCut& cut) {
    const std::map<int, Reach> reaches = reaches_of(cut);
    std::vector<Silhouette> seen;
    for (const stage::Solid& solid : cut.stage->solids) {
        const Reach& reach = reaches.at(solid.owner_index);
        if (solid.kind == stage::OwnerKind::room || !reach.is_shown(cut)) {
            continue;
        }
        const bool is_scenery = solid.kind == stage::OwnerKind::scenery;
        const bool is_own_camera =
            cut.shot != nullptr && cut.shot->view && solid.owner_index == cut.shot->view->owner;
        const Polygon hull = convex_hull(seen_points(cut, solid.mesh, is_scenery));
        for (Polygon& outline : seen_outlines(cut, hull, is_scenery, is_own_camera)) {
            if (outline.size() > 1) {
                seen.push_back({solid.kind, solid.part, solid.owner_index, std::move(outline),
                                order_m(cut, solid, reach)});
            }
        }
    }
    std::stable_sort(seen.begin(), seen.end(), [](const Silhouette& a, const Silhouette& b) {
        return a.ahead_m > b.ahead_m;
    });
    return seen;
}

std::vector<std::string> not_shown(const SectionCut& cut, stage::OwnerKind kind) {
    const std::map<int, Reach> reaches = reaches_of(cut);
    std::vector<std::string> names;
    for (std::size_t i = 0; i < cut.stage->owners.size(); ++i) {
        const stage::Owner& owner = cut.stage->owners[i];
        const auto reach = reaches.find(static_cast<int>(i));
        if (owner.kind == kind && reach != reaches.end() && !reach->second.is_shown(cut)) {
            names.push_back(owner.name);
        }
    }
    return names;
}

std::vector<CutPiece> cut_pieces(const SectionCut& cut) {
    std::vector<CutPiece> pieces;
    for (const stage::PlacedScenery& piece : cut.stage->scenery) {
        for (const CutStretch& stretch : stretches_inside(cut, piece.outline)) {
            pieces.push_back({&piece, stretch});
        }
    }
    return pieces;
}

} // namespace throwline::sheet
