#pragma once

#include "base/result.h"
#include "plan/survey.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace throwline::survey {

/// Largest recce that is read.
inline constexpr std::uintmax_t kLargestRecceBytes = 1U << 20U;

struct RecceText {
    plan::Survey survey;
    /// The system in which most of its lengths were typed; metric when as many were in each.
    UnitSystem units = UnitSystem::metric;
};

/// Reads what was noted with the tape in hand, a line a fact, as recce-format.md beside this file
/// tells. All errors are reported at once, each with line and column and the nearest word or name.
/// What is read can stand in a plan file. `file` only labels the errors.
Checked<RecceText> read_recce(std::string_view text, const std::string& file = {});

/// The lines that read back to an equal survey, apart from what stands under `extra`. Lengths are
/// metres, or feet and inches where these are shorter and exact.
std::string recce_text(const plan::Survey& survey);

} // namespace throwline::survey
