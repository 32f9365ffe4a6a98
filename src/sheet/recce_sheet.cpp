#include "sheet/recce_sheet.h"

#include "base/length_text.h"
#include "base/words.h"
#include "checks/cautions.h"
#include "plan/names.h"
#include "sheet/panel_writer.h"
#include "sheet/recce_drawing.h"
#include "sheet/recce_marks.h"
#include "sheet/symbols.h"
#include "survey/recce_sentences.h"

#include <array>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

/// What the panel of a recce tells, most pressing first, as far as it has room.
class ReccePanel {
  public:
    ReccePanel(const RecceDrawing& drawing, Marks& marks, const Box& box,
               const TextMeasure& measure, double mm_per_m)
        : drawing_{drawing}, result_{drawing.result}, writer_{marks, box, measure},
          mm_per_m_{mm_per_m} {}

    void write() {
        writer_.heading("How well the readings agree");
        writer_.words(survey::agreement_text(result_));
        for (const survey::Unsettled& loose : result_.unplaced) {
            writer_.words(survey::unsettled_text(loose, result_.survey));
        }
        if (write_list("Read again or look at", doubtful(), "readings")
            && write_list("Chains and ceiling", chains(), "lines")
            && write_list("Site notes", notes(), "notes")) {
            write_readings();
        }
    }

  private:
    bool write_list(const std::string& heading, const std::vector<std::string>& sentences,
                    const std::string& what) {
        if (sentences.empty()) {
            return true;
        }
        writer_.gap();
        if (!writer_.heading(heading)) {
            return false;
        }
        for (std::size_t i = 0; i < sentences.size(); ++i) {
            if (!writer_.words(sentences[i])) {
                writer_.left_out(sentences.size() - i, what);
                return false;
            }
        }
        return true;
    }

    std::vector<std::string> doubtful() const {
        std::vector<std::string> sentences;
        for (const auto verdict : {survey::Verdict::wrong, survey::Verdict::worth_a_look,
                                   survey::Verdict::hardly_checked, survey::Verdict::not_used}) {
            for (const survey::SurveyedReading& reading : result_.readings) {
                if (reading.verdict == verdict) {
                    sentences.push_back(
                        fmt::format("{}: {}", survey::label_of(reading),
                                    survey::verdict_text(result_, reading, drawing_.units)));
                }
            }
        }
        return sentences;
    }

    std::vector<std::string> chains() const {
        std::vector<std::string> sentences;
        for (std::size_t i = 0; i < result_.chains.size(); ++i) {
            sentences.push_back(survey::chain_text(result_, i, drawing_.units));
        }
        if (std::string ceiling = survey::ceiling_text(result_, drawing_.units); !ceiling.empty()) {
            sentences.push_back(std::move(ceiling));
        }
        return sentences;
    }

    /// By kind, in the order in which kinds are named.
    std::vector<std::string> notes() const {
        std::vector<std::string> sentences;
        using Kind = plan::SiteNoteKind;
        for (const Kind kind : {Kind::power, Kind::breaker, Kind::noise, Kind::sun, Kind::light,
                                Kind::access, Kind::other}) {
            for (const plan::SiteNote& note : result_.survey.notes) {
                if (note.kind == kind) {
                    sentences.push_back(capitalised(survey::note_text(note)));
                }
            }
        }
        return sentences;
    }

    PanelCell cell(std::string words, double x_mm, bool to_the_right, bool bold = false) const {
        return {std::move(words), x_mm, to_the_right, bold};
    }

