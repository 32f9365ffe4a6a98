#pragma once

#include "sheet/drawing.h"
#include "stage/shot_view.h"

#include <memory>
#include <stop_token>

/// What a lens sees as the lamps light it.
namespace throwline::sheet {

/// A shot on its stage, which must have rays. `needed_lx` (> 0) is the level that its stop asks for
/// (checks::needed_level_lx).
struct LitFrame {
    const stage::Stage& stage;
    const stage::ShotView& view;
    const plan::Shot& shot;
    double needed_lx = 1000.0;
};

/// The frame in the light of the lamps: on each surface the level as it is turned, shadows and all,
/// plus what the room throws back (bounced_level_lx), times its reflectance, exposed so that a grey
/// of 18 % under the level asked for comes out as middle grey. Bright faces of burning lamps are
/// white. People and gear are tinted lightly; what is not dressed is hatched and lines are drawn as
/// in frame_picture(), pale ones where it is dark. Daylight is left out. Same input, same bytes,
/// whatever the number of threads. Nothing when stopped.
std::shared_ptr<const Pixels> lit_picture(const LitFrame& frame, int side_px,
                                          const std::stop_token& stop = {});

/// Whether any lamp burns: without one a lit frame shows nothing.
bool has_light(const stage::Stage& stage);

/// How light (0..1) a luminance is shown, as a share of that of a white surface under the level
/// asked for: the curve of IEC 61966-2-1 (sRGB), its upper end bent so that twice as much and more
/// still differ. 0.18 gives 0.46.
double shown_tone(double luminance_share);

} // namespace throwline::sheet
