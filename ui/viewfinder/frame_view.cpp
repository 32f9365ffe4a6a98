#include "ui/viewfinder/frame_view.h"

#include "checks/wording.h"
#include "edit/seen_thing.h"
#include "optics/picture_area.h"
#include "ui/look/lozenge.h"
#include "ui/look/picture_image.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

/// Pictures are not made larger than this, whatever the screen.
constexpr int kLargestSide_px = 640;
/// How long a picture of an older plan is shown undimmed while its successor is made.
constexpr int kStale_ms = 250;
/// A run of wheel steps or keys ends when none came for this long.
constexpr int kRun_ms = 500;
constexpr double kUsualAspect = 16.0 / 9.0;
/// Farther than any room.
constexpr double kSight_m = 1000.0;
/// An arrow key turns by this much, with Shift by five times as much.
constexpr double kTurn_deg = 1.0;
/// A notch of the wheel.
constexpr double kZoom = 1.06;
constexpr double kNotch = 120.0;

bool is_view_key(int key, Qt::KeyboardModifiers modifiers) {
    if ((modifiers & ~(Qt::ShiftModifier | Qt::KeypadModifier)) != Qt::NoModifier) {
        return false;
    }
    switch (key) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_Plus:
    case Qt::Key_Equal:
    case Qt::Key_Minus:
    case Qt::Key_S:
    case Qt::Key_T:
    case Qt::Key_H:
    case Qt::Key_C:
    case Qt::Key_Escape:
        return true;
    default:
        return false;
    }
}

} // namespace

FrameView::FrameView(Desk& desk, QWidget* parent) : QWidget{parent}, desk_{desk} {
    setAccessibleName(tr("Picture of the shot"));
    setAccessibleDescription(
        tr("Arrow keys pan and tilt, plus and minus zoom, S, T, H and C show safe "
           "areas, thirds, headroom and the centre."));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    QSizePolicy policy{QSizePolicy::Expanding, QSizePolicy::Expanding};
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    run_.setSingleShot(true);
    run_.setInterval(kRun_ms);
    stale_.setSingleShot(true);
    stale_.setInterval(kStale_ms);
    connect(&run_, &QTimer::timeout, this, &FrameView::finish);
    connect(&stale_, &QTimer::timeout, this, [this] {
        is_dimmed_ = !is_fresh();
        update();
    });
    connect(&worker_, &FrameWorker::seen, this, &FrameView::take);
    connect(&desk_, &Desk::shown_changed, this, &FrameView::look);
    connect(&desk_, &Desk::now_changed, this, &FrameView::look);
    connect(&desk_, &Desk::chosen_changed, this, &FrameView::look);
    connect(&desk_, &Desk::catalogue_changed, this, &FrameView::look);
    connect(&desk_, &Desk::plan_changed, this, &FrameView::let_go);
    connect(&desk_, &Desk::finding_pointed_at_changed, this, qOverload<>(&QWidget::update));
    look();
}

FrameView::~FrameView() = default;

// What is seen --------------------------------------------------------------------------------

plan::Id<plan::Shot> FrameView::shot() const {
    return edit::shot_looked_at(desk_.shown_context(), desk_.chosen());
}

void FrameView::look() {
    const plan::Id<plan::Shot> looked_at = shot();
    const plan::Shot* found = plan::find(*desk_.shown(), looked_at);
    if (found == nullptr) {
        worker_.forget();
        frame_.reset();
        Q_EMIT frame_changed();
        update();
        return;
    }
    const bool in_beat =
        std::find(found->beats.begin(), found->beats.end(), desk_.now().beat) != found->beats.end();
    const double side = std::max(width(), height()) * devicePixelRatioF();
    FrameQuestion question{desk_.shown(), desk_.catalogue(),
                           in_beat ? desk_.now().beat : found->beats.front(), looked_at,
                           std::min(kLargestSide_px, static_cast<int>(std::lround(side)))};
    if (frame_ != nullptr && frame_->question == question && is_fresh()) {
        return;
    }
    worker_.ask(std::move(question));
    stale_.start();
}

void FrameView::take(std::shared_ptr<const FrameSeen> frame) {
    frame_ = std::move(frame);
    is_dimmed_ = false;
    stale_.stop();
    updateGeometry();
    update();
    Q_EMIT frame_changed();
}

bool FrameView::is_fresh() const {
    return frame_ != nullptr && frame_->question.plan == desk_.shown()
           && frame_->question.shot == shot();
}

void FrameView::set_guides(const FrameGuides& guides) {
    if (guides != guides_) {
        guides_ = guides;
        update();
        Q_EMIT guides_changed();
    }
}

int FrameView::heightForWidth(int width) const {
    double aspect = kUsualAspect;
    if (frame_ != nullptr && frame_->raised->scene.view) {
        aspect = optics::aspect_of(frame_->raised->scene.view->frame);
    }
    return static_cast<int>(std::lround(width / std::max(1.0, aspect)));
}

