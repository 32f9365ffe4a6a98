#include "catalogue/row_reader.h"

#include "base/nearest_name.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace throwline::catalogue {

RowReader::RowReader(const JsonNode& row, std::string pointer, const std::string& file,
                     Errors& errors, std::string_view default_source)
    : row_{row}, pointer_{std::move(pointer)}, file_{file}, errors_{errors},
      errors_before_{errors.size()}, default_source_{default_source} {}

void RowReader::note(std::string message, std::string_view key, const JsonNode& at) {
    std::string pointer = key.empty() ? pointer_ : pointer_to(pointer_, key);
    errors_.push_back({std::move(message), {file_, std::move(pointer), at.line, at.column}});
}

const JsonNode* RowReader::value(std::string_view key, JsonKind kind, bool required) {
    asked_.emplace_back(key);
    const JsonNode* node = row_.find(key);
    if (node == nullptr) {
        if (required) {
            note(fmt::format("the key \"{}\" is missing", key), "", row_);
        }
        return nullptr;
    }
    if (!node->is(kind)) {
        note(fmt::format("expected {}, found {}", name_of(kind), name_of(node->kind)), key, *node);
        return nullptr;
    }
    return node;
}

std::string RowReader::text(std::string_view key) {
    const JsonNode* node = value(key, JsonKind::string, true);
    if (node == nullptr) {
        return {};
    }
    if (node->text.find_first_not_of(" \t\r\n") == std::string::npos) {
        note("this may not be empty", key, *node);
    } else if (node->text.size() > kLongestTableText) {
        note(fmt::format("this may not be longer than {} bytes", kLongestTableText), key, *node);
    } else if (on_one_line(node->text) != node->text) {
        note("this may not hold line ends, tabs or other control characters", key, *node);
    }
    return node->text;
}

std::string RowReader::source() {
    if (!default_source_.empty() && !has("source")) {
        asked_.emplace_back("source");
        return std::string{default_source_};
    }
    return text("source");
}

double RowReader::number(std::string_view key, const Range& range) {
    const JsonNode* node = value(key, JsonKind::number, true);
    if (node == nullptr) {
        return range.high;
    }
    const double number = node->number;
    const bool low_enough = number <= range.high;
    const bool high_enough = range.above_low ? number > range.low : number >= range.low;
    if (!low_enough || !high_enough) {
        note(fmt::format("{} is out of range: {} {}, at most {}", number,
                         range.above_low ? "more than" : "at least", range.low, range.high),
             key, *node);
        return range.high;
    }
    return number;
}

double RowReader::number_or(std::string_view key, const Range& range, double otherwise) {
    if (has(key)) {
        return number(key, range);
    }
    asked_.emplace_back(key);
    return otherwise;
}

bool RowReader::flag_or(std::string_view key, bool otherwise) {
    const JsonNode* node = value(key, JsonKind::boolean, false);
    return node == nullptr ? otherwise : node->boolean;
}

std::size_t RowReader::chosen(std::string_view key, const std::vector<std::string>& names) {
    const JsonNode* node = value(key, JsonKind::string, true);
    if (node == nullptr) {
        return 0;
    }
    const auto found = std::find(names.begin(), names.end(), node->text);
    if (found != names.end()) {
        return static_cast<std::size_t>(found - names.begin());
    }
    const std::string nearest = nearest_name(node->text, names);
    note(nearest.empty()
             ? fmt::format("{} is none of: {}", in_quotes(node->text), fmt::join(names, ", "))
             : fmt::format("{} is not known; did you mean \"{}\"?", in_quotes(node->text), nearest),
         key, *node);
    return 0;
}

void RowReader::require(bool holds, std::string_view key, std::string message) {
    if (sound() && !holds) {
        const JsonNode* node = row_.find(key);
        note(std::move(message), node == nullptr ? "" : key, node == nullptr ? row_ : *node);
    }
}

void RowReader::refuse_unknown_keys() {
    for (const JsonMember& member : row_.members) {
        if (errors_.size() > kMostTableErrors) {
            return;
        }
        if (std::find(asked_.begin(), asked_.end(), member.key) != asked_.end()) {
            continue;
        }
        const std::string nearest = nearest_name(member.key, asked_);
        std::string message = fmt::format("the key {} is not known", in_quotes(member.key));
        if (!nearest.empty()) {
            message += fmt::format("; did you mean \"{}\"?", nearest);
        }
        errors_.push_back({std::move(message),
                           {file_, pointer_to(pointer_, member.key), member.line, member.column}});
    }
}

} // namespace throwline::catalogue
