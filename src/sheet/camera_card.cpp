#include "sheet/camera_card.h"

#include "base/length_text.h"
#include "checks/wording.h"
#include "lists/place_text.h"
#include "lists/shot_lines.h"
#include "sheet/frame_picture.h"
#include "sheet/shot_words.h"
#include "sheet/text_page.h"
#include "sheet/text_wrap.h"

#include <algorithm>
#include <fmt/format.h>
#include <memory>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 4.0;
/// To be read from where the operator stands.
constexpr double kName_mm = 10.0;
constexpr double kShotName_mm = 7.0;
constexpr double kHead_mm = kPad_mm + kName_mm + 2.0 * kLinePitch_mm + 7.0;
/// Shares of the width: shot, frame, what is framed, lens, place and moves.
constexpr double kFrameFrom = 0.105;
constexpr double kFramedFrom = 0.335;
constexpr double kLensFrom = 0.57;
constexpr double kPlaceFrom = 0.765;
constexpr double kGutter_mm = 3.0;
/// Above and below what stands in a row.
constexpr double kRowAir_mm = 2.0;

using Paragraphs = std::vector<LabelLine>;

/// One shot on a card, its words broken into the lines of their columns.
struct CardRow {
    const ShotShown* shown = nullptr;
    Paragraphs framed;
    Paragraphs lens;
    Paragraphs place;
    double height_mm = 0.0;
};

struct Card {
    const plan::Camera* camera = nullptr;
    std::string lens_range;
    std::vector<ShotShown> shots;
    std::vector<CardRow> rows;
    TextPage page;
    /// First row of each page, and one past the last.
    std::vector<std::size_t> breaks;

    std::size_t pages() const { return breaks.size() - 1; }
    std::string name() const { return fmt::format("Card of {}", checks::said(camera->id)); }
    std::string name_of(std::size_t index) const {
        return pages() == 1 ? name() : fmt::format("{}, {} of {}", name(), index + 1, pages());
    }
};

double width_of(const TextPage& page) {
    return page.body.width - 2.0 * kPad_mm;
}

Paragraphs broken(const Paragraphs& words, double width_mm, const TextMeasure& measure) {
    Paragraphs lines;
    for (const LabelLine& paragraph : words) {
        if (paragraph.text.empty()) {
            continue;
        }
        for (const std::string& words_of_line :
             wrapped_lines(paragraph.text, width_mm, kLetter_mm, paragraph.bold, measure)) {
            lines.push_back({words_of_line, paragraph.bold});
        }
    }
    return lines;
}

Paragraphs framed_words(const plan::Plan& plan, const ShotShown& shown) {
    Paragraphs words{{lists::subjects_text(*shown.shot), true}};
    if (shown.shot->size) {
        words.push_back({optics::name_of(*shown.shot->size)});
    }
    if (shown.figures) {
        const std::string got = lists::size_got_text(*shown.scene);
        const bool as_wanted = shown.shot->size && got == optics::name_of(*shown.shot->size);
        words.push_back({as_wanted || got.empty() ? std::string{} : fmt::format("gets {}", got)});
    }
    words.push_back({fmt::format("Beat {}", beat_words(plan, *shown.shot))});
    words.push_back({shown.shot->composition});
    return words;
}

Paragraphs lens_paragraphs(const plan::Plan& plan, const ShotShown& shown) {
    if (!shown.figures) {
        return {{"finds nobody to look at"}};
    }
    return {{lens_words(*shown.figures), true},
            {height_words(*shown.figures, plan.units)},
            {fmt::format("focus {}", focus_words(*shown.figures, plan.units))}};
}

Paragraphs place_paragraphs(const plan::Plan& plan, const ShotShown& shown) {
    Paragraphs words{{lists::place_text(plan, shown.shot->at)}};
    if (const std::string grid = lists::grid_place_text(plan, shown.shot->at); !grid.empty()) {
        words.push_back({fmt::format("under {}", grid)});
    }
    if (const std::string moves = move_words(plan, *shown.shot); !moves.empty()) {
        words.push_back({fmt::format("Moves {}", moves), true});
    }
    for (const std::string& note : shown.shot->notes) {
        words.push_back({note});
    }
    return words;
}

