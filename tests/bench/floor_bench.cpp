/// Times frames of the floor while the sheet is shifted, zoomed, and things are dragged, on a plan
/// of 5,000 objects and a floor of 1280 by 960. A frame is everything from an event to the end of
/// painting that the interface thread does; another program's load shows in the worst frames.

#include "plan/read_plan.h"
#include "support/large_plan.h"
#include "ui/desk/desk.h"
#include "ui/floor/floor.h"
#include "ui/paint/paint.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QMouseEvent>
#include <QThread>
#include <QWheelEvent>
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <functional>

namespace throwline::ui {
namespace {

constexpr int kFrames = 240;
constexpr double kGoal_ms = 1000.0 / 60.0;

catalogue::Catalogue tables() {
    Checked<catalogue::Catalogue> loaded =
        catalogue::load_catalogue(THROWLINE_SOURCE_DIR "/lensdata");
    if (!loaded) {
        std::fputs(text_of(loaded.error().front()).c_str(), stderr);
        std::exit(2);
    }
    return std::move(*loaded);
}

/// Each of its frames is painted once, as a screen would ask for it.
class Frames : public QObject {
  public:
    Frames(Floor& floor, const char* what) : floor_{floor}, what_{what} {
        floor_.installEventFilter(this);
    }

    void time(const std::function<void()>& happens) {
        is_painted_ = false;
        QElapsedTimer timer;
        timer.start();
        happens();
        QApplication::processEvents();
        if (!is_painted_) {
            floor_.repaint();
        }
        took_ms_.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    void tell() {
        const auto worst = std::max_element(took_ms_.begin(), took_ms_.end()) - took_ms_.begin();
        std::sort(took_ms_.begin(), took_ms_.end());
        const auto share = [&](double part) {
            return took_ms_[static_cast<std::size_t>(part
                                                     * static_cast<double>(took_ms_.size() - 1))];
        };
        const auto late = std::count_if(took_ms_.begin(), took_ms_.end(),
                                        [](double ms) { return ms > kGoal_ms; });
        std::printf("%-28s median %6.2f ms   95 %% %6.2f ms   worst %7.2f ms (frame %td)   "
                    "late %3td of %zu\n",
                    what_, share(0.5), share(0.95), share(1.0), worst + 1, late, took_ms_.size());
    }

    bool eventFilter(QObject* watched, QEvent* event) override {
        is_painted_ = is_painted_ || event->type() == QEvent::Paint;
        return QObject::eventFilter(watched, event);
    }

  private:
    Floor& floor_;
    const char* what_;
    bool is_painted_ = false;
    std::vector<double> took_ms_;
};

void mouse(Floor& floor, QEvent::Type type, const QPointF& at, Qt::MouseButton button,
           Qt::MouseButtons buttons, Qt::KeyboardModifiers keys = Qt::NoModifier) {
    QMouseEvent event{type, at, floor.mapToGlobal(at), button, buttons, keys};
    QApplication::sendEvent(&floor, &event);
}

void rest(const Floor& floor) {
    QElapsedTimer timer;
    timer.start();
    while (!floor.is_up_to_date()) {
        QApplication::processEvents(QEventLoop::WaitForMoreEvents, 20);
    }
    std::printf("  (picture after %lld ms)\n", static_cast<long long>(timer.elapsed()));
}

void time_panning(Floor& floor) {
    Frames frames{floor, "panning"};
    QPointF at{640, 480};
    mouse(floor, QEvent::MouseButtonPress, at, Qt::MiddleButton, Qt::MiddleButton);
    for (int i = 0; i < kFrames; ++i) {
        at += i < kFrames / 2 ? QPointF{5, 3} : QPointF{-5, -3};
        frames.time([&] { mouse(floor, QEvent::MouseMove, at, Qt::NoButton, Qt::MiddleButton); });
    }
    mouse(floor, QEvent::MouseButtonRelease, at, Qt::MiddleButton, {});
    frames.tell();
}

void time_zooming(Floor& floor) {
    Frames frames{floor, "zooming"};
    for (int i = 0; i < kFrames; ++i) {
        const int notch = (i / 40) % 2 == 0 ? 24 : -24;
        QWheelEvent event{{700, 400},
                          floor.mapToGlobal(QPointF{700, 400}),
                          {},
                          {0, notch},
                          Qt::NoButton,
                          Qt::NoModifier,
                          Qt::NoScrollPhase,
                          false};
        frames.time([&] { QApplication::sendEvent(&floor, &event); });
    }
    frames.tell();
}

void time_dragging(Floor& floor, const char* what, const Vec2& from) {
    floor.desk().choose({});
    const QPointF start = floor.px_of(from);
    Frames frames{floor, what};
    mouse(floor, QEvent::MouseButtonPress, start, Qt::LeftButton, Qt::LeftButton);
    // Nobody is quicker from pressing to moving.
    QThread::msleep(100);
    QPointF at = start;
    for (int i = 0; i < kFrames; ++i) {
        at += i < kFrames / 2 ? QPointF{1.5, 0.7} : QPointF{-1.2, -0.4};
        frames.time([&] { mouse(floor, QEvent::MouseMove, at, Qt::NoButton, Qt::LeftButton); });
    }
    frames.tell();
    mouse(floor, QEvent::MouseButtonRelease, at, Qt::LeftButton, {});
    rest(floor);
}

/// The one frame in which what was dragged becomes part of the plan, back and forth. Nothing draws
/// it, so that the pointer stays on it.
void time_letting_go(Floor& floor, const char* what, const Vec2& from) {
    constexpr int kTimes = 40;
    Frames frames{floor, what};
    QPointF at = floor.px_of(from);
    for (int i = 0; i < kTimes; ++i) {
        floor.desk().choose({});
        mouse(floor, QEvent::MouseButtonPress, at, Qt::LeftButton, Qt::LeftButton);
        QThread::msleep(100);
        for (int move = 0; move < 8; ++move) {
            at += i % 2 == 0 ? QPointF{3, 2} : QPointF{-3, -2};
            mouse(floor, QEvent::MouseMove, at, Qt::NoButton, Qt::LeftButton, Qt::AltModifier);
            QApplication::processEvents();
        }
        const plan::PlanPtr before = floor.desk().plan();
        frames.time([&] {
            mouse(floor, QEvent::MouseButtonRelease, at, Qt::LeftButton, {}, Qt::AltModifier);
        });
        if (floor.desk().plan() == before) {
            std::puts("  (nothing was dragged)");
        }
        floor.desk().stop_checking();
        while (!floor.is_up_to_date()) {
            QApplication::processEvents(QEventLoop::WaitForMoreEvents, 20);
        }
    }
    frames.tell();
}

void run() {
    Desk desk{std::make_shared<const catalogue::Catalogue>(tables())};
    Floor floor{desk};
    floor.resize(1280, 960);
    floor.show();
    desk.lay_out(std::make_shared<const plan::Plan>(support::large_plan()), true);
    desk.stop_checking();
    rest(floor);
    time_panning(floor);
    time_zooming(floor);
    floor.fit();
    rest(floor);
    time_dragging(floor, "dragging one of all", {21.9, 10.5});
    desk.undo();
    rest(floor);
    time_letting_go(floor, "letting go of one of all", {21.9, 10.5});
    floor.zoom_to({{edit::Kind::camera, "camera 2", 0}, {edit::Kind::person, "person 2", 0}});
    rest(floor);
    time_dragging(floor, "dragging a camera", {33.0, 20.05});
}

} // namespace
} // namespace throwline::ui

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application{argc, argv};
    const throwline::paint::PaintSession session;
    throwline::ui::run();
    return 0;
}
