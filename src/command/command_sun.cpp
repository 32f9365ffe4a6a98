#include "command/arguments.h"
#include "command/commands.h"
#include "sun/position.h"

#include <fmt/format.h>

namespace throwline::command {

namespace {

constexpr std::string_view kCaution =
    "caution: never look at the sun or aim a lens or finder at it; it burns eyes, sensors and sets";

constexpr NumberRange kPressures_mbar{500.0, 1100.0};
constexpr NumberRange kTemperatures_c{-60.0, 60.0};

struct SunQuestion {
    sun::EarthPlace place;
    sun::UtcTime time;
    sun::Atmosphere air;
};

SunQuestion question_from(OptionReader& options) {
    constexpr Angle kPole = Angle::degrees(90);
    constexpr Angle kDateLine = Angle::degrees(180);
    SunQuestion question;
    question.place.latitude = options.angle("--latitude", -kPole, kPole);
    question.place.longitude = options.angle("--longitude", -kDateLine, kDateLine);
    if (const std::string text = options.text("--time"); !text.empty()) {
        if (const auto time = sun::parse_time(text)) {
            question.time = *time;
        } else {
            options.fail(option_message("--time", time.error()));
        }
    }
    question.air.pressure_mbar =
        options.optional_number("--pressure", kPressures_mbar).value_or(question.air.pressure_mbar);
    question.air.temperature_c = options.optional_number("--temperature", kTemperatures_c)
                                     .value_or(question.air.temperature_c);
    return question;
}

std::string text_of(const sun::SunPosition& position) {
    const bool up = position.elevation > Angle{};
    return fmt::format("azimuth {}, clockwise from true north\n"
                       "elevation {}, {}\n{}",
                       degrees_text(position.azimuth, 2), degrees_text(position.elevation, 2),
                       up ? "with refraction" : "so the sun is not up",
                       up ? std::string{kCaution} + "\n" : "");
}

Checked<Answer> answer(const Arguments& arguments, std::istream&) {
    OptionReader options{arguments};
    const SunQuestion question = question_from(options);
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    const auto position = sun::sun_position(question.place, question.time, question.air);
    return Answer{
        .text = text_of(position),
        .json = {{"azimuth_deg", position.azimuth.deg()},
                 {"elevation_deg", position.elevation.deg()},
                 {"airless_elevation_deg", position.airless_elevation.deg()}},
        .workings = {sun::sun_position_working(question.place, question.time, question.air)},
        .code = ExitCode::clean};
}

} // namespace

Command sun_command() {
    return {.name = "sun",
            .summary = "where the sun stands at a place and time",
            .operands = "",
            .operands_min = 0,
            .operands_max = 0,
            .options = {{"--latitude", "", "ANGLE", "north positive"},
                        {"--longitude", "", "ANGLE", "east positive"},
                        {"--time", "", "TIME", "with its offset: 2026-03-14T09:30:00-07:00"},
                        {"--pressure", "", "MBAR", "of the air; 1010 unless said"},
                        {"--temperature", "", "CELSIUS", "of the air; 10 unless said"},
                        kJson,
                        kWorking},
            .example = "throwline sun --latitude 39.742476 --longitude -105.1786 "
                       "--time 2003-10-17T12:30:30-07:00",
            .answer = answer};
}

} // namespace throwline::command
