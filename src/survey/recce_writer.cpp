#include "survey/recce_text.h"

#include "base/length_text.h"
#include "plan/names.h"
#include "survey/recce_cursor.h"
#include "survey/recce_quotes.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::survey {

namespace {

/// Metres with more digits than this are no tape's reading; feet and inches may say it shorter.
constexpr std::size_t kLongestMetres = 9;

std::string names_text(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) {
        text += fmt::format(" {}", recce_name(name));
    }
    return text;
}

std::string length_text(Length length) {
    std::string metres = exact_metres(length);
    if (metres.size() <= kLongestMetres) {
        return metres;
    }
    std::string feet = feet_inches(length, {.denominator = 64});
    const Result<Length> read = parse_length(feet);
    return read && *read == length ? feet : metres;
}

std::string millimetres_text(Length length) {
    std::string millimetres = fmt::format("{}mm", shortest(length.mm()));
    const Result<Length> read = parse_length(millimetres);
    return read && *read == length ? millimetres : length_text(length);
}

std::string sized(std::string_view word, Length length) {
    return length == Length{} ? std::string{} : fmt::format(" {} {}", word, length_text(length));
}

std::string stretch_text(const plan::Stretch& stretch) {
    const bool is_thing = stretch.kind == plan::StretchKind::thing;
    std::string text{is_thing ? std::string_view{} : plan::name_of(stretch.kind)};
    if (!stretch.name.empty()) {
        text += fmt::format("{}{}", text.empty() ? "" : " ", recce_quoted(stretch.name));
    }
    return fmt::format("{} {}{}{}{}", text, length_text(stretch.width),
                       sized("deep", stretch.depth), sized(is_thing ? "up" : "sill", stretch.sill),
                       sized("high", stretch.height));
}

std::string chain_text(const plan::Chain& chain) {
    std::string text = fmt::format("along {}-{}:", recce_name(chain.from), recce_name(chain.to));
    for (std::size_t i = 0; i < chain.stretches.size(); ++i) {
        text += fmt::format("{}{}", i == 0 ? " " : ", ", stretch_text(chain.stretches[i]));
    }
    return text + (chain.to_the_end ? "\n" : ", rest\n");
}

std::string thing_text(const plan::FloorThing& thing) {
    const bool is_round = thing.diameter != Length{};
    return fmt::format("{} {}:{}{}{}\n", is_round ? "round" : "solid", recce_quoted(thing.name),
                       names_text(thing.points), sized("across", thing.diameter),
                       sized("high", thing.height));
}

/// Whether a note reads back as it is without quotes.
bool is_plain(const std::string& text) {
    const auto is_ascii = [](char c) { return c > ' ' && c <= '~' && c != '"'; };
    return !text.empty() && is_ascii(text.front()) && is_ascii(text.back())
           && text.find('\n') == std::string::npos;
}

std::string note_text(const plan::SiteNote& note) {
    return fmt::format("note {}: {}\n", plan::name_of(note.kind),
                       is_plain(note.text) ? note.text : recce_quoted(note.text));
}

std::string corners_text(const plan::Survey& survey) {
    const plan::Survey usual;
    std::string text = fmt::format("corners{}{}\n", names_text(survey.corners),
                                   survey.clockwise ? " clockwise" : "");
    if (!survey.square_corners.empty()) {
        text += fmt::format("square{}\n", names_text(survey.square_corners));
    }
    if (survey.squareness != usual.squareness) {
        text += fmt::format("squareness {}\n", exact_angle(survey.squareness));
    }
    if (survey.precision != usual.precision
        || survey.precision_per_metre_mm != usual.precision_per_metre_mm) {
        text += fmt::format("tape {} + {}mm/m\n", millimetres_text(survey.precision),
                            shortest(survey.precision_per_metre_mm));
    }
    if (survey.first_wall_bearing) {
        text +=
            fmt::format("bearing {}-{} {}\n", recce_name(survey.corners.at(0)),
                        recce_name(survey.corners.at(1)), exact_angle(*survey.first_wall_bearing));
    }
    return text;
}

std::string reading_text(const plan::TapeReading& reading) {
    return fmt::format("{}-{} {}{}\n", recce_name(reading.from), recce_name(reading.to),
                       length_text(reading.length),
                       reading.note.empty() ? std::string{}
                                            : fmt::format(" {}", recce_quoted(reading.note)));
}

std::string outlet_text(const plan::OutletReading& outlet) {
    return fmt::format("outlet {} along {}-{} {}{}\n", recce_quoted(outlet.circuit),
                       recce_name(outlet.from), recce_name(outlet.to), length_text(outlet.along),
                       sized("up", outlet.height));
}

} // namespace

std::string recce_text(const plan::Survey& survey) {
    std::string text = corners_text(survey);
    for (const plan::FloorPoint& point : survey.points) {
        text +=
            fmt::format("point {}{}\n", recce_name(point.name), point.outside ? " outside" : "");
    }
    for (const plan::TapeReading& reading : survey.readings) {
        text += reading_text(reading);
    }
    for (const plan::Chain& chain : survey.chains) {
        text += chain_text(chain);
    }
    for (const plan::FloorThing& thing : survey.things) {
        text += thing_text(thing);
    }
    for (const plan::HeightReading& height : survey.heights) {
        text += fmt::format("height {}{}\n",
                            height.at.empty() ? "" : fmt::format("at {} ", recce_name(height.at)),
                            length_text(height.height));
    }
    for (const plan::OutletReading& outlet : survey.outlets) {
        text += outlet_text(outlet);
    }
    for (const plan::SiteNote& note : survey.notes) {
        text += note_text(note);
    }
    return text;
}

} // namespace throwline::survey
