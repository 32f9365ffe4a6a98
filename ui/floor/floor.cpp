#include "ui/floor/floor.h"

#include "edit/moves.h"
#include "edit/order.h"
#include "plan/picture_placing.h"
#include "sheet/scale_name.h"
#include "sheet/scale_words.h"
#include "ui/floor/floor_access.h"
#include "ui/floor/floor_painter.h"
#include "ui/floor/foot.h"
#include "ui/floor/hand.h"
#include "ui/floor/live_part.h"
#include "ui/floor/rulers.h"
#include "ui/floor/typed_line.h"

#include <QAccessible>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

/// The view is at rest when it has not moved for this long.
constexpr int kRest_ms = 120;
/// Of the view, painted beyond its edges on each side.
constexpr double kRim = 0.25;
/// Of the picture's rim, how much may be used up before another is asked for.
constexpr double kRimKept = 0.08;
constexpr double kFitMargin_px = 48.0;
constexpr double kZoomStep = 1.25;
/// Zooming to something goes no closer than 1:10.
constexpr double kClosest_mm_per_m = 100.0;
/// While a drag goes on the picture behind it follows when it is made in less than this.
constexpr double kFollows_ms = 60.0;

void include(sheet::Extent& extent, const Polygon& outline) {
    for (const Vec2& point : outline) {
        extent.include(point);
    }
}

void include_grid(sheet::Extent& extent, const plan::Plan& plan) {
    if (plan.grid && plan.grid->columns > 0 && plan.grid->rows > 0) {
        const plan::Grid& grid = *plan.grid;
        const Vec2 across = unit_at(grid.turn.rad()) * (grid.columns - 1) * grid.pitch_x.m();
        const Vec2 up = turned_left(unit_at(grid.turn.rad())) * (grid.rows - 1) * grid.pitch_y.m();
        include(extent,
                {grid.origin, grid.origin + across, grid.origin + up, grid.origin + across + up});
    }
}

/// The picture beneath the plan, of that many pixels.
void include_underlay(sheet::Extent& extent, const plan::Underlay& underlay,
                      const sheet::Pixels& pixels) {
    const plan::PicturePlacing placing{underlay};
    const auto right = static_cast<double>(pixels.width);
    const auto foot = static_cast<double>(pixels.height);
    for (const Vec2& corner : {Vec2{0, 0}, Vec2{right, 0}, Vec2{right, foot}, Vec2{0, foot}}) {
        extent.include(placing.at(corner));
    }
}

/// An empty floor is looked at as if a room of this size stood on it, metres.
sheet::Extent usual_extent() {
    sheet::Extent extent;
    extent.include(Vec2{-1.0, -1.0});
    extent.include(Vec2{9.0, 7.0});
    return extent;
}

std::vector<std::vector<Vec2>> ways_from(const plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    std::vector<std::vector<Vec2>> ways;
    const auto at = std::find_if(plan.beats.begin(), plan.beats.end(),
                                 [&](const plan::Beat& other) { return other.id == beat; });
    if (at != plan.beats.end() && at + 1 != plan.beats.end()) {
        for (edit::Walk& walk : edit::walks_into(plan, (at + 1)->id)) {
            ways.push_back(std::move(walk.points));
        }
    }
    return ways;
}

} // namespace

