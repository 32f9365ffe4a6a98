#pragma once

#include "base/quantity.h"
#include "command/json_value.h"
#include "survey/recce.h"

#include <string>

namespace throwline::command {

/// What a crew reads of a recce: what is wrong first, then corners, readings, chains, what was
/// believed, the ceiling and the notes.
std::string survey_text(const survey::RecceResult& result, UnitSystem units);
JsonValue::Object survey_json(const survey::RecceResult& result, UnitSystem units);

/// The same of a recce whose readings leave the room's shape open.
std::string unsettled_text(const survey::Unsettled& unsettled, const plan::Survey& survey);
JsonValue::Object unsettled_json(const survey::Unsettled& unsettled, const plan::Survey& survey);

} // namespace throwline::command
