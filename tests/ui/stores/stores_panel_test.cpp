#include "ui/stores/stores_panel.h"

#include "edit/valid.h"
#include "ui/desk_case.h"
#include "ui/stores/own_item_form.h"
#include "ui/stores/store_symbols.h"
#include "ui/stores/stores_model.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLineEdit>
#include <QMimeData>
#include <QTemporaryDir>
#include <QTreeView>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::demo_plan;

struct Shown {
    QTemporaryDir folder;
    std::unique_ptr<Desk> desk = support::desk_with(demo_plan("cookery.json"));
    std::unique_ptr<StoresPanel> panel;
    std::vector<edit::StoreItem> put;
    QStringList said;

    Shown() {
        QObject::connect(desk.get(), &Desk::said, desk.get(),
                         [this](const QString& sentence) { said.append(sentence); });
        open();
    }
    void open() {
        panel = std::make_unique<StoresPanel>(*desk, nullptr, file());
        QObject::connect(panel.get(), &StoresPanel::put_wanted, panel.get(),
                         [this](const edit::StoreItem& item) { put.push_back(item); });
        panel->resize(280, 560);
        panel->show();
    }
    std::filesystem::path file() const {
        return std::filesystem::path{folder.path().toStdString()} / "own-items.json";
    }
    QModelIndex choose(const std::string& name) const {
        const QModelIndex index = panel->model().index_of(name);
        EXPECT_TRUE(index.isValid()) << name;
        panel->shelves().setCurrentIndex(index);
        return index;
    }
    void keep_dresser(const QString& name) const {
        OwnItemForm* form = panel->open_form(true);
        form->line("name").setText(name);
        form->line("width_m").setText(QStringLiteral("4 ft"));
        form->line("depth_m").setText(QStringLiteral("45 cm"));
        form->line("height_m").setText(QStringLiteral("1,8 m"));
        form->accept();
    }
};

TEST(StoresPanel, EnterPutsInTheMiddle) {
    const Shown shown;
    shown.choose("dining chair");
    QTest::keyClick(&shown.panel->shelves(), Qt::Key_Return);
    ASSERT_EQ(shown.put.size(), 1U);
    EXPECT_EQ(shown.put[0].shelf, edit::Shelf::stock);
    EXPECT_EQ(shown.put[0].item, "dining chair");
    shown.choose("tripod");
    QTest::keyClick(&shown.panel->shelves(), Qt::Key_Return);
    EXPECT_EQ(shown.put.size(), 1U) << "supports are counted, not put down";
}

TEST(StoresPanel, CarriesItemsUnderTheirOwnKind) {
    const Shown shown;
    const std::unique_ptr<QMimeData> data{
        shown.panel->model().mimeData({shown.choose("Fresnel 1 kW")})};
    ASSERT_NE(data, nullptr);
    const QJsonObject said =
        QJsonDocument::fromJson(data->data(QStringLiteral("application/x-throwline-item")))
            .object();
    EXPECT_EQ(said.value(QStringLiteral("shelf")).toString(), QStringLiteral("lamp"));
    EXPECT_EQ(said.value(QStringLiteral("item")).toString(), QStringLiteral("Fresnel 1 kW"));
}

TEST(StoresPanel, CountsAreTypedInPlace) {
    const Shown shown;
    shown.choose("dining chair");
    QTest::keyClick(&shown.panel->shelves(), Qt::Key_F2);
    auto* line = shown.panel->shelves().viewport()->findChild<QLineEdit*>();
    ASSERT_NE(line, nullptr);
    line->setText(QStringLiteral("6"));
    QTest::keyClick(line, Qt::Key_Return);
    ASSERT_TRUE(support::came_to([&] { return shown.desk->history().can_undo(); }));
    EXPECT_EQ(shown.desk->plan()->kit.back().item, "dining chair");
    EXPECT_EQ(shown.desk->plan()->kit.back().count, 6);
    EXPECT_EQ(shown.desk->history().undo_name(), "Set kit");
    EXPECT_EQ(shown.panel->model().row_at(shown.panel->shelves().currentIndex())->name,
              "dining chair")
        << "the line stays where it was";
}

