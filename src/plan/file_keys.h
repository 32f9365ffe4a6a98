#pragma once

#include <span>
#include <string_view>

/// Which keys a plan file may hold where: one table for the reader and the test of the schema.
namespace throwline::plan {

struct FileKey {
    std::string_view name;
    bool required = false;
};

/// The keys of one kind of object. `object` is what messages and the schema call it.
struct KeyTable {
    std::string_view object;
    std::span<const FileKey> keys;
};

extern const KeyTable kPlanKeys;
extern const KeyTable kSiteKeys;
extern const KeyTable kRoomKeys;
extern const KeyTable kWallKeys;
extern const KeyTable kOpeningKeys;
extern const KeyTable kSwingKeys;
extern const KeyTable kSurveyKeys;
extern const KeyTable kReadingKeys;
extern const KeyTable kChainKeys;
extern const KeyTable kStretchKeys;
extern const KeyTable kFloorPointKeys;
extern const KeyTable kFloorThingKeys;
extern const KeyTable kHeightReadingKeys;
extern const KeyTable kOutletReadingKeys;
extern const KeyTable kSiteNoteKeys;
extern const KeyTable kGridKeys;
extern const KeyTable kPipeKeys;
extern const KeyTable kCircuitKeys;
extern const KeyTable kFlatRunKeys;
extern const KeyTable kStockPieceKeys;
extern const KeyTable kBoxKeys;
extern const KeyTable kCylinderKeys;
extern const KeyTable kPrismKeys;
extern const KeyTable kRiserKeys;
extern const KeyTable kDrapeKeys;
extern const KeyTable kPersonKeys;
extern const KeyTable kBeatKeys;
extern const KeyTable kMarkKeys;
extern const KeyTable kCameraKeys;
extern const KeyTable kShotKeys;
extern const KeyTable kBoomKeys;
extern const KeyTable kLampKeys;
extern const KeyTable kBeamCutKeys;
extern const KeyTable kUnderlayKeys;
extern const KeyTable kKitItemKeys;
extern const KeyTable kTargetsKeys;
extern const KeyTable kAcceptanceKeys;
extern const KeyTable kGroupKeys;
extern const KeyTable kArrangementKeys;

/// All of them.
std::span<const KeyTable* const> key_tables();

} // namespace throwline::plan
