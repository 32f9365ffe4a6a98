#include "catalogue/catalogue.h"
#include "sheet/marks.h"
#include "sheet/png_picture.h"
#include "sheet/scale_name.h"
#include "sheet/sheet_support.h"
#include "sheet/written_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <iostream>
#include <map>

namespace throwline::sheet {
namespace {

using test::session;
using test::sheet_catalogue;

constexpr double kWidth_m = 2.4;
constexpr double kDepth_m = 1.8;
/// What a written length may be off, on the page and as a share.
constexpr double kMostOff_mm = 0.1;
constexpr double kMostShareOff = 0.0005;
/// Page boxes are written to a thousandth of a point.
constexpr double kMostBoxOff_mm = 0.002;
/// Enough for half a millimetre of wall line to cover a pixel, so that its edge can be found to a
/// part of one, and for that part to be under the share that the shortest wall may be off; an A0
/// sheet has 9 million pixels then.
constexpr double kPixelsPerMillimetre = 3.0;

/// A room and nothing in it.
plan::Plan bare_plan(UnitSystem units) {
    plan::Plan plan;
    plan.title = "Ruler room";
    plan.units = units;
    plan.room.outline = {{0, 0}, {kWidth_m, 0}, {kWidth_m, kDepth_m}, {0, kDepth_m}};
    plan.room.height = Length::metres(2.5);
    plan.room.walls.assign(4, plan::Wall{Length::metres(2.5), Length::millimetres(100), {}, false});
    return plan;
}

/// A line that is drawn to a known length: where it goes, and how long it must be.
struct KnownLine {
    std::string name;
    Vec2 from;
    Vec2 to;
    double length_mm;
};

/// The first level or upright line of a length on a layer.
std::optional<KnownLine> known_line(const Drawing& drawing, const std::string& layer_name,
                                    const std::string& name, double length_mm, bool level) {
    for (const Layer& layer : drawing.layers) {
        for (const Mark& mark : layer.marks) {
            const auto* path = std::get_if<Path>(&mark);
            if (layer.name != layer_name || path == nullptr || path->points.size() != 2) {
                continue;
            }
            const Vec2 step = path->points[1] - path->points[0];
            const double along = std::abs(level ? step.x() : step.y());
            const double across = std::abs(level ? step.y() : step.x());
            if (std::abs(along - length_mm) < 1e-6 && across < 1e-9) {
                const bool in_order = step.x() + step.y() > 0.0;
                return KnownLine{name, path->points[in_order ? 0 : 1],
                                 path->points[in_order ? 1 : 0], length_mm};
            }
        }
    }
    return std::nullopt;
}

struct KnownLines {
    KnownLine ruler_across;
    KnownLine ruler_up;
    KnownLine wall_across;
    KnownLine wall_up;

    std::array<KnownLine, 4> all() const { return {ruler_across, ruler_up, wall_across, wall_up}; }
};

std::optional<KnownLines> known_lines(const Drawing& drawing, double ratio) {
    const auto a = known_line(drawing, "frame", "ruler across", 100.0, true);
    const auto b = known_line(drawing, "frame", "ruler up", 100.0, false);
    const auto c = known_line(drawing, "built", "wall across", 1000.0 * kWidth_m / ratio, true);
    const auto d = known_line(drawing, "built", "wall up", 1000.0 * kDepth_m / ratio, false);
    return a && b && c && d ? std::optional{KnownLines{*a, *b, *c, *d}} : std::nullopt;
}

/// The worst that was met in a format.
struct Worst {
    double length_mm = 0.0;
    double share = 0.0;
    double place_mm = 0.0;
    double page_mm = 0.0;
    int sheets = 0;
};

class TrueScale : public testing::Test {
  protected:
    void note_length(const std::string& format, const KnownLine& line, double measured_mm) {
        const double off_mm = std::abs(measured_mm - line.length_mm);
        worst_[format].length_mm = std::max(worst_[format].length_mm, off_mm);
        worst_[format].share = std::max(worst_[format].share, off_mm / line.length_mm);
        EXPECT_LE(off_mm, kMostOff_mm) << format << " " << line.name << " " << where_;
        EXPECT_LE(off_mm, kMostShareOff * line.length_mm)
            << format << " " << line.name << " " << where_;
    }

    void note_page(const std::string& format, const Drawing& drawing, double width_mm,
                   double height_mm) {
        const double off_mm = std::max(std::abs(width_mm - drawing.width_mm),
                                       std::abs(height_mm - drawing.height_mm));
        worst_[format].page_mm = std::max(worst_[format].page_mm, off_mm);
        ++worst_[format].sheets;
        EXPECT_LE(off_mm, kMostBoxOff_mm) << format << " " << where_;
    }

    void measure_strokes(const std::string& format, const Drawing& drawing, const KnownLines& known,
                         const test::WrittenSheet& sheet) {
        note_page(format, drawing, sheet.width_mm, sheet.height_mm);
        for (const KnownLine& line : known.all()) {
            const test::Stroke found = test::nearest_stroke(sheet.strokes, line.from, line.to);
            const double away_mm =
                std::max((found.from - line.from).norm(), (found.to - line.to).norm());
            worst_[format].place_mm = std::max(worst_[format].place_mm, away_mm);
            EXPECT_LE(away_mm, kMostOff_mm) << format << " " << line.name << " " << where_;
            note_length(format, line, found.length_mm());
        }
    }

    void measure_pixels(const Drawing& drawing, const KnownLines& known);