TEST(StoresPanel, ACountThatIsNoneIsRefused) {
    const Shown shown;
    const QModelIndex index =
        shown.choose("dining chair").siblingAtColumn(StoresModel::owned_column);
    EXPECT_FALSE(shown.panel->model().setData(index, QStringLiteral("some"), Qt::EditRole));
    EXPECT_EQ(shown.said.size(), 1);
    EXPECT_FALSE(shown.desk->history().can_undo());
}

TEST(StoresPanel, SearchFindsAndOpensTheShelves) {
    const Shown shown;
    shown.panel->search(QStringLiteral("chair dining"));
    ASSERT_EQ(shown.panel->model().rowCount(), 1);
    EXPECT_TRUE(shown.panel->shelves().isExpanded(shown.panel->model().index(0, 0)));
    EXPECT_TRUE(shown.panel->model().index_of("dining chair").isValid());
    shown.panel->search({});
    EXPECT_GT(shown.panel->model().rowCount(), 5);
}

TEST(StoresPanel, OwnItemsAreKeptChangedAndRemoved) {
    Shown shown;
    shown.keep_dresser(QStringLiteral("Tall dresser"));
    ASSERT_NE(shown.desk->catalogue()->stock_item("Tall dresser"), nullptr);
    EXPECT_NEAR(shown.desk->catalogue()->stock_item("Tall dresser")->height.m(), 1.8, 1e-9);

    shown.choose("Tall dresser");
    OwnItemForm* form = shown.panel->open_form(false);
    ASSERT_NE(form, nullptr);
    form->line("name").setText(QStringLiteral("Short dresser"));
    form->line("height_m").setText(QStringLiteral("0.9 m"));
    form->accept();
    EXPECT_EQ(shown.desk->catalogue()->stock_item("Tall dresser"), nullptr);
    ASSERT_NE(shown.desk->catalogue()->stock_item("Short dresser"), nullptr);

    shown.choose("Short dresser");
    shown.panel->remove_own();
    EXPECT_EQ(shown.desk->catalogue()->stock_item("Short dresser"), nullptr);
}

TEST(StoresPanel, OwnItemsAreThereTheNextTime) {
    Shown shown;
    shown.keep_dresser(QStringLiteral("Tall dresser"));
    shown.desk = support::desk_with(demo_plan("cookery.json"));
    shown.panel.reset();
    shown.open();
    EXPECT_NE(shown.desk->catalogue()->stock_item("Tall dresser"), nullptr);
    const QModelIndex index = shown.choose("Tall dresser");
    EXPECT_TRUE(shown.panel->model().is_own(*shown.panel->model().row_at(index)));
}

TEST(StoresPanel, AnOwnItemThatThePlanNeedsStays) {
    Shown shown;
    shown.keep_dresser(QStringLiteral("Tall dresser"));
    ASSERT_TRUE(shown.desk->take(
        edit::put_down(shown.desk->context(), {edit::Shelf::stock, "Tall dresser"}, {3.0, 3.0})));
    shown.choose("Tall dresser");
    shown.panel->remove_own();
    EXPECT_NE(shown.desk->catalogue()->stock_item("Tall dresser"), nullptr);
    EXPECT_EQ(shown.said.size(), 1);
}

