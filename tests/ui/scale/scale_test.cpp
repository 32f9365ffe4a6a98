/// On a screen with more than one device pixel to a logical one every picture is made for its
/// pixels, lines stay sharp, and everything is pointed at where it is seen. CTest runs these at
/// several scales of the screen.

#include "ui/desk_case.h"
#include "ui/floor/floor.h"
#include "ui/floor/floor_painter.h"
#include "ui/floor/floor_view.h"
#include "ui/look/look.h"
#include "ui/paint/ink_table.h"
#include "ui/paint/painter.h"
#include "ui/running_order/order_strip.h"
#include "ui/running_order/running_order.h"
#include "ui/sheets/page_preview.h"
#include "ui/stores/store_symbols.h"
#include "ui/viewfinder/frame_view.h"

#include <QApplication>
#include <QPainter>
#include <cmath>

namespace throwline::ui {
namespace {

using support::came_to;
using support::demo_plan;

double scale_asked_for() {
    const QByteArray factor = qgetenv("QT_SCALE_FACTOR");
    return factor.isEmpty() ? 1.0 : factor.toDouble();
}

QImage shown_by(QWidget& widget) {
    return widget.grab().toImage().convertToFormat(QImage::Format_RGB32);
}

/// Of a length or place in logical pixels, device pixels.
int device_px(double px, const QWidget& widget) {
    return static_cast<int>(std::lround(px * widget.devicePixelRatioF()));
}

TEST(ScaleOfTheScreen, IsTheOneAskedFor) {
    QWidget widget;
    EXPECT_EQ(widget.devicePixelRatioF(), scale_asked_for());
}

struct ShownFloor {
    std::unique_ptr<Desk> desk = support::desk_with(demo_plan("workshop_interview.json"));
    Floor floor{*desk};

