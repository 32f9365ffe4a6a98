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
/// Two lines about what did not fit.
constexpr double kMoreHeight_mm = 2.0 * kLinePitch_mm;
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

/// "and 12 more", "12 errors", short enough for the narrowest panel.
std::vector<std::string> left_out_words(const FindingsShown& shown) {
    std::vector<std::string> lines{
        fmt::format("and {} more on the findings sheet", shown.left_out)};
    if (shown.errors_left_out > 0) {
        lines.push_back(fmt::format("{} of them {}", shown.errors_left_out,
                                    shown.errors_left_out == 1 ? "is an error" : "are errors"));
    }
    return lines;
}

void add_words(Marks& marks, const std::string& words, const Vec2& at, bool bold = false) {
    marks.emplace_back(Text{words, at, kLetter_mm, TextAnchor::start, 0.0, bold, Ink::lettering});
}

} // namespace

std::string matter_of(const FindingGroup& group) {
    std::string words = group.first->message;
    for (const std::string& place : group.also) {
        words += fmt::format("{}{}", &place == &group.also.front() ? " Also " : ", ", place);
    }
    if (!group.also.empty()) {
        words += '.';
    }
    return words;
}

std::string words_for(const FindingGroup& group) {
    const checks::Finding& finding = *group.first;
    std::string words = matter_of(group);
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
            groups.push_back({finding, {}, {finding}, static_cast<int>(groups.size()) + 1});
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

std::vector<FindingGroup> grouped(const std::vector<const checks::Finding*>& findings,
                                  const checks::Analysis& analysis) {
    std::vector<const checks::Finding*> all;
    for (const checks::Finding& finding : analysis.findings) {
        all.push_back(&finding);
    }
    std::map<const checks::Finding*, int, ByMatter> number_of;
    for (const FindingGroup& group : grouped(all)) {
        number_of.emplace(group.first, group.number);
    }
    std::vector<FindingGroup> groups = grouped(findings);
    for (FindingGroup& group : groups) {
        group.number = number_of.at(group.first);
    }
    return groups;
}

namespace {

/// A finding of the panel with its words in lines.
struct Entry {
    const FindingGroup* group = nullptr;
    std::vector<std::string> lines;

    double height_mm() const {
        return std::max(kLinePitch_mm * static_cast<double>(lines.size()) + kGap_mm,
                        kLozengeHeight_mm + 0.6);
    }
};

/// How many entries fit, with the words about the others where some do not.
std::size_t count_fitting(const std::vector<Entry>& entries, double height_mm) {
    double all_mm = 0.0;
    for (const Entry& entry : entries) {
        all_mm += entry.height_mm();
    }
    if (all_mm <= height_mm + kGap_mm) {
        return entries.size();
    }
    double used_mm = kMoreHeight_mm;
    std::size_t count = 0;
    while (used_mm + entries[count].height_mm() <= height_mm) {
        used_mm += entries[count++].height_mm();
    }
    return count;
}

void draw_entry(Marks& marks, const Vec2& top_left, const Entry& entry) {
    add_lozenge(marks, top_left + Vec2{kLozengeWidth_mm / 2.0, kLetter_mm / 2.0},
                entry.group->number, entry.group->first->severity);
    Vec2 at = top_left + Vec2{kTextFrom_mm - kPad_mm, kLetter_mm};
    for (const std::string& words : entry.lines) {
        add_words(marks, words, at);
        at.y() += kLinePitch_mm;
    }
}

} // namespace

FindingsShown draw_findings_panel(Marks& marks, const Box& box,
                                  const std::vector<FindingGroup>& findings,
                                  const TextMeasure& measure) {
    add_words(marks, findings.empty() ? "No findings" : "Findings",
              {box.left + kPad_mm, box.top + kPad_mm + kLetter_mm}, true);
    const double width_mm = box.width - kTextFrom_mm - kPad_mm;
    std::vector<Entry> entries;
    for (const FindingGroup& group : findings) {
        entries.push_back(
            {&group, wrapped_lines(words_for(group), width_mm, kLetter_mm, false, measure)});
    }
    const std::size_t fitting = count_fitting(entries, box.height - kHeading_mm);
    FindingsShown shown;
    Vec2 at{box.left + kPad_mm, box.top + kHeading_mm};
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const checks::Finding* finding = entries[i].group->first;
        if (i < fitting) {
            draw_entry(marks, at, entries[i]);
            at.y() += entries[i].height_mm();
            shown.findings.push_back({entries[i].group->number, finding});
        } else {
            ++shown.left_out;
            shown.errors_left_out += finding->severity == checks::Severity::error ? 1 : 0;
        }
    }
    if (shown.left_out > 0) {
        at.y() += kLetter_mm;
        for (const std::string& words : left_out_words(shown)) {
            add_words(marks, words, at);
            at.y() += kLinePitch_mm;
        }
    }
    return shown;
}

} // namespace throwline::sheet
