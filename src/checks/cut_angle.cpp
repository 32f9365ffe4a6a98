#include "checks/camera_checks.h"
#include "checks/cuts.h"
#include "checks/framing.h"
#include "checks/subject_frame.h"
#include "checks/wording.h"
#include "optics/line_rules.h"

#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Less than this is no turn at all to the eye.
constexpr Angle kNoTurn = Angle::degrees(0.5);

/// Sizes of one person on both sides of a cut.
struct SizesAcross {
    optics::ShotSize before = optics::ShotSize::full;
    optics::ShotSize after = optics::ShotSize::full;
};

std::optional<SizesAcross> sizes_of(const Cut& cut, const plan::Id<plan::Person>& person) {
    if (!cut.before->view || !cut.after->view) {
        return std::nullopt;
    }
    const std::optional<SubjectFrame> before =
        subject_frame(*cut.before->view, *cut.before->stage.figure(person));
    const std::optional<SubjectFrame> after =
        subject_frame(*cut.after->view, *cut.after->stage.figure(person));
    if (!before || !after) {
        return std::nullopt;
    }
    return SizesAcross{before->size, after->size};
}

/// Directions are taken from where the person is on each side, so that a move of the person counts.
std::optional<Angle> turn_of(const Cut& cut, const plan::Id<plan::Person>& person) {
    const Vec2 then = floor_of(cut.before->stage.figure(person)->base);
    const Vec2 now = floor_of(cut.after->stage.figure(person)->base);
    return optics::angle_between_cameras(now, cut.camera_before() - then + now, cut.camera_after());
}

Working turn_working(const Cut& cut, const plan::Id<plan::Person>& person,
                     const SizesAcross& sizes) {
    const Vec2 then = floor_of(cut.before->stage.figure(person)->base);
    const Vec2 now = floor_of(cut.after->stage.figure(person)->base);
    Working working = optics::angle_between_cameras_working(now, cut.camera_before() - then + now,
                                                            cut.camera_after());
    working.inputs.push_back({"", "size before", optics::name_of(sizes.before)});
    working.inputs.push_back({"", "size after", optics::name_of(sizes.after)});
    return working;
}

std::string sizes_text(const SizesAcross& sizes) {
    if (sizes.before == sizes.after) {
        return "both are a " + optics::name_of(sizes.after);
    }
    return fmt::format("the size only goes from {} to {}", optics::name_of(sizes.before),
                       optics::name_of(sizes.after));
}

std::string turn_text(Angle turn, const plan::Id<plan::Person>& person) {
    if (turn < kNoTurn) {
        return "does not turn the view of " + said(person);
    }
    return fmt::format("turns the view of {} by only {}", said(person), angle_text(turn));
}

std::optional<Finding> judged(const Cut& cut) {
    const std::vector<plan::Id<plan::Person>> shared = shared_subjects(cut);
    if (shared.empty()) {
        return std::nullopt;
    }
    const plan::Id<plan::Person>& person = shared.front();
    const std::optional<SizesAcross> sizes = sizes_of(cut, person);
    const std::optional<Angle> turn = turn_of(cut, person);
    if (!sizes || !turn || optics::cut_is_clear(*turn, sizes->before, sizes->after)) {
        return std::nullopt;
    }
    Finding finding = finding_in(*cut.after, "cut-angle", Severity::caution);
    finding.things = {cut.after->shot->camera.name};
    if (cut.before->shot->camera != cut.after->shot->camera) {
        finding.things.push_back(cut.before->shot->camera.name);
    }
    finding.things.push_back(person.name);
    finding.at = cut.camera_after();
    finding.weight = 1.0 - turn->rad() / optics::kLeastTurn.rad();
    finding.message = fmt::format("The cut {} {} and {}; turn by {} or change by {} sizes.",
                                  said(cut), turn_text(*turn, person), sizes_text(*sizes),
                                  angle_text(optics::kLeastTurn), optics::kLeastSizeSteps);
    finding.working = turn_working(cut, person, *sizes);
    return finding;
}

} // namespace

std::vector<Finding> cut_angle(const CheckInput& input, const std::stop_token& stop) {
    std::vector<Finding> findings;
    for (const Cut& cut : cuts_of(input)) {
        if (stop.stop_requested()) {
            break;
        }
        if (std::optional<Finding> finding = judged(cut)) {
            findings.push_back(std::move(*finding));
        }
    }
    return findings;
}

} // namespace throwline::checks
