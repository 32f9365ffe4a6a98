#pragma once

#include "base/result.h"
#include "catalogue/json_document.h"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace throwline::catalogue {

/// Numbers a key may take: from `low`, itself left out if `above_low`, to `high`.
struct Range {
    double low = 0.0;
    double high = 0.0;
    bool above_low = false;
};
constexpr Range above_zero_to(double high) {
    return {0.0, high, true};
}
constexpr Range zero_to(double high) {
    return {0.0, high, false};
}

/// Reading stops soon after so many errors: nobody reads further, and a hostile file could fill
/// memory.
inline constexpr std::size_t kMostTableErrors = 200;

/// Bytes of a name, a source or another text.
inline constexpr std::size_t kLongestTableText = 1000;

/// Takes the typed values out of one JSON object and notes everything that is wrong with it. A
/// value that is missing or wrong comes back as a harmless stand-in, so that reading goes on to the
/// next.
class RowReader {
  public:
    /// `default_source` stands in for a missing "source"; without one the key is required.
    RowReader(const JsonNode& row, std::string pointer, const std::string& file, Errors& errors,
              std::string_view default_source = {});

    /// Not empty, on one line, at most kLongestTableText.
    std::string text(std::string_view key);
    double number(std::string_view key, const Range& range);
    double number_or(std::string_view key, const Range& range, double otherwise);
    bool flag_or(std::string_view key, bool otherwise);
    std::string source();

    /// One of the named values; the first when it is none of them.
    template <class Value, std::size_t N>
    Value choice(std::string_view key,
                 const std::array<std::pair<std::string_view, Value>, N>& values) {
        std::vector<std::string> names;
        for (const auto& value : values) {
            names.emplace_back(value.first);
        }
        return values.at(chosen(key, names)).second;
    }

    bool has(std::string_view key) const { return row_.find(key) != nullptr; }
    /// Notes `message` at a key unless `holds`. Says nothing in a row that has other faults,
    /// because stand-ins would be compared.
    void require(bool holds, std::string_view key, std::string message);
    /// Notes every key that was never asked for, with the nearest that was, as long as there are
    /// fewer errors than kMostTableErrors.
    void refuse_unknown_keys();
    bool sound() const { return errors_.size() == errors_before_; }

  private:
    const JsonNode* value(std::string_view key, JsonKind kind, bool required);
    std::size_t chosen(std::string_view key, const std::vector<std::string>& names);
    void note(std::string message, std::string_view key, const JsonNode& at);

    const JsonNode& row_;
    std::string pointer_;
    const std::string& file_;
    Errors& errors_;
    std::size_t errors_before_;
    std::string_view default_source_;
    std::vector<std::string> asked_;
};

} // namespace throwline::catalogue
