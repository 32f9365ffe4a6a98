#include "ui/running_order/order_access.h"

#include "ui/running_order/order_strip.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <algorithm>
#include <map>

namespace throwline::ui {

namespace {

int index_of(const OrderStrip& strip, const OrderPlace& place) {
    const std::vector<OrderPlace> places = strip.view().places();
    const auto at = std::find(places.begin(), places.end(), place);
    return at == places.end() ? -1 : static_cast<int>(at - places.begin());
}

/// One beat or shot, by its place among all of them.
class PlaceAccess : public QAccessibleInterface, public QAccessibleActionInterface {
  public:
    PlaceAccess(OrderStrip& strip, int index) : strip_{strip}, index_{index} {}

    bool isValid() const override {
        return index_ < static_cast<int>(strip_.view().places().size());
    }
    QObject* object() const override { return nullptr; }
    QAccessibleInterface* parent() const override {
        return QAccessible::queryAccessibleInterface(&strip_);
    }
    QAccessibleInterface* child(int) const override { return nullptr; }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    QAccessible::Role role() const override { return QAccessible::ListItem; }
    void setText(QAccessible::Text, const QString&) override {}

    QString text(QAccessible::Text kind) const override {
        return kind == QAccessible::Name && isValid() ? strip_.view().sentence(place()) : QString{};
    }
    QRect rect() const override {
        if (!isValid()) {
            return {};
        }
        const QRect box = strip_.shown_at(place());
        return {strip_.viewport()->mapToGlobal(box.topLeft()), box.size()};
    }
    QAccessible::State state() const override {
        QAccessible::State state;
        state.focusable = true;
        state.selectable = true;
        state.focused = strip_.hasFocus() && isValid() && strip_.focus_place() == place();
        return state;
    }
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this)
                                                    : nullptr;
    }
    QStringList actionNames() const override { return {pressAction(), setFocusAction()}; }
    QStringList keyBindingsForAction(const QString&) const override { return {}; }
    void doAction(const QString& name) override {
        if (isValid() && name == pressAction()) {
            strip_.go_to(place());
        } else if (isValid() && name == setFocusAction()) {
            strip_.setFocus();
            strip_.set_focus_place(place());
        }
    }

  private:
    OrderPlace place() const { return strip_.view().places()[static_cast<std::size_t>(index_)]; }

    OrderStrip& strip_;
    int index_ = 0;
};

class StripAccess : public QAccessibleWidget {
  public:
    explicit StripAccess(OrderStrip* strip)
        : QAccessibleWidget{strip, QAccessible::List}, strip_{*strip} {}
    ~StripAccess() override {
        for (const auto& [index, id] : children_) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }
    int childCount() const override { return static_cast<int>(strip_.view().places().size()); }
    QAccessibleInterface* child(int index) const override {
        if (index < 0 || index >= childCount()) {
            return nullptr;
        }
        const auto known = children_.find(index);
        if (known != children_.end()) {
            return QAccessible::accessibleInterface(known->second);
        }
        auto* made = new PlaceAccess{strip_, index};
        children_.emplace(index, QAccessible::registerAccessibleInterface(made));
        return made;
    }
    int indexOfChild(const QAccessibleInterface* child) const override {
        for (const auto& [index, id] : children_) {
            if (QAccessible::accessibleInterface(id) == child) {
                return index;
            }
        }
        return -1;
    }
    QAccessibleInterface* focusChild() const override {
        return child(index_of(strip_, strip_.focus_place()));
    }
    QAccessibleInterface* childAt(int x, int y) const override {
        for (int i = 0; i < childCount(); ++i) {
            if (child(i)->rect().contains(x, y)) {
                return child(i);
            }
        }
        return nullptr;
    }

  private:
    OrderStrip& strip_;
    mutable std::map<int, QAccessible::Id> children_;
};

} // namespace

QAccessibleInterface* order_access(const QString& class_name, QObject* object) {
    if (class_name != QLatin1String{"throwline::ui::OrderStrip"}) {
        return nullptr;
    }
    auto* strip = qobject_cast<OrderStrip*>(object);
    return strip == nullptr ? nullptr : new StripAccess{strip};
}

void tell_focus(OrderStrip& strip) {
    const int index = index_of(strip, strip.focus_place());
    if (index >= 0 && QAccessible::isActive()) {
        QAccessibleEvent event{&strip, QAccessible::Focus};
        event.setChild(index);
        QAccessible::updateAccessibility(&event);
    }
}

} // namespace throwline::ui
