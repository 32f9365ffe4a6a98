#pragma once

#include "base/polygon.h"
#include "edit/thing.h"
#include "stage/moment.h"

#include <cstddef>
#include <utility>

namespace throwline::edit {

/// What things take up seen from above, as outline_of() has it, for many things one after the
/// other. Of walls and outlets those that are there; empty for what is not on the floor now. Lives
/// no longer than its context.
class Outlines {
  public:
    explicit Outlines(const Context& context);
    /// With the marks of everybody now, or none where nobody is asked for.
    Outlines(const Context& context, stage::Marks marks)
        : context_{context}, marks_{std::move(marks)} {}

    Polygon of_wall(std::size_t wall) const;
    Polygon of_outlet(const Vec2& outlet) const;
    Polygon of(const plan::Opening& opening) const;
    Polygon of(const plan::Pipe& pipe) const;
    Polygon of(const plan::Scenery& piece) const;
    Polygon of(const plan::Person& person) const;
    Polygon of(const plan::Camera& camera) const;
    Polygon of(const plan::Boom& boom) const;
    Polygon of(const plan::Lamp& lamp) const;

  private:
    const Context& context_;
    stage::Marks marks_;
};

} // namespace throwline::edit
