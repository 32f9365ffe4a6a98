#pragma once

#include "stage/mesh.h"
#include "stage/moment.h"
#include "stage/stage.h"

/// What the raise_*.cpp files share. Each raises one kind of thing; stage.cpp calls them in order.
namespace throwline::stage {

/// How light a surface is, and whether a shot may see it.
struct Surface {
    double reflectance = 0.5;
    bool dressed = true;
};

/// A stage while it is being raised.
class Raising {
  public:
    Raising(const Moment& at, Stage& raised) : moment{at}, stage{raised} {}

    /// Index of a new owner.
    int owner(OwnerKind kind, std::string name);
    /// Adds a solid of an owner; an empty mesh is left out.
    void add(int owner, Part part, Mesh mesh, const Surface& surface);
    /// Reflectance of a named finish; `fallback` when the name is empty or unknown.
    double reflectance(const std::string& finish, double fallback) const;

    const Moment& moment;
    Stage& stage;
};

/// Of what nothing is known (common practice, no source).
inline constexpr double kUsualReflectance = 0.5;
/// Of black equipment (common practice, no source).
inline constexpr double kEquipmentReflectance = 0.08;
/// Of clothed people (common practice, no source).
inline constexpr double kPersonReflectance = 0.35;

void raise_room(Raising& raising);
void raise_scenery(Raising& raising);
void raise_people(Raising& raising);
void raise_cameras(Raising& raising);
void raise_lamps(Raising& raising);
void raise_booms(Raising& raising);

/// A stock item standing at the origin, width along x, depth along y; the back of a seat, the head
/// of a bed and the top of stairs are at +y, the dressed side of a flat looks to +y.
struct StockPart {
    Part part = Part::body;
    Mesh mesh;
};
std::vector<StockPart> stock_parts(const catalogue::StockItem& item);

/// A panel of flats: width along its heading, dressed side to the left of it, thickness behind.
/// `from` is the start of the dressed face.
struct FlatPanel {
    Vec2 from = Vec2::Zero();
    double heading_rad = 0.0;
    double width_m = 0.0;
    double thickness_m = 0.0;
    double bottom_z_m = 0.0;
    double top_z_m = 0.0;
};
Mesh flat_front(const FlatPanel& panel);
/// All faces but the front.
Mesh flat_back(const FlatPanel& panel);

/// A member of the crew on their feet, for operators.
Body standing_crew(const Moment& moment, const Vec2& at, Angle facing);

} // namespace throwline::stage
