#pragma once

#include "sheet/board.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Sizes for whoever builds from a drawing: rounded to what a tape is read to, and the lines that
/// carry them.
namespace throwline::sheet {

/// What sizes are rounded to: 1/4 in or 5 mm, which is as near as scenery is set (common practice,
/// no source).
struct TapeStep {
    Length step;
    /// "1/4 in"
    std::string_view words;
};
TapeStep tape_step(UnitSystem units);

/// A size in whole steps, the nearest, half a step away from zero.
std::int64_t steps_of(Length size, UnitSystem units);
/// Sizes in whole steps that add up to the whole steps of their sum: each is rounded down or up to
/// its neighbours, those nearest the next step up (largest remainder method; the first of equals).
std::vector<std::int64_t> spread_steps(std::span<const Length> parts, UnitSystem units);

/// As the crew reads it off the tape: 4'-0 1/4", or metres, 1.20 or 1.205, without a unit.
std::string tape_text(std::int64_t steps, UnitSystem units);
std::string tape_text(Length size, UnitSystem units);

/// A row of sizes along one straight line of the plan.
struct DimensionRow {
    /// Where `stops_m` count from, the direction in which they do, and the side on which the row
    /// stands, square to that; unit vectors.
    Vec2 origin = Vec2::Zero();
    Vec2 along = Vec2::UnitX();
    Vec2 aside = Vec2::UnitY();
    /// Two or more, in rising order.
    std::vector<double> stops_m;
    /// How far aside of the origin the thing measured ends, one a stop: witness lines begin there.
    /// Empty for a row without any.
    std::vector<double> feet_m;
    /// How far aside the row stands, metres, and on top of that on paper; 0 or more.
    double aside_m = 0.0;
    double aside_mm = 0.0;
    /// One a stretch between stops.
    std::vector<std::string> words;
    Ink ink = Ink::dimension;
    LinePattern pattern = LinePattern::solid;
    /// Strokes across the line at its stops; without them the ends are told by what is there.
    bool with_strokes = true;
    /// How far other words keep off the line.
    Crowd crowd = Crowd::never;
};

/// The words of a row whose stretches add up.
std::vector<std::string> chain_words(std::span<const double> stops_m, UnitSystem units);

/// The whole length of a row of several stretches, as a row beyond it.
std::optional<DimensionRow> overall_of(DimensionRow row, UnitSystem units);

/// Distance between two rows that stand beside each other.
inline constexpr double kRowPitch_mm = 7.5;
/// Distance of the first row from what it measures.
inline constexpr double kFirstRow_mm = 7.0;

/// Rows that are laid down together: first all lines, then all words, so that no words stand on a
/// line of another row. Words stand above their line, read from the foot or the right of the sheet;
/// where the stretch is too short or something is in the way, beside it with a leader.
class DimensionRows {
  public:
    explicit DimensionRows(Board& board) : board_{board} {}

    void add(DimensionRow row);
    /// The row, and its overall where it has one.
    void add_with_overall(DimensionRow row, UnitSystem units);
    void lay_down();

  private:
    Board& board_;
    std::vector<DimensionRow> rows_;
};

/// Paper corners of words turned as a Text is, anchored at their middle.
std::vector<Vec2> corners_of_words(const Vec2& at, double width_mm, double height_mm,
                                   double turn_rad);

/// What a single row would cross on paper, to choose between places; nothing where something that
/// must not be lettered over lies under its words.
std::optional<double> crowding_of(Board& board, const DimensionRow& row);

} // namespace throwline::sheet