QRectF FrameView::picture_box() const {
    if (frame_ == nullptr || frame_->image.isNull()) {
        return {};
    }
    const QSizeF size = QSizeF{frame_->image.size()}.scaled(QSizeF{this->size()} - QSizeF{4.0, 4.0},
                                                            Qt::KeepAspectRatio);
    return {QPointF{(width() - size.width()) / 2.0, (height() - size.height()) / 2.0}, size};
}

Vec2 FrameView::frame_point(const QPointF& at) const {
    const QRectF box = picture_box();
    return {2.0 * (at.x() - box.left()) / box.width() - 1.0,
            1.0 - 2.0 * (at.y() - box.top()) / box.height()};
}

std::optional<FrameView::Pointed> FrameView::pointed(const QPointF& at) const {
    if (!picture_box().contains(at)) {
        return std::nullopt;
    }
    const checks::ShotScene& scene = frame_->raised->scene;
    const auto hit = scene.stage.rays->nearest_hit(scene.view->pose.lens,
                                                   scene.view->frame.ray_direction(frame_point(at)),
                                                   kSight_m, {scene.view->owner, -1});
    if (!hit) {
        return Pointed{tr("out of the room").toStdString(), std::nullopt};
    }
    const stage::Owner& owner = scene.stage.owners[static_cast<std::size_t>(hit->owner)];
    return Pointed{checks::said(owner), edit::seen_thing(*frame_->question.plan, owner)};
}

void FrameView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    look();
}

// Painting ------------------------------------------------------------------------------------

void FrameView::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter{this};
    const Theme theme = theme_of(palette());
    const QRectF box = picture_box();
    if (box.isEmpty()) {
        paint_nothing(painter);
    } else {
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.setOpacity(is_dimmed_ ? 0.45 : 1.0);
        paint_in_box(painter, box, frame_->image);
        painter.setOpacity(1.0);
        paint_guides(painter, box, guides_, frame_->raised->scene.shot->size);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen{paint::hue(sheet::Ink::standing, theme), 1.0});
        painter.drawRect(box);
        paint_finding(painter);
        paint_pointed(painter);
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen{choice_hue(theme), 2.0});
        const QRectF ring = box.isEmpty() ? QRectF{rect()} : box.adjusted(-1, -1, 1, 1);
        painter.drawRect(ring.intersected(QRectF{rect()}.adjusted(1, 1, -1, -1)));
    }
}

void FrameView::paint_nothing(QPainter& painter) {
    const Theme theme = theme_of(palette());
    QColor edge = paint::line_hue(sheet::Ink::note, theme);
    painter.fillRect(rect(), floor_ground(theme));
    painter.setPen(QPen{edge, 1.0, Qt::DashLine});
    painter.drawRect(QRectF{rect()}.adjusted(0.5, 0.5, -0.5, -0.5));
}

void FrameView::paint_pointed(QPainter& painter) {
    if (!pointed_ || is_aiming_) {
        return;
    }
    const Theme theme = theme_of(palette());
    const QString name = QString::fromStdString(pointed_->name);
    const QRectF box = picture_box();
    const QFontMetricsF metrics{font()};
    const QSizeF size{metrics.horizontalAdvance(name) + 12.0, metrics.height() + 4.0};
    const QRectF label{QPointF{box.left() + 4.0, box.bottom() - size.height() - 4.0}, size};
    painter.setPen(Qt::NoPen);
    QColor ground = floor_ground(theme);
    ground.setAlpha(225);
    painter.setBrush(ground);
    painter.drawRoundedRect(label, 3, 3);
    painter.setPen(paint::hue(sheet::Ink::lettering, theme));
    painter.drawText(label, Qt::AlignCenter, name);
}

/// The place that a finding is about, with its number; at the edge with a barb towards it when it
/// lies outside the frame.
void FrameView::paint_finding(QPainter& painter) {
    const AnalysisPtr analysis = desk_.analysis();
    const int index = desk_.finding_pointed_at();
    if (analysis == nullptr || index < 0 || !is_fresh()) {
        return;
    }
    const checks::Finding& finding = analysis->findings[static_cast<std::size_t>(index)];
    const checks::ShotScene& scene = frame_->raised->scene;
    std::optional<Vec3> place;
    if (!finding.things.empty()) {
        place = stage::look_point(scene.stage, finding.things.front());
    }
    const auto at = scene.view->frame.project(place.value_or(raised(finding.at, 0.0)));
    if (!at) {
        return;
    }
    const QRectF box = picture_box();
    const Vec2 inside = at->cwiseMax(-0.86).cwiseMin(0.86);
    const QPointF centre{box.center().x() + inside.x() * box.width() / 2.0,
                         box.center().y() - inside.y() * box.height() / 2.0};
    const Theme theme = theme_of(palette());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen{severity_hue(finding.severity, theme), 2.0});
    painter.setBrush(Qt::NoBrush);
    if (inside == *at) {
        painter.drawEllipse(centre, 9.0, 9.0);
        paint_lozenge(painter, centre + QPointF{0.0, -20.0}, index + 1, finding.severity, theme);
        return;
    }
    const Vec2 way = (*at - inside).normalized();
    const QPointF out{way.x() * 26.0, -way.y() * 26.0};
    painter.drawLine(centre, centre + out);
    paint_lozenge(painter, centre, index + 1, finding.severity, theme);
}

