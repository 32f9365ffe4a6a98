#pragma once

#include "ui/desk_case.h"
#include "ui/keeping/kept_folder.h"
#include "ui/window/window.h"

#include <gtest/gtest.h>

/// The real window with a folder of its own; what it asks is answered by what stands here.
namespace throwline::ui {

class WindowAtWork : public testing::Test {
  protected:
    void SetUp() override {
        folder = support::fresh_folder("window-at-work");
        Questions questions;
        questions.unsaved = [](QWidget*, const QString&) { return UnsavedAnswer::discard; };
        questions.changed = [](QWidget*, const QString&, const QStringList&) {
            return ChangedAnswer::cancel;
        };
        questions.drop_readings = [this](QWidget*) { return drops_readings; };
        questions.picture_to_lay = [this](QWidget*, const QString&) { return picture; };
        questions.tell = [this](QWidget*, const QString& heading, const QStringList&) {
            told << heading;
        };
        window = std::make_unique<Window>(support::shared_catalogue(), questions,
                                          RecoveryStore{folder / "recovery"}, 0);
        window->setAttribute(Qt::WA_DeleteOnClose, false);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window.get()));
    }
    void TearDown() override {
        drops_readings = true;
        window->close();
        window.reset();
        std::filesystem::remove_all(folder);
    }
    QString path(const char* name) const {
        return QString::fromStdString((folder / name).string());
    }
    const plan::Plan& plan() const { return *window->desk().plan(); }

    std::filesystem::path folder;
    bool drops_readings = true;
    QString picture;
    QStringList told;
    std::unique_ptr<Window> window;
};

} // namespace throwline::ui
