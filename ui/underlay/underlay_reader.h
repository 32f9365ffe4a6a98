#pragma once

#include "base/latest.h"
#include "ui/desk/desk.h"

#include <QObject>
#include <QString>
#include <filesystem>
#include <memory>
#include <thread>

namespace throwline::ui {

/// Reads the scanned plan that the plan of a desk names, on a thread of its own, and lays others.
class UnderlayReader : public QObject {
    Q_OBJECT

  public:
    using Sizes = std::vector<sheet::ReducedPicture>;

    explicit UnderlayReader(Desk& desk, QObject* parent = nullptr);
    ~UnderlayReader() override;

    /// The folder of the plan's file, beside which pictures are looked for; empty while it has no
    /// file.
    void set_folder(std::filesystem::path folder);

    /// The picture that the plan names; null while it is being read, when it cannot be, and when
    /// there is none.
    std::shared_ptr<const sheet::Pixels> pixels() const {
        return sizes_ == nullptr ? nullptr : sizes_->front().pixels;
    }
    /// The same as screens show it; null likewise.
    const std::shared_ptr<const Sizes>& sizes() const { return sizes_; }
    /// Why it cannot be shown: a sentence; empty when nothing is wrong.
    const QString& fault() const { return fault_; }
    bool is_reading() const { return answered_ != asked_; }

    /// Reads it once more, as when it was put where it is looked for.
    void read_again();
    /// Lays a picture beneath the plan, a step, once it was read; says why not when it cannot be.
    void lay(const std::filesystem::path& picture);

  Q_SIGNALS:
    /// pixels() or fault() is another.
    void changed();
    /// A picture was laid: it is to be put in its place.
    void laid();

  private:
    struct Question {
        int number = 0;
        std::filesystem::path picture;
        /// To be laid, not only shown.
        bool is_new = false;
    };
    struct Answer {
        Question of;
        Result<std::shared_ptr<const Sizes>> sizes;
    };
    void work(const std::stop_token& stop);
    void ask(std::filesystem::path picture, bool is_new);
    void look();
    void take(const Answer& answer);
    void take_new(const Answer& answer);
    void show(std::shared_ptr<const Sizes> sizes, const QString& fault);
    std::string name_in_plan(const std::filesystem::path& picture) const;

    Desk& desk_;
    std::filesystem::path folder_;
    /// What pixels() and fault() are about; empty for none.
    std::filesystem::path known_;
    std::shared_ptr<const Sizes> sizes_;
    QString fault_;
    int asked_ = 0;
    int answered_ = 0;
    Latest<Question> waiting_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
