#include "ui/floor/typed_point.h"

#include "base/length_text.h"

namespace throwline::ui {

namespace {

/// Where a direction begins in "2.4 m 30°" or "2.4 m at 30 deg": after the last space before a text
/// that reads as an angle with its unit; npos when there is none.
std::size_t direction_at(std::string_view text) {
    if (text.find("°") == std::string_view::npos && text.find("deg") == std::string_view::npos) {
        return std::string_view::npos;
    }
    for (std::size_t i = text.find(' '); i != std::string_view::npos; i = text.find(' ', i + 1)) {
        if (parse_angle(text.substr(i + 1))) {
            return i;
        }
    }
    return std::string_view::npos;
}

/// "2 m, -1 m" or "2 m; -1 m": a comma within a number is followed by no space.
std::size_t second_length_at(std::string_view text) {
    const std::size_t semicolon = text.find(';');
    return semicolon != std::string_view::npos ? semicolon : text.find(", ");
}

Vec2 direction_of(const Vec2& from, const Vec2& towards) {
    const Vec2 away = towards - from;
    return away.isZero() ? Vec2{Vec2::UnitX()} : Vec2{away.normalized()};
}

} // namespace

Result<Vec2> typed_point(std::string_view text, const Vec2& from, const Vec2& towards,
                         UnitSystem units) {
    const LengthReading reading{units, true};
    const std::size_t comma = second_length_at(text);
    if (comma != std::string_view::npos) {
        const Result<Length> across = parse_length(text.substr(0, comma), reading);
        const Result<Length> up = parse_length(text.substr(comma + 1), reading);
        if (!across || !up) {
            return tl::unexpected{across ? up.error() : across.error()};
        }
        return Vec2{from + Vec2{across->m(), up->m()}};
    }
    const std::size_t direction = direction_at(text);
    const Result<Length> length = parse_length(text.substr(0, direction), reading);
    if (!length) {
        return tl::unexpected{length.error()};
    }
    if (direction == std::string_view::npos) {
        return Vec2{from + direction_of(from, towards) * length->m()};
    }
    return Vec2{from + unit_at(parse_angle(text.substr(direction + 1))->rad()) * length->m()};
}

} // namespace throwline::ui
