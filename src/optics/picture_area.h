#pragma once

#include "base/quantity.h"
#include "catalogue/catalogue.h"

namespace throwline::optics {

/// The part of the sensor that is recorded, and how much wider than it the picture is shown.
struct PictureArea {
    Length width;
    Length height;
    /// Horizontal squeeze of the lens: 1 for spherical, 2 for classic anamorphic.
    double squeeze = 1.0;

    /// Width over height of the picture as shown, after the squeeze is taken out.
    double aspect() const;
    Length diagonal() const;

    bool operator==(const PictureArea&) const = default;
};

/// The area of a sensor mode with the squeeze that the mode itself names.
PictureArea effective_sensor(const catalogue::SensorMode& mode);
/// The area of a sensor mode behind a lens: the lens alone decides what is squeezed.
PictureArea effective_sensor(const catalogue::SensorMode& mode, const catalogue::Lens& lens);

/// A window in the middle of the area, `crop` times smaller both ways (crop >= 1).
PictureArea windowed(const PictureArea& area, double crop);
/// The largest part of the area whose shown picture has this width over height (> 0): full width
/// when the wanted picture is at least as wide, else full height. Plain geometry.
PictureArea cropped_to_aspect(const PictureArea& area, double aspect);

} // namespace throwline::optics
