#include "sheet/written_sheet.h"

#include <Eigen/Geometry>
#include <charconv>
#include <cstring>
#include <pugixml.hpp>
#include <stdexcept>
#include <string_view>

namespace throwline::test {

namespace {

using Placing = Eigen::Affine2d;

/// All numbers in a text, whatever stands between them.
std::vector<double> numbers_of(std::string_view text) {
    std::vector<double> numbers;
    const char* at = text.data();
    const char* end = at + text.size();
    while (at < end) {
        double value = 0.0;
        const auto [next, problem] = std::from_chars(at, end, value);
        at = problem == std::errc{} ? next : at + 1;
        if (problem == std::errc{}) {
            numbers.push_back(value);
        }
    }
    return numbers;
}

Placing placing_of(const pugi::xml_node& node) {
    Placing placing = Placing::Identity();
    const std::string_view text = node.attribute("transform").value();
    if (text.empty()) {
        return placing;
    }
    const std::vector<double> n = numbers_of(text);
    if (!text.starts_with("matrix(") || n.size() != 6) {
        throw std::runtime_error{"a transform that is no matrix"};
    }
    placing.matrix() << n[0], n[2], n[4], n[1], n[3], n[5], 0.0, 0.0, 1.0;
    return placing;
}

void add_points(WrittenSheet& sheet, const Placing& placing, const std::vector<double>& numbers,
                bool closed) {
    const std::size_t count = numbers.size() / 2;
    const auto point = [&](std::size_t i) {
        return Vec2{placing * Vec2{numbers[2 * i], numbers[2 * i + 1]}};
    };
    for (std::size_t i = 0; i + 1 < count; ++i) {
        sheet.strokes.push_back({point(i), point(i + 1)});
    }
    if (closed && count > 1) {
        sheet.strokes.push_back({point(count - 1), point(0)});
    }
}

void add_node(WrittenSheet& sheet, const pugi::xml_node& node, const Placing& around) {
    const Placing placing = around * placing_of(node);
    const std::string_view name = node.name();
    if (name == "polyline" || name == "polygon") {
        add_points(sheet, placing, numbers_of(node.attribute("points").value()), name == "polygon");
    } else if (name == "path" && std::strchr(node.attribute("d").value(), 'C') == nullptr) {
        add_points(sheet, placing, numbers_of(node.attribute("d").value()), false);
    }
    for (const pugi::xml_node& child : node.children()) {
        add_node(sheet, child, placing);
    }
}

double millimetres_of(const pugi::xml_attribute& attribute) {
    const std::string_view text = attribute.value();
    if (!text.ends_with("mm")) {
        throw std::runtime_error{"a picture whose size is not in millimetres"};
    }
    return numbers_of(text).at(0);
}

} // namespace

WrittenSheet sheet_of_svg(const std::string& text) {
    pugi::xml_document document;
    const pugi::xml_parse_result parsed = document.load_buffer(text.data(), text.size());
    if (!parsed) {
        throw std::runtime_error{parsed.description()};
    }
    const pugi::xml_node root = document.child("svg");
    WrittenSheet sheet;
    sheet.width_mm = millimetres_of(root.attribute("width"));
    sheet.height_mm = millimetres_of(root.attribute("height"));
    const std::vector<double> box = numbers_of(root.attribute("viewBox").value());
    // Users of the picture stretch the view box to its size.
    Placing on_paper = Placing::Identity();
    on_paper.scale(Vec2{sheet.width_mm / box.at(2), sheet.height_mm / box.at(3)});
    on_paper.translate(Vec2{-box.at(0), -box.at(1)});
    add_node(sheet, root, on_paper);
    return sheet;
}

} // namespace throwline::test
