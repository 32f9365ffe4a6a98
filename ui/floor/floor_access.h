#pragma once

#include <QString>

class QAccessibleInterface;
class QObject;

/// The floor as a list that can be spoken: each thing on it is an item with a name and its place.
namespace throwline::ui {

class Floor;

/// A factory for QAccessible; null for anything but a Floor.
QAccessibleInterface* floor_access(const QString& class_name, QObject* object);
/// Says what is chosen, as the floor's description.
void tell_choice(Floor& floor);
/// Says that another thing is chosen.
void tell_focus(Floor& floor);

} // namespace throwline::ui
