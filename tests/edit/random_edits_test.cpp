/// Ten thousand random edits in sequences: every step leads to a plan that opens again, and undoing
/// all and doing all again gives equal plans and the same bytes.

#include "edit/handles.h"
#include "edit/history.h"
#include "edit/make.h"
#include "edit/moves.h"
#include "edit/order.h"
#include "edit/valid.h"
#include "plan/read_plan.h"
#include "support/demo_plan.h"
#include "support/random_plan.h"

#include <cstdlib>
#include <gtest/gtest.h>
#include <random>

namespace throwline::edit {
namespace {

/// Somebody with no plan at all.
class Dabbler {
  public:
    explicit Dabbler(std::uint32_t seed) : random_{seed} {}

    Result<Step> edit(const plan::Plan& plan) {
        const Context context{plan, support::shipped_catalogue(), now(plan)};
        switch (below(26)) {
        case 0:
        case 1:
        case 2:
            return moved(context, some(context), vector(below(8) == 0 ? 2000.0 : 3.0));
        case 3:
            return turned(context, some(context), vector(below(8) == 0 ? 900.0 : 6.0), angle());
        case 4:
            return mirrored(context, some(context), vector(6.0), angle());
        case 5:
            return copied(context, some(context), vector(2.0));
        case 6:
            return arrayed(context, some(context),
                           {1 + below(3), 1 + below(2), vector(1.5), vector(1.5)});
        case 7:
            return aligned(context, some(context), static_cast<AlignTo>(below(6)));
        case 8:
            return distributed(context, some(context), static_cast<DistributeAlong>(below(2)));
        case 9:
        case 10:
            return removed(context, some(context), below(4) == 0);
        case 11:
            return renamed(context, one(context), name());
        case 12:
            return locked(context, some(context), below(3) == 0);
        case 13:
            return below(2) == 0 ? grouped(context, some(context))
                                 : ungrouped(context, some(context));
        case 14:
            return below(2) == 0 ? hidden(context, some(context), true) : everything_shown(context);
        case 15:
            return beat_added(context, context.now.beat, {});
        case 16:
            return below(2) == 0   ? beat_removed(context, context.now.beat)
                   : below(2) == 0 ? beat_renamed(context, context.now.beat, name())
                                   : beat_moved(context, context.now.beat, below(5));
        case 17:
            return shot(context);
        case 18:
            return opening_added(context, static_cast<plan::OpeningKind>(below(3)), vector(6.0),
                                 Length::metres(0.4 + 0.1 * below(12)));
        case 19:
            return flats_drawn(context, vector(6.0), vector(6.0));
        case 20:
            return box_drawn(context, vector(6.0), vector(6.0), below(2) == 0);
        case 21:
            return corner_added(context, below(6), below(900) / 100.0);
        case 22:
            return below(2) == 0 ? drape_drawn(context, std::vector<Vec2>{vector(6.0), vector(6.0)})
                                 : pipe_drawn(context, vector(6.0), vector(6.0));
        case 23:
            return handle(context);
        case 24:
            return below(40) == 0 ? studio_made(context, {}) : room(context);
        default:
            return put_down(context, item(), vector(6.0));
        }
    }

  private:
    int below(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }
    double share() { return below(2001) / 1000.0 - 1.0; }
    Vec2 vector(double reach_m) {
        const double x_m = share() * reach_m;
        const double y_m = share() * reach_m;
        return {x_m, y_m};
    }
    Angle angle() { return Angle::degrees(below(361) - 180); }

