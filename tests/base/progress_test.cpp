#include "base/progress.h"

#include "base/parallel.h"

#include <gtest/gtest.h>
#include <vector>

namespace throwline {
namespace {

TEST(Progress, TellsEveryStepInOrderFromAnyThread) {
    std::vector<double> told;
    const WentOn went_on = [&](double share) { told.push_back(share); };
    Progress progress{8, went_on};
    parallel_for(8, [&](std::size_t) { progress.step_done(); });
    EXPECT_EQ(told, (std::vector<double>{0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1.0}));
}

TEST(Progress, NobodyNeedsToListen) {
    const WentOn nobody;
    Progress progress{2, nobody};
    progress.step_done();
    SUCCEED();
}

} // namespace
} // namespace throwline
