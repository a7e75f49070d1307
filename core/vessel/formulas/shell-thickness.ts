/** A hull for the minimum shell: length m, frame spacing mm, draught over depth. */
export interface ShellHull {
  readonly length: number;
  readonly frameSpacing: number;
  readonly draughtToDepth: number;
}

/** Side shell, mm: (s / 645) sqrt((L - 15.2) d / D) + 2.5. @source Form of the classification rules, from memory. */
export function sideShellThickness(hull: ShellHull): number {
  return (hull.frameSpacing / 645) * Math.sqrt((hull.length - 15.2) * hull.draughtToDepth) + 2.5;
}

/** Bottom shell, mm: (s / 519) sqrt((L - 19.8) d / D) + 2.5. @source Form of the classification rules, from memory. */
export function bottomShellThickness(hull: ShellHull): number {
  return (hull.frameSpacing / 519) * Math.sqrt((hull.length - 19.8) * hull.draughtToDepth) + 2.5;
}
