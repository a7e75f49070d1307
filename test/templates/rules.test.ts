import { describe, expect, it } from 'vitest';
import { presenceOf } from '../../core/materials';
import { shipped } from './library';
import { driversOf, scenarioOf } from './scenarios';

const library = shipped();
const trip = (id: string) => library.tripPoints.find(point => point.id === id);

describe('price index', () => {
  const cpi = new Map(library.indices.indices[0]?.years.map(row => [row.year, row]));
  const factor = (year: number) => Number(cpi.get(2025)?.value) / Number(cpi.get(year)?.value);

  it.each([
    // US Bureau of Labor Statistics, CPI-U annual averages (12-month means), 1982-84 = 100
    [2023, 304.702],
    [2024, 313.689],
    [2000, 172.2],
  ])('is the annual mean of the Bureau of Labor Statistics for %i', (year, value) => {
    expect(Number(cpi.get(year)?.value)).toBeCloseTo(value, 3);
  });

  it.each([
    // Ratios of the same published annual means, six decimals
    [2000, 1.869588],
    [2006, 1.597003],
    [2009, 1.500641],
    [2016, 1.34139],
    [2022, 1.100077],
  ])('brings prices of %i to 2025', (year, expected) => {
    expect(factor(year)).toBeCloseTo(expected, 6);
  });

  it('says that 2025 is a mean of eleven months and 2026 of five', () => {
    expect([cpi.get(2025)?.months, cpi.get(2026)?.months]).toEqual([11, 5]);
  });

  it('falls in 2009 as it did', () => {
    expect(Number(cpi.get(2009)?.value)).toBeLessThan(Number(cpi.get(2008)?.value));
  });
});

describe('thresholds', () => {
  it.each([
    ['pcb-bulk-product', '50', '1', 'at or above'], // 40 CFR 761.3: 50 ppm or more
    ['asbestos-content', '0.01', '1', 'above'], // 40 CFR 61 subpart M appendix A: more than 1 percent
    ['asbestos-pipe', '260', 'ft', 'at or above'], // 40 CFR 61.145(a)
    ['asbestos-surface', '160', 'ft2', 'at or above'],
    ['asbestos-volume', '35', 'ft3', 'at or above'],
    ['asbestos-notice', '10', 'work-day', 'below'], // 40 CFR 61.145(b)
    ['leach-lead', '5', '1', 'at or above'], // 40 CFR 261.24 table 1, mg/L
    ['leach-barium', '100', '1', 'at or above'],
    ['leach-mercury', '0.2', '1', 'at or above'],
    ['generator-very-small', '100', 'kg', 'above'], // 40 CFR 262.13
    ['generator-large', '1000', 'kg', 'at or above'],
    ['generator-acute', '1', 'kg', 'above'],
    ['pcb-landfill-notice', '15', 'day', 'below'], // 40 CFR 761.62(b)
  ])('%s is %s %s and trips %s', (id, value, unit, trips) => {
    const point = trip(id);
    expect([point?.figure.value, point?.figure.unit, point?.trips]).toEqual([value, unit, trips]);
  });

  it('each cite a rule, a consequence and the day of the last comparison', () => {
    const weak = library.tripPoints.filter(
      point =>
        point.rule.length < 5 || point.consequence.length < 5 || point.figure.checkedOn !== point.checkedOn,
    );
    expect(weak.map(point => point.id)).toEqual([]);
  });
});

describe('waste streams', () => {
  it('each say by which rule they count or do not count', () => {
    expect(library.rateBook.streams.filter(stream => stream.countsReason.length < 12).map(s => s.id)).toEqual(
      [],
    );
  });

  it('do not count used oil, universal waste, lead-acid batteries, PCB or asbestos (40 CFR 262.13(c))', () => {
    const counting = library.rateBook.streams.filter(stream => stream.counts).map(stream => stream.id);
    expect(counting.sort()).toEqual(['chromated-water', 'paint-hazardous']);
  });
});

describe('eras', () => {
  const likely = (id: string, years: { built: number; lastRefit?: number; lastCoating?: number }) => {
    const material = library.materials.find(candidate => candidate.id === id);
    return material && presenceOf(material, years)?.likely;
  };

  it('follow the dates at which uses ended', () => {
    expect(likely('thermal-insulation', { built: 1975 })).toBe(1);
    expect(likely('thermal-insulation', { built: 1978 })).toBeLessThan(1);
    expect(likely('thermal-insulation', { built: 1981 })).toBe(0);
    expect(likely('pcb-cable', { built: 1979 })).toBeGreaterThan(0);
    expect(likely('pcb-cable', { built: 1980 })).toBe(0);
  });

  it('take tributyltin away by the last coating and nothing else', () => {
    const ship = { built: 1970, lastRefit: 1990 };
    const differ = library.materials.filter(
      material =>
        presenceOf(material, { ...ship, lastCoating: 1999 })?.likely !==
        presenceOf(material, { ...ship, lastCoating: 2005 })?.likely,
    );
    expect(differ.map(material => material.id)).toEqual(['tbt-antifouling']);
    expect(likely('tbt-antifouling', { ...ship, lastCoating: 2005 })).toBe(0);
  });

  it('only shrink what a ship carries as it is built later', () => {
    for (const material of library.materials)
      material.eras.slice(1).forEach((era, index) => {
        const earlier = material.eras[index];
        expect(era.from, material.id).toBeGreaterThan(earlier?.from ?? 0);
        expect(era.share.likely, material.id).toBeLessThanOrEqual(earlier?.share.likely ?? 0);
      });
  });

  it('remove only drivers of a material with an era rule when the ship is thirty years younger', () => {
    const years = (built: number) => ({ built, lastRefit: 1990, lastCoating: 1999 });
    for (const type of library.hullTypes) {
      const of = (built: number) =>
        driversOf(library, { ...scenarioOf(library, type, built), plant: 'steam' }, years(built));
      const [old, young] = [of(1955), of(1985)];
      const decided = new Set(library.materials.filter(m => m.decidedBy === 'built').map(m => m.id));
      const gone = library.drivers.filter(driver => old.has(driver.id) && !young.has(driver.id));
      expect(gone.length).toBeGreaterThan(0);
      expect(gone.filter(driver => !decided.has(driver.material ?? '')).map(d => d.id)).toEqual([]);
      expect(library.drivers.filter(driver => young.has(driver.id) && !old.has(driver.id))).toEqual([]);
    }
  });
});
