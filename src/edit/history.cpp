#include "edit/history.h"

namespace throwline::edit {

namespace {

const std::string kNothing;

} // namespace

History::History(plan::PlanPtr first) {
    states_.push_back({{}, std::move(first)});
}

bool History::record(std::string name, plan::PlanPtr plan) {
    if (*plan == *states_[at_].plan) {
        return false;
    }
    states_.resize(at_ + 1);
    if (saved_ && *saved_ > at_) {
        saved_.reset();
    }
    states_.push_back({std::move(name), std::move(plan)});
    ++at_;
    return true;
}

const std::string& History::undo_name() const {
    return states_[at_].name;
}

const std::string& History::redo_name() const {
    return can_redo() ? states_[at_ + 1].name : kNothing;
}

void History::undo() {
    if (can_undo()) {
        --at_;
    }
}

void History::redo() {
    if (can_redo()) {
        ++at_;
    }
}

void History::mark_saved() {
    saved_ = at_;
}

bool History::is_saved() const {
    return saved_ == at_;
}

void History::forget_saved() {
    saved_.reset();
}

} // namespace throwline::edit
