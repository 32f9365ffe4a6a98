#include "ui/running_order/move_player.h"

#include "edit/hung_order.h"

#include <algorithm>

namespace throwline::ui {

namespace {

constexpr int kFrame_ms = 33;
/// A move in which hardly anybody walks is shown no faster than this.
constexpr double kLeast_s = 0.8;

int index_of(const plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    const auto at = std::find_if(plan.beats.begin(), plan.beats.end(),
                                 [&](const plan::Beat& other) { return other.id == beat; });
    return at == plan.beats.end() ? -1 : static_cast<int>(at - plan.beats.begin());
}

} // namespace

edit::Now moment_in(const plan::Plan& plan, const plan::Id<plan::Beat>& beat,
                    const plan::Id<plan::Shot>& shot) {
    const plan::Shot* found = plan::find(plan, shot);
    const bool goes_on =
        found != nullptr
        && std::find(found->beats.begin(), found->beats.end(), beat) != found->beats.end();
    return {beat, goes_on ? shot : plan::Id<plan::Shot>{}};
}

MovePlayer::MovePlayer(Desk& desk, QObject* parent) : QObject{parent}, desk_{desk} {
    timer_.setInterval(kFrame_ms);
    connect(&timer_, &QTimer::timeout, this, &MovePlayer::step);
    connect(&desk_, &Desk::plan_changed, this, &MovePlayer::stop);
    connect(&desk_, &Desk::now_changed, this, [this] {
        if (is_playing() && desk_.now() != into_) {
            stop();
        }
    });
}

int MovePlayer::beat_to_play() const {
    const plan::Plan& plan = *desk_.plan();
    const int count = static_cast<int>(plan.beats.size());
    const int now = index_of(plan, desk_.now().beat);
    const int next = desk_.way() < 1.0 || now + 1 >= count ? now : now + 1;
    return next > 0 ? next : -1;
}

double MovePlayer::seconds_into(int beat) const {
    const plan::Plan& plan = *desk_.plan();
    double longest_m = 0.0;
    for (const edit::Walk& walk :
         edit::walks_into(plan, plan.beats[static_cast<std::size_t>(beat)].id)) {
        longest_m = std::max(longest_m, walk.length_m);
    }
    return std::max(edit::walking_time_s(longest_m) / pace_, kLeast_s);
}

void MovePlayer::play() {
    const int beat = beat_to_play();
    if (beat < 0) {
        desk_.say(tr("There is no move to play: it takes a second beat."));
        return;
    }
    const plan::Plan& plan = *desk_.plan();
    from_ = desk_.way() < 1.0 ? desk_.way() : 0.0;
    seconds_ = seconds_into(beat);
    into_ = moment_in(plan, plan.beats[static_cast<std::size_t>(beat)].id, desk_.now().shot);
    desk_.set_now(into_);
    desk_.set_way(from_);
    since_.start();
    timer_.start();
    Q_EMIT playing_changed();
}

void MovePlayer::stop() {
    if (is_playing()) {
        timer_.stop();
        Q_EMIT playing_changed();
    }
}

void MovePlayer::step() {
    const double share = from_ + static_cast<double>(since_.elapsed()) / 1000.0 / seconds_;
    desk_.set_way(share);
    if (share >= 1.0) {
        stop();
    }
}

} // namespace throwline::ui
