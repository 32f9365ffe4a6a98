#include "ui/floor/floor_access.h"

#include "base/length_text.h"
#include "edit/moves.h"
#include "edit/pick.h"
#include "ui/floor/floor.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <algorithm>
#include <map>

namespace throwline::ui {

namespace {

int index_of(const Floor& floor, const edit::Thing& thing) {
    const auto at = std::find(floor.things().begin(), floor.things().end(), thing);
    return at == floor.things().end() ? -1 : static_cast<int>(at - floor.things().begin());
}

/// "camera 2, 3.20 m across, 1.05 m up, chosen"
QString sentence(Floor& floor, const edit::Thing& thing) {
    const edit::Context context = floor.desk().context();
    QString words = QString::fromStdString(edit::name_of(thing));
    if (const std::optional<Vec2> at = edit::place_of(context, thing)) {
        const UnitSystem units = context.plan.units;
        words += QStringLiteral(", %1 across, %2 up")
                     .arg(QString::fromStdString(shown(Length::metres(at->x()), units)),
                          QString::fromStdString(shown(Length::metres(at->y()), units)));
    }
    if (edit::is_locked(context.plan, thing)) {
        words += QStringLiteral(", locked");
    }
    return words;
}

/// More than these are counted, not named.
constexpr std::size_t kMostNamed = 6;

/// "Chosen: camera 2, 3.20 m across, 1.05 m up; key."
QString choice_words(Floor& floor) {
    const std::vector<edit::Thing>& chosen = floor.desk().chosen();
    if (chosen.empty()) {
        return QStringLiteral("Nothing is chosen.");
    }
    QStringList named;
    for (std::size_t i = 0; i < std::min(chosen.size(), kMostNamed); ++i) {
        named << sentence(floor, chosen[i]);
    }
    if (chosen.size() > kMostNamed) {
        named << QStringLiteral("and %1 more").arg(chosen.size() - kMostNamed);
    }
    return QStringLiteral("Chosen: %1.").arg(named.join(QStringLiteral("; ")));
}

/// One thing, by its place among all of them.
class ThingAccess : public QAccessibleInterface, public QAccessibleActionInterface {
  public:
    ThingAccess(Floor& floor, int index) : floor_{floor}, index_{index} {}

    bool isValid() const override { return index_ < static_cast<int>(floor_.things().size()); }
    QObject* object() const override { return nullptr; }
    QAccessibleInterface* parent() const override {
        return QAccessible::queryAccessibleInterface(&floor_);
    }
    QAccessibleInterface* child(int) const override { return nullptr; }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    QAccessible::Role role() const override { return QAccessible::ListItem; }
    void setText(QAccessible::Text, const QString&) override {}

    QString text(QAccessible::Text kind) const override {
        return kind == QAccessible::Name && isValid() ? sentence(floor_, thing()) : QString{};
    }
    QRect rect() const override {
        if (!isValid()) {
            return {};
        }
        const QRect box = floor_.shown_rect(thing());
        return {floor_.mapToGlobal(box.topLeft()), box.size()};
    }
    QAccessible::State state() const override {
        QAccessible::State state;
        state.focusable = true;
        state.selectable = true;
        if (isValid()) {
            const std::vector<edit::Thing>& chosen = floor_.desk().chosen();
            state.selected = std::find(chosen.begin(), chosen.end(), thing()) != chosen.end();
            state.focused =
                floor_.hasFocus() && floor_.foremost() != nullptr && *floor_.foremost() == thing();
        }
        return state;
    }
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this)
                                                    : nullptr;
    }
    QStringList actionNames() const override { return {pressAction(), setFocusAction()}; }
    QStringList keyBindingsForAction(const QString&) const override { return {}; }
    void doAction(const QString& name) override {
        if (!isValid()) {
            return;
        }
        floor_.desk().choose({thing()});
        if (name == setFocusAction()) {
            floor_.setFocus();
        }
    }

  private:
    const edit::Thing& thing() const { return floor_.things()[static_cast<std::size_t>(index_)]; }

    Floor& floor_;
    int index_ = 0;
};

/// The things first, then the widgets that stand on the floor.
class FloorAccess : public QAccessibleWidget {
  public:
    explicit FloorAccess(Floor* floor)
        : QAccessibleWidget{floor, QAccessible::List}, floor_{*floor} {}
    ~FloorAccess() override {
        for (const auto& [index, id] : children_) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }

    int childCount() const override { return count() + QAccessibleWidget::childCount(); }
    QAccessibleInterface* child(int index) const override {
        if (index < 0) {
            return nullptr;
        }
        if (index >= count()) {
            return QAccessibleWidget::child(index - count());
        }
        const auto known = children_.find(index);
        if (known != children_.end()) {
            return QAccessible::accessibleInterface(known->second);
        }
        auto* made = new ThingAccess{floor_, index};
        children_.emplace(index, QAccessible::registerAccessibleInterface(made));
        return made;
    }
    int indexOfChild(const QAccessibleInterface* child) const override {
        for (const auto& [index, id] : children_) {
            if (QAccessible::accessibleInterface(id) == child) {
                return index;
            }
        }
        const int widget = QAccessibleWidget::indexOfChild(child);
        return widget < 0 ? -1 : widget + count();
    }
    QAccessibleInterface* focusChild() const override {
        const edit::Thing* chosen = floor_.foremost();
        return floor_.hasFocus() && chosen != nullptr ? child(index_of(floor_, *chosen))
                                                      : QAccessibleWidget::focusChild();
    }
    QAccessibleInterface* childAt(int x, int y) const override {
        // What lies above comes later in the plan.
        for (int i = count() - 1; i >= 0; --i) {
            if (child(i)->rect().contains(x, y)) {
                return child(i);
            }
        }
        return QAccessibleWidget::childAt(x, y);
    }

  private:
    int count() const { return static_cast<int>(floor_.things().size()); }

    Floor& floor_;
    mutable std::map<int, QAccessible::Id> children_;
};

} // namespace

QAccessibleInterface* floor_access(const QString& class_name, QObject* object) {
    if (class_name != QLatin1String{"throwline::ui::Floor"}) {
        return nullptr;
    }
    auto* floor = qobject_cast<Floor*>(object);
    return floor == nullptr ? nullptr : new FloorAccess{floor};
}

void tell_choice(Floor& floor) {
    // Setting it tells whoever listens.
    floor.setAccessibleDescription(
        choice_words(floor)
        + QStringLiteral(" The plan from above. Tab goes from thing to thing, arrow keys move what "
                         "is chosen, Control and Tab leaves."));
    if (QAccessible::isActive()) {
        QAccessibleEvent event{&floor, QAccessible::SelectionWithin};
        QAccessible::updateAccessibility(&event);
    }
}

void tell_focus(Floor& floor) {
    if (!QAccessible::isActive() || floor.foremost() == nullptr) {
        return;
    }
    const int index = index_of(floor, *floor.foremost());
    if (index >= 0) {
        QAccessibleEvent event{&floor, QAccessible::Focus};
        event.setChild(index);
        QAccessible::updateAccessibility(&event);
    }
}

} // namespace throwline::ui
