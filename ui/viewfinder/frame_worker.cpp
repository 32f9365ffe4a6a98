#include "ui/viewfinder/frame_worker.h"

#include "checks/mark_light.h"
#include "sheet/frame_picture.h"
#include "sheet/lit_picture.h"
#include "ui/look/picture_image.h"

#include <QMetaObject>
#include <algorithm>
#include <chrono>

namespace throwline::ui {

namespace {

/// Pictures while things move are this large, or half as large where that took too long.
constexpr int kQuickSide_px = 240;
constexpr std::chrono::milliseconds kTooLong{100};
/// Pictures more than twice as large come in this size first: sharp enough to frame by, in less
/// than a quarter of the time.
constexpr int kSharpSide_px = 640;
/// How long nothing must be asked before the whole picture is made.
constexpr std::chrono::milliseconds kStill{80};

std::shared_ptr<const RaisedFrame> raised(const FrameQuestion& question) {
    const plan::Plan& plan = *question.plan;
    auto made = std::make_shared<RaisedFrame>();
    made->plan = question.plan;
    made->catalogue = question.catalogue;
    made->scene.shot = plan::find(plan, question.shot);
    made->scene.beat = plan::find(plan, question.beat);
    if (made->scene.shot == nullptr || made->scene.beat == nullptr) {
        return nullptr;
    }
    made->scene.stage = stage::raise(plan, *question.catalogue, question.beat, question.shot);
    made->scene.view =
        stage::view_of(plan, *question.catalogue, made->scene.stage, *made->scene.shot);
    made->words = sheet::frame_words(made->scene, plan.units);
    if (made->scene.view) {
        made->needed_lx = checks::needed_level_lx(plan, *made->scene.shot, *made->scene.view);
        made->has_light = sheet::has_light(made->scene.stage);
    }
    return made;
}

bool same_stage(const FrameQuestion& a, const FrameQuestion& b) {
    return a.plan == b.plan && a.catalogue == b.catalogue && a.beat == b.beat && a.shot == b.shot;
}

/// Null when the shot cannot be resolved; nothing when stopped.
std::optional<QImage> picture(const RaisedFrame& frame, Shading wish, int side_px,
                              const std::stop_token& stop) {
    const checks::ShotScene& scene = frame.scene;
    if (!scene.view || side_px <= 0) {
        return QImage{};
    }
    const auto pixels =
        frame.shading_for(wish) == Shading::lit
            ? sheet::lit_picture({scene.stage, *scene.view, *scene.shot, frame.needed_lx}, side_px,
                                 stop)
            : sheet::frame_picture_of(scene.stage, *scene.view, *scene.shot, side_px, stop);
    return pixels != nullptr ? std::optional{image_of(*pixels)} : std::nullopt;
}

/// Sides of the pictures that are made once things stand still, one after the other.
std::vector<int> whole_sides_px(int side_px) {
    return side_px <= 2 * kSharpSide_px ? std::vector{side_px}
                                        : std::vector{kSharpSide_px, side_px};
}

} // namespace

FrameWorker::FrameWorker(QObject* parent)
    : QObject{parent}, thread_{[this](const std::stop_token& stop) { work(stop); }} {}

FrameWorker::~FrameWorker() {
    thread_.request_stop();
    waiting_.clear();
}

void FrameWorker::ask(FrameQuestion question) {
    waiting_.put({++asked_, std::move(question)});
}

void FrameWorker::forget() {
    oldest_ = ++asked_;
    waiting_.clear();
}

void FrameWorker::work(const std::stop_token& stop) {
    FrameQuestion before;
    std::shared_ptr<const RaisedFrame> frame;
    bool is_slow = false;
    while (const std::optional<Numbered> now = waiting_.take(stop)) {
        const FrameQuestion& question = now->question;
        if (frame == nullptr || !same_stage(before, question)) {
            frame = raised(question);
        }
        before = question;
        if (frame == nullptr) {
            continue;
        }
        // While a hand moves, a small picture that is a little late is better than none.
        const int quick_px =
            std::min(is_slow ? kQuickSide_px / 2 : kQuickSide_px, question.side_px);
        const auto start = std::chrono::steady_clock::now();
        post(now->number, {question, frame, *picture(*frame, question.shading, quick_px, {})});
        const auto took = std::chrono::steady_clock::now() - start;
        is_slow = took > (is_slow ? kTooLong / 4 : kTooLong);
        if (quick_px >= question.side_px || waiting_.came_within(kStill, stop)) {
            continue;
        }
        for (const int side_px : whole_sides_px(question.side_px)) {
            auto whole = picture(*frame, question.shading, side_px, waiting_.superseded());
            if (!whole) {
                break;
            }
            post(now->number, {question, frame, std::move(*whole)});
        }
    }
}

void FrameWorker::post(int number, FrameSeen frame) {
    auto made = std::make_shared<const FrameSeen>(std::move(frame));
    QMetaObject::invokeMethod(
        this,
        [this, number, made] {
            if (number >= oldest_) {
                Q_EMIT seen(made);
            }
        },
        Qt::QueuedConnection);
}

} // namespace throwline::ui
