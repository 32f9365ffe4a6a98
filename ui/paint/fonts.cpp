#include "ui/paint/fonts.h"

#include <QFontDatabase>
#include <QFontMetricsF>
#include <QStringList>
#include <stdexcept>

namespace throwline::paint {

namespace {

QString family() {
    return QStringLiteral("DejaVu Sans");
}

} // namespace

void load_sheet_fonts() {
    for (const QString& file : {QStringLiteral(":/fonts/DejaVuSans.ttf"),
                                QStringLiteral(":/fonts/DejaVuSans-Bold.ttf")}) {
        const int id = QFontDatabase::addApplicationFont(file);
        if (id < 0 || !QFontDatabase::applicationFontFamilies(id).contains(family())) {
            throw std::runtime_error{"the sheet font " + file.toStdString() + " does not load"};
        }
    }
}

QFont sheet_font(bool bold) {
    QFont font{family()};
    font.setPixelSize(kSetSize_px);
    font.setBold(bold);
    // Advances must not depend on the resolution, nor glyphs on what else is installed.
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(QFont::StyleStrategy(QFont::NoFontMerging | QFont::PreferOutline));
    return font;
}

double capital_height_px(bool bold) {
    return QFontMetricsF{sheet_font(bold)}.capHeight();
}

double FontMeasure::width_mm(const std::string& text, double height_mm, bool bold) const {
    const QFontMetricsF metrics{sheet_font(bold)};
    return metrics.horizontalAdvance(QString::fromStdString(text)) * height_mm
           / metrics.capHeight();
}

} // namespace throwline::paint
