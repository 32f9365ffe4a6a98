/// The real window, driven by mouse and keyboard.

#include "plan/read_plan.h"
#include "ui/help/help_window.h"
#include "ui/keeping/kept_folder.h"
#include "ui/recce/recce_window.h"
#include "ui/sheets/sheets_window.h"
#include "ui/window/action_book.h"
#include "ui/window/start_page.h"
#include "ui/window/window_case.h"

#include <QAction>
#include <QApplication>
#include <QPushButton>
#include <set>

namespace throwline::ui {
namespace {

TEST_F(WindowCase, BeginsWithTheStartPageAndOpensADemo) {
    EXPECT_FALSE(window->has_plan());
    auto* demo =
        window->start_page().findChild<QPushButton*>(QStringLiteral("workshop_interview.json"));
    ASSERT_NE(demo, nullptr);
    QTest::mouseClick(demo, Qt::LeftButton);
    EXPECT_TRUE(window->has_plan());
    EXPECT_EQ(plan().title, "The Chair Mender, interview");
    EXPECT_TRUE(window->keeper().path().empty());
    EXPECT_TRUE(support::came_to([&] { return window->desk().analysis() != nullptr; }));
}

TEST_F(WindowCase, WorkBeneathTheStartPageIsAskedAbout) {
    window->begin_empty_floor();
    say("put dining chair at 2 m, 2 m");
    window->show_start_page();
    EXPECT_TRUE(window->has_plan());
    EXPECT_FALSE(window->is_untouched());
    unsaved = UnsavedAnswer::cancel;
    EXPECT_FALSE(window->may_close());
    const std::string work = window->desk().plan_text();
    Q_EMIT window->start_page().studio_wanted({Length::metres(6), Length::metres(5),
                                               Length::metres(3), Length::metres(2.5),
                                               Length::metres(1)},
                                              UnitSystem::metric);
    Q_EMIT window->start_page().empty_floor_wanted();
    Q_EMIT window->start_page().demo_wanted(0);
    EXPECT_EQ(window->desk().plan_text(), work);
    unsaved = UnsavedAnswer::discard;
    Q_EMIT window->start_page().demo_wanted(0);
    EXPECT_NE(window->desk().plan_text(), work);
}

TEST_F(WindowCase, AnEmptyFloorIsReplacedWithoutAQuestion) {
    unsaved = UnsavedAnswer::cancel;
    window->begin_empty_floor();
    Q_EMIT window->start_page().demo_wanted(0);
    EXPECT_FALSE(plan().scenery.empty());
}

TEST_F(WindowCase, SavingTakesWhatIsBeingTyped) {
    window->begin_empty_floor();
    window->desk().choose({});
    QCoreApplication::processEvents();
    auto* title = qobject_cast<QLineEdit*>(window->card().editor(QStringLiteral("title")));
    ASSERT_NE(title, nullptr);
    title->setFocus();
    title->selectAll();
    QTest::keyClicks(title, QStringLiteral("Half a title"));
    ASSERT_TRUE(window->do_action(QStringLiteral("plan.save")));
    EXPECT_EQ(plan().title, "Half a title");
    EXPECT_NE(support::bytes_of(folder / "plan.json").find("Half a title"), std::string::npos);
    EXPECT_TRUE(window->desk().is_saved());
}

TEST_F(WindowCase, ClosingAsksAboutWhatIsBeingTyped) {
    window->begin_empty_floor();
    window->desk().choose({});
    window->desk().mark_saved();
    QCoreApplication::processEvents();
    auto* title = qobject_cast<QLineEdit*>(window->card().editor(QStringLiteral("title")));
    title->setFocus();
    title->selectAll();
    QTest::keyClicks(title, QStringLiteral("Half a title"));
    unsaved = UnsavedAnswer::cancel;
    EXPECT_FALSE(window->may_close());
    EXPECT_EQ(plan().title, "Half a title");
}

TEST_F(WindowCase, HelpInAWindowOfItsOwnIsAboutThat) {
    window->begin_location();
    // The platform of tests leaves the first window in front.
    QApplication::setActiveWindow(window->recce());
    QTest::keyClick(window->recce(), Qt::Key_F1);
    auto* help = window->findChild<HelpWindow*>();
    ASSERT_NE(help, nullptr);
    EXPECT_EQ(help->page(), QStringLiteral("recce"));
    window->open_sheets();
    auto* sheets = window->findChild<SheetsWindow*>();
    QApplication::setActiveWindow(sheets);
    QTest::keyClick(sheets, Qt::Key_F1);
    EXPECT_EQ(help->page(), QStringLiteral("sheets"));
}

TEST_F(WindowCase, CutTakesOnlyWhatItCarries) {
    window->open_demo(0);
    const std::size_t openings = plan().room.openings.size();
    ASSERT_GT(openings, 0U);
    const std::size_t pieces = plan().scenery.size();
    window->desk().choose({{edit::Kind::opening, plan().room.openings.front().id.name, 0},
                           {edit::Kind::scenery, plan().scenery.front().id.name, 0}});
    window->cut();
    EXPECT_EQ(plan().room.openings.size(), openings);
    EXPECT_EQ(plan().scenery.size(), pieces - 1);
    window->paste();
    EXPECT_EQ(plan().scenery.size(), pieces);
}

/// From an empty floor to a saved plan; all of it undone and done again.
TEST_F(WindowCase, MakesAnInterviewFromNothing) {
    window->begin_empty_floor();
    const std::string empty = window->desk().plan_text();
    window->do_action(QStringLiteral("draw.choose"));
    window->begin_studio({Length::metres(6.4), Length::metres(5), Length::metres(2.8),
                          Length::metres(2.5), Length::metres(0)},
                         UnitSystem::metric);
    ASSERT_TRUE(window->has_plan());
    const std::string begun = window->desk().plan_text();
    EXPECT_NE(begun, empty);

    say("put dining chair at 3.6 m, 3.2 m");
    say("put cast at 3.6 m, 3.2 m");
    ASSERT_EQ(plan().people.size(), 1U);
    window->desk().choose({{edit::Kind::person, plan().people.front().id.name, 0}});
    type_into_card("name", "Noor");
    ASSERT_EQ(plan().people.front().id.name, "Noor");
    type_into_card("stature", "1.64 m");
    type_into_card("pose", "sit");
    window->do_action(QStringLiteral("put.camera"));
    ASSERT_EQ(plan().cameras.size(), 1U);
    type_into_card("x", "3.5");
    type_into_card("y", "1.25");
    type_into_card("lens", "prime 50 T1.5");
    type_into_card("eye_height", "120cm");
    window->do_action(QStringLiteral("order.new_shot"));
    ASSERT_EQ(plan().shots.size(), 1U);
    type_into_card("size", "medium close-up");
    window->desk().choose({});
    type_into_card("title", "The Chair Mender");
    EXPECT_EQ(plan().title, "The Chair Mender");
    EXPECT_EQ(plan().cameras.front().eye_height, Length::metres(1.2));
    EXPECT_EQ(plan().shots.front().size, ShotSize::medium_close_up);
    EXPECT_NEAR(plan().shots.front().at.x(), 3.5, 1e-9);

    ASSERT_TRUE(window->save());
    const Checked<plan::Plan> saved =
        plan::read_plan_file(folder / "plan.json", support::shipped_catalogue());
    ASSERT_TRUE(saved);
    EXPECT_EQ(*saved, plan());
    EXPECT_FALSE(window->isWindowModified());

    const std::string made = window->desk().plan_text();
    QAction* undo = window->findChild<QAction*>(QStringLiteral("edit.undo"));
    ASSERT_NE(undo, nullptr);
    int steps = 0;
    while (window->desk().history().can_undo()) {
        undo->trigger();
        ++steps;
    }
    EXPECT_GE(steps, 10);
    EXPECT_EQ(window->desk().plan_text(), begun);
    EXPECT_TRUE(window->isWindowModified());
    while (window->desk().history().can_redo()) {
        window->do_action(QStringLiteral("edit.redo"));
    }
    EXPECT_EQ(window->desk().plan_text(), made);
    EXPECT_FALSE(window->isWindowModified());
}

/// What was said is undone from the line that it was said in.
TEST_F(WindowCase, UndoesThePlanFromAnEmptyLine) {
    window->open_demo(1);
    const std::string before = window->desk().plan_text();
    say("move stool left 40 cm");
    ASSERT_NE(window->desk().plan_text(), before);
    QLineEdit& line = window->line().edit();
    line.setFocus();
    QTest::keyClick(&line, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window->desk().plan_text(), before);
    EXPECT_TRUE(line.text().isEmpty());
}

TEST_F(WindowCase, AsksBeforeChangesAreLost) {
    window->open_demo(1);
    EXPECT_TRUE(window->may_close());
    window->desk().toggle_units();
    EXPECT_FALSE(window->may_close());
    unsaved = UnsavedAnswer::save;
    EXPECT_TRUE(window->may_close());
    EXPECT_TRUE(std::filesystem::exists(folder / "plan.json"));
}

TEST_F(WindowCase, CopiesFromOneWindowToAnother) {
    window->open_demo(1);
    window->desk().choose({{edit::Kind::scenery, "workbench", 0}, {edit::Kind::lamp, "key", 0}});
    window->copy();
    const std::size_t scenery = plan().scenery.size();
    const std::size_t lamps = plan().lamps.size();
    window->paste();
    EXPECT_EQ(plan().scenery.size(), scenery + 1);
    EXPECT_EQ(plan().lamps.size(), lamps + 1);
    EXPECT_EQ(plan().scenery.back().id.name, "workbench 2");
    EXPECT_EQ(window->desk().history().undo_name(), "Paste 2 things");
    window->desk().undo();
    EXPECT_EQ(plan().scenery.size(), scenery);
}

TEST_F(WindowCase, HasEveryActionOnceWithKeysOfItsOwn) {
    std::set<std::string> ids;
    std::set<QString> keys;
    for (const WindowAction* action : all_actions()) {
        EXPECT_TRUE(ids.insert(action->id).second) << action->id;
        if (action->keys == nullptr) {
            continue;
        }
        for (const QKeySequence& key :
             QKeySequence::listFromString(QString::fromLatin1(action->keys))) {
            EXPECT_FALSE(key.isEmpty()) << action->id;
            EXPECT_TRUE(keys.insert(key.toString()).second)
                << action->id << " " << key.toString().toStdString();
        }
    }
}

/// Whatever is chosen, an action either can be done or says so; none leaves a plan that would not
/// open again, since the desk takes none.
TEST_F(WindowCase, TakesEveryEditingActionOnADemo) {
    window->open_demo(1);
    for (const WindowAction* action : all_actions()) {
        const std::string id = action->id;
        if (id.rfind("edit.", 0) != 0 || id == "edit.rows") {
            continue;
        }
        window->desk().choose({{edit::Kind::scenery, "stool", 0},
                               {edit::Kind::scenery, "side table", 0},
                               {edit::Kind::scenery, "guest chair", 0}});
        window->do_action(QString::fromStdString(id));
        EXPECT_TRUE(plan::read_plan(window->desk().plan_text(), support::shipped_catalogue()))
            << id;
        while (window->desk().history().can_undo()) {
            window->desk().undo();
        }
    }
}

} // namespace
} // namespace throwline::ui
