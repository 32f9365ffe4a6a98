#include "plan/shutter_text.h"

#include "base/length_text.h"

#include <charconv>
#include <cmath>

namespace throwline::plan {

std::optional<double> exposure_of(std::string_view text) {
    constexpr std::string_view kOneOver = "1/";
    if (!text.starts_with(kOneOver)) {
        return std::nullopt;
    }
    const char* end = text.data() + text.size();
    double divisor = 0.0;
    const auto read = std::from_chars(text.data() + kOneOver.size(), end, divisor);
    const double time_s = 1.0 / divisor;
    if (read.ec != std::errc{} || read.ptr != end || !(divisor > 0.0) || !std::isfinite(divisor)
        || !std::isfinite(time_s)) {
        return std::nullopt;
    }
    return time_s;
}

std::optional<std::string> shutter_text(double exposure_s) {
    std::string text = "1/" + shortest(std::round(1.0 / exposure_s));
    return exposure_of(text) == exposure_s ? std::optional{text} : std::nullopt;
}

} // namespace throwline::plan
