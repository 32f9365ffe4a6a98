#include "base/polygon.h"

#include <algorithm>
#include <cmath>

namespace throwline {

namespace {

/// Corners that turn by less than this share of their edges' product count as straight.
constexpr double kStraight = 1e-12;

/// Cuts ears off a ring of corners until none is left.
class EarClipper {
  public:
    explicit EarClipper(std::span<const Vec2> polygon) : polygon_{polygon} {
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            ring_.push_back(static_cast<int>(i));
        }
        if (signed_area(polygon) < 0.0) {
            std::reverse(ring_.begin(), ring_.end());
        }
    }

    std::vector<std::array<int, 3>> triangles() {
        std::vector<std::array<int, 3>> cut;
        if (area(polygon_) <= kStraight * squared_reach()) {
            return cut;
        }
        std::size_t from = 0;
        while (ring_.size() >= 3) {
            from = next_to_cut(from);
            if (turn_at(from) > 0.0) {
                cut.push_back({ring_[before(from)], ring_[from], ring_[after(from)]});
            }
            ring_.erase(ring_.begin() + static_cast<std::ptrdiff_t>(from));
            // Going on two corners further gives rounder triangles than a fan would.
            from = (from + 1) % ring_.size();
        }
        return cut;
    }

  private:
    std::size_t before(std::size_t i) const { return (i + ring_.size() - 1) % ring_.size(); }
    std::size_t after(std::size_t i) const { return (i + 1) % ring_.size(); }
    const Vec2& corner(std::size_t i) const { return polygon_[static_cast<std::size_t>(ring_[i])]; }

    /// Square of the longest way from the first corner to another.
    double squared_reach() const {
        double squared = 0.0;
        for (const Vec2& other : polygon_) {
            squared = std::max(squared, (other - polygon_[0]).squaredNorm());
        }
        return squared;
    }

    /// Twice the area of the triangle that a corner makes with its neighbours.
    double turn_at(std::size_t i) const {
        return cross(corner(i) - corner(before(i)), corner(after(i)) - corner(i));
    }

    /// -1, 0 or 1: right turn, straight, left turn.
    int bend_at(std::size_t i) const {
        const double slack = kStraight * (corner(i) - corner(before(i))).norm()
                             * (corner(after(i)) - corner(i)).norm();
        const double turn = turn_at(i);
        return std::abs(turn) <= slack ? 0 : (turn > 0.0 ? 1 : -1);
    }

    /// Whether no other corner lies in or on the triangle at i, its own three spots left out.
    bool is_clear(std::size_t i) const {
        const Vec2& a = corner(before(i));
        const Vec2& b = corner(i);
        const Vec2& c = corner(after(i));
        for (std::size_t k = 0; k < ring_.size(); ++k) {
            const Vec2& p = corner(k);
            const bool own = p == a || p == b || p == c;
            if (!own && cross(b - a, p - a) >= 0.0 && cross(c - b, p - b) >= 0.0
                && cross(a - c, p - c) >= 0.0) {
                return false;
            }
        }
        return true;
    }

    /// The first corner from `from` on that is an ear. Where rounding or a polygon that crosses
    /// itself leaves none, a straight corner, which covers nothing, and failing that any left turn.
    std::size_t next_to_cut(std::size_t from) const {
        std::size_t straight = ring_.size();
        std::size_t left = ring_.size();
        for (std::size_t step = 0; step < ring_.size(); ++step) {
            const std::size_t i = (from + step) % ring_.size();
            const int bend = bend_at(i);
            if (bend > 0 && is_clear(i)) {
                return i;
            }
            if (bend == 0 && straight == ring_.size()) {
                straight = i;
            }
            if (bend > 0 && left == ring_.size()) {
                left = i;
            }
        }
        const std::size_t fallback = straight < ring_.size() ? straight : left;
        return fallback < ring_.size() ? fallback : from % ring_.size();
    }

    std::span<const Vec2> polygon_;
    std::vector<int> ring_;
};

} // namespace

std::vector<std::array<int, 3>> triangulated(std::span<const Vec2> polygon) {
    return EarClipper{polygon}.triangles();
}

} // namespace throwline
