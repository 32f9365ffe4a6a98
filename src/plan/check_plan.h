#pragma once

#include "plan/plan.h"
#include "plan/reading.h"

/// What a plan must hold to beyond each part alone; `root` is what it was read from, for the places
/// of errors. Parts already found wrong are left alone.
namespace throwline::plan {

/// All of the following.
void check_whole(Reading& reading, const Value& root, const Plan& plan);

/// Names are there once, over each kind and over everything that can be aimed at.
void check_unique_names(Reading& reading, const Value& root, const Plan& plan);
/// Every name is that of something in the plan, every wall and grid position is there.
void check_references(Reading& reading, const Value& root, const Plan& plan);
/// Every catalogue name is in the catalogue.
void check_catalogue_names(Reading& reading, const Value& root, const Plan& plan);
/// The outline is a room, openings fit their walls.
void check_room(Reading& reading, const Value& root, const Plan& plan);
/// What `faults_of` finds in a survey; `value` is the survey's own object.
void check_survey(Reading& reading, const Value& value, const Survey& survey);
/// Outlines of scenery have an area, drapes a length.
void check_scenery(Reading& reading, const Value& root, const Plan& plan);
/// Focal lengths and stops are within the lenses.
void check_lenses(Reading& reading, const Value& root, const Plan& plan);
/// Lamps hang on their pipes and below them.
void check_mounts(Reading& reading, const Value& root, const Plan& plan);
/// What is held is there, is held once, and is in one group at most.
void check_arrangement(Reading& reading, const Value& root, const Plan& plan);

} // namespace throwline::plan