Floor::Floor(Desk& desk, QWidget* parent)
    : QWidget{parent}, desk_{desk}, bench_{std::make_unique<Bench>(desk)},
      live_{std::make_unique<LivePart>()}, ghost_{std::make_unique<LivePart>()},
      picture_{new FloorPicture{this}}, foot_{new FloorFoot{this}}, typed_{new TypedLine{this}} {
    QAccessible::installFactory(floor_access);
    setAccessibleName(QStringLiteral("Floor"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAcceptDrops(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setMinimumSize(240, 180);
    grabGesture(Qt::PinchGesture);
    bench_->theme = theme_of(palette());
    bench_->settings.pitch_m = edit::usual_pitch_m(*desk_.plan());
    hand_ = hand_row(hand_id_).make(*bench_);
    connect_desk();
    connect_parts();
    lay_parts();
    take_look();
    tell_choice(*this);
    ask(true);
}

Floor::~Floor() = default;

void Floor::connect_desk() {
    come_to_rest_.setSingleShot(true);
    come_to_rest_.setInterval(kRest_ms);
    connect(&come_to_rest_, &QTimer::timeout, this, [this] {
        const bool is_in_sight =
            picture_->latest() && picture_->latest()->of.in_sight == view().paper_window(0.0);
        if (!is_in_sight) {
            ask(false);
        }
    });
    connect(&desk_, &Desk::shown_changed, this, &Floor::look_at_another_plan);
    connect(&desk_, &Desk::plan_changed, this, [this] {
        bench_->settings.pitch_m = edit::usual_pitch_m(*desk_.plan());
        foot_->offer(*desk_.catalogue(), desk_.plan()->units);
        const edit::History& history = desk_.history();
        if (!history.can_undo() && !history.can_redo()) {
            fit();
        }
        tell_foot();
    });
    connect(&desk_, &Desk::now_changed, this, &Floor::look_at_another_plan);
    connect(&desk_, &Desk::catalogue_changed, this, &Floor::look_at_another_plan);
    connect(&desk_, &Desk::chosen_changed, this, [this] {
        bench_->forget();
        hand_->look_again();
        tell_choice(*this);
        tell_focus(*this);
        tell_foot();
        update();
    });
    connect(&desk_, &Desk::overlays_changed, this, [this] { ask(true); });
    connect(&desk_, &Desk::analysis_changed, this, [this] {
        if (!bench_->is_dragging() && desk_.analysis() != nullptr) {
            ask(false);
        }
    });
    connect(&desk_, &Desk::finding_pointed_at_changed, this, [this] {
        const AnalysisPtr analysis = desk_.analysis();
        const int index = desk_.finding_pointed_at();
        if (analysis != nullptr && index >= 0
            && index < static_cast<int>(analysis->findings.size())) {
            bring_into_view(analysis->findings[static_cast<std::size_t>(index)].at);
        }
        update();
    });
}

void Floor::connect_parts() {
    connect(picture_, &FloorPicture::arrived, this, qOverload<>(&QWidget::update));
    connect(bench_.get(), &Bench::changed, this, qOverload<>(&QWidget::update));
    connect(bench_.get(), &Bench::drag_changed, this, &Floor::begin_or_end_drag);
    connect(foot_, &FloorFoot::scale_wanted, this, &Floor::set_scale);
    connect(foot_, &FloorFoot::done, this, [this] { setFocus(); });
    connect(typed_, &TypedLine::changed, this,
            [this](const QString& text) { hand_->typed(text, false); });
    connect(typed_, &TypedLine::entered, this, [this](const QString& text) {
        const QString refused = hand_->typed(text, true);
        if (refused.isEmpty()) {
            close_typed_line();
        } else {
            typed_->refuse(refused);
        }
    });
    connect(typed_, &TypedLine::left, this, [this] {
        // A drag whose button was let go meanwhile has nobody to end it.
        if (!QGuiApplication::mouseButtons().testFlag(Qt::LeftButton)
            && hand_id_ == HandId::choose) {
            hand_->end();
        }
        close_typed_line();
    });
    foot_->offer(*desk_.catalogue(), desk_.plan()->units);
}

const FloorView& Floor::view() const {
    return bench_->view;
}

const edit::SnapSettings& Floor::snapping() const {
    return bench_->settings;
}

void Floor::set_snapping(const edit::SnapSettings& settings) {
    bench_->settings = settings;
}

void Floor::set_underlay(std::shared_ptr<const std::vector<sheet::ReducedPicture>> sizes) {
    underlay_ = std::move(sizes);
    ask(true);
}

void Floor::set_levels(FloorLevels levels) {
    levels_ = std::move(levels);
    ask(true);
}

const edit::Thing* Floor::foremost() const {
    return desk_.chosen().empty() ? nullptr : &desk_.chosen().back();
}

QRect Floor::shown_rect(const edit::Thing& thing) const {
    QRectF box;
    for (const Vec2& point : bench_->pick().outline(thing)) {
        const QPointF px = view().at(point);
        box =
            box.isNull() ? QRectF{px, QSizeF{1.0, 1.0}} : box.united(QRectF{px, QSizeF{1.0, 1.0}});
    }
    return box.toAlignedRect();
}

bool Floor::is_up_to_date() const {
    return !picture_->is_busy() && picture_->latest() && picture_->latest()->of.lifted.empty();
}

QString Floor::scale_shown() const {
    return QString::fromStdString(
        sheet::scale_words(view().ratio(), desk_.plan()->units, *desk_.catalogue()));
}

void Floor::set_hand(HandId hand) {
    close_typed_line();
    hand_->end();
    bench_->end_drag();
    bench_->hide_ghost();
    bench_->leave_out_of_snapping({});
    hand_ = hand_row(hand).make(*bench_);
    const bool is_another = hand != hand_id_;
    hand_id_ = hand;
    show_cursor();
    tell_foot();
    update();
    if (is_another) {
        Q_EMIT hand_changed(hand);
    }
}

/// What is known of the plan besides its picture.
void Floor::take_look() {
    bench_->forget();
    const edit::Context context = desk_.context();
    things_ = edit::things_on_floor(context);
    hidden_.clear();
    std::erase_if(things_, [&](const edit::Thing& thing) {
        const bool is_hidden = edit::is_hidden(context.plan, thing);
        if (is_hidden) {
            hidden_.insert(thing.name);
        }
        return is_hidden;
    });
    walks_ = ways_from(context.plan, context.now.beat);
}

/// Whether whole pictures are made fast enough to follow a drag; before the first nobody knows.
bool Floor::is_quick() const {
    return picture_->latest() && picture_->latest()->took_ms < kFollows_ms;
}

void Floor::look_at_another_plan() {
    if (bench_->is_dragging() && desk_.is_previewing()) {
        bench_->forget();
        const bool was_lifted = !lifted_.empty();
        if (bench_->follow() == Follow::alone && !was_lifted) {
            for (const edit::Thing& thing : bench_->dragged()) {
                lifted_.insert(thing.name);
            }
            ask(true);
        } else if (!was_lifted || is_quick() || !live_->keeps_up()) {
            ask(false);
        }
        update();
        return;
    }
    lifted_.clear();
    take_look();
    tell_choice(*this);
    hand_->look_again();
    ask(true);
    tell_foot();
}

void Floor::begin_or_end_drag() {
    live_->start_anew();
    if (!bench_->is_dragging() && !lifted_.empty()) {
        lifted_.clear();
        ask(true);
    }
    tell_foot();
}

PictureWanted Floor::wanted() const {
    PictureWanted wanted;
    wanted.plan = desk_.shown();
    wanted.catalogue = desk_.catalogue();
    wanted.now = desk_.now();
    wanted.overlays = desk_.overlays();
    wanted.hidden = hidden_;
    wanted.lifted = lifted_;
    wanted.underlay = underlay_;
    if (levels_.of == LevelsWanted{wanted.plan, wanted.catalogue, wanted.now.beat}) {
        wanted.levels = levels_.picture;
    }
    wanted.analysis = desk_.analysis();
    wanted.mm_per_m = view().mm_per_m;
    wanted.window = view().paper_window(kRim);
    wanted.in_sight = view().paper_window(0.0);
    wanted.theme = bench_->theme;
    wanted.px_per_mm = view().px_per_mm;
    wanted.device_pixel_ratio = devicePixelRatioF();
    return wanted;
}

void Floor::ask(bool afresh) {
    picture_->ask(wanted(), afresh);
    update();
}

/// Whether the picture reaches far enough beyond what is looked at, at its scale.
bool Floor::covers_view() const {
    return picture_->latest() && picture_->latest()->of.mm_per_m == view().mm_per_m
           && picture_->latest()->of.window.holds(view().paper_window(kRimKept));
}

void Floor::went_elsewhere() {
    if (!covers_view()) {
        ask(false);
    }
    come_to_rest_.start();
    tell_foot();
    update();
    Q_EMIT view_changed();
}

void Floor::pan(const QPointF& by_px) {
    bench_->view.pan(by_px, devicePixelRatioF());
    went_elsewhere();
}

void Floor::zoom_about(const QPointF& px, double factor) {
    bench_->view.zoom_about(px, view().mm_per_m * factor);
    went_elsewhere();
}

void Floor::zoom_in() {
    zoom_about(view().window_px.center(), kZoomStep);
}

void Floor::zoom_out() {
    zoom_about(view().window_px.center(), 1.0 / kZoomStep);
}

void Floor::fit() {
    sheet::Extent extent;
    for (const edit::Thing& thing : things_) {
        include(extent, bench_->pick().outline(thing));
    }
    include_grid(extent, *desk_.plan());
    // Where a room stands the picture may reach far beyond it.
    if (extent.empty && underlay_ != nullptr && desk_.plan()->underlay) {
        include_underlay(extent, *desk_.plan()->underlay, *underlay_->front().pixels);
    }
    bench_->view.show(extent.empty ? usual_extent() : extent, kFitMargin_px);
    is_fitted_ = isVisible();
    went_elsewhere();
}

void Floor::zoom_to(const std::vector<edit::Thing>& things) {
    sheet::Extent extent;
    for (const edit::Thing& thing : things) {
        include(extent, bench_->pick().outline(thing));
    }
    if (extent.empty) {
        fit();
        return;
    }
    FloorView& view = bench_->view;
    const double margin_px = std::min(view.window_px.width(), view.window_px.height()) / 5.0;
    view.show(extent, margin_px);
    if (view.mm_per_m > kClosest_mm_per_m) {
        view.zoom_about(view.window_px.center(), kClosest_mm_per_m);
    }
    went_elsewhere();
}

void Floor::bring_into_view(const Vec2& at) {
    const QRectF inner = view().window_px.adjusted(40, 40, -40, -40);
    if (!inner.contains(view().at(at))) {
        pan(view().window_px.center() - view().at(at));
    }
}

bool Floor::set_scale(const QString& name) {
    const Result<catalogue::DrawingScale> scale =
        sheet::scale_named(name.toStdString(), *desk_.catalogue());
    if (!scale) {
        desk_.say(QString::fromStdString(scale.error().message));
        tell_foot();
        return false;
    }
    bench_->view.zoom_about(view().window_px.center(), 1000.0 / scale->ratio);
    went_elsewhere();
    return true;
}

void Floor::put_in_middle(const edit::StoreItem& item) {
    bench_->take(edit::put_down(desk_.context(), item, view().middle()));
}

void Floor::tell_foot() {
    foot_->show_scale(scale_shown(), view().px_per_m(), desk_.plan()->units,
                      desk_.plan()->site.north);
    foot_->show_hint(hand_->hint());
}

void Floor::lay_parts() {
    const double ruler_px = ruler_width_px(QFontMetricsF{font()}.height());
    const int foot_px = foot_->sizeHint().height();
    foot_->setGeometry(0, height() - foot_px, width(), foot_px);
    FloorView& view = bench_->view;
    const QPointF old_middle = view.window_px.center();
    view.px_per_mm = logicalDpiX() / 25.4;
    view.window_px = QRectF{ruler_px, ruler_px, std::max(width() - ruler_px, 1.0),
                            std::max(height() - ruler_px - foot_px, 1.0)};
    const QPointF by = view.window_px.center() - old_middle;
    view.pan(QPointF{std::round(by.x()), std::round(by.y())}, devicePixelRatioF());
}

void Floor::resizeEvent(QResizeEvent*) {
    lay_parts();
    if (is_fitted_) {
        went_elsewhere();
    } else {
        fit();
    }
}

void Floor::showEvent(QShowEvent*) {
    lay_parts();
    if (!is_fitted_) {
        fit();
    }
}

void Floor::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    const QEvent::Type type = event->type();
    if (type == QEvent::PaletteChange || type == QEvent::FontChange
        || type == QEvent::StyleChange) {
        bench_->theme = theme_of(palette());
        lay_parts();
        ask(true);
    }
}

} // namespace throwline::ui
