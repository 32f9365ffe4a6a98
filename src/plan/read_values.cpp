#include "plan/read_values.h"

#include "base/length_text.h"
#include "base/utf8.h"
#include "plan/json_text.h"

#include <algorithm>
#include <cmath>

namespace throwline::plan {

namespace {

constexpr std::size_t kLongestText = 20'000;

constexpr std::string_view kLengthWords =
    "a length (a number of metres, or text such as \"3.5 m\" or \"10ft 6in\")";
constexpr std::string_view kAngleWords =
    "an angle (a number of degrees, or text such as \"12deg\")";

template <class Range, class Quantity>
bool is_within(const Range& range, const Quantity& quantity) {
    return quantity <= range.most
           && (range.above_least ? quantity > range.least : quantity >= range.least);
}

std::string allowed(const LengthRange& range) {
    return fmt::format("{}{} to {}", range.above_least ? "more than " : "",
                       exact_metres(range.least), exact_metres(range.most));
}

std::string allowed(const NumberRange& range) {
    return fmt::format("{}{} to {}", range.above_least ? "more than " : "", shortest(range.least),
                       shortest(range.most));
}

/// Text with a unit; a bare number only when it is zero, which is the same in every unit.
Result<Length> length_of(const std::string& text) {
    Result<Length> length = parse_length(text);
    if (length) {
        return length;
    }
    const Result<Length> bare =
        parse_length(text, {.bare_unit = UnitSystem::metric, .decimal_comma = true});
    return bare && *bare == Length{} ? bare : length;
}

std::optional<Length> any_length(Reading& reading, const Value& value) {
    if (value.is(catalogue::JsonKind::number)) {
        return Length::metres(value.node->number);
    }
    if (!value.is(catalogue::JsonKind::string)) {
        reading.expected(value, kLengthWords);
        return std::nullopt;
    }
    const Result<Length> length = length_of(value.node->text);
    if (!length) {
        reading.wrong(value, fmt::format("expected a length such as \"3.5 m\" or \"10ft 6in\", "
                                         "found {}: {}",
                                         in_quotes(value.node->text), length.error().message));
        return std::nullopt;
    }
    return *length;
}

std::optional<Angle> any_angle(Reading& reading, const Value& value) {
    if (value.is(catalogue::JsonKind::number)) {
        return Angle::degrees(value.node->number);
    }
    if (!value.is(catalogue::JsonKind::string)) {
        reading.expected(value, kAngleWords);
        return std::nullopt;
    }
    const Result<Angle> angle = parse_angle(value.node->text);
    if (!angle) {
        reading.wrong(value, fmt::format("expected an angle such as \"12deg\", found {}: {}",
                                         in_quotes(value.node->text), angle.error().message));
        return std::nullopt;
    }
    return *angle;
}

/// The lengths of a point; whether there were as many as there must be.
bool read_coordinates(Reading& reading, const Value& value, std::string_view what,
                      std::span<double> into_m) {
    if (!value.is(catalogue::JsonKind::array) || value.node->items.size() != into_m.size()) {
        reading.expected(value, what);
        return false;
    }
    for (std::size_t i = 0; i < into_m.size(); ++i) {
        Length coordinate;
        read_value(reading, value.item(i), coordinate, kAnywhere);
        into_m[i] = coordinate.m();
    }
    return true;
}

bool is_control(char c) {
    return static_cast<unsigned char>(c) < 0x20U || c == '\x7f';
}

} // namespace

std::string fault_of(Length length, const LengthRange& range) {
    return is_within(range, length) ? std::string{}
                                    : fmt::format("{} is out of range; allowed is {}",
                                                  exact_metres(length), allowed(range));
}

std::string fault_of(Angle angle, const AngleRange& range) {
    return angle >= range.least && angle <= range.most
               ? std::string{}
               : fmt::format("{} is out of range; allowed is {} to {} degrees", exact_angle(angle),
                             shortest(range.least.deg()), shortest(range.most.deg()));
}

std::string_view fault_of_name(const std::string& name) {
    if (name.empty()) {
        return "a name must not be empty";
    }
    if (name.size() > kLongestName) {
        return "a name must not be longer than 200 bytes";
    }
    if (name.front() == ' ' || name.back() == ' ') {
        return "a name must not begin or end with a space";
    }
    if (std::any_of(name.begin(), name.end(), is_control)) {
        return "a name must not hold line ends, tabs or other control characters";
    }
    return {};
}

std::string fault_of_text(const std::string& text) {
    if (text.size() > kLongestText) {
        return fmt::format("a text must not be longer than {} bytes", kLongestText);
    }
    const auto is_forbidden = [](char c) { return is_control(c) && c != '\n'; };
    if (std::any_of(text.begin(), text.end(), is_forbidden)) {
        return "a text must not hold tabs or control characters other than \\n";
    }
    return {};
}

void read_value(Reading& reading, const Value& value, bool& into) {
    if (!value.is(catalogue::JsonKind::boolean)) {
        reading.expected(value, "true or false");
        return;
    }
    into = value.node->boolean;
}

void read_value(Reading& reading, const Value& value, double& into, const NumberRange& range) {
    if (!value.is(catalogue::JsonKind::number)) {
        reading.expected(value, fmt::format("a number, {}", allowed(range)));
        return;
    }
    if (!is_within(range, value.node->number)) {
        reading.wrong(value, fmt::format("{} is out of range; allowed is {}",
                                         described(*value.node), allowed(range)));
        return;
    }
    into = value.node->number;
}

void read_value(Reading& reading, const Value& value, int& into, const WholeRange& range) {
    const double number = value.node->number;
    const bool whole = value.is(catalogue::JsonKind::number) && std::floor(number) == number;
    if (!whole || number < range.least || number > range.most) {
        reading.expected(value,
                         fmt::format("a whole number from {} to {}", range.least, range.most));
        return;
    }
    into = static_cast<int>(number);
}

void read_value(Reading& reading, const Value& value, Length& into, const LengthRange& range) {
    const std::optional<Length> length = any_length(reading, value);
    if (!length) {
        return;
    }
    if (std::string fault = fault_of(*length, range); !fault.empty()) {
        reading.wrong(value, std::move(fault));
        return;
    }
    into = *length;
}

void read_value(Reading& reading, const Value& value, Angle& into, const AngleRange& range) {
    const std::optional<Angle> angle = any_angle(reading, value);
    if (!angle) {
        return;
    }
    if (*angle < range.least || *angle > range.most) {
        reading.wrong(value, fmt::format("{} is out of range; allowed is {} to {} degrees",
                                         described(*value.node), shortest(range.least.deg()),
                                         shortest(range.most.deg())));
        return;
    }
    into = *angle;
}

void read_value(Reading& reading, const Value& value, Vec2& into) {
    std::array<double, 2> at_m{};
    if (read_coordinates(reading, value, "a point [x, y]", at_m)) {
        into = {at_m[0], at_m[1]};
    }
}

void read_value(Reading& reading, const Value& value, Vec3& into) {
    std::array<double, 3> at_m{};
    if (read_coordinates(reading, value, "a place [x, y, z]", at_m)) {
        into = {at_m[0], at_m[1], at_m[2]};
    }
}

void read_value(Reading& reading, const Value& value, std::string& into) {
    if (!value.is(catalogue::JsonKind::string)) {
        reading.expected(value, "text");
        return;
    }
    if (std::string fault = fault_of_text(value.node->text); !fault.empty()) {
        reading.wrong(value, std::move(fault));
        return;
    }
    into = value.node->text;
}

void read_value(Reading&, const Value& value, Extra& into) {
    into.json = json_text(*value.node);
}

bool read_name(Reading& reading, const Value& value, std::string& into) {
    if (!value.is(catalogue::JsonKind::string)) {
        reading.expected(value, "a name");
        return false;
    }
    const std::string_view fault = fault_of_name(value.node->text);
    if (!fault.empty()) {
        reading.wrong(value, std::string{fault});
        return false;
    }
    into = value.node->text;
    return true;
}

bool reads_as_angle(std::string_view text) {
    constexpr std::array<std::string_view, 7> kUnits{"deg",    "degree",  "degrees", "rad",
                                                     "radian", "radians", "\u00b0"};
    const bool has_unit = std::any_of(kUnits.begin(), kUnits.end(),
                                      [&](std::string_view unit) { return text.ends_with(unit); });
    return has_unit && parse_angle(text).has_value();
}

int read_choice(Reading& reading, const Value& value, std::string_view kind,
                std::span<const std::string> names) {
    if (!value.is(catalogue::JsonKind::string)) {
        reading.expected(value, fmt::format("one of {} ({})", listed(names), kind));
        return -1;
    }
    const auto found = std::find(names.begin(), names.end(), value.node->text);
    if (found == names.end()) {
        reading.wrong(value,
                      fmt::format("{} is no {}{}; allowed are {}", in_quotes(value.node->text),
                                  kind, nearest_hint(value.node->text, names), listed(names)));
        return -1;
    }
    return static_cast<int>(found - names.begin());
}

bool is_list(Reading& reading, const Value& value) {
    if (!value.is(catalogue::JsonKind::array)) {
        reading.expected(value, "a list [...]");
        return false;
    }
    if (value.node->items.size() > kMostItems) {
        reading.wrong(value, fmt::format("{} items are too many; allowed are {}",
                                         value.node->items.size(), kMostItems));
        return false;
    }
    return true;
}

} // namespace throwline::plan
