#include "command/arguments.h"

#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace throwline::command {

Arguments::Arguments(Options options, std::vector<std::string> operands)
    : options_{std::move(options)}, operands_{std::move(operands)} {}

bool Arguments::has(std::string_view option) const {
    return options_.find(option) != options_.end();
}

std::optional<std::string> Arguments::value(std::string_view option) const {
    const auto found = options_.find(option);
    if (found == options_.end() || found->second.empty()) {
        return std::nullopt;
    }
    return found->second.front();
}

std::vector<std::string> Arguments::values(std::string_view option) const {
    const auto found = options_.find(option);
    return found == options_.end() ? std::vector<std::string>{} : found->second;
}

std::string option_message(std::string_view option, const Error& error) {
    const int column = error.place.column;
    return fmt::format("{}: {}{}", option, error.message,
                       column > 0 ? fmt::format(" (at character {})", column) : "");
}

void OptionReader::fail(std::string message) {
    errors_.push_back(Error{std::move(message), {}});
}

std::string OptionReader::text(std::string_view option) {
    if (const auto value = arguments_.value(option)) {
        return *value;
    }
    fail(fmt::format("{} is missing", option));
    return {};
}

std::optional<Length> OptionReader::optional_length(std::string_view option) {
    const auto value = arguments_.value(option);
    if (!value) {
        return std::nullopt;
    }
    const Result<Length> length = parse_length(*value);
    if (!length) {
        fail(option_message(option, length.error()));
        return Length::metres(1);
    }
    return *length;
}

Length OptionReader::length(std::string_view option) {
    if (const auto length = optional_length(option)) {
        return *length;
    }
    fail(fmt::format("{} is missing; give a length such as 3.5m or 11ft 6in", option));
    return Length::metres(1);
}

std::optional<Length> OptionReader::optional_positive_length(std::string_view option) {
    const auto length = optional_length(option);
    if (length && *length <= Length{}) {
        fail(fmt::format("{} must be more than 0", option));
        return Length::metres(1);
    }
    return length;
}

Length OptionReader::positive_length(std::string_view option) {
    const Length found = length(option);
    if (found <= Length{}) {
        fail(fmt::format("{} must be more than 0", option));
        return Length::metres(1);
    }
    return found;
}

Angle OptionReader::angle(std::string_view option, Angle least, Angle most) {
    const auto value = arguments_.value(option);
    if (!value) {
        fail(fmt::format("{} is missing; give an angle such as 20deg", option));
        return least;
    }
    const Result<Angle> angle = parse_angle(*value);
    if (!angle) {
        fail(option_message(option, angle.error()));
        return least;
    }
    if (*angle < least || *angle > most) {
        fail(fmt::format("{} \"{}\" must lie between {} and {} degrees", option, *value,
                         shortest(least.deg()), shortest(most.deg())));
        return least;
    }
    return *angle;
}

std::optional<double> OptionReader::optional_number(std::string_view option, NumberRange range) {
    const auto value = arguments_.value(option);
    if (!value) {
        return std::nullopt;
    }
    double number = 0.0;
    const char* const end = value->data() + value->size();
    const auto [stopped, error] = std::from_chars(value->data(), end, number);
    if (error != std::errc{} || stopped != end || !std::isfinite(number)) {
        fail(fmt::format("{} \"{}\" is not a number", option, *value));
        return range.least;
    }
    if (number < range.least || number > range.most) {
        fail(fmt::format("{} \"{}\" must lie between {} and {}", option, *value,
                         shortest(range.least), shortest(range.most)));
        return range.least;
    }
    return number;
}

double OptionReader::number(std::string_view option, NumberRange range) {
    if (const auto number = optional_number(option, range)) {
        return *number;
    }
    fail(fmt::format("{} is missing; give a number", option));
    return range.least;
}

UnitSystem OptionReader::system() {
    const auto value = arguments_.value("--system");
    if (!value || *value == "metric") {
        return UnitSystem::metric;
    }
    if (*value != "imperial") {
        fail(fmt::format("--system \"{}\" is unknown; it is metric or imperial", *value));
    }
    return UnitSystem::imperial;
}

} // namespace throwline::command
