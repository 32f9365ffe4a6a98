#include "ui/viewfinder/frame_worker.h"

#include "sheet/frame_picture.h"
#include "ui/look/picture_image.h"

#include <QMetaObject>
#include <algorithm>
#include <chrono>

namespace throwline::ui {

namespace {

/// A picture while things move.
constexpr int kQuickSide_px = 240;
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
    return made;
}

bool same_stage(const FrameQuestion& a, const FrameQuestion& b) {
    return a.plan == b.plan && a.catalogue == b.catalogue && a.beat == b.beat && a.shot == b.shot;
}

QImage picture(const RaisedFrame& frame, int side_px) {
    return frame.scene.view && side_px > 0 ? image_of(*sheet::frame_picture(frame.scene, side_px))
                                           : QImage{};
}

} // namespace

FrameWorker::FrameWorker(QObject* parent)
    : QObject{parent}, thread_{[this](const std::stop_token& stop) { work(stop); }} {}

FrameWorker::~FrameWorker() = default;

void FrameWorker::ask(FrameQuestion question) {
    waiting_.put({++asked_, std::move(question)});
}

void FrameWorker::forget() {
    ++asked_;
    waiting_.clear();
}

void FrameWorker::work(const std::stop_token& stop) {
    FrameQuestion before;
    std::shared_ptr<const RaisedFrame> frame;
    while (const std::optional<Numbered> now = waiting_.take(stop)) {
        const FrameQuestion& question = now->question;
        if (frame == nullptr || !same_stage(before, question)) {
            frame = raised(question);
        }
        before = question;
        if (frame == nullptr) {
            continue;
        }
        const int quick_px = std::min(kQuickSide_px, question.side_px);
        post(now->number, {question, frame, picture(*frame, quick_px)});
        if (quick_px < question.side_px && !waiting_.came_within(kStill, stop)
            && !stop.stop_requested()) {
            post(now->number, {question, frame, picture(*frame, question.side_px)});
        }
    }
}

void FrameWorker::post(int number, FrameSeen frame) {
    auto made = std::make_shared<const FrameSeen>(std::move(frame));
    QMetaObject::invokeMethod(
        this,
        [this, number, made] {
            if (number == asked_) {
                Q_EMIT seen(made);
            }
        },
        Qt::QueuedConnection);
}

} // namespace throwline::ui
