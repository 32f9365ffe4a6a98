#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"
#include "checks/check.h"
#include "edit/history.h"
#include "edit/thing.h"
#include "sheet/floor_drawing.h"

#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>
#include <optional>
#include <vector>

/// What one window works on. Panels show it and ask it for changes; it computes nothing itself.
namespace throwline::ui {

class AnalysisRunner;

using CataloguePtr = std::shared_ptr<const catalogue::Catalogue>;
using AnalysisPtr = std::shared_ptr<const checks::Analysis>;

/// One production on the desk: its history, what is chosen, which moment is shown, and what is
/// known about it. Everything happens on the interface thread.
class Desk : public QObject {
    Q_OBJECT

  public:
    explicit Desk(CataloguePtr catalogue, QObject* parent = nullptr);
    ~Desk() override;

    /// Starts afresh with another plan, one that the reader accepts: no history, nothing chosen.
    /// `is_saved`: it is what its file holds.
    void lay_out(plan::PlanPtr plan, bool is_saved);
    /// Other tables, such as with own items added.
    void set_catalogue(CataloguePtr catalogue);

    const plan::PlanPtr& plan() const { return history_.plan(); }
    const CataloguePtr& catalogue() const { return catalogue_; }
    /// The text of the plan's file, as it would be saved.
    std::string plan_text() const;
    const edit::History& history() const { return history_; }
    edit::Context context() const { return {*plan(), *catalogue_, now_}; }

    /// Takes a step: checked, recorded, shown; what it made is chosen. A step that failed, or leads
    /// to a plan that would not open again, is refused with a sentence and changes nothing.
    /// Returns whether it was taken. Any preview ends.
    bool take(const Result<edit::Step>& step);
    void undo();
    void redo();
    void mark_saved();
    bool is_saved() const { return history_.is_saved(); }

    /// A plan that is shown while a drag goes on, before it is taken. Not checked, not recorded.
    void preview(const Result<edit::Step>& step);
    void end_preview();
    bool is_previewing() const { return preview_ != nullptr; }
    /// How far people are on their way into the beat of now, 0..1; 1 when they are there.
    void set_way(double share);
    double way() const { return way_; }
    /// What is to be painted: the preview, else the plan on its way, else the plan.
    const plan::PlanPtr& shown() const;
    edit::Context shown_context() const { return {*shown(), *catalogue_, now_}; }

    const std::vector<edit::Thing>& chosen() const { return chosen_; }
    void choose(std::vector<edit::Thing> things);
    const edit::Now& now() const { return now_; }
    /// Names that the plan does not have become empty; a shot brings a beat of its own when it is
    /// not in the one named.
    void set_now(edit::Now now);

    const sheet::Overlays& overlays() const { return overlays_; }
    void set_overlays(const sheet::Overlays& overlays);
    /// Units in which lengths are shown; a step like any other.
    void toggle_units();

    /// What is known about shown(); null while it is being worked out. Never that of another plan.
    AnalysisPtr analysis() const;
    bool is_checking() const;
    /// Stops checking the present plan; it stays unknown until the next change or check_again().
    void stop_checking();
    void check_again();
    /// A finding that is pointed at, by its index in analysis()->findings; -1 for none.
    void point_at_finding(int index);
    int finding_pointed_at() const { return finding_; }

    /// Says a sentence at the foot of the window.
    void say(const QString& sentence);

  Q_SIGNALS:
    /// The plan in the history is another: a step, undo, redo, lay_out. shown() is too.
    void plan_changed();
    /// What is to be painted is another; also after plan_changed().
    void shown_changed();
    void chosen_changed();
    void now_changed();
    void overlays_changed();
    void catalogue_changed();
    /// analysis() or is_checking() is another.
    void analysis_changed();
    /// Share done, 0..1, while checking takes longer than half a second.
    void checking_went_on(double share);
    void finding_pointed_at_changed();
    void saved_changed();
    /// A step was refused, or something is worth saying.
    void said(const QString& sentence);

  private:
    void show_plan();
    void look_again();
    void keep_what_is_there();
    plan::PlanPtr plan_on_its_way() const;

    CataloguePtr catalogue_;
    edit::History history_;
    /// No plan of the history has a longer file.
    std::size_t most_bytes_ = 0;
    plan::PlanPtr preview_;
    plan::PlanPtr on_its_way_;
    double way_ = 1.0;
    edit::Now now_;
    std::vector<edit::Thing> chosen_;
    sheet::Overlays overlays_;
    int finding_ = -1;
    std::unique_ptr<AnalysisRunner> runner_;
    /// Runs out when a drag pauses: only then is what it shows worth checking.
    QTimer pause_;
};

} // namespace throwline::ui
