#include "sheet/occupancy.h"

#include <algorithm>
#include <cmath>

namespace throwline::sheet {

namespace {

/// About as large as a label.
constexpr double kBucket_mm = 12.0;

Box box_around(const Vec2& a, const Vec2& b) {
    const Vec2 low = a.cwiseMin(b);
    const Vec2 size = a.cwiseMax(b) - low;
    return {low.x(), low.y(), size.x(), size.y()};
}

template <class Thing>
void erase_one(std::vector<Thing>& things, const Thing& thing) {
    const auto found = std::find(things.begin(), things.end(), thing);
    if (found != things.end()) {
        things.erase(found);
    }
}

template <class Thing>
void add_new(std::vector<Thing>& things, const Thing& thing) {
    if (std::find(things.begin(), things.end(), thing) == things.end()) {
        things.push_back(thing);
    }
}

} // namespace

bool runs_through(const Box& box, const Vec2& from, const Vec2& to) {
    // Liang and Barsky: the part of the line between each pair of sides, cut down in turn.
    double enter = 0.0;
    double leave = 1.0;
    const Vec2 low{box.left, box.top};
    const Vec2 high{box.right(), box.bottom()};
    for (const int axis : {0, 1}) {
        const double step = to[axis] - from[axis];
        if (step == 0.0) {
            if (from[axis] <= low[axis] || from[axis] >= high[axis]) {
                return false;
            }
            continue;
        }
        const double a = (low[axis] - from[axis]) / step;
        const double b = (high[axis] - from[axis]) / step;
        enter = std::max(enter, std::min(a, b));
        leave = std::min(leave, std::max(a, b));
    }
    return enter < leave;
}

Occupancy::Occupancy(const Box& area)
    : area_{area}, columns_{std::max(1, static_cast<int>(std::ceil(area.width / kBucket_mm)))},
      rows_{std::max(1, static_cast<int>(std::ceil(area.height / kBucket_mm)))},
      buckets_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_)) {}

Occupancy::Span Occupancy::span_of(const Box& box) const {
    const auto index = [](double distance_mm, int count) {
        // What lies beyond the edge belongs to the squares along it.
        const double square = std::clamp(distance_mm / kBucket_mm, 0.0, count - 1.0);
        return static_cast<int>(square);
    };
    return {index(box.left - area_.left, columns_), index(box.right() - area_.left, columns_),
            index(box.top - area_.top, rows_), index(box.bottom() - area_.top, rows_)};
}

Box Occupancy::square(int column, int row) const {
    return {area_.left + column * kBucket_mm, area_.top + row * kBucket_mm, kBucket_mm, kBucket_mm};
}

template <class Visit>
bool Occupancy::any_under(const Box& box, const Visit& visit) const {
    const Span span = span_of(box);
    for (int row = span.top; row <= span.bottom; ++row) {
        for (int column = span.left; column <= span.right; ++column) {
            if (visit(static_cast<std::size_t>(row * columns_ + column))) {
                return true;
            }
        }
    }
    return false;
}

template <class Visit>
void Occupancy::each_along(const Line& line, const Visit& visit) const {
    const Span span = span_of(box_around(line.from, line.to));
    for (int row = span.top; row <= span.bottom; ++row) {
        for (int column = span.left; column <= span.right; ++column) {
            // A little wider, so that a line along the edge of a square is in both.
            if (runs_through(square(column, row).inset(-0.5), line.from, line.to)) {
                visit(static_cast<std::size_t>(row * columns_ + column));
            }
        }
    }
}

void Occupancy::add(const Box& box) {
    any_under(box, [&](std::size_t index) {
        buckets_[index].boxes.push_back(box);
        return false;
    });
}

void Occupancy::remove(const Box& box) {
    any_under(box, [&](std::size_t index) {
        erase_one(buckets_[index].boxes, box);
        return false;
    });
}

void Occupancy::add_line(const Vec2& from, const Vec2& to) {
    each_along({from, to}, [&](std::size_t index) { buckets_[index].lines.push_back({from, to}); });
}

void Occupancy::remove_line(const Vec2& from, const Vec2& to) {
    each_along({from, to},
               [&](std::size_t index) { erase_one(buckets_[index].lines, Line{from, to}); });
}

bool Occupancy::overlaps(const Box& box) const {
    return any_under(box, [&](std::size_t index) {
        const std::vector<Box>& boxes = buckets_[index].boxes;
        return std::any_of(boxes.begin(), boxes.end(),
                           [&](const Box& other) { return other.overlaps(box); });
    });
}

bool Occupancy::is_crossed(const Box& box) const {
    return any_under(box, [&](std::size_t index) {
        const std::vector<Line>& lines = buckets_[index].lines;
        return std::any_of(lines.begin(), lines.end(),
                           [&](const Line& line) { return runs_through(box, line.from, line.to); });
    });
}

int Occupancy::boxes_across(const Vec2& from, const Vec2& to) const {
    std::vector<Box> crossed;
    each_along({from, to}, [&](std::size_t index) {
        for (const Box& box : buckets_[index].boxes) {
            if (runs_through(box, from, to)) {
                add_new(crossed, box);
            }
        }
    });
    return static_cast<int>(crossed.size());
}

int Occupancy::lines_across(const Vec2& from, const Vec2& to) const {
    std::vector<Line> crossed;
    each_along({from, to}, [&](std::size_t index) {
        for (const Line& line : buckets_[index].lines) {
            if (crossing_share(from, to, line.from, line.to) >= 0.0) {
                add_new(crossed, line);
            }
        }
    });
    return static_cast<int>(crossed.size());
}

} // namespace throwline::sheet
