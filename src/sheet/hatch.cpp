#include "sheet/hatch.h"

#include <algorithm>
#include <cmath>

namespace throwline::sheet {

namespace {

/// Where the line `v = level` enters and leaves an outline, in order along u.
std::vector<double> crossings(std::span<const Vec2> outline, double level) {
    std::vector<double> found;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& a = outline[i];
        const Vec2& b = outline[(i + 1) % outline.size()];
        // Half-open, so that a corner on the line counts once.
        if ((a.y() <= level) != (b.y() <= level)) {
            found.push_back(a.x() + (level - a.y()) / (b.y() - a.y()) * (b.x() - a.x()));
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

/// Raster levels within the outline's span along y.
std::vector<double> levels(std::span<const Vec2> outline, double spacing) {
    const auto [low, high] = std::minmax_element(
        outline.begin(), outline.end(), [](const Vec2& a, const Vec2& b) { return a.y() < b.y(); });
    std::vector<double> found;
    const double first = std::ceil(low->y() / spacing);
    const double count = std::floor(high->y() / spacing) - first;
    for (int i = 0; i <= count; ++i) {
        found.push_back((first + i) * spacing);
    }
    return found;
}

} // namespace

std::vector<LineSegment> hatch_lines(std::span<const Vec2> outline, double angle_rad,
                                     double spacing) {
    std::vector<LineSegment> lines;
    if (outline.size() < 3) {
        return lines;
    }
    std::vector<Vec2> level_outline;
    for (const Vec2& point : outline) {
        level_outline.push_back(rotated(point, -angle_rad));
    }
    for (const double level : levels(level_outline, spacing)) {
        const std::vector<double> ends = crossings(level_outline, level);
        for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
            lines.emplace_back(rotated(Vec2{ends[i], level}, angle_rad),
                               rotated(Vec2{ends[i + 1], level}, angle_rad));
        }
    }
    return lines;
}

std::vector<Vec2> hatch_dots(std::span<const Vec2> outline, double spacing) {
    std::vector<Vec2> dots;
    if (outline.size() < 3) {
        return dots;
    }
    for (const double level : levels(outline, spacing)) {
        const std::vector<double> ends = crossings(outline, level);
        for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
            for (double n = std::ceil(ends[i] / spacing); n * spacing <= ends[i + 1]; n += 1.0) {
                dots.emplace_back(n * spacing, level);
            }
        }
    }
    return dots;
}

} // namespace throwline::sheet
