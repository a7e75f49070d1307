import { describe, expect, test } from 'vitest';
import { decisionAbout, estimateWorkbook, reportHtml } from '../../../core/papers';
import {
  dateWords,
  dollarsAndCents,
  numberWords,
  signedDollars,
  wholeDollars,
} from '../../../core/papers/report/words';
import { pageStyle } from '../../../core/papers/report/style';
import { compareScenarios, summaryOf, type RiskFacts } from '../../../core/scenario';
import { fromCents } from '../../../core/money';
import { summarise, type Evaluation } from '../../../core/evaluation';
import { FIRST_HULL_TYPE, startingProject, type Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from '../evaluation/demo';
import { bareProject, words } from './odd-documents';

const project = demoProject();
const evaluations = project.scenarios.map(scenario => evaluated(project, scenario.id));
const totalOf = (one: Evaluation) => summarise(estimated(one)).total?.cents ?? Number.NaN;
const [cheapest, ...dearer] = evaluations.toSorted((a, b) => totalOf(a) - totalOf(b));
const dearest = dearer.at(-1);
if (cheapest === undefined || dearest === undefined) throw new Error('the example has scenarios');

/** A simulation of a scenario in which the grant ends first in a share of the runs. */
function facts({ scenario }: Evaluation, missesGrant: number, p80 = 6e6): RiskFacts {
  return {
    scenario: scenario.id,
    trials: 2,
    seed: 1,
    p50: p80 - 1e5,
    p80,
    p90: p80 + 1e5,
    finishP50: '2029-01-01',
    finishP80: '2029-06-01',
    missesGrant,
    drivers: [{ title: 'Market', share: 0.5 }],
    cost: Float64Array.of(p80 - 1e5, p80),
  };
}

/** The same evaluations of a project that says otherwise what the board weighs or has chosen. */
function chosen(decision: NonNullable<Project['decision']>): Evaluation[] {
  return evaluations.map(one => ({ ...one, project: { ...one.project, decision } }));
}

function reasonsOf(about: readonly Evaluation[], risks: readonly RiskFacts[] = []): readonly string[] {
  const [first] = about;
  if (first === undefined) throw new Error('nothing is compared');
  return decisionAbout(first, compareScenarios(about, risks)).recommended?.reasons ?? [];
}

describe('why a scenario is recommended', () => {
  test('the dearest is said to cost more than the others, by their letters', () => {
    const reasons = reasonsOf(chosen({ weights: [], chosen: dearest.scenario.id }));
    expect(reasons[0]).toMatch(/^By the plan it costs more than [A-Z](, [A-Z])*( and [A-Z])?\.$/);
    for (const { letter } of dearer.slice(0, -1)) expect(reasons[0]).toContain(letter);
    expect(reasons.join(' ')).toMatch(/The board has chosen it; by the usual weights [A-Z] comes first\./);
  });

  test('one that costs more may come first when the board weighs something else', () => {
    const decision: Project['decision'] = { weights: [{ criterion: 'finish', weight: '1' }] };
    const done = (one: Evaluation, finish: string): Evaluation => {
      const estimate = estimated(one);
      return {
        ...one,
        project: { ...one.project, decision },
        estimate: { ...estimate, schedule: { ...estimate.schedule, finish } },
      };
    };
    const reasons = reasonsOf([done(cheapest, '2030-01-01'), done(dearest, '2028-01-01')]);
    expect(reasons[0]).toBe(
      `By the plan it costs more than ${cheapest.letter}, yet it comes first when all that counts is weighed.`,
    );
    expect(reasons).toContain('By the plan none of the others is done earlier.');
    expect(reasons.join(' ')).toContain('It comes first by the board’s weights');
  });

  test('of several in which the grant is lost as seldom the first by letter is named, and nothing when all are alike', () => {
    const own = { weights: [], chosen: dearest.scenario.id };
    const others = evaluations.filter(one => one !== dearest);
    const [first] = others.map(({ letter }) => letter).sort();
    const even = chosen(own);
    const risksOf = (share: number) => [
      facts(dearest, 0.5),
      ...others.toReversed().map(one => facts(one, share)),
    ];
    expect(reasonsOf(even.toReversed(), risksOf(0.1))).toContain(
      `But the grant ends before it is done in 50 of 100 runs; with ${first}, in 10.`,
    );
    expect(reasonsOf(even, risksOf(0.5)).join(' ')).not.toContain('of 100 runs');
  });
});

describe('beside the recommendation', () => {
  const [a, , , d] = evaluations;
  if (a === undefined || d === undefined) throw new Error('the example has four scenarios');
  const run = [
    { ...facts(a, 0.25, 5e6), chanceOfDeadline: 1 },
    { ...facts(d, 0.6, 7e6), chanceOfDeadline: 0.1, anotherSeason: 0.91 },
  ];

  test('stands what the trials say against its dates, and on the page of another what they say of that', () => {
    const comparison = compareScenarios([a, d], run);
    const against =
      'Of 100 runs 91 need another season for the tow or the sinking, 90 end after the last date and 60 end after the grant.';
    expect(decisionAbout(a, comparison).recommended).toMatchObject({
      letter: 'A',
      besides: 'Of 100 runs 25 end after the grant.',
    });
    const text = words(reportHtml(d, comparison) ?? '');
    expect(text).toMatch(/By the plan the ship is sunk by [A-Z][a-z]+ \d+, \d{4} ?\. Of 100 runs 91/);
    expect(text).toContain(against);
    expect(text).toContain('Of 100 runs 25 end after the grant.');
    // What stands beside the recommendation is not said twice.
    const own = words(reportHtml(a, comparison) ?? '');
    expect(own.split('Of 100 runs 25').length).toBe(2);
  });

  test('stands scenario by scenario how many runs end after the last date and after the grant', () => {
    const text = words(reportHtml(a, compareScenarios([a, d], run)) ?? '');
    const row = (letter: string, said: string) =>
      expect(text).toMatch(new RegExp(`${letter} [$\\d,]+ [$\\d,]+ [A-Z][a-z]+ \\d+, \\d{4} ${said}`));
    expect(text).toContain('End after the last date, of 100 End after the grant, of 100');
    row('A', '0 25');
    row('D', '90 60');
    const bare = run.map(({ chanceOfDeadline: _late, missesGrant: _grant, ...rest }) => rest);
    expect(words(reportHtml(a, compareScenarios([a, d], bare)) ?? '')).not.toContain('End after the');
  });

  test('before the trials stands that nobody has looked at the chance to be in time', () => {
    expect(decisionAbout(a, compareScenarios([a, d])).recommended?.besides).toBe(
      'This rests on the plan. The chance to be done in time has not been looked at for every scenario yet.',
    );
  });

  test('before a ship is entered stands that the starting ship is ranked', () => {
    const started = startingProject(a.library, {
      reader: 'comparison',
      hullType: FIRST_HULL_TYPE,
      title: 'New comparison',
      start: '2027-01-04',
    });
    const [one, ...others] = started.scenarios.map(({ id }) => evaluated(started, id));
    if (one === undefined) throw new Error('a comparison starts with scenarios');
    expect(decisionAbout(one, compareScenarios([one, ...others])).recommended?.besides).toMatch(
      /^No ship has been entered yet: this ranks the scenarios of a starting ship, not of yours\. This rests/,
    );
  });
});

describe('a comparison in the report and in the workbook', () => {
  const [a, b] = evaluations;
  if (a === undefined || b === undefined) throw new Error('the example has two scenarios');
  const bare = (one: Evaluation): Evaluation => evaluated(withoutContingency, one.scenario.id);
  const withoutContingency: Project = { ...project, contingency: { policy: 'percentage' } };
  const [c, d] = [bare(a), bare(b)];

  test('without a contingency and without a simulation tells the totals alone', () => {
    const text = words(reportHtml(c, compareScenarios([c, d])) ?? '');
    const difference = totalOf(d) - totalOf(c);
    expect(text).toContain(`Together the totals differ by ${signedDollars(fromCents(difference))}.`);
    expect(text).not.toContain('with a budget of');
  });

  test('without a contingency leads on by what 80 of 100 runs add', () => {
    const comparison = compareScenarios([c, d], [facts(c, 0, 6e6), facts(d, 0, 7e6)]);
    const text = words(reportHtml(c, comparison) ?? '');
    expect(text).toContain('with the risk in 80 of 100 runs');
    expect(text).toContain('it is +$1,000,000.00.');
    expect(text).toContain('There is no budget yet to cover that.');
    const paper = estimateWorkbook(c, comparison);
    const sheet = paper?.sheets.find(({ name }) => name === 'Comparison')?.cells ?? [];
    const titles = new Map(
      sheet.flatMap(({ row, content }) => (content.kind === 'text' ? [[content.text, row]] : [])),
    );
    const row = titles.get('Risk: what 80 of 100 simulated runs add beyond each total');
    expect(sheet.find(cell => cell.row === row && cell.column === 2)?.content).toMatchObject({
      kind: 'money',
      value: (1e8 - (totalOf(d) - totalOf(c))) / 100,
    });
    const risk = paper?.sheets.find(({ name }) => name === 'Risk')?.cells ?? [];
    expect(risk.map(({ content }) => (content.kind === 'text' ? content.text : ''))).not.toContain(
      '80 of 100 runs less the budget of this workbook, USD',
    );
  });

  test('says whether the budget covers 80 of 100 runs', () => {
    const budget = summaryOf(a)?.budget?.cents ?? Number.NaN;
    const said = (p80: number) => words(reportHtml(a, compareScenarios([a, b], [facts(a, 0, p80)])) ?? '');
    expect(said(budget / 100)).toContain('The budget covers that.');
    expect(said(budget / 100 + 0.01)).toContain('The budget does not cover that.');
  });

  test('names the weights of the board when it has set them', () => {
    const own = chosen({ weights: [{ criterion: 'cost', weight: '1' }] });
    const [first] = own;
    expect(words((first && reportHtml(first, compareScenarios(own))) ?? '')).toContain(
      'The board set these weights.',
    );
  });
});

describe('pages with little to tell', () => {
  const plain = evaluated(bareProject());

  test('without a finding say so, with a few name them all', () => {
    expect(words(reportHtml({ ...plain, findings: [] }) ?? '')).toContain('Findings None.');
    const [one] = plain.findings;
    if (one === undefined) throw new Error('a new project has findings');
    const text = words(reportHtml({ ...plain, findings: [one] }) ?? '');
    expect(text).toContain(one.remedy);
    expect(text).not.toContain('more stand in the workbook');
  });

  test('the workbook says that there is no finding, and leaves what a finding does not say empty', () => {
    const sheetOf = (findings: Evaluation['findings']) =>
      estimateWorkbook({ ...plain, findings })?.sheets.find(({ name }) => name === 'Findings')?.cells ?? [];
    const textsOf = (findings: Evaluation['findings']) =>
      sheetOf(findings).map(({ content }) => (content.kind === 'text' ? content.text : ''));
    expect(textsOf([])).toContain('None.');
    const bare = {
      code: 'a/b',
      weight: 'notes' as const,
      place: '/x',
      message: 'So it is.',
      remedy: 'Look.',
    };
    expect(textsOf([bare])).toEqual(expect.arrayContaining(['So it is.', 'Look.', '']));
  });

  test('a schedule without an activity of the board has no date for it', () => {
    const estimate = estimated(plain);
    const { schedule } = estimate;
    const activities = schedule.activities.filter(({ title }) => !/board/i.test(title));
    const text = words(
      reportHtml({ ...plain, estimate: { ...estimate, schedule: { ...schedule, activities } } }) ?? '',
    );
    expect(text).toContain('The schedule has no activity of the board.');
  });

  test('a sinking without work that waits for weather has no day', () => {
    const estimate = estimated(plain);
    const items = estimate.items.map(({ window: _window, ...item }) => item);
    const text = words(reportHtml({ ...plain, estimate: { ...estimate, items } }) ?? '');
    expect(text).toContain('No day of sinking is known. By the plan the last activity ends on');
  });
});

describe('figures in words', () => {
  test('below nothing have a true minus, and what is absent says where to look', () => {
    expect(dollarsAndCents(fromCents(-123456))).toBe('\u2212$1,234.56');
    expect(wholeDollars(-1234.5)).toBe('\u2212$1,235');
    expect(numberWords(-1234.5)).toBe('\u22121,234.5');
    for (const said of [dollarsAndCents(undefined), numberWords(undefined), dateWords(undefined)])
      expect(said).toBe('absent, see Findings');
  });

  test('words at the foot of a page cannot end the text of its style', () => {
    const style = pageStyle('a"; } body { display: none; } \\ \u{1f6a2}', 'plain, (words): 1-2');
    expect(style).toContain('"plain, (words): 1-2"');
    expect(style).toContain('"a\\22 ; \\7d  body \\7b  display: none; \\7d  \\5c  \\1f6a2 "');
  });
});

describe('the first page of a budget that the runs have set', () => {
  const contingency = { policy: 'confidence' as const, confidence: '0.8' };
  const byRuns = { ...cheapest, project: { ...project, contingency } };
  const text = words(reportHtml(byRuns, compareScenarios([byRuns], [facts(cheapest, 0)])) ?? '');

  test('says so, and not that the budget covers what it was set by', () => {
    expect(text).toContain('with a contingency set by the simulated runs.');
    expect(text).toContain('The budget was set so.');
    expect(text).toContain('with it the budget covers the cost of 80 of 100 simulated runs.');
    expect(text).not.toMatch(/missed before|The budget covers that|follows the policy/);
  });

  test('tells what comes after the sinking in all, and by year', () => {
    const { inTotal = 0, perYear = 0, years } = decisionAbout(byRuns).afterSinking;
    const [all, yearly] = [inTotal, perYear].map(cents => dollarsAndCents(fromCents(cents)));
    expect(years).toBeGreaterThan(1);
    expect(text.replaceAll(' ,', ',')).toContain(
      `What comes after the sinking costs ${all} over ${years} years; spread evenly, ${yearly} a year. This is part of the total.`,
    );
  });
});
