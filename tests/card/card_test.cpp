/// The Card as text, and what typing into its fields makes of the demo productions.

#include "card/card.h"

#include "edit/valid.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>

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
    std::vector<std::vector<Thing>> choices{{}};
    for (const Thing& thing : edit::things_on_floor(context())) {
        choices.push_back({thing});
    }
    for (const std::vector<Thing>& chosen : choices) {
        for (const Sentence& sentence : card(chosen).sentences) {
            for (const Piece& piece : sentence.pieces) {
                const auto* field = std::get_if<Field>(&piece);
                if (field == nullptr || field->value.empty()) {
                    continue;
                }
                const Result<edit::Step> step = field->set(context(), field->value);
                ASSERT_TRUE(step) << field->label << ": " << field->value << ": "
                                  << step.error().message;
                const auto valid = edit::valid(step->plan, support::shipped_catalogue());
                EXPECT_TRUE(valid) << field->label << ": " << field->value << ": "
                                   << (valid ? "" : text_of(valid.error().front()));
            }
        }
    }
}

/// Nonsense is refused with a sentence, or leads to a plan that the reader accepts or refuses.
TEST_P(CardOfDemo, RefusesNonsenseInAFieldWithASentence) {
    for (const Thing& thing : edit::things_on_floor(context())) {
        for (const Sentence& sentence : card({thing}).sentences) {
            for (const Piece& piece : sentence.pieces) {
                const auto* field = std::get_if<Field>(&piece);
                if (field == nullptr || field->kind == FieldKind::text) {
                    continue;
                }
                const Result<edit::Step> step = field->set(context(), "quite another thing");
                ASSERT_FALSE(step) << field->label;
                EXPECT_FALSE(step.error().message.empty()) << field->label;
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Demos, CardOfDemo,
                         testing::Values("cookery.json", "workshop_interview.json",
                                         "potters_bench.json"));

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
