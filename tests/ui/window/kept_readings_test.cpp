/// Readings that were typed in the recce and not yet used are not lost.

#include "plan/read_plan.h"
#include "ui/keeping/kept_folder.h"
#include "ui/recce/recce_window.h"
#include "ui/window/start_page.h"
#include "ui/window/window_case.h"

#include <QPointer>
#include <fmt/format.h>

namespace throwline::ui {
namespace {

const QString kHalfTyped = QStringLiteral("corners A B C D\nA-B 4.");

class LeftReadings : public WindowCase {
  protected:
    /// Readings as a program that is gone left them: process 1 did not begin then.
    void leave_readings() {
        Recovery left;
        left.plan_text = plan::written(plan::Plan{});
        left.readings = kHalfTyped.toStdString();
        ASSERT_TRUE(RecoveryStore{folder / "recovery"}.keep(kept(), left));
        std::string text = support::bytes_of(kept());
        const std::string pid = fmt::format("\n{}\n", getpid());
        text.replace(text.find(pid), pid.size(), "\n1\n");
        support::put_bytes(kept(), text);
        window->look_for_left_work();
    }
    std::filesystem::path kept() const { return folder / "recovery" / "left.work"; }
};

TEST_F(LeftReadings, ComeBackAfterACrash) {
    leave_readings();
    Q_EMIT window->start_page().left_work_wanted(0);
    EXPECT_TRUE(window->has_plan());
    ASSERT_NE(window->recce(), nullptr);
    EXPECT_EQ(window->recce()->text(), kHalfTyped.toStdString());
}

/// An open recce shows the survey of the plan; its own readings must not take the place of those.
TEST_F(LeftReadings, ComeBackOverAnOpenRecce) {
    window->begin_location();
    window->show_start_page();
    leave_readings();
    drops_left_work = false;
    Q_EMIT window->start_page().left_work_unwanted(0);
    EXPECT_TRUE(std::filesystem::exists(kept()));
    Q_EMIT window->start_page().left_work_wanted(0);
    ASSERT_NE(window->recce(), nullptr);
    EXPECT_EQ(window->recce()->text(), kHalfTyped.toStdString());
    EXPECT_EQ(window->keeper().readings(), kHalfTyped.toStdString());
}

TEST_F(WindowCase, ShowsReadingsAgainThatWereLeftInAClosedRecce) {
    window->begin_location();
    QPointer<RecceWindow> first = window->recce();
    first->set_text(kHalfTyped);
    first->close();
    ASSERT_TRUE(support::came_to([&] { return first == nullptr; }));
    EXPECT_FALSE(window->is_untouched());
    window->open_recce();
    EXPECT_EQ(window->recce()->text(), kHalfTyped.toStdString());
}

TEST_F(WindowCase, AsksBeforeReadingsAreDropped) {
    window->begin_location();
    window->recce()->set_text(kHalfTyped);
    window->desk().mark_saved();
    drops_readings = false;
    EXPECT_FALSE(window->may_close());
    drops_readings = true;
    EXPECT_TRUE(window->may_close());
}

TEST_F(WindowCase, AsksNothingOnceTheReadingsAreUsed) {
    window->begin_location();
    window->recce()->set_text(QStringLiteral("corners A B C D\nA-B 4m\nB-C 3m\nC-D 4m\nD-A 3m\n"
                                             "A-C 5m\nB-D 5m\nheight 2.5m\n"));
    ASSERT_TRUE(support::came_to([&] { return window->recce()->is_settled(); }));
    ASSERT_TRUE(window->recce()->use_as_room());
    window->desk().mark_saved();
    drops_readings = false;
    EXPECT_TRUE(window->may_close());
}

} // namespace
} // namespace throwline::ui
