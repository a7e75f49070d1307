import type { Material, Presence } from '../../materials';
import { surveyOf } from '../../evaluation';
import type { EstimateContext } from '../context';
import { roundText } from '../number-text';
import type { Sentence } from '../rows';
import type { CautionWords, FamilyWords, MaterialWords } from './rows';
import { tripPointTable } from './trip-point-table';

/** The families with goal, materials, rules and dangers. */
export function familyWords({ evaluation }: EstimateContext): readonly FamilyWords[] {
  const { library, project } = evaluation;
  const survey = surveyOf(project, library);
  return library.families.map(({ id, title, goal, goalBasis }) => {
    const materials = library.materials.filter(material => material.family === id);
    const keys = new Set(materials.flatMap(material => material.cautions));
    return {
      id,
      title,
      goal,
      goalBasis,
      materials: materials.map(material => materialWords(material, survey.presence.get(material.id))),
      tripPoints: tripPointTable(library.tripPoints, id),
      cautions: library.cautions.filter(caution => keys.has(caution.id)).map(cautionWords),
    };
  });
}

function cautionWords({ id, work, danger, care, decides, pointer }: CautionWords): CautionWords {
  return { id, work, danger, care, decides, pointer };
}

function materialWords(material: Material, presence: Presence | undefined): MaterialWords {
  const { id, title, goal, found, steps, evidence } = material;
  return { id, title, goal, found, steps, evidence, presence: presenceWords(material, presence) };
}

const DECIDED_BY = {
  built: 'built',
  'last-refit': 'last refitted',
  'last-coating': 'last coated',
  none: '',
} as const;

function presenceWords(material: Material, presence: Presence | undefined): Sentence {
  if (presence === undefined) return ['Nothing is known of it.'];
  const share = {
    text: `${roundText((presence.likely * 100).toFixed(4), 0)} %`,
    why: `presence:${material.id}`,
  };
  if (presence.basis === 'surveyed')
    return ['Surveyed: ', share, ` of what a full ship carries. ${presence.source}.`];
  const because =
    presence.decidedBy === undefined
      ? 'found on ships of any age'
      : `by the year ${presence.decidedBy}, when she was ${DECIDED_BY[material.decidedBy]}`;
  return ['Assumed, not surveyed: ', share, ` of what a full ship of its era carries, ${because}.`];
}
