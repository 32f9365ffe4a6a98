#include "ui/running_order/order_view.h"

#include "base/length_text.h"
#include "base/words.h"
#include "optics/shot_size.h"
#include "sheet/finding_rows.h"
#include "ui/look/lozenge.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

/// Between a beat's name and its lozenge.
constexpr double kNameGap_px = 10.0;
constexpr double kLeastName_px = 60.0;

QString tr(const char* words) {
    return QCoreApplication::translate("RunningOrder", words);
}

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

QString name_of(const plan::Beat& beat) {
    return beat.name.empty() ? text(beat.id.name)
                             : QStringLiteral("%1  %2").arg(text(beat.id.name), text(beat.name));
}

QString focal_words(const Length& focal) {
    return text(focal_text(focal));
}

ShotWords words_of(const plan::Plan& plan, const edit::HungShot& hung,
                   const FramePictures& pictures) {
    const plan::Shot& shot = *plan::find(plan, hung.shot);
    ShotWords words{text(shot.id.name), {}, tr("shot %1").arg(text(shot.id.name))};
    if (shot.size) {
        words.lines.append(text(optics::abbreviation_of(*shot.size)));
        words.sentence += QStringLiteral(", %1").arg(text(optics::name_of(*shot.size)));
    }
    const FramePicture* picture = pictures.of(shot.id);
    const std::optional<Length> focal =
        shot.focal || picture == nullptr ? shot.focal : picture->focal;
    if (focal) {
        words.lines.append(focal_words(*focal));
        words.sentence += QStringLiteral(", %1").arg(focal_words(*focal));
    }
    words.lines.append(text(shot.camera.name));
    words.sentence += QStringLiteral(", %1").arg(text(shot.camera.name));
    if (!hung.goes_on_to.empty()) {
        const QString goes_on = tr("to beat %1").arg(text(hung.goes_on_to.name));
        words.lines.append(goes_on);
        words.sentence += QStringLiteral(", %1").arg(goes_on);
    }
    return words;
}

QString walk_words(const edit::HungBeat& beat, UnitSystem units) {
    if (beat.longest_walk_m <= 0.0) {
        return {};
    }
    return QStringLiteral("%1, %2 s")
        .arg(text(shown(Length::metres(beat.longest_walk_m), units)),
             QLocale{}.toString(edit::walking_time_s(beat.longest_walk_m), 'f', 1));
}

double width_of(const ShotWords& words, const QFont& font) {
    QFont bold = font;
    bold.setBold(true);
    double width = QFontMetricsF{bold}.horizontalAdvance(words.id);
    for (const QString& line : words.lines) {
        width = std::max(width, QFontMetricsF{font}.horizontalAdvance(line));
    }
    return std::ceil(width) + 1.0;
}

/// Where a finding belongs along the order; none for one about no beat at all.
OrderPlace place_of(const OrderView& view, const checks::Finding& finding) {
    return view.place_of({finding.beat, finding.shot});
}

bool is_on_the_way(const checks::Finding& finding) {
    return finding.check == "walk";
}

void place_spot(OrderView& view, FindingSpot& spot, bool on_the_way, const QFont& font) {
    const QSizeF size = lozenge_size(QFontMetricsF{font}, spot.number);
    const BeatBox& beat = view.layout.beats[static_cast<std::size_t>(spot.place.beat)];
    if (spot.place.is_shot()) {
        const QRectF& picture = beat.shots[static_cast<std::size_t>(spot.place.shot)].picture;
        spot.centre = picture.topRight() + QPointF{-size.width() / 2.0 - 2.0, 1.0};
    } else if (on_the_way && !beat.walk.isEmpty()) {
        spot.centre = QPointF{beat.walk.center().x(), beat.walk.bottom() + size.height() / 2.0};
    } else {
        spot.centre = QPointF{beat.head.right() - size.width() / 2.0, beat.head.center().y() - 2.0};
    }
    spot.box = QRectF{spot.centre - QPointF{size.width(), size.height()} / 2.0, size};
}

