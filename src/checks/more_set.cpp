#include "checks/framing.h"
#include "checks/undressed.h"

#include <algorithm>
#include <cmath>

namespace throwline::checks {

namespace {

/// Halvings between the middles of two cells: a cell of a frame 5 m wide is then a tenth of a
/// millimetre.
constexpr int kHalvings = 10;
/// More set than this is no advice.
constexpr double kMostExtent_m = 30.0;
/// A line that meets the edge of the frame at less than this slope never fills it in practice.
constexpr double kLeastSlope = 1e-3;
/// Scenery as tall as this backs a standing person (own choice).
constexpr double kBacking_m = 2.2;
/// Cells farther into the set by which the direction of its face is taken.
constexpr int kInwards = 3;

/// How cells are counted along a line from a frame edge inwards, and what bounds the frame there.
struct Scan {
    int lines = 0;
    int cells = 0;
    bool along_rows = true;
    bool reversed = false;
};

std::optional<Scan> scan_for(const ShotScene& scene, FrameSide side) {
    const stage::FrameHits& hits = scene.hits;
    switch (side) {
    case FrameSide::left:
        return Scan{hits.rows, hits.columns, true, false};
    case FrameSide::right:
        return Scan{hits.rows, hits.columns, true, true};
    case FrameSide::top:
        return Scan{hits.columns, hits.rows, false, false};
    case FrameSide::bottom:
    case FrameSide::middle:
        return std::nullopt;
    }
    return std::nullopt;
}

/// Normal of the plane through the lens that projects to an edge of the frame, pointing inwards.
Vec3 edge_normal(const optics::Frame& frame, FrameSide side) {
    const optics::CameraAxes& axes = frame.axes();
    if (side == FrameSide::left) {
        return axes.right + frame.tan_half_h() * axes.forward;
    }
    if (side == FrameSide::right) {
        return -axes.right + frame.tan_half_h() * axes.forward;
    }
    return axes.down + frame.tan_half_v() * axes.forward;
}

class Gap {
  public:
    Gap(const ShotScene& scene, const stage::ShotView& view, const Scan& scan, int line)
        : scene_{scene}, view_{view}, scan_{scan}, line_{line} {}

    std::size_t index(int cell) const {
        const int at = scan_.reversed ? scan_.cells - 1 - cell : cell;
        const int row = scan_.along_rows ? line_ : at;
        const int column = scan_.along_rows ? at : line_;
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(scene_.hits.columns)
               + static_cast<std::size_t>(column);
    }
    const std::optional<stage::Hit>& hit(int cell) const { return scene_.hits.cells[index(cell)]; }

    /// Frame point at a place along the line, in cells (0.5 is the middle of the first).
    Vec2 frame_point(double cells) const {
        const double along = scan_.reversed ? scan_.cells - cells : cells;
        const double row = scan_.along_rows ? line_ + 0.5 : along;
        const double column = scan_.along_rows ? along : line_ + 0.5;
        return {2.0 * column / scene_.hits.columns - 1.0, 1.0 - 2.0 * row / scene_.hits.rows};
    }
    std::optional<stage::Hit> cast(double cells) const {
        return scene_.stage.rays->nearest_hit(view_.pose.lens,
                                              view_.frame.ray_direction(frame_point(cells)),
                                              kSight_m, {view_.owner, -1});
    }
    Vec3 point(double cells, double distance_m) const {
        return view_.pose.lens + view_.frame.ray_direction(frame_point(cells)) * distance_m;
    }
    /// The outermost point of the solid met in `cell`, between it and the cell before.
    Vec3 edge_point(int cell) const {
        double outside = cell - 0.5;
        double inside = cell + 0.5;
        double distance_m = hit(cell)->distance_m;
        for (int i = 0; i < kHalvings; ++i) {
            const double middle = (outside + inside) / 2.0;
            const std::optional<stage::Hit> met = cast(middle);
            if (met && met->solid == hit(cell)->solid) {
                inside = middle;
                distance_m = met->distance_m;
            } else {
                outside = middle;
            }
        }
        return point(inside, distance_m);
    }

