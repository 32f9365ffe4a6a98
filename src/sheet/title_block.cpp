#include "sheet/furniture.h"

#include "sheet/text_wrap.h"

#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 2.5;
constexpr double kNorth_mm = 7.0;
/// The scale must be found at a glance.
constexpr double kScale_mm = 3.5;

void add_words(Marks& marks, const std::string& words, const Vec2& at, double height_mm, bool bold,
               Ink ink = Ink::lettering) {
    marks.emplace_back(Text{words, at, height_mm, TextAnchor::start, 0.0, bold, ink});
}

std::string units_text(UnitSystem units) {
    return units == UnitSystem::metric ? "sizes in m" : "sizes in ft-in";
}

std::string version_text(const SheetOptions& options) {
    std::string text;
    if (!options.revision.empty()) {
        text = fmt::format("Revision {}", options.revision);
    }
    if (!options.file_hash.empty()) {
        text += fmt::format("{}{}", text.empty() ? "File " : ", file ", options.file_hash);
    }
    if (!options.changes_since.empty()) {
        text += fmt::format("{}louds since {}", text.empty() ? "C" : "; c", options.changes_since);
    }
    return text;
}

struct Row {
    std::string words;
    bool bold = false;
    double height_mm = kLetter_mm;
};

std::vector<Row> rows_of(const TitleBlock& title, double width_mm, const TextMeasure& measure) {
    const plan::Site& site = title.plan.site;
    std::vector<Row> rows;
    if (title.standard_scale) {
        rows.push_back({cut_to_width(site.place, width_mm, kLetter_mm, false, measure)});
        rows.push_back({site.date});
    } else { // The row that this saves goes to the scale.
        const std::string both = fmt::format(
            "{}{}{}", site.date, site.date.empty() || site.place.empty() ? "" : ", ", site.place);
        rows.push_back({cut_to_width(both, width_mm, kLetter_mm, false, measure)});
    }
    rows.push_back(
        {cut_to_width(title.options.sheet_name, width_mm, kLetter_mm, true, measure), true});
    rows.push_back(
        {fmt::format("Sheet {} of {}, {} {}", title.options.sheet_number, title.options.sheet_count,
                     title.paper_name, name_of(title.orientation))});
    rows.push_back({fmt::format("Scale {}", title.scale_name), true, kScale_mm});
    if (!title.standard_scale) {
        rows.push_back({"Not a standard scale"});
    }
    rows.push_back({fmt::format("Not to scale if reduced; {}", units_text(title.plan.units))});
    rows.push_back({version_text(title.options)});
    return rows;
}

} // namespace

void draw_page_lines(Marks& marks, const Page& page) {
    const auto corners = [](const Box& box) {
        return std::vector<Vec2>{{box.left, box.top},
                                 {box.right(), box.top},
                                 {box.right(), box.bottom()},
                                 {box.left, box.bottom()}};
    };
    for (const Box& box : {page.strip, page.findings, page.legend, page.title}) {
        marks.emplace_back(outline(corners(box), pen(Ink::dimension, kConstruction_mm)));
    }
    marks.emplace_back(outline(corners(page.frame), pen(Ink::built, kBuilt_mm)));
}

void draw_title_block(Marks& marks, const Box& box, const TitleBlock& title,
                      const TextMeasure& measure) {
    const double width_mm = box.width - 2.0 * kPad_mm;
    const double left_mm = box.left + kPad_mm;
    double baseline_mm = box.top + kPad_mm + kLargeLetter_mm;
    const double title_width_mm = width_mm - 2.0 * kNorth_mm - kPad_mm;
    std::vector<std::string> lines =
        wrapped_lines(title.plan.title, title_width_mm, kLargeLetter_mm, true, measure);
    constexpr std::size_t kMostLines = 3;
    if (lines.size() > kMostLines) {
        lines.resize(kMostLines);
        lines.back() = cut_to_width(fmt::format("{} …", lines.back()), title_width_mm,
                                    kLargeLetter_mm, true, measure);
    }
    for (const std::string& words : lines) {
        add_words(marks, words, {left_mm, baseline_mm}, kLargeLetter_mm, true);
        baseline_mm += 1.6 * kLargeLetter_mm;
    }
    baseline_mm = std::max(baseline_mm, box.top + 2.0 * kNorth_mm + 7.0);
    for (const Row& row : rows_of(title, width_mm, measure)) {
        if (!row.words.empty()) {
            baseline_mm += row.height_mm - kLetter_mm;
            add_words(marks, cut_to_width(row.words, width_mm, row.height_mm, row.bold, measure),
                      {left_mm, baseline_mm}, row.height_mm, row.bold);
            baseline_mm += kLinePitch_mm + 0.6 * (row.height_mm - kLetter_mm);
        }
    }
    if (title.with_north) {
        draw_north(marks,
                   {box.right() - kPad_mm - kNorth_mm, box.top + kPad_mm + kNorth_mm + kLetter_mm},
                   kNorth_mm - 1.0, title.plan.site.north);
    }
}

void draw_north(Marks& marks, const Vec2& centre, double radius_mm, Angle bearing) {
    const double page_angle_rad = std::numbers::pi / 2.0 - bearing.rad();
    const Vec2 ahead = paper_direction(page_angle_rad);
    const Vec2 across = paper_direction(page_angle_rad + std::numbers::pi / 2.0);
    const Pen fine = pen(Ink::lettering, kFine_mm);
    const Vec2 tip = centre + ahead * radius_mm;
    const Vec2 tail = centre - ahead * radius_mm;
    const double half_mm = 0.28 * radius_mm;
    // One half of the needle is filled, as on a compass.
    marks.emplace_back(
        outline({tip, centre + across * half_mm, tail}, fine, solid(Ink::lettering)));
    marks.emplace_back(outline({tip, centre - across * half_mm, tail}, fine));
    const Vec2 letter = centre + ahead * (radius_mm + 0.8 * kLetter_mm);
    marks.emplace_back(Text{"N", letter + Vec2{0.0, kLetter_mm / 2.0}, kLetter_mm,
                            TextAnchor::middle, 0.0, true, Ink::lettering});
}

} // namespace throwline::sheet
