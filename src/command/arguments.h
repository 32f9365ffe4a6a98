#pragma once

#include "base/length_text.h"
#include "base/quantity.h"
#include "base/result.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace throwline::command {

/// What was typed behind a command's name, split into options and operands but not yet understood.
class Arguments {
  public:
    using Options = std::map<std::string, std::vector<std::string>, std::less<>>;

    Arguments() = default;
    /// A switch that was typed has an empty list.
    Arguments(Options options, std::vector<std::string> operands);

    bool has(std::string_view option) const;
    /// The first value of an option; empty when it was not typed.
    std::optional<std::string> value(std::string_view option) const;
    /// All values of an option that may be repeated, in order.
    std::vector<std::string> values(std::string_view option) const;
    const std::vector<std::string>& operands() const { return operands_; }

  private:
    Options options_;
    std::vector<std::string> operands_;
};

/// A range of numbers, both ends allowed.
struct NumberRange {
    double least;
    double most;
};

/// Understands the values of options. What is missing or cannot be read is noted as an error and
/// read as some valid value, so that one call of the program tells everything that is wrong; look
/// at errors() before using what was read.
class OptionReader {
  public:
    explicit OptionReader(const Arguments& arguments) : arguments_{arguments} {}

    /// Lengths name their unit. `positive` refuses 0 and less.
    Length length(std::string_view option);
    Length positive_length(std::string_view option);
    std::optional<Length> optional_length(std::string_view option);
    std::optional<Length> optional_positive_length(std::string_view option);
    Angle angle(std::string_view option, Angle least, Angle most);
    double number(std::string_view option, NumberRange range);
    std::optional<double> optional_number(std::string_view option, NumberRange range);
    std::string text(std::string_view option);
    /// Metric unless --system says otherwise.
    UnitSystem system();

    void fail(std::string message);
    const Errors& errors() const { return errors_; }

  private:
    const Arguments& arguments_;
    Errors errors_;
};

/// An error about the text behind an option, with its place when that is known:
/// --focal: cannot read "5x" as a length ... (at character 2)
std::string option_message(std::string_view option, const Error& error);

} // namespace throwline::command
