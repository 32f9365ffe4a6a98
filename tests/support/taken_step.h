#pragma once

#include "edit/thing.h"
#include "edit/valid.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>
#include <string>

/// Edits as the window takes them.
namespace throwline::support {

/// The plan that a step leads to; a failed test when there is none, or it would not open again.
inline plan::Plan taken(const Result<edit::Step>& step) {
    if (!step) {
        ADD_FAILURE() << step.error().message;
        return {};
    }
    const Checked<edit::ValidPlan> read = edit::valid(step->plan, shipped_catalogue());
    if (!read) {
        ADD_FAILURE() << text_of(read.error().front());
    }
    return step->plan;
}

/// Why there is no step; empty when there is one.
inline std::string why_not(const Result<edit::Step>& step) {
    return step ? std::string{} : step.error().message;
}

} // namespace throwline::support
