#include "ui/look/look.h"

#include "ui/look/paper_style.h"
#include "ui/paint/fonts.h"

#include <QApplication>
#include <QFontDatabase>
#include <QFontInfo>
#include <QGuiApplication>
#include <QVariant>

namespace throwline::ui {

namespace {

constexpr QRgb kWarmWhite = 0xFFFBFAF5;
constexpr QRgb kSlate = 0xFF20252B;
constexpr QRgb kPanelLight = 0xFFF3F1E9;
constexpr QRgb kPanelDark = 0xFF282E35;
constexpr QRgb kInk = 0xFF1F2328;
constexpr QRgb kChalk = 0xFFE8E6DF;

QColor of(QRgb rgb) {
    return QColor::fromRgb(rgb);
}

/// Between two colours.
QColor mixed(const QColor& a, const QColor& b, double share) {
    return QColor::fromRgbF(static_cast<float>(a.redF() + (b.redF() - a.redF()) * share),
                            static_cast<float>(a.greenF() + (b.greenF() - a.greenF()) * share),
                            static_cast<float>(a.blueF() + (b.blueF() - a.blueF()) * share));
}

QPalette palette_of(Theme theme) {
    const bool light = theme == Theme::light;
    const QColor ground = panel_ground(theme);
    const QColor paper = floor_ground(theme);
    const QColor ink = of(light ? kInk : kChalk);
    const QColor choice = choice_hue(theme);
    QPalette palette;
    palette.setColor(QPalette::Window, ground);
    palette.setColor(QPalette::WindowText, ink);
    palette.setColor(QPalette::Base, paper);
    palette.setColor(QPalette::AlternateBase, mixed(paper, ground, 0.6));
    palette.setColor(QPalette::Text, ink);
    palette.setColor(QPalette::Button, mixed(ground, ink, 0.06));
    palette.setColor(QPalette::ButtonText, ink);
    palette.setColor(QPalette::BrightText, paper);
    palette.setColor(QPalette::ToolTipBase, paper);
    palette.setColor(QPalette::ToolTipText, ink);
    palette.setColor(QPalette::PlaceholderText, mixed(paper, ink, 0.7));
    palette.setColor(QPalette::Highlight, choice);
    palette.setColor(QPalette::HighlightedText, light ? QColor{Qt::white} : of(kSlate));
    palette.setColor(QPalette::Link, choice);
    palette.setColor(QPalette::LinkVisited, choice);
    palette.setColor(QPalette::Light, mixed(ground, QColor{Qt::white}, light ? 0.7 : 0.10));
    palette.setColor(QPalette::Midlight, mixed(ground, ink, 0.08));
    palette.setColor(QPalette::Mid, seam_hue(theme));
    palette.setColor(QPalette::Dark, mixed(ground, ink, 0.45));
    palette.setColor(QPalette::Shadow, mixed(ground, ink, 0.7));
    const QColor faint = mixed(ground, ink, 0.5);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, faint);
    }
    palette.setColor(QPalette::Disabled, QPalette::Highlight, mixed(ground, ink, 0.2));
    return palette;
}