/// The frame's picture on a card: as wide as its column, in the frame's own shape.
Box picture_room(const ShotShown& shown, double width_mm) {
    const double aspect = shown.figures ? optics::aspect_of(shown.figures->view.frame) : 16.0 / 9.0;
    const double column_mm = (kFramedFrom - kFrameFrom) * width_mm - kGutter_mm;
    const double height_mm = std::min(column_mm / aspect, column_mm);
    return {0.0, 0.0, height_mm * aspect, height_mm};
}

CardRow row_of(const plan::Plan& plan, const ShotShown& shown, double width_mm,
               const TextMeasure& measure) {
    CardRow row;
    row.shown = &shown;
    row.framed = broken(framed_words(plan, shown),
                        (kLensFrom - kFramedFrom) * width_mm - kGutter_mm, measure);
    row.lens = broken(lens_paragraphs(plan, shown),
                      (kPlaceFrom - kLensFrom) * width_mm - kGutter_mm, measure);
    row.place = broken(place_paragraphs(plan, shown), (1.0 - kPlaceFrom) * width_mm, measure);
    const auto lines =
        static_cast<double>(std::max({row.framed.size(), row.lens.size(), row.place.size()}));
    row.height_mm =
        std::max(picture_room(shown, width_mm).height, lines * kLinePitch_mm) + 2.0 * kRowAir_mm;
    return row;
}

/// Rows that no longer fit go on the next page; each page takes one at least.
std::vector<std::size_t> breaks_of(const std::vector<CardRow>& rows, double room_mm) {
    std::vector<std::size_t> breaks{0};
    double taken_mm = 0.0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i > breaks.back() && taken_mm + rows[i].height_mm > room_mm) {
            breaks.push_back(i);
            taken_mm = 0.0;
        }
        taken_mm += rows[i].height_mm;
    }
    breaks.push_back(rows.size());
    return breaks;
}

std::string range_words(const catalogue::Lens* lens) {
    if (lens == nullptr) {
        return {};
    }
    return lens->is_zoom() ? fmt::format("{} to {}", checks::focal_text(lens->focal_min),
                                         checks::focal_text(lens->focal_max))
                           : checks::focal_text(lens->focal_min);
}

void set(Marks& marks, const std::string& words, const Vec2& at, double height_mm, bool bold) {
    marks.emplace_back(Text{words, at, height_mm, TextAnchor::start, 0.0, bold, Ink::lettering});
}

void draw_head(Marks& marks, const Card& card, const TextMeasure& measure) {
    const Box& body = card.page.body;
    const double left_mm = body.left + kPad_mm;
    const double width_mm = width_of(card.page);
    double baseline_mm = body.top + kPad_mm + kName_mm;
    set(marks, cut_to_width(card.camera->id.name, width_mm, kName_mm, true, measure),
        {left_mm, baseline_mm}, kName_mm, true);
    baseline_mm += 2.5 + kLinePitch_mm;
    for (const std::string& words :
         {fmt::format("Picture area {}; support {}", card.camera->sensor, card.camera->support),
          fmt::format("Lens {}, {}", card.camera->lens, card.lens_range)}) {
        set(marks, cut_to_width(words, width_mm, kLetter_mm, false, measure),
            {left_mm, baseline_mm}, kLetter_mm, false);
        baseline_mm += kLinePitch_mm;
    }
}

void set_lines(Marks& marks, const Paragraphs& lines, const Vec2& top_left) {
    double baseline_mm = top_left.y() + kLetter_mm;
    for (const LabelLine& words : lines) {
        set(marks, words.text, {top_left.x(), baseline_mm}, kLetter_mm, words.bold);
        baseline_mm += kLinePitch_mm;
    }
}

