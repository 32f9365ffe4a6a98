#include "ui/underlay/underlay_reader.h"

#include "edit/underlay.h"
#include "ui/paint/read_picture.h"

#include <QMetaObject>

namespace throwline::ui {

UnderlayReader::UnderlayReader(Desk& desk, QObject* parent)
    : QObject{parent}, desk_{desk}, thread_{[this](const std::stop_token& stop) { work(stop); }} {
    connect(&desk_, &Desk::plan_changed, this, &UnderlayReader::look);
    look();
}

UnderlayReader::~UnderlayReader() = default;

void UnderlayReader::set_folder(std::filesystem::path folder) {
    folder_ = std::move(folder);
    look();
}

void UnderlayReader::read_again() {
    known_.clear();
    look();
}

void UnderlayReader::lay(const std::filesystem::path& picture) {
    ask(picture, true);
}

/// Asks for what the plan names unless it is known.
void UnderlayReader::look() {
    const auto& underlay = desk_.plan()->underlay;
    if (!underlay) {
        known_.clear();
        show(nullptr, {});
        return;
    }
    const std::filesystem::path named = underlay->file;
    if (named.is_relative() && folder_.empty()) {
        known_.clear();
        show(nullptr, tr("The scanned plan %1 is looked for beside the plan's file; save the plan "
                         "there, or choose the scan again.")
                          .arg(QString::fromStdString(underlay->file)));
        return;
    }
    const std::filesystem::path picture = folder_ / named;
    if (picture != known_) {
        known_ = picture;
        show(nullptr, {});
        ask(picture, false);
    }
}

void UnderlayReader::ask(std::filesystem::path picture, bool is_new) {
    waiting_.put({++asked_, std::move(picture), is_new});
}

void UnderlayReader::work(const std::stop_token& stop) {
    while (std::optional<Question> question = waiting_.take(stop)) {
        Answer answer{std::move(*question), failure("")};
        answer.sizes = paint::read_picture(answer.of.picture).map([](sheet::Pixels pixels) {
            return std::make_shared<const Sizes>(
                sheet::reduced_pictures(std::make_shared<const sheet::Pixels>(std::move(pixels))));
        });
        QMetaObject::invokeMethod(
            this, [this, answer = std::move(answer)] { take(answer); }, Qt::QueuedConnection);
    }
}

void UnderlayReader::take(const Answer& answer) {
    if (answer.of.number != asked_) {
        return;
    }
    answered_ = asked_;
    if (answer.of.is_new) {
        take_new(answer);
    } else if (answer.of.picture == known_) {
        show(answer.sizes.value_or(nullptr),
             answer.sizes ? QString{}
                          : tr("The scanned plan is not shown: %1.")
                                .arg(QString::fromStdString(answer.sizes.error().message)));
    }
}

void UnderlayReader::take_new(const Answer& answer) {
    if (!answer.sizes) {
        desk_.say(tr("The scanned plan is not laid: %1.")
                      .arg(QString::fromStdString(answer.sizes.error().message)));
        // The one that is there may have been left unread for this.
        read_again();
        return;
    }
    const sheet::Pixels& pixels = *(*answer.sizes)->front().pixels;
    const std::string name = name_in_plan(answer.of.picture);
    // Known before the plan names it, so that it is not read twice.
    known_ = folder_ / name;
    if (desk_.take(edit::underlay_laid(desk_.context(), name, pixels.width, pixels.height))) {
        show(*answer.sizes, {});
        Q_EMIT laid();
    } else {
        read_again();
    }
}

void UnderlayReader::show(std::shared_ptr<const Sizes> sizes, const QString& fault) {
    if (sizes != sizes_ || fault != fault_) {
        sizes_ = std::move(sizes);
        fault_ = fault;
        Q_EMIT changed();
    }
}

/// Beside the plan's file where it has one, so that both can be moved together.
std::string UnderlayReader::name_in_plan(const std::filesystem::path& picture) const {
    std::error_code fault;
    const std::filesystem::path beside = folder_.empty()
                                             ? std::filesystem::path{}
                                             : std::filesystem::relative(picture, folder_, fault);
    if (fault || beside.empty()) {
        const std::filesystem::path whole = std::filesystem::absolute(picture, fault);
        return (fault ? picture : whole).generic_string();
    }
    return beside.generic_string();
}

} // namespace throwline::ui
