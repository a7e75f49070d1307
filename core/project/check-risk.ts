import type { Finding } from '../base';
import { policyOf } from '../risk';
import type { Library } from '../work';
import { knownItems } from './check-items';
import type { Project } from './schema';

/** What the schema cannot see in the risk section and the contingency: names of nothing, ranges out of order. */
export function checkRisk(project: Project, library: Library): Finding[] {
  const { risk } = project;
  if (risk === undefined) return contingencyFindings(project);
  const items = new Set(knownItems(project, library).map(item => item.id));
  return [
    ...contingencyFindings(project),
    ...risk.register.flatMap(event => [
      ...[...event.costs, ...event.delays, ...(event.mitigation ? [event.mitigation] : [])].flatMap(
        ({ item }) => (item === undefined || items.has(item) ? [] : [unknownItem(event.id, item)]),
      ),
      ...(event.costs.length + event.delays.length === 0 ? [withoutImpact(event.id, event.title)] : []),
    ]),
    ...risk.ranges.flatMap(({ given, low, high }, i) =>
      Number(low) <= Number(high) ? [] : [outOfOrder(i, given, low, high)],
    ),
    ...twins(
      '/risk/register',
      risk.register.map(event => event.id),
    ),
    ...twins(
      '/risk/ranges',
      risk.ranges.map(range => range.given),
    ),
    ...risk.correlations.flatMap(({ first, second }, i) =>
      first === second
        ? [
            blocked(
              `/risk/correlations/${i}`,
              `${first} is correlated with itself.`,
              'Name two different ranges or drivers.',
            ),
          ]
        : [],
    ),
  ];
}

/** A percentage or a confidence, never both. */
function contingencyFindings({ contingency }: Project): Finding[] {
  const { policy, share, confidence } = contingency;
  const found = policyOf(
    {
      ...(share === undefined ? {} : { percentage: { estimateClass: 3, share: Number(share.value) } }),
      ...(confidence === undefined ? {} : { confidence: Number(confidence) }),
    },
    '/contingency',
  );
  if ('code' in found) return [found];
  if (found.kind === policy) return [];
  const missing = policy === 'confidence' ? 'a confidence' : 'a share';
  return [
    {
      code: 'risk/no-contingency-policy',
      weight: 'warns',
      place: '/contingency',
      message: `Contingency is to follow ${missing}, and none is given.`,
      meaning: 'The budget is absent; the total without contingency stands.',
      remedy: 'Give it, or choose the other way.',
    },
  ];
}

function unknownItem(event: string, item: string): Finding {
  return blocked(
    `/risk/register/${event}`,
    `The event ${event} names the work item ${item}, which does not exist.`,
    'Name a work item of the library or of the project.',
  );
}

function withoutImpact(event: string, title: string): Finding {
  return {
    code: 'risk/no-impact',
    weight: 'warns',
    place: `/risk/register/${event}`,
    message: `"${title}" costs nothing and delays nothing.`,
    meaning: 'It takes no part in the simulation.',
    remedy: 'Give it a cost on a line, a delay of an activity, or both.',
  };
}

function outOfOrder(index: number, given: string, low: string, high: string): Finding {
  return blocked(
    `/risk/ranges/${index}`,
    `The range of ${given} runs from ${low} down to ${high}.`,
    'Give the low end first.',
  );
}

function twins(place: string, keys: readonly string[]): Finding[] {
  return [...new Set(keys.filter((key, i) => keys.indexOf(key) !== i))].map(key =>
    blocked(`${place}/${key}`, `${key} is there twice.`, 'Keep one of them.'),
  );
}

function blocked(place: string, message: string, remedy: string): Finding {
  return {
    code: 'risk/faulty-section',
    weight: 'blocks',
    place,
    message,
    meaning: 'The entry is left out of the simulation.',
    remedy,
  };
}
