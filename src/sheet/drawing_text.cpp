#include "sheet/drawing.h"

#include "base/length_text.h"

#include <fmt/format.h>

namespace throwline::sheet {

namespace {

std::string two(double value) {
    return fixed(value, 2);
}

std::string pen_text(const Pen& pen) {
    return fmt::format("{} {} {} {}", name_of(pen.ink), two(pen.width_mm), name_of(pen.pattern),
                       two(pen.strength));
}

std::string fill_text(const Fill& fill) {
    if (fill.hatch == Hatch::none) {
        return "open";
    }
    return fmt::format("{} {} {}", name_of(fill.ink), name_of(fill.hatch), two(fill.strength));
}

std::string point_text(const Vec2& point) {
    return fmt::format("{},{}", two(point.x()), two(point.y()));
}

/// Tells one picture from another in a golden text (FNV-1a, 32 bits).
std::uint32_t mark_of(const Pixels& pixels) {
    std::uint32_t mark = 2166136261U;
    for (const std::uint8_t byte : pixels.rgb) {
        mark = (mark ^ byte) * 16777619U;
    }
    return mark;
}

struct MarkText {
    std::string operator()(const Path& path) const {
        std::string text = fmt::format("{} | {} | {} |", path.closed ? "outline" : "line",
                                       pen_text(path.pen), fill_text(path.fill));
        for (const Vec2& point : path.points) {
            text += fmt::format(" {}", point_text(point));
        }
        return text;
    }
    std::string operator()(const Circle& circle) const {
        return fmt::format("circle | {} | {} | {} r {}", pen_text(circle.pen),
                           fill_text(circle.fill), point_text(circle.centre),
                           two(circle.radius_mm));
    }
    std::string operator()(const Text& text) const {
        return fmt::format("text | {} {} {}{} turn {} | {} | {}", name_of(text.ink),
                           two(text.height_mm), name_of(text.anchor), text.bold ? " bold" : "",
                           two(text.turn_rad), point_text(text.at), text.text);
    }

    std::string operator()(const Picture& picture) const {
        if (picture.pixels == nullptr) {
            return "picture | none";
        }
        return fmt::format("picture | {} x {} mark {:08x} | {} | {} across {} down {}",
                           picture.pixels->width, picture.pixels->height, mark_of(*picture.pixels),
                           two(picture.strength), point_text(picture.corner),
                           point_text(picture.across), point_text(picture.down));
    }
};

} // namespace

std::string_view name_of(Ink ink) {
    switch (ink) {
    case Ink::built:
        return "built";
    case Ink::standing:
        return "standing";
    case Ink::camera:
        return "camera";
    case Ink::lamp:
        return "lamp";
    case Ink::people:
        return "people";
    case Ink::sound:
        return "sound";
    case Ink::daylight:
        return "daylight";
    case Ink::power:
        return "power";
    case Ink::error:
        return "error";
    case Ink::caution:
        return "caution";
    case Ink::note:
        return "note";
    case Ink::lettering:
        return "lettering";
    case Ink::dimension:
        return "dimension";
    case Ink::ground:
        return "ground";
    case Ink::paper:
        return "paper";
    }
    return "";
}

std::string_view name_of(LinePattern pattern) {
    switch (pattern) {
    case LinePattern::solid:
        return "solid";
    case LinePattern::dash:
        return "dash";
    case LinePattern::long_dash:
        return "long-dash";
    case LinePattern::dot:
        return "dot";
    case LinePattern::dash_dot:
        return "dash-dot";
    }
    return "";
}

std::string_view name_of(Hatch hatch) {
    switch (hatch) {
    case Hatch::none:
        return "none";
    case Hatch::solid:
        return "solid";
    case Hatch::diagonal:
        return "diagonal";
    case Hatch::cross:
        return "cross";
    case Hatch::dots:
        return "dots";
    }
    return "";
}

std::string_view name_of(TextAnchor anchor) {
    switch (anchor) {
    case TextAnchor::start:
        return "start";
    case TextAnchor::middle:
        return "middle";
    case TextAnchor::end:
        return "end";
    }
    return "";
}

std::string as_text(const Drawing& drawing) {
    std::string text = fmt::format("drawing | {} x {} | {} | {}\n", two(drawing.width_mm),
                                   two(drawing.height_mm), drawing.title, drawing.subject);
    for (const Layer& layer : drawing.layers) {
        text += fmt::format("layer | {}{}\n", layer.name,
                            layer.shift_mm.isZero()
                                ? std::string{}
                                : fmt::format(" shift {}", point_text(layer.shift_mm)));
        for (const Mark& mark : layer.marks) {
            text += fmt::format("{}\n", std::visit(MarkText{}, mark));
        }
    }
    return text;
}

} // namespace throwline::sheet
