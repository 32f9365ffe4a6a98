#pragma once

#include "plan/plan.h"

#include <array>
#include <string_view>
#include <vector>

/// How the choices of a plan are called, in files and on screen.
namespace throwline::plan {

inline constexpr std::array<ChoiceName<UnitSystem>, 2> kUnitSystemNames{{
    {UnitSystem::metric, "metric"},
    {UnitSystem::imperial, "imperial"},
}};

inline constexpr std::array<ChoiceName<OpeningKind>, 3> kOpeningKindNames{{
    {OpeningKind::door, "door"},
    {OpeningKind::window, "window"},
    {OpeningKind::opening, "opening"},
}};

inline constexpr std::array<ChoiceName<PipeRun>, 3> kPipeRunNames{{
    {PipeRun::along_letters, "along letters"},
    {PipeRun::along_numbers, "along numbers"},
    {PipeRun::both, "both"},
}};

inline constexpr std::array<ChoiceName<Pose>, 4> kPoseNames{{
    {Pose::stand, "stand"},
    {Pose::sit, "sit"},
    {Pose::lie, "lie"},
    {Pose::crouch, "crouch"},
}};

inline constexpr std::array<ChoiceName<StretchKind>, 5> kStretchKindNames{{
    {StretchKind::wall, "wall"},
    {StretchKind::door, "door"},
    {StretchKind::window, "window"},
    {StretchKind::opening, "opening"},
    {StretchKind::thing, "thing"},
}};

inline constexpr std::array<ChoiceName<SiteNoteKind>, 7> kSiteNoteKindNames{{
    {SiteNoteKind::power, "power"},
    {SiteNoteKind::breaker, "breaker"},
    {SiteNoteKind::noise, "noise"},
    {SiteNoteKind::sun, "sun"},
    {SiteNoteKind::light, "light"},
    {SiteNoteKind::access, "access"},
    {SiteNoteKind::other, "other"},
}};

inline constexpr std::array<ChoiceName<PersonKind>, 2> kPersonKindNames{{
    {PersonKind::cast, "cast"},
    {PersonKind::crew, "crew"},
}};

constexpr const auto& names_of(UnitSystem) {
    return kUnitSystemNames;
}
constexpr const auto& names_of(OpeningKind) {
    return kOpeningKindNames;
}
constexpr const auto& names_of(PipeRun) {
    return kPipeRunNames;
}
constexpr const auto& names_of(Pose) {
    return kPoseNames;
}
constexpr const auto& names_of(PersonKind) {
    return kPersonKindNames;
}
constexpr const auto& names_of(StretchKind) {
    return kStretchKindNames;
}
constexpr const auto& names_of(SiteNoteKind) {
    return kSiteNoteKindNames;
}
constexpr const auto& names_of(ShotSize) {
    return kShotSizeNames;
}
constexpr const auto& names_of(LampRole) {
    return kLampRoleNames;
}

/// "medium close-up", "along letters"; empty for a value that is none of the choices.
template <class Choice>
constexpr std::string_view name_of(Choice choice) {
    for (const auto& entry : names_of(choice)) {
        if (entry.value == choice) {
            return entry.name;
        }
    }
    return {};
}

/// A kind of choice as the plan schema calls it, and all its names.
struct ChoiceList {
    std::string_view kind;
    std::vector<std::string_view> names;
};
/// Every kind of choice that a plan file knows.
std::vector<ChoiceList> choice_lists();

} // namespace throwline::plan
