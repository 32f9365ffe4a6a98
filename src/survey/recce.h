#pragma once

#include "plan/survey.h"
#include "survey/adjust.h"
#include "survey/chains.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

/// A recce adjusted: names and units around the numbers of adjust.h.
namespace throwline::survey {

struct SurveyedPoint {
    std::string name;
    Vec2 at = Vec2::Zero();
    PointError error;
};

/// What was read, or believed, between points.
enum class ReadingKind { tape, chain, square_corner };

enum class Verdict {
    fine,
    /// Beyond what happens once in twenty, or it may be the wrong one in another's stead.
    worth_a_look,
    /// Set aside: it does not fit the others.
    wrong,
    /// Nothing else would show an error in it.
    hardly_checked,
    /// Belongs to a point that could not be placed.
    not_used
};

struct SurveyedReading {
    ReadingKind kind = ReadingKind::tape;
    /// Index in the survey's readings, chains or square corners.
    int source = 0;
    /// The ends; of a square corner only its name, in `from`.
    std::string from;
    std::string to;
    /// Metres, or radians for a square corner, as is its `outcome`.
    double read = 0.0;
    double sigma = 0.0;
    ObservationResult outcome;
    Verdict verdict = Verdict::fine;
    /// Only of a wrong one.
    std::optional<Suspect> suspect;
};

/// Points that can still move, and what would settle them.
struct Unsettled {
    std::vector<std::string> loose;
    /// Pairs between which to read; see Undetermined::wanted.
    std::vector<std::pair<std::string, std::string>> wanted;
    int needed = 1;
    bool two_shapes = false;
};

struct CeilingFit {
    /// Mean of all height readings, weighted by their variances.
    Length height;
    double sigma_m = 0.0;
    Length lowest;
    Length highest;
    /// They differ by more than the tape explains: the ceiling slopes, or one is wrong.
    bool differs = false;
};

struct RecceResult {
    plan::Survey survey;
    /// Corners in walking order, then the floor points that could be placed.
    std::vector<SurveyedPoint> points;
    /// Tape readings, chains that reach the end, square corners, each in their order.
    std::vector<SurveyedReading> readings;
    /// Indices of wrong readings, in the order in which they were found.
    std::vector<int> suspects;
    /// One a chain of the survey.
    std::vector<ChainFit> chains;
    /// Floor points that could not be placed, a group an entry; the room stands without them.
    std::vector<Unsettled> unplaced;
    std::optional<CeilingFit> ceiling;
    int degrees_of_freedom = 0;
    double weighted_sum = 0.0;
    double unit_weight_error = 1.0;
    GlobalTest test = GlobalTest::nothing_checked;
    /// The readings disagree, and leaving out those that can be spared does not help.
    bool unexplained = false;

    std::size_t corner_count() const { return survey.corners.size(); }
    /// Null when there is no such point, or it could not be placed.
    const SurveyedPoint* find(const std::string& name) const;
    /// Whether something is to be measured again: a wrong reading, a chain that does not close, or
    /// readings that disagree beyond explanation.
    bool needs_another_look() const;
};

/// Adjusts a survey that faults_of() finds nothing in. A room whose shape is not settled by its
/// readings has no result; what is missing is the error.
tl::expected<RecceResult, Unsettled> surveyed(const plan::Survey& survey);

} // namespace throwline::survey
