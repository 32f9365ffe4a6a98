#pragma once

#include "base/polygon.h"
#include "edit/thing.h"

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace throwline::edit {

/// What a thing takes up seen from above, metres: a closed outline, or for walls, pipes and poles
/// the outline of the line with its thickness. Empty when it is not on the floor now.
Polygon outline_of(const Context& context, const Thing& thing);
/// The point that a thing is said to be at: a mark, a lens, the middle of scenery, the turning
/// point of a lamp, the microphone of a boom, the middle of a wall or opening.
std::optional<Vec2> place_of(const Context& context, const Thing& thing);

/// Outlines of everything on the floor in a grid of cells, for questions many times a second. A
/// value made for one plan and now.
class PickField {
  public:
    explicit PickField(const Context& context);
    ~PickField();
    PickField(PickField&&) noexcept;
    PickField& operator=(PickField&&) noexcept;

    /// Things under or within `reach_m` of a point, what one would mean first: small before large,
    /// what stands or hangs before what it stands on, the room last. Hidden things never.
    std::vector<Thing> at(const Vec2& point, double reach_m) const;
    /// Things wholly inside a rectangle, or touched by it; hidden and locked ones never, walls only
    /// when wholly inside.
    std::vector<Thing> inside(const Vec2& corner, const Vec2& opposite, bool touched) const;
    /// Outline as of outline_of(); empty for what it does not know.
    const Polygon& outline(const Thing& thing) const;

  private:
    class Impl;
    std::unique_ptr<Impl> impl_;
};

} // namespace throwline::edit
