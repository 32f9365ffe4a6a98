#include "base/nearest_name.h"
#include "optics/shot_size.h"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>
#include <iterator>
#include <vector>

namespace throwline::optics {

namespace {

struct SizeName {
    ShotSize size;
    const char* name;
};

// The first entry of a size is its name, the second its abbreviation; the rest are what crews say
// too.
constexpr SizeName kNames[] = {
    {ShotSize::extreme_close_up, "extreme close-up"},
    {ShotSize::extreme_close_up, "ECU"},
    {ShotSize::extreme_close_up, "XCU"},
    {ShotSize::big_close_up, "big close-up"},
    {ShotSize::big_close_up, "BCU"},
    {ShotSize::big_close_up, "very close-up"},
    {ShotSize::big_close_up, "VCU"},
    {ShotSize::big_close_up, "tight close-up"},
    {ShotSize::close_up, "close-up"},
    {ShotSize::close_up, "CU"},
    {ShotSize::close_up, "close"},
    {ShotSize::medium_close_up, "medium close-up"},
    {ShotSize::medium_close_up, "MCU"},
    {ShotSize::medium_close_up, "loose close-up"},
    {ShotSize::medium, "medium"},
    {ShotSize::medium, "MS"},
    {ShotSize::medium, "mid"},
    {ShotSize::medium, "waist"},
    {ShotSize::medium_long, "medium long"},
    {ShotSize::medium_long, "MLS"},
    {ShotSize::medium_long, "cowboy"},
    {ShotSize::medium_long, "american"},
    {ShotSize::medium_long, "thigh"},
    {ShotSize::medium_long_knee, "medium long knee"},
    {ShotSize::medium_long_knee, "MLK"},
    {ShotSize::medium_long_knee, "knee"},
    {ShotSize::medium_long_knee, "three-quarter"},
    {ShotSize::medium_long_knee, "medium full"},
    {ShotSize::medium_long_knee, "MFS"},
    {ShotSize::full, "full"},
    {ShotSize::full, "FS"},
    {ShotSize::full, "long"},
    {ShotSize::full, "LS"},
    {ShotSize::full, "full length"},
    {ShotSize::wide, "wide"},
    {ShotSize::wide, "WS"},
    {ShotSize::wide, "very long"},
    {ShotSize::wide, "VLS"},
    {ShotSize::very_wide, "very wide"},
    {ShotSize::very_wide, "VWS"},
    {ShotSize::very_wide, "extreme wide"},
    {ShotSize::very_wide, "EWS"},
    {ShotSize::very_wide, "extreme long"},
    {ShotSize::very_wide, "ELS"},
    {ShotSize::very_wide, "XLS"},
};

/// Lower-case letters and digits only, without a "shot" at the end: "Close Up shot" is "closeup".
std::string plain(std::string_view text) {
    std::string kept;
    for (const char letter : text) {
        const auto code = static_cast<unsigned char>(letter);
        if (code < 128 && std::isalnum(code) != 0) {
            kept += static_cast<char>(std::tolower(code));
        }
    }
    constexpr std::string_view kShot = "shot";
    if (kept.size() > kShot.size() && kept.ends_with(kShot)) {
        kept.erase(kept.size() - kShot.size());
    }
    return kept;
}

} // namespace

std::string name_of(ShotSize size) {
    return std::string{kShotSizeNames[static_cast<std::size_t>(size)].name};
}

std::string abbreviation_of(ShotSize size) {
    const auto* named = std::find_if(std::begin(kNames), std::end(kNames),
                                     [&](const SizeName& entry) { return entry.size == size; });
    return std::next(named)->name;
}

Result<ShotSize> parse_shot_size(std::string_view text) {
    const std::string wanted = plain(text);
    std::vector<std::string> known;
    for (const SizeName& entry : kNames) {
        if (plain(entry.name) == wanted) {
            return entry.size;
        }
        known.emplace_back(entry.name);
    }
    const std::string near = nearest_name(text, known);
    return failure(fmt::format("\"{}\" is no shot size{}", text,
                               near.empty() ? std::string{"; try close-up, medium, full or wide"}
                                            : fmt::format("; nearest is \"{}\"", near)));
}

} // namespace throwline::optics
