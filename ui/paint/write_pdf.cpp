#include "ui/paint/layer_names.h"
#include "ui/paint/paint.h"
#include "ui/paint/painter.h"
#include "ui/paint/pdf_layers.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <algorithm>
#include <fmt/format.h>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

namespace throwline::paint {

namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr double kPointsPerInch = 72.0;
/// Makes one device unit a hundredth of a millimetre.
constexpr int kDotsPerInch = 2540;
/// The first in which a form can be optional content.
constexpr auto kVersionWithLayers = "1.6";
/// Written instead of the time of day, so that the same drawing gives the same bytes.
constexpr auto kFixedDate = "D:20000101000000Z";

double points(double length_mm) {
    return length_mm / kMillimetresPerInch * kPointsPerInch;
}

QPageLayout page_layout(const sheet::Drawing& drawing) {
    const QPageSize size{QSizeF{drawing.width_mm, drawing.height_mm}, QPageSize::Millimeter,
                         QStringLiteral("sheet"), QPageSize::ExactMatch};
    QPageLayout layout{size, QPageLayout::Portrait, QMarginsF{}, QPageLayout::Millimeter};
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

/// A page each; one that is empty for a drawing with nothing on it.
std::vector<const sheet::Layer*> painted_layers(const sheet::Drawing& drawing) {
    std::vector<const sheet::Layer*> layers = layers_with_marks(drawing);
    if (layers.empty()) {
        layers.push_back(nullptr);
    }
    return layers;
}

/// One page a layer.
Result<QByteArray> painted(std::span<const sheet::Drawing> pages, const MayGoOn& may_go_on) {
    QByteArray bytes;
    QBuffer buffer{&bytes};
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer{&buffer};
    writer.setResolution(kDotsPerInch);
    writer.setTitle(QString::fromStdString(pages.front().title));
    writer.setCreator(QStringLiteral("Throwline"));
    writer.setPageLayout(page_layout(pages.front()));
    QPainter painter;
    if (!painter.begin(&writer)) {
        return failure("the PDF cannot be painted");
    }
    bool first = true;
    std::size_t pages_done = 0;
    for (const sheet::Drawing& drawing : pages) {
        if (may_go_on && !may_go_on(pages_done++)) {
            return failure("it was stopped");
        }
        writer.setPageLayout(page_layout(drawing));
        for (const sheet::Layer* layer : painted_layers(drawing)) {
            if (!first) {
                writer.newPage();
            }
            first = false;
            painter.save();
            painter.scale(kDotsPerInch / kMillimetresPerInch, kDotsPerInch / kMillimetresPerInch);
            if (layer != nullptr) {
                paint_layer(painter, *layer);
            }
            painter.restore();
        }
    }
    painter.end();
    return bytes;
}

/// Qt rounds page boxes to whole points; the drawing hangs from the top left corner, so the true
/// box is cut from there.
QPDFObjectHandle exact_box(QPDFObjectHandle page, const sheet::Drawing& drawing) {
    const auto rounded = page.getKey("/MediaBox").getArrayAsRectangle();
    return QPDFObjectHandle::parse(fmt::format("[ 0 {:.3f} {:.3f} {:.3f} ]",
                                               rounded.ury - points(drawing.height_mm),
                                               points(drawing.width_mm), rounded.ury));
}

/// Lays the layers of each drawing, which come as pages of their own, on one page.
void stack_layers(QPDF& pdf, std::span<const sheet::Drawing> drawings) {
    QPDFPageDocumentHelper document{pdf};
    std::vector<QPDFPageObjectHelper> pages = document.getAllPages();
    PdfLayers layers{pdf};
    std::size_t next = 0;
    for (const sheet::Drawing& drawing : drawings) {
        std::vector<std::string> names;
        for (const sheet::Layer* layer : layers_with_marks(drawing)) {
            names.push_back(shown_name(*layer));
        }
        const std::size_t count = std::max<std::size_t>(names.size(), 1);
        const std::span own{pages.data() + next, count};
        for (QPDFPageObjectHelper& page : own) {
            QPDFObjectHandle object = page.getObjectHandle();
            object.replaceKey("/MediaBox", exact_box(object, drawing));
        }
        document.addPage(layers.stacked(own, names), false);
        for (QPDFPageObjectHelper& page : own) {
            document.removePage(page);
        }
        next += count;
    }
    layers.list();
}

std::string with_exact_pages(const QByteArray& bytes, std::span<const sheet::Drawing> pages) {
    QPDF pdf;
    pdf.processMemoryFile("sheet", bytes.constData(), static_cast<std::size_t>(bytes.size()));
    stack_layers(pdf, pages);
    // ISO 32000-1:2008, table 150: what the print dialogue of a viewer starts with.
    pdf.getRoot().replaceKey("/ViewerPreferences",
                             QPDFObjectHandle::parse("<< /PrintScaling /None /DisplayDocTitle true "
                                                     "/PickTrayByPDFSize true >>"));
    QPDFObjectHandle info = pdf.getTrailer().getKey("/Info");
    info.replaceKey("/CreationDate", QPDFObjectHandle::newString(kFixedDate));
    if (!pages.front().subject.empty()) {
        info.replaceKey("/Subject", QPDFObjectHandle::newUnicodeString(pages.front().subject));
    }
    QPDFWriter writer{pdf};
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.setMinimumPDFVersion(kVersionWithLayers);
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    const unsigned char* begin = buffer->getBuffer();
    return {begin, begin + buffer->getSize()};
}

} // namespace

Result<std::string> rendered_pdf(const PaintSession& /*session*/,
                                 std::span<const sheet::Drawing> pages, const MayGoOn& may_go_on) {
    if (pages.empty()) {
        return failure("there is no sheet to write");
    }
    const Result<QByteArray> bytes = painted(pages, may_go_on);
    if (!bytes) {
        return tl::unexpected{bytes.error()};
    }
    return with_exact_pages(*bytes, pages);
}

Result<std::string> rendered_pdf(const PaintSession& session, const sheet::Drawing& drawing) {
    return rendered_pdf(session, std::span{&drawing, 1});
}

} // namespace throwline::paint
