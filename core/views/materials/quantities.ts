import type { Figure } from '../../base';
import type { Presence } from '../../materials';
import type { Driver } from '../../work';
import { surveyOf } from '../../evaluation';
import { basisReader, idOf } from '../../sheet';
import { aligned, basisCell, NOT_APPLYING, words } from '../cells';
import { dollarCell, figureCell, type EstimateContext } from '../context';
import { readersUnit } from '../liquids';
import { readable, unitWords, type Measured, type Measures } from '../measures';
import { decimalsFor, roundText, shownNumber } from '../number-text';
import type { Column, Row, Shown, TableRows } from '../rows';
import type { ShownMoney } from '../shown-money';
import { familyCost } from './cost';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Material and where it is', kind: 'words' },
  { key: 'quantity', title: 'Quantity', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'range', title: 'Range', kind: 'range' },
  { key: 'presence', title: 'Present', unit: '% likely', kind: 'share', wide: true },
  { key: 'measured', title: 'Surveyed', kind: 'number' },
  { key: 'from', title: 'How it is known', kind: 'words', wide: true },
  { key: 'total', title: 'Clean-up', unit: '$', kind: 'number' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
];

/** Materials of concern by family: how much there is, how sure that is, and whether anybody has looked. */
export function quantityTable(context: EstimateContext, money: ShownMoney): TableRows {
  const { library } = context.evaluation;
  const survey = surveyOf(context.evaluation.project, library);
  const read = basisReader(context.parts.work.result);
  const rows = library.families.flatMap((family): Row[] => {
    const materials = library.materials.filter(material => material.family === family.id);
    const lines = materials.flatMap(material => {
      const drivers = library.drivers.filter(driver => driver.material === material.id);
      const presence = survey.presence.get(material.id);
      const isSampled = survey.sampled.has(material.id);
      return drivers.map(driver =>
        driverRow(context, family.id, { driver, presence, isSampled, read, material: material.id }),
      );
    });
    return [
      {
        id: family.id,
        kind: 'group',
        subject: family.id,
        cells: {
          title: words(family.title),
          total: dollarCell(familyCost(context, money, family.id), `family:${family.id}`),
        },
      },
      ...lines,
    ];
  });
  const total: Row = {
    id: 'total',
    kind: 'total',
    cells: {
      title: words('All families'),
      total: dollarCell(familyCost(context, money, undefined), 'family:all'),
    },
  };
  return {
    id: 'materials',
    caption: 'Materials of concern by family',
    columns: COLUMNS,
    rows: aligned(COLUMNS, [...rows, total]),
  };
}

interface Looked {
  readonly driver: Driver;
  readonly material: string;
  readonly presence: Presence | undefined;
  readonly isSampled: boolean;
  readonly read: ReturnType<typeof basisReader>;
}

function driverRow(context: EstimateContext, family: string, looked: Looked): Row {
  const { driver, material, presence, isSampled } = looked;
  const { project } = context.evaluation;
  const measured = project.survey.measured.find(one => one.driver === driver.id)?.figure;
  const { work } = context.parts;
  const isThere = work.result.has(idOf(work.drivers.columns.value, driver.id));
  const step = work.drivers.columns.value;
  const shown = isThere ? quantityCell(context, driver) : NOT_APPLYING;
  const whyId = isThere ? idOf(step, driver.id) : `presence:${material}`;
  return {
    id: driver.id,
    kind: 'line',
    under: family,
    subject: material,
    cells: {
      title: words(driver.title),
      quantity: isThere ? shown : { text: 'none', why: whyId },
      unit: words(isThere ? (shown.unit ?? '') : ''),
      range: isThere ? rangeCell(context, looked, measured, shown, whyId) : NOT_APPLYING,
      presence: presenceCell(material, presence, measured),
      measured: measuredCell(context, driver, measured),
      from: words(knownBy(presence, measured, isSampled)),
      basis: isThere
        ? basisCell(looked.read(whyId), undefined, whyId)
        : basisCell(presence?.basis, presence?.source, whyId),
    },
  };
}

