#include "edit/typed_place.h"

#include "base/length_text.h"
#include "edit/on_paper.h"
#include "plan/isometry.h"

#include <cmath>
#include <numbers>

namespace throwline::edit {

namespace {

constexpr double kDegree_rad = std::numbers::pi / 180.0;
/// Directions that a hand means when it is about there, and how nearly it must be.
constexpr double kMeant_rad = 15.0 * kDegree_rad;
constexpr double kNearly_rad = 3.0 * kDegree_rad;
/// A pointer nearer than this points nowhere; a line shorter is none.
constexpr double kNowhere_m = 0.001;

/// Two texts where one was parted, without what parted them.
struct Parted {
    std::string_view before;
    std::string_view after;
};

std::optional<Parted> parted_at(std::string_view text, std::string_view word) {
    const std::size_t at = text.find(word);
    if (at == std::string_view::npos) {
        return std::nullopt;
    }
    return Parted{text.substr(0, at), text.substr(at + word.size())};
}

/// "2 m, 1.5 m", "2; 1.5".
std::optional<Parted> two_lengths(std::string_view text) {
    const std::optional<Parted> parted = parted_at(text, ";");
    return parted ? parted : parted_at(text, ", ");
}

bool names_an_angle(std::string_view text) {
    return text.find("°") != std::string_view::npos || text.find("deg") != std::string_view::npos
           || text.find("rad") != std::string_view::npos;
}

/// "3.2 at 45", "3.2 m 45°": length and direction. "3 m 20" is a length alone.
std::optional<Parted> length_and_direction(std::string_view text) {
    if (const std::optional<Parted> parted = parted_at(text, " at ")) {
        return parted;
    }
    if (!names_an_angle(text)) {
        return std::nullopt;
    }
    for (std::size_t i = text.find(' '); i != std::string_view::npos; i = text.find(' ', i + 1)) {
        if (parse_angle(text.substr(i + 1))) {
            return Parted{text.substr(0, i), text.substr(i + 1)};
        }
    }
    return std::nullopt;
}

/// The direction that the pointer means.
Angle meant(const Vec2& towards) {
    const double pointed_rad = angle_of(towards);
    const double even_rad = std::round(pointed_rad / kMeant_rad) * kMeant_rad;
    // A hair more, so that 3 degrees themselves are within 3 degrees.
    const bool nearly = std::abs(pointed_rad - even_rad) <= kNearly_rad * (1.0 + 1e-9);
    return Angle::radians(nearly ? even_rad : pointed_rad);
}

Result<Vec2> offset_across_and_up(const Parted& parted, const LengthReading& reading) {
    const Result<Length> across = parse_length(parted.before, reading);
    if (!across) {
        return tl::unexpected{across.error()};
    }
    return parse_length(parted.after, reading).map([&](Length up) {
        return Vec2{across->m(), up.m()};
    });
}

Result<Vec2> offset_along(std::string_view text, Result<Angle> direction,
                          const LengthReading& reading) {
    const Result<Length> length = parse_length(text, reading);
    if (!length) {
        return tl::unexpected{length.error()};
    }
    if (length->m() <= 0.0) {
        return failure("a length is above 0; point the other way instead");
    }
    return direction.map([&](Angle along) { return Vec2{unit_at(along.rad()) * length->m()}; });
}

Result<Angle> direction_of(const Vec2& towards) {
    if (towards.norm() < kNowhere_m) {
        return failure("point to where the line goes, or type a direction: 2 m at 90");
    }
    return meant(towards);
}

Result<Vec2> offset_typed(std::string_view text, const Vec2& towards,
                          const LengthReading& reading) {
    if (const auto lengths = two_lengths(text)) {
        return offset_across_and_up(*lengths, reading);
    }
    if (const auto parted = length_and_direction(text)) {
        return offset_along(parted->before, parse_angle(parted->after), reading);
    }
    return offset_along(text, direction_of(towards), reading);
}

} // namespace

Result<Vec2> typed_place(std::string_view text, const Vec2& from, const Vec2& pointer,
                         UnitSystem units) {
    const LengthReading reading{.bare_unit = units};
    return offset_typed(text, pointer - from, reading)
        .and_then([&](const Vec2& offset) -> Result<Vec2> {
            const Vec2 place = plan::tidied(from + offset);
            if (offset.norm() < kNowhere_m) {
                return failure("that is where the line begins");
            }
            if (!is_on_paper(place)) {
                return failure(std::string{kOffPaper});
            }
            return place;
        });
}

} // namespace throwline::edit