void draw_row(Marks& marks, const CardRow& row, const Box& box, const TextMeasure& measure) {
    marks.emplace_back(
        line({box.left, box.top}, {box.right(), box.top}, pen(Ink::dimension, kConstruction_mm)));
    const double top_mm = box.top + kRowAir_mm;
    const std::string& name = row.shown->shot->id.name;
    const double name_width_mm = kFrameFrom * box.width - 1.0;
    const double name_mm = std::max(
        kLetter_mm, std::min(kShotName_mm, kShotName_mm * name_width_mm
                                               / measure.width_mm(name, kShotName_mm, true)));
    set(marks, cut_to_width(name, name_width_mm, name_mm, true, measure),
        {box.left, top_mm + name_mm}, name_mm, true);
    if (const auto pixels = frame_picture(*row.shown->scene, kSmallFramePicture_px)) {
        const Box room = picture_room(*row.shown, box.width);
        draw_frame_picture(marks,
                           {box.left + kFrameFrom * box.width, top_mm, room.width, room.height},
                           pixels, false);
    }
    set_lines(marks, row.framed, {box.left + kFramedFrom * box.width, top_mm});
    set_lines(marks, row.lens, {box.left + kLensFrom * box.width, top_mm});
    set_lines(marks, row.place, {box.left + kPlaceFrom * box.width, top_mm});
}

Drawing draw_card(const SheetInput& input, const SheetOptions& options, const Card& card,
                  std::size_t page) {
    Marks marks;
    draw_head(marks, card, input.measure);
    const Box& body = card.page.body;
    double top_mm = body.top + kHead_mm;
    for (std::size_t i = card.breaks[page]; i < card.breaks[page + 1]; ++i) {
        const CardRow& row = card.rows[i];
        draw_row(marks, row, {body.left + kPad_mm, top_mm, width_of(card.page), row.height_mm},
                 input.measure);
        top_mm += row.height_mm;
    }
    return finished_page(input, options, card.page, {}, std::move(marks));
}

Card card_of(const SheetInput& input, const plan::Camera& camera, const TextPage& page,
             std::vector<ShotShown> shots) {
    Card card;
    card.camera = &camera;
    card.lens_range = range_words(input.catalogue.lens(camera.lens));
    card.page = page;
    card.shots = std::move(shots);
    for (const ShotShown& shown : card.shots) {
        card.rows.push_back(row_of(*input.analysis.plan, shown, width_of(page), input.measure));
    }
    card.breaks = breaks_of(card.rows, page.body.height - kHead_mm);
    return card;
}

void add_jobs(std::vector<SheetJob>& jobs, const SheetInput& input, Card made) {
    const auto card = std::make_shared<const Card>(std::move(made));
    for (std::size_t i = 0; i < card->pages(); ++i) {
        jobs.push_back({card->name_of(i),
                        [input, card, i](const SheetOptions& drawn) -> Result<Drawing> {
                            return draw_card(input, drawn, *card, i);
                        },
                        card->name()});
    }
}

} // namespace

Result<std::vector<SheetJob>> camera_card_jobs(const SheetInput& input,
                                               const SheetOptions& options) {
    const Result<Selection> selection = selected(input.analysis, options);
    if (!selection) {
        return tl::unexpected{selection.error()};
    }
    const Result<TextPage> page = text_page(input, options, {});
    if (!page) {
        return tl::unexpected{page.error()};
    }
    const std::vector<ShotShown> all = shots_shown(input, *selection);
    std::vector<SheetJob> jobs;
    for (const plan::Camera& camera : input.analysis.plan->cameras) {
        std::vector<ShotShown> shots;
        std::copy_if(all.begin(), all.end(), std::back_inserter(shots),
                     [&](const ShotShown& shown) { return shown.shot->camera == camera.id; });
        if (!shots.empty()) {
            add_jobs(jobs, input, card_of(input, camera, *page, std::move(shots)));
        }
    }
    return jobs;
}

} // namespace throwline::sheet
