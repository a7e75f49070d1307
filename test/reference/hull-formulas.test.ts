import { describe, expect, it } from 'vitest';
import {
  asbestosPerSteelTonne,
  blockAtDepth,
  bottomShellThickness,
  cubicNumber,
  cuttingConsumption,
  cuttingMetresPerHour,
  displacementFromBlock,
  equipmentNumeral,
  gasPerMetre,
  massBeforeRemoval,
  meanValue,
  openingSetTotals,
  plateAreaPerTonne,
  reductionShare,
  sideShellThickness,
  steelWeight,
  wettedSurfaceHoltrop,
  wettedSurfaceMumford,
} from '../../core/vessel/formulas';

/** Relative distance from the reference value. */
function off(value: number, reference: number): number {
  return Math.abs(value / reference - 1);
}

/** A test ship: L 120, B 16, D 10, T 5 m, Cb 0.60, a full erection of 40 x 2.5 m, houses of 50 x 5 m. */
const ship = {
  length: 120,
  breadth: 16,
  depth: 10,
  draught: 5,
  erections: [{ length: 40, height: 2.5 }],
  houses: [{ length: 50, height: 5 }],
};
const volume = 5760;

describe('take-off formulas give the values worked by hand from their sources', () => {
  it('cubic number 192.0 (Watson, Practical Ship Design, 1998, 4.4.1)', () => {
    expect(cubicNumber(120, 16, 10)).toBe(192);
  });

  it('displacement 5,904.0 t (Watson 1998, eq. 3.1)', () => {
    expect(off(displacementFromBlock(0.6, ship), 5904)).toBeLessThan(1e-4);
  });

  it('equipment numeral 3,302.5 (Watson and Gilfillan 1977)', () => {
    expect(equipmentNumeral(ship)).toBe(3302.5);
  });

  it.each([
    [0.03, 1812.9],
    [0.023, 1389.9],
  ])('steel weight with K %s is %s t (Watson and Gilfillan 1977)', (k, tonnes) => {
    const block = blockAtDepth(0.6, 10, 5);
    expect(block).toBeCloseTo(0.68, 10);
    expect(off(steelWeight(k, 3302.5, block), tonnes)).toBeLessThan(1e-3);
  });

  it('wetted surface 2,172.0 m2 (Denny-Mumford, UFC 4-159-03 eq. 18)', () => {
    expect(off(wettedSurfaceMumford(120, 5, volume), 2172)).toBeLessThan(1e-4);
  });

  it('wetted surface 2,151.2 m2 (Holtrop and Mennen 1982)', () => {
    const hull = { ...ship, block: 0.6, midship: 0.96, waterplane: 2.2 / 3, bulbArea: 0 };
    expect(off(wettedSurfaceHoltrop(hull), 2151.2)).toBeLessThan(1e-3);
  });

  it('31.847 m2 of plate faces for a tonne at 8 mm (2 / (7.85 t))', () => {
    expect(off(plateAreaPerTonne(8), 31.847)).toBeLessThan(1e-4);
  });

  it('shell of 10.49 mm at the side and 12.21 mm at the bottom for L 120 m, frames 650 mm, d/D 0.6', () => {
    const hull = { length: 120, frameSpacing: 650, draughtToDepth: 0.6 };
    expect(off(sideShellThickness(hull), 10.49)).toBeLessThan(5e-3);
    expect(off(bottomShellThickness(hull), 12.21)).toBeLessThan(5e-3);
  });

  it('2 km of 10 mm plate take 124.0 kg of fuel and give 435.4 kg of carbon dioxide (Alang study 2013)', () => {
    const used = cuttingConsumption(2000, 10);
    expect(used.fuel).toBeCloseTo(124, 9);
    expect(used.carbonDioxide).toBeCloseTo(435.4, 9);
    expect(used.paintToAir).toBeCloseTo(18, 9);
    expect(used.paintFallen).toBeCloseTo(26.8, 9);
  });

  it('half an inch at 17.5 in/min is 26.67 m/h with 0.0743 m3 of oxygen a metre at 70 ft3/h (handbook table)', () => {
    expect(off(cuttingMetresPerHour(17.5), 26.67)).toBeLessThan(1e-3);
    expect(off(gasPerMetre(70, 17.5), 0.0743)).toBeLessThan(1e-3);
  });

  it('14 openings of 1.2 x 1.5 m are 25.2 m2 and 75.6 m of cut (geometry)', () => {
    const { area, cutLength } = openingSetTotals(14, 1.2, 1.5);
    expect(area).toBeCloseTo(25.2, 12);
    expect(cutLength).toBeCloseTo(75.6, 12);
  });

  it('asbestos 5.129 and 22.75 kg for each tonne of steel (UK Parliament HC 1336, 2002-03, Annex 1)', () => {
    expect(off(asbestosPerSteelTonne(55, 10723), 5.129)).toBeLessThan(1e-3);
    expect(off(asbestosPerSteelTonne(273, 12000), 22.75)).toBeLessThan(1e-3);
  });

  it('PCB of an 888 ft carrier fell by 13.2 % from 832.2 to 722.6 lb (progress report 2011, p. 20)', () => {
    expect(Math.abs(reductionShare(832.2, 722.6) * 100 - 13.2)).toBeLessThan(0.1);
  });

  it('her cable insulation was 402,444 lb, 182.54 t, before a tenth came off (same report)', () => {
    const pounds = massBeforeRemoval(362_200, 0.1);
    expect(off(pounds, 402_444)).toBeLessThan(5e-4);
    expect(off((pounds * 0.45359237) / 1000, 182.54)).toBeLessThan(5e-4);
  });

  it('scrap bought in 2017 cost 265.03 $/t on average (USGS Minerals Yearbook 2017)', () => {
    expect(off(meanValue(11.9e9, 44.9e6), 265.03)).toBeLessThan(1e-3);
  });

  it('reefing of 358 ships for half a billion is 1,396,648 $ a ship (RAND MR-1377)', () => {
    expect(Math.round(meanValue(0.5e9, 358))).toBe(1_396_648);
  });
});
