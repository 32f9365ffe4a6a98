#include "card/points_text.h"

#include "base/utf8.h"
#include "card/read_values.h"

#include <fmt/format.h>

namespace throwline::card {

namespace {

/// At commas with a space behind them; where there is none, at every comma.
std::vector<std::string> place_parts(const std::string& text) {
    if (text.find(", ") == std::string::npos) {
        return parts_between(text, ',');
    }
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t end = std::min(text.find(", ", from), text.size());
        parts.push_back(trimmed(text.substr(from, end - from)));
        from = end + 2;
    }
    return parts;
}

} // namespace

std::string text_of(const Vec2& place, UnitSystem units) {
    return fmt::format("{}, {}", shown(Length::metres(place.x()), units),
                       shown(Length::metres(place.y()), units));
}

std::string text_of(const Vec3& place, UnitSystem units) {
    return fmt::format("{}, {}", text_of(Vec2{place.head<2>()}, units),
                       shown(Length::metres(place.z()), units));
}

std::string text_of(const std::vector<Vec2>& points, UnitSystem units) {
    std::vector<std::string> texts;
    for (const Vec2& point : points) {
        texts.push_back(text_of(point, units));
    }
    return joined(texts, "; ");
}

std::size_t count_of_parts(const std::string& text) {
    return place_parts(text).size();
}

std::optional<std::vector<Length>> read_place(const std::string& text, std::size_t wanted,
                                              UnitSystem units, std::string& fault) {
    const std::vector<std::string> parts = place_parts(text);
    if (parts.size() != wanted) {
        fault = fmt::format("{} is no place; give {}", in_quotes(trimmed(text)),
                            wanted == 2 ? "how far across and how far up the page"
                                        : "how far across, how far up the page and how high");
        return std::nullopt;
    }
    std::vector<Length> lengths;
    for (const std::string& part : parts) {
        const auto length = read_length(part, units, kPlaces, fault);
        if (!length) {
            return std::nullopt;
        }
        lengths.push_back(*length);
    }
    return lengths;
}

std::optional<Vec2> read_point(const std::string& text, UnitSystem units, std::string& fault) {
    const auto lengths = read_place(text, 2, units, fault);
    return lengths ? std::optional{Vec2{(*lengths)[0].m(), (*lengths)[1].m()}} : std::nullopt;
}

std::optional<std::vector<Vec2>> read_points(const std::string& text, UnitSystem units,
                                             std::string& fault) {
    std::vector<Vec2> points;
    for (const std::string& part : parts_between(text, ';')) {
        const auto point = read_point(part, units, fault);
        if (!point) {
            return std::nullopt;
        }
        points.push_back(*point);
    }
    return points;
}

} // namespace throwline::card