  private:
    const ShotScene& scene_;
    const stage::ShotView& view_;
    Scan scan_;
    int line_;
};

/// Flats and other scenery that stands behind people; nobody builds on to a table.
bool can_go_on(const stage::Stage& stage, const stage::Hit& hit) {
    const stage::Solid& solid = stage.solids[static_cast<std::size_t>(hit.solid)];
    if (solid.kind != stage::OwnerKind::scenery || solid.part == stage::Part::flat_front) {
        return solid.kind == stage::OwnerKind::scenery;
    }
    const auto tall = [&](const stage::PlacedScenery& piece) {
        return piece.owner == hit.owner && piece.top_z_m >= kBacking_m;
    };
    return std::any_of(stage.scenery.begin(), stage.scenery.end(), tall);
}

/// The first piece of set in a line, when it is undressed from the edge up to there.
std::optional<int> first_set_cell(const Gap& gap, const Scan& scan, const ShotScene& scene,
                                  const Undressed& undressed, FrameSide side) {
    bool gap_seen = false;
    for (int cell = 0; cell < scan.cells; ++cell) {
        const Backing backing = backing_of(scene.stage, gap.hit(cell));
        if (backing == Backing::undressed) {
            gap_seen = gap_seen || undressed.cells[gap.index(cell)] == side;
        } else if (backing == Backing::dressed) {
            return gap_seen && can_go_on(scene.stage, *gap.hit(cell)) ? std::optional{cell}
                                                                      : std::nullopt;
        }
    }
    return std::nullopt;
}

/// Unit direction in which the set would go on beyond its edge.
std::optional<Vec3> line_of_set(const Gap& gap, const Scan& scan, int cell, const Vec3& edge) {
    if (!scan.along_rows) {
        return Vec3::UnitZ();
    }
    const int inner = cell + kInwards;
    if (inner >= scan.cells || !gap.hit(inner) || gap.hit(inner)->solid != gap.hit(cell)->solid) {
        return std::nullopt;
    }
    Vec3 along = edge - gap.point(inner + 0.5, gap.hit(inner)->distance_m);
    along.z() = 0.0;
    return along.norm() > stage::kRayOffset_m ? std::optional<Vec3>{along.normalized()}
                                              : std::nullopt;
}

/// From a point inside the frame along a line to the plane of the frame's edge.
std::optional<double> extent_m(const Vec3& edge, const Vec3& along, const stage::ShotView& view,
                               const Vec3& normal) {
    const double slope = -normal.dot(along);
    if (slope < kLeastSlope) {
        return std::nullopt;
    }
    const double extent = normal.dot(edge - view.pose.lens) / slope;
    return extent > 0.0 && extent < kMostExtent_m ? std::optional{extent} : std::nullopt;
}

} // namespace

std::optional<MoreSet> more_set_for(const ShotScene& scene, const stage::ShotView& view,
                                    const Undressed& undressed, FrameSide side) {
    const std::optional<Scan> scan = scan_for(scene, side);
    if (!scan) {
        return std::nullopt;
    }
    const Vec3 normal = edge_normal(view.frame, side);
    std::optional<MoreSet> most;
    for (int line = 0; line < scan->lines; ++line) {
        const Gap gap{scene, view, *scan, line};
        const std::optional<int> cell = first_set_cell(gap, *scan, scene, undressed, side);
        if (!cell) {
            continue;
        }
        const Vec3 edge = gap.edge_point(*cell);
        const std::optional<Vec3> along = line_of_set(gap, *scan, *cell, edge);
        const std::optional<double> extent =
            along ? extent_m(edge, *along, view, normal) : std::nullopt;
        if (extent && (!most || *extent > most->extent.m())) {
            most = MoreSet{gap.hit(*cell)->owner, Length::metres(*extent), edge};
        }
    }
    return most;
}

} // namespace throwline::checks
