import { describe, expect, test } from 'vitest';
import { grantView, type Evaluation } from '../../../core/evaluation';
import type { SharedRow } from '../../../core/funding';
import { grantFindings, WhyDesk, windowRows } from '../../../core/views';
import { factTable } from '../../../core/views/compare/facts';
import { summaryOf } from '../../../core/views/window';
import { awkward, DEMO } from './awkward';
import { screened } from './everything';
import { amountOf } from './laws';

const desk = () => new WhyDesk(awkward('the example'), 'us');
function award() {
  const [found] = grantView(awkward('the example')).book?.awards ?? [];
  if (found?.form.kind !== 'SF-424A') throw new Error('the example has an award on the form of programs');
  return { ...found, form: found.form };
}
/** Cents that the rows of a derivation add up to. */
const added = (name: string) =>
  Math.round(
    (desk().answer(name)?.rows ?? []).reduce((sum, row) => sum + 100 * (amountOf(row.value.text) ?? NaN), 0),
  );
const valueOf = (name: string) => Math.round(100 * (amountOf(desk().answer(name)?.value.text) ?? NaN));

describe('behind the sections of the form', () => {
  const sum = (of: (row: SharedRow) => number) => award().rows.reduce((all, row) => all + of(row), 0);
  const federal = (row: SharedRow) => row.shares[award().source.id] ?? 0;
  const name = (...parts: readonly string[]) => `grant:section|${award().source.id}|${parts.join('|')}`;

  test('stand the shares of its rows: those of the grant, or what the others bear', () => {
    const [grants, others] = [sum(federal), sum(row => row.allowable - federal(row))];
    expect(grants).toBeGreaterThan(others);
    expect([added(name('E', '0')), added(name('D', '0', 'federal'))]).toEqual([grants, grants]);
    expect([added(name('C', 'total')), added(name('D', '0', 'nonFederal'))]).toEqual([others, others]);
    expect(added(name('A', 'total', 'federal'))).toBe(grants);
    expect(added(name('A', 'total', 'nonFederal'))).toBe(others);
    expect(added(name('A', 'total', 'total'))).toBe(sum(row => row.allowable));
    const activity = award().rows[0]?.activityId ?? '';
    const own = (row: SharedRow) => (row.activityId === activity ? federal(row) : 0);
    expect(added(name('A', activity, 'federal'))).toBe(sum(own));
  });

  test('stands what the form says at the place', () => {
    const { sectionC, sectionD, sectionE } = award().form;
    expect(['0', '1', '2', 'total'].map(line => valueOf(name('C', line)))).toEqual([
      ...[sectionC.applicant, sectionC.state, sectionC.other],
      sectionC.total,
    ]);
    const quarters = ['0', '1', '2', '3'];
    expect(quarters.map(line => valueOf(name('D', line, 'federal')))).toEqual([...sectionD.federal]);
    expect(quarters.map(line => valueOf(name('D', line, 'nonFederal')))).toEqual([...sectionD.nonFederal]);
    expect(sectionE.map((_, line) => valueOf(name('E', String(line))))).toEqual([...sectionE]);
  });

  test('stand the rows that each line is made of, with what is not direct under its own', () => {
    const line = (id: string, of: (row: SharedRow) => boolean) => {
      const rows = award().rows.filter(of);
      expect(added(`grant:class|${award().source.id}|${id}`), id).toBe(
        rows.reduce((all, row) => all + row.allowable, 0),
      );
    };
    line('k', () => true);
    line('i', row => row.classId !== 'j');
    for (const id of new Set(award().rows.map(row => row.classId))) line(id, row => row.classId === id);
    const [row] = award().rows;
    const within = `grant:class|${award().source.id}|${row?.classId ?? ''}|${row?.activityId ?? ''}`;
    expect(added(within)).toBe(
      award()
        .rows.filter(one => one.classId === row?.classId && one.activityId === row.activityId)
        .reduce((all, one) => all + one.allowable, 0),
    );
  });
});

test('each line that ties out opens its part of the form, of the estimate, and the difference', () => {
  const table = desk().opened('funding')?.awards[0]?.tieOut;
  for (const { classId } of award().tieOut) {
    const group = table?.rows.find(row => row.id === `class-${classId}`);
    for (const part of ['form', 'estimate', 'difference'])
      expect(group?.cells[part]?.why).toBe(`grant:tie|${award().source.id}|${classId}|${part}`);
    const told = desk().answer(`grant:tie|${award().source.id}|${classId}|difference`);
    expect(told?.value.text).toBe(group?.cells['difference']?.text);
  }
  for (const row of award().rows) {
    const shown = table?.rows.find(one => one.id === row.id);
    expect(shown?.cells['form']?.why).toBe(`grant:row|${award().source.id}|${row.id}`);
  }
});

