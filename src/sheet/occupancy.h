#pragma once

#include "sheet/plan_frame.h"

#include <span>
#include <vector>

namespace throwline::sheet {

/// Boxes of lettering and the leaders between them, found by where they are.
class Occupancy {
  public:
    explicit Occupancy(const Box& area);

    void add(const Box& box);
    void remove(const Box& box);
    void add_line(const Vec2& from, const Vec2& to);
    void remove_line(const Vec2& from, const Vec2& to);

    /// Whether a box overlaps one that is there.
    bool overlaps(const Box& box) const;
    /// Whether a line runs through a box.
    bool is_crossed(const Box& box) const;
    /// Boxes that a line runs through, and lines that it crosses.
    int boxes_across(const Vec2& from, const Vec2& to) const;
    int lines_across(const Vec2& from, const Vec2& to) const;

  private:
    struct Line {
        Vec2 from = Vec2::Zero();
        Vec2 to = Vec2::Zero();
        bool operator==(const Line&) const = default;
    };
    /// A square of the area with everything that reaches into it.
    struct Bucket {
        std::vector<Box> boxes;
        std::vector<Line> lines;
    };
    struct Span {
        int left = 0;
        int right = 0;
        int top = 0;
        int bottom = 0;
    };
    Span span_of(const Box& box) const;
    Box square(int column, int row) const;
    /// Calls `visit` with each bucket that a box reaches into, until it returns true.
    template <class Visit>
    bool any_under(const Box& box, const Visit& visit) const;
    template <class Visit>
    void each_along(const Line& line, const Visit& visit) const;

    Box area_;
    int columns_;
    int rows_;
    std::vector<Bucket> buckets_;
};

/// Whether a straight line from one point to another runs through a box.
bool runs_through(const Box& box, const Vec2& from, const Vec2& to);

} // namespace throwline::sheet
