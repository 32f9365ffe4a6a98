#pragma once

#include "base/vec.h"

#include <string>
#include <vector>

/// What other people's libraries find in the files that sheets are written to.
namespace throwline::test {

/// A straight part of a line, millimetres from the top left corner of the page, y down.
struct Stroke {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();

    double length_mm() const { return (to - from).norm(); }
};

struct WrittenSheet {
    double width_mm = 0.0;
    double height_mm = 0.0;
    std::vector<Stroke> strokes;
};

/// The pages of a PDF, with the marks of their forms, as qpdf reads it.
std::vector<WrittenSheet> sheets_of_pdf(const std::string& bytes);

/// An SVG picture, as pugixml reads it: its lines, outlines and straight paths. Throws
/// std::runtime_error when it is not well-formed.
WrittenSheet sheet_of_svg(const std::string& text);

/// The stroke whose ends are nearest to two places, either way round. At least one must be there.
Stroke nearest_stroke(const std::vector<Stroke>& strokes, const Vec2& from, const Vec2& to);

} // namespace throwline::test
