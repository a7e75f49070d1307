import { readFileSync, statSync } from 'node:fs';
import type { Finding } from '../../core/base';
import { evaluate, type Evaluation } from '../../core/evaluation';
import { LARGEST, readProject, type Project } from '../../core/project';
import { UsageError, type Call, type Outcome } from './command';

/** The one file a command is about. */
export function fileOf(call: Call): string {
  const [file, ...more] = call.files;
  if (file === undefined) throw new UsageError('Name the project file, such as demo/example.reef.json.');
  if (more.length > 0) throw new UsageError(`One file at a time: "${more.join('", "')}" is too many.`);
  return file;
}

/** Reads a project file; a fault of the file is a finding with its place, never an exception. */
export function loadProject(file: string): {
  readonly project?: Project;
  readonly findings: readonly Finding[];
} {
  const bytes = readBytes(file);
  if (!(bytes instanceof Uint8Array)) return { findings: [bytes] };
  try {
    return readProject(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return { findings: [notText(file)] };
  }
}

function readBytes(file: string): Uint8Array | Finding {
  try {
    if (statSync(file).size > LARGEST)
      return { ...notThere(file, 'it is larger than any project'), code: 'document/too-large' };
    return readFileSync(file);
  } catch (error) {
    return notThere(file, error instanceof Error && 'code' in error ? String(error.code) : String(error));
  }
}

function notThere(file: string, why: string): Finding {
  const reasons: Readonly<Record<string, string>> = {
    ENOENT: 'there is no such file',
    EACCES: 'it may not be read',
    EISDIR: 'it is a folder',
  };
  return {
    code: 'document/cannot-be-read',
    weight: 'blocks',
    place: file,
    message: `The file could not be opened: ${reasons[why] ?? why}.`,
    meaning: 'Nothing was read.',
    remedy: 'Check the name and the folder.',
  };
}

function notText(file: string): Finding {
  return {
    code: 'document/not-text',
    weight: 'blocks',
    place: file,
    message: 'The file is not text in UTF-8.',
    meaning: 'It is not opened and not changed.',
    remedy: 'Open a backup copy, or save it as UTF-8.',
  };
}

/** Evaluates the scenario a command asks for, or tells why not. */
export function evaluated(
  call: Call,
  run: (evaluation: Evaluation) => Outcome | Promise<Outcome>,
): Outcome | Promise<Outcome> {
  const { project, findings } = loadProject(fileOf(call));
  if (project === undefined) return { json: { findings }, lines: [], findings };
  const result = evaluate(project, { today: todayOf(call, project), seed: 1, ...scenarioOf(call, project) });
  return run({ ...result, findings: [...findings, ...result.findings] });
}

/** Today: what --today says, else the status date of the document, else the machine's date. */
export function todayOf(call: Call, project: Project): string {
  return call.today ?? project.statusDate ?? call.machineDate;
}

export function scenarioOf(call: Call, project: Project): { scenario?: string } {
  const id = call.option('scenario');
  if (id === undefined) return {};
  if (project.scenarios.some(scenario => scenario.id === id)) return { scenario: id };
  throw new UsageError(
    `There is no scenario "${id}". There are: ${project.scenarios.map(scenario => scenario.id).join(', ')}.`,
  );
}