/// %1 edges, %2 choice, %3 paper, %4 seams, %5 the pen of arrows. What gets a wider edge with the
/// keyboard loses as much of its padding, so that nothing moves.
QString style_sheet(Theme theme) {
    return QStringLiteral(
               "QToolTip { border: 1px solid %1; padding: 3px; }"
               "QMenuBar { border-bottom: 1px solid %4; }"
               "QPushButton { padding: 4px 10px; border: 1px solid %1; border-radius: 2px;"
               " background: %3; }"
               "QPushButton:hover { border-color: %2; }"
               "QPushButton:pressed, QPushButton:checked { border-color: %2; background: %4; }"
               "QPushButton:disabled { border-color: %4; }"
               "QPushButton:focus, QToolButton:focus { border: 2px solid %2; padding: 3px 9px; }"
               "QLineEdit, QComboBox, QSpinBox { padding: 3px; border: 1px solid %1;"
               " border-radius: 2px; background: %3; }"
               "QLineEdit:disabled, QComboBox:disabled, QSpinBox:disabled { border-color: %4; }"
               "QLineEdit:focus, QComboBox:focus, QSpinBox:focus"
               " { border: 2px solid %2; padding: 2px; }"
               "QComboBox::drop-down { subcontrol-origin: padding; border: none; width: 18px;"
               " subcontrol-position: center right; }"
               "QComboBox::down-arrow { image: url(:/icons/arrow-%5.svg); width: 9px;"
               " height: 6px; }"
               "QListView, QTableView, QTreeView, QTextBrowser, QPlainTextEdit"
               " { border: 1px solid %4; padding: 1px; }"
               "QListView:focus, QTableView:focus, QTreeView:focus, QTextBrowser:focus,"
               " QPlainTextEdit:focus { border: 2px solid %2; padding: 0px; }"
               "QSplitter::handle { background: %4; }"
               "QTabBar::tab { padding: 5px 12px; border: none; border-bottom: 3px solid"
               " transparent; }"
               "QTabBar::tab:selected { border-bottom: 3px solid %2; }"
               "QTabBar::tab:focus { border-bottom: 3px dashed %2; }"
               "QTabWidget::pane { border: none; border-top: 1px solid %4; }"
               "QStatusBar::item { border: none; }")
        .arg(edge_hue(theme).name(), choice_hue(theme).name(), floor_ground(theme).name(),
             seam_hue(theme).name(),
             theme == Theme::light ? QStringLiteral("ink") : QStringLiteral("chalk"));
}

/// The desktop's own palette, from before the first theme was put on over it.
QPalette desktop_palette(QApplication& application) {
    constexpr const char* kKept = "throwline-desktop-palette";
    if (!application.property(kKept).isValid()) {
        application.setProperty(kKept, QApplication::palette());
    }
    return application.property(kKept).value<QPalette>();
}

void need_letters() {
    const QFont font = QApplication::font();
    if (!QFontDatabase::hasFamily(QFontInfo{font}.family())) {
        QFont carried{paint::sheet_font(false).family()};
        carried.setPointSizeF(font.pointSizeF());
        QApplication::setFont(carried);
    }
}

Theme theme_wished(ThemeWish wish, const QPalette& desktop) {
    switch (wish) {
    case ThemeWish::as_desktop:
        return theme_of(desktop);
    case ThemeWish::light:
        return Theme::light;
    case ThemeWish::dark:
        return Theme::dark;
    }
    return Theme::light;
}

} // namespace

Theme theme_of(const QPalette& palette) {
    return palette.color(QPalette::Window).lightnessF() < 0.5F ? Theme::dark : Theme::light;
}

void apply_theme(QApplication& application, ThemeWish wish) {
    const Theme theme = theme_wished(wish, desktop_palette(application));
    QApplication::setStyle(new PaperStyle);
    QApplication::setPalette(palette_of(theme));
    need_letters();
    application.setStyleSheet(style_sheet(theme));
}

QColor floor_ground(Theme theme) {
    return of(theme == Theme::light ? kWarmWhite : kSlate);
}

QColor panel_ground(Theme theme) {
    return of(theme == Theme::light ? kPanelLight : kPanelDark);
}

QColor choice_hue(Theme theme) {
    return theme == Theme::light ? QColor::fromRgb(0xFF8A3FA0) : QColor::fromRgb(0xFFD9A3E8);
}

QColor seam_hue(Theme theme) {
    return theme == Theme::light ? QColor::fromRgb(0xFFC9C5B8) : QColor::fromRgb(0xFF454D56);
}

QColor edge_hue(Theme theme) {
    return theme == Theme::light ? QColor::fromRgb(0xFF7F7C71) : QColor::fromRgb(0xFF7D8791);
}

bool may_animate() {
    return QGuiApplication::platformName() != QLatin1String{"offscreen"}
           && QApplication::isEffectEnabled(Qt::UI_General)
           && !qEnvironmentVariableIsSet("THROWLINE_CALM");
}

} // namespace throwline::ui
