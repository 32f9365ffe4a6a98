/// The window of sheets, and what is written from it.

#include "ui/sheets/sheets_window.h"

#include "lists/lists.h"
#include "ui/desk_case.h"
#include "ui/sheets/wishes_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QListWidget>
#include <QMenu>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;

class SheetsCase : public testing::Test {
  protected:
    void SetUp() override {
        QCoreApplication::setOrganizationName(QStringLiteral("throwline-test"));
        QCoreApplication::setApplicationName(QStringLiteral("throwline-test"));
        QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, folder.path());
        QSettings{}.clear();
        desk = support::desk_with(support::demo_plan("workshop_interview.json"));
        open();
    }
    void TearDown() override {
        window.reset();
        QSettings{}.clear();
    }
    void open() {
        window = std::make_unique<SheetsWindow>(*desk);
        window->show();
        ASSERT_TRUE(came_to([&] { return !window->pages().empty(); }));
    }
    void want(const std::function<void(SheetWishes&)>& change) {
        SheetWishes wishes = window->form().wishes();
        change(wishes);
        window->form().show_wishes(wishes);
        Q_EMIT window->form().changed();
        ASSERT_TRUE(came_to([&] { return !window->is_drawing(); }));
    }
    void wait_for_files() {
        ASSERT_TRUE(came_to([&] { return !window->files().is_busy(); }));
    }
    QString path(const char* name) const { return folder.filePath(QString::fromUtf8(name)); }
    QByteArray bytes(const QString& file) const {
        QFile in{file};
        return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray{};
    }
    QPushButton* button(const char* words) const {
        for (QPushButton* each : window->findChildren<QPushButton*>()) {
            if (each->text().remove(QLatin1Char{'&'}).startsWith(QString::fromUtf8(words))) {
                return each;
            }
        }
        return nullptr;
    }

    QTemporaryDir folder;
    std::unique_ptr<Desk> desk;
    std::unique_ptr<SheetsWindow> window;
};

TEST_F(SheetsCase, ShowsTheFloorPlanAtFirst) {
    ASSERT_EQ(window->pages().size(), 1U);
    EXPECT_EQ(window->pages().front().paper, "A3 landscape");
    EXPECT_NE(window->words().indexOf(QStringLiteral("A3")), -1);
    EXPECT_TRUE(button("Save")->isEnabled());
}

TEST_F(SheetsCase, NamesEachSheetByItself) {
    want([](SheetWishes& wishes) { wishes.kinds = {"floor-plan", "set-plan"}; });
    ASSERT_EQ(window->pages().size(), 2U);
    EXPECT_NE(window->pages()[0].subject, window->pages()[1].subject);
}

TEST_F(SheetsCase, RemembersWhatWasWanted) {
    want([](SheetWishes& wishes) {
        wishes.kinds = {"set-plan"};
        wishes.paper = "A2";
        wishes.way = sheet::Orientation::portrait;
        wishes.scale = "1:50";
        wishes.pools = false;
    });
    const SheetWishes before = window->form().wishes();
    window.reset();
    open();
    EXPECT_EQ(window->form().wishes(), before);
    EXPECT_EQ(window->pages().front().paper, "A2 portrait");
    EXPECT_EQ(window->pages().front().scale, "1:50");
}

TEST_F(SheetsCase, LeavesOutWhatThePlanHasNothingFor) {
    ASSERT_FALSE(desk->plan()->survey);
    want([](SheetWishes& wishes) { wishes.kinds = {"set-plan", "recce"}; });
    EXPECT_EQ(window->pages().size(), 1U);
    want([](SheetWishes& wishes) { wishes.kinds = {"recce"}; });
    EXPECT_TRUE(window->pages().empty());
    EXPECT_EQ(window->words(), QStringLiteral("The plan has nothing to show on what is ticked."));
    EXPECT_FALSE(button("Save")->isEnabled());
}

TEST_F(SheetsCase, TicksAllWithOneEntry) {
    auto* kinds = window->form().findChild<QListWidget*>();
    ASSERT_NE(kinds, nullptr);
    EXPECT_EQ(kinds->item(0)->checkState(), Qt::PartiallyChecked);
    kinds->item(0)->setCheckState(Qt::Checked);
    EXPECT_EQ(window->form().wishes().kinds.size(), sheet::all_sheets().size());
    kinds->item(0)->setCheckState(Qt::Unchecked);
    EXPECT_TRUE(window->form().wishes().kinds.empty());
    ASSERT_TRUE(came_to([&] { return !window->is_drawing(); }));
    EXPECT_EQ(window->words(), QStringLiteral("Tick what is to be printed."));
}

