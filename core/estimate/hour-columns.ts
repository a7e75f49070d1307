import {
  bareGiven,
  link,
  maximum,
  minimum,
  none,
  over,
  priced,
  quoted,
  rounded,
  scaled,
  sum,
  unity,
  wholeUp,
  type Given,
  type Recipe,
  type Step,
  type Table,
} from '../sheet';
import { conditionKey, flagOf } from './condition-sets';
import type { CrewColumns } from './crew-tables';
import { crewsAvailable, type EstimateInput } from './inputs';
import { slowed, type Pace } from './pace';
import { bareField, changedGiven, fieldGiven, perOwn, type ItemFields } from './item-fields';

export interface HourColumns {
  readonly hours: Step<'h'>;
  readonly crews: Step<'1'>;
  readonly people: Step<'person'>;
}

/** Decimals of hours: those of a time-dependent item are the hours of one day, so they are kept finer than printed. */
const HOURS_DECIMALS = 2;
/** Where an item names no hours for one crew more, all its crews work at once. */
const AT_ONCE: Given = {
  value: '0.01',
  unit: 'h',
  basis: 'common practice',
  source: 'does not apply here',
  neutral: true,
};

/**
 * Hours from the quantity under the conditions of work, the crews that those hours ask for or the planner set, and the
 * hours that crowding and long shifts add.
 */
export function hourColumns(
  t: Recipe<ItemFields>,
  quantity: Step<'own'>,
  crews: Table<CrewColumns>,
  conditions: Table<{ factor: Step<'1'> }>,
  pace: Pace,
  overrides: EstimateInput['overrides'],
): HourColumns {
  const perUnit = t.field(
    'hours-per-unit',
    'Hours for one',
    'h/own',
    row =>
      changedGiven(row, 'hoursPerUnit', perOwn('h', row)) ??
      fieldGiven(row, 'hoursPerUnit', row.item.hoursPerUnit, perOwn('h', row), '0'),
    [],
  );
  const setup = t.field(
    'setup-hours',
    'Hours to set up',
    'h',
    row => fieldGiven(row, 'setupHours', row.item.setupHours, 'h', '0'),
    [],
  );
  const key = t.key('condition-key', 'Conditions (key)', row => conditionKey(row.item), []);
  const factor = t.place('condition', 'Factor of the conditions', link(key, conditions.columns.factor));
  const usualHours = t.place(
    'hours-usual',
    'Hours with the usual crews',
    rounded(sum(priced(quantity, perUnit, factor), setup), HOURS_DECIMALS),
  );
  const most = t.field('crews-at-most', 'Crews at most', '1', row => mostCrews(row, overrides), [overrides]);
  const forOne = t.field(
    'hours-per-crew',
    'Hours that bring one crew more',
    'h',
    row =>
      row.item.hoursPerCrew === undefined
        ? AT_ONCE
        : fieldGiven(row, 'hoursPerCrew', row.item.hoursPerCrew, 'h', '0'),
    [],
  );
  const wanted = t.place('crews-wanted', 'Crews the hours ask for', wholeUp(over(usualHours, forOne), 4));
  const usual = t.place('crews-usual', 'Usual crews', maximum(unity('1'), minimum(most, wanted)));
  const planned = t.field('crews-planned', 'Crews planned', '1', plannedCrews, []);
  const chosen = t.place(
    'crews-chosen',
    'Crews at work',
    maximum(unity('1'), wholeUp(quoted(planned, usual), 4)),
  );
  const crewed = t.field('crewed', 'Has a crew', '1', row => flagOf(row.item.crew !== undefined), []);
  const working = t.place('crews', 'Crews', scaled(chosen, crewed));
  const hours = t.place(
    'hours',
    'Hours',
    rounded(scaled(usualHours, ...slowed(t, { crews: chosen, usual }, pace)), HOURS_DECIMALS),
  );
  const found = t.place(
    'people-found',
    'People of the crew',
    link(
      t.key('crew', 'Crew (key)', row => row.item.crew ?? NO_CREW, []),
      crews.columns.people,
    ),
  );
  const people = t.place('people', 'People of a crew', quoted(found, none('person')));
  return { hours, crews: working, people };
}

/** The most crews an item may have, no more than the project can field of them. */
function mostCrews(row: ItemFields, overrides: EstimateInput['overrides']): Given {
  const own = row.change?.crewsAtOnce;
  const figure = own ?? row.item.crewsAtOnce;
  const fielded = row.item.crew === undefined ? undefined : crewsAvailable(overrides, row.item.crew);
  if (fielded !== undefined && Number(fielded.figure.value) < Number(figure?.value ?? '1'))
    return bareGiven(fielded.figure, fielded.place);
  return own === undefined
    ? bareField(row, 'crewsAtOnce', figure, '1')
    : bareGiven(own, `/items/${row.item.id}/crewsAtOnce`);
}

/** The crews that the planner set, whole; without them the hours decide. */
function plannedCrews(row: ItemFields): Given | undefined {
  return row.change?.crews && bareGiven(row.change.crews, `/items/${row.item.id}/crews`);
}

/** The key that stands where an item has no crew; no crew has it. */
const NO_CREW = 'no-crew';
