// A program that writes what the example comes to: estimate, schedule, calendar file and tables.
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { evaluate } from '../../core/evaluation';
import { calendarFile, csvFiles, evaluationJson } from '../../core/papers';
import { readProject } from '../../core/project';

const { project } = readProject(fs.readFileSync('demo/wrenfield.reef.json', 'utf8'));
if (project === undefined) throw new Error('the example does not open');
for (const { id } of project.scenarios) {
  const evaluation = evaluate(project, { today: '2026-11-24', seed: 1, schedules: 20, scenario: id });
  const papers = [
    JSON.stringify(evaluationJson(evaluation)),
    calendarFile(evaluation) ?? '',
    ...csvFiles(evaluation).map(({ text }) => text),
  ];
  const hash = createHash('sha256').update(papers.join('\n')).digest('hex');
  console.log(`${id} ${evaluation.estimate?.schedule.finish ?? ''} ${hash}`);
}