TEST(StoresPanel, AnOwnLampIsMadeLikeAnotherAndPutDown) {
    Shown shown;
    shown.choose("Fresnel 1 kW");
    OwnItemForm* form = shown.panel->open_form(true);
    ASSERT_NE(form, nullptr);
    EXPECT_TRUE(form->line("name").text().isEmpty());
    EXPECT_EQ(form->line("watts").text(), QStringLiteral("1000"));
    form->line("name").setText(QStringLiteral("The old spot"));
    form->line("spot_peak_cd").setText(QStringLiteral("81000"));
    form->line("clearance_m").setText(QStringLiteral("5 ft"));
    form->accept();
    const catalogue::Instrument* lamp = shown.desk->catalogue()->instrument("The old spot");
    ASSERT_NE(lamp, nullptr);
    EXPECT_EQ(lamp->spot.peak_cd, 81000.0);
    EXPECT_EQ(lamp->kind, catalogue::InstrumentKind::fresnel);
    EXPECT_NEAR(lamp->clearance.m(), 1.524, 1e-4);
    EXPECT_EQ(shown.desk->catalogue()->instrument("Fresnel 1 kW")->spot.peak_cd,
              support::shipped_catalogue().instrument("Fresnel 1 kW")->spot.peak_cd)
        << "the one that it was made like stays";
    QTest::keyClick(&shown.panel->shelves(), Qt::Key_Return);
    ASSERT_EQ(shown.put.size(), 1U) << "the new lamp is chosen";
    ASSERT_TRUE(shown.desk->take(edit::put_down(shown.desk->context(), shown.put[0], {3.0, 3.0})));
    EXPECT_EQ(shown.desk->plan()->lamps.back().instrument, "The old spot");
}

TEST(OwnItemForm, AsksWhatAKindNeeds) {
    const Shown shown;
    OwnItemForm* form = shown.panel->open_form(true);
    form->line("name").setText(QStringLiteral("Long zoom"));
    form->set_table("lenses");
    EXPECT_EQ(form->line("name").text(), QStringLiteral("Long zoom"));
    form->line("focal_min_mm").setText(QStringLiteral("100"));
    form->line("focal_max_mm").setText(QStringLiteral("50"));
    form->line("stop_wide").setText(QStringLiteral("4"));
    form->line("close_focus_m").setText(QStringLiteral("1,5 m"));
    form->line("image_circle_mm").setText(QStringLiteral("31"));
    form->line("length_mm").setText(QStringLiteral("300"));
    form->line("front_diameter_mm").setText(QStringLiteral("110"));
    form->line("hood_length_mm").setText(QStringLiteral("0"));
    form->accept();
    EXPECT_TRUE(form->isVisible());
    EXPECT_EQ(form->focusWidget(), &form->line("focal_max_mm"));
    EXPECT_FALSE(std::filesystem::exists(shown.file()));
    form->line("focal_max_mm").setText(QStringLiteral("400"));
    form->accept();
    ASSERT_NE(shown.desk->catalogue()->lens("Long zoom"), nullptr);
    EXPECT_EQ(shown.desk->catalogue()->lens("Long zoom")->stop_long, 4.0);
}

TEST(OwnItemForm, StaysAndSaysWhyWhileAValueCannotBe) {
    const Shown shown;
    OwnItemForm* form = shown.panel->open_form(true);
    form->line("name").setText(QStringLiteral("Shelf"));
    form->line("width_m").setText(QStringLiteral("wide"));
    form->accept();
    EXPECT_TRUE(form->isVisible());
    EXPECT_FALSE(std::filesystem::exists(shown.file()));
}

TEST(StoresModel, IsAModelOfItsKind) {
    const auto desk = support::desk_with(demo_plan("workshop_interview.json"));
    StoresModel model{*desk};
    const QAbstractItemModelTester tester{&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal};
    model.search(QStringLiteral("lamp"));
    model.search({});
    desk->toggle_units();
    EXPECT_GT(model.rowCount(), 0);
}

TEST(StoreSymbols, EverythingThatCanBePutDownHasOne) {
    const plan::Plan empty;
    StoreSymbols symbols;
    const catalogue::Catalogue& tables = support::shipped_catalogue();
    for (const edit::StoresRow& row : edit::stores_rows(empty, tables)) {
        if (!row.put) {
            continue;
        }
        const QImage image = symbols.symbol(row, tables, {46, 34}, Theme::light, 1.0).toImage();
        bool has_ink = false;
        for (int y = 0; y < image.height() && !has_ink; ++y) {
            for (int x = 0; x < image.width() && !has_ink; ++x) {
                has_ink = qAlpha(image.pixel(x, y)) > 0;
            }
        }
        EXPECT_TRUE(has_ink) << row.name;
    }
}

} // namespace
} // namespace throwline::ui
