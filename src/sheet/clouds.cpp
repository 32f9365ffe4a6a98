#include "sheet/clouds.h"

#include "plan/places.h"
#include "sheet/raster_outline.h"

#include <cmath>

namespace throwline::sheet {

namespace {

using plan::ThingKind;

/// Chord of a scallop: large enough to be told from a dashed line, small enough for one lamp.
constexpr double kScallop_mm = 4.0;
/// How far a scallop bulges, as a share of its chord.
constexpr double kBulge = 0.28;
/// Clear paper between a thing and the straight line under the scallops.
constexpr double kAir_mm = 1.0;
/// Along walls and pipes boxes follow each other this closely, so that no cell is skipped.
constexpr double kStep_mm = 2.0;
constexpr double kTriangle_mm = 8.0;
constexpr std::size_t kLongestLetter = 3;

/// How things of a kind lie on the sheet.
enum class Footing { none, symbol, line, area };

Footing footing_of(ThingKind kind) {
    switch (kind) {
    case ThingKind::room:
    case ThingKind::person:
    case ThingKind::beat:
    case ThingKind::mark:
    case ThingKind::camera:
    case ThingKind::shot:
    case ThingKind::boom:
    case ThingKind::lamp:
    case ThingKind::circuit:
        return Footing::symbol;
    case ThingKind::wall:
    case ThingKind::opening:
    case ThingKind::pipe:
        return Footing::line;
    case ThingKind::scenery:
        return Footing::area;
    case ThingKind::grid:
    case ThingKind::production:
    case ThingKind::site:
    case ThingKind::survey:
    case ThingKind::underlay:
    case ThingKind::kit_item:
    case ThingKind::targets:
    case ThingKind::acceptance:
        return Footing::none;
    }
    return Footing::none;
}

/// Half of what a symbol takes up on the floor, metres (about the size of the thing itself).
double half_size_m(ThingKind kind) {
    const bool tracked = kind == ThingKind::camera || kind == ThingKind::shot;
    const bool wall = footing_of(kind) == Footing::line;
    return tracked ? 0.45 : wall ? 0.1 : 0.3;
}

Box box_around(const Vec2& middle_mm, double half_mm) {
    return {middle_mm.x() - half_mm, middle_mm.y() - half_mm, 2.0 * half_mm, 2.0 * half_mm};
}

Box box_around(std::span<const Vec2> points_mm) {
    Vec2 low = points_mm.front();
    Vec2 high = low;
    for (const Vec2& point : points_mm) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    }
    return Box{low.x(), low.y(), high.x() - low.x(), high.y() - low.y()}.inset(-kAir_mm);
}

void add_line(std::vector<Box>& boxes, std::span<const Vec2> points_mm, double half_mm) {
    for (std::size_t i = 0; i + 1 < points_mm.size(); ++i) {
        const Vec2 way = points_mm[i + 1] - points_mm[i];
        const int steps = static_cast<int>(std::ceil(way.norm() / kStep_mm)) + 1;
        for (int k = 0; k <= steps; ++k) {
            boxes.push_back(
                box_around(points_mm[i] + way * (static_cast<double>(k) / steps), half_mm));
        }
    }
}

/// Where a thing is now; where it was when it is gone.
std::vector<Vec2> place_of(const plan::ChangedThing& thing, const Clouded& clouded) {
    if (thing.kind == ThingKind::scenery && !thing.now.empty()) {
        if (const plan::Scenery* scenery =
                plan::find(clouded.plan, plan::Id<plan::Scenery>{thing.name})) {
            const Polygon outline = plan::footprint(*scenery, clouded.catalogue);
            return outline.empty() ? thing.now : outline;
        }
    }
    return thing.now.empty() ? thing.before : thing.now;
}

void add_boxes(std::vector<Box>& boxes, const PlanFrame& frame, const Clouded& clouded,
               const plan::ChangedThing& thing) {
    const std::vector<Vec2> points_mm = frame.at(place_of(thing, clouded));
    const double half_mm = frame.mm(half_size_m(thing.kind)) + kAir_mm;
    // The whole room has an outline; a corner of it is one point.
    const bool whole_room = thing.kind == ThingKind::room && points_mm.size() > 1;
    if (points_mm.empty() || whole_room) {
        return;
    }
    switch (footing_of(thing.kind)) {
    case Footing::none:
        return;
    case Footing::symbol:
        for (const Vec2& point : points_mm) {
            boxes.push_back(box_around(point, half_mm));
        }
        return;
    case Footing::line:
        return add_line(boxes, points_mm, half_mm);
    case Footing::area:
        boxes.push_back(points_mm.size() == 1 ? box_around(points_mm.front(), half_mm)
                                              : box_around(points_mm));
        return;
    }
}

void draw_cloud(Board& board, const Polygon& outline, const std::string& revision) {
    std::vector<Vec2> points;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const std::vector<Vec2> arc = scallop(outline[i], outline[(i + 1) % outline.size()]);
        points.insert(points.end(), arc.begin(), arc.end() - 1);
    }
    board.add(PlanLayer::findings, sheet::outline(points, pen(Ink::lettering, kStanding_mm)),
              Crowd::firm);
    const Box around = box_around(outline);
    BoxRequest request;
    request.anchor = around.centre();
    request.half_mm = {around.width / 2.0, around.height / 2.0};
    request.size_mm = Vec2::Constant(kTriangle_mm);
    request.under_lettering = true;
    const auto placed = board.field.find({.anchor = around.centre(),
                                          .half_mm = {around.width / 2.0, around.height / 2.0},
                                          .size_mm = {kTriangle_mm, kTriangle_mm},
                                          .under_lettering = true});
    if (!placed) {
        return;
    }
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::findings)];
    if (placed->has_leader) {
        marks.emplace_back(
            line(placed->leader_from, placed->leader_to, pen(Ink::lettering, kConstruction_mm)));
    }
    add_revision_triangle(marks, placed->box.centre(), revision);
}

} // namespace

