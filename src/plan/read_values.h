#pragma once

#include "plan/reading.h"

#include <array>
#include <fmt/format.h>
#include <type_traits>

/// Single values of a plan file. Every `read_value` fills `into`, or leaves it and reports why.
namespace throwline::plan {

/// What is allowed for a length. `above_least` leaves `least` itself out.
struct LengthRange {
    Length least;
    Length most;
    bool above_least = false;
};
/// Nothing that is planned is further than this from anything else.
inline constexpr Length kFarthest = Length::metres(1000);
inline constexpr LengthRange kAnywhere{-kFarthest, kFarthest};
inline constexpr LengthRange kSize{Length{}, kFarthest, true};
inline constexpr LengthRange kNotNegative{Length{}, kFarthest};

struct NumberRange {
    double least = 0.0;
    double most = 0.0;
    bool above_least = false;
};
inline constexpr NumberRange kShare{0.0, 1.0};
/// Loads in kilograms; 0 when not known.
inline constexpr NumberRange kLoad_kg{0.0, 1'000'000.0};

/// Whole numbers between and with both ends.
struct WholeRange {
    int least = 0;
    int most = 0;
};

struct AngleRange {
    Angle least;
    Angle most;
};
/// A hundred turns either way: more is a slip of the keys.
inline constexpr AngleRange kAnyTurn{Angle::degrees(-36'000), Angle::degrees(36'000)};

/// Bytes of a name.
inline constexpr std::size_t kLongestName = 200;

/// What is wrong with a value, as a sentence; empty when nothing is.
std::string fault_of(Length length, const LengthRange& range);
std::string fault_of(Angle angle, const AngleRange& range);
std::string_view fault_of_name(const std::string& name);
std::string fault_of_text(const std::string& text);

void read_value(Reading& reading, const Value& value, bool& into);
void read_value(Reading& reading, const Value& value, double& into, const NumberRange& range);
void read_value(Reading& reading, const Value& value, int& into, const WholeRange& range);
/// A number of metres, or text with its unit.
void read_value(Reading& reading, const Value& value, Length& into, const LengthRange& range);
/// A number of degrees, or text with its unit.
void read_value(Reading& reading, const Value& value, Angle& into, const AngleRange& range);
/// [x, y], each a length.
void read_value(Reading& reading, const Value& value, Vec2& into);
/// [x, y, z], each a length.
void read_value(Reading& reading, const Value& value, Vec3& into);
/// Free text; line ends are its only control characters.
void read_value(Reading& reading, const Value& value, std::string& into);
/// Any JSON, kept as text.
void read_value(Reading& reading, const Value& value, Extra& into);

/// A name: one line, not empty, no space at either end.
bool read_name(Reading& reading, const Value& value, std::string& into);
/// Whether a text reads as an angle with its unit, such as "90deg"; a bare number does not.
bool reads_as_angle(std::string_view text);
/// One of a few words; -1 after reporting what it was instead.
int read_choice(Reading& reading, const Value& value, std::string_view kind,
                std::span<const std::string> names);
/// Whether a value is an array of no more than kMostItems; reports when it is not.
bool is_list(Reading& reading, const Value& value);

template <class Thing>
void read_value(Reading& reading, const Value& value, Id<Thing>& into) {
    read_name(reading, value, into.name);
}

template <class Choice>
    requires std::is_enum_v<Choice>
void read_value(Reading& reading, const Value& value, Choice& into, std::string_view kind) {
    std::vector<std::string> names;
    for (const auto& entry : names_of(into)) {
        names.emplace_back(entry.name);
    }
    const int chosen = read_choice(reading, value, kind, names);
    if (chosen >= 0) {
        into = names_of(into)[static_cast<std::size_t>(chosen)].value;
    }
}

template <class Part, class... Rule>
void read_value(Reading& reading, const Value& value, std::optional<Part>& into,
                const Rule&... rule) {
    Part part{};
    read_value(reading, value, part, rule...);
    into = std::move(part);
}

template <class Part, class... Rule>
void read_value(Reading& reading, const Value& value, std::vector<Part>& into,
                const Rule&... rule) {
    if (!is_list(reading, value)) {
        return;
    }
    for (std::size_t i = 0; i < value.node->items.size(); ++i) {
        Part part{};
        read_value(reading, value.item(i), part, rule...);
        into.push_back(std::move(part));
    }
}

} // namespace throwline::plan
