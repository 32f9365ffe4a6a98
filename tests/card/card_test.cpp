/// The Card as text, and what typing into its fields makes of the demo productions.

#include "card/card.h"

#include "edit/moves.h"
#include "edit/valid.h"
#include "support/demo_plan.h"
#include "support/taken_step.h"

#include <algorithm>
#include <fmt/format.h>
#include <functional>
#include <gtest/gtest.h>
#include <set>

namespace throwline::card {
namespace {

using edit::Kind;
using edit::Thing;

class CardOfDemo : public testing::TestWithParam<const char*> {
  protected:
    plan::Plan plan = support::demo_plan(GetParam());
    edit::Context context() const {
        const edit::Now now{plan.beats.front().id, plan.shots.front().id};
        return {plan, support::shipped_catalogue(), now};
    }
    Card card(const std::vector<Thing>& chosen) const { return card_for({context(), chosen}); }
    /// Nothing, and every thing on the floor.
    std::vector<std::vector<Thing>> choices() const {
        std::vector<std::vector<Thing>> choices{{}};
        for (const Thing& thing : edit::things_on_floor(context())) {
            choices.push_back({thing});
        }
        return choices;
    }
    void for_every_field(const std::function<void(const Field&)>& visit) const {
        for (const std::vector<Thing>& chosen : choices()) {
            for (const Sentence& sentence : card(chosen).sentences) {
                for (const Piece& piece : sentence.pieces) {
                    if (const auto* field = std::get_if<Field>(&piece)) {
                        visit(*field);
                    }
                }
            }
        }
    }
};

TEST_P(CardOfDemo, ShowsEveryThingWithItsName) {
    for (const Thing& thing : edit::things_on_floor(context())) {
        const Card shown = card({thing});
        EXPECT_FALSE(shown.sentences.empty()) << edit::name_of(thing);
        EXPECT_NE(as_text(shown).find(']'), std::string::npos) << edit::name_of(thing);
    }
}

/// What a field shows can be typed into it again: a plan that the reader accepts, or the same one.
TEST_P(CardOfDemo, TakesBackWhatItShows) {
    for_every_field([&](const Field& field) {
        if (field.value.empty()) {
            return;
        }
        const Result<edit::Step> step = field.set(context(), field.value);
        ASSERT_TRUE(step) << field.label << ": " << field.value << ": " << step.error().message;
        const auto valid = edit::valid(step->plan, support::shipped_catalogue());
        EXPECT_TRUE(valid) << field.label << ": " << field.value << ": "
                           << (valid ? "" : text_of(valid.error().front()));
    });
}

/// Free words are taken as they are; in every other field nonsense is refused with a sentence.
TEST_P(CardOfDemo, RefusesNonsenseInAFieldWithASentence) {
    const std::set<std::string> free{"title",     "place",       "site_notes",
                                     "beat_name", "composition", "shot_notes",
                                     "notes",     "name",        "underlay_file"};
    for_every_field([&](const Field& field) {
        if (free.contains(field.key) || field.key.starts_with("accepted_")) {
            return;
        }
        const Result<edit::Step> step = field.set(context(), "quite another thing");
        ASSERT_FALSE(step) << field.label;
        EXPECT_FALSE(step.error().message.empty()) << field.label;
    });
}

TEST_P(CardOfDemo, CallsEveryFieldByItsOwnKeyAndLabel) {
    for (const std::vector<Thing>& chosen : choices()) {
        std::set<std::string> keys;
        for (const Sentence& sentence : card(chosen).sentences) {
            for (const Piece& piece : sentence.pieces) {
                if (const auto* field = std::get_if<Field>(&piece)) {
                    EXPECT_TRUE(keys.insert(field->key).second) << field->key;
                    EXPECT_NE(field->label.find(" of "), std::string::npos) << field->label;
                }
            }
        }
    }
}

/// Workings name their source, and a figure's result is what the card shows.
TEST_P(CardOfDemo, ShowsTheWorkingOfEveryFigure) {
    const checks::Analysis analysis = support::analysis_of(plan);
    for (const std::vector<Thing>& chosen : choices()) {
        for (const Sentence& sentence : card_for({context(), chosen, &analysis}).sentences) {
            for (const Piece& piece : sentence.pieces) {
                const auto* figure = std::get_if<Figure>(&piece);
                const auto* field = std::get_if<Field>(&piece);
                if (figure != nullptr) {
                    EXPECT_FALSE(figure->working().source.empty()) << figure->label;
                    EXPECT_FALSE(figure->working().formula.empty()) << figure->label;
                    EXPECT_FALSE(figure->label.empty()) << figure->key;
                } else if (field != nullptr && field->working) {
                    EXPECT_FALSE(field->working().source.empty()) << field->label;
                }
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Demos, CardOfDemo,
                         testing::Values("cookery.json", "workshop_interview.json",
                                         "potters_bench.json"));

/// The interview, with the first beat and shot on the floor.
struct Interview {
    plan::Plan plan = support::demo_plan("workshop_interview.json");
    edit::Context context{plan, support::shipped_catalogue(), {{"1"}, {"1A"}}};

    Card card(const std::vector<Thing>& chosen) const { return card_for({context, chosen}); }
    Result<edit::Step> set(const std::vector<Thing>& chosen, const std::string& key,
                           const std::string& text) const {
        const Card shown = card(chosen);
        const Field* one = field(shown, key);
        return one == nullptr ? Result<edit::Step>{failure(key)} : one->set(context, text);
    }
    plan::Plan taken(const std::vector<Thing>& chosen, const std::string& key,
                     const std::string& text) const {
        return support::taken(set(chosen, key, text));
    }
};

const std::vector<Thing> kCamera{{Kind::camera, "camera A", 0}};
const std::vector<Thing> kKey{{Kind::lamp, "key", 0}};
const std::vector<Thing> kNoor{{Kind::person, "Noor", 0}};

/// A line under the title.
bool has_line(const Card& card, const std::string& line) {
    return as_text(card).find(fmt::format("\n{}\n", line)) != std::string::npos;
}

TEST(Card, SpeaksOfACameraAsACrewWould) {
    const Interview interview;
    const checks::Analysis analysis = support::analysis_of(interview.plan);
    const Card card = card_for({interview.context, kCamera, &analysis});
    EXPECT_EQ(card.title, "Camera A");
    EXPECT_TRUE(has_line(card, "On a [tripod] at [1.20 m], [as the size asks] at [T2.8], sees "
                               "[Noor] in a [medium close-up] from 1.87 m."))
        << as_text(card);
    EXPECT_TRUE(has_line(card, "With a [prime 50 T1.5] on [Super 35 16:9], ISO [800], each "
                               "picture open for [1/50 s]."));
    EXPECT_TRUE(
        has_line(card, "Takes in 28.0° by 15.9° at 50 mm, T2.8; sharp from 1.79 m to 1.94 m."));
}

TEST(Card, LeavesOutFiguresWhileTheyAreNotKnown) {
    const Interview interview;
    EXPECT_TRUE(has_line(interview.card(kCamera),
                         "On a [tripod] at [1.20 m], [as the size asks] at [T2.8], sees [Noor] in "
                         "a [medium close-up]."))
        << as_text(interview.card(kCamera));
}

TEST(Card, SpeaksOfALampAsACrewWould) {
    const Interview interview;
    const checks::Analysis analysis = support::analysis_of(interview.plan);
    const Card card = card_for({interview.context, kKey, &analysis});
    EXPECT_EQ(card.title, "Lamp key");
    for (const char* line : {"[soft box 60x90 LED 150 W] as [key], aimed at [Noor] in beat [1].",
                             "Held [on a stand], a [medium light stand], [1.95 m] up.",
                             "Burns at [60 %], flooded [0 %], in [all beats], with [no filter].",
                             "Throws 1.91 m and gives 178 lx square to the beam at its aim.",
                             "From Noor it stands 20° up and 52° to camera left.",
                             "On circuit [sockets], channel [1]; draws 0.69 A."}) {
        EXPECT_TRUE(has_line(card, line)) << line << "\n" << as_text(card);
    }
}

TEST(Card, TellsTheLightOnAFaceInEachShot) {
    const Interview interview;
    const checks::Analysis analysis = support::analysis_of(interview.plan);
    const Card card = card_for({interview.context, kNoor, &analysis});
    EXPECT_TRUE(has_line(card, "In beat 1 they [sit] and face [Sam]; soles [on what is there], "
                               "seat [as it fits]."));
    EXPECT_TRUE(has_line(card, "In shot 1A the face gets 150 lx, 0.29 stops over what T2.8 asks "
                               "for, ratio 3.3:1."))
        << as_text(card);
}

TEST(Card, SetsValuesOfACamera) {
    const Interview interview;
    EXPECT_NEAR(interview.taken(kCamera, "shutter", "180° at 25").cameras[0].exposure_s, 0.02,
                1e-12);
    EXPECT_NEAR(interview.taken(kCamera, "shutter", "1/100").cameras[0].exposure_s, 0.01, 1e-12);
    EXPECT_NEAR(interview.taken(kCamera, "home", "1 m, 2,5 m").cameras[0].home->y(), 2.5, 1e-12);
    EXPECT_EQ(interview.taken(kCamera, "sensor", "super 35 16:9").cameras[0].sensor,
              "Super 35 16:9");
}

TEST(Card, SetsValuesOfAShot) {
    const Interview interview;
    const auto shot = [](const plan::Plan& plan) { return plan.shots.front(); };
    EXPECT_NEAR(shot(interview.taken(kCamera, "focal", "50")).focal->mm(), 50, 1e-9);
    EXPECT_EQ(shot(interview.taken(kCamera, "stop", "t4")).stop, 4.0);
    EXPECT_EQ(shot(interview.taken(kCamera, "stop", "")).stop, std::nullopt);
    EXPECT_EQ(shot(interview.taken(kCamera, "size", "CU")).size, ShotSize::close_up);
    EXPECT_EQ(shot(interview.taken(kCamera, "moves", "1, 1; 2, 1.5")).moves.size(), 2U);
    EXPECT_EQ(shot(interview.taken(kCamera, "shot_notes", "quiet; mind the saw\nno fan")).notes,
              (std::vector<std::string>{"quiet; mind the saw", "no fan"}));
    EXPECT_EQ(shot(interview.taken(kCamera, "shot_beats", "2, 1")).beats.size(), 2U);
    EXPECT_EQ(std::get<Vec3>(shot(interview.taken(kCamera, "aim", "1 m, 2 m, 140cm")).aim).z(),
              1.4);
}

TEST(Card, HoldsALampInEveryWay) {
    const Interview interview;
    const auto mount = [](const plan::Plan& plan) { return plan.lamps.front().mount; };
    EXPECT_TRUE(std::holds_alternative<plan::PipeHang>(
        mount(interview.taken(kKey, "held", "from a pipe"))));
    EXPECT_TRUE(
        std::holds_alternative<plan::WallMount>(mount(interview.taken(kKey, "held", "on a wall"))));
    EXPECT_TRUE(std::holds_alternative<plan::PracticalMount>(
        mount(interview.taken(kKey, "held", "as a practical"))));
    const auto no_grid = interview.set(kKey, "held", "from the grid");
    ASSERT_FALSE(no_grid);
    EXPECT_EQ(no_grid.error().message, "there is no grid to hang it from");
}

TEST(Card, TakesAPersonOffTheFloorAndBack) {
    const Interview interview;
    const plan::Plan off = interview.taken(kNoor, "on_floor", "no");
    const edit::Context context{off, support::shipped_catalogue(), interview.context.now};
    const Card card = card_for({context, kNoor});
    ASSERT_NE(field(card, "on_floor"), nullptr);
    EXPECT_EQ(field(card, "on_floor")->value, "no");
    EXPECT_EQ(field(card, "pose"), nullptr);
    const plan::Plan back = support::taken(field(card, "on_floor")->set(context, "yes"));
    EXPECT_TRUE(std::holds_alternative<plan::Mark>(back.beats[0].marks.at({"Noor"})));
}

TEST(Card, MovesTheNextCornerAlongAWall) {
    const Interview interview;
    const std::vector<Thing> wall{{Kind::wall, "", 0}};
    const plan::Plan longer = interview.taken(wall, "length", "6.50 m");
    EXPECT_NEAR((longer.room.outline[1] - longer.room.outline[0]).norm(), 6.5, 1e-9);
    EXPECT_EQ(longer.room.outline[0], interview.plan.room.outline[0]);
}

TEST(Card, SetsNothingOfWhatIsLocked) {
    Interview interview;
    interview.plan = support::taken(edit::locked(interview.context, kCamera, true));
    const auto step = interview.set(kCamera, "eye_height", "1 m");
    ASSERT_FALSE(step);
    EXPECT_EQ(step.error().message, "camera A is locked; unlock it first");
    EXPECT_FALSE(interview.set(kCamera, "focal", "50"));
    EXPECT_TRUE(interview.set(kCamera, "composition", "tighter"));
    EXPECT_TRUE(interview.set(kCamera, "locked", "no"));
}

TEST(Card, SetsWhatSeveralKindsHaveInCommon) {
    const Interview interview;
    const std::vector<Thing> chosen{{Kind::wall, "", 0}, {Kind::scenery, "workbench", 0}};
    const Card card = interview.card(chosen);
    EXPECT_EQ(card.title, "2 things");
    const Field* finish = field(card, "finish");
    ASSERT_NE(finish, nullptr);
    EXPECT_TRUE(finish->mixed);
    EXPECT_EQ(finish->label, "Finish of 2 things");
    const auto step = finish->set(interview.context, "concrete");
    const plan::Plan set = support::taken(step);
    EXPECT_EQ(step->name, "Set finish of 2 things");
    EXPECT_EQ(set.room.walls[0].finish, "concrete");
    EXPECT_EQ(plan::find(set, plan::Id<plan::Scenery>{"workbench"})->finish, "concrete");
}

TEST(Card, SetsTheProductionWhenNothingIsChosen) {
    const Interview interview;
    EXPECT_EQ(interview.taken({}, "hours", "22:00 to 04:30").site.hours->to.minutes, 270);
    EXPECT_EQ(interview.taken({}, "utc_offset", "-03:30").site.utc_offset_minutes, -210);
    EXPECT_EQ(interview.taken({}, "kit", "3 tripod; 1 prime 50 T1.5").kit.size(), 2U);
    EXPECT_EQ(interview.taken({}, "latitude", "").site.longitude, std::nullopt);
    EXPECT_EQ(interview.taken({}, "way_out_width", "3ft").targets.way_out_width, Length::feet(3));
}

TEST(Card, SaysWhatIsAllowedWhenATextWillNotDo) {
    const Interview interview;
    const auto fault = [&](const std::vector<Thing>& chosen, const char* key, const char* text) {
        return support::why_not(interview.set(chosen, key, text));
    };
    EXPECT_EQ(fault(kKey, "level", "120"), "120 will not do; give a number from 0 to 100");
    EXPECT_EQ(fault(kKey, "level", "bright"), "\"bright\" is no number; give one from 0 to 100");
    EXPECT_EQ(fault(kNoor, "stature", "3 m"),
              "3.00 m will not do; give a length from 0.40 m to 2.80 m");
    EXPECT_EQ(fault(kNoor, "pose", "kneel"),
              "there is no \"kneel\"; there is stand, sit, lie and crouch");
    EXPECT_EQ(fault(kKey, "aim", "1 m, 2 m"),
              "\"1 m, 2 m\" is no place; give how far across, how far up the page and how high");
    EXPECT_EQ(fault({}, "date", "12 May"),
              "\"12 May\" is no date from 1900 to 2199; write it as 2026-03-14");
    EXPECT_EQ(fault({}, "floor_dressed", "maybe"), "say yes or no, not \"maybe\"");
}

TEST(Card, SetsOneValueOfSeveralLamps) {
    const plan::Plan plan = support::demo_plan("workshop_interview.json");
    const edit::Context context{plan, support::shipped_catalogue(), {}};
    const std::vector<Thing> chosen{{Kind::lamp, "key", 0}, {Kind::lamp, "fill", 0}};
    const Card card = card_for({context, chosen});
    EXPECT_EQ(card.title, "2 lamps");
    const Field* level = field(card, "level");
    ASSERT_NE(level, nullptr);
    EXPECT_TRUE(level->mixed);
    const Result<edit::Step> step = level->set(context, "35 %");
    ASSERT_TRUE(step);
    EXPECT_EQ(step->name, "Set level of 2 lamps");
    EXPECT_DOUBLE_EQ(step->plan.lamps[0].level, 0.35);
    EXPECT_DOUBLE_EQ(step->plan.lamps[1].level, 0.35);
    EXPECT_DOUBLE_EQ(step->plan.lamps[2].level, 0.4);
}

TEST(Card, ReadsAHeightInFeetAndInches) {
    const plan::Plan plan = support::demo_plan("workshop_interview.json");
    const edit::Context context{plan, support::shipped_catalogue(), {}};
    const Card card = card_for({context, std::vector<Thing>{{Kind::camera, "camera A", 0}}});
    const Field* height = field(card, "eye_height");
    ASSERT_NE(height, nullptr);
    EXPECT_EQ(height->value, "1.20 m");
    const Result<edit::Step> step = height->set(context, "4' 8\"");
    ASSERT_TRUE(step);
    EXPECT_EQ(step->name, "Set lens height of camera A");
    EXPECT_DOUBLE_EQ(step->plan.cameras[0].eye_height.m(), 56 * 0.0254);
}

TEST(Card, NamesTheNearestLensForAWrongOne) {
    const plan::Plan plan = support::demo_plan("workshop_interview.json");
    const edit::Context context{plan, support::shipped_catalogue(), {}};
    const Card card = card_for({context, std::vector<Thing>{{Kind::camera, "camera A", 0}}});
    const Result<edit::Step> step = field(card, "lens")->set(context, "prime 50 T1.4");
    ASSERT_FALSE(step);
    EXPECT_NE(step.error().message.find("did you mean prime 50 T1.5?"), std::string::npos)
        << step.error().message;
}

} // namespace
} // namespace throwline::card
