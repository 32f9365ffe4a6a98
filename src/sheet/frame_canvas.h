#pragma once

#include "plan/plan.h"
#include "sheet/drawing.h"
#include "sheet/frame_surfaces.h"

#include <Eigen/Core>

#include <functional>
#include <stop_token>

/// What pictures of a frame share: rays that are painted, hatch of what is not dressed, lines where
/// surfaces part.
namespace throwline::sheet {

/// Light of each channel as it is shown, 0..1.
using Colour = Eigen::Array3d;

/// The inks of the sheet as light, for mixing with tones.
inline const Colour kPeopleLight{0.0, 0.62, 0.45};
inline const Colour kCameraLight{0.0, 0.45, 0.70};
inline const Colour kLampLight{0.90, 0.62, 0.0};
inline const Colour kSoundLight{0.80, 0.47, 0.65};

/// Rays across and down a pixel.
inline constexpr int kRaysAcross = 2;

/// How a picture is drawn over its tones.
struct FrameCanvas {
    const stage::Stage& stage;
    const FrameSurfaces& surfaces;
    /// Rays between two lines of the hatch.
    int hatch_every = 14;
    /// How much of its ink a line of the hatch has, and how much paler what lies between is.
    double hatch_strength = 0.85;
    double hatch_pales = 0.45;
    /// On tones darker than this lines are pale.
    double pale_lines_below = 0.0;
};
/// Lines of the hatch as far apart as suits a picture.
int hatch_for(int side_px);

/// A picture of the shape of a frame, its larger side `side_px` long, black.
Pixels blank_frame(double aspect, int side_px);

/// Paints every ray in the colour of its surface, then hatch and lines, and takes the mean over
/// each pixel. The surfaces must be kRaysAcross times as many as the pixels each way. False when
/// stopped.
bool paint_frame(Pixels& pixels, const FrameCanvas& canvas,
                 const std::function<Colour(int column, int row)>& colour_of_ray,
                 const std::stop_token& stop);

} // namespace throwline::sheet
