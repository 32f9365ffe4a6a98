#include "ui/sheets/sheet_wishes.h"

#include "sheet/tiles.h"

#include <QSettings>
#include <QStringList>
#include <array>

namespace throwline::ui {

namespace {

struct Switch {
    const char* key;
    bool SheetWishes::* part;
};
constexpr std::array kSwitches{Switch{"sheets/tiles", &SheetWishes::tiles},
                               Switch{"sheets/ground", &SheetWishes::ground},
                               Switch{"sheets/coverage", &SheetWishes::coverage},
                               Switch{"sheets/pools", &SheetWishes::pools},
                               Switch{"sheets/findings", &SheetWishes::findings},
                               Switch{"sheets/underlay", &SheetWishes::underlay}};

QString key_of(const char* words) {
    return QString::fromLatin1(words);
}

QString paper_key(UnitSystem units) {
    return key_of(units == UnitSystem::metric ? "sheets/metric/paper" : "sheets/feet/paper");
}

QString scale_key(UnitSystem units) {
    return key_of(units == UnitSystem::metric ? "sheets/metric/scale" : "sheets/feet/scale");
}

QString text_of(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

} // namespace

std::string_view usual_paper(UnitSystem units) {
    return units == UnitSystem::metric ? "A3" : "tabloid";
}

void keep_wishes(QSettings& settings, const SheetWishes& wishes, UnitSystem units) {
    QStringList kinds;
    for (const std::string& kind : wishes.kinds) {
        kinds << text_of(kind);
    }
    settings.setValue(key_of("sheets/kinds"), kinds);
    settings.setValue(paper_key(units), text_of(wishes.paper));
    settings.setValue(scale_key(units), text_of(wishes.scale));
    settings.setValue(key_of("sheets/way"),
                      wishes.way ? text_of(sheet::name_of(*wishes.way)) : QString{});
    for (const Switch& each : kSwitches) {
        settings.setValue(key_of(each.key), wishes.*each.part);
    }
}

SheetWishes kept_wishes(const QSettings& settings, UnitSystem units) {
    SheetWishes wishes;
    if (settings.contains(key_of("sheets/kinds"))) {
        wishes.kinds.clear();
        for (const QString& kind : settings.value(key_of("sheets/kinds")).toStringList()) {
            wishes.kinds.push_back(kind.toStdString());
        }
    }
    const QString paper = settings.value(paper_key(units)).toString();
    wishes.paper = paper.isEmpty() ? std::string{usual_paper(units)} : paper.toStdString();
    wishes.scale = settings.value(scale_key(units)).toString().toStdString();
    const QString way = settings.value(key_of("sheets/way")).toString();
    for (const auto each : {sheet::Orientation::landscape, sheet::Orientation::portrait}) {
        if (way == text_of(sheet::name_of(each))) {
            wishes.way = each;
        }
    }
    for (const Switch& each : kSwitches) {
        wishes.*each.part = settings.value(key_of(each.key), wishes.*each.part).toBool();
    }
    return wishes;
}

sheet::SheetOptions options_for(const SheetWishes& wishes) {
    sheet::SheetOptions options;
    options.paper = wishes.paper;
    options.orientation = wishes.way;
    options.scale = wishes.scale;
    if (wishes.tiles && !wishes.scale.empty()) {
        options.tile_overlap = sheet::kUsualOverlap;
    }
    options.sheet_name.clear();
    options.ground = wishes.ground;
    options.coverage = wishes.coverage;
    options.pools = wishes.pools;
    options.findings = wishes.findings;
    options.goes_on = true;
    options.leaves_out_empty = true;
    return options;
}

} // namespace throwline::ui
