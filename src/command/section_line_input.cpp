#include "command/section_line_input.h"

#include "base/length_text.h"

#include <fmt/format.h>

namespace throwline::command {

namespace {

constexpr std::string_view kBetween = " to ";

/// "1m,2m": a comma parts the two, so that none can stand for a decimal point.
Result<Vec2> place_in(std::string_view text) {
    const std::size_t comma = text.find(',');
    if (comma == std::string_view::npos || text.find(',', comma + 1) != std::string_view::npos) {
        return failure(
            fmt::format("\"{}\" is not a place; write two lengths, such as 1.5m,2m", text));
    }
    LengthReading reading;
    reading.decimal_comma = false;
    const auto x = parse_length(text.substr(0, comma), reading);
    if (!x) {
        return tl::unexpected{x.error()};
    }
    const auto y = parse_length(text.substr(comma + 1), reading);
    if (!y) {
        return tl::unexpected{y.error()};
    }
    return Vec2{x->m(), y->m()};
}

/// A shot may have any name; two places have a comma in each.
bool is_two_places(std::string_view text, std::size_t between) {
    return between != std::string_view::npos
           && text.substr(0, between).find(',') != std::string_view::npos
           && text.substr(between).find(',') != std::string_view::npos;
}

} // namespace

void read_section_line(const Arguments& arguments, OptionReader& options,
                       sheet::SectionLine& section) {
    section.depth = options.optional_positive_length("--depth");
    const std::string along = arguments.value("--along").value_or("");
    const std::size_t between = along.find(kBetween);
    if (!is_two_places(along, between)) {
        section.shot = {along};
        return;
    }
    const std::string_view text{along};
    const auto from = place_in(text.substr(0, between));
    const auto to = place_in(text.substr(between + kBetween.size()));
    for (const auto* place : {&from, &to}) {
        if (!*place) {
            options.fail(fmt::format("--along: {}", place->error().message));
        }
    }
    if (from && to) {
        section.ends = {*from, *to};
    }
}

} // namespace throwline::command
