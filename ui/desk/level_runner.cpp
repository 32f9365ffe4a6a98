#include "ui/desk/level_runner.h"

#include <QMetaObject>
#include <optional>

namespace throwline::ui {

namespace {

/// Shares closer than this to the one told last are kept quiet.
constexpr double kWorthTelling = 0.01;

} // namespace

LevelRunner::LevelRunner(QObject* parent)
    : QObject{parent}, thread_{[this](const std::stop_token& stop) { work(stop); }} {}

LevelRunner::~LevelRunner() {
    thread_.request_stop();
    waiting_.clear();
}

void LevelRunner::ask(LevelsWanted wanted) {
    if (wanted == wanted_) {
        return;
    }
    wanted_ = std::move(wanted);
    is_running_ = true;
    waiting_.put({++asked_, wanted_});
}

void LevelRunner::stop() {
    wanted_ = {};
    is_running_ = false;
    ++asked_;
    waiting_.clear();
}

void LevelRunner::work(const std::stop_token& stop) {
    while (const std::optional<Numbered> question = waiting_.take(stop)) {
        std::optional<FloorLevels> levels = worked_out(*question, waiting_.superseded());
        if (levels) {
            take(question->number, std::move(*levels));
        }
    }
}

std::optional<FloorLevels> LevelRunner::worked_out(const Numbered& question,
                                                   const std::stop_token& stop) {
    const plan::Plan& plan = *question.wanted.plan;
    const stage::Stage stage = stage::raise(plan, *question.wanted.catalogue, question.wanted.beat);
    double told = 0.0;
    const auto went_on = [&](double share) {
        if (share - told >= kWorthTelling) {
            told = share;
            tell(question.number, share);
        }
    };
    auto map =
        stage::level_map(stage, plan.room.outline, {}, known_ ? &*known_ : nullptr, stop, went_on);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    known_ = std::move(map);
    FloorLevels levels{question.wanted, nullptr};
    if (known_) {
        levels.picture =
            std::make_shared<const sheet::LevelPicture>(sheet::level_picture(*known_, plan.units));
    }
    return levels;
}

void LevelRunner::tell(int number, double share) {
    QMetaObject::invokeMethod(
        this,
        [this, number, share] {
            if (number == asked_) {
                Q_EMIT went_on(share);
            }
        },
        Qt::QueuedConnection);
}

void LevelRunner::take(int number, FloorLevels levels) {
    QMetaObject::invokeMethod(
        this,
        [this, number, levels = std::move(levels)] {
            if (number == asked_) {
                is_running_ = false;
                Q_EMIT arrived(levels);
            }
        },
        Qt::QueuedConnection);
}

} // namespace throwline::ui
