#include "ui/window/level_overlay.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>

namespace throwline::ui {

namespace {

using namespace std::chrono_literals;

constexpr auto kPause = 100ms;
/// Work that takes less is over before anybody could read about it.
constexpr auto kPatience = 500ms;
constexpr int kProgressSteps = 100;
constexpr int kProgressWidth_px = 120;

} // namespace

LevelOverlay::LevelOverlay(Desk& desk, QWidget* parent) : QWidget{parent}, desk_{desk} {
    setAccessibleName(tr("Levels on the floor"));
    add_parts();
    pause_.setSingleShot(true);
    pause_.setInterval(kPause);
    patience_.setSingleShot(true);
    patience_.setInterval(kPatience);
    connect(&pause_, &QTimer::timeout, this, &LevelOverlay::ask);
    connect(&patience_, &QTimer::timeout, this, [this] { setVisible(is_running()); });
    for (const auto signal : {&Desk::shown_changed, &Desk::now_changed, &Desk::overlays_changed}) {
        connect(&desk_, signal, this, &LevelOverlay::follow);
    }
    connect(&runner_, &LevelRunner::went_on, progress_, [this](double share) {
        progress_->setValue(static_cast<int>(share * kProgressSteps));
    });
    connect(&runner_, &LevelRunner::arrived, this, [this](const FloorLevels& levels) {
        tell();
        Q_EMIT arrived(levels);
    });
    tell();
}

void LevelOverlay::add_parts() {
    words_ = new QLabel{this};
    words_->setAccessibleName(tr("State of the levels on the floor"));
    progress_ = new QProgressBar{this};
    progress_->setRange(0, kProgressSteps);
    progress_->setTextVisible(false);
    progress_->setFixedWidth(kProgressWidth_px);
    progress_->setAccessibleName(tr("Share of the levels that is worked out"));
    stop_ = new QPushButton{tr("Stop levels"), this};
    stop_->setToolTip(tr("Stops working out levels; the floor is shown without them"));
    connect(stop_, &QPushButton::clicked, this, &LevelOverlay::stop);
    again_ = new QPushButton{tr("Work them out"), this};
    again_->setToolTip(tr("Works out the levels on the floor"));
    connect(again_, &QPushButton::clicked, this, &LevelOverlay::begin_again);
    // Lower than elsewhere, so that the foot of the window is as high as its words.
    for (QWidget* part : {static_cast<QWidget*>(progress_), static_cast<QWidget*>(stop_),
                          static_cast<QWidget*>(again_)}) {
        part->setFixedHeight(fontMetrics().height() + 2);
    }
    auto* row = new QHBoxLayout{this};
    row->setContentsMargins(0, 0, 6, 0);
    for (QWidget* part : {static_cast<QWidget*>(words_), static_cast<QWidget*>(progress_),
                          static_cast<QWidget*>(stop_), static_cast<QWidget*>(again_)}) {
        row->addWidget(part);
    }
}

void LevelOverlay::stop() {
    stopped_ = {desk_.shown(), desk_.catalogue(), desk_.now().beat};
    follow();
}

void LevelOverlay::begin_again() {
    stopped_ = {};
    follow();
}

void LevelOverlay::follow() {
    pause_.stop();
    if (!desk_.overlays().levels) {
        stopped_ = {};
        runner_.stop();
    } else if (desk_.shown() != desk_.plan()) {
        runner_.stop();
        pause_.start();
    } else {
        ask();
    }
    tell();
}

void LevelOverlay::ask() {
    const LevelsWanted wanted{desk_.shown(), desk_.catalogue(), desk_.now().beat};
    if (wanted == stopped_) {
        runner_.stop();
    } else {
        stopped_ = {};
        progress_->setValue(0);
        runner_.ask(wanted);
    }
    tell();
}

void LevelOverlay::tell() {
    const bool is_stopped = stopped_.plan != nullptr;
    words_->setText(is_stopped ? tr("Levels stopped") : tr("Working out levels\u2026"));
    progress_->setVisible(!is_stopped);
    stop_->setVisible(!is_stopped);
    again_->setVisible(is_stopped);
    if (!is_running()) {
        patience_.stop();
        setVisible(is_stopped);
    } else if (!isVisible() && !patience_.isActive()) {
        patience_.start();
    }
}

} // namespace throwline::ui
