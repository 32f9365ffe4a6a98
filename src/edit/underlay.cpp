#include "edit/underlay.h"

#include "edit/on_paper.h"
#include "plan/picture_placing.h"

#include <algorithm>

namespace throwline::edit {

namespace {

/// Of a picture where nothing says how long it may be.
constexpr double kUsualSide_m = 10.0;
/// Points nearer than this are one.
constexpr double kSame_m = 0.001;

constexpr const char* kNone = "there is no scanned plan; lay one beneath the floor first";

struct Span {
    Vec2 middle = Vec2::Zero();
    double longer_side_m = kUsualSide_m;
};

Span span_of(const Polygon& outline) {
    if (outline.size() < 3) {
        return {};
    }
    Vec2 low = outline.front();
    Vec2 high = outline.front();
    for (const Vec2& corner : outline) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    return {(low + high) / 2.0, (high - low).maxCoeff()};
}

/// The plan with its picture held by other points; these may be as far apart as they like on the
/// picture, but not one.
Result<Step> held(const Context& context, const char* name, const plan::Underlay& underlay) {
    if (!is_on_paper(underlay.at_a) || !is_on_paper(underlay.at_b)) {
        return failure(std::string{kOffPaper});
    }
    Step step{name, context.plan, {}};
    step.plan.underlay = underlay;
    return step;
}

} // namespace

Result<Step> underlay_laid(const Context& context, const std::string& file, int width_px,
                           int height_px) {
    const Span span = span_of(context.plan.room.outline);
    const double m_per_px = span.longer_side_m / std::max(width_px, height_px);
    const Vec2 half_px = Vec2{width_px, height_px} / 2.0;
    plan::Underlay underlay;
    underlay.file = file;
    // Along the foot of the picture, so that the Card's figures can be followed.
    underlay.pixel_a = {0.0, static_cast<double>(height_px)};
    underlay.pixel_b = {static_cast<double>(width_px), static_cast<double>(height_px)};
    underlay.at_a = span.middle - half_px * m_per_px;
    underlay.at_b = underlay.at_a + Vec2{width_px * m_per_px, 0.0};
    return held(context, "Lay a scanned plan", underlay);
}

Result<Step> underlay_placed(const Context& context, const Vec2& from, const Vec2& to,
                             const Vec2& true_to) {
    if (!context.plan.underlay) {
        return failure(kNone);
    }
    if ((to - from).norm() < kSame_m || (true_to - from).norm() < kSame_m) {
        return failure("point to two places of the scanned plan that are apart");
    }
    plan::Underlay underlay = *context.plan.underlay;
    const plan::PicturePlacing before{underlay};
    underlay.pixel_a = before.pixel(from);
    underlay.pixel_b = before.pixel(to);
    underlay.at_a = from;
    underlay.at_b = true_to;
    return held(context, "Place the scanned plan", underlay);
}

Result<Step> underlay_moved(const Context& context, const Vec2& by) {
    if (!context.plan.underlay) {
        return failure(kNone);
    }
    plan::Underlay underlay = *context.plan.underlay;
    underlay.at_a += by;
    underlay.at_b += by;
    return held(context, "Move the scanned plan", underlay);
}

Result<Step> underlay_removed(const Context& context) {
    if (!context.plan.underlay) {
        return failure(kNone);
    }
    Step step{"Take the scanned plan away", context.plan, {}};
    step.plan.underlay.reset();
    return step;
}

} // namespace throwline::edit
