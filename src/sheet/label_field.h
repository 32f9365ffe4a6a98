#pragma once

#include "sheet/marks.h"
#include "sheet/plan_frame.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace throwline::sheet {

/// How much a mark minds being lettered over.
enum class Crowd { none, light, firm, never };

struct LabelLine {
    std::string text;
    bool bold = false;
};

/// Words that want to stand beside something.
struct LabelRequest {
    /// Paper place of what is named, and how far it reaches to each side of that.
    Vec2 anchor = Vec2::Zero();
    Vec2 half_mm = Vec2::Ones();
    /// Whether the words may stand on the thing itself when they are shorter than it.
    bool inside = false;
    std::vector<LabelLine> lines;
    Ink ink = Ink::lettering;
    double height_mm = kLetter_mm;
    /// Left out when no place is found near by, because the drawing says it without words.
    bool may_drop = false;
    /// A line to the anchor even from near by.
    bool always_leader = false;
};

/// A box that wants to stand near something.
struct BoxRequest {
    Vec2 anchor = Vec2::Zero();
    Vec2 half_mm = Vec2::Ones();
    Vec2 size_mm = Vec2::Zero();
    bool may_drop = false;
    bool always_leader = false;
    /// Where there is no other way, leaders may run under lettering.
    bool under_lettering = false;
};

struct PlacedBox {
    Box box;
    /// From the anchor to the box; equal ends when it stands near enough to need none.
    Vec2 leader_from = Vec2::Zero();
    Vec2 leader_to = Vec2::Zero();
    bool has_leader = false;
    /// Whether lines run under the box.
    bool over_lines = false;
    /// Whether the box lies to the left of its anchor.
    bool to_the_left = false;
};

/// Knows what is drawn where, to the millimetre, and finds free places for words.
class LabelField {
  public:
    LabelField(const Box& area, const TextMeasure& measure);

    /// Lettering must keep off these marks as far as `crowd` says.
    void cover(const Mark& mark, Crowd crowd);
    /// Nothing else may be lettered here.
    void take(const Box& box);
    /// How much is drawn under a box; nothing where it leaves the area, or where lettering or
    /// something that must not be lettered over is in the way.
    std::optional<double> crowding(const Box& box);

    /// The least crowded place for a box near an anchor, which is then taken, with its leader.
    /// Nothing when the whole area is full, or nothing near by is free and `may_drop`.
    std::optional<PlacedBox> find(const BoxRequest& request);

    /// Finds a place for words and sets them down, with leader; false when left out. Where it is
    /// too full, leaders run under lettering, and in the end only the first line is set.
    bool letter(const LabelRequest& request, Marks& marks);

    const Box& area() const { return area_; }
    const TextMeasure& measure() const { return measure_; }

  private:
    struct Cell {
        unsigned short crowd = 0;
        bool symbol = false;
        bool lettered = false;
    };
    Cell* cell_at(const Vec2& point);
    void cover_point(const Vec2& point, Crowd crowd);
    void cover_line(std::span<const Vec2> points, bool closed, Crowd crowd);
    void cover_inside(std::span<const Vec2> points, Crowd crowd);
    std::optional<double> leader_crowding(const PlacedBox& placed, bool under_lettering);
    bool set_down(const LabelRequest& request, std::span<const LabelLine> lines,
                  bool under_lettering, Marks& marks);
    void settle(const PlacedBox& placed);
    /// A place on the named thing itself.
    std::optional<PlacedBox> find_inside(const LabelRequest& request, const Vec2& size_mm);

    Box area_;
    const TextMeasure& measure_;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<Cell> cells_;
};

} // namespace throwline::sheet
