#pragma once

#include "base/result.h"
#include "sheet/drawing.h"

#include <cstddef>
#include <functional>
#include <memory>
#include <span>
#include <string>

/// Drawings as files, for callers that know nothing of Qt.
namespace throwline::paint {

/// What painting needs for as long as it goes on: fonts, and a Qt application without a screen when
/// the program has none of its own. Make one in `main`, before any other thread starts. Numbers are
/// written with "." whatever the locale from then on.
/// Throws std::runtime_error when the carried font does not load, which would leave sheets
/// unlettered.
class PaintSession {
  public:
    PaintSession();
    ~PaintSession();
    PaintSession(const PaintSession&) = delete;
    PaintSession& operator=(const PaintSession&) = delete;

    /// Widths of the font that sheets are lettered in.
    const sheet::TextMeasure& measure() const { return *measure_; }

  private:
    class Application;
    std::unique_ptr<Application> application_;
    std::unique_ptr<sheet::TextMeasure> measure_;
};

/// Is told before each page how many of them are done; false gives the work up. May be empty.
using MayGoOn = std::function<bool(std::size_t pages_done)>;

/// A PDF of one page a drawing, each exactly as large as its sheet. The layers of a drawing can be
/// shown and hidden in a viewer; those of the same name on several pages together. Asks viewers not
/// to scale on printing. Same drawings, same bytes. Errors: no pages; it was given up.
Result<std::string> rendered_pdf(const PaintSession& session, std::span<const sheet::Drawing> pages,
                                 const MayGoOn& may_go_on = {});
Result<std::string> rendered_pdf(const PaintSession& session, const sheet::Drawing& drawing);

/// An SVG 1.2 Tiny picture in which one unit is one millimetre. Each layer is a group whose id is
/// the layer's name.
Result<std::string> rendered_svg(const PaintSession& session, const sheet::Drawing& drawing);

/// Largest side of a PNG picture, and the most pixels that it may have, which take 4 bytes each
/// while it is painted: an A0 sheet at 300 dots per inch has 140 million. A larger one is refused.
inline constexpr int kLargestSide_px = 20000;
inline constexpr double kMostPicturePixels = 150e6;
inline constexpr double kUsualDotsPerInch = 200.0;

/// A PNG picture that knows its resolution.
Result<std::string> rendered_png(const PaintSession& session, const sheet::Drawing& drawing,
                                 double dots_per_inch = kUsualDotsPerInch);

} // namespace throwline::paint
