#pragma once

#include "base/polygon.h"
#include "base/quantity.h"

#include <array>
#include <memory>
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

using Mark = std::variant<Path, Circle, Text>;

/// Marks that can be shown or hidden together, painted in order.
struct Layer {
    std::string name;
    std::vector<Mark> marks;
};

struct Drawing {
    std::string title;
    /// What the sheet shows, for the properties of a written file.
    std::string subject;
    double width_mm = 297.0;
    double height_mm = 210.0;
    std::vector<Layer> layers;
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
