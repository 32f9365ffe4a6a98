#pragma once

#include "plan/plan.h"

namespace throwline::support {

/// A production `times` as large: copies side by side along x in a room that holds them all, with
/// names told apart ("camera 1 #2"). Beats are shared; everybody of every copy moves in them.
plan::Plan repeated(const plan::Plan& plan, int times);

} // namespace throwline::support
