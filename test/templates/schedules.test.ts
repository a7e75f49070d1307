import { describe, expect, it } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { startingProject } from '../../core/project';
import type { HullType } from '../../core/vessel';
import type { Library } from '../../core/work';
import { shipped } from './library';
import { pairwise } from './scenarios';

const library = shipped();
const sets = pairwise(library);

/** The ships of a type for a set of choices: of different lengths and ages, an old and a young one for every third set. */
function ships(type: HullType, set: number): { length: string; built: number }[] {
  const [from, to] = [Number(type.usualLengths.from.value), Number(type.usualLengths.to.value)];
  const length = String(Math.round(from + ((to - from) * (set % 5)) / 4));
  const built = set % 3 === 0 ? [1955, 1985] : [set % 2 === 0 ? 1955 : 1985];
  return built.map(year => ({ length, built: year }));
}

const cases = library.hullTypes.flatMap(type =>
  sets.flatMap((options, set) => ships(type, set).map(ship => ({ type, options, ...ship }))),
);

/** Why a ship with these choices has no schedule or no total; nothing when it has both. */
function fault({ type, options, length, built }: (typeof cases)[number], book = library): string[] {
  const start = startingProject(book, {
    reader: 'grant',
    hullType: type.id,
    title: 'A ship of the library',
    start: '2027-01-04',
    built,
    length: { value: length, unit: 'm', basis: 'judgement', source: 'Usual length', year: 2026 },
  });
  const { estimate, findings } = evaluate(
    { ...start, options },
    { today: '2026-11-24', seed: 1, schedules: 1, upright: false, library: book },
  );
  const blocking = findings.filter(finding => finding.weight === 'blocks');
  const total = estimate?.money?.result.money(estimate.money.sums.total);
  const dated = estimate?.schedule.activities.length ?? 0;
  return blocking.length === 0 && total !== undefined && dated === estimate?.problem.activities.length
    ? []
    : [`${type.id} ${length} m, ${Object.values(options).join(' ')}: ${blocking[0]?.message ?? 'no total'}`];
}

describe('every hull type with every pair of choices', () => {
  it('makes at least 500 scenarios', () => {
    expect(cases.length).toBeGreaterThanOrEqual(500);
  });

  it('schedules: each activity has dates that the independent check accepts, and there is a total', () => {
    expect(cases.flatMap(one => fault(one))).toEqual([]);
  }, 300_000);

  it('notices choices that cannot be scheduled: a crew of which there is none', () => {
    const none: Library = {
      ...library,
      rateBook: {
        ...library.rateBook,
        crews: library.rateBook.crews.map(crew =>
          crew.id === 'enclosure-crew' ? { ...crew, available: { ...crew.available, value: '0' } } : crew,
        ),
      },
    };
    const [first] = cases;
    if (first === undefined) throw new Error('no case');
    expect(fault(first)).toEqual([]);
    expect(fault(first, none)).not.toEqual([]);
  });
});