    Now now(const plan::Plan& plan) {
        Now now;
        if (!plan.beats.empty()) {
            now.beat = plan.beats[random_() % plan.beats.size()].id;
        }
        if (!plan.shots.empty() && below(2) == 0) {
            now.shot = plan.shots[random_() % plan.shots.size()].id;
        }
        return now;
    }
    Thing one(const Context& context) {
        const std::vector<Thing> things = things_on_floor(context);
        return things.empty() ? Thing{} : things[random_() % things.size()];
    }
    std::vector<Thing> some(const Context& context) {
        std::vector<Thing> things;
        for (int count = 1 + below(3); count > 0; --count) {
            const Thing thing = one(context);
            if (std::find(things.begin(), things.end(), thing) == things.end()) {
                things.push_back(thing);
            }
        }
        return things;
    }
    /// One that is free mostly; else one that another kind of thing may have, or nothing can have.
    std::string name() {
        const char* const names[]{"C1", "door 1", "wall 2", "90deg", " x", "", "bar", "1"};
        return below(3) == 0 ? names[below(8)] : "name " + std::to_string(below(1000));
    }
    Result<Step> handle(const Context& context) {
        const std::vector<Handle> handles = handles_of(context, one(context));
        if (handles.empty()) {
            return failure("nothing to drag");
        }
        const Handle& handle = handles[random_() % handles.size()];
        return below(2) == 0 ? dragged(context, handle, vector(below(8) == 0 ? 1500.0 : 8.0))
                             : typed(context, handle, below(2) == 0 ? "2.5 m" : "35");
    }
    /// The room again with one of its corners elsewhere.
    Result<Step> room(const Context& context) {
        std::vector<Vec2> corners = context.plan.room.outline;
        if (!corners.empty()) {
            corners[random_() % corners.size()] += vector(1.0);
        }
        return room_drawn(context, corners);
    }
    Result<Step> shot(const Context& context) {
        const plan::Plan& plan = context.plan;
        if (plan.shots.empty() || below(2) == 0) {
            return shot_added(context, context.now.beat,
                              plan.cameras.empty()
                                  ? plan::Id<plan::Camera>{}
                                  : plan.cameras[random_() % plan.cameras.size()].id);
        }
        const plan::Id<plan::Shot> shot = plan.shots[random_() % plan.shots.size()].id;
        return below(3) == 0   ? shot_removed(context, shot)
               : below(3) == 0 ? shot_renamed(context, shot, name())
                               : shot_moved(context, shot, below(8), context.now.beat);
    }
    StoreItem item() {
        const catalogue::Catalogue& tables = support::shipped_catalogue();
        switch (below(6)) {
        case 0:
            return {Shelf::person, below(2) == 0 ? "cast" : "crew"};
        case 1:
            return {Shelf::camera, tables.lenses[random_() % tables.lenses.size()].name};
        case 2:
            return {Shelf::lamp, tables.instruments[random_() % tables.instruments.size()].name};
        case 3:
            return {Shelf::boom, {}};
        case 4:
            return {Shelf::outlet, {}};
        default:
            return {Shelf::stock, tables.stock[random_() % tables.stock.size()].name};
        }
    }

    std::mt19937 random_;
};

/// Plans that grow beyond this take the time of the next ones.
constexpr std::size_t kLargest = 150;

struct Tally {
    int steps = 0;
    int refused = 0;
};

void dabble(plan::Plan start, std::uint32_t seed, int edits, Tally& tally) {
    const auto first = valid(start, support::shipped_catalogue());
    ASSERT_TRUE(first);
    History history{first->plan};
    std::vector<std::string> texts{plan::written(*first->plan)};
    std::size_t most_bytes = first->most_bytes;
    Dabbler dabbler{seed};
    for (int i = 0; i < edits; ++i) {
        const Result<Step> step = dabbler.edit(*history.plan());
        ++tally.steps;
        if (!step) {
            EXPECT_FALSE(step.error().message.empty());
            ++tally.refused;
            continue;
        }
        ASSERT_FALSE(step->name.empty());
        const auto there = valid(step->plan, support::shipped_catalogue());
        ASSERT_TRUE(there) << step->name << ", seed " << seed << ", edit " << i << ": "
                           << text_of(there.error().front());
        EXPECT_EQ(*there->plan, step->plan) << step->name;
        // What the window takes is checked by its changes alone.
        const auto quick =
            valid_after({history.plan(), most_bytes}, step->plan, support::shipped_catalogue());
        ASSERT_TRUE(quick) << step->name;
        ASSERT_EQ(*quick->plan, *there->plan) << step->name;
        EXPECT_LE(there->most_bytes, quick->most_bytes) << step->name;
        most_bytes = quick->most_bytes;
        if (step->plan.scenery.size() + step->plan.lamps.size() < kLargest
            && history.record(step->name, quick->plan)) {
            texts.push_back(plan::written(*there->plan));
        }
    }
    for (std::size_t i = texts.size(); i-- > 0;) {
        ASSERT_EQ(plan::written(*history.plan()), texts[i]) << "undo to " << i;
        history.undo();
    }
    ASSERT_EQ(*history.plan(), *first->plan);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        ASSERT_EQ(plan::written(*history.plan()), texts[i]) << "redo to " << i;
        history.redo();
    }
}

/// Mostly invented plans; now and then an empty floor, or a demo.
plan::Plan start(std::uint32_t seed) {
    switch (seed % 12) {
    case 3:
        return plan::Plan{};
    case 6:
        return support::demo_plan("workshop_interview.json");
    case 9:
        return support::demo_plan("potters_bench.json");
    case 0:
        return support::demo_plan("cookery.json");
    default:
        return support::random_plan(seed);
    }
}

/// THROWLINE_EDITS asks for more.
TEST(RandomEdits, NeverMakeAPlanThatDoesNotOpenAndAreUndoneToTheByte) {
    const char* wanted = std::getenv("THROWLINE_EDITS");
    const int edits = wanted == nullptr ? 10'000 : std::atoi(wanted);
    constexpr int kInASequence = 250;
    Tally tally;
    for (std::uint32_t seed = 1; tally.steps < edits && !HasFatalFailure(); ++seed) {
        dabble(start(seed), seed, kInASequence, tally);
    }
    EXPECT_GE(tally.steps, edits);
    // Most of what is tried can be done, or nothing would be tried.
    EXPECT_LT(tally.refused, tally.steps * 2 / 3);
}

} // namespace
} // namespace throwline::edit
