#pragma once

#include "catalogue/catalogue.h"

#include <string>

namespace throwline::sheet {

/// A scale that came about by zooming, in words: the standard one of the unit system when it is
/// that, "about" it when it is near, else "about 1:63". `ratio` is real over drawn length, > 0.
std::string scale_words(double ratio, UnitSystem system, const catalogue::Catalogue& catalogue);

} // namespace throwline::sheet
