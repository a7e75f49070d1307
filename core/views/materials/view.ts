import type { EstimateContext } from '../context';
import { idOf } from '../../sheet';
import { dollars } from '../number-text';
import type { Sentence } from '../rows';
import type { ShownMoney } from '../shown-money';
import { familyCost } from './cost';
import { familyWords } from './families';
import { intakeTable, intakeWords } from './intake';
import { laboratoryTable } from './laboratory';
import { quantityTable } from './quantities';
import type { MaterialsView } from './rows';

/** The materials of concern: what there is, how it is known, what must become of it. */
export function materialsView(context: EstimateContext, money: ShownMoney): MaterialsView {
  const { evaluation, parts } = context;
  const { library } = evaluation;
  return {
    sentence: sentence(context, money),
    table: quantityTable(context, money),
    familyOf: Object.fromEntries<string>(
      [
        ...library.families.map(family => ({ of: family.id, family: family.id })),
        ...library.materials.map(material => ({ of: material.id, family: material.family })),
      ].map(one => [one.of, one.family]),
    ),
    families: familyWords(context),
    laboratory: laboratoryTable(context),
    intake: intakeTable(context),
    intakeWords: intakeWords(context),
    unmet: parts.unmetGoals.map(goal => `${goal.title}: ${goal.goal}`),
    closing: library.cautionClosing,
  };
}

function sentence(context: EstimateContext, money: ShownMoney): Sentence {
  const { library, project } = context.evaluation;
  const concerned = library.drivers.filter(driver => driver.material !== undefined);
  const { work } = context.parts;
  const step = work.drivers.columns.number;
  const present = concerned.filter(
    driver => work.result.has(idOf(step, driver.id)) && work.result.number(step, driver.id),
  );
  const measured = project.survey.measured.filter(one =>
    concerned.some(driver => driver.id === one.driver),
  ).length;
  const cost = familyCost(context, money, undefined);
  const counted = `${present.length} quantities of concern are on board, ${measured} of them surveyed`;
  if (cost === undefined) return [`${counted}; what cleaning them costs is not known yet.`];
  return [`${counted}; cleaning them costs `, { text: dollars(cost * 100), why: 'family:all' }, '.'];
}
