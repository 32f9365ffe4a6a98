#pragma once

#include "checks/check.h"

#include <cstdint>
#include <optional>

namespace throwline::sheet {

/// A number that stands for all that frame_picture() draws a shot from: the view, and every solid
/// that reaches into it. Equal for equal pictures, so that a picture can be kept through changes
/// behind the camera; different ones share a number by chance of 1 in 2^64 (FNV-1a, from memory).
/// Nothing when the shot cannot be resolved.
std::optional<std::uint64_t> picture_key(const checks::ShotScene& scene);

} // namespace throwline::sheet
