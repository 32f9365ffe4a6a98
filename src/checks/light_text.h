#pragma once

#include "base/quantity.h"
#include "checks/mark_light.h"

#include <string>

namespace throwline::checks {

/// "420 lx", or "39 fc" in imperial plans (1 fc = 1 / 0.3048² lx); two figures below ten.
std::string level_text(double illuminance_lx, UnitSystem units);
/// "12,000 cd" without the comma: "12000 cd".
std::string intensity_text(double intensity_cd);

/// One term a lamp that gives more than a hundredth of the sum, the strongest first:
/// {"lamp 1", "key, throw 4.2 m, 3° off axis", "410 lx"}.
std::vector<WorkingTerm> lamp_terms(const MarkLight& mark, const stage::Stage& stage,
                                    UnitSystem units);

/// The blockers of a light in words: "back wall 40 %, Mara 10 %".
std::string blockers_text(const stage::Stage& stage, const stage::LampLight& light);

} // namespace throwline::checks
