#include "ui/paint/paint.h"
#include "ui/paint/painter.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <cmath>
#include <fmt/format.h>
// Makes qpdf's headers use std::shared_ptr throughout.
#define POINTERHOLDER_TRANSITION 4
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

namespace throwline::paint {

namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr double kPointsPerInch = 72.0;
/// Makes one device unit a hundredth of a millimetre.
constexpr int kDotsPerInch = 2540;
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

Result<QByteArray> painted(std::span<const sheet::Drawing> pages) {
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
    for (const sheet::Drawing& drawing : pages) {
        if (!first) {
            writer.setPageLayout(page_layout(drawing));
            writer.newPage();
        }
        first = false;
        painter.save();
        painter.scale(kDotsPerInch / kMillimetresPerInch, kDotsPerInch / kMillimetresPerInch);
        paint_drawing(painter, drawing);
        painter.restore();
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

std::string with_exact_pages(const QByteArray& bytes, std::span<const sheet::Drawing> pages) {
    QPDF pdf;
    pdf.processMemoryFile("sheet", bytes.constData(), static_cast<std::size_t>(bytes.size()));
    auto found = QPDFPageDocumentHelper{pdf}.getAllPages();
    for (std::size_t i = 0; i < pages.size(); ++i) {
        QPDFObjectHandle page = found.at(i).getObjectHandle();
        page.replaceKey("/MediaBox", exact_box(page, pages[i]));
    }
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
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    const unsigned char* begin = buffer->getBuffer();
    return {begin, begin + buffer->getSize()};
}

} // namespace

Result<std::string> rendered_pdf(const PaintSession& /*session*/,
                                 std::span<const sheet::Drawing> pages) {
    if (pages.empty()) {
        return failure("there is no sheet to write");
    }
    const Result<QByteArray> bytes = painted(pages);
    if (!bytes) {
        return tl::unexpected{bytes.error()};
    }
    return with_exact_pages(*bytes, pages);
}

Result<std::string> rendered_pdf(const PaintSession& session, const sheet::Drawing& drawing) {
    return rendered_pdf(session, std::span{&drawing, 1});
}

} // namespace throwline::paint
