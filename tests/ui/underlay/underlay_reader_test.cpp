/// The scanned plan as the window reads it.

#include "ui/underlay/underlay_reader.h"

#include "edit/underlay.h"
#include "ui/desk_case.h"
#include "ui/underlay/underlay_notice.h"

#include <QImage>
#include <QPushButton>
#include <QTemporaryDir>
#include <fstream>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;

class UnderlayCase : public testing::Test {
  protected:
    void SetUp() override {
        desk = support::desk_with(plan::Plan{});
        QObject::connect(desk.get(), &Desk::said, desk.get(),
                         [this](const QString& sentence) { said << sentence; });
        reader = std::make_unique<UnderlayReader>(*desk);
    }
    void put(const char* name, int width_px, int height_px) const {
        QImage image{width_px, height_px, QImage::Format_RGB888};
        image.fill(Qt::gray);
        ASSERT_TRUE(image.save(folder.filePath(QString::fromUtf8(name))));
    }
    std::filesystem::path place() const { return folder.path().toStdString(); }
    void name_in_plan(const std::string& file) const {
        ASSERT_TRUE(desk->take(edit::underlay_laid(desk->context(), file, 100, 100)));
    }
    void wait() const {
        ASSERT_TRUE(came_to([&] { return !reader->is_reading(); }));
    }

    QTemporaryDir folder;
    std::unique_ptr<Desk> desk;
    QStringList said;
    std::unique_ptr<UnderlayReader> reader;
};

TEST_F(UnderlayCase, ReadsWhatThePlanNamesBesideItsFile) {
    put("scan.png", 30, 20);
    reader->set_folder(place());
    name_in_plan("scan.png");
    wait();
    ASSERT_NE(reader->pixels(), nullptr);
    EXPECT_EQ(reader->pixels()->width, 30);
    EXPECT_TRUE(reader->fault().isEmpty());
    desk->undo();
    EXPECT_EQ(reader->pixels(), nullptr);
}

TEST_F(UnderlayCase, ReadsAgainOnlyWhenThePlanNamesAnother) {
    put("scan.png", 30, 20);
    put("other.png", 50, 20);
    reader->set_folder(place());
    name_in_plan("scan.png");
    wait();
    const auto before = reader->pixels();
    ASSERT_TRUE(desk->take(edit::underlay_moved(desk->context(), {1, 1})));
    EXPECT_FALSE(reader->is_reading());
    EXPECT_EQ(reader->pixels(), before);
    name_in_plan("other.png");
    EXPECT_EQ(reader->pixels(), nullptr);
    wait();
    ASSERT_NE(reader->pixels(), nullptr);
    EXPECT_EQ(reader->pixels()->width, 50);
}

TEST_F(UnderlayCase, TellsWhatCannotBeReadUntilItCan) {
    UnderlayNotice notice{*reader};
    EXPECT_TRUE(notice.isHidden());
    reader->set_folder(place());
    name_in_plan("scan.png");
    wait();
    EXPECT_FALSE(notice.isHidden());
    EXPECT_TRUE(notice.words().contains(QStringLiteral("scan.png")))
        << notice.words().toStdString();
    std::ofstream{place() / "scan.png"} << "no picture";
    reader->read_again();
    wait();
    EXPECT_FALSE(notice.isHidden());
    put("scan.png", 30, 20);
    reader->read_again();
    wait();
    EXPECT_TRUE(notice.isHidden());
    EXPECT_NE(reader->pixels(), nullptr);
}

TEST_F(UnderlayCase, AsksForAFileWhileThePlanHasNone) {
    put("scan.png", 30, 20);
    name_in_plan("scan.png");
    EXPECT_FALSE(reader->fault().isEmpty());
    reader->set_folder(place());
    EXPECT_TRUE(reader->fault().isEmpty());
    wait();
    EXPECT_NE(reader->pixels(), nullptr);
}

TEST_F(UnderlayCase, LaysAPictureUnderItsNameBesideThePlan) {
    put("scan.png", 300, 200);
    reader->set_folder(place());
    bool laid = false;
    QObject::connect(reader.get(), &UnderlayReader::laid, [&] { laid = true; });
    reader->lay(place() / "scan.png");
    ASSERT_TRUE(came_to([&] { return laid; }));
    ASSERT_TRUE(desk->plan()->underlay);
    EXPECT_EQ(desk->plan()->underlay->file, "scan.png");
    EXPECT_EQ(desk->plan()->underlay->pixel_b, Vec2(300, 200));
    EXPECT_NE(reader->pixels(), nullptr);
    EXPECT_FALSE(reader->is_reading());
}

TEST_F(UnderlayCase, LaysAPictureByItsWholeNameWhereThePlanHasNoFile) {
    put("scan.png", 300, 200);
    reader->lay(place() / "scan.png");
    ASSERT_TRUE(came_to([&] { return desk->plan()->underlay.has_value(); }));
    EXPECT_EQ(desk->plan()->underlay->file, (place() / "scan.png").string());
    EXPECT_NE(reader->pixels(), nullptr);
}

TEST_F(UnderlayCase, KeepsWhatWasThereWhenAnotherCannotBeRead) {
    put("scan.png", 30, 20);
    reader->set_folder(place());
    name_in_plan("scan.png");
    reader->lay(place() / "none.png");
    ASSERT_TRUE(came_to([&] { return !said.isEmpty(); }));
    wait();
    EXPECT_EQ(desk->plan()->underlay->file, "scan.png");
    EXPECT_NE(reader->pixels(), nullptr);
    EXPECT_TRUE(said.front().contains(QStringLiteral("none.png"))) << said.front().toStdString();
}

TEST_F(UnderlayCase, OffersWhatCanBeDoneAboutAFault) {
    UnderlayNotice notice{*reader};
    int another = 0;
    int removal = 0;
    QObject::connect(&notice, &UnderlayNotice::another_wanted, [&] { ++another; });
    QObject::connect(&notice, &UnderlayNotice::removal_wanted, [&] { ++removal; });
    for (QPushButton* button : notice.findChildren<QPushButton*>()) {
        button->click();
    }
    EXPECT_EQ(another, 1);
    EXPECT_EQ(removal, 1);
}

} // namespace
} // namespace throwline::ui
