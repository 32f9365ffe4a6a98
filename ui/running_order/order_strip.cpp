#include "ui/running_order/order_strip.h"

#include "ui/running_order/order_access.h"

#include <QAccessible>
#include <QApplication>
#include <QHelpEvent>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>
#include <QToolTip>
#include <algorithm>
#include <cmath>
#include <utility>

namespace throwline::ui {

namespace {

/// How near to the line of now the pointer takes hold of it.
constexpr double kReach_px = 6.0;
/// Kept free beside what is brought into view.
constexpr double kBeside_px = 40.0;

} // namespace

OrderStrip::OrderStrip(Desk& desk, MovePlayer& player, QWidget* parent)
    : QAbstractScrollArea{parent}, desk_{desk}, player_{player} {
    QAccessible::installFactory(&order_access);
    setAccessibleName(tr("Running order"));
    setFocusPolicy(Qt::StrongFocus);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(QFrame::NoFrame);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    viewport()->setMouseTracking(true);
    viewport()->setAutoFillBackground(false);
    connect(&desk_, &Desk::plan_changed, this, [this] {
        // What is held may be at another place now, or gone.
        drag_ = Drag::none;
        drop_.reset();
        rebuild();
    });
    connect(&desk_, &Desk::catalogue_changed, this, &OrderStrip::rebuild);
    connect(&desk_, &Desk::analysis_changed, this, &OrderStrip::take_analysis);
    connect(&desk_, &Desk::shown_changed, this, [this] { viewport()->update(); });
    connect(&desk_, &Desk::now_changed, this, &OrderStrip::show_now);
    connect(&desk_, &Desk::finding_pointed_at_changed, this, [this] { viewport()->update(); });
    // Pictures arrive one by one; their figures are lettered for all of them at once.
    arrived_.setSingleShot(true);
    arrived_.setInterval(0);
    connect(&arrived_, &QTimer::timeout, this, &OrderStrip::rebuild);
    connect(&pictures_, &FramePictures::arrived, &arrived_, qOverload<>(&QTimer::start));
    rebuild();
    take_analysis();
}

OrderStrip::~OrderStrip() = default;

QSize OrderStrip::sizeHint() const {
    return {600, minimumSizeHint().height() + 8};
}

QSize OrderStrip::minimumSizeHint() const {
    const int line = fontMetrics().height();
    return {200, 5 * line + 18 + horizontalScrollBar()->sizeHint().height()};
}

// What it shows ------------------------------------------------------------------------------

void OrderStrip::rebuild() {
    const AnalysisPtr known = known_ != nullptr && known_->plan == desk_.plan() ? known_ : nullptr;
    // Room for the scroll bar is kept free: were it not, pictures that just fit without it would
    // grow until it is needed, and shrink again.
    const double height = this->height() - horizontalScrollBar()->sizeHint().height();
    view_ = view_of(desk_, pictures_, known.get(), font(), height);
    const std::vector<OrderPlace> places = view_.places();
    if (std::find(places.begin(), places.end(), focus_) == places.end()) {
        focus_ = {};
    }
    if (!focus_ && !view_.order.empty()) {
        const OrderPlace at_now = view_.place_of(desk_.now());
        focus_ = at_now ? at_now : OrderPlace{0, -1};
    }
    tell_size();
    tell_now();
    viewport()->update();
}

void OrderStrip::tell_now() {
    const OrderPlace place = view_.place_of(desk_.now());
    const QString what = place ? tr("Now: %1. ").arg(view_.sentence(place)) : QString{};
    setAccessibleDescription(
        what
        + tr("Beats and their shots in the order in which they are played. Arrow keys go along, "
             "Enter goes there, Alt with an arrow key moves one earlier or later."));
}

void OrderStrip::tell_size() {
    const int extent = static_cast<int>(std::ceil(view_.layout.width));
    horizontalScrollBar()->setPageStep(viewport()->width());
    horizontalScrollBar()->setSingleStep(40);
    horizontalScrollBar()->setRange(0, std::max(0, extent - viewport()->width()));
}

void OrderStrip::take_analysis() {
    const AnalysisPtr analysis = desk_.analysis();
    if (analysis == nullptr || analysis->plan != desk_.plan() || analysis == known_) {
        viewport()->update();
        return;
    }
    known_ = analysis;
    ask_for_pictures();
    rebuild();
}

void OrderStrip::ask_for_pictures() {
    if (known_ == nullptr || known_->plan != desk_.plan()) {
        return;
    }
    double side = 0.0;
    for (const BeatBox& beat : view_.layout.beats) {
        for (const ShotBox& shot : beat.shots) {
            side = std::max({side, shot.picture.width(), shot.picture.height()});
        }
    }
    const int side_px = static_cast<int>(std::lround(side * devicePixelRatioF()));
    if (side_px > 0 && (asked_ != known_ || asked_side_px_ != side_px)) {
        asked_ = known_;
        asked_side_px_ = side_px;
        pictures_.ask(known_, side_px);
    }
}

std::optional<OrderMoment> OrderStrip::now() const {
    const OrderPlace place = view_.place_of(desk_.now());
    if (!place) {
        return std::nullopt;
    }
    // A shot that goes on into a later beat hangs on its first: on the way the beat counts.
    if (desk_.way() < 1.0) {
        return OrderMoment{view_.place_of({desk_.now().beat, {}}), desk_.way()};
    }
    return OrderMoment{place, 1.0};
}

OrderPainting OrderStrip::painting() const {
    OrderPainting what{view_, pictures_, desk_.plan(), theme_of(palette()), font(), now(), {}, {},
                       drop_, -1,        false};
    what.focus = hasFocus() ? focus_ : OrderPlace{};
    what.dragged = drag_ == Drag::carrying ? pressed_ : OrderPlace{};
    what.finding_pointed_at = desk_.finding_pointed_at();
    return what;
}

void OrderStrip::paintEvent(QPaintEvent* event) {
    QPainter painter{viewport()};
    painter.fillRect(event->rect(), floor_ground(theme_of(palette())));
    if (view_.order.empty()) {
        painter.setPen(paint::line_hue(sheet::Ink::note, theme_of(palette())));
        painter.drawText(viewport()->rect().adjusted(12, 0, -12, 0),
                         Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap,
                         tr("No beats yet. Add one, and people can move from mark to mark; shots "
                            "hang on the beats in which they are taken."));
        return;
    }
    const int left = horizontalScrollBar()->value();
    painter.translate(-left, 0);
    paint_order(painter, painting(), QRectF{event->rect().translated(left, 0)});
}

void OrderStrip::resizeEvent(QResizeEvent* event) {
    QAbstractScrollArea::resizeEvent(event);
    rebuild();
    ask_for_pictures();
}

void OrderStrip::changeEvent(QEvent* event) {
    QAbstractScrollArea::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) {
        rebuild();
        updateGeometry();
    }
}

