#include "sheet/tile_margins.h"

#include "sheet/check_ruler.h"
#include "sheet/mask.h"
#include "sheet/text_wrap.h"
#include "sheet/tiles.h"

#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

/// Between the piece and what stands in the margin, and how far that reaches from the piece.
constexpr double kGap_mm = 1.0;
constexpr double kReach_mm = 6.5;
constexpr double kGlueStrip_mm = 1.8;
constexpr double kCode_mm = 4.5;
constexpr double kPad_mm = 3.0;
constexpr double kQuarterTurn_rad = std::numbers::pi / 2.0;

class Margins {
  public:
    Margins(Marks& marks, const TilePlace& tile, const TextMeasure& measure)
        : marks_{marks}, tile_{tile}, measure_{measure}, piece_{tile.piece()} {}

    void crop_marks() {
        const Pen fine = pen(Ink::lettering, kHair_mm);
        for (const double x : {piece_.left, piece_.right()}) {
            tick(x, fine);
        }
        for (const double y : {piece_.top, piece_.bottom()}) {
            marks_.emplace_back(
                line({piece_.left - kReach_mm, y}, {piece_.left - kGap_mm, y}, fine));
            marks_.emplace_back(
                line({piece_.right() + kGap_mm, y}, {piece_.right() + kReach_mm, y}, fine));
        }
    }

    /// Beside the strips that the tiles to the right and below are glued on, which show the same
    /// as these.
    void glue_strips() {
        const Fill light = hatched(Ink::dimension, Hatch::diagonal, 0.6);
        const double away_mm = 0.4;
        if (tile_.has_right()) {
            marks_.emplace_back(
                box_outline({piece_.right() + away_mm, piece_.top, kGlueStrip_mm, piece_.height},
                            no_pen(), light));
            tick(piece_.right() - tile_.grid.overlap_mm,
                 pen(Ink::lettering, kHair_mm, LinePattern::dot));
        }
        if (tile_.has_below()) {
            marks_.emplace_back(
                box_outline({piece_.left, piece_.bottom() + away_mm, piece_.width, kGlueStrip_mm},
                            no_pen(), light));
            const double y = piece_.bottom() - tile_.grid.overlap_mm;
            const Pen dotted = pen(Ink::lettering, kHair_mm, LinePattern::dot);
            marks_.emplace_back(
                line({piece_.left - kReach_mm, y}, {piece_.left - kGap_mm, y}, dotted));
            marks_.emplace_back(
                line({piece_.right() + kGap_mm, y}, {piece_.right() + kReach_mm, y}, dotted));
        }
    }

    /// Code, arrow and key map above the piece, from the left; then where to lay this tile.
    void head() {
        const std::string code = tile_code(tile_.row, tile_.column);
        const double baseline_mm = piece_.top - 1.8;
        double x = piece_.left + kPad_mm;
        words(code, {x, baseline_mm}, kCode_mm, true);
        x += measure_.width_mm(code, kCode_mm, true) + kPad_mm;
        arrow_up(x);
        x += 2.5;
        words("up", {x, baseline_mm}, kLetter_mm, false);
        x += measure_.width_mm("up", kLetter_mm, false) + kPad_mm;
        x += key_map({x, piece_.top - kReach_mm}) + kPad_mm;
        if (tile_.has_above()) {
            words(laid_over(tile_.row - 1, tile_.column), {x, baseline_mm}, kLetter_mm, false);
        }
    }

