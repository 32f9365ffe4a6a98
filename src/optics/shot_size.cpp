#include "optics/shot_size.h"

#include "base/length_text.h"
#include "optics/words.h"

#include <cstdlib>

namespace throwline::optics {

namespace {

// Common practice, no source; the header gives the rule in words.
constexpr double kExtremeFrameShare = 0.13;
constexpr double kChinShare = 0.864;
constexpr double kFullPersonShare = 0.67;
constexpr double kWidePersonShare = 0.33;

struct BottomLimit {
    double at_least;
    ShotSize size;
};
constexpr BottomLimit kBottomLimits[] = {
    {0.83, ShotSize::big_close_up},    {0.76, ShotSize::close_up},
    {0.66, ShotSize::medium_close_up}, {0.52, ShotSize::medium},
    {0.33, ShotSize::medium_long},     {0.12, ShotSize::medium_long_knee},
};

WantedFrame frame_from(double bottom_cut_share, double headroom_share) {
    return {bottom_cut_share, headroom_share, (1.0 - bottom_cut_share) / (1.0 - headroom_share)};
}

/// The height above the soles from which the rule counts.
double judged_bottom(const PersonInFrame& person) {
    const double top_share = person.bottom_cut_share + person.frame_height_share;
    return top_share < kChinShare ? 1.0 - person.frame_height_share : person.bottom_cut_share;
}

ShotSize size_by_person_share(double person_share) {
    if (person_share >= kFullPersonShare) {
        return ShotSize::full;
    }
    return person_share >= kWidePersonShare ? ShotSize::wide : ShotSize::very_wide;
}

} // namespace

int order_of(ShotSize size) {
    return static_cast<int>(size);
}

int steps_between(ShotSize a, ShotSize b) {
    return std::abs(order_of(a) - order_of(b));
}

double bottom_cut_share(Length crown_height, Length frame_bottom_height, Length stature) {
    return 1.0 - (crown_height - frame_bottom_height) / stature;
}

ShotSize classify_shot_size(const PersonInFrame& person) {
    if (person.frame_height_share < kExtremeFrameShare) {
        return ShotSize::extreme_close_up;
    }
    const double bottom_share = judged_bottom(person);
    for (const BottomLimit& limit : kBottomLimits) {
        if (bottom_share >= limit.at_least) {
            return limit.size;
        }
    }
    return size_by_person_share(1.0 / person.frame_height_share);
}

WantedFrame wanted_frame(ShotSize size) {
    switch (size) {
    case ShotSize::extreme_close_up:
        return frame_from(0.88, -0.20);
    case ShotSize::big_close_up:
        return frame_from(0.85, -0.1485);
    case ShotSize::close_up:
        return frame_from(0.79, 0.10);
    case ShotSize::medium_close_up:
        return frame_from(0.707, 0.10);
    case ShotSize::medium:
        return frame_from(0.582, 0.08);
    case ShotSize::medium_long:
        return frame_from(0.379, 0.07);
    case ShotSize::medium_long_knee:
        return frame_from(0.25, 0.06);
    case ShotSize::full:
        return frame_from(-0.05 / 0.90, 0.05);
    case ShotSize::wide:
        return frame_from(-0.40, 0.30);
    case ShotSize::very_wide:
        return frame_from(-1.50, 0.50);
    }
    return {};
}

Length wanted_frame_height(ShotSize size, Length stature) {
    return stature * wanted_frame(size).frame_height_share;
}

Working shot_size_working(const PersonInFrame& person) {
    const ShotSize size = classify_shot_size(person);
    return {
        "by where the lower edge of the frame cuts the person, b; below the knee by the person's "
        "share of the frame's height, p",
        {{"b", "lower edge above the soles, of the stature", fixed(person.bottom_cut_share, 3)},
         {"p", "stature, of the frame's height", fixed(1.0 / person.frame_height_share, 3)}},
        name_of(size) + " (" + abbreviation_of(size) + ")",
        "common practice, no source"};
}

Working wanted_frame_height_working(ShotSize size, Length stature) {
    const WantedFrame wanted = wanted_frame(size);
    return {"frame height = S (1 - b) / (1 - r)",
            {{"S", "stature", distance_text(stature)},
             {"b", "lower edge above the soles, of the stature", fixed(wanted.bottom_cut_share, 3)},
             {"r", "headroom, of the frame's height", fixed(wanted.headroom_share, 3)}},
            distance_text(wanted_frame_height(size, stature)),
            "common practice, no source"};
}

} // namespace throwline::optics
