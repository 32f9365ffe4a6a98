#include "ui/paint/layer_names.h"
#include "ui/paint/paint.h"
#include "ui/paint/painter.h"

#include <QBuffer>
#include <QPainter>
#include <QSvgGenerator>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <stdexcept>
#include <string_view>

namespace throwline::paint {

namespace {

/// Makes the size of the picture, which Qt keeps in whole dots, exact to a hundredth of a
/// millimetre.
constexpr int kDotsPerInch = 2540;
constexpr double kDotsPerMillimetre = 100.0;
constexpr std::string_view kHeadEnd = "</defs>";
constexpr std::string_view kFoot = "</svg>";

/// Qt writes titles as they are.
QString escaped(const std::string& text) {
    return QString::fromStdString(text).toHtmlEscaped();
}

/// XML has no way to write control characters other than these three (XML 1.0, 2.2).
void drop_control_characters(std::string& xml) {
    std::erase_if(xml,
                  [](char c) { return c >= 0 && c < ' ' && c != '\t' && c != '\n' && c != '\r'; });
}

/// One layer, or the bare sheet, as a picture of its own.
Result<std::string> painted(const sheet::Drawing& drawing, const sheet::Layer* layer) {
    QByteArray bytes;
    QBuffer buffer{&bytes};
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(kDotsPerInch);
    generator.setSize(QSize{static_cast<int>(std::lround(drawing.width_mm * kDotsPerMillimetre)),
                            static_cast<int>(std::lround(drawing.height_mm * kDotsPerMillimetre))});
    generator.setViewBox(QRectF{0.0, 0.0, drawing.width_mm, drawing.height_mm});
    generator.setTitle(escaped(drawing.title));
    generator.setDescription(escaped(drawing.subject));
    QPainter painter;
    if (!painter.begin(&generator)) {
        return failure("the SVG cannot be painted");
    }
    if (layer == nullptr) {
        painter.fillRect(QRectF{0.0, 0.0, drawing.width_mm, drawing.height_mm},
                         ground_of_sheet(Theme::light));
    } else {
        paint_layer(painter, *layer);
    }
    painter.end();
    return bytes.toStdString();
}

/// What Qt wrote between its head, which is the same for all layers, and its foot.
std::string_view body_of(std::string_view svg) {
    const std::size_t from = svg.find(kHeadEnd);
    const std::size_t to = svg.rfind(kFoot);
    if (from == std::string_view::npos || to == std::string_view::npos) {
        throw std::logic_error{"an SVG picture without head or foot"};
    }
    return svg.substr(from + kHeadEnd.size(), to - from - kHeadEnd.size());
}

/// "sound" as an XML name, told from earlier layers of the same name by a number.
std::string id_of(const std::string& name, std::map<std::string, int>& used) {
    std::string id = "layer-";
    for (const char c : name) {
        const bool plain =
            (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        id += plain ? c : '-';
    }
    const int times = ++used[id];
    return times == 1 ? id : fmt::format("{}-{}", id, times);
}

} // namespace

Result<std::string> rendered_svg(const PaintSession& /*session*/, const sheet::Drawing& drawing) {
    Result<std::string> svg = painted(drawing, nullptr);
    if (!svg) {
        return svg;
    }
    std::map<std::string, int> used;
    std::string groups;
    for (const sheet::Layer* layer : layers_with_marks(drawing)) {
        const Result<std::string> picture = painted(drawing, layer);
        if (!picture) {
            return picture;
        }
        groups += fmt::format("<g id=\"{}\">\n<title>{}</title>{}</g>\n", id_of(layer->name, used),
                              escaped(shown_name(*layer)).toStdString(), body_of(*picture));
    }
    svg->insert(svg->rfind(kFoot), groups);
    drop_control_characters(*svg);
    return svg;
}

} // namespace throwline::paint