    /// The check ruler under the piece and left of it.
    void rulers() {
        const double below_mm = piece_.bottom() + 5.4;
        const Vec2 from{piece_.left + kPad_mm, below_mm};
        draw_check_ruler(marks_, from, Vec2::UnitX(), -Vec2::UnitY());
        const double left_mm = from.x() + kCheckLength_mm + 2.0;
        const double room_mm = piece_.right() - tile_.grid.overlap_mm - left_mm - 1.0;
        const bool fits = measure_.width_mm(kCheckWords, kLetter_mm, false) <= room_mm;
        words(fits ? kCheckWords : "100 mm", {left_mm, below_mm}, kLetter_mm, false);
        const double beside_mm = piece_.left - 3.2;
        const bool upright_fits = piece_.height >= kCheckLength_mm + 2.0 * kPad_mm;
        double foot_mm = piece_.bottom() - kPad_mm;
        if (upright_fits) {
            draw_check_ruler(marks_, {beside_mm, foot_mm}, -Vec2::UnitY(), -Vec2::UnitX());
            foot_mm -= kCheckLength_mm + 2.0;
        }
        if (tile_.has_left()) {
            const std::string text = laid_over(tile_.row, tile_.column - 1);
            if (measure_.width_mm(text, kLetter_mm, false) <= foot_mm - piece_.top) {
                upright(text, {piece_.left - 1.8, foot_mm});
            }
        }
    }

    void caption() {
        const Vec2 foot{piece_.right() + 3.0 + kLetter_mm, piece_.bottom() - kPad_mm};
        upright(
            cut_to_width(tile_.caption, piece_.height - 2.0 * kPad_mm, kLetter_mm, false, measure_),
            foot);
    }

  private:
    static std::string laid_over(int row, int column) {
        return fmt::format("trim here, glue over {}", tile_code(row, column));
    }

    void words(const std::string& text, const Vec2& at, double height_mm, bool bold) {
        marks_.emplace_back(
            Text{text, at, height_mm, TextAnchor::start, 0.0, bold, Ink::lettering});
    }
    /// Reads upwards.
    void upright(const std::string& text, const Vec2& foot) {
        marks_.emplace_back(Text{text, foot, kLetter_mm, TextAnchor::start, kQuarterTurn_rad, false,
                                 Ink::lettering});
    }
    /// Above and below the piece.
    void tick(double x, const Pen& pen) {
        marks_.emplace_back(line({x, piece_.top - kReach_mm}, {x, piece_.top - kGap_mm}, pen));
        marks_.emplace_back(
            line({x, piece_.bottom() + kGap_mm}, {x, piece_.bottom() + kReach_mm}, pen));
    }
    void arrow_up(double x) {
        const double foot_mm = piece_.top - 1.6;
        const double tip_mm = piece_.top - kReach_mm;
        marks_.emplace_back(line({x, foot_mm}, {x, tip_mm + 1.0}, pen(Ink::lettering, kFine_mm)));
        marks_.emplace_back(outline({{x, tip_mm}, {x + 0.9, tip_mm + 2.0}, {x - 0.9, tip_mm + 2.0}},
                                    no_pen(), solid(Ink::lettering)));
    }
    /// All tiles in little, this one filled; returns its width.
    double key_map(const Vec2& corner) {
        const TileGrid& grid = tile_.grid;
        const double high_mm = (kReach_mm - 1.6) / grid.rows;
        const double wide_mm = high_mm * grid.paper_width_mm / grid.paper_height_mm;
        for (int row = 0; row < grid.rows; ++row) {
            for (int column = 0; column < grid.columns; ++column) {
                const bool here = row == tile_.row && column == tile_.column;
                marks_.emplace_back(box_outline(
                    {corner.x() + column * wide_mm, corner.y() + row * high_mm, wide_mm, high_mm},
                    pen(Ink::lettering, kHair_mm), here ? solid(Ink::lettering) : Fill{}));
            }
        }
        return grid.columns * wide_mm;
    }

    Marks& marks_;
    const TilePlace& tile_;
    const TextMeasure& measure_;
    Box piece_;
};

} // namespace

void draw_margin_masks(Marks& marks, const TilePlace& tile) {
    draw_mask_around(marks, tile.piece(), tile.grid.paper_width_mm, tile.grid.paper_height_mm);
}

void draw_tile_margins(Marks& marks, const TilePlace& tile, const TextMeasure& measure) {
    Margins margins{marks, tile, measure};
    margins.crop_marks();
    margins.glue_strips();
    margins.head();
    margins.rulers();
    margins.caption();
}

} // namespace throwline::sheet
