#include "sheet/lettering.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

/// Leaders longer than this are worse than fewer words.
constexpr double kFar_mm = 36.0;
/// What the drawing says without words is worth a leader no longer than this.
constexpr double kModest_mm = 15.0;
constexpr double kAnywhere_mm = 200.0;
/// Rounds in which words that have a place look for a better one, which others may have left.
constexpr int kRounds = 2;
/// Pale paper under words, so that lines break off at them.
constexpr double kPaperUnder_mm = 0.3;
constexpr double kPaperStrength = 0.72;

double pitch_of(const LabelRequest& request) {
    return request.height_mm * kLinePitch_mm / kLetter_mm;
}

/// A request, and where and how it was set.
struct Setting {
    const LabelRequest* request = nullptr;
    /// All the words first, then fewer and fewer.
    std::vector<std::vector<LabelLine>> wordings;
    /// Free places near by before anything was set.
    int freedom = 0;
    std::optional<PlacedBox> placed;
    /// Which wording stands there, or the number that stands for the words.
    std::size_t wording = 0;
    int key_number = 0;
};

Setting setting_of(const LabelRequest& request) {
    Setting setting;
    setting.request = &request;
    setting.wordings.push_back(request.lines);
    setting.wordings.insert(setting.wordings.end(), request.shorter.begin(), request.shorter.end());
    if (request.shorter.empty() && request.lines.size() > 1) {
        setting.wordings.push_back({request.lines.front()});
    }
    return setting;
}

/// All words of a label in one line, for the key.
std::string run_on(const std::vector<LabelLine>& lines) {
    std::string text;
    for (const LabelLine& words : lines) {
        text += text.empty() ? words.text : ", " + words.text;
    }
    return text;
}

class Letterer {
  public:
    Letterer(std::span<const LabelRequest> requests, LabelField& field, KeyList& key)
        : field_{field}, key_{key} {
        for (const LabelRequest& request : requests) {
            settings_.push_back(setting_of(request));
            settings_.back().freedom = field_.near_places(box_request(settings_.back(), 0));
        }
    }

    void place_all() {
        for (const bool may_drop : {false, true}) {
            try_all(may_drop, 0, kNear_mm);
            const double far_mm = may_drop ? kModest_mm : kFar_mm;
            try_all(may_drop, 0, far_mm);
            improve(may_drop);
            if (!may_drop) {
                try_far_off(false);
                try_far_off(true);
            }
            for (std::size_t wording = 1; wording < most_wordings(); ++wording) {
                try_all(may_drop, wording, far_mm);
            }
        }
        give_numbers();
        set_anywhere();
    }

    void draw(Marks& marks) const {
        for (const Setting& setting : settings_) {
            if (setting.placed && setting.placed->has_leader) {
                draw_leader(*setting.placed, marks);
            }
        }
        for (const Setting& setting : settings_) {
            if (setting.placed && setting.key_number == 0) {
                draw_words(setting, marks);
            } else if (setting.placed) {
                add_key_mark(marks, setting.placed->box.centre(), setting.key_number,
                             field_.measure());
            }
        }
    }

  private:
    BoxRequest box_request(const Setting& setting, std::size_t wording) const {
        const LabelRequest& request = *setting.request;
        const std::vector<LabelLine>& lines = setting.wordings[wording];
        double width_mm = 0.0;
        for (const LabelLine& words : lines) {
            width_mm = std::max(
                width_mm, field_.measure().width_mm(words.text, request.height_mm, words.bold));
        }
        const double height_mm = pitch_of(request) * (static_cast<double>(lines.size()) - 1.0)
                                 + request.height_mm * (1.0 + kDescent);
        BoxRequest box;
        box.anchor = request.anchor;
        box.half_mm = request.half_mm;
        box.size_mm = {width_mm, height_mm};
        box.always_leader = request.always_leader;
        box.inside = request.inside && lines.size() == 1;
        return box;
    }

    std::size_t most_wordings() const {
        std::size_t most = 1;
        for (const Setting& setting : settings_) {
            most = std::max(most, setting.wordings.size());
        }
        return most;
    }

    bool try_one(Setting& setting, const BoxRequest& box, std::size_t wording) {
        setting.placed = field_.find(box);
        setting.wording = wording;
        return setting.placed.has_value();
    }

    /// Those with the fewest free places choose first.
    std::vector<Setting*> open_settings(bool may_drop) {
        std::vector<Setting*> open;
        for (Setting& setting : settings_) {
            if (!setting.placed && setting.request->may_drop == may_drop) {
                open.push_back(&setting);
            }
        }
        std::stable_sort(open.begin(), open.end(), [](const Setting* a, const Setting* b) {
            return a->freedom < b->freedom;
        });
        return open;
    }

