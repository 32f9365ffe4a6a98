#include "ui/viewfinder/frame_view.h"

#include "checks/wording.h"
#include "edit/seen_thing.h"
#include "optics/picture_area.h"
#include "sheet/finding_rows.h"
#include "sheet/lit_reading.h"

#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

/// Pictures are not made larger than this, whatever the screen; what is wider is scaled up.
constexpr int kLargestSide_px = 2560;
/// How long a picture of an older plan is shown undimmed while its successor is made.
constexpr int kStale_ms = 250;
/// A run of wheel steps or keys ends when none came for this long.
constexpr int kRun_ms = 500;
constexpr double kUsualAspect = 16.0 / 9.0;

} // namespace

FrameView::FrameView(Desk& desk, QWidget* parent) : QWidget{parent}, desk_{desk} {
    setAccessibleName(tr("Picture of the shot"));
    setAccessibleDescription(keys_told());
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
    connect(&desk_, &Desk::finding_pointed_at_changed, this, &FrameView::look_at_finding);
    connect(&desk_, &Desk::analysis_changed, this, &FrameView::look_at_finding);
    look();
}

FrameView::~FrameView() = default;

QString FrameView::keys_told() {
    return tr(
        "Arrow keys pan and tilt, plus and minus zoom, S, T, H and C show safe areas, thirds, "
        "headroom and the centre, L the light of the lamps.");
}

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
    FrameQuestion question{desk_.shown(),
                           desk_.catalogue(),
                           in_beat ? desk_.now().beat : found->beats.front(),
                           looked_at,
                           std::min(kLargestSide_px, static_cast<int>(std::lround(side))),
                           shading_};
    if (frame_ != nullptr && frame_->question == question && is_fresh()) {
        return;
    }
    worker_.ask(std::move(question));
    stale_.start();
}

void FrameView::look_at_finding() {
    const AnalysisPtr known = desk_.analysis();
    const auto index = static_cast<std::size_t>(desk_.finding_pointed_at());
    finding_number_ =
        known != nullptr && desk_.finding_pointed_at() >= 0 && index < known->findings.size()
            ? sheet::finding_numbers(*known)[index]
            : 0;
    update();
}

void FrameView::take(std::shared_ptr<const FrameSeen> frame) {
    frame_ = std::move(frame);
    is_dimmed_ = false;
    if (is_fresh()) {
        stale_.stop();
    }
    if (pointed_ && !is_pressed_) {
        point_at(pointed_at_);
    }
    updateGeometry();
    update();
    Q_EMIT frame_changed();
}

bool FrameView::is_fresh() const {
    return frame_ != nullptr && frame_->question.plan == desk_.shown()
           && frame_->question.shot == shot() && frame_->question.shading == shading_;
}

bool FrameView::is_lit() const {
    return frame_ != nullptr
           && frame_->raised->shading_for(frame_->question.shading) == Shading::lit;
}

void FrameView::set_guides(const FrameGuides& guides) {
    if (guides != guides_) {
        guides_ = guides;
        update();
        Q_EMIT guides_changed();
    }
}

void FrameView::set_shading(Shading shading) {
    if (shading != shading_) {
        shading_ = shading;
        look();
        Q_EMIT shading_changed();
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
    const sheet::FrameSurface surface =
        sheet::surface_at(scene.stage, *scene.view, frame_point(at));
    if (surface.owner < 0) {
        return Pointed{tr("out of the room").toStdString(), {}, std::nullopt};
    }
    const plan::Plan& plan = *frame_->question.plan;
    const stage::Owner& owner = scene.stage.owners[static_cast<std::size_t>(surface.owner)];
    Pointed pointed{checks::said(owner), {}, edit::seen_thing(plan, owner)};
    if (is_lit()) {
        pointed.light = sheet::level_words(sheet::level_on_lx(scene.stage, surface),
                                           frame_->raised->needed_lx, plan.units);
    }
    return pointed;
}

void FrameView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    look();
}

} // namespace throwline::ui
