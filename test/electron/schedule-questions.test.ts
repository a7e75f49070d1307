import { describe, expect, test } from 'vitest';
import { UsageError, type Call } from '../../electron/cli/command';
import { scheduleCommand } from '../../electron/cli/commands/schedule';

const DEMO = 'demo/wrenfield.reef.json';

async function run(options: Readonly<Record<string, string | true>>) {
  const call: Call = {
    files: [DEMO],
    option: name => (typeof options[name] === 'string' ? options[name] : undefined),
    flag: name => options[name] === true,
    today: '2026-11-24',
    machineDate: '2026-11-24',
  };
  const { json, lines } = await scheduleCommand.run(call);
  return { lines, json: JSON.parse(JSON.stringify(json)) as Record<string, unknown> };
}

describe('the command schedule answers more than dates', () => {
  test('the same document as its own baseline has moved nothing', async () => {
    const { json } = await run({ baseline: DEMO });
    expect(json['againstBaseline']).toEqual({ finish: 0, changed: [], added: [], removed: [] });
  });

  test('two starts a month apart give two totals, the first that of the estimate, and the cheaper is named', async () => {
    const { json } = await run({ starts: '2' });
    const { points, isComplete } = json['startCurve'] as {
      points: { start: string; total: number }[];
      isComplete: boolean;
    };
    expect([points.length, isComplete]).toEqual([2, true]);
    expect(points[0]?.start).toBe('2027-01-04');
    const least = Math.min(...points.map(({ total }) => total));
    expect(json['cheapestStart']).toMatchObject({ total: least });
  });

  test('what it does not know is wrong use', async () => {
    for (const wrong of [{ starts: '0' }, { starts: 'many' }, { baseline: 'package.json' }]) {
      await expect(run(wrong)).rejects.toThrow(UsageError);
    }
  });
});
