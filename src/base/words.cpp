#include "base/words.h"

#include "base/length_text.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <fmt/format.h>

namespace throwline {

namespace {

bool says(std::string_view name, std::string_view kind) {
    const auto same = [](char a, char b) {
        return std::tolower(static_cast<unsigned char>(a))
               == std::tolower(static_cast<unsigned char>(b));
    };
    const auto found = std::search(name.begin(), name.end(), kind.begin(), kind.end(), same);
    return found != name.end();
}

} // namespace

std::string with_kind(std::string_view kind, std::string_view name) {
    if (kind.empty() || says(name, kind)) {
        return std::string{name};
    }
    return std::string{kind} + " " + std::string{name};
}

std::string counted(int count, std::string_view noun) {
    return std::to_string(count) + " " + std::string{noun} + (count == 1 ? "" : "s");
}

std::string listed(std::span<const std::string> parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) {
            text += i + 1 == parts.size() ? " and " : ", ";
        }
        text += parts[i];
    }
    return text;
}

std::string capitalised(std::string text) {
    if (!text.empty()) {
        text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    }
    return text;
}

std::string share_text(double share) {
    const double percent = share * 100.0;
    if (percent > 0.0 && percent < 0.01) {
        return "under 0.01 %";
    }
    // The limits are those at which rounding reaches the next size up.
    const int decimals = percent >= 9.95 || percent == 0.0 ? 0 : percent >= 0.995 ? 1 : 2;
    return fixed(percent, decimals) + " %";
}

std::string focal_text(Length focal) {
    const double rounded_mm = std::round(focal.mm() * 10.0) / 10.0;
    return fixed(rounded_mm, rounded_mm == std::round(rounded_mm) ? 0 : 1) + " mm";
}

std::string stop_text(double stop) {
    const double rounded = std::round(stop * 10.0) / 10.0;
    return fmt::format("T{}", fixed(rounded, rounded == std::round(rounded) ? 0 : 1));
}

} // namespace throwline
