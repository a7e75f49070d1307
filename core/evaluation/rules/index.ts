import type { Finding } from '../../base';
import type { Project } from '../../project';
import { coatingFindings, siteFindings } from './coating-and-water';
import { furtherFindings } from './divers-and-steel';
import { leachFindings } from './leach-class';
import { noticeFindings } from './notice-findings';
import type { NoticeParts } from './notices';
import { validityFindings } from './validity';

export { classedItems, materialOf } from './leach-class';
export { datedNotices, type DatedNotice, type NoticeParts } from './notices';
export { EPISODIC_NOTICE, noticeRelationships } from './notice-relationships';

/** What the rules make of a scenario, each with the rule it rests on: notices with their dates, coating, water, wastes, ranges. */
export function ruleFindings(project: Project, parts: NoticeParts): Finding[] {
  const { input, items, work, schedule } = parts;
  return [
    ...leachFindings(project, input.library),
    ...noticeFindings(parts),
    ...coatingFindings(project, input, items),
    ...siteFindings(project, input, work, schedule),
    ...furtherFindings(project, parts),
    ...validityFindings(work),
  ];
}
