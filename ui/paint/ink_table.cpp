#include "ui/paint/ink_table.h"

namespace throwline::paint {

namespace {

struct Hues {
    QRgb light;
    QRgb dark;
};

Hues hues_of(sheet::Ink ink) {
    using sheet::Ink;
    switch (ink) {
    case Ink::built:
    case Ink::standing:
    case Ink::lettering:
        return {0xFF1F2328, 0xFFE8E6DF};
    case Ink::camera:
        return {0xFF0072B2, 0xFF5AB1E6};
    case Ink::lamp:
        return {0xFFE69F00, 0xFFF0B73C};
    case Ink::people:
        return {0xFF009E73, 0xFF3CC79F};
    case Ink::sound:
        return {0xFFCC79A7, 0xFFDD9CC0};
    case Ink::daylight:
        return {0xFF56B4E9, 0xFF8CCBF0};
    case Ink::power:
        return {0xFF5F666D, 0xFFAEB4BA};
    case Ink::error:
        return {0xFFD55E00, 0xFFF0823C};
    case Ink::caution:
        return {0xFFB8860B, 0xFFD9AE45};
    case Ink::note:
        return {0xFF767C82, 0xFFA4A9AE};
    case Ink::dimension:
        return {0xFF4A5157, 0xFFBFC2C0};
    case Ink::ground:
        return {0xFFA9ADA8, 0xFF5A636B};
    case Ink::paper:
        return {0xFFFFFFFF, 0xFF20252B};
    }
    return {};
}

/// Darker than the hue where that would be lost when a copier makes everything black or white.
QRgb line_on_paper(sheet::Ink ink) {
    using sheet::Ink;
    switch (ink) {
    case Ink::lamp:
        return 0xFFA66F00;
    case Ink::sound:
        return 0xFFA8507F;
    case Ink::daylight:
        return 0xFF1F7FB8;
    case Ink::caution:
        return 0xFF8F6800;
    case Ink::note:
        return 0xFF666C72;
    case Ink::built:
    case Ink::standing:
    case Ink::camera:
    case Ink::people:
    case Ink::power:
    case Ink::error:
    case Ink::lettering:
    case Ink::dimension:
    case Ink::ground:
    case Ink::paper:
        break;
    }
    return hues_of(ink).light;
}

} // namespace

QColor line_hue(sheet::Ink ink, Theme theme) {
    return theme == Theme::light ? QColor::fromRgb(line_on_paper(ink)) : hue(ink, theme);
}

QColor hue(sheet::Ink ink, Theme theme) {
    const Hues hues = hues_of(ink);
    return QColor::fromRgb(theme == Theme::light ? hues.light : hues.dark);
}

QColor ground_of_sheet(Theme theme) {
    // White, not the warm white of the screen: paper brings its own.
    return theme == Theme::light ? QColor{Qt::white} : QColor::fromRgb(0xFF20252B);
}

QVector<qreal> dashes_mm(sheet::LinePattern pattern) {
    using sheet::LinePattern;
    switch (pattern) {
    case LinePattern::solid:
        return {};
    case LinePattern::dash:
        return {2.0, 1.2};
    case LinePattern::long_dash:
        return {5.0, 1.5};
    case LinePattern::dot:
        return {0.4, 1.2};
    case LinePattern::dash_dot:
        return {5.0, 1.2, 0.4, 1.2};
    }
    return {};
}

} // namespace throwline::paint