// The pointer ---------------------------------------------------------------------------------

std::optional<edit::HeldAim> FrameView::hold() const {
    if (frame_ == nullptr || !frame_->raised->scene.view || frame_->question.plan != desk_.plan()) {
        return std::nullopt;
    }
    return edit::held_aim(*desk_.plan(), *frame_->raised->scene.view);
}

void FrameView::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && picture_box().contains(event->position())) {
        finish();
        is_pressed_ = true;
        pressed_at_ = event->position();
    }
}

void FrameView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    if (!is_pressed_) {
        pointed_ = pointed(at);
        setCursor(pointed_ && pointed_->thing ? Qt::PointingHandCursor : Qt::ArrowCursor);
        update();
        return;
    }
    if (!is_aiming_) {
        if ((at - pressed_at_).manhattanLength() < QApplication::startDragDistance()) {
            return;
        }
        held_ = hold();
        if (!held_) {
            is_pressed_ = false;
            return;
        }
        is_aiming_ = true;
        setCursor(Qt::ClosedHandCursor);
    }
    going_on_ = edit::aimed_towards(
        desk_.context(), *held_,
        edit::direction_for_drag(held_->view, frame_point(pressed_at_), frame_point(at)));
    desk_.preview(*going_on_);
}

void FrameView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !is_pressed_) {
        return;
    }
    is_pressed_ = false;
    if (is_aiming_) {
        is_aiming_ = false;
        finish();
        return;
    }
    const auto there = pointed(event->position());
    if (there && there->thing) {
        std::vector<edit::Thing> things{*there->thing};
        if (event->modifiers().testFlag(Qt::ShiftModifier)) {
            things.insert(things.begin(), desk_.chosen().begin(), desk_.chosen().end());
        }
        desk_.choose(std::move(things));
    }
}

void FrameView::leaveEvent(QEvent* event) {
    pointed_.reset();
    update();
    QWidget::leaveEvent(event);
}

void FrameView::wheelEvent(QWheelEvent* event) {
    zoom_by(std::pow(kZoom, event->angleDelta().y() / kNotch));
    event->accept();
}

// Runs of small steps: one undo for all of them -------------------------------------------------

void FrameView::turn_by(Angle left, Angle up) {
    if (!held_ || factor_ != 1.0) {
        finish();
        held_ = hold();
    }
    if (held_) {
        left_ = left_ + left;
        up_ = up_ + up;
        going_on_ = edit::aimed_off(desk_.context(), *held_, left_, up_);
        show_going_on();
    }
}

void FrameView::zoom_by(double factor) {
    if (!held_ || left_ != Angle{} || up_ != Angle{}) {
        finish();
        held_ = hold();
    }
    if (held_) {
        factor_ *= factor;
        going_on_ = edit::zoomed(desk_.context(), *held_, factor_);
        show_going_on();
    }
}

void FrameView::show_going_on() {
    desk_.preview(*going_on_);
    run_.start();
}

void FrameView::finish() {
    run_.stop();
    const auto step = std::exchange(going_on_, std::nullopt);
    let_go();
    if (step) {
        desk_.take(*step);
    }
}

void FrameView::let_go() {
    run_.stop();
    held_.reset();
    going_on_.reset();
    left_ = {};
    up_ = {};
    factor_ = 1.0;
    is_aiming_ = false;
    setCursor(Qt::ArrowCursor);
}

void FrameView::focusOutEvent(QFocusEvent* event) {
    finish();
    QWidget::focusOutEvent(event);
}

bool FrameView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (is_view_key(key->key(), key->modifiers())) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void FrameView::keyPressEvent(QKeyEvent* event) {
    if (!is_view_key(event->key(), event->modifiers())) {
        QWidget::keyPressEvent(event);
        return;
    }
    const bool far = event->modifiers().testFlag(Qt::ShiftModifier);
    const Angle turn = Angle::degrees(kTurn_deg * (far ? 5.0 : 1.0));
    FrameGuides guides = guides_;
    switch (event->key()) {
    case Qt::Key_Left:
        turn_by(turn, {});
        break;
    case Qt::Key_Right:
        turn_by(-turn, {});
        break;
    case Qt::Key_Up:
        turn_by({}, turn);
        break;
    case Qt::Key_Down:
        turn_by({}, -turn);
        break;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoom_by(kZoom);
        break;
    case Qt::Key_Minus:
        zoom_by(1.0 / kZoom);
        break;
    case Qt::Key_S:
        guides.safe_areas = !guides.safe_areas;
        break;
    case Qt::Key_T:
        guides.thirds = !guides.thirds;
        break;
    case Qt::Key_H:
        guides.headroom = !guides.headroom;
        break;
    case Qt::Key_C:
        guides.cross = !guides.cross;
        break;
    case Qt::Key_Escape:
        let_go();
        desk_.end_preview();
        break;
    default:
        break;
    }
    set_guides(guides);
    event->accept();
}

} // namespace throwline::ui