void OrderStrip::scrollContentsBy(int dx, int /*dy*/) {
    if (editor_ != nullptr) {
        editor_->move(editor_->x() + dx, editor_->y());
    }
    viewport()->update();
}

QRect OrderStrip::shown_at(const OrderPlace& place) const {
    return view_.layout.box(place).translated(-horizontalScrollBar()->value(), 0).toAlignedRect();
}

void OrderStrip::show_place(const OrderPlace& place) {
    const QRectF box = view_.layout.box(place);
    QScrollBar& bar = *horizontalScrollBar();
    const double width = viewport()->width();
    const double room = std::min(kBeside_px, std::max(0.0, (width - box.width()) / 2.0));
    if (box.left() - room < bar.value()) {
        bar.setValue(static_cast<int>(box.left() - room));
    } else if (box.right() + room > bar.value() + width) {
        bar.setValue(static_cast<int>(std::min(box.right() + room - width, box.left() - room)));
    }
}

void OrderStrip::show_now() {
    if (const OrderPlace place = view_.place_of(desk_.now()); place && drag_ == Drag::none) {
        focus_ = place;
        show_place(place);
    }
    tell_now();
    viewport()->update();
}

void OrderStrip::set_focus_place(const OrderPlace& place) {
    focus_ = place;
    show_place(place);
    viewport()->update();
    tell_focus(*this);
}

// The pointer --------------------------------------------------------------------------------

QPointF OrderStrip::on_strip(const QPointF& on_viewport) const {
    return on_viewport + QPointF{static_cast<double>(horizontalScrollBar()->value()), 0.0};
}

bool OrderStrip::is_on_now_line(const QPointF& point) const {
    const auto moment = now();
    if (!moment) {
        return false;
    }
    const double x = view_.layout.x_of(*moment);
    const BeatBox& beat = view_.layout.beats[static_cast<std::size_t>(moment->place.beat)];
    const bool free_of_shots = !view_.layout.at(point).is_shot();
    return std::abs(point.x() - x) <= kReach_px
           && (point.y() <= beat.head.height() || free_of_shots);
}

