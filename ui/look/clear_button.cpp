#include "ui/look/clear_button.h"

#include <QAbstractButton>
#include <QLineEdit>

namespace throwline::ui {

void add_clear_button(QLineEdit& line) {
    line.setClearButtonEnabled(true);
    // The only button that Qt puts into the line.
    if (auto* button = line.findChild<QAbstractButton*>()) {
        button->setAccessibleName(QLineEdit::tr("Clear"));
    }
}

} // namespace throwline::ui
