import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvFiles } from '../../../core/papers';
import { readProject, writeProject } from '../../../core/project';
import { WhyDesk } from '../../../core/views';
import { returnedPaper } from '../../../electron/paper-returns';
import { HostProblem } from '../../../electron/problem';
import { demoProject, evaluated } from '../../core/evaluation/demo';
import { HOSTILE } from '../../core/papers/hostile';

const project = demoProject();
const text = writeProject(project);
const csv = csvFiles(evaluated(project)).find(({ name }) => name === 'inputs')?.text ?? '';
const WAGE = '/rates/trades/abatement-worker/wage';

/** The inputs as they come back, one row of them changed. */
function returned(change: (fields: string[]) => string[]): string {
  return csv
    .split('\r\n')
    .map(line => (line.includes(WAGE) ? change(line.split(',')).join(',') : line))
    .join('\r\n');
}

async function looked(content: string) {
  const base64 = Buffer.from(content).toString('base64');
  return returnedPaper({ name: 'inputs.csv', base64, text }, undefined);
}

describe('a paper that came back to the window', () => {
  test('is looked through: what it would change in words, and the text of the document with it', async () => {
    const amount = returned(fields => fields.map((field, i) => (i === 2 ? '31.5' : field)));
    const answer = await looked(amount);
    expect(answer.preview?.changes).toMatchObject([{ after: '31.5', unit: '$ per h', basis: 'judgement' }]);
    expect(answer.preview?.summary).toContain('asks for 1 change');
    const [total] = answer.preview?.results ?? [];
    expect(total?.before.text).not.toBe(total?.after);
    const desk = new WhyDesk(evaluated(project), 'us');
    const known = [...(answer.preview?.changes ?? []), ...(answer.preview?.results ?? [])];
    expect(known.map(({ before }) => desk.answer(before.why ?? '')?.title)).toEqual([
      'Wage: Abatement worker',
      'Total',
      'Total',
      'Finish',
    ]);
    const taken = readProject(answer.text ?? '').project;
    expect(taken?.rates.overrides).toMatchObject([
      { at: 'trades/abatement-worker/wage', figure: { value: '31.5' } },
    ]);
    // The check sum is of the text, which has changed.
    const others = { rates: undefined, sha256: undefined };
    expect({ ...taken, ...others }).toEqual({ ...project, ...others });
  }, 60_000);

  test('without a change there is nothing to take', async () => {
    const answer = await looked(csv);
    expect(answer.preview?.changes).toEqual([]);
    expect(answer.text).toBeUndefined();
    expect(answer.preview?.summary).toContain('asks for no change');
  }, 60_000);

  test('a file that is none of ours is told in findings, and no text is given', async () => {
    const answer = await looked('a,b\r\n1,2\r\n');
    expect(answer).toMatchObject({ findings: [{ code: 'take-back/not-ours' }] });
    expect(answer.text).toBeUndefined();
    const book = await returnedPaper({ name: 'x.xlsx', base64: '', text }, undefined);
    expect(book).toMatchObject({ findings: [{ code: 'take-back/cannot-be-read' }] });
  });

  test('a document that cannot be read is a problem in words', async () => {
    await expect(returnedPaper({ name: 'x.csv', base64: '', text: '' }, undefined)).rejects.toThrow(
      HostProblem,
    );
  });

  test('texts that could be taken for something to run are each refused at their row, and nothing is taken', async () => {
    const { data } = Papa.parse<string[]>(csv.replace(/^\ufeff/, ''), { newline: '\r\n' });
    const rows = data.map((row, i) => {
      const hostile = HOSTILE[i - 1];
      return hostile === undefined ? row : row.map((field, column) => (column === 2 ? hostile : field));
    });
    const answer = await looked(Papa.unparse(rows, { newline: '\r\n' }));
    expect(answer.preview?.changes).toEqual([]);
    expect(answer.text).toBeUndefined();
    expect(answer.findings.filter(({ code }) => code === 'take-back/not-an-amount').length).toBe(
      HOSTILE.length,
    );
  }, 60_000);
});
