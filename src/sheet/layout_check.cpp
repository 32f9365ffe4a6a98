#include "sheet/layout_check.h"

#include "base/polygon.h"
#include "sheet/marks.h"
#include "sheet/text_box.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace throwline::sheet {

namespace {

/// What touches does not overlap, and lines that only graze letters do not hide them.
constexpr double kTouch_mm = 0.02;
constexpr double kGraze_mm = 0.15;
/// A ring around a number is no larger than this.
constexpr double kLargestRing_mm = 14.0;
/// Parts of a sheet are larger than any sample or symbol in them.
constexpr double kLeastPart_mm = 12.0;

/// Lettering with what it takes up: a convex outline.
struct Lettering {
    const Text* text = nullptr;
    Polygon outline;
    Box box;
};

Box box_around(const Polygon& points) {
    Vec2 low = points.front();
    Vec2 high = points.front();
    for (const Vec2& point : points) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    }
    return {low.x(), low.y(), high.x() - low.x(), high.y() - low.y()};
}

/// How far two convex outlines reach into each other along the normals of the first's sides.
double depth_along(const Polygon& a, const Polygon& b) {
    double depth_mm = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < a.size(); ++i) {
        const Vec2 side = a[(i + 1) % a.size()] - a[i];
        if (side.norm() < 1e-9) {
            continue;
        }
        const Vec2 normal = turned_left(Vec2{side / side.norm()});
        const auto span = [&](const Polygon& points) {
            std::pair<double, double> reach{points.front().dot(normal), points.front().dot(normal)};
            for (const Vec2& point : points) {
                reach.first = std::min(reach.first, point.dot(normal));
                reach.second = std::max(reach.second, point.dot(normal));
            }
            return reach;
        };
        const auto [a_low, a_high] = span(a);
        const auto [b_low, b_high] = span(b);
        depth_mm = std::min(depth_mm, std::min(a_high - b_low, b_high - a_low));
    }
    return depth_mm;
}

bool overlap(const Lettering& a, const Lettering& b) {
    return a.box.overlaps(b.box)
           && std::min(depth_along(a.outline, b.outline), depth_along(b.outline, a.outline))
                  > kTouch_mm;
}

/// The ring that a number stands in: a small closed path with a line, laid down just before.
const Path* ring_of(const std::vector<Mark>& marks, std::size_t text, const Box& box) {
    for (std::size_t back = 1; back <= 2 && back <= text; ++back) {
        const auto* path = std::get_if<Path>(&marks[text - back]);
        if (path == nullptr) {
            return nullptr;
        }
        if (!path->closed || path->pen.width_mm <= 0.0 || path->fill.hatch == Hatch::none) {
            continue;
        }
        const Box around = box_around(path->points);
        // Descenders of a number are empty, so only its capitals must be inside.
        if (around.contains(box.centre()) && std::max(around.width, around.height) < kLargestRing_mm
            && around.width >= box.width) {
            return path;
        }
    }
    return nullptr;
}

void shift(Polygon& points, const Vec2& by) {
    for (Vec2& point : points) {
        point += by;
    }
}

std::vector<Lettering> lettering_of(const Drawing& drawing, const TextMeasure& measure) {
    std::vector<Lettering> all;
    for (const Layer& layer : drawing.layers) {
        for (std::size_t i = 0; i < layer.marks.size(); ++i) {
            const auto* text = std::get_if<Text>(&layer.marks[i]);
            if (text == nullptr || text->text.empty()) {
                continue;
            }
            const auto corners = text_corners(*text, measure);
            Polygon outline{corners.begin(), corners.end()};
            if (const Path* ring = ring_of(layer.marks, i, box_around(outline))) {
                outline = ring->points;
            }
            shift(outline, layer.shift_mm);
            const Box box = box_around(outline);
            all.push_back({text, std::move(outline), box});
        }
    }
    return all;
}

/// Whether a line runs through an outline, more than grazing it.
bool crosses(const Lettering& lettering, const Vec2& from, const Vec2& to) {
    Polygon inner = lettering.outline;
    const Vec2 middle = centroid(inner);
    for (Vec2& corner : inner) {
        const Vec2 out = corner - middle;
        corner = middle + out * std::max(0.0, 1.0 - kGraze_mm / std::max(kGraze_mm, out.norm()));
    }
    if (contains(inner, from, 0.0) || contains(inner, to, 0.0)) {
        return true;
    }
    for (std::size_t i = 0; i < inner.size(); ++i) {
        if (crossing_share(from, to, inner[i], inner[(i + 1) % inner.size()]) >= 0.0) {
            return true;
        }
    }
    return false;
}

struct Stroke {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();
};

void add_strokes(std::vector<Stroke>& strokes, const Path& path, const Vec2& by) {
    const std::size_t count = path.points.size();
    for (std::size_t i = 0; i + (path.closed ? 0 : 1) < count; ++i) {
        strokes.push_back({path.points[i] + by, path.points[(i + 1) % count] + by});
    }
}

/// An upright rectangle without a fill, as sheets draw around their parts.
bool is_part(const Path& path) {
    if (!path.closed || path.points.size() != 4 || path.fill.hatch != Hatch::none) {
        return false;
    }
    for (std::size_t i = 0; i < 4; ++i) {
        const Vec2 side = path.points[(i + 1) % 4] - path.points[i];
        if (side.cwiseAbs().minCoeff() > kTouch_mm || side.norm() < kLeastPart_mm) {
            return false;
        }
    }
    return true;
}

struct Strokes {
    std::vector<Stroke> parts;
    std::vector<Stroke> built;
};

Strokes strokes_of(const Drawing& drawing) {
    Strokes strokes;
    for (const Layer& layer : drawing.layers) {
        for (const Mark& mark : layer.marks) {
            const auto* path = std::get_if<Path>(&mark);
            if (path == nullptr || path->pen.width_mm <= 0.0) {
                continue;
            }
            if (layer.name == "frame") {
                if (is_part(*path)) {
                    add_strokes(strokes.parts, *path, layer.shift_mm);
                }
            } else if (path->pen.ink == Ink::built && path->pen.width_mm >= kBuilt_mm) {
                add_strokes(strokes.built, *path, layer.shift_mm);
            }
        }
    }
    return strokes;
}

bool crosses_any(const Lettering& lettering, const std::vector<Stroke>& strokes) {
    return std::any_of(strokes.begin(), strokes.end(), [&](const Stroke& stroke) {
        const Box box = box_around({stroke.from, stroke.to}).inset(-kTouch_mm);
        return box.overlaps(lettering.box) && crosses(lettering, stroke.from, stroke.to);
    });
}

} // namespace

LayoutFaults layout_faults(const Drawing& drawing, const TextMeasure& measure) {
    const std::vector<Lettering> all = lettering_of(drawing, measure);
    const Strokes strokes = strokes_of(drawing);
    const Box page{0.0, 0.0, drawing.width_mm, drawing.height_mm};
    LayoutFaults faults;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const std::string& words = all[i].text->text;
        for (std::size_t j = i + 1; j < all.size(); ++j) {
            if (overlap(all[i], all[j])) {
                faults.overlapping.emplace_back(words, all[j].text->text);
            }
        }
        if (!page.holds(all[i].box) || crosses_any(all[i], strokes.parts)) {
            faults.cut.push_back(words);
        }
        if (all[i].text->height_mm < kLetter_mm) {
            faults.too_small.push_back(words);
        }
        if (crosses_any(all[i], strokes.built)) {
            faults.over_built.push_back(words);
        }
    }
    return faults;
}

} // namespace throwline::sheet
