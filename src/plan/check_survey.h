#pragma once

#include "plan/survey.h"

#include <cstddef>
#include <string>
#include <vector>

namespace throwline::plan {

/// Something in a survey that makes no sense, and where: a JSON pointer from the survey's object,
/// such as "/readings/3/to".
struct SurveyFault {
    std::string pointer;
    /// A sentence; empty where only the number of faults still counts (see kMostPlanErrors).
    std::string message;
};

/// What a survey must hold to beyond each value alone, in whichever file it stands: names are those
/// of something and there once, chains and outlets lie on a wall, solids have corners or a
/// diameter, stretches have what their kind has. Empty names are left alone.
std::vector<SurveyFault> faults_of(const Survey& survey);

} // namespace throwline::plan
