#pragma once

#include "sheet/drawing.h"

#include <QImage>

namespace throwline::ui {

/// Pixels of the engine as a picture that can be painted; a copy.
QImage image_of(const sheet::Pixels& pixels);

} // namespace throwline::ui
