#include "catalogue/catalogue.h"
#include "fuzz/property.h"
#include "fuzz/targets.h"

#include <cmath>
#include <sys/mman.h>
#include <unistd.h>

namespace throwline::fuzz {

namespace {

using namespace catalogue;

/// A file that exists in memory only, so that a campaign does not wear a disk.
class MemoryFile {
  public:
    explicit MemoryFile(std::string_view bytes) : number_{::memfd_create("own", MFD_CLOEXEC)} {
        require(number_ >= 0, "the system gives a file in memory");
        require(::write(number_, bytes.data(), bytes.size()) == static_cast<ssize_t>(bytes.size()),
                "the file in memory takes the input");
    }
    ~MemoryFile() { ::close(number_); }
    MemoryFile(const MemoryFile&) = delete;
    MemoryFile& operator=(const MemoryFile&) = delete;

    std::string path() const { return "/proc/self/fd/" + std::to_string(number_); }

  private:
    int number_;
};

template <class Row>
void keep_first(std::vector<Row>& rows) {
    rows.erase(rows.begin() + 1, rows.end());
}

/// One row of each shipped table: enough to be replaced, little to copy.
Catalogue small_catalogue() {
    Catalogue small = load_catalogue(THROWLINE_SOURCE_DIR "/lensdata").value();
    keep_first(small.sensors);
    keep_first(small.lenses);
    keep_first(small.instruments);
    keep_first(small.filters);
    keep_first(small.stock);
    keep_first(small.supports);
    keep_first(small.landmarks);
    keep_first(small.finishes);
    keep_first(small.papers);
    keep_first(small.scales);
    return small;
}

template <class Row, class LookUp>
void require_found(const std::vector<Row>& rows, LookUp look_up) {
    for (const Row& row : rows) {
        const Row* const found = look_up(row.name);
        require(found != nullptr && found->name == row.name, "a row is found by its name");
        require(!row.name.empty() && !row.source.empty(), "a row has a name and a source");
    }
}

void require_positive(double value) {
    require(std::isfinite(value) && value > 0.0, "a size is finite and positive");
}

void require_usable(const Catalogue& all) {
    for (const SensorMode& sensor : all.sensors) {
        require_positive(sensor.diagonal().m());
        require_positive(sensor.circle_of_confusion.m());
        require_positive(sensor.squeeze);
    }
    for (const Lens& lens : all.lenses) {
        require_positive(lens.focal_min.m());
        require_positive(lens.stop_wide);
        require(lens.focal_max >= lens.focal_min, "a zoom's long end is not the shorter one");
    }
    for (const Instrument& instrument : all.instruments) {
        require_positive(instrument.spot.peak_cd);
        require_positive(instrument.flood.beam.rad());
        require(instrument.spot.field >= instrument.spot.beam, "the field holds the beam");
        require(instrument.flood.field >= instrument.flood.beam, "the field holds the beam");
    }
    for (const StockItem& item : all.stock) {
        require_positive(item.width.m());
        require_positive(item.height.m());
    }
    for (const DrawingScale& scale : all.scales) {
        require_positive(scale.ratio);
    }
    for (const Paper& paper : all.papers) {
        require_positive(paper.width.m());
        require(paper.height >= paper.width, "a paper is upright");
    }
}

} // namespace

void catalogue_input(std::string_view bytes) {
    static const Catalogue kSmall = small_catalogue();
    const MemoryFile file{bytes};
    const Checked<Catalogue> own = with_own_items(kSmall, file.path());
    if (!own) {
        require_readable(own.error());
        return;
    }
    require_usable(*own);
    require_found(own->sensors, [&](const std::string& name) { return own->sensor(name); });
    require_found(own->lenses, [&](const std::string& name) { return own->lens(name); });
    require_found(own->instruments, [&](const std::string& name) { return own->instrument(name); });
    require_found(own->filters, [&](const std::string& name) { return own->filter(name); });
    require_found(own->stock, [&](const std::string& name) { return own->stock_item(name); });
    require_found(own->supports, [&](const std::string& name) { return own->support(name); });
    require_found(own->finishes, [&](const std::string& name) { return own->finish(name); });
    require_found(own->papers, [&](const std::string& name) { return own->paper(name); });
}

} // namespace throwline::fuzz
