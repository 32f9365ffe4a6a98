#pragma once

#include "checks/check.h"
#include "sheet/marks.h"
#include "sheet/plan_frame.h"

#include <memory>
#include <stop_token>

/// What a lens sees as a picture of lines and tones, for cards and sheets.
namespace throwline::sheet {

/// Larger side of a frame picture that fills a column, and of a small one beside a line of words.
inline constexpr int kFramePicture_px = 520;
inline constexpr int kSmallFramePicture_px = 240;

/// The frame of a shot: each surface in a tone by its direction and reflectance, dark lines where
/// one thing or surface ends and another begins, people and gear tinted in their hues, what is not
/// dressed hatched. Has the shape of the picture area, its larger side `side_px` long. Same input,
/// same bytes, whatever the number of threads. Nothing when the shot cannot be resolved.
std::shared_ptr<const Pixels> frame_picture(const checks::ShotScene& scene, int side_px);
/// The same of a stage with rays, for frames that follow a hand. Nothing when stopped.
std::shared_ptr<const Pixels> frame_picture_of(const stage::Stage& stage,
                                               const stage::ShotView& view, const plan::Shot& shot,
                                               int side_px, const std::stop_token& stop = {});

/// Share of the frame's width and height that the safe areas take (SMPTE ST 2046-1:2009; EBU R 95
/// has the same two boxes as margins of 3.5 and 5 %).
inline constexpr double kActionSafe = 0.93;
inline constexpr double kTitleSafe = 0.90;

/// The part of `box` that a picture takes when it fills it in its own shape, from the top left.
Box picture_box(const Box& box, const Pixels& pixels);
/// A frame picture with its edge; the action area is dashed and the title area dotted when asked
/// for.
void draw_frame_picture(Marks& marks, const Box& box, std::shared_ptr<const Pixels> pixels,
                        bool with_safe_areas);

} // namespace throwline::sheet
