#include "checks/camera_checks.h"
#include "checks/cuts.h"
#include "checks/framing.h"
#include "checks/wording.h"
#include "optics/line_rules.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// The two people through whom the line runs.
struct Pair {
    plan::Id<plan::Person> first;
    plan::Id<plan::Person> second;
    /// Whether both shots show both of them.
    bool both_in_both = false;
};

bool is_there(const Cut& cut, const plan::Id<plan::Person>& person) {
    return cut.before->stage.figure(person) != nullptr
           && cut.after->stage.figure(person) != nullptr;
}

/// Two subjects of both shots, else the first of each shot: singles of two people who face each
/// other are cut by the same rule.
std::optional<Pair> pair_of(const Cut& cut) {
    const std::vector<plan::Id<plan::Person>> shared = shared_subjects(cut);
    if (shared.size() >= 2) {
        return Pair{shared[0], shared[1], true};
    }
    for (const plan::Id<plan::Person>& a : cut.before->shot->subjects) {
        for (const plan::Id<plan::Person>& b : cut.after->shot->subjects) {
            if (a != b && is_there(cut, a) && is_there(cut, b)) {
                return Pair{a, b, false};
            }
        }
    }
    return std::nullopt;
}

Vec2 place(const ShotScene& scene, const plan::Id<plan::Person>& person) {
    return floor_of(scene.stage.figure(person)->base);
}

/// Distance of a camera from the line, to tell how far over it stands.
double distance_to_line_m(const Vec2& first, const Vec2& second, const Vec2& camera) {
    const Vec2 along = second - first;
    return along.norm() > 0.0 ? std::abs(cross(along, camera - first)) / along.norm() : 0.0;
}

bool crosses(optics::LineSide a, optics::LineSide b) {
    return a != optics::LineSide::on_line && b != optics::LineSide::on_line && a != b;
}

std::string side_word(optics::LineSide side) {
    switch (side) {
    case optics::LineSide::left:
        return "left";
    case optics::LineSide::right:
        return "right";
    case optics::LineSide::on_line:
        return "on the line";
    }
    return "";
}

Finding cut_finding(const Cut& cut, Severity severity, std::vector<std::string> subjects) {
    Finding finding = finding_in(*cut.after, "line-of-action", severity);
    finding.things = {cut.after->shot->camera.name};
    if (cut.before->shot->camera != cut.after->shot->camera) {
        finding.things.push_back(cut.before->shot->camera.name);
    }
    finding.things.insert(finding.things.end(), subjects.begin(), subjects.end());
    finding.at = cut.camera_after();
    return finding;
}

Working side_working(const Cut& cut, const std::string& line, optics::LineSide before,
                     optics::LineSide after) {
    return {"side = sign of (B - A) x (C - A), for the line from A to B and a camera at C",
            {{"", "line", line},
             {"", "camera of " + said(cut.before->shot->id), side_word(before)},
             {"", "camera of " + said(cut.after->shot->id), side_word(after)}},
            "opposite sides",
            "common practice, no source"};
}

std::optional<Finding> judged_pair(const Cut& cut, const Pair& pair, UnitSystem units) {
    const Vec2 first = place(*cut.after, pair.first);
    const Vec2 second = place(*cut.after, pair.second);
    const optics::LineSide before = optics::side_of_line(
        place(*cut.before, pair.first), place(*cut.before, pair.second), cut.camera_before());
    const optics::LineSide after = optics::side_of_line(first, second, cut.camera_after());
    if (!crosses(before, after)) {
        return std::nullopt;
    }
    Finding finding = cut_finding(cut, Severity::caution, {pair.first.name, pair.second.name});
    const double over_m = distance_to_line_m(first, second, cut.camera_after());
    finding.weight = pair.both_in_both ? 1.0 : 0.5;
    finding.message =
        fmt::format("The cut {} crosses the line between {} and {}: {} stands {} over it.",
                    said(cut), said(pair.first), said(pair.second), said(cut.after->shot->camera),
                    shown(Length::metres(over_m), units));
    finding.working =
        side_working(cut, "from " + said(pair.first) + " to " + said(pair.second), before, after);
    return finding;
}

/// With one person the line is the way they face; crossing it turns their look round in the
/// picture.
std::optional<Finding> judged_single(const Cut& cut, const plan::Id<plan::Person>& person) {
    const stage::Figure& then = *cut.before->stage.figure(person);
    const stage::Figure& now = *cut.after->stage.figure(person);
    const auto side = [](const stage::Figure& figure, const Vec2& camera) {
        const Vec2 at = floor_of(figure.base);
        return optics::side_of_line(at, at + unit_at(figure.facing.rad()), camera);
    };
    const optics::LineSide before = side(then, cut.camera_before());
    const optics::LineSide after = side(now, cut.camera_after());
    if (!crosses(before, after)) {
        return std::nullopt;
    }
    Finding finding = cut_finding(cut, Severity::note, {person.name});
    finding.weight = 0.5;
    finding.message =
        fmt::format("The cut {} crosses the way {} looks, so the look turns round in the picture.",
                    said(cut), said(person));
    finding.working = side_working(cut, "the way " + said(person) + " faces", before, after);
    return finding;
}

std::optional<Finding> judged(const Cut& cut, UnitSystem units) {
    if (const std::optional<Pair> pair = pair_of(cut)) {
        return judged_pair(cut, *pair, units);
    }
    const std::vector<plan::Id<plan::Person>> shared = shared_subjects(cut);
    return shared.empty() ? std::nullopt : judged_single(cut, shared.front());
}

} // namespace

std::vector<Finding> line_of_action(const CheckInput& input, const std::stop_token& stop) {
    std::vector<Finding> findings;
    for (const Cut& cut : cuts_of(input)) {
        if (stop.stop_requested()) {
            break;
        }
        if (std::optional<Finding> finding = judged(cut, input.plan.units)) {
            findings.push_back(std::move(*finding));
        }
    }
    return findings;
}

} // namespace throwline::checks
