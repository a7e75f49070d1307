import { at, type Finding, keepingParts } from '../base';
import type { Json } from './json-text';
import { readInParts } from './known-parts';
import { projectSchema, type Change, type Project, type Scenario } from './schema';
import { issueFinding } from './wording';

/** What a scenario may not change: the document's frame and the scenarios themselves. */
const FIXED = new Set(['format', 'version', 'sha256', 'scenarios', 'sample', 'reader', 'title']);

/**
 * Lays a scenario over the project: only what differs. A step of a path names a field, a place in a list, or the
 * `id` (or `item`, `driver`) of an entry; a new entry of a list is added under a name that is not there yet.
 * @returns the project as the scenario sees it, or findings naming the change that does not fit.
 */
export function withScenario(
  project: Project,
  scenario: Scenario,
): { project?: Project; findings: Finding[] } {
  const { sections, findings: misfits } = changedSections(project, scenario);
  const findings = [...misfits];
  if (findings.length > 0) return { findings };
  const document = { ...project, ...sections };
  const known = readInParts(document);
  if (known !== undefined) return { project: known, findings };
  const parsed = projectSchema.safeParse(structuredCloneJson(document), { reportInput: true });
  if (parsed.success) return { project: parsed.data, findings };
  const fault = at(parsed.error.issues, 0);
  const { path, message } = fault;
  const place = '/' + path.join('/');
  const index = scenario.changes.findIndex(change =>
    place.startsWith(change.at.split('/').slice(0, 2).join('/')),
  );
  const change = scenario.changes[index] ?? scenario.changes[0];
  if (change === undefined || readInParts({ ...project }) === undefined)
    return { findings: [issueFinding(fault)] };
  return {
    findings: [changeFinding(scenario, Math.max(index, 0), change, `${place}: ${message}`)],
  };
}

/**
 * Why a project that was edited is not one that could be opened again: the first thing that does not fit, in the
 * project or in what the scenario makes of it. Only what was not read before is looked at.
 */
export function misfit(project: Project, scenario: string): Finding | undefined {
  if (readInParts({ ...project }) === undefined) {
    const { error } = projectSchema.safeParse(project, { reportInput: true });
    const issue = error?.issues[0];
    return issue && issueFinding(issue);
  }
  const chosen = project.scenarios.find(({ id }) => id === scenario);
  return chosen && withScenario(project, chosen).findings[0];
}

/** The sections that a scenario changes, as it sees them; the same copies while it and they say what they said. */
const changedSections = keepingParts(
  24,
  (project: Project, scenario: Scenario) => [scenario, ...sectionsOf(project, scenario).flat()],
  (project, scenario) => {
    const sections = structuredCloneJson(Object.fromEntries(sectionsOf(project, scenario)));
    const findings = scenario.changes.flatMap((change, index) => {
      const fault = applyChange(sections, change);
      return fault === undefined ? [] : [changeFinding(scenario, index, change, fault)];
    });
    return { sections, findings };
  },
);

/** The sections that a scenario changes, as the project has them. */
function sectionsOf(project: Project, scenario: Scenario): [string, unknown][] {
  const changed = new Set(scenario.changes.map(change => change.at.split('/')[1]));
  return Object.entries(project).filter(([key]) => changed.has(key));
}

/** A deep copy of plain JSON data. */
export function structuredCloneJson(value: unknown): { [key: string]: Json } {
  return JSON.parse(JSON.stringify(value)) as { [key: string]: Json };
}

/** What holds fields or entries. */
type Holder = Json[] | { [key: string]: Json };

function applyChange(document: { [key: string]: Json }, change: Change): string | undefined {
  const steps = change.at.split('/').slice(1);
  if (FIXED.has(at(steps, 0))) return 'a scenario cannot change this field';
  let place: Holder = document;
  for (const step of steps.slice(0, -1)) {
    const found = entry(place, step);
    if (found === undefined || found === null || typeof found !== 'object')
      return `there is nothing at "${step}"`;
    place = found;
  }
  put(place, at(steps, steps.length - 1), change.to);
  return undefined;
}

function entry(place: Holder, step: string): Json | undefined {
  if (Array.isArray(place)) return place[indexOf(place, step)];
  return Object.hasOwn(place, step) ? place[step] : undefined;
}

function indexOf(list: readonly Json[], step: string): number {
  const named = list.findIndex(
    item =>
      item !== null &&
      typeof item === 'object' &&
      !Array.isArray(item) &&
      [item['id'], item['item'], item['driver'], item['at']].includes(step),
  );
  return named >= 0 ? named : /^\d+$/.test(step) ? Number(step) : -1;
}

function put(place: Holder, step: string, value: Json): void {
  if (!Array.isArray(place)) {
    place[step] = value;
    return;
  }
  const index = indexOf(place, step);
  if (index >= 0 && index < place.length) place[index] = value;
  else place.push(value);
}

function changeFinding(scenario: Scenario, index: number, change: Change, fault: string): Finding {
  return {
    code: 'scenario/change-does-not-fit',
    weight: 'blocks',
    place: `/scenarios/${scenario.id}/changes/${index}`,
    message: `Scenario "${scenario.title}" changes ${change.at}, but ${fault}.`,
    meaning: 'This scenario is not estimated.',
    remedy: 'Correct the path or the value of the change, or remove it.',
  };
}
