#include "ui/sheets/print_pages.h"

#include "ui/paint/painter.h"

#include <QObject>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPrinter>
#include <algorithm>

namespace throwline::ui {

namespace {

constexpr double kMillimetresPerInch = 25.4;

QPageLayout layout_of(const sheet::Drawing& page) {
    const bool wide = page.width_mm > page.height_mm;
    const QSizeF upright{std::min(page.width_mm, page.height_mm),
                         std::max(page.width_mm, page.height_mm)};
    QPageLayout layout{
        QPageSize{upright, QPageSize::Millimeter, {}, QPageSize::FuzzyOrientationMatch},
        wide ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF{},
        QPageLayout::Millimeter};
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

} // namespace

void set_up(QPrinter& printer, const sheet::Drawing& page) {
    printer.setFullPage(true);
    printer.setPageLayout(layout_of(page));
    printer.setDocName(QString::fromStdString(page.title));
}

QString print_pages(QPrinter& printer, std::span<const sheet::Drawing> pages,
                    const paint::MayGoOn& may_go_on) {
    QPainter painter;
    bool is_first = true;
    std::size_t pages_done = 0;
    for (const sheet::Drawing& page : pages) {
        if (may_go_on && !may_go_on(pages_done)) {
            // No printer takes painted pages back: they are sent when the painter ends.
            return pages_done == 0 ? QObject::tr("Not printed: it was stopped.")
                                   : QObject::tr("Stopped: %1 of %2 pages went to the printer.")
                                         .arg(pages_done)
                                         .arg(pages.size());
        }
        ++pages_done;
        if (is_first) {
            set_up(printer, page);
        } else {
            printer.setPageLayout(layout_of(page));
        }
        if (is_first ? !painter.begin(&printer) : !printer.newPage()) {
            return QObject::tr("The printer did not take the pages.");
        }
        is_first = false;
        painter.save();
        painter.scale(printer.resolution() / kMillimetresPerInch,
                      printer.resolution() / kMillimetresPerInch);
        paint::paint_drawing(painter, page);
        painter.restore();
    }
    painter.end();
    return QObject::tr("Sent to the printer.");
}

} // namespace throwline::ui
