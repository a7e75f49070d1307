import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import {
  asbestosDuty,
  asbestosNoticeBy,
  asksForLeachTest,
  clearanceOver,
  failsLeachTest,
  isAsbestos,
  isPcbBulkProduct,
  pcbNoticeBy,
  pcbRouteDuty,
  tbtPresumption,
  totalThatAsks,
  uncheckedTripPoints,
} from '../../../core/materials';

const points = shippedLibrary().tripPoints;
const amounts = (pipeFeet: string, squareFeet: string, cubicFeet: string) => ({
  pipeFeet,
  squareFeet,
  cubicFeet,
});

describe('PCB (40 CFR 761.3 and 761.62)', () => {
  test('49.9 ppm is no bulk product waste, 50.0 ppm is', () => {
    expect(isPcbBulkProduct(points, '49.9')).toBe(false);
    expect(isPcbBulkProduct(points, '50.0')).toBe(true);
  });
  test('the State landfill takes notice 15 days before the first load, the risk-based route an approval', () => {
    expect(pcbRouteDuty(points, 'state-landfill')).toMatchObject({ noticeDays: 15, approvalFirst: false });
    expect(pcbRouteDuty(points, 'tsca-landfill').noticeDays).toBeUndefined();
    expect(pcbRouteDuty(points, 'risk-based').approvalFirst).toBe(true);
    expect(pcbNoticeBy(points, '2027-03-16')).toBe('2027-03-01');
  });
});

describe('asbestos (40 CFR 61.145)', () => {
  test('1.0 % is not asbestos-containing, 1.01 % is', () => {
    expect(isAsbestos(points, '0.01')).toBe(false);
    expect(isAsbestos(points, '0.0101')).toBe(true);
  });
  test('259 ft, 159 ft² and 34 ft³ together are below; 260 ft, 160 ft² or 35 ft³ alone is enough', () => {
    expect(asbestosDuty(points, amounts('259', '159', '34'), false)).toMatchObject({
      regulated: false,
      notice: false,
    });
    for (const own of [amounts('260', '0', '0'), amounts('0', '160', '0'), amounts('0', '0', '35')])
      expect(asbestosDuty(points, own, false)).toMatchObject({ regulated: true, notice: true });
  });
  test('below all amounts with a load-bearing bulkhead cut the notice is still required', () => {
    expect(asbestosDuty(points, amounts('259', '159', '34'), true)).toMatchObject({
      regulated: false,
      notice: true,
    });
  });
  test('work starting Monday 2027-03-15 needs the notice by 2027-03-01, Monday 2027-07-12 by 2027-06-28', () => {
    expect(asbestosNoticeBy(points, '2027-03-15')).toBe('2027-03-01');
    expect(asbestosNoticeBy(points, '2027-07-12')).toBe('2027-06-28');
  });
});

describe('the leach test (40 CFR 261.24, SW-846 method 1311)', () => {
  test('lead at 4.9 mg/L passes, at 5.0 it fails', () => {
    expect(failsLeachTest(points, 'lead', '4.9')).toBe(false);
    expect(failsLeachTest(points, 'lead', '5.0')).toBe(true);
  });
  test('total lead of 99 mg/kg clears, 100 asks for the test', () => {
    expect(asksForLeachTest(points, 'lead', '99')).toBe(false);
    expect(asksForLeachTest(points, 'lead', '100')).toBe(true);
  });
  test('the screen is twenty times the table of the rule for every metal', () => {
    const table = {
      lead: 5,
      chromium: 5,
      cadmium: 1,
      arsenic: 5,
      mercury: 0.2,
      selenium: 1,
      silver: 5,
      barium: 100,
    };
    for (const [metal, limit] of Object.entries(table))
      expect(Number(totalThatAsks(points, metal as keyof typeof table))).toBe(20 * limit);
  });
});

describe('tributyltin', () => {
  test('a last coating before 2003 presumes it unless sealed; without a date nobody can tell', () => {
    expect(tbtPresumption(points, 2002, false)).toBe('presumed');
    expect(tbtPresumption(points, 2003, false)).toBe('not presumed');
    expect(tbtPresumption(points, 1999, true)).toBe('not presumed');
    expect(tbtPresumption(points, undefined, false)).toBe('cannot tell');
  });
});

describe('clearance', () => {
  test('the permit’s figure governs, practice stands in for it, and the State’s depth rule is apart', () => {
    expect(clearanceOver(points, { depth: '118', top: '68', required: '50' }).enough).toBe(true);
    expect(clearanceOver(points, { depth: '118', top: '68.1' })).toMatchObject({
      enough: false,
      byPractice: true,
    });
    expect(clearanceOver(points, { depth: '118', top: '59' }).generalPermit).toBe(true);
    expect(clearanceOver(points, { depth: '118', top: '59.1' }).generalPermit).toBe(false);
    expect(clearanceOver(points, { depth: '11.9', top: '5.95' }).generalPermit).toBe(false);
  });
});

describe('the day a rule was checked', () => {
  test('24 months to the day is in time, a day more is a finding', () => {
    const [point] = points;
    if (point === undefined) throw new Error('no trip-points');
    const checked = [{ ...point, checkedOn: '2026-11-24' }];
    expect(uncheckedTripPoints(checked, '2028-11-24')).toEqual([]);
    expect(uncheckedTripPoints(checked, '2028-11-25')).toHaveLength(1);
  });
});
