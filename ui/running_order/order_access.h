#pragma once

#include <QString>

class QAccessibleInterface;
class QObject;

/// The strip as a list that can be spoken: each beat and each shot is an item with a name.
namespace throwline::ui {

class OrderStrip;

/// A factory for QAccessible; null for anything but an OrderStrip.
QAccessibleInterface* order_access(const QString& class_name, QObject* object);
/// Says that another place has the keyboard.
void tell_focus(OrderStrip& strip);

} // namespace throwline::ui
