import intakeTemplate from '../../templates/intake.json';
import { intakeFile, surveyedPresence, type SurveyedPresence } from '../materials';
import type { Project } from '../project';
import type { Library } from '../work';

const { intake } = intakeFile.parse(intakeTemplate);

/** What survey and intake say of every material of a project. */
export function surveyOf(project: Project, library: Library): SurveyedPresence {
  const { vessel, survey } = project;
  const answers = new Map<string, string>(Object.entries(survey.intake));
  return surveyedPresence(
    library.materials,
    { built: vessel.built, lastRefit: vessel.lastRefit, lastCoating: vessel.lastCoating },
    survey.laboratory,
    library.tripPoints,
    intake
      .filter(row => answers.get(row.item) === 'unknown')
      .map(row => ({ ...row, widening: Number(row.widening.value) })),
  );
}
