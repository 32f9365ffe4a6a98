#include "command/arguments.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "optics/angle_of_view.h"
#include "optics/coverage.h"
#include "optics/focus.h"
#include "optics/shot_size.h"

#include <charconv>
#include <fmt/format.h>

namespace throwline::command {

namespace {

/// Middle of the 5-10 % of the frame's height that are usually left above the crown (common
/// practice, no source).
constexpr double kUsualHeadroom = 0.08;
/// Wider than any f-number that is sold.
constexpr NumberRange kStops{0.5, 128.0};
constexpr NumberRange kSqueezes{1.0, 3.0};

struct LensQuestion {
    optics::PictureArea area;
    Length focal;
    std::optional<Length> distance;
    std::optional<double> stop;
    Length circle_of_confusion;
    std::optional<Length> stature;
    UnitSystem system = UnitSystem::metric;
};

struct LensFigures {
    optics::AngleOfView view;
    std::optional<optics::Coverage> frame;
    std::optional<Length> hyperfocal;
    std::optional<optics::DepthOfField> sharp;
    std::optional<optics::PersonInFrame> person;
};

/// "36x24" in millimetres; nothing when the text has another form.
std::optional<optics::PictureArea> typed_area(std::string_view text) {
    const auto cross = text.find('x');
    if (cross == std::string_view::npos) {
        return std::nullopt;
    }
    const auto side = [](std::string_view digits) -> std::optional<Length> {
        double value_mm = 0.0;
        const char* const end = digits.data() + digits.size();
        const auto [stopped, error] = std::from_chars(digits.data(), end, value_mm);
        constexpr double kLargestSide_mm = 1000.0;
        if (error != std::errc{} || stopped != end
            || !(value_mm > 0 && value_mm < kLargestSide_mm)) {
            return std::nullopt;
        }
        return Length::millimetres(value_mm);
    };
    const auto width = side(text.substr(0, cross));
    const auto height = side(text.substr(cross + 1));
    return width && height ? std::optional{optics::PictureArea{*width, *height, 1.0}}
                           : std::nullopt;
}

/// Sets the picture area and the circle of confusion that goes with it.
void read_sensor(const Arguments& arguments, OptionReader& options, LensQuestion& question) {
    const std::string text = options.text("--sensor");
    if (text.empty()) {
        return;
    }
    if (const auto area = typed_area(text)) {
        question.area = *area;
        question.circle_of_confusion = optics::usual_circle_of_confusion(area->diagonal());
        return;
    }
    const auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        for (const Error& error : catalogue.error()) {
            options.fail(text_of(error));
        }
        return;
    }
    const catalogue::SensorMode* mode = catalogue->sensor(text);
    if (mode == nullptr) {
        options.fail(unknown_name("sensor", text, names_of(catalogue->sensors))
                     + "; a size such as 36x24 (mm) will do as well");
        return;
    }
    question.area = optics::effective_sensor(*mode);
    question.circle_of_confusion = mode->circle_of_confusion;
}

LensQuestion question_from(const Arguments& arguments, OptionReader& options) {
    LensQuestion question;
    read_sensor(arguments, options, question);
    if (const auto squeeze = options.optional_number("--squeeze", kSqueezes)) {
        question.area.squeeze = *squeeze;
    }
    question.focal = options.positive_length("--focal");
    question.distance = options.optional_positive_length("--distance");
    question.stop = options.optional_number("--stop", kStops);
    if (const auto circle = options.optional_positive_length("--coc")) {
        question.circle_of_confusion = *circle;
    }
    question.stature = options.optional_positive_length("--person");
    question.system = options.system();
    if (question.stature && !question.distance) {
        options.fail("--person needs --distance");
    }
    if (question.distance && *question.distance <= question.focal) {
        options.fail("--distance must be more than --focal; no picture forms nearer");
    }
    return question;
}

optics::FocusSetting setting_of(const LensQuestion& question) {
    return {question.focal, *question.stop, question.circle_of_confusion};
}

/// The frame laid over a standing person with the usual headroom.
optics::PersonInFrame framed(Length frame_height, Length stature) {
    const double height_share = frame_height / stature;
    return {1.0 - (1.0 - kUsualHeadroom) * height_share, height_share};
}

LensFigures figures_for(const LensQuestion& question) {
    LensFigures figures;
    figures.view = optics::angle_of_view(question.area, question.focal);
    if (question.distance) {
        figures.frame = optics::coverage(question.area, question.focal, *question.distance);
    }
    if (question.stop) {
        figures.hyperfocal = optics::hyperfocal(setting_of(question));
    }
    if (question.stop && question.distance) {
        figures.sharp = optics::depth_of_field(setting_of(question), *question.distance);
    }
    if (question.stature) {
        figures.person = framed(figures.frame->height, *question.stature);
    }
    return figures;
}

std::optional<double> metres(const std::optional<Length>& length) {
    return length ? std::optional{length->m()} : std::nullopt;
}

JsonValue::Object json_of(const LensQuestion& question, const LensFigures& figures) {
    const auto& frame = figures.frame;
    const auto& sharp = figures.sharp;
    JsonValue::Object json{{"horizontal_angle_deg", figures.view.horizontal.deg()},
                           {"vertical_angle_deg", figures.view.vertical.deg()},
                           {"diagonal_angle_deg", figures.view.diagonal.deg()},
                           {"width_m", frame ? std::optional{frame->width.m()} : std::nullopt},
                           {"height_m", frame ? std::optional{frame->height.m()} : std::nullopt},
                           {"near_m", sharp ? std::optional{sharp->near_limit.m()} : std::nullopt},
                           {"far_m", sharp ? metres(sharp->far_limit) : std::nullopt},
                           {"hyperfocal_m", metres(figures.hyperfocal)},
                           {"circle_of_confusion_mm", question.circle_of_confusion.mm()}};
    if (figures.person) {
        json.emplace_back("shot_size",
                          optics::name_of(optics::classify_shot_size(*figures.person)));
        json.emplace_back("bottom_cut_share", figures.person->bottom_cut_share);
    }
    return json;
}

std::string text_of(const LensQuestion& question, const LensFigures& figures) {
    const auto show = [&](Length length) { return shown(length, question.system); };
    std::string text = fmt::format(
        "sees {} by {}, {} across the diagonal\n", degrees_text(figures.view.horizontal),
        degrees_text(figures.view.vertical), degrees_text(figures.view.diagonal));
    if (figures.frame) {
        text += fmt::format("at {} the frame is {} wide and {} high\n", show(*question.distance),
                            show(figures.frame->width), show(figures.frame->height));
    }
    if (figures.person) {
        text += fmt::format("a standing person of {}: {}\n", show(*question.stature),
                            optics::name_of(optics::classify_shot_size(*figures.person)));
    }
    if (figures.sharp) {
        const auto& far_limit = figures.sharp->far_limit;
        text += fmt::format("sharp from {} to {}\n", show(figures.sharp->near_limit),
                            far_limit ? show(*far_limit) : "infinity");
    }
    if (figures.hyperfocal) {
        text += fmt::format("hyperfocal distance {}, with a circle of confusion of {} mm\n",
                            show(*figures.hyperfocal), fixed(question.circle_of_confusion.mm(), 4));
    }
    return text;
}

std::vector<Working> workings_of(const LensQuestion& question, const LensFigures& figures) {
    std::vector<Working> workings{optics::angle_of_view_working(question.area, question.focal)};
    if (figures.frame) {
        workings.push_back(
            optics::coverage_working(question.area, question.focal, *question.distance));
    }
    if (figures.person) {
        workings.push_back(optics::shot_size_working(*figures.person));
    }
    if (figures.hyperfocal) {
        workings.push_back(optics::hyperfocal_working(setting_of(question)));
    }
    if (figures.sharp) {
        workings.push_back(optics::near_limit_working(setting_of(question), *question.distance));
        workings.push_back(optics::far_limit_working(setting_of(question), *question.distance));
    }
    return workings;
}

Checked<Answer> answer(const Arguments& arguments, std::istream&) {
    OptionReader options{arguments};
    const LensQuestion question = question_from(arguments, options);
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    const LensFigures figures = figures_for(question);
    return Answer{.text = text_of(question, figures),
                  .json = json_of(question, figures),
                  .workings = workings_of(question, figures),
                  .code = ExitCode::clean};
}

} // namespace

Command lens_command() {
    return {
        .name = "lens",
        .summary = "angle of view, frame, shot size and depth of field of a lens",
        .operands = "",
        .operands_min = 0,
        .operands_max = 0,
        .options = {{"--sensor", "", "SIZE",
                     "picture area: 36x24 in mm, or a name of the catalogue"},
                    {"--focal", "", "LENGTH", "focal length, such as 50mm"},
                    {"--squeeze", "", "FACTOR", "of an anamorphic lens; 1 unless said"},
                    {"--distance", "", "LENGTH", "from the lens to the subject"},
                    {"--stop", "", "NUMBER", "f-number, for depth of field"},
                    {"--coc", "", "LENGTH", "circle of confusion; diagonal / 1500 unless said"},
                    {"--person", "", "STATURE", "name the shot that it makes of a standing person"},
                    kSystem,
                    kLensdata,
                    kJson,
                    kWorking},
        .example = "throwline lens --sensor 36x24 --focal 50mm --distance 3m --stop 2.8",
        .answer = answer};
}

} // namespace throwline::command
