#pragma once

#include "ui/card_panel/card_panel.h"
#include "ui/desk_case.h"
#include "ui/said_line/said_line.h"
#include "ui/window/window.h"

#include <QCoreApplication>
#include <QLineEdit>
#include <filesystem>
#include <gtest/gtest.h>
#include <unistd.h>

/// The real window, shown, with a folder of its own and somebody at it who types and points.
namespace throwline::ui {

class WindowCase : public testing::Test {
  protected:
    void SetUp() override {
        folder = std::filesystem::temp_directory_path()
                 / ("throwline-window-" + std::to_string(getpid()));
        std::filesystem::remove_all(folder);
        std::filesystem::create_directories(folder);
        Questions questions;
        questions.unsaved = [this](QWidget*, const QString&) { return unsaved; };
        questions.changed = [](QWidget*, const QString&, const QStringList&) {
            return ChangedAnswer::cancel;
        };
        questions.drop_readings = [this](QWidget*) { return drops_readings; };
        questions.drop_left_work = [this](QWidget*, const QString&) { return drops_left_work; };
        questions.picture_to_lay = [this](QWidget*, const QString&) { return picture; };
        questions.path_to_open = [this](QWidget*, const QString&) { return path("plan.json"); };
        questions.path_to_save = [this](QWidget*, const QString&) { return path("plan.json"); };
        questions.tell = [this](QWidget*, const QString& heading, const QStringList&) {
            told << heading;
        };
        window = new Window{support::shared_catalogue(), questions,
                            RecoveryStore{folder / "recovery"}, 0};
        window->setAttribute(Qt::WA_DeleteOnClose, false);
        window->resize(1280, 720);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window));
    }
    void TearDown() override {
        unsaved = UnsavedAnswer::discard;
        drops_readings = true;
        window->close();
        delete window;
        std::filesystem::remove_all(folder);
    }
    QString path(const char* name) const {
        return QString::fromStdString((folder / name).string());
    }
    void say(const char* sentence) {
        QLineEdit& line = window->line().edit();
        line.setFocus();
        line.clear();
        QTest::keyClicks(&line, QString::fromUtf8(sentence));
        QTest::keyClick(&line, Qt::Key_Escape); // The list of what might stand next.
        if (line.text().isEmpty()) {
            QTest::keyClicks(&line, QString::fromUtf8(sentence));
        }
        QTest::keyClick(&line, Qt::Key_Return);
        EXPECT_EQ(window->line().marked(), -1)
            << sentence << ": " << window->line().answer().toStdString();
    }
    void type_into_card(const char* key, const char* text) {
        // The card of another choice comes with the next round of events.
        QCoreApplication::processEvents();
        ASSERT_TRUE(support::came_to([&] { return window->card().editor(QString::fromUtf8(key)); }))
            << key << "\n"
            << window->card().text();
        QWidget* edit = window->card().editor(QString::fromUtf8(key));
        edit->setFocus();
        QTest::keyClick(edit, Qt::Key_A, Qt::ControlModifier);
        const QStringList lines = QString::fromUtf8(text).split(QLatin1Char{'\n'});
        for (qsizetype i = 0; i < lines.size(); ++i) {
            if (i > 0) {
                QTest::keyClick(edit, Qt::Key_Return);
            }
            QTest::keyClicks(edit, lines[i]);
        }
        // Takes a field of one line as well as one of several.
        QTest::keyClick(edit, Qt::Key_Return, Qt::ControlModifier);
        QCoreApplication::processEvents();
        EXPECT_EQ(window->card().told(), QString{}) << key << " " << text;
    }
    const plan::Plan& plan() const { return *window->desk().plan(); }

    std::filesystem::path folder;
    UnsavedAnswer unsaved = UnsavedAnswer::cancel;
    bool drops_readings = true;
    bool drops_left_work = true;
    QString picture;
    QStringList told;
    Window* window = nullptr;
};

} // namespace throwline::ui
