import { upperFirst } from '../../core/base';
import {
  openingWork,
  type Evaluation,
  type PricedChoices,
  type PropellerChoice,
} from '../../core/evaluation';
import type { UprightChoiceResult, UprightResult } from '../../core/flooding';
import { moneyText, roundToCents } from '../../core/money';

/** The upright screen as lines of text: verdict, reasons, stages, sizes, choices, what is missing, caution. */
export function uprightLines(evaluation: Evaluation, upright: UprightResult): string[] {
  return [
    `${upperFirst(upright.verdict)}. ${upright.caution}`,
    ...upright.reasons.map(reason => `  ${reason}`),
    ...settled(upright),
    ...stages(upright),
    ...sizing(upright),
    ...workLines(evaluation),
    ...choices(upright),
    ...section('After the deck edge', upright.afterDeckEdge?.notes ?? []),
    ...section('Site', upright.site.notes),
    ...yardstickLines(upright),
    ...towLines(evaluation),
    ...section('Missing', upright.missingInputs),
    ...section('What the screen cannot see', upright.cannotSee),
  ];
}

function section(title: string, rows: readonly string[]): string[] {
  return rows.length === 0 ? [] : ['', title, ...rows.map(row => `  ${row}`)];
}

function settled({ settles }: UprightResult): string[] {
  if (settles === undefined) return [];
  const { measurement, why, cost, days } = settles;
  const price =
    cost === undefined || days === undefined
      ? 'no price in the estimate'
      : `${dollars(cost)}, ${days} work days`;
  return [`  What would settle it: ${measurement} (${price}). ${why}`];
}

function stages({ stages: rows }: UprightResult): string[] {
  const line = (cells: readonly string[]) => cells.map((cell, i) => cell.padStart(i === 6 ? 0 : 9)).join(' ');
  return section(
    'Stages: greatest equilibrium heel over the ranges (- once the deck is awash, where nothing is judged), and list of the flooding simulation',
    [
      line(['min', 'level m', 'GM m', 'heel deg', 'list deg', 'trim m', ' what happens']),
      ...rows.map(({ t, level, gm, heel, list, trim, event, isPastCheck }) =>
        line([
          (t / 60).toFixed(1),
          level.toFixed(2),
          isPastCheck === true ? '-' : gm.toFixed(2),
          heel === undefined ? 'none' : isPastCheck === true ? '-' : heel.toFixed(1),
          list.toFixed(1),
          trim.toFixed(2),
          event === undefined ? '' : ` ${event}`,
        ]).trimEnd(),
      ),
    ],
  );
}

function sizing({ sizing: rows }: UprightResult): string[] {
  return section(
    'Openings',
    rows.map(
      size =>
        `${size.compartment}: ${size.openings} openings, ${size.area.toFixed(2)} m², ${size.cutLength.toFixed(1)} m of cut, ${size.ventCount} air escapes of ${size.ventArea.toFixed(2)} m² together, fills in ${size.fillMinutes.toFixed(0)} min${size.note === undefined ? '' : `. ${size.note}`}`,
    ),
  );
}

function workLines({ estimate }: Evaluation): string[] {
  const rows = estimate === undefined ? [] : openingWork(estimate);
  return section(
    'Work that follows from the openings',
    rows.map(
      ({ title, quantity, unit, hours, crews, workDays, material, cost }) =>
        `${title}: ${quantity} ${unit}, ${[
          hours === undefined ? [] : [`${hours} h`],
          crews === undefined || crews === 0 ? [] : [`${crews} ${crews === 1 ? 'crew' : 'crews'}`],
          workDays === undefined ? [] : [`${workDays} work days`],
          material === 0 ? [] : [`material ${dollars(material)}`],
          [`direct cost ${dollars(cost)}`],
        ]
          .flat()
          .join(', ')}`,
    ),
  );
}

function choices({ choices: found }: UprightResult): string[] {
  if (found === undefined) return [];
  return section('Choices, against the plan as it stands', [
    ...[found.now, ...found.each].map(choiceLine),
    found.message,
    ...(found.cheapest === undefined ? [] : [`That set: ${choiceLine(found.cheapest)}`]),
  ]);
}

function choiceLine(choice: UprightChoiceResult): string {
  const title = choice.titles.length === 0 ? 'The plan as it stands' : choice.titles.join(' and ');
  const heel =
    choice.greatestHeelDegrees === undefined
      ? 'no equilibrium'
      : `greatest heel ${choice.greatestHeelDegrees.toFixed(1)} degrees`;
  const change =
    choice.heelChangeDegrees === undefined ? '' : ` (${signed(choice.heelChangeDegrees.toFixed(1))})`;
  const price =
    choice.titles.length === 0
      ? ''
      : `${signedDollars(choice.cost)}, ${signed(String(choice.days))} work days, `;
  return `${title}: ${price}${heel}${change}, unevenness ${(100 * choice.unevenness).toFixed(1)} %, worst ${choice.worst}, ${choice.verdict}`;
}

function yardstickLines({ yardsticks }: UprightResult): string[] {
  return section(
    'Yardsticks of public rules, as context: no approval',
    yardsticks.map(
      ({ condition, rule, asks, found, unit, meets }) =>
        `${condition}: ${rule}, ${asks}: ${found === undefined ? 'no equilibrium' : `${found.toFixed(2)}${unit === '1' ? '' : ` ${unit}`}`}, ${meets ? 'met' : 'not met'}`,
    ),
  );
}

function towLines({ tow, upright }: Evaluation): string[] {
  if (tow === undefined) return [];
  const { hull, propellers, wind, total, bollardPull, steadyDays, plannedDays, scheduledDays } = tow;
  const choices: Partial<PricedChoices> | undefined = upright?.choices;
  const propeller = choices?.propellers;
  return section('Tow, screening for cost: the towing surveyor approves the tow', [
    `resistance ${total.toFixed(0)} kN at ${tow.knots} knots: hull ${hull.toFixed(0)}, propellers ${propellers.toFixed(0)}, wind ${wind.toFixed(0)}; bollard pull ${bollardPull.toFixed(1)} t`,
    `${tow.nauticalMiles} nautical miles: ${steadyDays.toFixed(1)} days steady, ${plannedDays.toFixed(1)} with weather, ${scheduledDays ?? 'no'} in the estimate`,
    ...tow.scheduledHoldPoints.map(
      ({ title, finish }) => `hold point: ${title}${finish === undefined ? '' : `, ${finish}`}`,
    ),
    ...tow.integrityList.map(one => `tight: ${one}`),
    ...(propeller === undefined ? [] : [propellerLine(propeller)]),
  ]);
}

function propellerLine({ title, cost, days, bollardPull }: PropellerChoice): string {
  return `${title}: ${signedDollars(cost)}, ${signed(String(days))} work days, bollard pull ${signed(bollardPull.toFixed(1))} t`;
}

function signed(text: string): string {
  return text.startsWith('-') ? text : `+${text}`;
}

function dollars(amount: number): string {
  return `$${moneyText(roundToCents(amount.toFixed(2)))}`;
}

function signedDollars(amount: number): string {
  return amount < 0 ? `-${dollars(-amount)}` : `+${dollars(amount)}`;
}
