/**
 * Virtual loss of GM, m, of a ship resting on the bottom with a reaction (t) at the keel. Two conventions are in
 * use, each right with its own displacement: `onDisplacement` belongs to W, `onReduced` to W - P.
 * @source Barrass and Derrett, Ship Stability for Masters and Mates, drydocking and grounding.
 */
export function groundingLoss(
  reaction: number,
  ship: { displacement: number; km: number; kg: number },
): { readonly onDisplacement: number; readonly onReduced: number } {
  return {
    onDisplacement: (reaction * ship.km) / ship.displacement,
    onReduced: (reaction * ship.kg) / (ship.displacement - reaction),
  };
}