    void measure(const Drawing& drawing, double ratio) {
        const std::optional<KnownLines> known = known_lines(drawing, ratio);
        ASSERT_TRUE(known) << where_;
        measure_strokes("PDF", drawing, *known,
                        test::sheets_of_pdf(paint::rendered_pdf(session(), drawing).value()).at(0));
        measure_strokes("SVG", drawing, *known,
                        test::sheet_of_svg(paint::rendered_svg(session(), drawing).value()));
        measure_pixels(drawing, *known);
    }

    void print_worst() const {
        for (const auto& [format, worst] : worst_) {
            std::cout << format << ", " << worst.sheets << " sheets, worst: length "
                      << worst.length_mm << " mm (" << 100.0 * worst.share << " %), place "
                      << worst.place_mm << " mm, page " << worst.page_mm << " mm\n";
        }
    }

    std::string where_;
    std::map<std::string, Worst> worst_;
};

/// A row or column of a picture, in pixels of a ruler laid along it.
class PixelLine {
  public:
    /// Along x at the height of `place`, or along y through it; millimetres.
    PixelLine(const test::PngPicture& picture, const Vec2& place, bool level)
        : picture_{picture}, level_{level},
          fixed_{static_cast<int>((level ? place.y() : place.x()) * picture.pixels_per_mm)} {}

    double cover(int at) const {
        return level_ ? picture_.cover(at, fixed_) : picture_.cover(fixed_, at);
    }
    /// Middle of the ink within 1 mm of a place, millimetres.
    double middle_mm(double near_mm) const {
        double ink = 0.0;
        double moment = 0.0;
        for (int i = pixel(near_mm - 1.0); i <= pixel(near_mm + 1.0); ++i) {
            ink += cover(i);
            moment += cover(i) * (i + 0.5);
        }
        return moment / ink / picture_.pixels_per_mm;
    }
    /// Where ink begins, walking from a bare place in a direction; to a part of a pixel by how much
    /// of the first inked one is covered.
    double edge_mm(double from_mm, int step) const {
        constexpr double kLeastInk = 0.003;
        int at = pixel(from_mm);
        const int most = level_ ? picture_.width : picture_.height;
        while (at > 0 && at < most - 1 && cover(at) < kLeastInk) {
            at += step;
        }
        const double bare = 1.0 - cover(at);
        return (step > 0 ? at + bare : at + 1 - bare) / picture_.pixels_per_mm;
    }

  private:
    int pixel(double place_mm) const {
        return static_cast<int>(std::floor(place_mm * picture_.pixels_per_mm));
    }

    const test::PngPicture& picture_;
    bool level_;
    int fixed_;
};

void TrueScale::measure_pixels(const Drawing& drawing, const KnownLines& known) {
    const test::PngPicture picture = test::png_picture(
        paint::rendered_png(session(), drawing, 25.4 * kPixelsPerMillimetre).value());
    // A picture has whole pixels.
    EXPECT_NEAR(picture.width / picture.pixels_per_mm, drawing.width_mm, 0.17) << where_;
    EXPECT_NEAR(picture.height / picture.pixels_per_mm, drawing.height_mm, 0.17) << where_;
    ++worst_["PNG"].sheets;
    // The long ticks of the rulers, which are 10 mm apart, where the short ones do not reach.
    const PixelLine across{picture, known.ruler_across.from - Vec2{0.0, 1.5}, true};
    note_length("PNG", known.ruler_across,
                across.middle_mm(known.ruler_across.to.x())
                    - across.middle_mm(known.ruler_across.from.x()));
    const PixelLine up{picture, known.ruler_up.from + Vec2{1.5, 0.0}, false};
    note_length("PNG", known.ruler_up,
                up.middle_mm(known.ruler_up.to.y()) - up.middle_mm(known.ruler_up.from.y()));
    // From wall to wall through the room, between the inner edges of their lines.
    const Vec2 size{known.wall_across.length_mm, known.wall_up.length_mm};
    const Vec2 inside{known.wall_across.from.x() + 0.3 * size.x(),
                      known.wall_up.from.y() + 0.3 * size.y()};
    const PixelLine row{picture, inside, true};
    note_length("PNG", known.wall_across,
                row.edge_mm(inside.x(), 1) - row.edge_mm(inside.x(), -1) + kBuilt_mm);
    const PixelLine column{picture, inside, false};
    note_length("PNG", known.wall_up,
                column.edge_mm(inside.y(), 1) - column.edge_mm(inside.y(), -1) + kBuilt_mm);
}

/// The scales that every sheet is drawn at: the largest that fits it, a small one, one's own.
TEST_F(TrueScale, EveryPaperEitherWayInEveryFormat) {
    const checks::Analysis metric = test::analysed(bare_plan(UnitSystem::metric));
    const checks::Analysis imperial = test::analysed(bare_plan(UnitSystem::imperial));
    for (const catalogue::Paper& paper : sheet_catalogue().papers) {
        for (const Orientation way : {Orientation::landscape, Orientation::portrait}) {
            for (const auto& [analysis, scale] :
                 {std::pair{&metric, ""}, std::pair{&metric, "1:100"}, std::pair{&metric, "1:37"},
                  std::pair{&imperial, ""}, std::pair{&imperial, "3/8 in = 1 ft"}}) {
                SheetOptions options;
                options.paper = paper.name;
                options.orientation = way;
                options.scale = scale;
                options.ground = false;
                const auto drawing = test::floor_plan_of(*analysis, options, session().measure());
                ASSERT_TRUE(drawing) << drawing.error().message;
                where_ = drawing->subject;
                const auto named = scale_named(drawing->scale, sheet_catalogue());
                ASSERT_TRUE(named) << drawing->scale;
                measure(*drawing, named->ratio);
            }
        }
    }
    print_worst();
}

} // namespace
} // namespace throwline::sheet
