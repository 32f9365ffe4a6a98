#include "card/own_item.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace throwline::card {

namespace {

using enum OwnKind;

constexpr std::array kUses{
    OwnChoice{"seat", "to sit on"},         OwnChoice{"table", "a table"},
    OwnChoice{"storage", "to keep things"}, OwnChoice{"bed", "a bed"},
    OwnChoice{"appliance", "an appliance"}, OwnChoice{"flat", "a flat"},
    OwnChoice{"platform", "a platform"},    OwnChoice{"set_dressing", "dressing"},
    OwnChoice{"support", "a box or stand"}};
constexpr std::array kShapes{OwnChoice{"box", "rectangular"}, OwnChoice{"round", "round"},
                             OwnChoice{"stairs", "steps"}};
constexpr std::array kStock{
    OwnField{"name", "Name", text, "As it is to stand on the plan"},
    OwnField{.key = "use", .words = "It is", .kind = choice, .choices = kUses},
    OwnField{.key = "shape", .words = "From above", .kind = choice, .choices = kShapes},
    OwnField{"width_m", "Width", length, "Across it; of what is round, the diameter"},
    OwnField{"depth_m", "Depth", length, "Empty: as deep as it is wide", "width_m"},
    OwnField{"height_m", "Height", length},
    OwnField{"seat_height_m",
             "Seat or step at",
             length,
             "How high one sits or stands on it; empty where nobody does",
             {},
             true},
    OwnField{"clear_under_m",
             "Free under it",
             length,
             "From the floor to the underside of a table top; empty where it is closed",
             {},
             true},
    OwnField{.key = "mass_kg",
             .words = "Mass, kg",
             .tip = "Empty when not known",
             .empty_is_zero = true}};

constexpr std::array kLens{
    OwnField{"name", "Name", text, "As it is to stand on the plan"},
    OwnField{"focal_min_mm", "Shortest focal length, mm", millimetres},
    OwnField{"focal_max_mm", "Longest focal length, mm", millimetres,
             "Empty for a lens of one focal length", "focal_min_mm"},
    OwnField{"stop_wide", "Widest stop, T", number, "At the shortest focal length"},
    OwnField{"stop_long", "Widest stop when long, T", number,
             "At the longest focal length; empty: the same", "stop_wide"},
    OwnField{"close_focus_m", "Nearest focus", length},
    OwnField{"image_circle_mm", "Picture it covers, mm", millimetres,
             "Diameter; a larger picture area gets dark corners"},
    OwnField{"squeeze", "Squeeze", number, "Of an anamorphic lens; empty: none", {}, true},
    OwnField{"extender", "Extender", number, "Factor of one built in; empty: none", {}, true},
    OwnField{"length_mm", "Body, mm long", millimetres},
    OwnField{"front_diameter_mm", "Front, mm across", millimetres},
    OwnField{"hood_length_mm", "Hood, mm long", millimetres, "0 without one"}};

constexpr std::array kSensor{
    OwnField{"name", "Name", text, "The camera and what it records, in the crew's words"},
    OwnField{"width_mm", "Picture area, mm wide", millimetres, "What is recorded of the sensor"},
    OwnField{"height_mm", "Picture area, mm high", millimetres},
    OwnField{
        "squeeze", "Stretched on showing", number, "By an anamorphic factor; empty: not", {}, true},
    OwnField{"circle_of_confusion_mm",
             "Blur that passes as sharp, mm",
             millimetres,
             "Empty: the diagonal / 1500, as is common practice",
             {},
             true}};

constexpr std::array kLampKinds{
    OwnChoice{"fresnel", "a Fresnel"},      OwnChoice{"open_face", "open face"},
    OwnChoice{"profile", "a profile"},      OwnChoice{"par", "a PAR"},
    OwnChoice{"led_panel", "an LED panel"}, OwnChoice{"tube", "a tube"},
    OwnChoice{"soft_box", "a soft box"},    OwnChoice{"lantern", "a lantern"},
    OwnChoice{"practical", "a practical"},  OwnChoice{"cyc", "a cyc light"}};
constexpr std::array kLamp{
    OwnField{"name", "Name", text, "As it is to stand on the plan"},
    OwnField{.key = "kind", .words = "It is", .kind = choice, .choices = kLampKinds},
    OwnField{"spot_peak_cd", "Peak, spot, cd", number,
             "On the axis at the narrowest focus; lux at a distance times its square in metres"},
    OwnField{"spot_beam_deg", "Beam, spot, \u00b0", degrees,
             "Full angle to 50 % of the peak, at the narrowest focus"},
    OwnField{"spot_field_deg", "Field, spot, \u00b0", degrees, "Full angle to 10 % of the peak"},
    OwnField{"flood_peak_cd",
             "Peak, flood, cd",
             number,
             "The same at the widest focus; empty, all three, where the focus is fixed",
             {},
             true},
    OwnField{"flood_beam_deg",
             "Beam, flood, \u00b0",
             degrees,
             "Empty where the focus is fixed",
             {},
             true},
    OwnField{"flood_field_deg",
             "Field, flood, \u00b0",
             degrees,
             "Empty where the focus is fixed",
             {},
             true},
    OwnField{"watts", "Power, W", number, "What it draws"},
    OwnField{"power_factor", "Power factor", number, "Empty: 1", {}, true},
    OwnField{"mass_kg", "Mass, kg", number, "With its bracket, without the cable"},
    OwnField{"colour_temperature_k", "Colour, K", number, "1000 to 20000"},
    OwnField{"body_width_mm", "Housing, mm wide", millimetres},
    OwnField{"body_depth_mm", "Housing, mm deep", millimetres, "Along its axis"},
    OwnField{"body_height_mm", "Housing, mm high", millimetres},
    OwnField{"face_width_mm", "Face, mm wide", millimetres, "What shines: lens, window or cloth"},
    OwnField{"face_height_mm", "Face, mm high", millimetres, "Empty: as high as wide",
             "face_width_mm"},
    OwnField{.key = "round_face", .words = "Round face", .kind = yes_no, .usually = true},
    OwnField{.key = "soft",
             .words = "Soft face",
             .kind = yes_no,
             .tip = "A flat diffuse face, whose light is added up over its area"},
    OwnField{"clearance_m", "Keep clear", length,
             "To people, drapes and anything that burns: the maker's figure decides"}};

constexpr std::array kSupport{
    OwnField{"name", "Name", text, "As it is to stand in the lists"},
    OwnField{"footprint_radius_m", "Room on the floor", length,
             "Radius of the circle that its legs and the hands at it need"},
    OwnField{"operator_room_m",
             "Room behind it",
             length,
             "For who works it; empty where nobody stands there",
             {},
             true},
    OwnField{"height_min_m", "Lowest", length, "Height of the lens or the lamp over the floor"},
    OwnField{"height_max_m", "Highest", length},
    OwnField{"column_radius_m", "Column", length, "Radius of what blocks sight and light"},
    OwnField{.key = "for_camera", .words = "For cameras", .kind = yes_no, .usually = true}};

constexpr std::array kFilterKinds{
    OwnChoice{"conversion", "of the white line"}, OwnChoice{"colour", "a colour"},
    OwnChoice{"diffusion", "diffusion"}, OwnChoice{"neutral", "neutral"}};
constexpr std::array kFilter{
    OwnField{"name", "Name", text, "As it is to stand in the lists"},
    OwnField{.key = "kind", .words = "It is", .kind = choice, .choices = kFilterKinds},
    OwnField{"transmission", "Lets through, %", percent},
    OwnField{"mired_shift",
             "Shift, mired",
             number,
             "Bluer below zero, warmer above; empty: none",
             {},
             true},
    OwnField{"spread",
             "Spreads, times",
             number,
             "Factor on beam and field of a lamp; empty: not",
             {},
             true}};

constexpr std::array kTables{OwnTable{"stock", "Furniture, scenery, dressing", kStock},
                             OwnTable{"lenses", "A lens", kLens},
                             OwnTable{"sensors", "A camera's picture area", kSensor},
                             OwnTable{"instruments", "A lamp", kLamp},
                             OwnTable{"supports", "A stand or support", kSupport},
                             OwnTable{"filters", "A filter", kFilter}};

} // namespace

std::span<const OwnTable> own_tables() {
    return kTables;
}

const OwnTable& own_table(std::string_view table) {
    const auto found = std::find_if(kTables.begin(), kTables.end(),
                                    [&](const OwnTable& one) { return one.table == table; });
    if (found == kTables.end()) {
        throw std::logic_error{"no table for own items"};
    }
    return *found;
}

} // namespace throwline::card
