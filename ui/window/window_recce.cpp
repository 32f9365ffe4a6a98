#include "ui/recce/recce_window.h"
#include "ui/window/window.h"

/// The recce, and what is typed in it and not yet in the plan.
namespace throwline::ui {

void Window::open_recce() {
    show_floor();
    if (recce_ == nullptr) {
        recce_ = new RecceWindow{*desk_, this};
        recce_->setWindowFlag(Qt::Window);
        recce_->setAttribute(Qt::WA_DeleteOnClose);
        if (!keeper_->readings().empty()) {
            recce_->set_text(QString::fromStdString(keeper_->readings()));
        }
        help_at(*recce_, QStringLiteral("recce"));
        connect(recce_, &RecceWindow::readings_changed, keeper_,
                [this] { keeper_->keep_readings(recce_->readings()); });
    }
    recce_->show();
    recce_->raise();
    recce_->activateWindow();
}

RecceWindow* Window::recce() {
    return recce_;
}

bool Window::may_drop_readings() {
    if (keeper_->readings().empty() || questions_.drop_readings(this)) {
        return true;
    }
    open_recce();
    return false;
}

} // namespace throwline::ui
