#include "card/aims.h"
#include "card/card_kinds.h"
#include "card/lamp_mount.h"
#include "card/locate.h"
#include "checks/circuit_sum.h"

namespace throwline::card {

namespace {

constexpr const char* kDown = "straight down";
constexpr const char* kFirstBeat = "the first beat it can be";

const auto kLamps = [](auto& plan) -> auto& { return plan.lamps; };
const auto kBeats = [](const plan::Plan& plan) -> auto& { return plan.beats; };

Field aim_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    const UnitSystem units = context.plan.units;
    Field made = field(
        lamps, {"aim", "aim"}, FieldKind::text,
        [units](const plan::Lamp& lamp) { return aim_text(lamp.aim, units, kDown); },
        [](plan::Lamp& lamp, const std::string& text, const edit::Context& now) {
            return put_aim(lamp.aim, text, now, kDown, lamp.id.name);
        });
    made.choices = aimable(context.plan);
    made.hint = "a name, or a place: across, up the page, height; empty: straight down";
    return made;
}

Field aim_beat_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    std::vector<std::string> beats = id_names(context.plan.beats);
    beats.insert(beats.begin(), kFirstBeat);
    return choice_field(
        lamps, {"aim_beat", "aim beat"}, std::move(beats),
        [](const plan::Lamp& lamp) {
            return lamp.aim_beat.empty() ? std::string{kFirstBeat} : lamp.aim_beat.name;
        },
        [](plan::Lamp& lamp, const std::string& name) {
            lamp.aim_beat.name = name == kFirstBeat ? "" : name;
        });
}

Field filters_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    std::vector<std::string> known;
    for (const catalogue::Filter& filter : context.catalogue.filters) {
        known.push_back(filter.name);
    }
    Field made = field(
        lamps, {"filters", "filters"}, FieldKind::text,
        [](const plan::Lamp& lamp) {
            return lamp.filters.empty() ? std::string{"no filter"} : joined(lamp.filters);
        },
        [known](plan::Lamp& lamp, const std::string& text, const edit::Context&) {
            std::string fault;
            if (trimmed(text).empty() || says(text, "no filter")) {
                lamp.filters.clear();
            } else if (auto names = read_names(text, known, fault)) {
                lamp.filters = std::move(*names);
            }
            return fault;
        });
    made.choices = std::move(known);
    made.hint = "nearest the lamp first, with commas between; empty: none";
    return made;
}

Field circuit_field(const edit::Context& context, const Parts<plan::Lamp>& lamps) {
    std::vector<std::string> circuits = id_names(context.plan.circuits);
    circuits.insert(circuits.begin(), "none");
    return choice_field(
        lamps, {"circuit", "circuit"}, std::move(circuits),
        [](const plan::Lamp& lamp) {
            return lamp.circuit.empty() ? std::string{"none"} : lamp.circuit.name;
        },
        [](plan::Lamp& lamp, const std::string& name) {
            lamp.circuit.name = name == "none" ? "" : name;
        });
}

void aim_sentence(Card& card, const CardInput& input, const Parts<plan::Lamp>& lamps) {
    const edit::Context& context = input.context;
    say(card, {row_field(lamps, {"instrument", "instrument"}, context.catalogue.instruments,
                         context.plan.units, [](auto& lamp) -> auto& { return lamp.instrument; }),
               " as ",
               enum_field(lamps, {"role", "role"}, kLampRoleNames,
                          [](auto& lamp) -> auto& { return lamp.role; }),
               ", aimed at ", aim_field(context, lamps),
               lamps.first().aim_beat.empty() ? " in " : " in beat ",
               aim_beat_field(context, lamps), "."});
}

