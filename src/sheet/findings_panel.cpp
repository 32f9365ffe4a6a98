#include "sheet/furniture.h"

#include "sheet/text_wrap.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <tuple>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 2.5;
constexpr double kHeading_mm = 8.0;
constexpr double kGap_mm = 1.6;
constexpr double kTextFrom_mm = kPad_mm + kLozengeWidth_mm + 1.5;

std::string place_of(const checks::Finding& finding) {
    return finding.shot.empty() ? fmt::format("beat {}", finding.beat.name)
                                : fmt::format("shot {}", finding.shot.name);
}

/// Orders findings by what they are about; equal ones say the same of the same things.
struct ByMatter {
    bool operator()(const checks::Finding* a, const checks::Finding* b) const {
        return std::tie(a->check, a->severity, a->things, a->accepted)
               < std::tie(b->check, b->severity, b->things, b->accepted);
    }
};

std::string left_out(std::size_t count) {
    return fmt::format("and {} more in the list of findings", count);
}

void add_words(Marks& marks, const std::string& words, const Vec2& at, bool bold = false) {
    marks.emplace_back(Text{words, at, kLetter_mm, TextAnchor::start, 0.0, bold, Ink::lettering});
}

} // namespace

std::string words_for(const FindingGroup& group) {
    const checks::Finding& finding = *group.first;
    std::string words = finding.message;
    for (const std::string& place : group.also) {
        words += fmt::format("{}{}", &place == &group.also.front() ? " Also " : ", ", place);
    }
    if (!group.also.empty()) {
        words += '.';
    }
    if (finding.accepted) {
        words += fmt::format(" Accepted: {}", *finding.accepted);
    }
    return words;
}

std::vector<FindingGroup> grouped(const std::vector<const checks::Finding*>& findings) {
    std::vector<FindingGroup> groups;
    std::map<const checks::Finding*, std::size_t, ByMatter> group_of;
    for (const checks::Finding* finding : findings) {
        const auto [known, is_new] = group_of.emplace(finding, groups.size());
        if (is_new) {
            groups.push_back({finding, {}, {finding}});
            continue;
        }
        FindingGroup& group = groups[known->second];
        group.members.push_back(finding);
        const std::string place = place_of(*finding);
        const bool is_told =
            place == place_of(*group.first)
            || std::find(group.also.begin(), group.also.end(), place) != group.also.end();
        if (!is_told) {
            group.also.push_back(place);
        }
    }
    return groups;
}

std::vector<NumberedFinding> draw_findings_panel(Marks& marks, const Box& box,
                                                 const std::vector<FindingGroup>& findings,
                                                 const TextMeasure& measure) {
    add_words(marks, findings.empty() ? "No findings" : "Findings",
              {box.left + kPad_mm, box.top + kPad_mm + kLetter_mm}, true);
    std::vector<NumberedFinding> shown;
    double top_mm = box.top + kHeading_mm;
    const double width_mm = box.width - kTextFrom_mm - kPad_mm;
    for (const FindingGroup& group : findings) {
        const checks::Finding* finding = group.first;
        const std::vector<std::string> lines =
            wrapped_lines(words_for(group), width_mm, kLetter_mm, false, measure);
        const double height_mm = kLinePitch_mm * static_cast<double>(lines.size()) + kGap_mm;
        const bool is_last = shown.size() + 1 == findings.size();
        const double foot_mm = box.bottom() - (is_last ? 0.0 : kLinePitch_mm + kGap_mm);
        if (top_mm + height_mm > foot_mm) {
            add_words(marks, left_out(findings.size() - shown.size()),
                      {box.left + kPad_mm, top_mm + kLetter_mm});
            break;
        }
        const int number = static_cast<int>(shown.size()) + 1;
        add_lozenge(marks, {box.left + kPad_mm + kLozengeWidth_mm / 2.0, top_mm + kLetter_mm / 2.0},
                    number, finding->severity);
        double baseline_mm = top_mm + kLetter_mm;
        for (const std::string& words : lines) {
            add_words(marks, words, {box.left + kTextFrom_mm, baseline_mm});
            baseline_mm += kLinePitch_mm;
        }
        shown.push_back({number, finding});
        top_mm += std::max(height_mm, kLozengeHeight_mm + 0.6);
    }
    return shown;
}

} // namespace throwline::sheet