test('a source that the books do not have is called by its key and bears nothing', () => {
  const told = desk().answer('grant:source|nobody');
  expect([told?.title, told?.value.text]).toEqual(['nobody', '0.00']);
  expect(told?.rows.map(row => row.words)).toEqual(['no line has any of it']);
});

describe('the bottom line', () => {
  const bottomOf = (evaluation: Evaluation) =>
    windowRows(DEMO, evaluation, 'us', undefined)?.rows.bottom ?? [];
  test('tells total, budget, finish, the share not yet checked and the findings, each opening', () => {
    const evaluation = awkward('the example');
    const { estimate, findings } = evaluation;
    const summary = estimate === undefined ? undefined : summaryOf(estimate);
    const whole = (cents = NaN) => `$${Math.floor((cents + 50) / 100).toLocaleString('en-US')}`;
    const finish = estimate?.schedule.finish ?? '';
    const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
    const dated = `${Number(finish.slice(8))} ${months[Number(finish.slice(5, 7)) - 1] ?? ''} ${finish.slice(0, 4)}`;
    const share = `${((summary?.uncheckedShare ?? NaN) * 100).toFixed(1)} %`;
    expect(bottomOf(evaluation).map(({ key, label, value }) => [key, label, value.text, value.why])).toEqual([
      ['total', 'Total', whole(summary?.total?.cents), 'sums/total'],
      ['budget', 'With contingency', whole(summary?.budget?.cents), 'sums/budget'],
      ['finish', 'Finish', dated, 'schedule:finish'],
      ['unchecked', 'Not yet checked', share, 'basis:unchecked'],
      ['findings', 'Findings', `${findings.length + grantFindings(evaluation).length} open`, undefined],
    ]);
  });

  test('tells the verdict of the screen with the heel beside it', () => {
    const { upright } = screened();
    const cell = bottomOf(screened()).find(one => one.key === 'upright');
    const { verdict = '', greatestHeelDegrees: heel } = upright ?? {};
    expect(cell).toMatchObject({
      label: 'Upright screen',
      value: { text: `${verdict.charAt(0).toUpperCase()}${verdict.slice(1)}`, why: 'upright:verdict' },
      beside: heel === undefined ? 'screening' : `heel ${Math.round(heel)}°, screening`,
      verdict,
    });
  });

  test('says that a figure is withheld where a finding blocks one', () => {
    const finding = { code: 'a/b', place: '/a', message: 'm', remedy: 'r' } as const;
    const found = (weight: 'blocks' | 'warns'): Evaluation => ({
      ...awkward('the example'),
      findings: [{ ...finding, weight }],
    });
    const beside = (weight: 'blocks' | 'warns') => bottomOf(found(weight)).at(-1);
    const open = `${1 + grantFindings(found('blocks')).length} open`;
    expect(beside('blocks')).toMatchObject({ value: { text: open }, beside: 'some withhold a figure' });
    expect(beside('warns')).not.toHaveProperty('beside');
  });
});

test('side by side stands the verdict of each screen, and a dash for one that was not run', () => {
  const one = { ...screened(), letter: 'A' };
  const other: Evaluation = {
    ...awkward('the example'),
    letter: 'B',
    scenario: { id: 'other', title: 'Other', changes: [] },
  };
  const { rows } = factTable({ evaluations: [one, other], bridges: [], risks: [] }, one.scenario.id, 'us');
  const [verdict, permittable] = rows;
  expect([verdict?.id, verdict?.cells['what']?.text]).toEqual(['verdict', 'Upright screen']);
  expect(verdict?.cells[one.scenario.id]).toEqual({ text: one.upright?.verdict, why: 'upright:verdict' });
  expect(verdict?.cells['other']).toEqual({ text: '–' });
  expect(permittable?.cells['other']).toEqual({ text: 'yes' });
  const finish = rows.find(row => row.id === 'finish');
  expect(finish?.cells[one.scenario.id]?.why).toBe('schedule:finish');
  expect(finish?.cells['other']?.why).toBeUndefined();
});
