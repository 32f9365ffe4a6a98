/// On a small screen every word has room, in both themes, both unit systems and where numbers are
/// written longer.

#include "ui/window/places.h"
#include "ui/window/shown_window.h"

#include <QAbstractButton>
#include <QAbstractScrollArea>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QStyle>
#include <QStyleOptionFrame>
#include <QTabBar>
#include <QTextDocument>
#include <QToolButton>
#include <cmath>

namespace throwline::ui {
namespace {

/// How a crew has set up its desktop.
struct Desktop {
    const char* name;
    ThemeWish theme;
    UnitSystem units;
    QLocale::Language language;
};

using Case = std::tuple<Place, Desktop>;

class RoomForWords : public testing::TestWithParam<Case> {
  protected:
    void SetUp() override {
        const auto& [of, desktop] = GetParam();
        QLocale::setDefault(QLocale{desktop.language});
        apply_theme(*qApp, desktop.theme);
        shown = std::make_unique<ShownWindow>();
        shown->open_demo(0);
        if ((*shown)->desk().plan()->units != desktop.units) {
            (*shown)->desk().toggle_units();
        }
        ASSERT_TRUE(shown->settles());
        place = of.open(**shown);
        ASSERT_NE(place, nullptr);
        ASSERT_TRUE(support::came_to([&] { return place->isVisible(); }));
        QApplication::processEvents();
    }
    void TearDown() override {
        shown.reset();
        QLocale::setDefault(QLocale::c());
        apply_theme(*qApp, ThemeWish::light);
    }

