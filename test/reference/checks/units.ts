import { conversionFactor, convert, quantity, type Unit } from '../../../core/units';
import { checksOf, type OutsideCheck } from './check';

const SP811: readonly (readonly [from: Unit, to: Unit, factor: string])[] = [
  ['ft', 'm', '0.3048000'],
  ['mi', 'm', '1609.344'],
  ['nmi', 'm', '1852.000'],
  ['ft2', 'm2', '0.09290304'],
  ['ft3', 'm3', '0.02831685'],
  ['gal', 'm3', '0.003785412'],
  ['bbl', 'm3', '0.1589873'],
  ['lb', 'kg', '0.4535924'],
  ['long-ton', 'kg', '1016.047'],
  ['short-ton', 'kg', '907.1847'],
];
const exact = (value: string, from: Unit, to: Unit) => () => convert(quantity(value, from), to).value;

export const unitChecks: readonly OutsideCheck[] = [
  ...checksOf(
    'NIST SP 811 (2008), appendix B.8, to seven figures',
    SP811.map(([from, to, factor]) => [
      `One ${from} in ${to}`,
      factor,
      () => Number(conversionFactor(from, to)).toPrecision(7),
    ]),
  ),
  ...checksOf('NIST Handbook 44, appendix C', [
    ['A long ton in pounds', '2240', exact('1', 'long-ton', 'lb')],
    ['A short ton in pounds', '2000', exact('1', 'short-ton', 'lb')],
    ['A barrel in gallons', '42', exact('1', 'bbl', 'gal')],
    ['1,728 gallons in cubic feet', '231', exact('1728', 'gal', 'ft3')],
  ]),
];
