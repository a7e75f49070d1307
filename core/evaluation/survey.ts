import intakeTemplate from '../../templates/intake.json';
import { keeping } from '../base';
import { intakeFile, surveyedPresence, type SurveyedPresence } from '../materials';
import type { Project } from '../project';
import type { Library } from '../work';

const { intake } = intakeFile.parse(intakeTemplate);

/** What survey and intake say of every material of a project. */
export function surveyOf({ vessel, survey }: Project, library: Library): SurveyedPresence {
  return surveyed(survey, library, vessel.built, vessel.lastRefit, vessel.lastCoating);
}

const surveyed = keeping(12, presenceOf);

function presenceOf(
  survey: Project['survey'],
  library: Library,
  built: number,
  lastRefit: Project['vessel']['lastRefit'],
  lastCoating: Project['vessel']['lastCoating'],
): SurveyedPresence {
  const answers = new Map<string, string>(Object.entries(survey.intake));
  return surveyedPresence(
    library.materials,
    { built, lastRefit, lastCoating },
    survey.laboratory,
    library.tripPoints,
    intake
      .filter(row => answers.get(row.item) === 'unknown')
      .map(row => ({ ...row, widening: Number(row.widening.value) })),
  );
}
