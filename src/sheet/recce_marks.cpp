#include "sheet/recce_marks.h"

#include "base/length_text.h"
#include "sheet/dimensions.h"
#include "survey/recce_sentences.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

using survey::RecceResult;
using survey::SurveyedPoint;
using survey::SurveyedReading;

/// Corners of the plan this far from those of the survey are still the same room, since redrawn.
constexpr double kSameRoom_m = 0.25;
constexpr double kLargestEllipse_mm = 7.0;
/// Readings of walls stand inside the room, clear of it.
constexpr double kInside_mm = 5.0;

/// Index of the corner after which a wall from one point to another follows; nothing for what is
/// no wall.
std::optional<int> wall_of(const RecceResult& result, const SurveyedReading& reading) {
    return plan::wall_between(result.survey, reading.from, reading.to);
}

Ink ink_of(survey::Verdict verdict) {
    switch (verdict) {
    case survey::Verdict::wrong:
        return Ink::error;
    case survey::Verdict::worth_a_look:
        return Ink::caution;
    case survey::Verdict::fine:
    case survey::Verdict::hardly_checked:
        return Ink::dimension;
    case survey::Verdict::not_used:
        return Ink::note;
    }
    return Ink::dimension;
}

LinePattern pattern_of(survey::Verdict verdict) {
    switch (verdict) {
    case survey::Verdict::fine:
    case survey::Verdict::wrong:
        return LinePattern::solid;
    case survey::Verdict::worth_a_look:
        return LinePattern::dash;
    case survey::Verdict::hardly_checked:
        return LinePattern::long_dash;
    case survey::Verdict::not_used:
        return LinePattern::dot;
    }
    return LinePattern::solid;
}

std::string reading_text(const SurveyedReading& reading, UnitSystem units) {
    const std::string read = read_text(reading.read, units);
    if (reading.verdict == survey::Verdict::not_used) {
        return fmt::format("{} not used", read);
    }
    if (reading.suspect) {
        return fmt::format("{} wrong? {}", read, read_text(reading.suspect->probable, units));
    }
    return fmt::format("{} ({})", read, change_text(reading));
}

class RecceDrawer {
  public:
    RecceDrawer(Board& board, const RecceResult& result, const SurveyAxes& axes, UnitSystem units)
        : board_{board}, result_{result}, axes_{axes}, units_{units} {
        for (std::size_t i = 0; i < result.corner_count(); ++i) {
            corners_.push_back(axes.on_plan(result.points[i].at));
        }
    }

    void draw_ellipses() const {
        const double factor = ellipse_factor(result_, board_.frame.mm_per_m);
        for (const SurveyedPoint& point : result_.points) {
            if (factor > 0.0 && point.error.semi_major > 0.0) {
                board_.add(PlanLayer::findings,
                           outline(board_.frame.at(error_ellipse(point, axes_, factor)),
                                   pen(Ink::note, kFine_mm), solid(Ink::note, 0.15)),
                           Crowd::firm);
            }
        }
    }

    void draw_readings() {
        DimensionRows rows{board_};
        // Wrong ones first: their words must find a place.
        for (const bool wrong : {true, false}) {
            for (const SurveyedReading& reading : result_.readings) {
                if (reading.kind == survey::ReadingKind::tape
                    && (reading.verdict == survey::Verdict::wrong) == wrong) {
                    add_reading(rows, reading);
                }
            }
        }
        rows.lay_down();
    }

    void draw_squares() const {
        for (const SurveyedReading& reading : result_.readings) {
            if (reading.kind == survey::ReadingKind::square_corner) {
                draw_square(reading);
            }
        }
    }

    void draw_points() const {
        for (std::size_t i = 0; i < result_.points.size(); ++i) {
            const bool is_corner = i < result_.corner_count();
            const Vec2 at = board_.frame.at(axes_.on_plan(result_.points[i].at));
            board_.add(PlanLayer::lettering,
                       Circle{at, is_corner ? 0.9 : 0.7, pen(Ink::lettering, kFine_mm),
                              is_corner ? solid(Ink::lettering) : solid(Ink::paper)},
                       Crowd::never);
            LabelRequest label;
            label.anchor = at;
            label.half_mm = Vec2::Constant(1.4);
            label.lines = {{result_.points[i].name, is_corner}};
            label.height_mm = is_corner ? kLargeLetter_mm : kLetter_mm;
            board_.labels.push_back(label);
        }
    }

