#pragma once

#include <array>
#include <string_view>

/// Words of the trade that several rooms of the house share.
namespace throwline {

/// Sizes from the tightest to the widest. Common practice, no source; the boundaries are choices
/// made in optics/shot_size.h.
enum class ShotSize {
    extreme_close_up, ///< part of the face
    big_close_up,     ///< chin to brow
    close_up,         ///< collar
    medium_close_up,  ///< chest
    medium,           ///< waist
    medium_long,      ///< mid-thigh
    medium_long_knee, ///< just below the knee
    full,             ///< head to feet
    wide,             ///< the person about half of the frame's height
    very_wide         ///< the place, with a small person in it
};

/// What a lamp is there for.
enum class LampRole { key, fill, back, background, effect, practical };

/// A choice and what it is called, in files and on screen.
template <class Choice>
struct ChoiceName {
    Choice value;
    std::string_view name;
};

inline constexpr std::array<ChoiceName<ShotSize>, 10> kShotSizeNames{{
    {ShotSize::extreme_close_up, "extreme close-up"},
    {ShotSize::big_close_up, "big close-up"},
    {ShotSize::close_up, "close-up"},
    {ShotSize::medium_close_up, "medium close-up"},
    {ShotSize::medium, "medium"},
    {ShotSize::medium_long, "medium long"},
    {ShotSize::medium_long_knee, "medium long knee"},
    {ShotSize::full, "full"},
    {ShotSize::wide, "wide"},
    {ShotSize::very_wide, "very wide"},
}};

inline constexpr std::array<ChoiceName<LampRole>, 6> kLampRoleNames{{
    {LampRole::key, "key"},
    {LampRole::fill, "fill"},
    {LampRole::back, "back"},
    {LampRole::background, "background"},
    {LampRole::effect, "effect"},
    {LampRole::practical, "practical"},
}};

} // namespace throwline
