#include "command/arguments.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "photometry/filters.h"
#include "photometry/point_source.h"
#include "photometry/throw.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::command {

namespace {

constexpr NumberRange kShares{0.0, 1.0};
/// A searchlight has some hundred million candela.
constexpr NumberRange kPeaks_cd{0.0, 1e9};
/// Nearer than so many widths of its face, a soft source no longer acts from one point: at five
/// widths the error is 1.3 % (configuration-factor algebra for a square).
constexpr double kPointSourceWidths = 5.0;

struct ThrowQuestion {
    photometry::ThrowSetup setup;
    UnitSystem system = UnitSystem::metric;
    /// Printed behind the figures.
    std::vector<std::string> notes;
};

void read_beam(OptionReader& options, ThrowQuestion& question) {
    constexpr Angle kNone = Angle::degrees(0);
    constexpr Angle kHalfTurn = Angle::degrees(180);
    question.setup.beam.peak_cd = options.number("--peak", kPeaks_cd);
    question.setup.beam.beam = options.angle("--beam", kNone, kHalfTurn);
    question.setup.beam.field = options.angle("--field", kNone, kHalfTurn);
}

void add_filters(const Arguments& arguments, const catalogue::Catalogue& catalogue,
                 OptionReader& options, photometry::BeamModel& beam) {
    for (const std::string& name : arguments.values("--filter")) {
        if (const catalogue::Filter* filter = catalogue.filter(name)) {
            beam = photometry::filtered(beam, *filter);
        } else {
            options.fail(unknown_name("filter", name, names_of(catalogue.filters)));
        }
    }
}

void add_notes(const catalogue::Instrument& instrument, ThrowQuestion& question) {
    const Length face = std::max(instrument.face_width, instrument.face_height);
    if (instrument.soft) {
        question.notes.push_back(
            fmt::format("a soft source: nearer than {} the level is lower than shown",
                        shown(face * kPointSourceWidths, question.system)));
    }
    if (instrument.clearance > Length{}) {
        question.notes.push_back(fmt::format(
            "caution: keep people, drapes and anything that burns at least {} away; the maker's "
            "instructions and the venue's rules decide",
            shown(instrument.clearance, question.system)));
    }
}

void read_instrument(const Arguments& arguments, OptionReader& options, ThrowQuestion& question) {
    for (const std::string_view option : {"--peak", "--beam", "--field"}) {
        if (arguments.has(option)) {
            options.fail(fmt::format("{} cannot go with --instrument, which has its own", option));
        }
    }
    const auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        for (const Error& error : catalogue.error()) {
            options.fail(text_of(error));
        }
        return;
    }
    const std::string name = options.text("--instrument");
    const catalogue::Instrument* instrument = catalogue->instrument(name);
    if (instrument == nullptr) {
        options.fail(unknown_name("instrument", name, names_of(catalogue->instruments)));
        return;
    }
    const double focus = options.optional_number("--focus", kShares).value_or(0.0);
    question.setup.beam = photometry::beam_at_focus(*instrument, focus);
    add_filters(arguments, *catalogue, options, question.setup.beam);
    add_notes(*instrument, question);
}

ThrowQuestion question_from(const Arguments& arguments, OptionReader& options) {
    ThrowQuestion question;
    question.system = options.system();
    if (arguments.has("--instrument")) {
        read_instrument(arguments, options, question);
    } else {
        read_beam(options, question);
        for (const std::string_view option : {"--focus", "--filter"}) {
            if (arguments.has(option)) {
                options.fail(fmt::format("{} needs --instrument", option));
            }
        }
    }
    if (const auto level = options.optional_number("--level", kShares)) {
        question.setup.beam = photometry::dimmed(question.setup.beam, *level);
    }
    question.setup.height = options.positive_length("--height");
    question.setup.run = options.length("--run");
    question.setup.at_height = options.optional_length("--at").value_or(Length{});
    return question;
}

