import fs from 'node:fs';
import { describe, expect, test } from 'vitest';
import { compareCommand } from '../../electron/cli/commands/compare';
import { riskCommand } from '../../electron/cli/commands/risk';
import type { Call, Command } from '../../electron/cli/command';

const PAGE = fs.readFileSync('demo/README.md', 'utf8');

/** What a command prints of the example, as a person would read it. */
async function printed(command: Command, options: Readonly<Record<string, string>>): Promise<string> {
  const call: Call = {
    files: ['demo/wrenfield.reef.json'],
    option: name => options[name],
    flag: () => false,
    today: '2026-11-24',
    machineDate: '2026-11-24',
  };
  return (await command.run(call)).lines.join('\n');
}

/** The part that a pattern takes out of a text. */
function found(text: string, pattern: RegExp): string {
  const [, part] = pattern.exec(text) ?? [];
  if (part === undefined) throw new Error(`${String(pattern)} is not there`);
  return part;
}

const dollars = (text: string) => `$${Math.round(Number(text)).toLocaleString('en-US')}`;

describe('the page of the example says what the commands print', () => {
  test('plan and finish of every scenario, and what the shifts save and cost', async () => {
    const text = await printed(compareCommand, {});
    const rows = [...text.matchAll(/^([A-D]) {2}(.*?) {2,}([\d.]+) {2}(\d{4}-\d\d-\d\d)/gm)];
    expect(rows.length).toBe(4);
    for (const [, letter = '', title = '', total = '', finish = ''] of rows) {
      const day = new Date(`${finish}T00:00:00Z`).toLocaleDateString('en-GB', {
        day: 'numeric',
        month: 'long',
        year: 'numeric',
        timeZone: 'UTC',
      });
      expect(PAGE).toContain(`| ${letter} | ${title} | ${dollars(total)} | ${day} |`);
    }
    const early = text.slice(text.indexOf('From A to D'));
    const saved = dollars(found(early, /How long things take and when +-([\d.]+)/));
    const order = found(text, /Order by usual weights: (.*)/);
    expect(order).toMatch(/^D .*, A /);
    const [first = '', second = ''] = order.split(', ').map(one => one.split(' ')[1]);
    expect(PAGE).toContain(`By the plan D comes first with a score of ${first} and A second with ${second}.`);
    expect(text).toContain('Left out: the chance to be done in time.');
    const wages = dollars(found(early, /Rates and price date +([\d.]+)/));
    expect(PAGE).toContain(`saves ${saved} of time and costs ${wages} more`);
  });

  test('who comes first once the trials are run', async () => {
    const runs = await printed(compareCommand, { trials: '200' });
    expect(found(runs, /Order by usual weights: (.*)/)).toMatch(/^A .*, D /);
    expect(runs).toContain('Low budget that 80 in 100 runs stay under');
    expect(PAGE).toContain('that 80 in 100 runs keep, A comes first and D second');
  }, 300_000);

  test('how sure A and D are', async () => {
    const [a, d] = await Promise.all(
      ['fishing-reef', 'early-sinking'].map(scenario =>
        printed(riskCommand, { scenario, seed: '1', threads: '1' }),
      ),
    );
    const eighty = (text = '') => found(text, /^Cost .*P80 (\$[\d,]+)/m);
    expect(PAGE).toContain(`80 in 100 runs of A stay under ${eighty(a)}, of D under ${eighty(d)}.`);
    const plan = Number(found(a ?? '', /The plan figure is (\d+) in 100/));
    expect(PAGE).toContain(`The plan of A is passed in ${100 - plan} of 100 runs`);
    const missed = (text = '') => found(text, /(\d+) in 100 runs miss its end/);
    expect(PAGE).toContain(`In ${found(d ?? '', /Season +(\d+) in 100/)} of 100 runs she misses that season`);
    expect(PAGE).toContain(
      `in ${missed(d)} of 100 the award is over before the last work after the sinking is done`,
    );
    expect(PAGE).toContain(`A misses the award in ${missed(a)} of 100.`);
  });
});
