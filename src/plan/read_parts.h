#pragma once

#include "plan/plan.h"
#include "plan/reading.h"

/// One reader a part of the plan; each reports everything that is wrong within that part alone.
namespace throwline::plan {

/// Its parts, one by one.
void read_value(Reading& reading, const Value& root, Plan& plan);
void read_value(Reading& reading, const Value& value, Site& site);
void read_value(Reading& reading, const Value& value, Room& room);
void read_value(Reading& reading, const Value& value, Opening& opening);
void read_value(Reading& reading, const Value& value, Swing& swing);
void read_value(Reading& reading, const Value& value, Survey& survey);
void read_value(Reading& reading, const Value& value, TapeReading& tape);
void read_value(Reading& reading, const Value& value, Chain& chain);
void read_value(Reading& reading, const Value& value, Stretch& stretch);
void read_value(Reading& reading, const Value& value, FloorPoint& point);
void read_value(Reading& reading, const Value& value, FloorThing& thing);
void read_value(Reading& reading, const Value& value, HeightReading& height);
void read_value(Reading& reading, const Value& value, OutletReading& outlet);
void read_value(Reading& reading, const Value& value, SiteNote& note);
void read_value(Reading& reading, const Value& value, Grid& grid);
void read_value(Reading& reading, const Value& value, Pipe& pipe);
void read_value(Reading& reading, const Value& value, Circuit& circuit);
void read_value(Reading& reading, const Value& value, Scenery& scenery);
void read_value(Reading& reading, const Value& value, Person& person);
void read_value(Reading& reading, const Value& value, Beat& beat);
void read_value(Reading& reading, const Value& value, Mark& mark);
void read_value(Reading& reading, const Value& value, Facing& facing);
void read_value(Reading& reading, const Value& value, Aim& aim);
void read_value(Reading& reading, const Value& value, Camera& camera);
void read_value(Reading& reading, const Value& value, Shot& shot);
void read_value(Reading& reading, const Value& value, Boom& boom);
void read_value(Reading& reading, const Value& value, Lamp& lamp);
void read_value(Reading& reading, const Value& value, BeamCut& cut);
void read_value(Reading& reading, const Value& value, Underlay& underlay);
void read_value(Reading& reading, const Value& value, KitItem& item);
void read_value(Reading& reading, const Value& value, Targets& targets);
void read_value(Reading& reading, const Value& value, Acceptance& acceptance);
void read_value(Reading& reading, const Value& value, Group& group);
void read_value(Reading& reading, const Value& value, Arrangement& arrangement);

} // namespace throwline::plan
