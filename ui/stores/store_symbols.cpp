#include "ui/stores/store_symbols.h"

#include "edit/make.h"
#include "sheet/floor_drawing.h"
#include "sheet/mark_bounds.h"
#include "sheet/marks.h"
#include "sheet/symbols.h"
#include "ui/paint/painter.h"

#include <QPainter>
#include <algorithm>
#include <optional>

namespace throwline::ui {

namespace {

constexpr double kMillimetres_per_inch = 25.4;
/// Logical pixels an inch of screen, as desktops count them.
constexpr double kPixels_per_inch = 96.0;
constexpr double kPixels_per_mm = kPixels_per_inch / kMillimetres_per_inch;
constexpr double kMargin_px = 2.0;

/// Symbols have no lettering, so nothing is ever measured.
class NoLettering : public sheet::TextMeasure {
  public:
    double width_mm(const std::string&, double, bool) const override { return 0.0; }
};

/// Paper millimetres a metre, so that the usual things of a shelf fill their place.
double scale_of(edit::StoresShelf shelf) {
    switch (shelf) {
    case edit::StoresShelf::flats:
    case edit::StoresShelf::furniture:
    case edit::StoresShelf::dressing:
        return 6.0;
    case edit::StoresShelf::lamps:
        return 16.0;
    case edit::StoresShelf::people:
        return 12.0;
    case edit::StoresShelf::cameras:
    case edit::StoresShelf::stands:
        return 8.0;
    case edit::StoresShelf::filters:
    case edit::StoresShelf::sound:
    case edit::StoresShelf::power:
        return 4.0;
    }
    return 6.0;
}

sheet::Overlays bare() {
    sheet::Overlays overlays;
    for (bool sheet::Overlays::* shown :
         {&sheet::Overlays::coverage, &sheet::Overlays::pools, &sheet::Overlays::findings,
          &sheet::Overlays::ground, &sheet::Overlays::sizes, &sheet::Overlays::lettering,
          &sheet::Overlays::underlay}) {
        overlays.*shown = false;
    }
    return overlays;
}

/// The thing alone on an empty floor.
std::optional<sheet::Drawing> drawn(const edit::StoreItem& item, double mm_per_m,
                                    const catalogue::Catalogue& catalogue) {
    const plan::Plan empty;
    const auto step = edit::put_down({empty, catalogue, {}}, item, Vec2::Zero());
    if (!step) {
        return std::nullopt;
    }
    const plan::Id<plan::Beat> beat =
        step->plan.beats.empty() ? plan::Id<plan::Beat>{} : step->plan.beats.front().id;
    sheet::FloorQuestion question{step->plan, catalogue, beat, {}};
    constexpr double kFar_mm = 1000.0;
    question.mm_per_m = mm_per_m;
    question.window = {-kFar_mm, -kFar_mm, 2.0 * kFar_mm, 2.0 * kFar_mm};
    question.overlays = bare();
    return sheet::floor_drawing(question, NoLettering{});
}

/// What the plan draws otherwise when it is in use: a lamp without its beam and stand, a support as
/// the circle that it takes.
sheet::Drawing plain(const edit::StoresRow& row, double mm_per_m,
                     const catalogue::Catalogue& catalogue) {
    sheet::Layer layer;
    const sheet::Pen pen = sheet::pen(sheet::Ink::standing, sheet::kStanding_mm);
    if (const catalogue::Support* support = catalogue.support(row.item)) {
        layer.marks.emplace_back(
            sheet::Circle{Vec2::Zero(), support->footprint_radius.m() * mm_per_m, pen, {}});
        layer.marks.emplace_back(sheet::Circle{Vec2::Zero(),
                                               std::max(support->column_radius.m() * mm_per_m, 0.3),
                                               pen, sheet::solid(sheet::Ink::standing)});
    }
    if (const catalogue::Instrument* lamp = catalogue.instrument(row.item)) {
        const Length largest = std::max(lamp->body_width, lamp->body_depth);
        sheet::add_instrument_symbol(layer.marks, Vec2::Zero(), largest.m() * mm_per_m, *lamp);
    }
    sheet::Drawing drawing;
    drawing.layers.push_back(std::move(layer));
    return drawing;
}

std::optional<QRectF> bounds_of(const sheet::Drawing& drawing) {
    const NoLettering measure;
    std::optional<QRectF> all;
    for (const sheet::Layer& layer : drawing.layers) {
        for (const sheet::Mark& mark : layer.marks) {
            const sheet::Box box = sheet::bounds_of(mark, measure);
            const QRectF rect{box.left, box.top, box.width, box.height};
            all = all ? all->united(rect) : rect;
        }
    }
    return all;
}

} // namespace

QPixmap StoreSymbols::symbol(const edit::StoresRow& row, const catalogue::Catalogue& catalogue,
                             const QSize& size, Theme theme, double pixel_ratio) {
    const QString key = QStringLiteral("%1/%2/%3/%4")
                            .arg(static_cast<int>(row.shelf))
                            .arg(QString::fromStdString(row.name))
                            .arg(static_cast<int>(theme))
                            .arg(pixel_ratio);
    if (const auto known = made_.constFind(key); known != made_.constEnd()) {
        return *known;
    }
    QPixmap pixmap{size * pixel_ratio};
    pixmap.setDevicePixelRatio(pixel_ratio);
    pixmap.fill(Qt::transparent);
    const double mm_per_m = scale_of(row.shelf);
    std::optional<sheet::Drawing> drawing = row.put && row.put->shelf != edit::Shelf::lamp
                                                ? drawn(*row.put, mm_per_m, catalogue)
                                                : plain(row, mm_per_m, catalogue);
    if (const auto bounds = drawing ? bounds_of(*drawing) : std::nullopt) {
        QPainter painter{&pixmap};
        painter.setRenderHint(QPainter::Antialiasing);
        const double room_x = (size.width() - 2.0 * kMargin_px) / bounds->width();
        const double room_y = (size.height() - 2.0 * kMargin_px) / bounds->height();
        const double scale = std::min({kPixels_per_mm, room_x, room_y});
        painter.translate(size.width() / 2.0, size.height() / 2.0);
        painter.scale(scale, scale);
        painter.translate(-bounds->center());
        paint::paint_drawing(painter, *drawing, theme);
    }
    made_.insert(key, pixmap);
    return pixmap;
}

} // namespace throwline::ui