  private:
    void add_reading(DimensionRows& rows, const SurveyedReading& reading) const {
        const SurveyedPoint* from = result_.find(reading.from);
        const SurveyedPoint* to = result_.find(reading.to);
        if (from == nullptr || to == nullptr) {
            return;
        }
        const Vec2 way = axes_.on_plan(to->at) - axes_.on_plan(from->at);
        const double length_m = way.norm();
        if (length_m <= 0.0) {
            return;
        }
        DimensionRow row;
        row.origin = axes_.on_plan(from->at);
        row.along = way / length_m;
        row.aside = turned_left(row.along);
        row.stops_m = {0.0, length_m};
        row.words = {reading_text(reading, units_)};
        row.ink = ink_of(reading.verdict);
        row.pattern = pattern_of(reading.verdict);
        row.with_strokes = false;
        row.crowd = Crowd::firm; // They cross all over the room.
        if (wall_of(result_, reading)) {
            // On the wall itself nothing could be read.
            const Vec2 middle = row.origin + way / 2.0;
            if (!contains(corners_, middle + row.aside * 0.05, 0.0)) {
                row.aside = -row.aside;
            }
            row.aside_mm = kInside_mm;
            row.with_strokes = true;
        }
        rows.add(std::move(row));
    }

    void draw_square(const SurveyedReading& reading) const {
        constexpr double kSide_mm = 3.2;
        const auto& names = result_.survey.corners;
        const auto found = std::find(names.begin(), names.end(), reading.from);
        if (found == names.end()) {
            return;
        }
        const std::size_t count = corners_.size();
        const auto corner = static_cast<std::size_t>(found - names.begin());
        const Vec2 at = board_.frame.at(corners_[corner]);
        const Vec2 before =
            (board_.frame.at(corners_[(corner + count - 1) % count]) - at).normalized() * kSide_mm;
        const Vec2 after =
            (board_.frame.at(corners_[(corner + 1) % count]) - at).normalized() * kSide_mm;
        const bool wrong = reading.verdict == survey::Verdict::wrong;
        board_.add(PlanLayer::findings,
                   open_path({at + before, at + before + after, at + after},
                             pen(wrong ? Ink::error : Ink::lettering, kStanding_mm)),
                   Crowd::never);
    }

    Board& board_;
    const RecceResult& result_;
    const SurveyAxes& axes_;
    UnitSystem units_;
    Polygon corners_;
};

} // namespace

SurveyAxes axes_on(const plan::Room& room, const survey::RecceResult& result) {
    SurveyAxes axes;
    if (room.outline.size() != result.corner_count() || room.outline.size() < 3) {
        return axes;
    }
    axes.origin = room.outline[0];
    axes.turn_rad = angle_of(room.outline[1] - room.outline[0]);
    axes.fits_plan = true;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const double off_m = (axes.on_plan(result.points[i].at) - room.outline[i]).norm();
        axes.fits_plan = axes.fits_plan && off_m < kSameRoom_m;
    }
    return axes.fits_plan ? axes : SurveyAxes{};
}

double ellipse_factor(const survey::RecceResult& result, double mm_per_m) {
    double largest_m = 0.0;
    for (const SurveyedPoint& point : result.points) {
        largest_m = std::max(largest_m, point.error.semi_major);
    }
    const double largest_mm = largest_m * mm_per_m;
    if (!(largest_mm > 0.0)) {
        return 0.0;
    }
    const double most = kLargestEllipse_mm / largest_mm;
    const double power = std::pow(10.0, std::floor(std::log10(most)));
    for (const double step : {5.0, 2.0}) {
        if (step * power <= most) {
            return step * power;
        }
    }
    return power;
}

Polygon error_ellipse(const survey::SurveyedPoint& point, const SurveyAxes& axes, double factor) {
    constexpr int kPoints = 48;
    Polygon ellipse;
    for (int i = 0; i < kPoints; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / kPoints;
        const Vec2 own{point.error.semi_major * std::cos(turn) * factor,
                       point.error.semi_minor * std::sin(turn) * factor};
        ellipse.push_back(axes.on_plan(point.at + rotated(own, point.error.major_angle_rad)));
    }
    return ellipse;
}

std::string read_text(double read_m, UnitSystem units) {
    return units == UnitSystem::metric ? fixed(read_m, 3)
                                       : survey::tape_text(Length::metres(read_m), units);
}

std::string change_text(const survey::SurveyedReading& reading) {
    const double change_mm = Length::metres(reading.outcome.residual).mm();
    const std::string text = fixed(change_mm, 0);
    return change_mm > 0.0 && text != "0" ? "+" + text : text;
}

void draw_recce(Board& board, const survey::RecceResult& result, const SurveyAxes& axes,
                UnitSystem units) {
    RecceDrawer drawer{board, result, axes, units};
    drawer.draw_ellipses();
    drawer.draw_squares();
    drawer.draw_points();
    drawer.draw_readings();
}

} // namespace throwline::sheet
