/** How firm a reference is: printed in a source; common in the trade without one; remembered and to be verified. */
export type CheckKind = 'published' | 'common practice' | 'from memory';

/** One comparison of ours with something nobody here wrote. */
export interface OutsideCheck {
  readonly what: string;
  readonly expected: number | string;
  readonly got: () => number | string;
  /** Largest distance: absolute, or a share of the expected value; 0 for exactly. */
  readonly tolerance: { readonly absolute: number } | { readonly relative: number } | 'exactly';
  readonly source: string;
  readonly kind: CheckKind;
}

/** Checks of one source or one worked example, written a line each. */
export function checksOf(
  source: string,
  rows: readonly [
    what: string,
    expected: number | string,
    got: () => number | string | undefined,
    tolerance?: OutsideCheck['tolerance'],
  ][],
  kind: CheckKind = 'published',
): OutsideCheck[] {
  return rows.map(([what, expected, got, tolerance = 'exactly']) => ({
    what,
    expected,
    got: () => got() ?? 'nothing',
    tolerance,
    source,
    kind,
  }));
}

export const within = (absolute: number) => ({ absolute });
export const share = (relative: number) => ({ relative });

/** Whether a value is as near to the expected one as the check asks. */
export function holds({ expected, tolerance }: OutsideCheck, got: number | string): boolean {
  if (typeof expected === 'string' || typeof got === 'string' || tolerance === 'exactly')
    return got === expected;
  const distance = Math.abs(got - expected);
  return 'absolute' in tolerance
    ? distance <= tolerance.absolute
    : distance <= tolerance.relative * Math.abs(expected);
}
