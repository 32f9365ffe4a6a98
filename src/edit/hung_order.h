#pragma once

#include "edit/order.h"
#include "edit/thing.h"

#include <optional>
#include <string>
#include <vector>

/// The running order as it hangs along the foot of the window: beats one after the other, each with
/// the shots that begin in it. Values made from a plan, and the questions that dragging along them
/// asks.
namespace throwline::edit {

/// Usual pace of somebody who walks at ease. Common practice, no source.
inline constexpr double kWalkingPace_m_per_s = 1.3;
/// Time that a way takes at that pace, s.
double walking_time_s(double length_m);

/// A shot where it hangs: on the first of its beats.
struct HungShot {
    plan::Id<plan::Shot> shot;
    /// The last of its beats, when it has several.
    plan::Id<plan::Beat> goes_on_to;
    /// Width over height of the picture; 16:9 when the catalogue does not know the camera.
    double aspect = 16.0 / 9.0;
};

struct HungBeat {
    plan::Id<plan::Beat> beat;
    std::vector<HungShot> shots;
    /// Ways of who walks into it, and the longest of them, metres; none into the first beat.
    std::vector<Walk> walks;
    double longest_walk_m = 0.0;
};

/// In the order of the plan.
std::vector<HungBeat> hung_order(const plan::Plan& plan, const catalogue::Catalogue& catalogue);

/// Hangs a shot on a beat, before the one at `slot` among those that hang there (their count: after
/// all of them). Errors: as shot_moved().
Result<Step> shot_hung(const Context& context, const plan::Id<plan::Shot>& shot,
                       const plan::Id<plan::Beat>& beat, int slot);
/// One place earlier (-1) or later (+1), into the next beat from the end of one. Errors: it is the
/// first or last already.
Result<Step> shot_stepped(const Context& context, const plan::Id<plan::Shot>& shot, int by);
/// The same for a beat among the beats.
Result<Step> beat_stepped(const Context& context, const plan::Id<plan::Beat>& beat, int by);

/// Gives a beat another name, what happens in it; its id stays.
Result<Step> beat_retold(const Context& context, const plan::Id<plan::Beat>& beat,
                         const std::string& name);

} // namespace throwline::edit
