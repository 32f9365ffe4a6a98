#include "ui/desk/desk.h"

#include "edit/order.h"
#include "edit/valid.h"
#include "plan/read_plan.h"
#include "ui/desk/analysis_runner.h"

#include <algorithm>

namespace throwline::ui {

namespace {

constexpr int kPause_ms = 100;

plan::PlanPtr nothing_yet() {
    return std::make_shared<const plan::Plan>();
}

} // namespace

Desk::Desk(CataloguePtr catalogue, QObject* parent)
    : QObject{parent}, catalogue_{std::move(catalogue)}, history_{nothing_yet()},
      runner_{std::make_unique<AnalysisRunner>()} {
    pause_.setSingleShot(true);
    pause_.setInterval(kPause_ms);
    connect(&pause_, &QTimer::timeout, this, [this] {
        runner_->ask(shown(), catalogue_);
        Q_EMIT analysis_changed();
    });
    connect(runner_.get(), &AnalysisRunner::finished, this, &Desk::analysis_changed);
    connect(runner_.get(), &AnalysisRunner::went_on, this, &Desk::checking_went_on);
}

Desk::~Desk() = default;

void Desk::lay_out(plan::PlanPtr plan, bool is_saved) {
    history_ = edit::History{std::move(plan)};
    if (is_saved) {
        history_.mark_saved();
    } else {
        history_.forget_saved();
    }
    most_bytes_ = plan_text().size();
    now_ = {};
    const plan::Plan& laid = *history_.plan();
    if (!laid.beats.empty()) {
        now_.beat = laid.beats.front().id;
    }
    if (!laid.shots.empty() && laid.shots.front().beats.front() == now_.beat) {
        now_.shot = laid.shots.front().id;
    }
    chosen_.clear();
    way_ = 1.0;
    show_plan();
    Q_EMIT now_changed();
    Q_EMIT chosen_changed();
}

std::string Desk::plan_text() const {
    return plan::written(*plan());
}

void Desk::set_catalogue(CataloguePtr catalogue) {
    catalogue_ = std::move(catalogue);
    Q_EMIT catalogue_changed();
    look_again();
}

bool Desk::take(const Result<edit::Step>& step) {
    if (!step) {
        end_preview();
        say(QString::fromStdString(step.error().message));
        return false;
    }
    Checked<edit::ValidPlan> valid =
        edit::valid_after({plan(), most_bytes_}, step->plan, *catalogue_);
    if (!valid) {
        end_preview();
        say(QString::fromStdString(valid.error().front().message));
        return false;
    }
    if (!history_.record(step->name, std::move(valid->plan))) {
        end_preview();
        return true;
    }
    most_bytes_ = std::max(most_bytes_, valid->most_bytes);
    if (!step->made.empty()) {
        chosen_ = step->made;
    }
    show_plan();
    return true;
}

void Desk::undo() {
    if (history_.can_undo()) {
        history_.undo();
        show_plan();
    }
}

void Desk::redo() {
    if (history_.can_redo()) {
        history_.redo();
        show_plan();
    }
}

void Desk::mark_saved() {
    history_.mark_saved();
    Q_EMIT saved_changed();
}

void Desk::preview(const Result<edit::Step>& step) {
    if (!step) {
        say(QString::fromStdString(step.error().message));
        return;
    }
    preview_ = std::make_shared<const plan::Plan>(step->plan);
    look_again();
}

void Desk::end_preview() {
    if (preview_ != nullptr) {
        preview_.reset();
        look_again();
    }
}

void Desk::set_way(double share) {
    const double way = std::clamp(share, 0.0, 1.0);
    if (way != way_) {
        way_ = way;
        on_its_way_ = plan_on_its_way();
        look_again();
    }
}

plan::PlanPtr Desk::plan_on_its_way() const {
    if (way_ >= 1.0 || now_.beat.empty()) {
        return nullptr;
    }
    return std::make_shared<const plan::Plan>(edit::on_the_way(*plan(), now_.beat, way_));
}

const plan::PlanPtr& Desk::shown() const {
    if (preview_ != nullptr) {
        return preview_;
    }
    return on_its_way_ != nullptr ? on_its_way_ : plan();
}

void Desk::choose(std::vector<edit::Thing> things) {
    std::erase_if(things, [&](const edit::Thing& thing) { return !edit::exists(*plan(), thing); });
    if (things != chosen_) {
        chosen_ = std::move(things);
        Q_EMIT chosen_changed();
    }
}

void Desk::set_now(edit::Now now) {
    const plan::Shot* shot = plan::find(*plan(), now.shot);
    if (plan::find(*plan(), now.beat) == nullptr) {
        now.beat = {};
    }
    if (shot == nullptr) {
        now.shot = {};
    } else if (std::find(shot->beats.begin(), shot->beats.end(), now.beat) == shot->beats.end()) {
        now.beat = shot->beats.front();
    }
    if (now == now_) {
        return;
    }
    now_ = std::move(now);
    way_ = 1.0;
    const bool was_on_its_way = on_its_way_ != nullptr;
    on_its_way_.reset();
    Q_EMIT now_changed();
    if (was_on_its_way) {
        look_again();
    }
}

void Desk::set_overlays(const sheet::Overlays& overlays) {
    if (overlays != overlays_) {
        overlays_ = overlays;
        Q_EMIT overlays_changed();
    }
}

void Desk::toggle_units() {
    plan::Plan other = *plan();
    const bool was_metric = other.units == UnitSystem::metric;
    other.units = was_metric ? UnitSystem::imperial : UnitSystem::metric;
    take(edit::Step{was_metric ? "Show feet and inches" : "Show metres", std::move(other), {}});
}

AnalysisPtr Desk::analysis() const {
    const AnalysisPtr& known = runner_->result();
    return known != nullptr && known->plan == shown() ? known : nullptr;
}

bool Desk::is_checking() const {
    return runner_->is_running() || pause_.isActive();
}

void Desk::stop_checking() {
    pause_.stop();
    runner_->stop();
    Q_EMIT analysis_changed();
}

void Desk::check_again() {
    look_again();
}

void Desk::point_at_finding(int index) {
    if (index != finding_) {
        finding_ = index;
        Q_EMIT finding_pointed_at_changed();
    }
}

void Desk::say(const QString& sentence) {
    Q_EMIT said(sentence);
}

void Desk::show_plan() {
    preview_.reset();
    keep_what_is_there();
    on_its_way_ = plan_on_its_way();
    look_again();
    Q_EMIT plan_changed();
    Q_EMIT saved_changed();
}

void Desk::look_again() {
    if (preview_ != nullptr) {
        runner_->stop();
        pause_.start();
    } else {
        pause_.stop();
        runner_->ask(shown(), catalogue_);
    }
    if (finding_ != -1) {
        finding_ = -1;
        Q_EMIT finding_pointed_at_changed();
    }
    Q_EMIT shown_changed();
    Q_EMIT analysis_changed();
}

/// What undo, or a step, took away is no longer chosen, and no moment of.
void Desk::keep_what_is_there() {
    std::erase_if(chosen_, [&](const edit::Thing& thing) { return !edit::exists(*plan(), thing); });
    edit::Now now = now_;
    if (plan::find(*plan(), now.shot) == nullptr) {
        now.shot = {};
    }
    if (plan::find(*plan(), now.beat) == nullptr) {
        now.beat = plan()->beats.empty() ? plan::Id<plan::Beat>{} : plan()->beats.front().id;
    }
    if (now != now_) {
        now_ = now;
        way_ = 1.0;
        Q_EMIT now_changed();
    }
    Q_EMIT chosen_changed();
}

} // namespace throwline::ui
