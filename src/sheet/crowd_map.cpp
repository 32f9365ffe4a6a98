#include "sheet/crowd_map.h"

#include "sheet/hatch.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace throwline::sheet {

namespace {

constexpr double kFinestCell_mm = 0.5;
/// So that a wall of tiles does not take all memory; an A0 sheet has four million of the finest.
constexpr double kMostCells = 6e6;
/// Steps along a line when it is entered; under a cell, so that none is skipped.
constexpr double kStepShare = 0.8;
/// Price of a symbol or wall under a leader, in cells of a plain line.
constexpr double kForbiddenUnderLeader = 16.0;

std::uint16_t weight_of(Crowd crowd) {
    switch (crowd) {
    case Crowd::none:
        return 0;
    case Crowd::light:
        return 1;
    case Crowd::firm:
        return 4;
    case Crowd::never:
        return 0;
    }
    return 0;
}

double cell_size(const Box& area) {
    const double least_mm = std::sqrt(std::max(0.0, area.width * area.height) / kMostCells);
    return std::max(kFinestCell_mm, least_mm);
}

int count_of(double length_mm, double cell_mm) {
    return std::max(1, static_cast<int>(std::ceil(length_mm / cell_mm)));
}

} // namespace

CrowdMap::CrowdMap(const Box& area)
    : area_{area}, cell_mm_{cell_size(area)}, columns_{count_of(area.width, cell_mm_)},
      rows_{count_of(area.height, cell_mm_)},
      cells_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_)) {}

const CrowdMap::Cell* CrowdMap::cell_at(const Vec2& point) const {
    const int column = static_cast<int>(std::floor((point.x() - area_.left) / cell_mm_));
    const int row = static_cast<int>(std::floor((point.y() - area_.top) / cell_mm_));
    if (column < 0 || row < 0 || column >= columns_ || row >= rows_) {
        return nullptr;
    }
    return &cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_)
                   + static_cast<std::size_t>(column)];
}

void CrowdMap::cover_point(const Vec2& point, Crowd crowd) {
    if (const Cell* found = cell_at(point)) {
        Cell& cell = cells_[static_cast<std::size_t>(found - cells_.data())];
        cell.crowd = std::max(cell.crowd, weight_of(crowd));
        cell.forbidden = cell.forbidden || crowd == Crowd::never;
    }
}

void CrowdMap::cover_line(std::span<const Vec2> points, bool closed, Crowd crowd) {
    const std::size_t sides = closed ? points.size() : points.size() - 1;
    for (std::size_t i = 0; i < sides; ++i) {
        const Vec2& from = points[i];
        const Vec2& to = points[(i + 1) % points.size()];
        const double length_mm = (to - from).norm();
        const int steps = static_cast<int>(std::ceil(length_mm / (cell_mm_ * kStepShare))) + 1;
        for (int k = 0; k <= steps; ++k) {
            cover_point(from + (to - from) * (static_cast<double>(k) / steps), crowd);
        }
    }
}

void CrowdMap::cover_inside(std::span<const Vec2> points) {
    for (const auto& [from, to] : hatch_lines(points, 0.0, cell_mm_ * kStepShare)) {
        cover_line(std::array{from, to}, false, Crowd::never);
    }
}

void CrowdMap::cover(const Path& path, Crowd crowd) {
    if (crowd == Crowd::none || path.points.size() < 2) {
        return;
    }
    is_summed_ = false;
    cover_line(path.points, path.closed, crowd);
    if (path.closed && crowd == Crowd::never) {
        cover_inside(path.points);
    }
}

void CrowdMap::cover(const Circle& round, Crowd crowd) {
    cover(outline(circle(round.centre, round.radius_mm), round.pen), crowd);
}

void CrowdMap::sum_up() {
    const auto wide = static_cast<std::size_t>(columns_) + 1;
    sums_.assign(wide * (static_cast<std::size_t>(rows_) + 1), Sum{});
    for (std::size_t row = 0; row < static_cast<std::size_t>(rows_); ++row) {
        Sum along;
        const Cell* cells = &cells_[row * static_cast<std::size_t>(columns_)];
        for (std::size_t column = 0; column < static_cast<std::size_t>(columns_); ++column) {
            along.crowd += cells[column].crowd;
            along.forbidden += cells[column].forbidden ? 1U : 0U;
            const Sum& above = sums_[row * wide + column + 1];
            sums_[(row + 1) * wide + column + 1] = {above.crowd + along.crowd,
                                                    above.forbidden + along.forbidden};
        }
    }
    is_summed_ = true;
}

std::optional<double> CrowdMap::under(const Box& box) {
    if (!area_.holds(box)) {
        return std::nullopt;
    }
    if (!is_summed_) {
        sum_up();
    }
    const auto cell_of = [&](double distance_mm, int count) {
        const int cell = static_cast<int>(std::floor(distance_mm / cell_mm_));
        return static_cast<std::size_t>(std::clamp(cell, 0, count - 1));
    };
    const std::size_t left = cell_of(box.left - area_.left, columns_);
    const std::size_t right = cell_of(box.right() - area_.left, columns_) + 1;
    const std::size_t top = cell_of(box.top - area_.top, rows_);
    const std::size_t bottom = cell_of(box.bottom() - area_.top, rows_) + 1;
    const auto wide = static_cast<std::size_t>(columns_) + 1;
    const Sum& a = sums_[top * wide + left];
    const Sum& b = sums_[top * wide + right];
    const Sum& c = sums_[bottom * wide + left];
    const Sum& d = sums_[bottom * wide + right];
    // Unsigned sums wrap, and so do their differences.
    if (d.forbidden - b.forbidden - c.forbidden + a.forbidden != 0U) {
        return std::nullopt;
    }
    // As if in the finest cells, so that prices do not hang on the size of the sheet.
    return static_cast<double>(d.crowd - b.crowd - c.crowd + a.crowd) * (cell_mm_ / kFinestCell_mm);
}

double CrowdMap::across(const Vec2& from, const Vec2& to) const {
    double sum = 0.0;
    const int steps = static_cast<int>((to - from).norm() / cell_mm_);
    for (int k = 1; k < steps; ++k) {
        const Cell* cell = cell_at(from + (to - from) * (static_cast<double>(k) / steps));
        if (cell == nullptr) {
            return std::numeric_limits<double>::infinity();
        }
        sum += cell->forbidden ? kForbiddenUnderLeader : cell->crowd;
    }
    return sum * (cell_mm_ / kFinestCell_mm);
}

} // namespace throwline::sheet
