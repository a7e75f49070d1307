import { readFileSync } from 'node:fs';
import { produce } from 'immer';
import { expect, test } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { readProject } from '../../core/project';
import { windowRows } from '../../core/views';
import { EvaluationDesk } from '../../renderer/engine/evaluation-desk';
import type { Part } from '../../renderer/engine/protocol';
import { warmUp } from '../../renderer/engine/warm-up';
import { differences, withDifferences } from '../../renderer/engine/sent-project';

const TODAY = '2026-11-24';

test('what differs, sent and put together, is the edited document, and what was not edited stays the same object', () => {
  const before = { a: { x: 1, y: [1, 2, { z: 3 }] }, list: [{ id: 1 }, { id: 2 }, { id: 3 }], gone: 1 };
  const after = {
    ...before,
    a: { ...before.a, y: [1, 2, { z: 4 }] },
    list: [{ id: 0 }, ...before.list.slice(1)],
    more: 2,
  };
  const { gone: _gone, ...edited } = after;
  const sent = structuredClone(differences(before, edited));
  expect(withDifferences(before, sent)).toEqual(edited);
  const shorter = { ...before, list: before.list.filter(one => one.id !== 2) };
  const again = withDifferences(before, structuredClone(differences(before, shorter))) as typeof before;
  expect(again).toEqual(shorter);
  expect(again.list[0]).toBe(before.list[0]);
  expect(again.a).toBe(before.a);
});

test('a view that is made when it is opened comes with the bottom line it agrees with', async () => {
  const project = readProject(readFileSync('demo/wrenfield.reef.json', 'utf8')).project;
  if (project === undefined) throw new Error('the example cannot be read');
  const desk = new EvaluationDesk();
  const parts: Part[] = [];
  const work = {
    say: (part: Part) => void parts.push(part),
    pause: () => Promise.resolve(true),
    now: () => 0,
  };
  const scenario = project.scenarios[0]?.id ?? '';
  const about = { project, scenario, today: TODAY, measures: 'us', document: 'd' } as const;
  const ask = { ...about, view: 'bid', beside: ['scenarios', 'bid'] } as const;
  await desk.evaluate(ask, work);
  for (const part of parts)
    if (part.kind === 'head') expect(Object.keys(part.opened ?? {})).toEqual(['bid', 'scenarios']);
  const sentences = () =>
    parts.flatMap(part => (part.kind === 'head' ? [JSON.stringify(part.opened?.bid?.sentence ?? '')] : []));
  const before = sentences().at(-1) ?? '';
  expect(before).toMatch(/base bid of/);
  parts.length = 0;
  const longer = produce(project, draft => {
    draft.vessel.length.value = '500';
  });
  await desk.evaluate({ ...ask, project: longer }, work);
  const after = sentences().at(-1) ?? '';
  expect(after).toMatch(/base bid of/);
  expect(after).not.toBe(before);
  expect(after).toBe(JSON.stringify(desk.why?.opened('bid')?.sentence));
}, 60_000);

test('an edit is answered by its total first, and settles to what a first evaluation shows', async () => {
  const project = readProject(readFileSync('demo/wrenfield.reef.json', 'utf8')).project;
  if (project === undefined) throw new Error('the example cannot be read');
  const desk = new EvaluationDesk();
  const parts: Part[] = [];
  const work = {
    say: (part: Part) => void parts.push(part),
    pause: () => Promise.resolve(true),
    now: () => 0,
  };
  const scenario = project.scenarios[0]?.id ?? '';
  const ask = { project, scenario, today: TODAY, measures: 'us', document: 'd', view: 'work' } as const;
  await desk.evaluate(ask, work);
  expect(parts.map(part => part.kind)).toEqual(['head', 'head', 'view', 'view', 'view', 'view', 'view']);
  const [opening, settledFirst] = parts.flatMap(part => (part.kind === 'head' ? [part.rows] : []));
  const known = opening?.bottom.filter(cell => cell.isSettling !== true) ?? [];
  expect(known.map(cell => cell.key)).toContain('total');
  expect(settledFirst?.bottom).toEqual(expect.arrayContaining([...known]));
  expect(opening?.bottom.map(cell => cell.key)).not.toContain('upright');
  expect(opening?.work).toEqual(settledFirst?.work);
  parts.length = 0;
  const heavier = produce(project, draft => {
    if (draft.vessel.lightship !== undefined) draft.vessel.lightship.value = '3777';
  });
  await desk.evaluate({ ...ask, project: heavier }, work);
  expect(parts.map(part => part.kind).slice(0, 2)).toEqual(['settling', 'head']);
  const { head } = await desk.lookAtGrant(work);
  expect(head?.openSentence).toMatch(/^\d+ findings are open/);
  expect(await desk.lookAtGrant(work)).toEqual({});
  const told = parts.reduce<object>((rows, part) => ('rows' in part ? { ...rows, ...part.rows } : rows), {});
  const shown = { ...told, ...head };
  const today = heavier.statusDate ?? TODAY;
  const fresh = windowRows(heavier, evaluate(heavier, { today, seed: 1, scenario }), 'us', undefined)?.rows;
  const { changes: _changes, changeWords: _words, schedule: _schedule, ...settled } = { ...fresh };
  expect(shown).toMatchObject(settled);
}, 60_000);