    std::unique_ptr<ShownWindow> shown;
    QWidget* place = nullptr;
};

constexpr Desktop kDesktops[]{
    {"LightMetricGerman", ThemeWish::light, UnitSystem::metric, QLocale::German},
    {"DarkImperialFrench", ThemeWish::dark, UnitSystem::imperial, QLocale::French}};

INSTANTIATE_TEST_SUITE_P(EveryPlace, RoomForWords,
                         testing::Combine(testing::ValuesIn(places()),
                                          testing::ValuesIn(kDesktops)),
                         [](const auto& of) {
                             return std::string{std::get<0>(of.param).name} + "On"
                                    + std::get<1>(of.param).name;
                         });

/// Of letters that lean or stand over; no letter is lost by it.
constexpr int kSlack_px = 1;

QString plain(const QString& words) {
    QTextDocument read;
    read.setHtml(words);
    return Qt::mightBeRichText(words) ? read.toPlainText() : words;
}

/// What an area shows in part is scrolled to, unless it never scrolls that way.
bool is_scrolled_to(const QWidget& widget, bool across) {
    for (const QWidget* at = widget.parentWidget(); at != nullptr && !at->isWindow();
         at = at->parentWidget()) {
        const auto* area = qobject_cast<const QAbstractScrollArea*>(at);
        if (area != nullptr
            && (across ? area->horizontalScrollBarPolicy() : area->verticalScrollBarPolicy())
                   != Qt::ScrollBarAlwaysOff) {
            return true;
        }
    }
    return false;
}

/// How much of a widget nothing around it cuts off.
QSize room_of(const QWidget& widget) {
    QSize room = widget.size();
    for (const QWidget* at = widget.parentWidget(); at != nullptr; at = at->parentWidget()) {
        const QPoint corner = widget.mapTo(at, QPoint{});
        if (!is_scrolled_to(widget, true)) {
            room.setWidth(std::min(room.width(), at->width() - corner.x()));
        }
        if (!is_scrolled_to(widget, false)) {
            room.setHeight(std::min(room.height(), at->height() - corner.y()));
        }
        if (at->isWindow()) {
            break;
        }
    }
    return room;
}

void expect_label_has_room(const QLabel& label) {
    if (label.text().isEmpty() || label.sizePolicy().horizontalPolicy() == QSizePolicy::Ignored) {
        return;
    }
    const QSize room = room_of(label);
    if (label.wordWrap()) {
        EXPECT_GE(room.height() + kSlack_px, label.heightForWidth(label.width()))
            << "label \"" << plain(label.text()).toStdString() << "\"";
        // A word that is wider than the label is cut.
        const int margins = label.contentsMargins().left() + label.contentsMargins().right()
                            + 2 * label.margin() + 2 * label.frameWidth();
        for (const QString& word : plain(label.text()).simplified().split(QLatin1Char{' '})) {
            EXPECT_GE(room.width() - margins + kSlack_px,
                      label.fontMetrics().horizontalAdvance(word))
                << "word \"" << word.toStdString() << "\"";
        }
    } else {
        EXPECT_GE(room.width() + kSlack_px, label.sizeHint().width())
            << "label \"" << plain(label.text()).toStdString() << "\"";
        EXPECT_GE(room.height() + kSlack_px, label.fontMetrics().height())
            << "label \"" << plain(label.text()).toStdString() << "\"";
    }
}

void expect_button_has_room(const QAbstractButton& button) {
    const QSize room = room_of(button);
    EXPECT_GE(room.width() + kSlack_px, button.sizeHint().width())
        << "button \"" << button.text().toStdString() << "\"";
    EXPECT_GE(room.height() + kSlack_px, button.sizeHint().height())
        << "button \"" << button.text().toStdString() << "\"";
}

void expect_tabs_have_room(const QTabBar& bar) {
    for (int i = 0; i < bar.count(); ++i) {
        QString words = bar.tabText(i);
        words.remove(QLatin1Char{'&'});
        EXPECT_GE(bar.tabRect(i).width(), bar.fontMetrics().horizontalAdvance(words))
            << "tab \"" << words.toStdString() << "\"";
        EXPECT_GE(bar.tabRect(i).left(), 0) << "tab \"" << words.toStdString() << "\"";
        EXPECT_LE(bar.tabRect(i).right(), room_of(bar).width())
            << "tab \"" << words.toStdString() << "\"";
    }
}

void expect_line_has_room(const QLineEdit& line) {
    QStyleOptionFrame option;
    option.initFrom(&line);
    const QRect inside = line.style()->subElementRect(QStyle::SE_LineEditContents, &option, &line);
    const QString words = line.text().isEmpty() ? line.placeholderText() : line.text();
    const int margins = line.textMargins().left() + line.textMargins().right();
    // A value longer than a whole line of the panel is gone through with the arrow keys.
    constexpr int kFullStop_px = 16;
    if (line.width() + kFullStop_px >= line.parentWidget()->width()) {
        return;
    }
    EXPECT_GE(inside.width() - margins + kSlack_px, line.fontMetrics().horizontalAdvance(words))
        << "line \"" << words.toStdString() << "\", " << line.accessibleName().toStdString();
}

void expect_box_has_room(const QComboBox& box) {
    QStyleOptionComboBox option;
    option.initFrom(&box);
    option.editable = box.isEditable();
    option.subControls = QStyle::SC_All;
    const QRect inside = box.style()->subControlRect(QStyle::CC_ComboBox, &option,
                                                     QStyle::SC_ComboBoxEditField, &box);
    for (int i = 0; i < box.count(); ++i) {
        EXPECT_GE(inside.width() + kSlack_px, box.fontMetrics().horizontalAdvance(box.itemText(i)))
            << "choice \"" << box.itemText(i).toStdString() << "\", "
            << box.accessibleName().toStdString();
    }
}

/// Nor does any panel push the window off the screen.
void expect_on_screen(const QWidget& window) {
    EXPECT_LE(window.width(), 1280);
    EXPECT_LE(window.height(), 720);
}

TEST_P(RoomForWords, IsThereForEveryWord) {
    expect_on_screen(**shown);
    expect_on_screen(*place->window());
    for (QWidget* widget : place->findChildren<QWidget*>()) {
        if (!widget->isVisible() || widget->window() != place->window()) {
            continue;
        }
        if (const auto* label = qobject_cast<QLabel*>(widget)) {
            expect_label_has_room(*label);
        } else if (const auto* button = qobject_cast<QAbstractButton*>(widget)) {
            if (!button->text().isEmpty()) {
                expect_button_has_room(*button);
            }
        } else if (const auto* bar = qobject_cast<QTabBar*>(widget)) {
            expect_tabs_have_room(*bar);
        } else if (const auto* line = qobject_cast<QLineEdit*>(widget)) {
            expect_line_has_room(*line);
        } else if (const auto* box = qobject_cast<QComboBox*>(widget)) {
            expect_box_has_room(*box);
        }
    }
}

} // namespace
} // namespace throwline::ui
