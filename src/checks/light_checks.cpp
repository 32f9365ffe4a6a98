#include "checks/light_checks.h"

#include <array>

namespace throwline::checks {

namespace {

constexpr std::array kTable{
    Check{"light-level", "Level at each mark",
          "The lamps give each subject's face the level that the shot's stop asks for.",
          "E = C N² / (S t), ISO 2720:1974 incident form, constants from memory", level_at_marks},
    Check{"uneven-light", "Even light around a mark",
          "The level on the face stays within a stop when the subject sways about the mark.",
          "common practice, no source", uneven_light},
    Check{"beam-blocked", "Beams that something blocks",
          "Nothing stands between a lamp and the face that it lights.", "plain geometry",
          lamp_blocked},
    Check{"lamp-aim", "Lamps that light no mark",
          "The field of every key, fill and back light takes in somebody's face in some beat.",
          "plain geometry", lamp_misses},
    Check{"lamp-angle", "Lamps at unusual angles",
          "Key, fill and back light stand at the angles usual for their role.",
          "common practice, no source", lamp_angle},
    Check{"lighting-ratio", "Key to fill",
          "The ratio (key + fill) : fill on a face is within a stop of the one that the plan asks "
          "for.",
          "common practice, no source", lighting_ratio},
    Check{"lamp-clearance", "Hot lamps",
          "Nobody and nothing is nearer to a lamp than its clearance; the maker's instructions "
          "decide.",
          "common practice, no source; the maker's instructions decide", lamp_clearance},
};

} // namespace

std::span<const Check> light_checks() {
    return kTable;
}

} // namespace throwline::checks
