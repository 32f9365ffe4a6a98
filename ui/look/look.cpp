#include "ui/look/look.h"

#include <QApplication>
#include <QGuiApplication>
#include <QStyle>
#include <QStyleFactory>

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
    palette.setColor(QPalette::PlaceholderText, mixed(paper, ink, 0.62));
    palette.setColor(QPalette::Highlight, choice);
    palette.setColor(QPalette::HighlightedText, light ? QColor{Qt::white} : of(kSlate));
    palette.setColor(QPalette::Link, choice);
    palette.setColor(QPalette::LinkVisited, choice);
    palette.setColor(QPalette::Light, mixed(ground, QColor{Qt::white}, light ? 0.7 : 0.10));
    palette.setColor(QPalette::Midlight, mixed(ground, ink, 0.08));
    palette.setColor(QPalette::Mid, seam_hue(theme));
    palette.setColor(QPalette::Dark, mixed(ground, ink, 0.45));
    palette.setColor(QPalette::Shadow, mixed(ground, ink, 0.7));
    const QColor faint = mixed(ground, ink, 0.45);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, faint);
    }
    palette.setColor(QPalette::Disabled, QPalette::Highlight, mixed(ground, ink, 0.2));
    return palette;
}

QString style_sheet(Theme theme) {
    const QString seam = seam_hue(theme).name();
    const QString choice = choice_hue(theme).name();
    const QString paper = floor_ground(theme).name();
    return QStringLiteral(
               "QToolTip { border: 1px solid %1; padding: 3px; }"
               "QMenuBar { border-bottom: 1px solid %1; }"
               "QPushButton { padding: 4px 10px; border: 1px solid %1; border-radius: 2px;"
               " background: %3; }"
               "QPushButton:hover { border-color: %2; }"
               "QPushButton:pressed, QPushButton:checked { border: 1px solid %2; }"
               "QPushButton:focus, QToolButton:focus { border: 2px solid %2; padding: 3px 9px; }"
               "QLineEdit, QComboBox, QSpinBox { padding: 3px; border: 1px solid %1;"
               " border-radius: 2px; background: %3; }"
               "QLineEdit:focus, QComboBox:focus, QSpinBox:focus, QTextBrowser:focus,"
               " QListView:focus, QTableView:focus, QPlainTextEdit:focus"
               " { border: 2px solid %2; padding: 2px; }"
               "QListView, QTableView, QTextBrowser, QPlainTextEdit { border: 1px solid %1; }"
               "QSplitter::handle { background: %1; }"
               "QTabBar::tab { padding: 5px 12px; border: none; border-bottom: 3px solid"
               " transparent; }"
               "QTabBar::tab:selected { border-bottom: 3px solid %2; }"
               "QTabBar::tab:focus { border-bottom: 3px dashed %2; }"
               "QTabWidget::pane { border: none; border-top: 1px solid %1; }"
               "QStatusBar::item { border: none; }")
        .arg(seam, choice, paper);
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
    // The desktop's own palette, whatever was set here before.
    const Theme theme = theme_wished(wish, application.style()->standardPalette());
    if (QStyle* style = QStyleFactory::create(QStringLiteral("Fusion"))) {
        QApplication::setStyle(style);
    }
    QApplication::setPalette(palette_of(theme));
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

bool may_animate() {
    return QGuiApplication::platformName() != QLatin1String{"offscreen"}
           && QApplication::isEffectEnabled(Qt::UI_General)
           && !qEnvironmentVariableIsSet("THROWLINE_CALM");
}

} // namespace throwline::ui
