import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Finding } from '../../../core/base';
import { dollarsOf, moneyText, type Money } from '../../../core/money';
import type { ProposedEdit, TakenBack } from '../../../core/papers';
import { writeProject } from '../../../core/project';
import { UsageError, type Command, type Outcome } from '../command';
import { loadProject } from '../load';

export const takeBackCommand: Command = {
  name: 'take-back',
  words:
    'Takes figures changed in a workbook or CSV file back: a preview, and with --out a new project file.',
  usage: 'reefwright take-back FILE WORKBOOK [--out FILE] [--json]',
  options: {
    out: {
      type: 'string',
      words: 'the project file to write with the changes; it must not exist',
      sample: 'FILE',
    },
  },
  run: async call => {
    const [file, paper, ...more] = call.files;
    if (file === undefined || paper === undefined || more.length > 0)
      throw new UsageError('Name the project file and the workbook or CSV file that came back.');
    const out = call.option('out');
    if (out !== undefined && existsSync(out)) throw new UsageError(`${out} exists already: name a new file.`);
    if (!existsSync(paper)) throw new UsageError(`There is no file ${paper}.`);
    const { project, findings } = loadProject(file);
    if (project === undefined) return { json: { findings }, lines: [], findings };
    const { takeBackFile } = await import('../../papers/take-back-file');
    const reader = new URL('./paper-reader.js', import.meta.url);
    const outcome = await takeBackFile(
      project,
      { name: basename(paper), bytes: readFileSync(paper) },
      reader,
    );
    const all = [...findings, ...outcome.findings];
    if (outcome.taken === undefined) return { json: { findings: all }, lines: [], findings: all };
    if (out !== undefined) writeFileSync(out, writeProject(outcome.taken.project), { flag: 'wx' });
    return preview(outcome.scenario ?? '', outcome.taken, all, out);
  },
};

function preview(
  scenario: string,
  { edits, totals, finish }: TakenBack,
  findings: readonly Finding[],
  out: string | undefined,
): Outcome {
  const money = (amount: Money | undefined) => (amount === undefined ? undefined : dollarsOf(amount));
  const words = (amount: Money | undefined) => (amount === undefined ? 'absent' : moneyText(amount));
  const json = {
    scenario,
    changes: edits.map(changeJson),
    total: {
      before: money(totals.before),
      atSameDates: money(totals.atSameDates),
      after: money(totals.after),
    },
    finish,
    ...(out !== undefined && { file: out }),
    findings,
  };
  const lines = [
    `${edits.length} changes of scenario ${scenario}; they hold in all scenarios`,
    ...edits.map(({ cell, address, value }) => {
      const unit = cell.unit === '1' ? '' : ` ${cell.unit}`;
      return `  ${address.padEnd(14)} ${cell.title}: ${cell.value ?? 'worked out'} -> ${value ?? 'worked out'}${unit}`;
    }),
    `Total ${words(totals.before)} -> ${words(totals.after)} (at the dates of the paper ${words(totals.atSameDates)})`,
    out === undefined ? 'Nothing was written: give --out FILE to take the changes.' : `wrote ${out}`,
  ];
  return { json, lines, findings };
}

function changeJson({ cell, address, value, basis, source }: ProposedEdit): object {
  return {
    cell: address,
    key: cell.key,
    kind: cell.kind,
    title: cell.title,
    ...(cell.value !== undefined && { from: cell.value }),
    ...(value !== undefined && { to: value }),
    unit: cell.unit,
    basis,
    source,
    movesDates: cell.movesDates,
  };
}
