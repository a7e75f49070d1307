import { describe, expect, it } from 'vitest';
import { grantView } from '../../../core/evaluation';
import { grantBook, type FundingPlan, type FundingSource } from '../../../core/funding';
import { demoProject, evaluated } from '../evaluation/demo';
import { line } from '../cash-flow/lines';
import { COUNTY, FEDERAL, FORMS, PLAN, RULES, usd } from './plans';

const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };
const wages = (month: string, dollars: number) =>
  line({
    id: month,
    amounts: { ...none, labour: usd(dollars) },
    months: [{ month, amount: usd(dollars) }],
  });
const lines = [wages('2027-01', 10), wages('2027-03', 100), wages('2027-05', 1000)];
const told = (source: Partial<FundingSource>, plan: Partial<FundingPlan>) => {
  const sources = [{ ...FEDERAL, ...source }, COUNTY];
  return grantBook({ lines, plan: { ...PLAN, ...plan, sources } }, RULES, FORMS).findings.filter(
    ({ code }) => code === 'funding/before-award',
  );
};

// 2 CFR 200.458: cost before the award is allowable only with written approval of the Federal awarding agency.
describe('cost from before an award', () => {
  it('is told with its amount, once an award, where the award is charged with it', () => {
    expect(told({}, { awardDate: '2027-04-15' })).toMatchObject([
      {
        weight: 'warns',
        place: '/funding/sources/federal',
        message:
          '$110.00 of the cost charged to Federal reef grant is spent in months before the award date, 2027-04-15',
        meaning: 'a Federal award bears it only with written approval of the awarding agency',
        rule: '2 CFR 200.458; 2 CFR 200.460',
      },
    ]);
  });
  it('is told where it falls before the period, and so on no form', () => {
    const period = { start: '2027-03-01', finish: '2028-12-31' };
    expect(told({ period }, { awardDate: '2027-03-01' }).map(({ message }) => message)).toEqual([
      '$10.00 is spent before the period of Federal reef grant begins on 2027-03-01',
    ]);
    expect(told({ period }, { awardDate: '2027-04-01' }).map(({ message }) => message)).toEqual([
      '$100.00 of the cost charged to Federal reef grant is spent in months before the award date, 2027-04-01; $10.00 is spent before the period of Federal reef grant begins on 2027-03-01',
    ]);
  });
  it('of a State grant is for the grantor to say, by no federal rule', () => {
    const [found] = told({ kind: 'state' }, { awardDate: '2027-04-01' });
    expect(found?.meaning).toBe('whether the grant bears it is for the grantor to say');
    expect(found).not.toHaveProperty('rule');
    expect(found?.remedy).toMatch(/^ask the grantor /);
  });
  it('is not told where there is none, or where the grantor agreed to it', () => {
    expect(told({}, {})).toEqual([]);
    expect(told({ preAwardApproved: true }, { awardDate: '2027-04-01' })).toEqual([]);
  });
});

describe('an award date of before the agreement in the schedule', () => {
  const project = demoProject();
  const evaluation = evaluated(project);
  const found = (awardDate: string) => {
    const { funding } = project;
    if (funding === undefined) throw new Error('the example has a grant');
    const view = grantView({ ...evaluation, project: { ...project, funding: { ...funding, awardDate } } });
    return view.findings.filter(({ code }) => code === 'funding/award-before-agreement');
  };

  it('is told where the agreement in the schedule ends later, with what is charged before it', () => {
    const [one, ...more] = found(project.calendars.start);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ weight: 'warns', place: '/funding/awardDate' });
    expect(one?.message).toMatch(/the work item Grant agreement ends on \d{4}-\d\d-\d\d\.$/);
    expect(one?.meaning).toMatch(/^\$[\d,.]+ of the cost on the forms is spent in months before that; /);
  });
  it('is told of a later date too, until the agreement ends', () => {
    const finish = /(\d{4}-\d\d-\d\d)\.$/.exec(found(project.calendars.start)[0]?.message ?? '')?.[1] ?? '';
    const [one] = found('2027-01-05');
    expect(one?.message).toBe(
      `The award date, 2027-01-05, comes first, but in the schedule the work item Grant agreement ends on ${finish}.`,
    );
    expect(found(finish)).toEqual([]);
  });
  it('is not told of an award that was made before the project', () => {
    expect(found('2026-12-01')).toEqual([]);
  });
});