void mark_findings(OrderView& view, const checks::Analysis& known, const QFont& font) {
    const std::vector<int> numbers = sheet::finding_numbers(known);
    for (std::size_t i = 0; i < known.findings.size(); ++i) {
        const checks::Finding& finding = known.findings[i];
        const OrderPlace place = place_of(view, finding);
        if (!place || finding.accepted) {
            continue;
        }
        FindingSpot spot{place, static_cast<int>(i), numbers[i], 0, finding.severity, {}, {}, {}};
        spot.sentences = QStringLiteral("%1. %2").arg(spot.number).arg(text(finding.message));
        place_spot(view, spot, is_on_the_way(finding), font);
        const auto same =
            std::find_if(view.spots.begin(), view.spots.end(), [&](const auto& other) {
                return other.place == place && std::abs(other.centre.y() - spot.centre.y()) < 0.5;
            });
        if (same == view.spots.end()) {
            view.spots.push_back(std::move(spot));
        } else {
            ++same->more;
            same->sentences += QStringLiteral("\n") + spot.sentences;
        }
    }
}

} // namespace

QFont lettering_font(const QFont& font) {
    QFont smaller = font;
    if (font.pointSizeF() > 0.0) {
        smaller.setPointSizeF(font.pointSizeF() * 0.92);
    }
    return smaller;
}

OrderPlace OrderView::place_of(const edit::Now& now) const {
    OrderPlace beat_only;
    for (std::size_t b = 0; b < order.size(); ++b) {
        for (std::size_t s = 0; s < order[b].shots.size(); ++s) {
            if (!now.shot.empty() && order[b].shots[s].shot == now.shot) {
                return {static_cast<int>(b), static_cast<int>(s)};
            }
        }
        if (order[b].beat == now.beat) {
            beat_only.beat = static_cast<int>(b);
        }
    }
    return beat_only;
}

edit::Now OrderView::now_of(const OrderPlace& place) const {
    const edit::HungBeat& beat = order[static_cast<std::size_t>(place.beat)];
    return {beat.beat, place.is_shot() ? beat.shots[static_cast<std::size_t>(place.shot)].shot
                                       : plan::Id<plan::Shot>{}};
}

std::vector<OrderPlace> OrderView::places() const {
    std::vector<OrderPlace> all;
    for (std::size_t b = 0; b < order.size(); ++b) {
        all.push_back({static_cast<int>(b), -1});
        for (std::size_t s = 0; s < order[b].shots.size(); ++s) {
            all.push_back({static_cast<int>(b), static_cast<int>(s)});
        }
    }
    return all;
}

QString OrderView::sentence(const OrderPlace& place) const {
    const auto b = static_cast<std::size_t>(place.beat);
    if (place.is_shot()) {
        return words[b][static_cast<std::size_t>(place.shot)].sentence;
    }
    const QString said = tr("beat %1").arg(names[b].simplified());
    return walks[b].isEmpty() ? said : tr("%1; walks into it: %2").arg(said, walks[b]);
}

const FindingSpot* OrderView::spot_at(const QPointF& point) const {
    const auto at = std::find_if(spots.begin(), spots.end(),
                                 [&](const FindingSpot& spot) { return spot.box.contains(point); });
    return at == spots.end() ? nullptr : &*at;
}

OrderView view_of(const Desk& desk, const FramePictures& pictures, const checks::Analysis* known,
                  const QFont& font, double height) {
    OrderView view;
    const plan::Plan& plan = *desk.plan();
    view.order = edit::hung_order(plan, *desk.catalogue());
    const QFont small = lettering_font(font);
    QFont bold_font = font;
    bold_font.setBold(true);
    const QFontMetricsF bold{bold_font};
    const QFontMetricsF small_metrics{small};
    const double lozenge = lozenge_size(small_metrics, 99).width();
    std::vector<LetteringWidths> widths;
    for (std::size_t b = 0; b < view.order.size(); ++b) {
        const edit::HungBeat& beat = view.order[b];
        LetteringWidths& width = widths.emplace_back();
        view.names.push_back(name_of(plan.beats[b]));
        width.name = std::max(bold.horizontalAdvance(view.names.back()), kLeastName_px)
                     + kNameGap_px + lozenge;
        view.walks.push_back(walk_words(beat, plan.units));
        width.walk = small_metrics.horizontalAdvance(view.walks.back());
        std::vector<ShotWords>& words = view.words.emplace_back();
        for (const edit::HungShot& shot : beat.shots) {
            words.push_back(words_of(plan, shot, pictures));
            width.shots.push_back(width_of(words.back(), small));
        }
    }
    view.layout = laid_out(view.order, widths, QFontMetricsF{font}, height);
    if (known != nullptr) {
        mark_findings(view, *known, small);
    }
    return view;
}

} // namespace throwline::ui
