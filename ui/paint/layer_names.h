#pragma once

#include "sheet/drawing.h"

#include <string>
#include <vector>

namespace throwline::paint {

/// The layers of a drawing that hold something.
std::vector<const sheet::Layer*> layers_with_marks(const sheet::Drawing& drawing);

/// As a reader of the file sees it: "Lamps".
std::string shown_name(const sheet::Layer& layer);

} // namespace throwline::paint
