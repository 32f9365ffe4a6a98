#include "ui/floor/floor_case.h"

#include <QClipboard>
#include <QDropEvent>
#include <QMimeData>
#include <QUrl>
#include <set>

namespace throwline::ui {
namespace {

constexpr double kClose_m = 1e-6;
constexpr double kPixel_m = 0.02;

plan::Plan bare() {
    return testing_support::bare_room();
}

TEST(FloorHands, EveryHandHasANameOfItsOwn) {
    std::set<std::string_view> names;
    for (const HandRow& row : hands()) {
        EXPECT_EQ(&hand_row(row.id), &row);
        EXPECT_FALSE(row.title.empty());
        names.insert(row.name);
    }
    EXPECT_EQ(names.size(), hands().size());
}

TEST(FloorHands, ARoomIsDrawnByItsCornersAndClosesAtTheFirst) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::room);
    for (const Vec2& corner : {Vec2{1, 1}, Vec2{7, 1}, Vec2{7, 5}, Vec2{1, 5}, Vec2{1, 1}}) {
        on.click(corner, Qt::AltModifier);
    }
    ASSERT_EQ(on.plan().room.outline.size(), 4U);
    EXPECT_NEAR(area(on.plan().room.outline), 24.0, 0.4);
}

/// The degree sign is on no key that can be clicked here.
void type_edge(const OnFloor& on, const char* text) {
    on.type("1");
    on.floor->findChild<TypedLine*>()->setText(QString::fromUtf8(text));
    on.enter();
}

TEST(FloorHands, ARoomIsTypedAndClosedWithEnter) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::room);
    on.click({1, 1}, Qt::AltModifier);
    type_edge(on, "6 m 0°");
    type_edge(on, "4 m 90°");
    type_edge(on, "6 m 180°");
    on.key(Qt::Key_Return);
    EXPECT_NEAR(area(on.plan().room.outline), 24.0, 1e-4);
}

TEST(FloorHands, FlatsAreDrawnFromOnePlaceToAnother) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::flats);
    on.click({2, 5}, Qt::AltModifier);
    on.click({5.6, 5}, Qt::AltModifier);
    ASSERT_EQ(on.plan().scenery.size(), 1U);
    const auto& run = std::get<plan::FlatRun>(on.plan().scenery.front().shape);
    EXPECT_NEAR(run.total_width().m(), 3.6, kClose_m);
    EXPECT_EQ(on.floor->hand(), HandId::flats);
}

TEST(FloorHands, ADrapeGoesAlongItsPointsUntilEnter) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::drape);
    on.click({2, 5}, Qt::AltModifier);
    on.click({4, 5}, Qt::AltModifier);
    on.click({4, 7}, Qt::AltModifier);
    on.key(Qt::Key_Return);
    ASSERT_EQ(on.plan().scenery.size(), 1U);
    EXPECT_EQ(std::get<plan::Drape>(on.plan().scenery.front().shape).along.size(), 3U);
}

TEST(FloorHands, APipeIsAsLongAsTyped) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::pipe);
    on.click({2, 5}, Qt::AltModifier);
    on.move({3, 5}, Qt::AltModifier, false);
    on.type("4.2 m");
    on.enter();
    ASSERT_EQ(on.plan().pipes.size(), 1U);
    EXPECT_NEAR((on.plan().pipes.front().to - on.plan().pipes.front().from).norm(), 4.2, kClose_m);
}

TEST(FloorHands, BoxAndPlatformAreDrawnCornerToCorner) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::box);
    on.drag({2, 3}, {3, 5}, Qt::AltModifier);
    ASSERT_EQ(on.plan().scenery.size(), 1U);
    EXPECT_NEAR(std::get<plan::BoxPiece>(on.plan().scenery.front().shape).depth.m(), 2.0, kPixel_m);
    on.floor->set_hand(HandId::platform);
    on.press({5, 3}, Qt::AltModifier);
    on.release({5, 3}, Qt::AltModifier);
    on.type("2 m x 1 m");
    on.enter();
    ASSERT_EQ(on.plan().scenery.size(), 2U);
    const auto& riser = std::get<plan::Riser>(on.plan().scenery.back().shape);
    EXPECT_NEAR(riser.width.m(), 2.0, kClose_m);
    EXPECT_NEAR(riser.depth.m(), 1.0, kClose_m);
}

TEST(FloorHands, AColumnIsAsWideAsTyped) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::column);
    on.press({5, 3}, Qt::AltModifier);
    on.release({5, 3}, Qt::AltModifier);
    on.type("40 cm");
    on.enter();
    ASSERT_EQ(on.plan().scenery.size(), 1U);
    EXPECT_NEAR(std::get<plan::CylinderPiece>(on.plan().scenery.front().shape).diameter.m(), 0.4,
                kClose_m);
}

