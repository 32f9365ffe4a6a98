#include "card/own_item.h"

#include "base/length_text.h"
#include "base/utf8.h"
#include "card/read_values.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::card {

namespace {

using catalogue::OwnRow;
using catalogue::OwnValue;

constexpr LengthBounds kAnyLength{Length::metres(-1e6), Length::metres(1e6)};

tl::unexpected<Error> refused(const OwnField& field, std::string why) {
    return failure(std::move(why), {{}, fmt::format("/{}", field.key)});
}

std::string number_text(const OwnField& field, double value, UnitSystem units) {
    switch (field.kind) {
    case OwnKind::length:
        return shown(Length::metres(value), units);
    case OwnKind::percent:
        return shortest(std::round(value * 1e6) / 1e4);
    case OwnKind::millimetres:
    case OwnKind::degrees:
    case OwnKind::number:
    case OwnKind::text:
    case OwnKind::choice:
    case OwnKind::yes_no:
        break;
    }
    return shortest(value);
}

/// A number, with or without the unit that its field has in its words.
std::optional<double> bare_number(std::string text, std::string_view unit) {
    if (text.ends_with(unit)) {
        text = trimmed(text.substr(0, text.size() - unit.size()));
    }
    constexpr double kLargest = 1e12;
    std::string ignored;
    return read_number(text, -kLargest, kLargest, ignored);
}

/// The number of a key, in its unit.
std::optional<double> read(const OwnField& field, const std::string& text, UnitSystem units,
                           std::string& fault) {
    switch (field.kind) {
    case OwnKind::length: {
        const auto read = read_length(text, units, kAnyLength, fault);
        return read ? std::optional{read->m()} : std::nullopt;
    }
    case OwnKind::millimetres: {
        if (const auto number = bare_number(text, "mm")) {
            return number;
        }
        const auto read = read_length(text, units, kAnyLength, fault);
        return read ? std::optional{read->mm()} : std::nullopt;
    }
    case OwnKind::degrees: {
        const auto read = read_angle(text, fault);
        return read ? std::optional{read->deg()} : std::nullopt;
    }
    case OwnKind::percent:
    case OwnKind::number:
    case OwnKind::text:
    case OwnKind::choice:
    case OwnKind::yes_no:
        break;
    }
    const bool is_share = field.kind == OwnKind::percent;
    const auto number = bare_number(text, is_share ? "%" : "");
    if (!number) {
        fault = fmt::format("{} is no number", in_quotes(text));
        return std::nullopt;
    }
    return is_share ? *number / 100.0 : *number;
}

} // namespace

std::string shown_value(const OwnField& field, const OwnRow& row, UnitSystem units) {
    const OwnValue* value = row.find(field.key);
    if (field.kind == OwnKind::yes_no) {
        const bool* flag = value == nullptr ? nullptr : std::get_if<bool>(value);
        return (flag == nullptr ? field.usually : *flag) ? "yes" : "no";
    }
    if (value == nullptr) {
        return "";
    }
    const OwnValue* same = field.empty_as.empty() ? nullptr : row.find(field.empty_as);
    if (same != nullptr && *same == *value) {
        return "";
    }
    if (const double* number = std::get_if<double>(value)) {
        const bool is_unknown = field.empty_is_zero && *number == 0.0;
        return is_unknown ? "" : number_text(field, *number, units);
    }
    const std::string* text = std::get_if<std::string>(value);
    return text == nullptr ? "" : *text;
}

Result<void> put_value(OwnRow& row, const OwnField& field, const std::string& typed,
                       UnitSystem units) {
    const std::string text = trimmed(typed);
    if (field.kind == OwnKind::yes_no) {
        std::string fault;
        const auto flag = read_yes_no(text, fault);
        if (!flag) {
            return refused(field, fault);
        }
        row.set(field.key, *flag);
        return {};
    }
    if (text.empty()) {
        const OwnValue* same = field.empty_as.empty() ? nullptr : row.find(field.empty_as);
        if (same != nullptr) {
            row.set(field.key, OwnValue{*same});
        } else if (field.may_be_empty) {
            row.clear(field.key);
        } else if (field.empty_is_zero) {
            row.set(field.key, 0.0);
        } else {
            return refused(field, "nothing stands here yet");
        }
        return {};
    }
    if (field.kind == OwnKind::text || field.kind == OwnKind::choice) {
        row.set(field.key, text);
        return {};
    }
    // What stands there unchanged keeps the digits that it does not show.
    if (text == shown_value(field, row, units)) {
        return {};
    }
    std::string fault;
    const auto number = read(field, text, units, fault);
    if (!number) {
        return refused(field, fault);
    }
    // Without the digits that a conversion leaves.
    constexpr double kSteps = 1e6;
    row.set(field.key, std::round(*number * kSteps) / kSteps);
    return {};
}

} // namespace throwline::card
