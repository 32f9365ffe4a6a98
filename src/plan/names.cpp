#include "plan/names.h"

namespace throwline::plan {

namespace {

template <class Names>
ChoiceList list_of(std::string_view kind, const Names& names) {
    ChoiceList list{kind, {}};
    for (const auto& entry : names) {
        list.names.push_back(entry.name);
    }
    return list;
}

} // namespace

std::vector<ChoiceList> choice_lists() {
    return {
        list_of("unit system", kUnitSystemNames),
        list_of("opening kind", kOpeningKindNames),
        list_of("pipe run", kPipeRunNames),
        list_of("pose", kPoseNames),
        list_of("person kind", kPersonKindNames),
        list_of("shot size", kShotSizeNames),
        list_of("lamp role", kLampRoleNames),
        list_of("stretch kind", kStretchKindNames),
        list_of("site note kind", kSiteNoteKindNames),
    };
}

} // namespace throwline::plan
