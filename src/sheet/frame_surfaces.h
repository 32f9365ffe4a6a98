#pragma once

#include "checks/check.h"
#include "checks/undressed.h"

#include <stop_token>
#include <vector>

namespace throwline::sheet {

/// What one ray through the frame meets.
struct FrameSurface {
    /// Index of the owner on the stage; -1 where the ray leaves the room.
    int owner = -1;
    int solid = -1;
    Vec3 point = Vec3::Zero();
    /// Of the face that was met, turned towards the lens; unit length.
    Vec3 normal = Vec3::UnitZ();
    checks::Backing backing = checks::Backing::undressed;
};

/// The nearest surfaces over a frame, row by row from the top left.
struct FrameSurfaces {
    int columns = 0;
    int rows = 0;
    std::vector<FrameSurface> cells;

    const FrameSurface& at(int column, int row) const {
        return cells[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns)
                     + static_cast<std::size_t>(column)];
    }
};

/// The nearest surface along one ray, a unit vector.
FrameSurface surface_along(const stage::Stage& stage, const stage::ShotView& view,
                           const Vec3& direction);

/// The same over the whole frame. Of use only when not stopped.
FrameSurfaces surfaces_over_frame(const stage::Stage& stage, const stage::ShotView& view,
                                  int columns, int rows, const std::stop_token& stop = {});

/// How two neighbouring surfaces part.
enum class Seam { none, crease, outline };
Seam seam_between(const stage::Stage& stage, const FrameSurface& a, const FrameSurface& b);

} // namespace throwline::sheet