    ShownFloor() {
        apply_theme(*qApp, ThemeWish::light);
        floor.resize(701, 503);
        floor.show();
        EXPECT_TRUE(came_to([&] { return desk->analysis() != nullptr && floor.is_up_to_date(); }));
    }
};

/// Pixel by pixel: nothing scales or smears the picture on its way to the screen.
TEST(FloorOnTheScreen, IsThePictureThatWasMade) {
    ShownFloor shown;
    const auto* picture = shown.floor.findChild<FloorPicture*>();
    ASSERT_NE(picture, nullptr);
    const QImage made = picture->latest()->image.convertToFormat(QImage::Format_RGB32);
    const QImage screen = shown_by(shown.floor);
    const FloorView& view = shown.floor.view();
    const sheet::Box& window = picture->latest()->of.window;
    const int left = device_px(view.origin_px.x() + window.left * view.px_per_mm, shown.floor);
    const int top = device_px(view.origin_px.y() + window.top * view.px_per_mm, shown.floor);
    int wrong = 0;
    int all = 0;
    // Walks are drawn on top, and lie inside the walls.
    const int rim = device_px(4.0, shown.floor);
    const int x0 = device_px(view.window_px.left(), shown.floor) + rim;
    const int x1 = device_px(view.window_px.right(), shown.floor) - rim;
    for (int y = device_px(view.window_px.top(), shown.floor) + rim;
         y < device_px(view.window_px.bottom(), shown.floor) - rim; ++y) {
        for (int x = x0; x < x1; ++x) {
            wrong += screen.pixel(x, y) == made.pixel(x - left, y - top) ? 0 : 1;
            ++all;
        }
    }
    EXPECT_LT(wrong, all / 200);
}

/// The marks of the upper ruler have no half-tones at their sides.
TEST(FloorOnTheScreen, HasRulersWithSharpMarks) {
    ShownFloor shown;
    const QImage screen = shown_by(shown.floor);
    const FloorView& view = shown.floor.view();
    const int y = device_px(view.window_px.top() - 3.0, shown.floor);
    const QRgb ground = panel_ground(Theme::light).rgb();
    const QRgb ink = paint::line_hue(sheet::Ink::dimension, Theme::light).rgb();
    int marks = 0;
    for (int x = device_px(view.window_px.left(), shown.floor) + 2; x < screen.width() - 2; ++x) {
        const QRgb at = screen.pixel(x, y);
        marks += at == ink ? 1 : 0;
        EXPECT_TRUE(at == ink || at == ground) << QColor{at}.name().toStdString() << " at " << x;
    }
    EXPECT_GT(marks, 10);
}

TEST(FloorOnTheScreen, IsPointedAtWhereThingsAreShown) {
    ShownFloor shown;
    int chosen = 0;
    for (const edit::Thing& thing : shown.floor.things()) {
        if (thing.kind != edit::Kind::scenery && thing.kind != edit::Kind::person) {
            continue;
        }
        shown.desk->choose({});
        const QPoint at = shown.floor.shown_rect(thing).center();
        QTest::mouseClick(&shown.floor, Qt::LeftButton, {}, at);
        ASSERT_FALSE(shown.desk->chosen().empty()) << thing.name;
        // What stands on or before it may be nearer.
        chosen += shown.desk->chosen().front() == thing ? 1 : 0;
        EXPECT_TRUE(shown.floor.shown_rect(shown.desk->chosen().front())
                        .adjusted(-4, -4, 4, 4)
                        .contains(at))
            << thing.name;
    }
    EXPECT_GE(chosen, 5);
}

TEST(FrameOnTheScreen, HasAPixelForEachOfTheScreen) {
    const auto desk = support::desk_with(demo_plan("cookery.json"));
    FrameView view{*desk};
    view.resize(300, 200);
    desk->set_now({desk->plan()->beats.front().id, desk->plan()->shots.front().id});
    view.show();
    const auto is_fine = [&] {
        const FrameSeen* frame = view.frame();
        return frame != nullptr
               && frame->image.width() + 1
                      >= std::floor(view.picture_box().width() * view.devicePixelRatioF());
    };
    EXPECT_TRUE(came_to(is_fine));
}

TEST(OrderOnTheScreen, HasPicturesWithAPixelForEachOfTheScreen) {
    const auto desk = support::desk_with(demo_plan("cookery.json"));
    RunningOrder order{*desk};
    order.resize(900, 180);
    order.show();
    const OrderStrip& strip = order.strip();
    const auto is_fine = [&](const plan::Shot& shot) {
        const FramePicture* picture = strip.pictures().of(shot.id);
        const OrderPlace place = strip.view().place_of({shot.beats.front(), shot.id});
        const ShotBox& box = strip.view()
                                 .layout.beats[static_cast<std::size_t>(place.beat)]
                                 .shots[static_cast<std::size_t>(place.shot)];
        const double wide = box.picture.width() * strip.devicePixelRatioF();
        return picture != nullptr && picture->image.width() + 1 >= std::floor(wide);
    };
    const std::vector<plan::Shot>& shots = desk->plan()->shots;
    EXPECT_TRUE(came_to([&] { return std::all_of(shots.begin(), shots.end(), is_fine); }));
}

TEST(OrderOnTheScreen, IsPointedAtWhereShotsAreShown) {
    const auto desk = support::desk_with(demo_plan("cookery.json"));
    RunningOrder order{*desk};
    order.resize(900, 180);
    order.show();
    for (const OrderPlace& place : order.strip().view().places()) {
        const QRect box = order.strip().shown_at(place);
        if (place.is_shot() && order.strip().viewport()->rect().contains(box.center())) {
            QTest::mouseClick(order.strip().viewport(), Qt::LeftButton, {}, box.center());
            EXPECT_EQ(desk->now().shot, order.strip().view().now_of(place).shot);
        }
    }
}

TEST(SymbolOnTheScreen, HasAPixelForEachOfTheScreen) {
    StoreSymbols symbols;
    edit::StoresRow row;
    row.shelf = edit::StoresShelf::lamps;
    row.item = row.name = support::shared_catalogue()->instruments.front().name;
    const QSize size{40, 30};
    const QPixmap made =
        symbols.symbol(row, *support::shared_catalogue(), size, Theme::light, scale_asked_for());
    EXPECT_EQ(made.deviceIndependentSize(), QSizeF{size});
}

/// Pixel by pixel, also where the paper does not begin on a whole logical pixel.
TEST(PageOnTheScreen, IsThePageAsItIsPainted) {
    auto page = std::make_shared<sheet::Drawing>();
    page->width_mm = 420.0;
    page->height_mm = 297.0;
    sheet::Layer layer;
    for (int i = 1; i < 20; ++i) {
        sheet::Path line;
        line.points = {{20.0 * i, 10.0}, {20.0 * i + 7.0, 280.0}};
        line.pen.width_mm = 0.5;
        layer.marks.emplace_back(line);
    }
    page->layers.push_back(layer);
    for (const QSize size : {QSize{700, 500}, QSize{701, 503}, QSize{640, 511}}) {
        PagePreview preview;
        preview.resize(size);
        preview.show(page);
        preview.QWidget::show();
        ASSERT_TRUE(came_to([&] { return preview.is_painted(); }));
        const QImage screen = shown_by(preview);
        const QRectF paper = preview.paper_rect();
        const double device_px_per_mm =
            paper.width() / page->width_mm * preview.devicePixelRatioF();
        QImage painted{QSize{device_px(paper.width(), preview), device_px(paper.height(), preview)},
                       QImage::Format_RGB32};
        painted.fill(Qt::white);
        QPainter painter{&painted};
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(device_px_per_mm, device_px_per_mm);
        paint::paint_drawing(painter, *page);
        painter.end();
        const int left = device_px(paper.left(), preview);
        const int top = device_px(paper.top(), preview);
        int wrong = 0;
        for (int y = 4; y < painted.height() - 4; ++y) {
            for (int x = 4; x < painted.width() - 4; ++x) {
                wrong += screen.pixel(left + x, top + y) == painted.pixel(x, y) ? 0 : 1;
            }
        }
        EXPECT_EQ(wrong, 0) << size.width() << " x " << size.height();
    }
}

} // namespace
} // namespace throwline::ui
