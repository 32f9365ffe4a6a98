#pragma once

#include "plan/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace throwline::edit {

/// The states that a plan went through, whole, so that undo is going back a place. A value.
class History {
  public:
    explicit History(plan::PlanPtr first);

    const plan::PlanPtr& plan() const { return states_[at_].plan; }
    /// Goes on to a new state; what was undone is gone. A plan equal to the present one is not
    /// recorded. Returns whether it was.
    bool record(std::string name, plan::PlanPtr plan);

    bool can_undo() const { return at_ > 0; }
    bool can_redo() const { return at_ + 1 < states_.size(); }
    /// What undo or redo would take back or do again: "Move camera 2"; empty when nothing.
    const std::string& undo_name() const;
    const std::string& redo_name() const;
    void undo();
    void redo();

    /// Remembers the present state as the one in the file.
    void mark_saved();
    /// Whether the present state is the one in the file, also after going back to it.
    bool is_saved() const;
    /// The state in the file can no longer be reached, or there is no file.
    void forget_saved();

  private:
    struct State {
        /// How it came about; empty for the first.
        std::string name;
        plan::PlanPtr plan;
    };
    std::vector<State> states_;
    std::size_t at_ = 0;
    std::optional<std::size_t> saved_;
};

} // namespace throwline::edit