TEST_F(SheetsCase, TellsWhyAScaleDoesNotFitAndTilesIt) {
    want([](SheetWishes& wishes) {
        wishes.kinds = {"floor-plan"};
        wishes.paper = "A4";
        wishes.scale = "1:20";
    });
    EXPECT_TRUE(window->pages().empty());
    EXPECT_FALSE(window->words().isEmpty());
    want([](SheetWishes& wishes) { wishes.tiles = true; });
    EXPECT_GT(window->pages().size(), 1U);
}

TEST_F(SheetsCase, SavesAllPagesOrTheOneShown) {
    want([](SheetWishes& wishes) { wishes.kinds = {"floor-plan", "set-plan"}; });
    window->save_to(path("set.pdf"));
    wait_for_files();
    EXPECT_TRUE(bytes(path("set.pdf")).startsWith("%PDF"));
    window->save_to(path("page.svg"));
    wait_for_files();
    EXPECT_TRUE(bytes(path("page.svg")).contains("<svg"));
    window->save_to(path("page.png"));
    wait_for_files();
    EXPECT_TRUE(bytes(path("page.png")).startsWith("\x89PNG"));
    EXPECT_EQ(window->words(), QStringLiteral("Saved ") + path("page.png"));
}

TEST_F(SheetsCase, TellsWhereItCannotSave) {
    window->save_to(path("no such folder/set.pdf"));
    wait_for_files();
    EXPECT_TRUE(window->words().startsWith(QStringLiteral("Not saved")))
        << window->words().toStdString();
}

TEST_F(SheetsCase, SavesEveryListAsCsv) {
    window->save_lists(path("lists"));
    wait_for_files();
    const QStringList files = QDir{path("lists")}.entryList({QStringLiteral("*.csv")});
    EXPECT_EQ(static_cast<std::size_t>(files.size()), lists::all_lists().size());
    const lists::ListKind& first = lists::all_lists().front();
    window->save_list(QString::fromStdString(std::string{first.name}), path("one.csv"));
    wait_for_files();
    EXPECT_EQ(bytes(path("one.csv")).toStdString(),
              lists::as_csv(first.make({*desk->analysis(), *desk->catalogue()})));
}

TEST_F(SheetsCase, OffersEveryListInItsMenu) {
    // All of them, a line, and each.
    EXPECT_EQ(static_cast<std::size_t>(button("Lists")->menu()->actions().size()),
              lists::all_lists().size() + 2);
}

TEST_F(SheetsCase, DrawsAPlanThatChanged) {
    plan::Plan plan = *desk->plan();
    plan.title = "Another name";
    ASSERT_TRUE(desk->take(edit::Step{"Rename", std::move(plan), {}}));
    EXPECT_TRUE(window->pages().empty());
    ASSERT_TRUE(came_to([&] { return !window->pages().empty(); }));
    EXPECT_EQ(window->pages().front().title.rfind("Another name", 0), 0U);
}

TEST_F(SheetsCase, OffersOnlyWhatThePlanHas) {
    const auto tick = [&](const char* words) -> QCheckBox& {
        for (QCheckBox* box : window->findChildren<QCheckBox*>()) {
            if (box->text().remove(QLatin1Char{'&'}) == QLatin1String{words}) {
                return *box;
            }
        }
        throw std::runtime_error{words};
    };
    EXPECT_TRUE(tick("Pools of light").isEnabled());
    EXPECT_FALSE(tick("Scanned plan").isEnabled());
    plan::Plan plan = *desk->plan();
    plan.lamps.clear();
    plan.underlay = plan::Underlay{"scan.png", {0.0, 0.0}, {100.0, 0.0}, {0.0, 0.0}, {1.0, 0.0}};
    ASSERT_TRUE(desk->take(edit::Step{"Scan", std::move(plan), {}}));
    EXPECT_FALSE(tick("Pools of light").isEnabled());
    EXPECT_TRUE(tick("Scanned plan").isEnabled());
}

TEST_F(SheetsCase, OffersTheScalesOfThePlansUnits) {
    auto* scales = [&]() -> QComboBox* {
        for (QComboBox* box : window->findChildren<QComboBox*>()) {
            if (box->accessibleName() == QStringLiteral("Scale")) {
                return box;
            }
        }
        return nullptr;
    }();
    ASSERT_NE(scales, nullptr);
    EXPECT_GE(scales->findText(QStringLiteral("1:50")), 0);
    desk->toggle_units();
    EXPECT_LT(scales->findText(QStringLiteral("1:50")), 0);
    EXPECT_EQ(window->form().wishes().paper, "tabloid");
}

} // namespace
} // namespace throwline::ui
