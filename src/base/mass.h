#pragma once

namespace throwline {

/// 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959).
inline constexpr double kPoundsPerKilogram = 1.0 / 0.45359237;

} // namespace throwline
