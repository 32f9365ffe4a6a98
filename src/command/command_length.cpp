#include "command/arguments.h"
#include "command/commands.h"

#include <array>
#include <cmath>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace throwline::command {

namespace {

/// What lengths are rounded to when they are shown.
struct Rounding {
    InchFraction fraction;
    Length metric = Length::millimetres(1);
};

constexpr Option kRound{"--round", "", "STEP", "such as 1/32in or 5mm; 1/16in and 1mm unless said"};
constexpr Option kBare{"--bare", "", "SYSTEM", "what a number without unit is: metric or imperial"};

/// How far below one millimetre a step may be: a tenth is finer than any tape or pencil.
constexpr Length kFinestStep = Length::millimetres(0.1);

std::optional<InchFraction> inch_fraction(Length step) {
    for (const int denominator : std::array{1, 2, 4, 8, 16, 32, 64}) {
        if (step == Length::inches(1.0 / denominator)) {
            return InchFraction{denominator};
        }
    }
    return std::nullopt;
}

Rounding rounding_from(OptionReader& options) {
    Rounding rounding;
    const auto step = options.optional_positive_length("--round");
    if (!step) {
        return rounding;
    }
    if (const auto fraction = inch_fraction(*step)) {
        rounding.fraction = *fraction;
    } else if (*step < kFinestStep) {
        options.fail("--round must be a fraction of an inch down to 1/64in, or 0.1mm and more");
    } else {
        rounding.metric = *step;
    }
    return rounding;
}

std::optional<UnitSystem> bare_unit(const Arguments& arguments, OptionReader& options) {
    const auto value = arguments.value("--bare");
    if (!value) {
        return std::nullopt;
    }
    if (*value != "metric" && *value != "imperial") {
        options.fail(fmt::format("--bare \"{}\" is unknown; it is metric or imperial", *value));
    }
    return *value == "imperial" ? UnitSystem::imperial : UnitSystem::metric;
}

std::string metric_text(Length length, Length step) {
    const Length rounded = step * std::round(length / step);
    const int decimals = step < Length::millimetres(1) ? 4 : 3;
    return metres_text(rounded, decimals);
}

Answer answer_for(const std::string& text, Length length, const Rounding& rounding) {
    const std::string imperial = feet_inches(length, rounding.fraction);
    const std::string metric = metric_text(length, rounding.metric);
    Answer answer;
    answer.text = fmt::format("{} = {}\n", imperial, metric);
    answer.json = {
        {"text", text}, {"metres", length.m()}, {"imperial", imperial}, {"metric", metric}};
    answer.workings = {{"feet and inches = metres / 0.3048, rounded to the nearest step",
                        {{"", "length", exact_metres(length)},
                         {"", "step", fmt::format("1/{} in", rounding.fraction.denominator)}},
                        imperial,
                        "international yard and pound agreement, 1959: 1 in = 25.4 mm exactly"}};
    return answer;
}

Checked<Answer> answer(const Arguments& arguments, std::istream&) {
    OptionReader options{arguments};
    const Rounding rounding = rounding_from(options);
    LengthReading reading;
    reading.bare_unit = bare_unit(arguments, options);
    // Without quotes a shell hands over the words of one length one by one.
    const std::string text = fmt::format("{}", fmt::join(arguments.operands(), " "));
    const Result<Length> length = parse_length(text, reading);
    if (!length) {
        options.fail(option_message("length", length.error()));
    }
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    return answer_for(text, *length, rounding);
}

} // namespace

Command length_command() {
    constexpr int kMostWords = 8;
    return {.name = "length",
            .summary = "reads a length in any form and shows it both ways",
            .operands = "TEXT ...",
            .operands_min = 1,
            .operands_max = kMostWords,
            .options = {kRound, kBare, kJson, kWorking},
            .example = "throwline length \"6' 2 7/16\\\"\" --round 1/32in",
            .answer = answer};
}

} // namespace throwline::command
