#include "stage/raising.h"

namespace throwline::stage {

namespace {

/// Turned and moved from the origin to where it stands.
Mesh placed(Mesh mesh, const Vec2& at, double turn_rad, double bottom_z_m) {
    for (Vec3& vertex : mesh.vertices) {
        vertex = raised(at + rotated(floor_of(vertex), turn_rad), vertex.z() + bottom_z_m);
    }
    return mesh;
}

/// Raises the shapes of one piece of scenery.
class SceneryRaising {
  public:
    SceneryRaising(Raising& raising, const plan::Scenery& scenery, int owner)
        : raising_{raising}, scenery_{scenery}, owner_{owner},
          surface_{raising.reflectance(scenery.finish, kUsualReflectance), scenery.dressed} {}

    void operator()(const plan::FlatRun& run) {
        const FlatPanel panel{run.from,          run.heading.rad(), run.total_width().m(),
                              run.thickness.m(), bottom_m(),        bottom_m() + run.height.m()};
        raising_.add(owner_, Part::flat_front, flat_front(panel), surface_);
        raising_.add(owner_, Part::flat_back, flat_back(panel), undressed());
    }

    void operator()(const plan::StockPiece& piece) {
        const catalogue::StockItem* item = raising_.moment.catalogue.stock_item(piece.item);
        if (item == nullptr) {
            return;
        }
        for (StockPart& part : stock_parts(*item)) {
            raising_.add(owner_, part.part,
                         placed(std::move(part.mesh), piece.at, piece.turn.rad(), bottom_m()),
                         part.part == Part::flat_back ? undressed() : surface_);
        }
    }

    void operator()(const plan::CylinderPiece& piece) {
        const Vec3 base = raised(piece.at, bottom_m());
        raising_.add(owner_, Part::body,
                     cylinder(base, piece.diameter.m() / 2.0, piece.height.m(), 32), surface_);
    }

    void operator()(const plan::BoxPiece&) { raise_outline(); }
    void operator()(const plan::PrismPiece&) { raise_outline(); }
    void operator()(const plan::Riser&) { raise_outline(); }
    void operator()(const plan::Drape&) { raise_outline(); }

  private:
    void raise_outline() {
        const catalogue::Catalogue& catalogue = raising_.moment.catalogue;
        const double top_m = bottom_m() + plan::height_of(scenery_, catalogue).m();
        raising_.add(owner_, Part::body,
                     prism(plan::footprint(scenery_, catalogue), bottom_m(), top_m), surface_);
    }
    double bottom_m() const { return scenery_.elevation.m(); }
    Surface undressed() const { return {surface_.reflectance, false}; }

    Raising& raising_;
    const plan::Scenery& scenery_;
    int owner_;
    Surface surface_;
};

} // namespace

void raise_scenery(Raising& raising) {
    const catalogue::Catalogue& catalogue = raising.moment.catalogue;
    for (const plan::Scenery& scenery : raising.moment.plan.scenery) {
        const int owner = raising.owner(OwnerKind::scenery, scenery.id.name);
        std::visit(SceneryRaising{raising, scenery, owner}, scenery.shape);
        const double bottom_m = scenery.elevation.m();
        raising.stage.scenery.push_back({scenery.id, owner, plan::footprint(scenery, catalogue),
                                         bottom_m,
                                         bottom_m + plan::height_of(scenery, catalogue).m()});
    }
}

} // namespace throwline::stage
