#include "sheet/scale_name.h"

#include "base/length_text.h"
#include "sheet/unknown_name.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace throwline::sheet {

namespace {

using catalogue::DrawingScale;

/// Ratios nearer than this share are one scale written in two ways.
constexpr double kSameRatio = 1e-9;

std::string_view trimmed(std::string_view text) {
    const std::size_t from = text.find_first_not_of(' ');
    return from == std::string_view::npos
               ? std::string_view{}
               : text.substr(from, text.find_last_not_of(' ') - from + 1);
}

std::optional<double> number_of(std::string_view text) {
    double number = 0.0;
    const char* end = text.data() + text.size();
    const auto [next, problem] = std::from_chars(text.data(), end, number);
    return problem == std::errc{} && next == end && std::isfinite(number) && number > 0.0
               ? std::optional{number}
               : std::nullopt;
}

DrawingScale own(std::string name, UnitSystem system, double ratio) {
    return {std::move(name), system, ratio, false, "scale asked for"};
}

/// "1:37"
std::optional<DrawingScale> ratio_of_numbers(std::string_view typed) {
    const std::size_t colon = typed.find(':');
    if (colon == std::string_view::npos) {
        return std::nullopt;
    }
    const auto drawn = number_of(trimmed(typed.substr(0, colon)));
    const auto real = number_of(trimmed(typed.substr(colon + 1)));
    if (!drawn || !real) {
        return std::nullopt;
    }
    return own(fmt::format("{}:{}", shortest(*drawn), shortest(*real)), UnitSystem::metric,
               *real / *drawn);
}

/// "5/8 in = 1 ft"
std::optional<DrawingScale> ratio_of_lengths(std::string_view typed) {
    const std::size_t equals = typed.find('=');
    if (equals == std::string_view::npos) {
        return std::nullopt;
    }
    const std::string_view drawn_text = trimmed(typed.substr(0, equals));
    const std::string_view real_text = trimmed(typed.substr(equals + 1));
    const auto drawn = parse_length(drawn_text);
    const auto real = parse_length(real_text);
    if (!drawn || !real || !(drawn->m() > 0.0 && real->m() > 0.0)) {
        return std::nullopt;
    }
    const bool in_feet = real_text.find_first_of("'’f") != std::string_view::npos
                         || real_text.find("in") != std::string_view::npos
                         || real_text.ends_with('"');
    return own(fmt::format("{} = {}", drawn_text, real_text),
               in_feet ? UnitSystem::imperial : UnitSystem::metric, real->m() / drawn->m());
}

} // namespace

Result<DrawingScale> scale_named(std::string_view typed, const catalogue::Catalogue& catalogue) {
    for (const DrawingScale& scale : catalogue.scales) {
        if (scale.name == typed) {
            return scale;
        }
    }
    std::optional<DrawingScale> asked = ratio_of_numbers(typed);
    if (!asked) {
        asked = ratio_of_lengths(typed);
    }
    if (!asked) {
        const auto unknown =
            no_such("scale", typed,
                    names_of(catalogue.scales, [](const auto& scale) { return scale.name; }));
        return failure(fmt::format("{}; your own is written as 1:37 or 5/8 in = 1 ft",
                                   unknown.value().message));
    }
    if (!(asked->ratio >= kLeastOwnRatio && asked->ratio <= kMostOwnRatio)) {
        return failure(fmt::format("a scale of \"{}\" is out of bounds; 10:1 to 1:100000 can be "
                                   "drawn",
                                   typed));
    }
    for (const DrawingScale& scale : catalogue.scales) {
        if (scale.system == asked->system
            && std::abs(scale.ratio / asked->ratio - 1.0) < kSameRatio) {
            return scale;
        }
    }
    return *asked;
}

} // namespace throwline::sheet