void OrderStrip::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        return;
    }
    const QPointF point = on_strip(event->position());
    pressed_at_ = point;
    if (const FindingSpot* spot = view_.spot_at(point)) {
        if (desk_.analysis() == known_) {
            desk_.point_at_finding(spot->finding);
        }
        return;
    }
    pressed_ = view_.layout.at(point);
    if (is_on_now_line(point) || !pressed_) {
        drag_ = Drag::scrubbing;
        player_.stop();
        scrub(point.x());
    } else {
        drag_ = Drag::pressed;
        set_focus_place(pressed_);
    }
}

void OrderStrip::mouseMoveEvent(QMouseEvent* event) {
    const QPointF point = on_strip(event->position());
    switch (drag_) {
    case Drag::none:
        viewport()->setCursor(is_on_now_line(point) ? Qt::SplitHCursor
                              : view_.layout.at(point) || view_.spot_at(point) != nullptr
                                  ? Qt::PointingHandCursor
                                  : Qt::ArrowCursor);
        return;
    case Drag::pressed:
        if ((point - pressed_at_).manhattanLength() >= QApplication::startDragDistance()) {
            drag_ = Drag::carrying;
            viewport()->setCursor(Qt::ClosedHandCursor);
            carry(point);
        }
        return;
    case Drag::carrying:
        carry(point);
        return;
    case Drag::scrubbing:
        scrub(point.x());
        return;
    }
}

void OrderStrip::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        return;
    }
    const Drag drag = std::exchange(drag_, Drag::none);
    viewport()->setCursor(Qt::ArrowCursor);
    switch (drag) {
    case Drag::none:
    case Drag::scrubbing:
        break;
    case Drag::pressed:
        go_to(pressed_);
        break;
    case Drag::carrying:
        put_down();
        break;
    }
    drop_.reset();
    viewport()->update();
}

void OrderStrip::mouseDoubleClickEvent(QMouseEvent* event) {
    const OrderPlace place = view_.layout.at(on_strip(event->position()));
    drag_ = Drag::none;
    if (place) {
        rename(place);
    }
}

void OrderStrip::scrub(double x) {
    const auto moment = view_.layout.moment_at(x);
    if (!moment) {
        return;
    }
    edit::Now now = view_.now_of(moment->place);
    if (moment->way < 1.0) {
        now = moment_in(*desk_.plan(), now.beat, desk_.now().shot);
    }
    desk_.set_now(now);
    desk_.set_way(moment->way);
    const QScrollBar& bar = *horizontalScrollBar();
    const double in_view = x - bar.value();
    if (in_view < 0.0 || in_view > viewport()->width()) {
        horizontalScrollBar()->setValue(bar.value() + (in_view < 0.0 ? -20 : 20));
    }
}

void OrderStrip::carry(const QPointF& point) {
    drop_ = pressed_.is_shot() ? view_.layout.drop_of_shot(point.x())
                               : view_.layout.drop_of_beat(point.x());
    const double in_view = point.x() - horizontalScrollBar()->value();
    if (in_view < kBeside_px) {
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() - 16);
    } else if (in_view > viewport()->width() - kBeside_px) {
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() + 16);
    }
    viewport()->update();
}

void OrderStrip::put_down() {
    if (!drop_) {
        return;
    }
    const auto from_beat = pressed_.beat;
    const edit::Now carried = view_.now_of(pressed_);
    if (!pressed_.is_shot()) {
        const int to = drop_->beat > from_beat ? drop_->beat - 1 : drop_->beat;
        if (to != from_beat) {
            desk_.take(edit::beat_moved(desk_.context(), carried.beat, to));
        }
        return;
    }
    const bool same_beat = drop_->beat == from_beat;
    const int slot = same_beat && drop_->slot > pressed_.shot ? drop_->slot - 1 : drop_->slot;
    if (!same_beat || slot != pressed_.shot) {
        const auto& into = view_.order[static_cast<std::size_t>(drop_->beat)].beat;
        desk_.take(edit::shot_hung(desk_.context(), carried.shot, into, slot));
    }
}

void OrderStrip::wheelEvent(QWheelEvent* event) {
    const QPoint turn = event->pixelDelta().isNull() ? event->angleDelta() : event->pixelDelta();
    const int along = std::abs(turn.x()) > std::abs(turn.y()) ? turn.x() : turn.y();
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() - along);
    event->accept();
}

QString OrderStrip::tip_at(const QPointF& point) const {
    if (const FindingSpot* spot = view_.spot_at(point)) {
        return spot->sentences;
    }
    const OrderPlace place = view_.layout.at(point);
    return place ? view_.sentence(place) : QString{};
}

bool OrderStrip::viewportEvent(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        QToolTip::showText(help->globalPos(), tip_at(on_strip(help->pos())), viewport());
        return true;
    }
    return QAbstractScrollArea::viewportEvent(event);
}

} // namespace throwline::ui
