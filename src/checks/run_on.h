#pragma once

#include "checks/undressed.h"

namespace throwline::checks {

/// For a frame in which no edge of the set shows, so that MoreSet has nothing to go on from: the
/// run of flats that, going on straight from one of its ends, would fill the frame from side to
/// side with the least more of it. Nothing when no run would, or none within 30 m. Height is not
/// looked at.
std::optional<MoreSet> run_that_would_back(const plan::Plan& plan, const stage::Stage& stage,
                                           const stage::ShotView& view);

} // namespace throwline::checks
