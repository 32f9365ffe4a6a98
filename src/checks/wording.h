#pragma once

#include "base/length_text.h"
#include "plan/plan.h"
#include "stage/stage.h"

#include <span>
#include <string>
#include <string_view>

/// How checks name things and figures in a sentence, so that all of them say it alike.
namespace throwline::checks {

/// "shot 1A", "beat 2", "lamp 4", "camera B", "circuit C1": the kind is put before a name that does
/// not say it already ("camera 1" stays as it is).
std::string with_kind(std::string_view kind, std::string_view name);
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

/// "37 %"; one decimal below 10 %, two below 1 %: "3.4 %", "0.25 %"; "under 0.01 %".
std::string share_text(double share);
/// "28 mm", "8.5 mm": one decimal where it is not whole.
std::string focal_text(Length focal);
/// "T2.8", "T11".
std::string stop_text(double stop);
/// "1.25 stops", "1 stop"; without sign.
std::string stops_text(double stops);
/// "24°": whole degrees from 10 up, one decimal below.
std::string angle_text(Angle angle);
/// "1 lamp", "3 lamps".
std::string counted(int count, std::string_view noun);
/// "a", "a and b", "a, b and c".
std::string listed(std::span<const std::string> parts);
/// With a capital first letter, to begin a sentence. Letters beyond ASCII stay as they are.
std::string capitalised(std::string text);

/// "1.9 sq ft" or "0.18 m²".
std::string area_text(double area_m2, UnitSystem units);
/// Width by height: "6'-0\" x 3'-4\"" or "1.83 m x 1.02 m".
std::string size_text(Length width, Length height, UnitSystem units);

} // namespace throwline::checks
