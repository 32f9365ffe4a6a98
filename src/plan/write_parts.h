#pragma once

#include "plan/json_out.h"
#include "plan/plan.h"

/// The parts of a plan as a plan file holds them, keys in the order of file_keys.cpp.
namespace throwline::plan {

JsonOut out(const Site& site);
JsonOut out(const Room& room);
JsonOut out(const Opening& opening);
JsonOut out(const Swing& swing);
JsonOut out(const Survey& survey);
JsonOut out(const TapeReading& tape);
JsonOut out(const Chain& chain);
JsonOut out(const Stretch& stretch);
JsonOut out(const FloorPoint& point);
JsonOut out(const FloorThing& thing);
JsonOut out(const HeightReading& height);
JsonOut out(const OutletReading& outlet);
JsonOut out(const SiteNote& note);
JsonOut out(const Grid& grid);
JsonOut out(const Pipe& pipe);
JsonOut out(const Circuit& circuit);
JsonOut out(const Scenery& scenery);
JsonOut out(const Person& person);
JsonOut out(const Beat& beat);
JsonOut out(const Mark& mark);
JsonOut out(const Camera& camera);
JsonOut out(const Shot& shot);
JsonOut out(const Boom& boom);
JsonOut out(const Lamp& lamp);
JsonOut out(const BeamCut& cut);
JsonOut out(const Underlay& underlay);
JsonOut out(const KitItem& item);
JsonOut out(const Targets& targets);
JsonOut out(const Acceptance& acceptance);
JsonOut out(const Group& group);
JsonOut out(const Arrangement& arrangement);

} // namespace throwline::plan
