import type { FamilyKey, TripPoint } from '../../materials';
import { aligned, basisCell, words } from '../cells';
import { unitWords } from '../measures';
import { decimalProduct } from '../../units';
import { printed, shortNumber } from '../number-text';
import type { Column, Row, TableRows } from '../rows';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Trip-point', kind: 'words' },
  { key: 'limit', title: 'Trips', kind: 'words' },
  { key: 'rule', title: 'Rule', kind: 'words' },
  { key: 'basis', title: 'Basis', kind: 'basis', wide: true },
];

/** Units of limits that are plain numbers in the rule’s own unit, by the beginning of their keys. */
const OWN_UNITS: readonly (readonly [start: string, unit: string])[] = [
  ['pcb-wipe', 'µg per 100 cm²'],
  ['pcb-bulk', 'ppm'],
  ['pcb-article', 'ppm'],
  ['leach-screen', 'times the limit'],
  ['leach-', 'mg per litre'],
  ['lead-air', 'µg per m³'],
  ['tbt-content', 'mg of tin per kg of dry paint'],
];

/** Limits that are shares of something else than the whole, and of what, by their keys. */
const SHARE_OF: Readonly<Record<string, string>> = {
  'flammable-hot-work': '% of the lower explosive limit',
  'oxygen-hot-work': '% by volume',
};

/** A limit as it is read: shares in per cent, plain numbers with the unit of their rule. */
export function limitWords({ id, figure }: TripPoint): { text: string; unit: string } {
  const own = OWN_UNITS.find(([start]) => id.startsWith(start))?.[1];
  if (own !== undefined) return { text: printed(figure.value), unit: own };
  if (figure.unit === '1')
    return { text: shortNumber(decimalProduct(figure.value, '100')), unit: SHARE_OF[id] ?? '%' };
  const unit = unitWords(figure.unit);
  return {
    text: figure.unit === 'year' ? figure.value : printed(figure.value),
    unit: figure.unit === 'year' ? '' : unit,
  };
}

/** The thresholds that speak of each family, by the beginning of their keys. */
const OF_FAMILY: Readonly<Record<FamilyKey, readonly string[]>> = {
  'oil-and-fuel': ['oxygen-hot-work', 'flammable-hot-work'],
  asbestos: ['asbestos-'],
  pcb: ['pcb-'],
  paint: ['leach-', 'lead-air', 'tbt-'],
  solids: ['generator-'],
  other: ['leach-mercury', 'generator-'],
};

export function tripPointTable(points: readonly TripPoint[], family: FamilyKey): TableRows {
  const own = points.filter(point => OF_FAMILY[family].some(start => point.id.startsWith(start)));
  const rows = own.map((point): Row => {
    const { id, title, figure, trips, rule } = point;
    const limit = limitWords(point);
    return {
      id,
      kind: 'line',
      cells: {
        title: words(title),
        limit: { text: `${trips} ${limit.text} ${limit.unit}`.trim(), why: `trip:${id}` },
        rule: words(rule),
        basis: basisCell(figure.basis, figure.source, `trip:${id}`),
      },
    };
  });
  return { id: `trips-${family}`, caption: 'Trip-points', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}
