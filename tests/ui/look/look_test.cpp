/// Everything can be read and told apart in both themes.

#include "ui/look/look.h"

#include "ui/look/paper_style.h"

#include <QApplication>
#include <QCheckBox>
#include <QImage>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QStyleOptionButton>
#include <QTest>
#include <QVBoxLayout>
#include <cmath>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

/// WCAG 2.1, 1.4.3 and 1.4.11.
constexpr double kLeastForText = 4.5;
constexpr double kLeastForGraphics = 3.0;

/// WCAG 2.1, "relative luminance".
double luminance(const QColor& colour) {
    const auto linear = [](float share) {
        const auto s = static_cast<double>(share);
        return s <= 0.03928 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF())
           + 0.0722 * linear(colour.blueF());
}

/// WCAG 2.1, "contrast ratio".
double contrast(const QColor& a, const QColor& b) {
    const double lighter = std::max(luminance(a), luminance(b));
    const double darker = std::min(luminance(a), luminance(b));
    return (lighter + 0.05) / (darker + 0.05);
}

class Look : public testing::TestWithParam<ThemeWish> {
  protected:
    void SetUp() override { apply_theme(*qApp, GetParam()); }
    Theme theme() const { return GetParam() == ThemeWish::dark ? Theme::dark : Theme::light; }
};

INSTANTIATE_TEST_SUITE_P(BothThemes, Look, testing::Values(ThemeWish::light, ThemeWish::dark));

TEST_P(Look, WearsTheThemeThatIsWished) {
    EXPECT_EQ(theme_of(QApplication::palette()), theme());
}

TEST_P(Look, LettersStandOutFromWhatIsBehindThem) {
    const QPalette palette = QApplication::palette();
    struct Pair {
        QPalette::ColorRole letters;
        QPalette::ColorRole ground;
    };
    for (const Pair pair : {Pair{QPalette::WindowText, QPalette::Window},
                            {QPalette::Text, QPalette::Base},
                            {QPalette::Text, QPalette::AlternateBase},
                            {QPalette::ButtonText, QPalette::Button},
                            {QPalette::ToolTipText, QPalette::ToolTipBase},
                            {QPalette::PlaceholderText, QPalette::Base},
                            {QPalette::HighlightedText, QPalette::Highlight},
                            {QPalette::Link, QPalette::Base},
                            {QPalette::Link, QPalette::Window}}) {
        EXPECT_GE(contrast(palette.color(pair.letters), palette.color(pair.ground)), kLeastForText)
            << pair.letters << " on " << pair.ground;
    }
}

TEST_P(Look, EdgesAndChoicesStandOutFromBothGrounds) {
    for (const QColor& ground : {floor_ground(theme()), panel_ground(theme())}) {
        EXPECT_GE(contrast(edge_hue(theme()), ground), kLeastForGraphics);
        EXPECT_GE(contrast(choice_hue(theme()), ground), kLeastForGraphics);
    }
}

/// Marks are drawn on the floor, numbers of findings in the lists.
TEST_P(Look, InksStandOutFromTheFloor) {
    using sheet::Ink;
    for (const Ink ink :
         {Ink::built, Ink::standing, Ink::camera, Ink::lamp, Ink::people, Ink::sound, Ink::daylight,
          Ink::power, Ink::error, Ink::caution, Ink::note}) {
        EXPECT_GE(contrast(paint::line_hue(ink, theme()), floor_ground(theme())), kLeastForGraphics)
            << sheet::name_of(ink);
    }
    EXPECT_GE(contrast(paint::hue(Ink::lettering, theme()), floor_ground(theme())), kLeastForText);
}

int pixels_of(const QImage& picture, const QColor& colour) {
    int count = 0;
    for (int y = 0; y < picture.height(); ++y) {
        for (int x = 0; x < picture.width(); ++x) {
            count += picture.pixelColor(x, y) == colour ? 1 : 0;
        }
    }
    return count;
}

QImage picture_of(QWidget& widget) {
    return widget.grab().toImage().convertToFormat(QImage::Format_RGB32);
}

TEST_P(Look, ShowsWhatHasTheKeyboard) {
    QWidget window;
    QVBoxLayout rows{&window};
    QPushButton press{QStringLiteral("Press")};
    QLineEdit type;
    QCheckBox tick{QStringLiteral("Tick")};
    QRadioButton choose{QStringLiteral("Choose")};
    QWidget* const controls[]{&press, &type, &tick, &choose};
    for (QWidget* control : controls) {
        rows.addWidget(control);
    }
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    for (QWidget* control : controls) {
        window.setFocus();
        const int before = pixels_of(picture_of(*control), choice_hue(theme()));
        control->setFocus(Qt::TabFocusReason);
        const int after = pixels_of(picture_of(*control), choice_hue(theme()));
        EXPECT_GT(after, before + 20) << control->metaObject()->className();
    }
}

TEST_P(Look, TicksCanBeToldFromEmptyBoxesWithoutColour) {
    QCheckBox box;
    const QImage empty = picture_of(box);
    box.setChecked(true);
    const QImage ticked = picture_of(box);
    const QColor ink = QApplication::palette().color(QPalette::Text);
    EXPECT_EQ(pixels_of(empty, ink), 0);
    EXPECT_GT(pixels_of(ticked, ink), 5);
    EXPECT_GT(pixels_of(empty, edge_hue(theme())), 20);
}

TEST(LookOfTheDesktop, IsFoundAgainAfterAnotherTheme) {
    apply_theme(*qApp, ThemeWish::as_desktop);
    const Theme desktop = theme_of(QApplication::palette());
    apply_theme(*qApp, desktop == Theme::light ? ThemeWish::dark : ThemeWish::light);
    apply_theme(*qApp, ThemeWish::as_desktop);
    EXPECT_EQ(theme_of(QApplication::palette()), desktop);
}

TEST(LookOfTheDesktop, GrowsWithTheLetters) {
    apply_theme(*qApp, ThemeWish::light);
    QCheckBox box{QStringLiteral("Tick")};
    const QSize usual = box.sizeHint();
    QFont large = box.font();
    large.setPointSizeF(large.pointSizeF() * 2.0);
    box.setFont(large);
    QStyleOptionButton option;
    option.initFrom(&box);
    const int side_px = box.style()->pixelMetric(QStyle::PM_IndicatorWidth, &option, &box);
    EXPECT_GT(side_px, 18);
    EXPECT_GT(box.sizeHint().height(), usual.height());
}

} // namespace
} // namespace throwline::ui
