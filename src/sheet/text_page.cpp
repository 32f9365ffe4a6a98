#include "sheet/text_page.h"

#include "base/words.h"
#include "sheet/check_ruler.h"
#include "sheet/text_wrap.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 2.5;
/// For the check ruler with air to both sides.
constexpr double kRulerPart_mm = kCheckLength_mm + 6.0;
/// A body lower than this holds nothing.
constexpr double kLeastBody_mm = 40.0;
constexpr std::size_t kTitleLines = 2;

std::vector<Vec2> corners_of(const Box& box) {
    return {{box.left, box.top},
            {box.right(), box.top},
            {box.right(), box.bottom()},
            {box.left, box.bottom()}};
}

/// Lines one under the other, each cut to the box.
class Lines {
  public:
    Lines(Marks& marks, const Box& box, const TextMeasure& measure)
        : marks_{marks}, box_{box}, measure_{measure}, top_mm_{box.top + kPad_mm} {}

    void add(const std::string& words, bool bold = false, double height_mm = kLetter_mm) {
        if (words.empty()) {
            return;
        }
        top_mm_ += height_mm;
        marks_.emplace_back(
            Text{cut_to_width(words, box_.width - 2.0 * kPad_mm, height_mm, bold, measure_),
                 {box_.left + kPad_mm, top_mm_},
                 height_mm,
                 TextAnchor::start,
                 0.0,
                 bold,
                 Ink::lettering});
        top_mm_ += (kLinePitch_mm / kLetter_mm - 1.0) * height_mm;
    }

  private:
    Marks& marks_;
    Box box_;
    const TextMeasure& measure_;
    double top_mm_;
};

void draw_production(Marks& marks, const Box& box, const plan::Plan& plan,
                     const TextMeasure& measure) {
    Lines lines{marks, box, measure};
    std::vector<std::string> title =
        wrapped_lines(plan.title, box.width - 2.0 * kPad_mm, kLargeLetter_mm, true, measure);
    if (title.size() > kTitleLines) {
        title.resize(kTitleLines);
        title.back() += " …";
    }
    for (const std::string& words : title) {
        lines.add(words, true, kLargeLetter_mm);
    }
    lines.add(plan.site.place);
    lines.add(plan.site.date);
}

std::string version_of(const SheetOptions& options) {
    std::vector<std::string> parts;
    if (!options.revision.empty()) {
        parts.push_back(fmt::format("revision {}", options.revision));
    }
    if (!options.file_hash.empty()) {
        parts.push_back(fmt::format("file {}", options.file_hash));
    }
    return fmt::format("{}", fmt::join(parts, ", "));
}

void draw_sheet_words(Marks& marks, const Box& box, const SheetOptions& options,
                      const TextPage& page, const TextMeasure& measure) {
    Lines lines{marks, box, measure};
    lines.add(options.sheet_name, true);
    lines.add(fmt::format("Sheet {} of {}, {}. Not to scale", options.sheet_number,
                          options.sheet_count, paper_text(page.paper, page.orientation)));
    lines.add(capitalised(version_of(options)));
    const Vec2 ruler{box.left + kPad_mm, box.bottom() - 8.0};
    draw_check_ruler(marks, ruler, Vec2{1.0, 0.0}, Vec2{0.0, -1.0});
    marks.emplace_back(Text{kCheckWords, ruler + Vec2{0.0, kLetter_mm + 1.0}, kLetter_mm,
                            TextAnchor::start, 0.0, false, Ink::lettering});
}

Result<catalogue::Paper> paper_of_page(const SheetOptions& options,
                                       const catalogue::Catalogue& catalogue) {
    SheetOptions asked = options;
    if (!options.own_paper && !options.text_paper.empty()) {
        asked.paper = options.text_paper;
    }
    return paper_of(asked, catalogue);
}

} // namespace

Result<TextPage> text_page(const SheetInput& input, const SheetOptions& options,
                           const std::vector<std::string>& cautions, Orientation usual) {
    const auto paper = paper_of_page(options, input.catalogue);
    if (!paper) {
        return tl::unexpected{paper.error()};
    }
    TextPage page;
    page.paper = *paper;
    page.orientation = options.orientation.value_or(usual);
    const double shorter = std::min(paper->width.mm(), paper->height.mm());
    const double longer = std::max(paper->width.mm(), paper->height.mm());
    const bool wide = page.orientation == Orientation::landscape;
    page.width_mm = wide ? longer : shorter;
    page.height_mm = wide ? shorter : longer;
    page.frame = Box{0.0, 0.0, page.width_mm, page.height_mm}.inset(options.margin.mm());
    const Box& frame = page.frame;
    page.foot = {frame.left, frame.bottom() - kFootHeight_mm, frame.width, kFootHeight_mm};
    const double cautions_mm =
        cautions.empty() ? 0.0 : cautions_height_mm(cautions, frame.width, input.measure) + 2.0;
    page.cautions = {frame.left, page.foot.top - cautions_mm, frame.width, cautions_mm};
    page.body = {frame.left, frame.top, frame.width, page.cautions.top - frame.top};
    if (page.body.height < kLeastBody_mm || frame.width < kRulerPart_mm + kLeastBody_mm) {
        return failure(fmt::format("{} with a margin of {:.0f} mm leaves no room for words",
                                   paper->name, options.margin.mm()));
    }
    return page;
}

Drawing finished_page(const SheetInput& input, const SheetOptions& options, const TextPage& page,
                      const std::vector<std::string>& cautions, Marks body) {
    const plan::Plan& plan = *input.analysis.plan;
    Marks marks;
    const double split_mm = page.foot.width - kRulerPart_mm;
    const Box production{page.foot.left, page.foot.top, split_mm, page.foot.height};
    const Box sheet{page.foot.left + split_mm, page.foot.top, kRulerPart_mm, page.foot.height};
    draw_production(marks, production, plan, input.measure);
    draw_sheet_words(marks, sheet, options, page, input.measure);
    const Pen fine = pen(Ink::dimension, kConstruction_mm);
    for (const Box& box : {production, sheet}) {
        marks.emplace_back(outline(corners_of(box), fine));
    }
    if (!cautions.empty()) {
        const Box& strip = page.cautions;
        draw_cautions(marks, {strip.left, strip.top + 2.0, strip.width, strip.height - 2.0},
                      cautions, input.measure);
        marks.emplace_back(outline(corners_of(strip), fine));
    }
    marks.emplace_back(outline(corners_of(page.frame), pen(Ink::built, kBuilt_mm)));
    Drawing drawing;
    drawing.title = fmt::format("{}: {}", plan.title, options.sheet_name);
    drawing.paper = paper_text(page.paper, page.orientation);
    drawing.subject =
        fmt::format("{} of {}, not to scale, on {}", options.sheet_name, plan.title, drawing.paper);
    drawing.width_mm = page.width_mm;
    drawing.height_mm = page.height_mm;
    drawing.layers.push_back({"body", std::move(body)});
    drawing.layers.push_back({"frame", std::move(marks)});
    return drawing;
}

} // namespace throwline::sheet
