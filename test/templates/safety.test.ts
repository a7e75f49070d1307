import { describe, expect, it } from 'vitest';
import { shipped } from './library';
import { finishedBefore, pairwise, planOf, scenarioOf } from './scenarios';

const library = shipped();
const cases = library.hullTypes.flatMap((type, index) =>
  pairwise(library)
    .filter((_, set) => set % 5 === index % 5)
    .map(options => scenarioOf(library, type, 1955, options)),
);
const plans = cases.map(scenario => planOf(library, scenario));

describe('order of dangerous work', () => {
  it('puts a chemist’s certificate before all hot work (29 CFR 1915.14)', () => {
    for (const plan of plans)
      for (const item of plan.items.filter(candidate => candidate.gasFree === 'needs'))
        expect(finishedBefore(plan, item.id).has('gas-free-certificate'), item.id).toBe(true);
  });

  it('opens the gas-free state in the very zone of the hot work', () => {
    for (const plan of plans)
      for (const item of plan.items.filter(candidate => candidate.gasFree === 'needs')) {
        const before = finishedBefore(plan, item.id);
        const opened = plan.items.some(
          other => other.gasFree === 'opens' && other.place === item.place && before.has(other.id),
        );
        expect(opened, item.id).toBe(true);
      }
  });

  it('puts clean tanks and bilges before the certificate', () => {
    for (const plan of plans) {
      const before = finishedBefore(plan, 'gas-free-certificate');
      expect(['tank-inspection', 'bilge-cleaning'].filter(id => !before.has(id))).toEqual([]);
    }
  });

  it('puts survey and notice before anything disturbs asbestos (40 CFR 61.145)', () => {
    const asbestos = new Set(library.materials.filter(m => m.family === 'asbestos').map(m => m.id));
    for (const plan of plans)
      for (const item of plan.items.filter(candidate => candidate.meets.some(id => asbestos.has(id)))) {
        const enclosure = finishedBefore(plan, 'asbestos-enclosure');
        expect(enclosure.has('asbestos-notice') && enclosure.has('materials-report'), item.id).toBe(true);
        expect(
          item.after.some(after => /asbestos|lagging/.test(after.item)),
          item.id,
        ).toBe(true);
      }
  });

  it('cleans oil and strips the coating before the shell is opened', () => {
    for (const plan of plans) {
      const before = finishedBefore(plan, 'shell-openings-cut');
      expect(
        ['tank-inspection', 'bilge-cleaning', 'asbestos-clearance', 'stability-study'].filter(
          id => !before.has(id),
        ),
      ).toEqual([]);
    }
  });

  it('sinks only after the release, the safety zone and the arrival inspection', () => {
    for (const plan of plans) {
      const sinking = plan.items.find(item => ['sinking-by-flooding', 'scuttling-firm'].includes(item.id));
      const before = finishedBefore(plan, sinking?.id ?? '');
      const wanted = [
        'release-decision',
        'safety-zone-request',
        'arrival-inspection',
        'permit-in-hand',
        'acceptance-letter',
      ];
      expect(wanted.filter(id => !before.has(id))).toEqual([]);
    }
  });

  it('opens the wreck to divers only after a survey', () => {
    for (const plan of plans)
      expect(finishedBefore(plan, 'public-information').has('dive-safety-survey')).toBe(true);
  });
});

describe('cautions', () => {
  const missing = (wanted: string, of: (item: (typeof library.items)[number]) => boolean) =>
    library.items.filter(item => of(item) && !item.cautions.includes(wanted)).map(item => item.id);

  it('stand at all hot work, all asbestos work and all explosives', () => {
    expect(missing('hot-work', item => item.hazard === 'hot-work')).toEqual([]);
    expect(missing('asbestos', item => item.hazard === 'asbestos-enclosure')).toEqual([]);
    expect(
      missing('explosives', item =>
        item.when.some(
          use => 'option' in use && use.option === 'sinking-method' && use.is.includes('explosive'),
        ),
      ),
    ).toEqual([]);
  });

  it('stand at all work inside tanks', () => {
    expect(missing('confined-spaces', item => item.place === 'tanks')).toEqual([]);
  });

  it('stand at all work that meets a PCB goal, on the tow and at the site on the sinking day', () => {
    const pcb = new Set(library.materials.filter(m => m.family === 'pcb').map(m => m.id));
    expect(missing('pcb', item => item.meets.some(id => pcb.has(id)))).toEqual([]);
    expect(missing('towing', item => item.place === 'route')).toEqual([]);
    expect(missing('sinking-day', item => item.stage === 'sinking' && item.place === 'site')).toEqual([]);
  });

  it('end with the words that the program replaces no law and no competent person', () => {
    expect(library.cautionClosing).toMatch(/^Planning aid only\./);
    expect(library.cautionClosing).toMatch(/law .*competent persons; this program replaces none of them\.$/);
  });
});

describe('explosives', () => {
  it('are costed only: no item tells of charges, weights or firing', () => {
    const text = library.items
      .filter(item => item.cautions.includes('explosives'))
      .map(item => `${item.title} ${item.does} ${JSON.stringify(item.wastes)}`)
      .join(' ');
    expect(text).not.toMatch(/charge|detonat|kilogram|\bkg\b|cord|fuse|placement of/i);
  });
});
