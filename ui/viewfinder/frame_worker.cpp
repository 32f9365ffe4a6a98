#include "ui/viewfinder/frame_worker.h"

#include "sheet/frame_picture.h"
#include "ui/look/picture_image.h"

#include <QMetaObject>
#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <utility>

namespace throwline::ui {

namespace {

/// A picture while things move.
constexpr int kQuickSide_px = 240;
/// How long nothing must be asked before the whole picture is made.
constexpr std::chrono::milliseconds kStill{80};

struct Numbered {
    int number = 0;
    FrameQuestion question;
};

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

QImage picture(const RaisedFrame& frame, Shading shading, int side_px) {
    if (!frame.scene.view || side_px <= 0) {
        return {};
    }
    switch (shading) {
    case Shading::plain:
        return image_of(*sheet::frame_picture(frame.scene, side_px));
    case Shading::lit:
        return image_of(*sheet::frame_picture(frame.scene, side_px));
    }
    return {};
}

} // namespace

struct FrameWorker::Shared {
    std::mutex guard;
    std::condition_variable_any changed;
    std::optional<Numbered> waiting;
};

FrameWorker::FrameWorker(QObject* parent)
    : QObject{parent}, shared_{std::make_unique<Shared>()},
      thread_{[this](const std::stop_token& stop) { work(stop); }} {}

FrameWorker::~FrameWorker() = default;

void FrameWorker::ask(FrameQuestion question) {
    {
        const std::lock_guard lock{shared_->guard};
        shared_->waiting = Numbered{++asked_, std::move(question)};
    }
    shared_->changed.notify_one();
}

void FrameWorker::forget() {
    const std::lock_guard lock{shared_->guard};
    ++asked_;
    shared_->waiting.reset();
}

void FrameWorker::work(const std::stop_token& stop) {
    Numbered now;
    std::shared_ptr<const RaisedFrame> frame;
    const auto is_asked = [&] { return shared_->waiting.has_value(); };
    while (true) {
        FrameQuestion before = std::exchange(now.question, {});
        {
            std::unique_lock lock{shared_->guard};
            if (!shared_->changed.wait(lock, stop, is_asked)) {
                return;
            }
            now = std::move(*shared_->waiting);
            shared_->waiting.reset();
        }
        if (frame == nullptr || !same_stage(before, now.question)) {
            frame = raised(now.question);
        }
        if (frame == nullptr) {
            continue;
        }
        const int side_px = now.question.side_px;
        const Shading shading = now.question.shading;
        post(now.number,
             {now.question, frame, picture(*frame, shading, std::min(kQuickSide_px, side_px))});
        if (side_px <= kQuickSide_px) {
            continue;
        }
        {
            std::unique_lock lock{shared_->guard};
            if (shared_->changed.wait_for(lock, stop, kStill, is_asked) || stop.stop_requested()) {
                continue;
            }
        }
        post(now.number, {now.question, frame, picture(*frame, shading, side_px)});
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