JsonValue ellipse_json(const std::optional<photometry::ConeFootprint>& ellipse) {
    if (!ellipse) {
        return nullptr;
    }
    return JsonValue::Object{{"length_m", ellipse->length().m()},
                             {"width_m", ellipse->width().m()},
                             {"near_m", ellipse->near_edge.m()},
                             {"far_m", ellipse->far_edge.m()}};
}

JsonValue::Object json_of(const ThrowQuestion& question, const photometry::ThrowFigures& figures) {
    JsonValue::Array notes(question.notes.begin(), question.notes.end());
    return {{"throw_m", figures.slant.m()},
            {"elevation_deg", figures.elevation.deg()},
            {"horizontal_lux", figures.horizontal_lx},
            {"facing_lux", figures.facing_lx},
            {"beam_width_m", figures.beam_width.m()},
            {"floor_ellipse", ellipse_json(figures.floor_ellipse)},
            {"notes", std::move(notes)}};
}

std::string level_text(double illuminance_lx) {
    return fmt::format("{} lx ({} fc)", fixed(illuminance_lx, 0),
                       fixed(photometry::foot_candles(illuminance_lx), 1));
}

std::string text_of(const ThrowQuestion& question, const photometry::ThrowFigures& figures) {
    const auto show = [&](Length length) { return shown(length, question.system); };
    std::string text = fmt::format("throw {}, lamp {} above the horizontal\n", show(figures.slant),
                                   degrees_text(figures.elevation));
    text += fmt::format("level at the point: {} on a vertical plane turned to the lamp, {} on a "
                        "level one\n",
                        level_text(figures.facing_lx), level_text(figures.horizontal_lx));
    text += fmt::format("the beam is {} across there\n", show(figures.beam_width));
    if (const auto& ellipse = figures.floor_ellipse) {
        text += fmt::format("on the floor it is {} long and {} wide, from {} to {} out from under "
                            "the lamp\n",
                            show(ellipse->length()), show(ellipse->width()),
                            show(ellipse->near_edge), show(ellipse->far_edge));
    } else {
        text += "on the floor it is open: the beam reaches the horizontal\n";
    }
    for (const std::string& note : question.notes) {
        text += note + "\n";
    }
    return text;
}

Checked<Answer> answer(const Arguments& arguments, std::istream&) {
    OptionReader options{arguments};
    const ThrowQuestion question = question_from(arguments, options);
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    const auto figures = photometry::throw_figures(question.setup);
    if (!figures) {
        return tl::unexpected{Errors{figures.error()}};
    }
    return Answer{.text = text_of(question, *figures),
                  .json = json_of(question, *figures),
                  .workings = photometry::throw_workings(question.setup),
                  .code = ExitCode::clean};
}

} // namespace

Command throw_command() {
    return {
        .name = "throw",
        .summary = "what one lamp does at a point: throw, angle, level, pool",
        .operands = "",
        .operands_min = 0,
        .operands_max = 0,
        .options = {{"--instrument", "", "NAME", "an instrument of the catalogue, or else:"},
                    {"--peak", "", "CANDELA", "intensity on the axis"},
                    {"--beam", "", "ANGLE", "full angle to 50 % of the peak"},
                    {"--field", "", "ANGLE", "full angle to 10 % of the peak"},
                    {"--focus", "", "SHARE", "of an instrument: 0 spot (unless said) to 1 flood"},
                    {"--filter", "", "NAME", "in front of an instrument; may be repeated", true},
                    {"--level", "", "SHARE", "of the dimmer, 0 to 1; 1 unless said"},
                    {"--height", "", "LENGTH", "of the lamp above the floor"},
                    {"--run", "", "LENGTH", "along the floor from under the lamp to the point"},
                    {"--at", "", "LENGTH", "height of the point; the floor unless said"},
                    kSystem,
                    kLensdata,
                    kJson,
                    kWorking},
        .example = "throwline throw --peak 20000 --beam 20deg --field 40deg --height 4m --run 3m "
                   "--at 1.5m",
        .answer = answer};
}

} // namespace throwline::command
