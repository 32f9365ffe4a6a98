#include "plan/file_keys.h"

#include <array>

namespace throwline::plan {

namespace {

constexpr bool kRequired = true;

constexpr FileKey kPlanTable[] = {{"format", kRequired},
                                  {"title", kRequired},
                                  {"units"},
                                  {"site"},
                                  {"room"},
                                  {"survey"},
                                  {"grid"},
                                  {"pipes"},
                                  {"circuits"},
                                  {"scenery"},
                                  {"people"},
                                  {"beats"},
                                  {"cameras"},
                                  {"shots"},
                                  {"booms"},
                                  {"lamps"},
                                  {"underlay"},
                                  {"kit"},
                                  {"targets"},
                                  {"accepted"},
                                  {"arrangement"},
                                  {"extra"}};
constexpr FileKey kSiteTable[] = {{"place"}, {"north"},      {"latitude"}, {"longitude"}, {"date"},
                                  {"hours"}, {"utc_offset"}, {"notes"},    {"extra"}};
constexpr FileKey kRoomTable[] = {{"outline", kRequired},
                                  {"height", kRequired},
                                  {"thickness"},
                                  {"finish"},
                                  {"floor_finish"},
                                  {"ceiling_finish"},
                                  {"dressed"},
                                  {"floor_dressed"},
                                  {"ceiling_dressed"},
                                  {"walls"},
                                  {"openings"},
                                  {"extra"}};
constexpr FileKey kWallTable[] = {
    {"wall", kRequired}, {"height"}, {"thickness"}, {"finish"}, {"dressed"}};
constexpr FileKey kOpeningTable[] = {{"id", kRequired},
                                     {"kind", kRequired},
                                     {"wall", kRequired},
                                     {"from_start", kRequired},
                                     {"width", kRequired},
                                     {"sill"},
                                     {"head", kRequired},
                                     {"swing"},
                                     {"way_out"},
                                     {"transmission"},
                                     {"extra"}};
constexpr FileKey kSwingTable[] = {{"inward"}, {"hinge"}, {"widest"}};
constexpr FileKey kSurveyTable[] = {{"corners", kRequired},
                                    {"clockwise"},
                                    {"square_corners"},
                                    {"squareness"},
                                    {"readings"},
                                    {"chains"},
                                    {"points"},
                                    {"things"},
                                    {"heights"},
                                    {"outlets"},
                                    {"first_wall_bearing"},
                                    {"precision"},
                                    {"precision_per_metre_mm"},
                                    {"notes"},
                                    {"extra"}};
constexpr FileKey kReadingTable[] = {
    {"from", kRequired}, {"to", kRequired}, {"length", kRequired}, {"note"}};
constexpr FileKey kChainTable[] = {
    {"from", kRequired}, {"to", kRequired}, {"stretches", kRequired}, {"to_the_end"}};
constexpr FileKey kStretchTable[] = {{"name"},  {"kind"},   {"width", kRequired},
                                     {"depth"}, {"height"}, {"sill"}};
constexpr FileKey kFloorPointTable[] = {{"name", kRequired}, {"outside"}};
constexpr FileKey kFloorThingTable[] = {
    {"name", kRequired}, {"points", kRequired}, {"diameter"}, {"height"}};
constexpr FileKey kHeightReadingTable[] = {{"at"}, {"height", kRequired}};
constexpr FileKey kOutletReadingTable[] = {{"circuit", kRequired},
                                           {"from", kRequired},
                                           {"to", kRequired},
                                           {"along", kRequired},
                                           {"height"}};
constexpr FileKey kSiteNoteTable[] = {{"kind", kRequired}, {"text", kRequired}};
constexpr FileKey kGridTable[] = {{"origin", kRequired},
                                  {"pitch", kRequired},
                                  {"count", kRequired},
                                  {"height", kRequired},
                                  {"turn"},
                                  {"pipes"},
                                  {"point_load_kg"},
                                  {"pipe_load_kg"},
                                  {"extra"}};
constexpr FileKey kPipeTable[] = {
    {"id", kRequired}, {"from", kRequired}, {"to", kRequired}, {"height", kRequired},
    {"point_load_kg"}, {"load_kg"},         {"extra"}};
constexpr FileKey kCircuitTable[] = {{"id", kRequired}, {"volts"},   {"breaker_amps"},
                                     {"continuous"},    {"outlets"}, {"extra"}};
constexpr FileKey kFlatRunTable[] = {{"id", kRequired},
                                     {"kind", kRequired},
                                     {"from", kRequired},
                                     {"heading"},
                                     {"widths", kRequired},
                                     {"height", kRequired},
                                     {"thickness"},
                                     {"elevation"},
                                     {"finish"},
                                     {"dressed"},
                                     {"extra"}};
constexpr FileKey kStockPieceTable[] = {
    {"id", kRequired}, {"item", kRequired}, {"at", kRequired}, {"turn"},
    {"elevation"},     {"finish"},          {"dressed"},       {"extra"}};
constexpr FileKey kBoxTable[] = {
    {"id", kRequired},    {"kind", kRequired},   {"at", kRequired}, {"width", kRequired},
    {"depth", kRequired}, {"height", kRequired}, {"turn"},          {"elevation"},
    {"finish"},           {"dressed"},           {"extra"}};
constexpr FileKey kCylinderTable[] = {{"id", kRequired},
                                      {"kind", kRequired},
                                      {"at", kRequired},
                                      {"diameter", kRequired},
                                      {"height", kRequired},
                                      {"elevation"},
                                      {"finish"},
                                      {"dressed"},
                                      {"extra"}};
constexpr FileKey kPrismTable[] = {{"id", kRequired},
                                   {"kind", kRequired},
                                   {"outline", kRequired},
                                   {"height", kRequired},
                                   {"elevation"},
                                   {"finish"},
                                   {"dressed"},
                                   {"extra"}};
constexpr FileKey kRiserTable[] = {
    {"id", kRequired},    {"kind", kRequired},   {"at", kRequired}, {"width", kRequired},
    {"depth", kRequired}, {"height", kRequired}, {"turn"},          {"elevation"},
    {"finish"},           {"dressed"},           {"extra"}};
constexpr FileKey kDrapeTable[] = {
    {"id", kRequired}, {"kind", kRequired}, {"along", kRequired}, {"height", kRequired},
    {"elevation"},     {"finish"},          {"dressed"},          {"extra"}};
constexpr FileKey kPersonTable[] = {{"id", kRequired}, {"stature"}, {"kind"}, {"extra"}};
constexpr FileKey kBeatTable[] = {{"id", kRequired}, {"name"}, {"marks"}, {"extra"}};
constexpr FileKey kMarkTable[] = {{"at", kRequired}, {"faces"},       {"pose"},
                                  {"elevation"},     {"seat_height"}, {"path"}};
constexpr FileKey kCameraTable[] = {{"id", kRequired},
                                    {"sensor", kRequired},
                                    {"lens", kRequired},
                                    {"support"},
                                    {"eye_height"},
                                    {"iso"},
                                    {"shutter"},
                                    {"home"},
                                    {"extra"}};
constexpr FileKey kShotTable[] = {{"id", kRequired},
                                  {"beats", kRequired},
                                  {"camera", kRequired},
                                  {"at", kRequired},
                                  {"height"},
                                  {"aim"},
                                  {"focal"},
                                  {"stop"},
                                  {"focus"},
                                  {"extender"},
                                  {"subjects"},
                                  {"size"},
                                  {"composition"},
                                  {"notes"},
                                  {"moves"},
                                  {"cuts_to"},
                                  {"extra"}};
constexpr FileKey kBoomTable[] = {{"id", kRequired}, {"operator", kRequired},
                                  {"pole"},          {"microphone", kRequired},
                                  {"height"},        {"beats"},
                                  {"extra"}};
constexpr FileKey kLampTable[] = {{"id", kRequired}, {"instrument", kRequired},
                                  {"hang"},          {"pipe"},
                                  {"stand"},         {"wall"},
                                  {"practical"},     {"along"},
                                  {"drop"},          {"height"},
                                  {"support"},       {"aim"},
                                  {"aim_beat"},      {"beats"},
                                  {"role"},          {"focus"},
                                  {"level"},         {"filters"},
                                  {"cut"},           {"circuit"},
                                  {"channel"},       {"notes"},
                                  {"extra"}};
constexpr FileKey kBeamCutTable[] = {{"top"}, {"bottom"}, {"left"}, {"right"}};
constexpr FileKey kUnderlayTable[] = {
    {"file", kRequired}, {"pixel_a", kRequired}, {"pixel_b", kRequired},
    {"at_a", kRequired}, {"at_b", kRequired},    {"strength"},
    {"mirrored"}};
constexpr FileKey kKitItemTable[] = {{"item", kRequired}, {"count", kRequired}};
constexpr FileKey kTargetsTable[] = {{"meter_constant"},
                                     {"exposure_tolerance_stops"},
                                     {"lighting_ratio"},
                                     {"visible_share"},
                                     {"way_out_width"}};
constexpr FileKey kAcceptanceTable[] = {
    {"check", kRequired}, {"shot"}, {"things"}, {"reason", kRequired}};
constexpr FileKey kGroupTable[] = {{"things", kRequired}};
constexpr FileKey kArrangementTable[] = {{"groups"}, {"locked"}, {"hidden"}};

} // namespace

const KeyTable kPlanKeys{"plan", kPlanTable};
const KeyTable kSiteKeys{"site", kSiteTable};
const KeyTable kRoomKeys{"room", kRoomTable};
const KeyTable kWallKeys{"wall", kWallTable};
const KeyTable kOpeningKeys{"opening", kOpeningTable};
const KeyTable kSwingKeys{"swing", kSwingTable};
const KeyTable kSurveyKeys{"survey", kSurveyTable};
const KeyTable kReadingKeys{"tape reading", kReadingTable};
const KeyTable kChainKeys{"chain", kChainTable};
const KeyTable kStretchKeys{"stretch", kStretchTable};
const KeyTable kFloorPointKeys{"floor point", kFloorPointTable};
const KeyTable kFloorThingKeys{"floor thing", kFloorThingTable};
const KeyTable kHeightReadingKeys{"ceiling height", kHeightReadingTable};
const KeyTable kOutletReadingKeys{"outlet reading", kOutletReadingTable};
const KeyTable kSiteNoteKeys{"site note", kSiteNoteTable};
const KeyTable kGridKeys{"grid", kGridTable};
const KeyTable kPipeKeys{"pipe", kPipeTable};
const KeyTable kCircuitKeys{"circuit", kCircuitTable};
const KeyTable kFlatRunKeys{"flat run", kFlatRunTable};
const KeyTable kStockPieceKeys{"stock piece", kStockPieceTable};
const KeyTable kBoxKeys{"box", kBoxTable};
const KeyTable kCylinderKeys{"cylinder", kCylinderTable};
const KeyTable kPrismKeys{"prism", kPrismTable};
const KeyTable kRiserKeys{"riser", kRiserTable};
const KeyTable kDrapeKeys{"drape", kDrapeTable};
const KeyTable kPersonKeys{"person", kPersonTable};
const KeyTable kBeatKeys{"beat", kBeatTable};
const KeyTable kMarkKeys{"mark", kMarkTable};
const KeyTable kCameraKeys{"camera", kCameraTable};
const KeyTable kShotKeys{"shot", kShotTable};
const KeyTable kBoomKeys{"boom", kBoomTable};
const KeyTable kLampKeys{"lamp", kLampTable};
const KeyTable kBeamCutKeys{"beam cut", kBeamCutTable};
const KeyTable kUnderlayKeys{"underlay", kUnderlayTable};
const KeyTable kKitItemKeys{"kit item", kKitItemTable};
const KeyTable kTargetsKeys{"targets", kTargetsTable};
const KeyTable kAcceptanceKeys{"acceptance", kAcceptanceTable};
const KeyTable kGroupKeys{"group", kGroupTable};
const KeyTable kArrangementKeys{"arrangement", kArrangementTable};

std::span<const KeyTable* const> key_tables() {
    static const std::array kAll{
        &kPlanKeys,          &kSiteKeys,          &kRoomKeys,       &kWallKeys,
        &kOpeningKeys,       &kSwingKeys,         &kSurveyKeys,     &kReadingKeys,
        &kChainKeys,         &kStretchKeys,       &kFloorPointKeys, &kFloorThingKeys,
        &kHeightReadingKeys, &kOutletReadingKeys, &kSiteNoteKeys,   &kGridKeys,
        &kPipeKeys,          &kCircuitKeys,       &kFlatRunKeys,    &kStockPieceKeys,
        &kBoxKeys,           &kCylinderKeys,      &kPrismKeys,      &kRiserKeys,
        &kDrapeKeys,         &kPersonKeys,        &kBeatKeys,       &kMarkKeys,
        &kCameraKeys,        &kShotKeys,          &kBoomKeys,       &kLampKeys,
        &kBeamCutKeys,       &kUnderlayKeys,      &kKitItemKeys,    &kTargetsKeys,
        &kAcceptanceKeys,    &kGroupKeys,         &kArrangementKeys};
    return kAll;
}

} // namespace throwline::plan