std::vector<Box> changed_boxes(const PlanFrame& frame, const Clouded& clouded) {
    std::vector<Box> boxes;
    for (const plan::Difference& change : clouded.changes) {
        if (change.gathering == plan::Gathering::slight) {
            continue;
        }
        for (const plan::ChangedThing& thing : change.things) {
            add_boxes(boxes, frame, clouded, thing);
        }
    }
    return boxes;
}

void draw_clouds(Board& board, const Clouded& clouded) {
    const std::vector<Box> boxes = changed_boxes(board.frame, clouded);
    for (const Polygon& outline : raster_outlines(boxes, board.field.area(), kScallop_mm)) {
        draw_cloud(board, outline, clouded.revision);
        board.used.insert(LegendEntry::revised);
    }
}

std::vector<Vec2> scallop(const Vec2& from, const Vec2& to) {
    // An arc through both ends whose middle stands out by the bulge.
    constexpr int kSteps = 8;
    const Vec2 chord = to - from;
    // y points down on paper, so that the vector turned left by the formula points right.
    const Vec2 outward = turned_left(chord);
    std::vector<Vec2> points;
    const double radius = (0.25 + kBulge * kBulge) / (2.0 * kBulge);
    const double half_rad = std::asin(0.5 / radius);
    for (int i = 0; i <= kSteps; ++i) {
        const double angle_rad = half_rad * (2.0 * i / kSteps - 1.0);
        const double along = 0.5 + radius * std::sin(angle_rad);
        const double out = radius * std::cos(angle_rad) - (radius - kBulge);
        points.emplace_back(from + along * chord + out * outward);
    }
    return points;
}

void add_revision_triangle(Marks& marks, const Vec2& centre, const std::string& revision) {
    const double half_mm = kTriangle_mm / 2.0 - 0.4;
    marks.emplace_back(outline({centre + Vec2{0.0, -half_mm}, centre + Vec2{half_mm, half_mm},
                                centre + Vec2{-half_mm, half_mm}},
                               pen(Ink::lettering, kStanding_mm), solid(Ink::paper)));
    if (!revision.empty() && revision.size() <= kLongestLetter) {
        marks.emplace_back(Text{revision, centre + Vec2{0.0, half_mm - 0.9}, kLetter_mm,
                                TextAnchor::middle, 0.0, true, Ink::lettering});
    }
}

} // namespace throwline::sheet
