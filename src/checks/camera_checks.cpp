#include "checks/camera_checks.h"

#include <array>

namespace throwline::checks {

namespace {

constexpr std::array kTable{
    Check{"coverage", "What the lens takes in",
          "The head of every subject lies inside the frame, the lens can give the wanted framing "
          "from where the camera stands, and its picture covers the sensor.",
          "plain geometry of a rectilinear lens", coverage},
    Check{"shot-size", "Size of the shot",
          "The shot gives the size that is wanted of its subjects.",
          "size boundaries: common practice, no source", shot_size},
    Check{"focus", "Depth of focus",
          "The nearer eye of every subject is sharp at the stop of the shot, and no nearer than "
          "the lens can focus.",
          "thin-lens depth of field, from memory: standard optics texts", focus},
    Check{"sight-lines", "Sight lines to the subjects",
          "Nothing hides more of a subject than the plan allows, nor its face or eyes.",
          "rays from the lens; the limits are common practice, no source", sight_lines},
    Check{"off-the-set", "Off the set",
          "Everything behind the subjects that falls in the frame is dressed.",
          "rays from the lens; the limits are common practice, no source", off_the_set},
    Check{"in-the-frame", "Gear and crew in the frame",
          "No camera, support, stand, lamp, boom or crew is in the frame, and no cast who are not "
          "subjects.",
          "rays from the lens; common practice, no source", in_the_frame},
    Check{"into-the-lens", "Lamps into the lens",
          "No bright face of a lamp is in the frame, and none outside it strikes the front glass "
          "past the hood.",
          "plain geometry of lamp and hood", into_the_lens},
    Check{"line-of-action", "The line of action",
          "Shots that are cut together are taken from one side of the line through their subjects.",
          "common practice, no source", line_of_action},
    Check{"cut-angle", "Angle of a cut",
          "From one shot to the next the view of a subject turns by 30 degrees at least, or the "
          "size changes by two steps.",
          "common practice, no source", cut_angle},
};

} // namespace

std::span<const Check> camera_checks() {
    return kTable;
}

} // namespace throwline::checks
