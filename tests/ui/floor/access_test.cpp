/// What somebody hears of the floor who does not see it.

#include "ui/floor/floor_case.h"

#include <QAccessible>

namespace throwline::ui {
namespace {

QString described(Floor& floor) {
    return QAccessible::queryAccessibleInterface(&floor)->text(QAccessible::Description);
}

TEST(FloorAccess, SaysWhatIsChosenAndWhere) {
    OnFloor on;
    EXPECT_TRUE(described(*on.floor).startsWith(QStringLiteral("Nothing is chosen.")));
    on.desk->choose({{Kind::scenery, "table", 0}});
    EXPECT_TRUE(described(*on.floor).startsWith(QStringLiteral("Chosen: table, 3.00 m across, ")))
        << described(*on.floor).toStdString();
    on.desk->choose({{Kind::scenery, "table", 0}, {Kind::person, "Ana", 0}});
    EXPECT_TRUE(described(*on.floor).contains(QStringLiteral("; Ana, ")));
}

TEST(FloorAccess, SaysWhereSomethingWasMovedTo) {
    OnFloor on;
    on.desk->choose({{Kind::scenery, "table", 0}});
    const QString before = described(*on.floor);
    QTest::keyClick(on.floor.get(), Qt::Key_Right);
    EXPECT_TRUE(support::came_to([&] { return described(*on.floor) != before; }));
}

TEST(FloorAccess, CountsWhatIsTooMuchToName) {
    plan::Plan plan = small_production();
    for (int i = 0; i < 9; ++i) {
        testing_support::add_scenery(plan, "case " + std::to_string(i),
                                     testing_support::box_piece({1.0 + i, 1.0}, 0.4, 0.4, 0.4));
    }
    OnFloor on{std::move(plan)};
    std::vector<Thing> all;
    for (int i = 0; i < 9; ++i) {
        all.push_back({Kind::scenery, "case " + std::to_string(i), 0});
    }
    on.desk->choose(all);
    EXPECT_TRUE(described(*on.floor).contains(QStringLiteral("and 3 more")));
}

} // namespace
} // namespace throwline::ui
