#pragma once

#include "base/polygon.h"
#include "base/quantity.h"

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// The display list that screen, printer, PDF, SVG and PNG all paint. Paper millimetres, x right, y
/// down from the top left corner of the sheet.
namespace throwline::sheet {

/// What a mark means; hue, pattern and weight follow from it and from nothing else.
enum class Ink {
    built,
    standing,
    camera,
    lamp,
    people,
    sound,
    daylight,
    power,
    error,
    caution,
    note,
    lettering,
    dimension,
    ground,
    paper
};

enum class LinePattern { solid, dash, long_dash, dot, dash_dot };

struct Pen {
    Ink ink = Ink::built;
    double width_mm = 0.25;
    LinePattern pattern = LinePattern::solid;
    /// 0 none .. 1 full
    double strength = 1.0;

    bool operator==(const Pen&) const = default;
};

enum class Hatch { none, solid, diagonal, cross, dots };

struct Fill {
    Ink ink = Ink::paper;
    Hatch hatch = Hatch::none;
    double strength = 1.0;

    bool operator==(const Fill&) const = default;
};

/// An open line, or a closed outline with a fill.
struct Path {
    std::vector<Vec2> points;
    bool closed = false;
    Pen pen;
    Fill fill;
};

struct Circle {
    Vec2 centre = Vec2::Zero();
    double radius_mm = 1.0;
    Pen pen;
    Fill fill;
};

enum class TextAnchor { start, middle, end };

struct Text {
    std::string text;
    /// On the baseline.
    Vec2 at = Vec2::Zero();
    /// Height of capitals.
    double height_mm = 2.5;
    TextAnchor anchor = TextAnchor::start;
    /// Anticlockwise on the page.
    double turn_rad = 0.0;
    bool bold = false;
    Ink ink = Ink::lettering;
};

/// Pixels, row by row from the top left corner; red, green, blue, a byte each.
struct Pixels {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgb;

    bool operator==(const Pixels&) const = default;
};

/// A picture laid on the sheet: its top left corner, and where its whole width and height reach
/// from there, so that it can be turned and mirrored.
struct Picture {
    std::shared_ptr<const Pixels> pixels;
    Vec2 corner = Vec2::Zero();
    Vec2 across = Vec2::UnitX();
    Vec2 down = Vec2::UnitY();
    /// 0 invisible .. 1 full
    double strength = 1.0;
};

using Mark = std::variant<Path, Circle, Text, Picture>;

/// Marks that can be shown or hidden together, painted in order.
struct Layer {
    std::string name;
    std::vector<Mark> marks;
    /// Added to every place in it when it is painted, so that a piece of a large sheet keeps its
    /// dashes and hatches where they were.
    Vec2 shift_mm = Vec2::Zero();
};

/// How a drawing that is larger than the paper is to be cut: rectangles of equal size, row by row
/// from the top left, each overlapping its neighbours.
struct TileGrid {
    int columns = 1;
    int rows = 1;
    /// Of the paper that each tile goes on, the way round it is used, and what is kept free around
    /// the tile's piece of the drawing.
    double paper_width_mm = 0.0;
    double paper_height_mm = 0.0;
    double margin_mm = 12.0;
    double overlap_mm = 10.0;

    double piece_width_mm() const { return paper_width_mm - 2.0 * margin_mm; }
    double piece_height_mm() const { return paper_height_mm - 2.0 * margin_mm; }
    /// Size of the drawing that exactly fills the tiles.
    double whole_width_mm() const { return columns * (piece_width_mm() - overlap_mm) + overlap_mm; }
    double whole_height_mm() const { return rows * (piece_height_mm() - overlap_mm) + overlap_mm; }
};

/// What the next larger scale would take.
struct LargerScale {
    std::string scale;
    /// "A1 landscape": the smallest of the same family; empty when it fits none.
    std::string paper;
    /// How many tiles of the paper asked for; 0 when no hundred of them would do.
    int tiles = 0;
};

struct Drawing {
    std::string title;
    /// What the sheet shows, for the properties of a written file.
    std::string subject;
    /// "1:50", and "A3 landscape"; no scale where nothing is true to one.
    std::string scale;
    std::string paper;
    double width_mm = 297.0;
    double height_mm = 210.0;
    std::vector<Layer> layers;
    /// Set when it is larger than the paper asked for.
    std::optional<TileGrid> tiles;
    /// What stands on each of its tiles: title, scale, state of the plan's file.
    std::string caption;
    /// Errors that its panel had no room for; the sheet of findings has them.
    int errors_left_out = 0;
    /// Nearest first; only for drawings that tell it.
    std::vector<LargerScale> larger;
};

/// How wide a text is; the painter's font at run time, a fixed table in tests.
class TextMeasure {
  public:
    virtual ~TextMeasure() = default;
    /// Width in mm of a text whose capitals are `height_mm` high.
    virtual double width_mm(const std::string& text, double height_mm, bool bold) const = 0;
};

std::string_view name_of(Ink ink);
std::string_view name_of(LinePattern pattern);
std::string_view name_of(Hatch hatch);
std::string_view name_of(TextAnchor anchor);

/// One primitive a line, two decimals, in order: what golden tests compare.
std::string as_text(const Drawing& drawing);

} // namespace throwline::sheet
