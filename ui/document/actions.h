#pragma once
// What the window can do to an arrangement. Each is a pure function: value in, value or finding out; the document makes it a
// step. Everything forwards to core/edit, so that sheet, form and test change the value by the same call.

#include "core/base/result.h"
#include "core/model/arrangement.h"

#include <QString>

#include <optional>
#include <utility>
#include <vector>

namespace shaftwright::ui::actions
{

/// A thing of the shelf.
enum class ShelfItem {
    segment,
    groove,
    keyway,
    gear,
    bevel_gear,
    worm,
    worm_wheel,
    belt_pulley,
    sprocket,
    coupling,
    impeller,
    weight,
    free_force,
    line_load,
    support,
    ring
};

struct ShelfEntry {
    ShelfItem item;
    int group; ///< 0 shaft, 1 carries, 2 holds
    QString name;
    QString tip;
};
[[nodiscard]] const std::vector<ShelfEntry>& shelf();

struct Inserted {
    Arrangement value;
    QString subject; ///< path of the new thing
    QString text;    ///< of the undo step
};
/// The thing with its usual inputs at x (clamped onto the shaft).
[[nodiscard]] Result<Inserted> insert(const Arrangement& arrangement, ShelfItem item, double x_mm);

/// Moves a part or support to x.
[[nodiscard]] Result<Arrangement> moveTo(const Arrangement& arrangement, const QString& subject, double x_mm);
/// Moves the shoulder at the right end of segment `index`; the neighbour gives way, or with `push` the rest moves along.
[[nodiscard]] Result<Arrangement> moveShoulderAfter(const Arrangement& arrangement, std::size_t index, double x_mm, bool push);
/// Direction of the mesh or belt of a part, degrees from +y towards +z. `further_mesh`: of a gear with several meshes.
[[nodiscard]] Result<Arrangement> setDirection(const Arrangement& arrangement, const PartId& id, double angle_deg,
                                               int further_mesh = -1);
[[nodiscard]] std::optional<double> direction(const Part& part, int further_mesh = -1);
/// Index in "further_meshes.1.mesh_angle_deg"; -1 for the first mesh.
[[nodiscard]] int furtherMeshOf(const QString& handle);
[[nodiscard]] Result<Arrangement> remove(const Arrangement& arrangement, const QString& subject);
[[nodiscard]] Result<Inserted> duplicate(const Arrangement& arrangement, const QString& subject);

} // namespace shaftwright::ui::actions
