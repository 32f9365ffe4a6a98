#pragma once

#include "base/quantity.h"
#include "base/working.h"

#include <optional>

namespace throwline::optics {

/// What decides how deep the picture is sharp.
struct FocusSetting {
    Length focal;
    /// The f-number, not the T-number: glass losses do not change the depth of field.
    double f_number = 2.8;
    /// Largest blur on the sensor that still passes as sharp.
    Length circle_of_confusion;
};

/// Limits of sharpness, from the front principal plane.
struct DepthOfField {
    Length hyperfocal;
    Length near_limit;
    /// Empty when everything behind the near limit is sharp.
    std::optional<Length> far_limit;
};

/// f^2 / (N c) + f. Symmetric thin lens; from memory: standard optics texts. All inputs > 0.
Length hyperfocal(const FocusSetting& setting);

/// near = u (H - f) / (H + u - 2 f), far = u (H - f) / (H - u), endless when u >= H. Empty when the
/// focus distance u is not beyond the focal length. Source as hyperfocal().
std::optional<DepthOfField> depth_of_field(const FocusSetting& setting, Length focus);

/// Diameter on the sensor of the blur of a point at `object`: f^2 |x - u| / (N x (u - f)). Equals
/// the circle of confusion at the near and far limit. Empty unless focus > focal and object > 0.
std::optional<Length> blur_diameter(const FocusSetting& setting, Length focus, Length object);

/// Whether a point at `object` lies within the limits (both ends included).
bool is_sharp(const FocusSetting& setting, Length focus, Length object);

/// Diagonal / 1500 (common practice, no source).
Length usual_circle_of_confusion(Length picture_diagonal);

Working hyperfocal_working(const FocusSetting& setting);
Working near_limit_working(const FocusSetting& setting, Length focus);
Working far_limit_working(const FocusSetting& setting, Length focus);

} // namespace throwline::optics
