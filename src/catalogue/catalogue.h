#pragma once

#include "base/quantity.h"
#include "base/result.h"

#include <array>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// The things a production is made from: generic kinds, no makers. Every row carries its source.
namespace throwline::catalogue {

/// An active picture area of a camera.
struct SensorMode {
    std::string name;
    Length width;
    Length height;
    /// Horizontal stretch when an anamorphic picture is shown: 1 for spherical modes.
    double squeeze = 1.0;
    Length diagonal() const;
    /// Diagonal / 1500 unless the row says otherwise (common practice, no source).
    Length circle_of_confusion;
    std::string source;
};

struct Lens {
    std::string name;
    /// Equal for a prime.
    Length focal_min;
    Length focal_max;
    /// Widest stop (T-number) at each end of the range.
    double stop_wide = 2.8;
    double stop_long = 2.8;
    Length close_focus;
    /// Diameter of the picture it covers; a larger sensor is vignetted.
    Length image_circle;
    double squeeze = 1.0;
    /// 1 where none is built in.
    double extender = 1.0;
    /// Body, for drawing and for what it hides; front glass and hood decide what strikes it.
    Length length;
    Length front_diameter;
    Length hood_length;
    std::string source;

    bool is_zoom() const { return focal_max > focal_min; }
};

enum class InstrumentKind {
    fresnel,
    open_face,
    profile,
    par,
    led_panel,
    tube,
    soft_box,
    lantern,
    practical,
    cyc
};

/// Peak intensity and angles at one end of the focus range. beam: full angle to 50 %, field: to 10
/// %.
struct BeamSetting {
    double peak_cd = 0.0;
    Angle beam;
    Angle field;
};

struct Instrument {
    std::string name;
    InstrumentKind kind = InstrumentKind::fresnel;
    /// Equal where the focus is fixed.
    BeamSetting spot;
    BeamSetting flood;
    double watts = 0.0;
    double power_factor = 1.0;
    double mass_kg = 0.0;
    /// Housing: across, deep along the axis, high.
    Length body_width;
    Length body_depth;
    Length body_height;
    /// The bright face; equal and `round_face` for a lens.
    Length face_width;
    Length face_height;
    bool round_face = true;
    /// Diffuse face: level is integrated over the face, not taken from a point.
    bool soft = false;
    double colour_temperature_k = 3200.0;
    /// Least distance to people, drapes and anything that burns.
    Length clearance;
    std::string source;
};

enum class FilterKind { conversion, colour, diffusion, neutral };

struct Filter {
    std::string name;
    FilterKind kind = FilterKind::conversion;
    double transmission = 1.0;
    /// Change in mired; 0 for neutral.
    double mired_shift = 0.0;
    /// Factor by which diffusion widens beam and field; 1 for none.
    double spread = 1.0;
    std::string source;
};

enum class StockShape { box, round, stairs };
enum class StockUse { flat, seat, table, storage, bed, appliance, platform, set_dressing, support };

/// Something that can be put on the floor: flats, furniture, platforms, dressing.
struct StockItem {
    std::string name;
    StockUse use = StockUse::set_dressing;
    StockShape shape = StockShape::box;
    /// Diameter for round items.
    Length width;
    Length depth;
    Length height;
    /// Height of the seat or of the surface one stands on; 0 where nobody sits or stands on it.
    Length seat_height;
    /// Tables: space under the top, so that legs fit and sight passes.
    Length clear_under;
    double mass_kg = 0.0;
    std::string source;
};

/// What holds a camera or a lamp: its footprint on the floor and what heights it can take.
struct Support {
    std::string name;
    /// Radius of the circle on the floor that it and its operator's hands need.
    Length footprint_radius;
    /// Room an operator needs behind it; 0 when unattended.
    Length operator_room;
    Length height_min;
    Length height_max;
    /// Radius of the column or leg cluster that blocks sight and beams.
    Length column_radius;
    bool for_camera = true;
    std::string source;
};

/// Body landmark heights or breadths as a share of stature.
struct BodyLandmark {
    std::string name;
    double share_of_stature = 0.0;
    std::string source;
};

/// The landmarks the program asks for; load_catalogue refuses tables without one of them. Heights
/// over the floor first, then breadths and a depth, then heights over the seat and of the seat.
inline constexpr std::array<std::string_view, 20> kLandmarks{"eye",
                                                             "chin",
                                                             "cervicale",
                                                             "acromion",
                                                             "suprasternale",
                                                             "chest",
                                                             "waist",
                                                             "hip",
                                                             "wrist",
                                                             "crotch",
                                                             "mid_thigh",
                                                             "knee",
                                                             "ankle",
                                                             "shoulder_breadth",
                                                             "hip_breadth",
                                                             "head_breadth",
                                                             "chest_depth",
                                                             "sitting_height",
                                                             "sitting_eye_height",
                                                             "popliteal"};

struct Finish {
    std::string name;
    /// Diffuse reflectance 0..1.
    double reflectance = 0.5;
    std::string source;
};

enum class PaperFamily { iso, us_office, architectural, ansi };

struct Paper {
    std::string name;
    PaperFamily family = PaperFamily::iso;
    /// Portrait: width <= height.
    Length width;
    Length height;
    std::string source;
};

struct DrawingScale {
    /// Drawing first: "1/4 in = 1 ft", "1:50".
    std::string name;
    UnitSystem system = UnitSystem::metric;
    /// Real length over drawn length: 48, 50.
    double ratio = 50.0;
    /// Offered without being asked for; 1:25 is not in ISO 5455 and is an extra.
    bool standard = true;
    std::string source;
};

/// All tables, each in the order of its file. Look-ups are by exact name first, then without regard
/// to case and repeated spaces; null when there is none.
struct Catalogue {
    std::vector<SensorMode> sensors;
    std::vector<Lens> lenses;
    std::vector<Instrument> instruments;
    std::vector<Filter> filters;
    std::vector<StockItem> stock;
    std::vector<Support> supports;
    std::vector<BodyLandmark> landmarks;
    std::vector<Finish> finishes;
    std::vector<Paper> papers;
    std::vector<DrawingScale> scales;

    const SensorMode* sensor(std::string_view name) const;
    const Lens* lens(std::string_view name) const;
    const Instrument* instrument(std::string_view name) const;
    const Filter* filter(std::string_view name) const;
    const StockItem* stock_item(std::string_view name) const;
    const Support* support(std::string_view name) const;
    const Finish* finish(std::string_view name) const;
    const Paper* paper(std::string_view name) const;
    /// Share of stature of a landmark that the program relies on; throws
    /// std::logic_error when the table lacks it. Tables that were loaded have all of kLandmarks.
    double landmark(std::string_view name) const;
};

/// Reads every table of a folder laid out as lensdata/ is. All errors of all files, each with its
/// place, up to some hundreds.
Checked<Catalogue> load_catalogue(const std::filesystem::path& folder);

/// Adds the tables of one user file to a catalogue; a row whose name is there already replaces it.
/// The file is an object with any of the tables as keys; "source" may be left out of its rows.
Checked<Catalogue> with_own_items(Catalogue base, const std::filesystem::path& file);

/// The folder of tables that belongs to a program file: in the source tree it was built in (the
/// program in build/, a test program in build/tests/), next to it, or installed (bin/ and
/// share/throwline/). Empty when there is none.
std::filesystem::path tables_beside(const std::filesystem::path& program);

/// The folder of the shipped tables: what the environment variable THROWLINE_LENSDATA names, else
/// beside the program when it is installed or built, else empty.
std::filesystem::path shipped_folder();

} // namespace throwline::catalogue
