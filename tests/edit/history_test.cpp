/// Going back and forth between the states of a plan.

#include "edit/history.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

plan::PlanPtr titled(const std::string& title) {
    plan::Plan plan;
    plan.title = title;
    return std::make_shared<const plan::Plan>(std::move(plan));
}

/// "a", then "b" by the step "to b", then "c" by "to c".
History three() {
    History history{titled("a")};
    EXPECT_TRUE(history.record("to b", titled("b")));
    EXPECT_TRUE(history.record("to c", titled("c")));
    return history;
}

TEST(History, BeginsWithNothingToUndoOrRedo) {
    History history{titled("a")};
    EXPECT_FALSE(history.can_undo());
    EXPECT_FALSE(history.can_redo());
    EXPECT_EQ(history.undo_name(), "");
    EXPECT_EQ(history.redo_name(), "");
    history.undo();
    history.redo();
    EXPECT_EQ(history.plan()->title, "a");
}

TEST(History, NamesWhatUndoTakesBackAndRedoDoesAgain) {
    History history = three();
    EXPECT_EQ(history.undo_name(), "to c");
    EXPECT_EQ(history.redo_name(), "");
    history.undo();
    EXPECT_EQ(history.plan()->title, "b");
    EXPECT_EQ(history.undo_name(), "to b");
    EXPECT_EQ(history.redo_name(), "to c");
    history.undo();
    EXPECT_EQ(history.plan()->title, "a");
    EXPECT_EQ(history.undo_name(), "");
    EXPECT_EQ(history.redo_name(), "to b");
    EXPECT_FALSE(history.can_undo());
}

TEST(History, StopsAtEitherEnd) {
    History history = three();
    for (int i = 0; i < 5; ++i) {
        history.undo();
    }
    EXPECT_EQ(history.plan()->title, "a");
    for (int i = 0; i < 5; ++i) {
        history.redo();
    }
    EXPECT_EQ(history.plan()->title, "c");
    EXPECT_FALSE(history.can_redo());
}

TEST(History, GoesBackToTheVeryPlansItWasGiven) {
    const plan::PlanPtr first = titled("a");
    History history{first};
    history.record("to b", titled("b"));
    history.undo();
    EXPECT_EQ(history.plan(), first);
}

TEST(History, AStepAfterUndoDropsWhatWasUndone) {
    History history = three();
    history.undo();
    history.undo();
    EXPECT_TRUE(history.record("to d", titled("d")));
    EXPECT_FALSE(history.can_redo());
    EXPECT_EQ(history.redo_name(), "");
    EXPECT_EQ(history.undo_name(), "to d");
    history.undo();
    EXPECT_EQ(history.plan()->title, "a");
    history.redo();
    EXPECT_EQ(history.plan()->title, "d");
    EXPECT_FALSE(history.can_redo());
}

TEST(History, AStepThatChangesNothingIsNoneAndDropsNothing) {
    History history = three();
    history.undo();
    EXPECT_FALSE(history.record("nothing", titled("b")));
    EXPECT_EQ(history.undo_name(), "to b");
    EXPECT_EQ(history.redo_name(), "to c");
}

TEST(History, KnowsTheStateInTheFileFromBothSides) {
    History history = three();
    EXPECT_FALSE(history.is_saved());
    history.undo();
    history.mark_saved();
    EXPECT_TRUE(history.is_saved());
    history.redo();
    EXPECT_FALSE(history.is_saved());
    history.undo();
    EXPECT_TRUE(history.is_saved());
    history.undo();
    EXPECT_FALSE(history.is_saved());
}

TEST(History, AStateInTheFileThatWasDroppedIsNotTakenForTheOneInItsPlace) {
    History history = three();
    history.mark_saved();
    history.undo();
    history.record("to d", titled("d"));
    EXPECT_FALSE(history.is_saved());
    history.undo();
    EXPECT_FALSE(history.is_saved());
}

TEST(History, AStateInTheFileBeforeTheNewBranchIsStillThere) {
    History history = three();
    history.undo();
    history.mark_saved();
    history.record("to d", titled("d"));
    EXPECT_FALSE(history.is_saved());
    history.undo();
    EXPECT_TRUE(history.is_saved());
    history.forget_saved();
    EXPECT_FALSE(history.is_saved());
}

TEST(History, IsAValue) {
    History history = three();
    const History before = history;
    history.undo();
    EXPECT_EQ(before.plan()->title, "c");
    EXPECT_EQ(history.plan()->title, "b");
}

} // namespace
} // namespace throwline::edit