    /// Two readings a row: between which points, as read, and how much it had to change.
    void write_readings() {
        std::vector<const survey::SurveyedReading*> readings;
        for (const survey::SurveyedReading& reading : result_.readings) {
            if (reading.kind != survey::ReadingKind::square_corner
                && reading.verdict != survey::Verdict::not_used) {
                readings.push_back(&reading);
            }
        }
        writer_.gap();
        if (readings.empty() || !writer_.heading("Readings, and their change to fit in mm")) {
            return;
        }
        write_how_drawn();
        const double half_mm = writer_.width_mm() / 2.0;
        const std::size_t rows = (readings.size() + 1) / 2;
        for (std::size_t row = 0; row < rows; ++row) {
            std::vector<PanelCell> cells;
            for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
                const std::size_t index = row + side * rows;
                if (index < readings.size()) {
                    add_cells(cells, *readings[index], static_cast<double>(side) * half_mm,
                              half_mm - (side == 0 ? 4.0 : 0.0));
                }
            }
            if (!writer_.row(cells)) {
                return writer_.left_out(readings.size() - 2 * row, "readings");
            }
        }
    }

    void add_cells(std::vector<PanelCell>& cells, const survey::SurveyedReading& reading,
                   double left_mm, double wide_mm) const {
        constexpr double kChange_mm = 10.0;
        const bool bold = reading.verdict == survey::Verdict::wrong;
        const std::string label = reading.kind == survey::ReadingKind::chain
                                      ? fmt::format("ch {}-{}", reading.from, reading.to)
                                      : survey::label_of(reading);
        cells.push_back(cell(label, left_mm, false, bold));
        cells.push_back(cell(read_text(reading.read, drawing_.units),
                             left_mm + wide_mm - kChange_mm, true, bold));
        cells.push_back(cell(change_text(reading), left_mm + wide_mm, true, bold));
    }

    void write_how_drawn() {
        const double factor = ellipse_factor(result_, mm_per_m_);
        if (factor > 0.0) {
            writer_.words(fmt::format("Ellipses: how well a point is known (one standard error), "
                                      "drawn {} times too large.",
                                      fixed(factor, factor < 1.0 ? 1 : 0)));
        }
        for (const survey::SurveyedReading& reading : result_.readings) {
            if (reading.kind == survey::ReadingKind::square_corner) {
                writer_.words("Square sign: believed square, not read.");
                return;
            }
        }
    }

    const RecceDrawing& drawing_;
    const survey::RecceResult& result_;
    PanelWriter writer_;
    double mm_per_m_;
};

Result<Drawing> settled_sheet(const SheetInput& input, const SheetOptions& options,
                              const RecceDrawing& drawing) {
    double mm_per_m = 0.0;
    ScaledSheet sheet;
    sheet.extent = extent_of_recce(drawing);
    sheet.draw = [&](Board& board) {
        mm_per_m = board.frame.mm_per_m;
        draw_recce_room(board, drawing, input.catalogue);
    };
    sheet.panel = [&](Marks& marks, const Box& box) {
        ReccePanel{drawing, marks, box, input.measure, mm_per_m}.write();
    };
    sheet.cautions = checks::cautions_for(*input.analysis.plan);
    sheet.with_legend = false;
    sheet.with_north = drawing.axes.fits_plan;
    return composed(input, options, sheet);
}

/// The plan's room, with what must be read before the survey has a shape.
Result<Drawing> unsettled_sheet(const SheetInput& input, const SheetOptions& options,
                                const survey::Unsettled& unsettled) {
    const plan::Plan& plan = *input.analysis.plan;
    if (plan.room.outline.size() < 3) {
        return failure(survey::unsettled_text(unsettled, *plan.survey));
    }
    ScaledSheet sheet;
    for (const Vec2& corner : outer_outline(plan.room)) {
        sheet.extent.include(corner);
    }
    sheet.draw = [&](Board& board) { draw_room(board, plan); };
    sheet.panel = [&](Marks& marks, const Box& box) {
        PanelWriter writer{marks, box, input.measure};
        writer.heading("The survey is not finished");
        writer.words(survey::unsettled_text(unsettled, *plan.survey));
        writer.words("Drawn is the room of the plan, not that of the survey.");
    };
    sheet.cautions = checks::cautions_for(plan);
    sheet.with_legend = false;
    return composed(input, options, sheet);
}

} // namespace

Result<Drawing> recce_sheet(const SheetInput& input, const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    if (!plan.survey) {
        return failure("the plan has no survey to show");
    }
    auto result = survey::surveyed(*plan.survey);
    return result ? settled_sheet(input, options, recce_drawing_of(plan, *std::move(result)))
                  : unsettled_sheet(input, options, result.error());
}

Result<std::vector<SheetJob>> recce_jobs(const SheetInput& input, const SheetOptions& /*options*/) {
    std::vector<SheetJob> jobs;
    if (input.analysis.plan->survey) {
        jobs.push_back({"Recce", [input](const SheetOptions& options) {
                            return recce_sheet(input, options);
                        }});
    }
    return jobs;
}

} // namespace throwline::sheet
