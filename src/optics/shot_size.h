#pragma once

#include "base/quantity.h"
#include "base/result.h"
#include "base/trade_words.h"
#include "base/working.h"

#include <array>
#include <string>
#include <string_view>

namespace throwline::optics {

using throwline::ShotSize;

inline constexpr std::array<ShotSize, 10> kShotSizes{
    ShotSize::extreme_close_up, ShotSize::big_close_up, ShotSize::close_up,
    ShotSize::medium_close_up,  ShotSize::medium,       ShotSize::medium_long,
    ShotSize::medium_long_knee, ShotSize::full,         ShotSize::wide,
    ShotSize::very_wide};

/// "medium close-up"
std::string name_of(ShotSize size);
/// "MCU"
std::string abbreviation_of(ShotSize size);
/// Reads a name, an abbreviation or a usual synonym ("mid shot", "LS", "cowboy"), without regard to
/// case, hyphens, or a trailing "shot". The error names what is nearest.
Result<ShotSize> parse_shot_size(std::string_view text);

/// 0 for the tightest.
int order_of(ShotSize size);
/// How many steps of the ladder lie between two sizes, >= 0.
int steps_between(ShotSize a, ShotSize b);

/// A frame laid over a person at the person's plane, in shares of the stature.
struct PersonInFrame {
    /// Height of the frame's lower edge above the soles: 0.6 at the waist, negative below the
    /// floor.
    double bottom_cut_share = 0.0;
    /// Height of the frame.
    double frame_height_share = 1.0;
};

/// Where the frame's lower edge cuts a person, in the measure of PersonInFrame. Counted down from
/// the crown, so that it names the same part of the upper body when the person sits. stature > 0.
double bottom_cut_share(Length crown_height, Length frame_bottom_height, Length stature);

/// The size that a frame is called: frame below 0.13 of the stature: extreme close-up; else by the
/// lower edge: >= 0.83 big close-up, >= 0.76 close-up, >= 0.66 medium close-up, >= 0.52 medium,
/// >= 0.33 medium long, >= 0.12 medium long (knee); else by the person's share of the frame's
/// height:
/// >= 0.67 full, >= 0.33 wide, else very wide. A frame whose upper edge is below the chin is named
/// as if it were raised to the crown. frame_height_share > 0. Common practice, no source.
ShotSize classify_shot_size(const PersonInFrame& person);

/// The frame that a size usually asks for on a standing person.
struct WantedFrame {
    double bottom_cut_share = 0.0;
    /// Free part of the frame's height above the crown; negative where the crown is cut.
    double headroom_share = 0.0;
    double frame_height_share = 1.0;
};

/// Middle of the range of each size with its usual headroom. Common practice, no source.
WantedFrame wanted_frame(ShotSize size);
/// Height of the wanted frame at the subject: stature (1 - b) / (1 - headroom).
Length wanted_frame_height(ShotSize size, Length stature);

Working shot_size_working(const PersonInFrame& person);
Working wanted_frame_height_working(ShotSize size, Length stature);

} // namespace throwline::optics
