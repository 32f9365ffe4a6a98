#pragma once

#include "base/polygon.h"
#include "edit/thing.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace throwline::edit {

/// What a place was drawn to.
enum class SnapKind {
    end,
    middle,
    crossing,
    pipe_position,
    grid_pitch,
    on_wall,
    right_angle,
    aligned,
    even_length
};
/// "end of wall 2", "position C2", "square to back wall", ...: shown beside the pointer.
std::string_view name_of(SnapKind kind);

/// A straight line shown while it draws a place to it.
struct SnapLine {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();
};

struct Snap {
    Vec2 at = Vec2::Zero();
    SnapKind kind = SnapKind::end;
    /// In the crew's words: "end of wall 2".
    std::string words;
    std::vector<SnapLine> lines;
};

/// What draws, and how strongly.
struct SnapSettings {
    /// How near counts, metres on the floor; the screen makes it from pixels.
    double reach_m = 0.2;
    /// Spacing of the floor squares, metres: the grid's pitch, else 1 m or 4 ft, or what the user
    /// chose. 0 for none.
    double pitch_m = 0.0;
    bool ends = true;
    bool middles = true;
    bool pipes = true;
    bool walls = true;
    bool right_angles = true;
    bool alignments = true;
};

/// Everything that can draw a place to it, indexed. `left_out` are the things that are being moved
/// themselves.
class SnapField {
  public:
    SnapField(const Context& context, std::span<const Thing> left_out);
    ~SnapField();
    SnapField(SnapField&&) noexcept;
    SnapField& operator=(SnapField&&) noexcept;

    /// The place that a point is drawn to: the nearest end, crossing or pipe position, else a
    /// middle, a wall, a right angle or alignment, else the pitch, else an even length; nothing
    /// when none is in reach. `from` is where a line being drawn, or a drag, began: right angles
    /// (along the page, and along and square to what it began on) and even lengths (5 or 10 cm,
    /// 0.5, 1 or 5 m; 3 or 6 in, 1, 4 or 16 ft; the finest that is no smaller than the reach) are
    /// taken from there. Hidden things draw nothing.
    std::optional<Snap> snapped(const Vec2& point, const SnapSettings& settings,
                                const std::optional<Vec2>& from = std::nullopt) const;
    /// The same for something being moved: `at` is the shift that brings one of its points onto
    /// something.
    /// `points` are its own ends and middle, before the shift `by_m`.
    std::optional<Snap> snapped_shift(std::span<const Vec2> points, const Vec2& by_m,
                                      const SnapSettings& settings) const;

  private:
    class Impl;
    std::unique_ptr<Impl> impl_;
};

/// Spacing of the floor squares of a plan: the grid's pitch, else 1 m or 4 ft.
double usual_pitch_m(const plan::Plan& plan);

} // namespace throwline::edit
