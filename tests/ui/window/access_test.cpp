/// The window can be used without seeing it and without a pointer.

#include "ui/card_panel/card_panel.h"
#include "ui/running_order/running_order.h"
#include "ui/said_line/said_line.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/places.h"
#include "ui/window/shown_window.h"

#include <QAccessible>
#include <QTabWidget>
#include <functional>
#include <set>

namespace throwline::ui {
namespace {

/// What is told about something, for a message.
std::string told(const QAccessibleInterface& at) {
    const QObject* object = at.object();
    return std::string{qAccessibleRoleString(at.role())} + " of "
           + (object == nullptr ? "no widget"
                                : object->metaObject()->className() + std::string{" "}
                                      + object->objectName().toStdString())
           + ", in "
           + (object == nullptr || object->parent() == nullptr
                  ? "nothing"
                  : object->parent()->metaObject()->className());
}

void visit(QAccessibleInterface* at, const std::function<void(const QAccessibleInterface&)>& seen) {
    // Long lists are told alike throughout.
    constexpr int kMostOfAList = 60;
    if (at == nullptr || !at->isValid() || at->state().invisible) {
        return;
    }
    seen(*at);
    for (int i = 0; i < std::min(at->childCount(), kMostOfAList); ++i) {
        visit(at->child(i), seen);
    }
}

bool can_be_used(const QAccessibleInterface& at) {
    static const std::set<QAccessible::Role> kUsed{
        QAccessible::PushButton, QAccessible::CheckBox, QAccessible::RadioButton,
        QAccessible::ComboBox,   QAccessible::SpinBox,  QAccessible::EditableText,
        QAccessible::Slider,     QAccessible::List,     QAccessible::ListItem,
        QAccessible::Table,      QAccessible::Tree,     QAccessible::TreeItem,
        QAccessible::PageTab,    QAccessible::MenuItem, QAccessible::ButtonMenu};
    return at.state().focusable || kUsed.contains(at.role());
}

/// An empty cell of a table is told by its row and column.
bool is_cell_without_words(const QAccessibleInterface& at) {
    return at.role() == QAccessible::Cell;
}

class Access : public testing::TestWithParam<Place> {
  protected:
    void SetUp() override {
        QAccessible::setActive(true);
        shown.open_demo(0);
        place = GetParam().open(*shown);
        ASSERT_NE(place, nullptr);
        place->window()->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(place->window()));
        QApplication::processEvents();
    }

