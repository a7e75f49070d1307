import { generatorCategory, generatorLimits } from '../../../core/disposal';
import { shippedLibrary } from '../../../core/evaluation';
import {
  asbestosDuty,
  asksForLeachTest,
  failsLeachTest,
  isAsbestos,
  isPcbBulkProduct,
  pcbNoticeBy,
} from '../../../core/materials';
import { checksOf, share, type OutsideCheck } from './check';

const library = shippedLibrary();
const points = library.tripPoints;
const limits = generatorLimits(points);
const category =
  (hazardous: number, acute = 0) =>
  () =>
    generatorCategory(limits, { hazardous, acute });
const yes = (value: boolean) => (value ? 'yes' : 'no');
const amounts =
  (pipeFeet: string, squareFeet: string, cubicFeet: string, cut = false) =>
  () => {
    const { regulated, notice } = asbestosDuty(points, { pipeFeet, squareFeet, cubicFeet }, cut);
    return `${regulated ? 'regulated' : 'below'}, ${notice ? 'notice' : 'no notice'}`;
  };
const cpi = new Map(library.indices.indices[0]?.years.map(row => [row.year, Number(row.value)]));
const to2025 = (year: number) => () => (cpi.get(2025) ?? 0) / (cpi.get(year) ?? 1);

export const ruleChecks: readonly OutsideCheck[] = [
  ...checksOf('40 CFR 761.3, PCB bulk product waste', [
    ['49.9 ppm is PCB bulk product waste', 'no', () => yes(isPcbBulkProduct(points, '49.9'))],
    ['50.0 ppm is PCB bulk product waste', 'yes', () => yes(isPcbBulkProduct(points, '50.0'))],
  ]),
  ...checksOf('40 CFR 761.62(b), notice to the landfill 15 days before', [
    ['Notice for a first load on 2027-03-16', '2027-03-01', () => pcbNoticeBy(points, '2027-03-16')],
  ]),
  ...checksOf('40 CFR 61.141 and 61.145(a), asbestos', [
    ['1.0 % is asbestos-containing', 'no', () => yes(isAsbestos(points, '0.01'))],
    ['1.01 % is asbestos-containing', 'yes', () => yes(isAsbestos(points, '0.0101'))],
    ['259 ft, 159 ft2, 34 ft3', 'below, no notice', amounts('259', '159', '34')],
    ['260 ft alone', 'regulated, notice', amounts('260', '0', '0')],
    ['160 ft2 alone', 'regulated, notice', amounts('0', '160', '0')],
    ['35 ft3 alone', 'regulated, notice', amounts('0', '0', '35')],
    ['Below all, a load-bearing member cut', 'below, notice', amounts('259', '159', '34', true)],
  ]),
  ...checksOf('40 CFR 261.24 table 1 and the twenty-times screen of the leach test', [
    ['Lead of 4.9 mg/L fails', 'no', () => yes(failsLeachTest(points, 'lead', '4.9'))],
    ['Lead of 5.0 mg/L fails', 'yes', () => yes(failsLeachTest(points, 'lead', '5.0'))],
    ['Total lead of 99 mg/kg asks for the test', 'no', () => yes(asksForLeachTest(points, 'lead', '99'))],
    ['Total lead of 100 mg/kg asks for the test', 'yes', () => yes(asksForLeachTest(points, 'lead', '100'))],
  ]),
  ...checksOf('40 CFR 262.13, generator category by calendar month', [
    ['100 kg', 'very small', category(100)],
    ['100.1 kg', 'small', category(100.1)],
    ['999.9 kg', 'small', category(999.9)],
    ['1,000 kg', 'large', category(1000)],
    ['500 kg with 1.2 kg acute', 'large', category(500, 1.2)],
    ['50 kg with 1 kg acute', 'very small', category(50, 1)],
  ]),
  ...checksOf('US Bureau of Labor Statistics, CPI-U, US city average, annual means', [
    ['Prices of 2000 at 2025', 1.869588, to2025(2000), share(5e-7)],
    ['Prices of 2006 at 2025', 1.597003, to2025(2006), share(5e-7)],
    ['Prices of 2009 at 2025', 1.500641, to2025(2009), share(5e-7)],
    ['Prices of 2016 at 2025', 1.34139, to2025(2016), share(5e-7)],
    ['Prices of 2022 at 2025', 1.100077, to2025(2022), share(5e-7)],
    ['Annual mean of 2023', 304.702, () => cpi.get(2023), share(1e-6)],
    ['Annual mean of 2024', 313.689, () => cpi.get(2024), share(1e-6)],
    ['Annual mean of 2000', 172.2, () => cpi.get(2000), share(1e-6)],
  ]),
];
