#include "optics/focus.h"

#include "base/length_text.h"
#include "optics/words.h"

#include <cmath>

namespace throwline::optics {

namespace {

const char* const kThinLens = "symmetric thin lens; from memory: standard optics texts";

std::vector<WorkingTerm> terms_of(const FocusSetting& setting) {
    return {{"f", "focal length", mm_text(setting.focal)},
            {"N", "f-number", shortest(setting.f_number)},
            {"c", "circle of confusion", mm_text(setting.circle_of_confusion)}};
}

std::vector<WorkingTerm> terms_of(const FocusSetting& setting, Length focus) {
    std::vector<WorkingTerm> terms = terms_of(setting);
    terms.push_back({"u", "focus distance", distance_text(focus)});
    terms.push_back({"H", "hyperfocal distance", distance_text(hyperfocal(setting))});
    return terms;
}

const char* const kNoPicture = "none: the focus is not beyond the focal length";

} // namespace

Length hyperfocal(const FocusSetting& setting) {
    const double f_m = setting.focal.m();
    const double c_m = setting.circle_of_confusion.m();
    return Length::metres(f_m * f_m / (setting.f_number * c_m) + f_m);
}

std::optional<DepthOfField> depth_of_field(const FocusSetting& setting, Length focus) {
    if (focus <= setting.focal) {
        return std::nullopt;
    }
    const Length hyper = hyperfocal(setting);
    const double f_m = setting.focal.m();
    const double h_m = hyper.m();
    const double u_m = focus.m();
    DepthOfField depth{hyper, Length::metres(u_m * (h_m - f_m) / (h_m + u_m - 2.0 * f_m)), {}};
    if (focus < hyper) {
        depth.far_limit = Length::metres(u_m * (h_m - f_m) / (h_m - u_m));
    }
    return depth;
}

std::optional<Length> blur_diameter(const FocusSetting& setting, Length focus, Length object) {
    if (focus <= setting.focal || object.m() <= 0.0) {
        return std::nullopt;
    }
    const double f_m = setting.focal.m();
    const double u_m = focus.m();
    const double x_m = object.m();
    return Length::metres(f_m * f_m * std::abs(x_m - u_m) / (setting.f_number * x_m * (u_m - f_m)));
}

bool is_sharp(const FocusSetting& setting, Length focus, Length object) {
    const std::optional<DepthOfField> depth = depth_of_field(setting, focus);
    return depth && object >= depth->near_limit
           && (!depth->far_limit || object <= *depth->far_limit);
}

Length usual_circle_of_confusion(Length picture_diagonal) {
    return picture_diagonal / 1500.0;
}

Working hyperfocal_working(const FocusSetting& setting) {
    return {"H = f^2 / (N c) + f", terms_of(setting), distance_text(hyperfocal(setting)),
            kThinLens};
}

Working near_limit_working(const FocusSetting& setting, Length focus) {
    const std::optional<DepthOfField> depth = depth_of_field(setting, focus);
    return {"near = u (H - f) / (H + u - 2 f)", terms_of(setting, focus),
            depth ? distance_text(depth->near_limit) : kNoPicture, kThinLens};
}

Working far_limit_working(const FocusSetting& setting, Length focus) {
    const std::optional<DepthOfField> depth = depth_of_field(setting, focus);
    std::string result = kNoPicture;
    if (depth) {
        result = depth->far_limit ? distance_text(*depth->far_limit)
                                  : "endless: the focus is at or beyond the hyperfocal distance";
    }
    return {"far = u (H - f) / (H - u)", terms_of(setting, focus), result, kThinLens};
}

} // namespace throwline::optics