    void try_all(bool may_drop, std::size_t wording, double farthest_mm) {
        for (Setting* setting : open_settings(may_drop)) {
            if (wording < setting->wordings.size()) {
                BoxRequest box = box_request(*setting, wording);
                box.farthest_mm = farthest_mm;
                try_one(*setting, box, wording);
            }
        }
    }

    /// All the words of those that are worth a long leader, which may run under other words where
    /// there is no other way.
    void try_far_off(bool under_lettering) {
        for (Setting* setting : open_settings(false)) {
            if (setting->request->farthest_mm > kFar_mm) {
                BoxRequest box = box_request(*setting, 0);
                box.farthest_mm = setting->request->farthest_mm;
                box.under_lettering = under_lettering;
                try_one(*setting, box, 0);
            }
        }
    }

    void improve(bool may_drop) {
        for (int round = 0; round < kRounds; ++round) {
            for (Setting& setting : settings_) {
                if (!setting.placed || setting.request->may_drop != may_drop) {
                    continue;
                }
                field_.release(*setting.placed);
                BoxRequest box = box_request(setting, setting.wording);
                box.farthest_mm = may_drop ? kModest_mm : kFar_mm;
                const auto better = field_.best_place(box);
                if (better && better->cost < setting.placed->cost) {
                    setting.placed = better;
                }
                field_.settle(*setting.placed);
            }
        }
    }

    /// Numbers only go to words that have a place for one, and the key only holds such words.
    void give_numbers() {
        for (Setting& setting : settings_) {
            if (setting.placed) {
                continue;
            }
            BoxRequest box = box_request(setting, 0);
            box.size_mm = key_mark_size(kWidestNumber, field_.measure());
            box.inside = setting.request->inside;
            box.farthest_mm = kFar_mm;
            const auto place = field_.best_place(box);
            const auto number = place ? key_.add(run_on(setting.wordings.front())) : std::nullopt;
            if (number) {
                setting.placed = place;
                setting.key_number = *number;
                field_.settle(*place);
            }
        }
    }

    void set_anywhere() {
        int left_out = 0;
        for (Setting& setting : settings_) {
            for (std::size_t i = 0; i < setting.wordings.size() && !setting.placed; ++i) {
                if (!setting.request->may_drop) {
                    BoxRequest box = box_request(setting, i);
                    box.farthest_mm = kAnywhere_mm;
                    box.under_lettering = true;
                    try_one(setting, box, i);
                }
            }
            left_out += setting.placed ? 0 : 1;
        }
        key_.tell_left_out(left_out);
    }

    static void draw_leader(const PlacedBox& placed, Marks& marks) {
        constexpr double kDot_mm = 0.35;
        marks.emplace_back(
            line(placed.leader_from, placed.leader_to, pen(Ink::lettering, kHair_mm)));
        marks.emplace_back(Circle{placed.leader_from, kDot_mm, no_pen(), solid(Ink::lettering)});
    }

    void draw_words(const Setting& setting, Marks& marks) const {
        const LabelRequest& request = *setting.request;
        const PlacedBox& placed = *setting.placed;
        if (placed.over_lines || field_.has_line_under(placed.box)) {
            const Box air = placed.box.inset(-kPaperUnder_mm);
            marks.emplace_back(outline({{air.left, air.top},
                                        {air.right(), air.top},
                                        {air.right(), air.bottom()},
                                        {air.left, air.bottom()}},
                                       no_pen(), solid(Ink::paper, kPaperStrength)));
        }
        double baseline_mm = placed.box.top + request.height_mm;
        for (const LabelLine& words : setting.wordings[setting.wording]) {
            marks.emplace_back(
                Text{words.text,
                     {placed.to_the_left ? placed.box.right() : placed.box.left, baseline_mm},
                     request.height_mm,
                     placed.to_the_left ? TextAnchor::end : TextAnchor::start,
                     0.0,
                     words.bold,
                     Ink::lettering});
            baseline_mm += pitch_of(request);
        }
    }

    /// Key marks are placed before their numbers are known.
    static constexpr int kWidestNumber = 99;

    LabelField& field_;
    KeyList& key_;
    std::vector<Setting> settings_;
};

} // namespace

void set_lettering(std::span<const LabelRequest> requests, LabelField& field, KeyList& key,
                   Marks& marks) {
    Letterer letterer{requests, field, key};
    letterer.place_all();
    letterer.draw(marks);
}

} // namespace throwline::sheet
