#pragma once

#include "base/quantity.h"
#include "survey/recce.h"

#include <string>
#include <vector>

/// What a recce's result says, in words for those who hold the tape.
namespace throwline::survey {

/// A length to the millimetre, or to 1/8 in.
std::string tape_text(Length length, UnitSystem units);
/// A small difference without its sign: "12 mm", "0.47 in".
std::string difference_text(Length difference, UnitSystem units);

/// "A-C", "chain A-B", "corner B".
std::string label_of(const SurveyedReading& reading);
/// "fine", "worth a look", "wrong: probably should be 14'-7\"", "not really checked", ...
std::string verdict_text(const RecceResult& result, const SurveyedReading& reading,
                         UnitSystem units);
/// How well all readings agree, and how much that says.
std::string agreement_text(const RecceResult& result);
/// "Chain A-B: 12 mm short of the wall, within 14 mm; spread over its stretches."
std::string chain_text(const RecceResult& result, std::size_t chain, UnitSystem units);
/// "Corner D can still move: one more distance, A-C or B-D, would fix it."
std::string unsettled_text(const Unsettled& unsettled, const plan::Survey& survey);
/// What was believed rather than read, a sentence each, with how far off it came.
std::vector<std::string> assumptions(const RecceResult& result, UnitSystem units);
/// Height of the ceiling; empty when none was read.
std::string ceiling_text(const RecceResult& result, UnitSystem units);
/// "noise: fridge compressor behind A-B"; the text alone for other notes.
std::string note_text(const plan::SiteNote& note);

} // namespace throwline::survey