/** The example in a desk whose clock says that settling takes long, after it was opened. */
async function slowDesk() {
  const project = readProject(readFileSync('demo/wrenfield.reef.json', 'utf8')).project;
  if (project === undefined) throw new Error('the example cannot be read');
  const desk = new EvaluationDesk();
  const parts: Part[] = [];
  let [time, pauses, pausesLeft] = [0, 0, Infinity];
  const work = {
    say: (part: Part) => void parts.push(part),
    pause: () => Promise.resolve(++pauses <= pausesLeft),
    now: () => (time += 500),
  };
  const scenario = project.scenarios[0]?.id ?? '';
  const ask = { project, scenario, today: TODAY, measures: 'us', document: 'd', view: 'work' } as const;
  await desk.evaluate(ask, work);
  parts.length = 0;
  const heavier = (tonnes: string) =>
    produce(project, draft => {
      if (draft.vessel.lightship !== undefined) draft.vessel.lightship.value = tonnes;
    });
  return {
    parts,
    /** Evaluates the ship with another lightship; after so many pauses a newer question comes. */
    edit: async (tonnes: string, overtakenAfter = Infinity) => {
      [pauses, pausesLeft] = [0, overtakenAfter];
      await desk.evaluate({ ...ask, project: heavier(tonnes) }, work);
    },
  };
}

test('where settling takes long, total and finish at the new dates come before everything else', async () => {
  const { parts, edit } = await slowDesk();
  await edit('5390');
  expect(parts.map(part => part.kind).slice(0, 3)).toEqual(['settling', 'settling', 'head']);
  const told = parts.map(part =>
    part.kind === 'view' ? [] : part.kind === 'head' ? part.rows.bottom : part.bottom,
  );
  const cell = (part: number, key: string) => told[part]?.find(one => one.key === key);
  expect(cell(0, 'total')?.beside).toBe('dates settling');
  expect(cell(0, 'finish')?.value.absent).toBe(true);
  expect(cell(1, 'total')?.value.text).toBe(cell(2, 'total')?.value.text);
  expect(cell(1, 'finish')?.value.text).toBe(cell(2, 'finish')?.value.text);
}, 60_000);

test('a newer edit ends the scheduling of the one before, and neither is mistaken for the other', async () => {
  const { parts, edit } = await slowDesk();
  await edit('5390', 1);
  expect(parts.map(part => part.kind)).toEqual(['settling']);
  parts.length = 0;
  await edit('4910');
  const other = await slowDesk();
  await other.edit('4910');
  const heads = (of: readonly Part[]) => of.filter(part => part.kind === 'head');
  expect(heads(parts)).toHaveLength(1);
  expect(heads(parts)).toEqual(heads(other.parts));
}, 60_000);

test('working beforehand, while nothing is asked, changes no answer', () => {
  const text = readFileSync('demo/wrenfield.reef.json', 'utf8');
  const rows = () => {
    const { project } = readProject(text);
    if (project === undefined) throw new Error('the example cannot be read');
    const evaluation = evaluate(project, { today: TODAY, seed: 1, upright: false });
    return windowRows(project, evaluation, 'us', undefined)?.rows;
  };
  const before = rows();
  const steps = [...warmUp(TODAY)];
  expect(steps).toHaveLength(2);
  expect(rows()).toEqual(before);
}, 60_000);