TEST(FloorHands, OpeningsGoIntoTheWallThatIsClicked) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::door);
    on.click({3, 0});
    on.floor->set_hand(HandId::window);
    on.click({10, 4});
    on.floor->set_hand(HandId::opening);
    on.click({3, 8});
    const std::vector<plan::Opening>& openings = on.plan().room.openings;
    ASSERT_EQ(openings.size(), 3U);
    EXPECT_EQ(openings[0].kind, plan::OpeningKind::door);
    EXPECT_EQ(openings[0].wall, 0);
    EXPECT_EQ(openings[1].kind, plan::OpeningKind::window);
    EXPECT_EQ(openings[1].wall, 1);
    EXPECT_EQ(openings[2].kind, plan::OpeningKind::opening);
}

TEST(FloorHands, WhatWasMeasuredIsCopiedAndStaysUntilEscape) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::measure);
    on.drag({0, 0}, {10, 8});
    on.key(Qt::Key_C, Qt::ControlModifier);
    const QString text = QApplication::clipboard()->text();
    EXPECT_EQ(text, QStringLiteral("12.81 m (across 10.00 m, up 8.00 m)"));
    on.key(Qt::Key_Escape);
    EXPECT_EQ(on.floor->hand(), HandId::measure);
    on.key(Qt::Key_Escape);
    EXPECT_EQ(on.floor->hand(), HandId::choose);
}

TEST(FloorHands, KeysAloneDrawAPipe) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::pipe);
    on.key(Qt::Key_Right, Qt::ShiftModifier);
    on.key(Qt::Key_Space);
    on.key(Qt::Key_Right, Qt::ShiftModifier);
    on.type("2 m");
    on.enter();
    ASSERT_EQ(on.plan().pipes.size(), 1U);
    EXPECT_NEAR((on.plan().pipes.front().to - on.plan().pipes.front().from).norm(), 2.0, kClose_m);
}

TEST(FloorHands, BackspaceTakesTheLastPointBack) {
    const OnFloor on{bare()};
    on.floor->set_hand(HandId::drape);
    on.click({2, 5}, Qt::AltModifier);
    on.click({4, 5}, Qt::AltModifier);
    on.click({4, 7}, Qt::AltModifier);
    on.key(Qt::Key_Backspace);
    on.key(Qt::Key_Return);
    ASSERT_EQ(on.plan().scenery.size(), 1U);
    EXPECT_EQ(std::get<plan::Drape>(on.plan().scenery.front().shape).along.size(), 2U);
}

QMimeData* item(const char* json) {
    auto* data = new QMimeData;
    data->setData(QStringLiteral("application/x-throwline-item"), json);
    return data;
}

TEST(FloorDrops, SomethingFromTheStoresIsPutDownWhereItIsLetGo) {
    const OnFloor on;
    const std::unique_ptr<QMimeData> data{item(R"({"shelf": "person", "item": "cast"})")};
    QDragEnterEvent enters{on.px({2, 6}).toPoint(), Qt::CopyAction, data.get(), Qt::LeftButton,
                           Qt::NoModifier};
    QApplication::sendEvent(on.floor.get(), &enters);
    EXPECT_TRUE(enters.isAccepted());
    QDragMoveEvent moves{on.px({2, 6}).toPoint(), Qt::CopyAction, data.get(), Qt::LeftButton,
                         Qt::NoModifier};
    QApplication::sendEvent(on.floor.get(), &moves);
    EXPECT_EQ(on.plan().people.size(), 1U);
    QDropEvent drops{on.px({2, 6}), Qt::CopyAction, data.get(), Qt::LeftButton, Qt::AltModifier};
    QApplication::sendEvent(on.floor.get(), &drops);
    ASSERT_EQ(on.plan().people.size(), 2U);
    const Thing person{Kind::person, on.plan().people.back().id.name, 0};
    EXPECT_NEAR(on.place(person).x(), 2.0, kPixel_m);
}

TEST(FloorDrops, AFileIsHandedOn) {
    const OnFloor on;
    QSignalSpy dropped{on.floor.get(), &Floor::file_dropped};
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(QStringLiteral("/somewhere/room.png"))});
    QDragEnterEvent enters{on.px({2, 6}).toPoint(), Qt::CopyAction, &data, Qt::LeftButton,
                           Qt::NoModifier};
    QApplication::sendEvent(on.floor.get(), &enters);
    QDropEvent drops{on.px({2, 6}), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier};
    QApplication::sendEvent(on.floor.get(), &drops);
    ASSERT_EQ(dropped.count(), 1);
    EXPECT_EQ(dropped.front().front().toString(), QStringLiteral("/somewhere/room.png"));
}

TEST(FloorDrops, WhatIsPutInTheMiddleComesToBeThere) {
    const OnFloor on{bare()};
    on.floor->put_in_middle({edit::Shelf::person, "cast"});
    ASSERT_EQ(on.plan().people.size(), 1U);
    const Thing person{Kind::person, on.plan().people.back().id.name, 0};
    EXPECT_LT((on.place(person) - on.floor->view().middle()).norm(), 0.5);
}

} // namespace
} // namespace throwline::ui