/// 0 % is spot.
void light_sentence(Card& card, const CardInput& input, const Parts<plan::Lamp>& lamps) {
    Field level =
        percent_field(lamps, {"level", "level"}, [](auto& lamp) -> auto& { return lamp.level; });
    if (!level.mixed) {
        level.working = [share = lamps.first().level] {
            return Working{"light left = level squared",
                           {{"", "dimmer level", share_text(share)}},
                           share_text(share * share),
                           "common practice, no source; LED fixtures may follow another curve"};
        };
    }
    say(card,
        {"Burns at ", std::move(level), ", flooded ",
         percent_field(lamps, {"flood", "flood"}, [](auto& lamp) -> auto& { return lamp.focus; }),
         lamps.first().beats.empty() ? ", in " : ", in beats ",
         ids_field(input.context, lamps, {"beats", "beats"}, "all beats", true, kBeats,
                   [](auto& lamp) -> auto& { return lamp.beats; }),
         ", with ", filters_field(input.context, lamps), "."});
}

/// A profile has shutters, other lamps have barn doors.
void cut_sentence(Card& card, const CardInput& input, const Parts<plan::Lamp>& lamps) {
    const catalogue::Instrument* instrument =
        input.context.catalogue.instrument(lamps.first().instrument);
    const bool shutters =
        instrument != nullptr && instrument->kind == catalogue::InstrumentKind::profile;
    const std::string words = shutters ? "shutter" : "barn door";
    const auto cut = [&](const char* key, const std::string& side, double plan::BeamCut::* part) {
        return percent_field(lamps, {key, side + " " + words},
                             [part](auto& lamp) -> auto& { return lamp.cut.*part; });
    };
    say(card, {shutters ? "Shutters in: top " : "Barn doors in: top ",
               cut("cut_top", "top", &plan::BeamCut::top), ", bottom ",
               cut("cut_bottom", "bottom", &plan::BeamCut::bottom), ", left ",
               cut("cut_left", "left", &plan::BeamCut::left), ", right ",
               cut("cut_right", "right", &plan::BeamCut::right), "."});
}

/// "draws 2.8 A": of one lamp on a circuit.
void add_draw(std::vector<Piece>& pieces, const CardInput& input, const plan::Lamp& lamp) {
    const catalogue::Instrument* instrument = input.context.catalogue.instrument(lamp.instrument);
    const plan::Circuit* circuit = plan::find(input.context.plan, lamp.circuit);
    if (instrument == nullptr || circuit == nullptr || input.chosen.size() != 1) {
        return;
    }
    const double watts = instrument->watts;
    const double volts = circuit->volts;
    const double factor = instrument->power_factor;
    const std::string amps = fixed(checks::current_a(*instrument, volts), 2) + " A";
    pieces.emplace_back("; draws ");
    pieces.emplace_back(Figure{"draws", "Current of " + lamp.id.name, amps, [=] {
                                   return Working{"I = P / (U x power factor)",
                                                  {{"P", "power", shortest(watts) + " W"},
                                                   {"U", "voltage", shortest(volts) + " V"},
                                                   {"", "power factor", shortest(factor)}},
                                                  amps,
                                                  "plain alternating-current power"};
                               }});
}

void patch_sentence(Card& card, const CardInput& input, const Parts<plan::Lamp>& lamps) {
    std::vector<Piece> pieces{"On circuit ", circuit_field(input.context, lamps), ", channel ",
                              whole_field(lamps, {"channel", "channel"}, {0, 100'000},
                                          [](auto& lamp) -> auto& { return lamp.channel; })};
    add_draw(pieces, input, lamps.first());
    pieces.emplace_back(".");
    say(card, std::move(pieces));
}

} // namespace

void lamp_card(Card& card, const CardInput& input) {
    const Parts<plan::Lamp> lamps = entities<plan::Lamp>(input, kLamps);
    if (lamps.empty()) {
        return;
    }
    aim_sentence(card, input, lamps);
    say(card, mount_pieces(input.context, lamps));
    light_sentence(card, input, lamps);
    if (input.chosen.size() == 1) {
        lamp_figures(card, input, lamps.first());
    }
    cut_sentence(card, input, lamps);
    patch_sentence(card, input, lamps);
    say(card, {"Notes: ", notes_field(lamps, {"notes", "notes"},
                                      [](auto& lamp) -> auto& { return lamp.notes; })});
}

} // namespace throwline::card
