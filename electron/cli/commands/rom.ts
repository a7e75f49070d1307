import type { Figure } from '../../../core/base';
import { SCOPES, roughOrder, shippedLibrary, type RomRequest, type Scope } from '../../../core/evaluation';
import { isQuantity, parseQuantity, type PlainUnit } from '../../../core/units';
import { UsageError, type Call, type Command } from '../command';

export const romCommand: Command = {
  name: 'rom',
  words: 'A rough order of magnitude from a handful of particulars.',
  usage:
    'reefwright rom --hull-type TYPE --length 523ft [--built YEAR] [--lightship 9950lt] [--tow 956nmi] [--price-year 2009] [--acquisition AMOUNT] [--scope clean|clean-tow-sink|all] [--json]',
  options: {
    'hull-type': { type: 'string', words: 'which kind of ship; the list stands below', sample: 'TYPE' },
    length: { type: 'string', words: 'length overall with its unit', sample: '523ft' },
    built: {
      type: 'string',
      words: 'build year; the usual one of the hull type unless given',
      sample: 'YEAR',
    },
    lightship: {
      type: 'string',
      words: 'lightship with its unit (lt long tons, t tonnes, st short tons)',
      sample: '9950lt',
    },
    tow: { type: 'string', words: 'tow distance with its unit', sample: '956nmi' },
    'price-year': {
      type: 'string',
      words: 'everything at the mean prices of this year, nothing escalated beyond it',
      sample: '2009',
    },
    acquisition: { type: 'string', words: 'purchase price of the hull in dollars', sample: 'AMOUNT' },
    scope: {
      type: 'string',
      words:
        'clean: clean-up, yard and acceptance at contract price; clean-tow-sink: topside, openings, tow and sinking too; all: everything',
      sample: 'clean|clean-tow-sink|all',
    },
  },
  more: hullTypeList,
  run: call => {
    const { json, evaluation } = roughOrder(shippedLibrary(), requestOf(call));
    const figures = json as { total?: number; low?: number; high?: number; hours?: number };
    const lines =
      figures.total === undefined
        ? []
        : [
            `Total about ${thousands(figures.total)}, between ${thousands(figures.low ?? 0)} and ${thousands(figures.high ?? 0)} (class 5, from particulars alone)`,
            `${Math.round(figures.hours ?? 0).toLocaleString('en-US')} paid hours`,
          ];
    return { json, lines, findings: evaluation.findings };
  },
};

/** Dollars to the nearest thousand: a rough order is not known better. */
function thousands(dollars: number): string {
  return `$${(Math.round(dollars / 1000) * 1000).toLocaleString('en-US')}`;
}

function hullTypeList(): string {
  const { hullTypes } = shippedLibrary();
  const width = Math.max(...hullTypes.map(type => type.id.length));
  return [
    'Hull types:',
    ...hullTypes.map(type => `  ${type.id.padEnd(width)}  ${type.standsFor.join(', ')}`),
  ].join('\n');
}

function requestOf(call: Call): RomRequest {
  const hullType = call.option('hull-type');
  const known = shippedLibrary().hullTypes.map(type => type.id);
  if (hullType === undefined || !known.includes(hullType))
    throw new UsageError(`--hull-type takes one of: ${known.join(', ')}.`);
  const length = quantityOf(call, 'length', 'm');
  if (length === undefined)
    throw new UsageError('--length is needed, with its unit, such as --length 523ft.');
  const [built, priceYear] = [yearOf(call, 'built'), yearOf(call, 'price-year')];
  const [lightship, tow, acquisition] = [
    quantityOf(call, 'lightship', 't'),
    quantityOf(call, 'tow', 'nmi'),
    dollarsOf(call),
  ];
  return {
    hullType,
    length,
    scope: scopeOf(call),
    today: call.today ?? call.machineDate,
    ...(built === undefined ? {} : { built }),
    ...(priceYear === undefined ? {} : { priceYear }),
    ...(lightship === undefined ? {} : { lightship }),
    ...(tow === undefined ? {} : { tow }),
    ...(acquisition === undefined ? {} : { acquisition }),
  };
}

function scopeOf(call: Call): Scope {
  const text = call.option('scope') ?? 'all';
  const scope = SCOPES.find(candidate => candidate === text);
  if (scope === undefined) throw new UsageError(`--scope takes one of: ${SCOPES.join(', ')}.`);
  return scope;
}

function yearOf(call: Call, name: string): number | undefined {
  const text = call.option(name);
  if (text === undefined) return undefined;
  if (!/^(1[89]|20)\d\d$/.test(text))
    throw new UsageError(`--${name} takes a year such as 2009, not "${text}".`);
  return Number(text);
}

function quantityOf(call: Call, name: string, unit: PlainUnit): Figure | undefined {
  const text = call.option(name);
  if (text === undefined) return undefined;
  const reading = parseQuantity(text, { like: unit, place: `--${name}` });
  if (!isQuantity(reading)) throw new UsageError(`--${name}: ${reading.message} ${reading.remedy}`);
  if (Number(reading.value) <= 0)
    throw new UsageError(`--${name} takes an amount above zero, not "${text}".`);
  return {
    value: reading.value,
    unit: reading.unit,
    basis: 'surveyed',
    source: `given on the command line as ${text}`,
  };
}

function dollarsOf(call: Call): Figure | undefined {
  const text = call.option('acquisition')?.replaceAll(',', '').replace('$', '');
  if (text === undefined) return undefined;
  if (!/^\d{1,10}(\.\d{1,2})?$/.test(text))
    throw new UsageError(`--acquisition takes dollars such as 245000, not "${text}".`);
  const year = yearOf(call, 'price-year');
  return {
    value: text,
    unit: 'USD',
    basis: 'quoted',
    source: 'given on the command line',
    ...(year === undefined ? {} : { year }),
  };
}
