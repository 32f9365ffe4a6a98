#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace throwline::plan {

/// The time that "1/50" stands for, in seconds; nothing for anything but one over a number above 0.
std::optional<double> exposure_of(std::string_view text);
/// "1/50" when that reads back to exactly the same time; nothing otherwise.
std::optional<std::string> shutter_text(double exposure_s);

} // namespace throwline::plan
