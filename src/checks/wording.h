#pragma once

#include "base/length_text.h"
#include "base/words.h"
#include "plan/plan.h"
#include "stage/stage.h"

#include <string>
#include <string_view>

/// How checks name things and figures in a sentence, so that all of them say it alike.
namespace throwline::checks {

using throwline::capitalised;
using throwline::counted;
using throwline::focal_text;
using throwline::listed;
using throwline::share_text;
using throwline::stop_text;
using throwline::with_kind;

/// "shot 1A", "beat 2", "lamp 4", "camera B", "circuit C1".
std::string said(const plan::Id<plan::Shot>& shot);
std::string said(const plan::Id<plan::Beat>& beat);
std::string said(const plan::Id<plan::Camera>& camera);
std::string said(const plan::Id<plan::Lamp>& lamp);
std::string said(const plan::Id<plan::Circuit>& circuit);
std::string said(const plan::Id<plan::Pipe>& pipe);
std::string said(const plan::Id<plan::Boom>& boom);
/// People are called by their name.
std::string said(const plan::Id<plan::Person>& person);
/// Scenery is called by its name.
std::string said(const plan::Id<plan::Scenery>& scenery);
/// Anything on a stage: "lamp 4", "wall 2", "potter".
std::string said(const stage::Owner& owner);
/// "the support of camera 2", "the microphone of boom"; for people "the head of visitor".
std::string said_part(stage::Part part, const stage::Owner& owner);

/// "in shot 1A at beat 2"; the beat is left out when the shot has only that one.
std::string in_shot(const plan::Shot& shot, const plan::Id<plan::Beat>& beat);

/// "1.25 stops", "1 stop"; without sign.
std::string stops_text(double stops);
/// "24°": whole degrees from 10 up, one decimal below.
std::string angle_text(Angle angle);

/// "1.9 sq ft" or "0.18 m²".
std::string area_text(double area_m2, UnitSystem units);
/// Width by height: "6'-0\" x 3'-4\"" or "1.83 m x 1.02 m".
std::string size_text(Length width, Length height, UnitSystem units);

} // namespace throwline::checks
