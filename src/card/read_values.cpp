#include "card/read_values.h"

#include "base/nearest_name.h"
#include "base/utf8.h"
#include "base/words.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace throwline::card {

namespace {

/// More than this are too many to be told in one sentence.
constexpr std::size_t kFewChoices = 6;

std::string lower(std::string text) {
    for (char& c : text) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return text;
}

std::string no_such(const std::string& text, const std::vector<std::string>& choices) {
    std::string fault = fmt::format("there is no {}", in_quotes(trimmed(text)));
    if (const std::string nearest = nearest_name(trimmed(text), choices); !nearest.empty()) {
        return fault + fmt::format("; did you mean {}?", nearest);
    }
    if (choices.empty()) {
        return fault;
    }
    return choices.size() <= kFewChoices
               ? fault + fmt::format("; there is {}", listed(choices))
               : fault + fmt::format("; choose one of {}, such as {}", choices.size(), choices[0]);
}

} // namespace

std::string trimmed(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t\n");
    return first == std::string::npos
               ? std::string{}
               : text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

bool says(const std::string& text, const std::string& words) {
    return lower(trimmed(text)) == lower(words);
}

std::vector<std::string> parts_between(const std::string& text, char separator) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t end = std::min(text.find(separator, from), text.size());
        if (std::string part = trimmed(text.substr(from, end - from)); !part.empty()) {
            parts.push_back(std::move(part));
        }
        from = end + 1;
    }
    return parts;
}

std::string joined(const std::vector<std::string>& names, const std::string& between) {
    std::string text;
    for (const std::string& name : names) {
        text += (text.empty() ? "" : between) + name;
    }
    return text;
}

std::string hint_of(const LengthBounds& bounds, UnitSystem units) {
    return fmt::format("from {} to {}", shown(bounds.least, units), shown(bounds.most, units));
}

std::optional<Length> read_length(const std::string& text, UnitSystem units,
                                  const LengthBounds& bounds, std::string& fault) {
    const Result<Length> read = parse_length(text, {.bare_unit = units});
    if (!read) {
        fault = read.error().message;
        return std::nullopt;
    }
    if (*read < bounds.least || *read > bounds.most) {
        fault = fmt::format("{} will not do; give a length {}", shown(*read, units),
                            hint_of(bounds, units));
        return std::nullopt;
    }
    return *read;
}

std::optional<double> read_number(const std::string& text, double least, double most,
                                  std::string& fault) {
    std::string number = trimmed(text);
    std::replace(number.begin(), number.end(), ',', '.');
    double value = 0.0;
    const auto [end, wrong] = std::from_chars(number.data(), number.data() + number.size(), value);
    const bool whole_text = end == number.data() + number.size();
    if (wrong != std::errc{} || !whole_text || !std::isfinite(value)) {
        fault = fmt::format("{} is no number; give one from {} to {}", in_quotes(trimmed(text)),
                            shortest(least), shortest(most));
        return std::nullopt;
    }
    if (value < least || value > most) {
        fault = fmt::format("{} will not do; give a number from {} to {}", shortest(value),
                            shortest(least), shortest(most));
        return std::nullopt;
    }
    return value;
}

std::optional<Angle> read_angle(const std::string& text, std::string& fault) {
    const Result<Angle> read = parse_angle(text);
    if (!read) {
        fault = read.error().message;
        return std::nullopt;
    }
    return *read;
}

std::optional<bool> read_yes_no(const std::string& text, std::string& fault) {
    const std::string word = lower(trimmed(text));
    if (word == "yes" || word == "y" || word == "true" || word == "on") {
        return true;
    }
    if (word == "no" || word == "n" || word == "false" || word == "off") {
        return false;
    }
    fault = fmt::format("say yes or no, not {}", in_quotes(trimmed(text)));
    return std::nullopt;
}

std::optional<std::string>
read_choice(const std::string& text, const std::vector<std::string>& choices, std::string& fault) {
    for (const std::string& choice : choices) {
        if (says(text, choice)) {
            return choice;
        }
    }
    fault = no_such(text, choices);
    return std::nullopt;
}

std::optional<std::vector<std::string>>
read_names(const std::string& text, const std::vector<std::string>& choices, std::string& fault) {
    std::vector<std::string> names;
    // A name may hold a comma itself.
    for (const std::string& choice : choices) {
        if (says(text, choice)) {
            return std::vector{choice};
        }
    }
    for (const std::string& part : parts_between(text, ',')) {
        const auto name = read_choice(part, choices, fault);
        if (!name) {
            return std::nullopt;
        }
        if (std::find(names.begin(), names.end(), *name) == names.end()) {
            names.push_back(*name);
        }
    }
    return names;
}

} // namespace throwline::card
