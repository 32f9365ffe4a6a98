#pragma once

#include "ui/desk_case.h"
#include "ui/window/window.h"

#include <QStandardPaths>
#include <QTest>
#include <filesystem>
#include <gtest/gtest.h>
#include <memory>
#include <unistd.h>

/// A window of the size of a small screen, with nothing on it that a user has kept.
namespace throwline::ui {

class ShownWindow {
  public:
    ShownWindow() {
        QStandardPaths::setTestModeEnabled(true);
        folder_ = std::filesystem::temp_directory_path()
                  / ("throwline-shown-" + std::to_string(getpid()));
        std::filesystem::remove_all(folder_);
        std::filesystem::create_directories(folder_);
        Questions questions;
        questions.unsaved = [](QWidget*, const QString&) { return UnsavedAnswer::discard; };
        questions.drop_readings = [](QWidget*) { return true; };
        questions.tell = [](QWidget*, const QString&, const QStringList&) {};
        window_ = std::make_unique<Window>(support::shared_catalogue(), questions,
                                           RecoveryStore{folder_ / "recovery"}, 0);
        window_->setAttribute(Qt::WA_DeleteOnClose, false);
        window_->resize(1280, 720);
        window_->show();
        window_->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    }
    ~ShownWindow() {
        window_->close();
        window_.reset();
        std::filesystem::remove_all(folder_);
    }
    ShownWindow(const ShownWindow&) = delete;
    ShownWindow& operator=(const ShownWindow&) = delete;

    /// Opens a demo, checked, with every panel up to date.
    void open_demo(int which) {
        window_->open_demo(which);
        EXPECT_TRUE(settles());
    }
    /// Whether checks, pictures and panels have caught up with the plan.
    bool settles() {
        const bool checked = support::came_to([&] {
            return window_->desk().analysis() != nullptr && window_->floor().is_up_to_date();
        });
        QApplication::processEvents();
        QTest::qWait(0);
        return checked;
    }
    Window& operator*() const { return *window_; }
    Window* operator->() const { return window_.get(); }

  private:
    std::filesystem::path folder_;
    std::unique_ptr<Window> window_;
};

} // namespace throwline::ui
