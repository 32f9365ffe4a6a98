#include "card/card_kinds.h"
#include "card/locate.h"
#include "photometry/exposure.h"
#include "plan/places.h"
#include "plan/shutter_text.h"

namespace throwline::card {

namespace {

constexpr LengthBounds kHeights{Length::metres(0.02), Length::metres(30)};
constexpr double kLongestShutter_s = 60.0;

const auto kCameras = [](auto& plan) -> auto& { return plan.cameras; };

std::string exposure_text(const plan::Camera& camera) {
    return plan::shutter_text(camera.exposure_s).value_or(shortest(camera.exposure_s)) + " s";
}

/// "1/50", "0.02 s", or the angle of a rotary shutter: "180° at 25".
std::optional<double> shutter_s(const std::string& text) {
    std::string bare = trimmed(text);
    if (const std::size_t at = bare.find(" at "); at != std::string::npos) {
        std::string fault;
        const auto rate = read_number(bare.substr(at + 4), 1, 1000, fault);
        const Result<Angle> angle = parse_angle(bare.substr(0, at));
        return rate && angle ? std::optional{photometry::shutter_time_s(*angle, *rate)}
                             : std::nullopt;
    }
    if (bare.ends_with('s')) {
        bare = trimmed(bare.substr(0, bare.size() - 1));
    }
    std::string fault;
    const auto seconds = plan::exposure_of(bare);
    return seconds ? seconds : read_number(bare, 0, kLongestShutter_s, fault);
}

Field shutter_field(const Parts<plan::Camera>& cameras) {
    Field made = field(cameras, {"shutter", "shutter"}, FieldKind::text, exposure_text,
                       [](plan::Camera& part, const std::string& text, const edit::Context&) {
                           const auto time_s = shutter_s(text);
                           if (!time_s || *time_s <= 0.0 || *time_s > kLongestShutter_s) {
                               return in_quotes(trimmed(text))
                                      + " is no shutter; give a time up to 60 s such as 1/50, or "
                                        "an angle and a rate such as 180° at 25";
                           }
                           part.exposure_s = *time_s;
                           return std::string{};
                       });
    made.hint = "1/50, 0.02 s, or 180° at 25";
    return made;
}

Field home_field(const Parts<plan::Camera>& cameras, UnitSystem units) {
    Field made = field(
        cameras, {"home", "waiting place"}, FieldKind::text,
        [units](const plan::Camera& part) {
            return part.home ? text_of(*part.home, units) : std::string{"off the floor"};
        },
        [units](plan::Camera& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (trimmed(text).empty() || says(text, "off the floor")) {
                part.home.reset();
            } else if (const auto point = read_point(text, units, fault)) {
                part.home = *point;
            }
            return fault;
        });
    made.hint = "across, up the page; empty: off the floor until its first shot";
    return made;
}

std::vector<Piece> standing_pieces(const CardInput& input, const Parts<plan::Camera>& cameras) {
    const edit::Context& context = input.context;
    const UnitSystem units = context.plan.units;
    return {"On a ",
            row_field(cameras, {"support", "support"}, context.catalogue.supports, units,
                      [](auto& part) -> auto& { return part.support; }),
            " at ",
            length_field(
                cameras, {"eye_height", "lens height"}, units, kHeights,
                [](const plan::Camera& part) { return part.eye_height; },
                [](plan::Camera& part, Length height) { part.eye_height = height; })};
}

void making_sentence(Card& card, const CardInput& input, const Parts<plan::Camera>& cameras) {
    const catalogue::Catalogue& catalogue = input.context.catalogue;
    const UnitSystem units = input.context.plan.units;
    say(card, {"With a ",
               row_field(cameras, {"lens", "lens"}, catalogue.lenses, units,
                         [](auto& part) -> auto& { return part.lens; }),
               " on ",
               row_field(cameras, {"sensor", "sensor"}, catalogue.sensors, units,
                         [](auto& part) -> auto& { return part.sensor; }),
               ", ISO ",
               number_field(
                   cameras, {"iso", "ISO speed"}, {1, 10'000'000},
                   [](const plan::Camera& part) { return part.iso; },
                   [](plan::Camera& part, double iso) { part.iso = iso; }),
               ", each picture open for ", shutter_field(cameras), "."});
}

/// The shot that one camera is in now; empty for none.
plan::Id<plan::Shot> shot_now(const CardInput& input, const plan::Camera& camera) {
    const auto place = input.chosen.size() == 1
                           ? plan::camera_place(input.context.plan, camera, input.context.now.beat,
                                                input.context.now.shot)
                           : std::nullopt;
    return place ? place->shot : plan::Id<plan::Shot>{};
}

} // namespace

void camera_card(Card& card, const CardInput& input) {
    const Parts<plan::Camera> cameras = entities<plan::Camera>(input, kCameras);
    if (cameras.empty()) {
        return;
    }
    const plan::Id<plan::Shot> shot = shot_now(input, cameras.first());
    std::vector<Piece> first = standing_pieces(input, cameras);
    if (shot.empty()) {
        first.emplace_back(".");
    } else {
        first.emplace_back(", ");
        for (Piece& piece : picture_pieces(input, shot)) {
            first.push_back(std::move(piece));
        }
    }
    say(card, std::move(first));
    making_sentence(card, input, cameras);
    say(card, {"Waits ", home_field(cameras, input.context.plan.units), " before its first shot."});
    shot_sentences(card, input, shot);
}

} // namespace throwline::card