    ShownWindow shown;
    QWidget* place = nullptr;
};

INSTANTIATE_TEST_SUITE_P(EveryPlace, Access, testing::ValuesIn(places()),
                         [](const auto& of) { return std::string{of.param.name}; });

TEST_P(Access, NamesWhatCanBeUsed) {
    int used = 0;
    visit(QAccessible::queryAccessibleInterface(place), [&](const QAccessibleInterface& at) {
        if (can_be_used(at) && !is_cell_without_words(at)) {
            ++used;
            EXPECT_FALSE(at.text(QAccessible::Name).trimmed().isEmpty()) << told(at);
        }
    });
    EXPECT_GT(used, 0);
}

/// Where the Tab key stops, as the eye finds it.
std::vector<QWidget*> stops_in(QWidget& place) {
    std::vector<QWidget*> stops;
    QList<QWidget*> all = place.findChildren<QWidget*>();
    all.prepend(&place);
    for (QWidget* widget : all) {
        if (widget->window() == place.window() && widget->isVisible() && widget->isEnabled()
            && (widget->focusPolicy() & Qt::TabFocus) != 0 && widget->focusProxy() == nullptr) {
            stops.push_back(widget);
        }
    }
    return stops;
}

std::string named(const QWidget* widget) {
    return widget == nullptr ? "nothing"
                             : std::string{widget->metaObject()->className()} + " \""
                                   + widget->accessibleName().toStdString() + "\" "
                                   + widget->objectName().toStdString();
}

enum class Way { on, back };

void press_tab(QWidget& at, Way way, Qt::KeyboardModifiers with = {}) {
    if (way == Way::on) {
        QTest::keyClick(&at, Qt::Key_Tab, with);
    } else {
        QTest::keyClick(&at, Qt::Key_Backtab, with | Qt::ShiftModifier);
    }
}

/// Leaves what has the keyboard. Tables keep Tab for their cells until the last, the floor for its
/// things, and is left with Control.
void leave(QWidget& at, Way way) {
    constexpr int kMostCells = 60;
    for (int i = 0; i < kMostCells && QApplication::focusWidget() == &at; ++i) {
        press_tab(at, way);
    }
    if (QApplication::focusWidget() == &at) {
        press_tab(at, way, Qt::ControlModifier);
    }
}

/// Everything that Tab comes to, once round a window from its beginning or end.
std::vector<QWidget*> tabbed_round(QWidget& window, Way way = Way::on) {
    if (QWidget* const before = QApplication::focusWidget()) {
        before->clearFocus();
    }
    std::vector<QWidget*> order;
    std::set<QWidget*> seen;
    while (true) {
        QWidget* const before = QApplication::focusWidget();
        if (before == nullptr) {
            press_tab(window, way);
        } else {
            leave(*before, way);
        }
        QWidget* const at = QApplication::focusWidget();
        if (at == nullptr || !seen.insert(at).second) {
            return order;
        }
        order.push_back(at);
    }
}

std::vector<QWidget*> tabbed_through(const QWidget& place, Way way = Way::on) {
    std::vector<QWidget*> order = tabbed_round(*place.window(), way);
    std::erase_if(order, [&](QWidget* at) { return at != &place && !place.isAncestorOf(at); });
    return order;
}

TEST_P(Access, TabComesToEverything) {
    for (const Way way : {Way::on, Way::back}) {
        const std::vector<QWidget*> order = tabbed_through(*place, way);
        for (QWidget* stop : stops_in(*place)) {
            EXPECT_NE(std::find(order.begin(), order.end(), stop), order.end())
                << named(stop) << (way == Way::on ? "" : ", backwards");
        }
    }
}

QRect box_of(const QWidget& widget) {
    return {widget.mapToGlobal(QPoint{}), widget.size()};
}

/// From one stop to the next the eye goes on along a line, down, or up to a column further right.
TEST_P(Access, TabGoesAsOneReads) {
    const std::vector<QWidget*> order = tabbed_through(*place);
    for (std::size_t i = 1; i < order.size(); ++i) {
        const QRect before = box_of(*order[i - 1]);
        const QRect here = box_of(*order[i]);
        const bool is_above = here.bottom() <= before.top();
        const bool is_left = here.right() <= before.left();
        const bool is_right = here.left() >= before.right();
        const bool is_below = here.top() >= before.bottom();
        EXPECT_TRUE(!(is_above && !is_right) && !(is_left && !is_below))
            << "from " << named(order[i - 1]) << " to " << named(order[i]);
    }
}

/// Left to right, and from top to bottom where parts stand above each other.
TEST(AccessOfTheWindow, TabGoesFromPartToPart) {
    ShownWindow shown;
    shown.open_demo(0);
    shown->desk().choose({{edit::Kind::camera, shown->desk().plan()->cameras.front().id.name, 0}});
    ASSERT_TRUE(shown.settles());
    const std::vector<std::pair<const char*, const QWidget*>> parts{
        {"drawer", shown->findChild<QTabWidget*>()},
        {"floor", &shown->floor()},
        {"viewfinder", &shown->viewfinder()},
        {"card", &shown->card()},
        {"order", &shown->order()},
        {"line", &shown->line()}};
    std::vector<std::string> order;
    for (const QWidget* at : tabbed_round(*shown)) {
        for (const auto& [name, part] : parts) {
            if ((part == at || part->isAncestorOf(at)) && (order.empty() || order.back() != name)) {
                order.emplace_back(name);
            }
        }
    }
    EXPECT_EQ(order,
              (std::vector<std::string>{"drawer", "floor", "viewfinder", "card", "order", "line"}));
}

} // namespace
} // namespace throwline::ui