/** An amount of a driver in the reader’s measures: all of a row in one unit, that in which it is typed. */
function inReaders(value: string, unit: string, driver: Driver, measures: Measures): Measured {
  const shown = readable(value, unit, readersUnit(driver.id, driver.unit, measures));
  return shown.unit === 'gal' ? { ...shown, value: roundText(shown.value, 0) } : shown;
}

function quantityCell(context: EstimateContext, driver: Driver): Shown {
  const { work } = context.parts;
  const step = work.drivers.columns.value;
  const figure = work.result.at(step, driver.id);
  if (figure.text === undefined || readersUnit(driver.id, driver.unit, context.measures) !== 'gal')
    return figureCell(context, work.result, step, driver.id, driver.decimals);
  const shown = inReaders(figure.text, figure.unit, driver, context.measures);
  return { text: shownNumber(shown.value, 0), unit: unitWords(shown.unit), why: idOf(step, driver.id) };
}

function presenceCell(material: string, presence: Presence | undefined, measured: Figure | undefined): Shown {
  if (presence === undefined || measured !== undefined) return NOT_APPLYING;
  return { text: roundText((presence.likely * 100).toFixed(4), 0), why: `presence:${material}` };
}

function measuredCell({ measures }: EstimateContext, driver: Driver, figure: Figure | undefined): Shown {
  const at = `/survey/measured/${driver.id}/figure`;
  const shown = inReaders(figure?.value ?? '0', figure?.unit ?? driver.unit, driver, measures);
  return {
    text: figure === undefined ? '' : shownNumber(shown.value, decimalsFor(shown.value)),
    ...(figure === undefined ? {} : { why: `given:${at}` }),
    edit: {
      at,
      kind: 'figure',
      value: figure === undefined ? '' : shown.value,
      unit: shown.unit,
      label: [driver.title, 'surveyed', unitWords(shown.unit)].filter(part => part !== '').join(', '),
      basis: 'surveyed',
      optional: true,
    },
  };
}

/** From the lower to the upper end: of the survey, else of the presence and of the quantity a full ship carries. */
function rangeCell(
  context: EstimateContext,
  { driver, presence }: Looked,
  measured: Figure | undefined,
  shown: Shown,
  why: string,
): Shown {
  const { measures } = context;
  if (measured !== undefined) {
    const { low, high, unit } = measured;
    if (low === undefined || high === undefined) return { text: 'no range', why };
    const ends = [low, high].map(text => shownNumber(inReaders(text, unit, driver, measures).value, 0));
    return { text: ends.join(' to '), why };
  }
  const value = context.parts.work.result.number(context.parts.work.drivers.columns.number, driver.id);
  if (value === undefined || presence === undefined || presence.likely <= 0) return { text: '–', why };
  const reference = referenceRange(context, driver);
  const end = (share: number, of: number) => {
    const text = (value * (share / presence.likely) * of).toFixed(6);
    const converted = inReaders(text, driver.unit, driver, measures);
    return shownNumber(converted.value, shown.text.includes('.') ? 1 : 0);
  };
  const [low, high] = [end(presence.low, reference.low), end(presence.high, reference.high)];
  return { text: low === high ? 'no range' : `${low} to ${high}`, why };
}

/** The ends of the quantity that a ship of the reference size carries, as factors of the likely one. */
function referenceRange(context: EstimateContext, driver: Driver): { low: number; high: number } {
  const { ship } = context.parts.input;
  const figure =
    'hullQuantity' in driver.atReference
      ? ship.type.quantities[driver.atReference.hullQuantity]
      : driver.atReference;
  const likely = Number(figure?.value ?? 0);
  if (figure === undefined || likely === 0) return { low: 1, high: 1 };
  return { low: Number(figure.low ?? likely) / likely, high: Number(figure.high ?? likely) / likely };
}

function knownBy(presence: Presence | undefined, measured: Figure | undefined, isSampled: boolean): string {
  if (measured !== undefined) return 'surveyed';
  if (isSampled) return 'laboratory';
  if (presence?.decidedBy === undefined) return 'assumed, any age';
  return `assumed, ${presence.decidedBy}`;
}
