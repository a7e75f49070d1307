import { onceFor } from '../base';
import {
  difference,
  givenFrom,
  rounded,
  scaled,
  sum,
  unity,
  type Block,
  type Given,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import type { WorkItem } from '../work';
import type { EstimateInput } from './inputs';

/** The key of a set of conditions of work: the same set has one factor, whatever the item. */
export function conditionKey(item: WorkItem): string {
  return keyOf(item.conditions);
}

const keyOf = onceFor((conditions: WorkItem['conditions']) => ['set', ...[...conditions].sort()].join('.'));

/**
 * Condition factors on hours, each a separate input; a set of conditions multiplies those it holds:
 * 1 + flag × (factor − 1) for each condition.
 */
export function conditionSets(
  sheet: Sheet,
  input: EstimateInput,
  items: readonly WorkItem[],
): Table<{ factor: Step<'1'> }> {
  const block = sheet.block('conditions', 'Conditions of work');
  const factors = input.library.rateBook.conditions.map(condition => ({
    id: condition.id,
    title: condition.title,
    factor: conditionFactor(block, input, condition),
  }));
  const sets = [...new Map(items.map(item => [conditionKey(item), item.conditions] as const))].map(
    ([id, conditions]) => ({ id, conditions }),
  );
  return sheet.table(
    'condition-sets',
    {
      heading: 'Set of conditions',
      of: sets,
      key: set => set.id,
      title: set => (set.conditions.length === 0 ? 'usual conditions' : set.conditions.join(', ')),
    },
    t => {
      const effects = factors.map(({ id, title, factor }) => {
        const flag = t.field(id, `Under ${title}`, '1', set => flagOf(set.conditions.includes(id)));
        return t.place(
          `${id}-effect`,
          `Effect of ${title}`,
          sum(unity('1'), scaled(difference(factor, unity('1')), flag)),
        );
      });
      return { factor: t.place('factor', 'Factor on hours', rounded(scaled(unity('1'), ...effects), 4)) };
    },
  );
}

function conditionFactor(
  block: Block,
  input: EstimateInput,
  condition: EstimateInput['library']['rateBook']['conditions'][number],
): Step<'1'> {
  const place = `conditions/${condition.id}/factor`;
  const figure = input.overrides.get(place) ?? condition.factor;
  return block.given(condition.id, condition.title, '1', givenFrom(figure, '1', `templates/rates/${place}`));
}

/** A yes or no of a row as a given: it says what applies and weighs on no basis. */
export function flagOf(yes: boolean): Given {
  return yes ? YES : NO;
}

const flag = { unit: '1', basis: 'common practice', neutral: true } as const;
const YES: Given = { ...flag, value: '1', source: 'applies here' };
const NO: Given = { ...flag, value: '0', source: 'does not apply here' };
