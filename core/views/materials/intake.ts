import { known, lowerFirst } from '../../base';
import { INTAKE } from '../../project';
import intakeTemplate from '../../../templates/intake.json';
import { intakeFile } from '../../materials';
import { editCell, words } from '../cells';
import type { EstimateContext } from '../context';
import { roundText } from '../number-text';
import type { Column, Row, TableRows } from '../rows';

const COLUMNS: readonly Column[] = [
  { key: 'number', title: 'No.', kind: 'words' },
  { key: 'title', title: 'What the work plan asks to assemble', kind: 'words' },
  { key: 'answer', title: 'In hand', kind: 'words' },
  { key: 'widens', title: 'While it is unknown', kind: 'words' },
];

const { intake } = intakeFile.parse(intakeTemplate);

/** What an unknown answer of the intake does to ranges, as shipped. */
export function shippedIntake(): typeof intake {
  return intake;
}

const TITLES: Readonly<Record<(typeof INTAKE)[number], string>> = {
  'asbestos-papers': 'Papers on asbestos taken out or still there',
  'pcb-papers': 'Papers on PCB taken out or still there',
  demilitarisation: 'Record of weapons and fittings made harmless',
  'refrigerants-out': 'Record that refrigerants and halon are out',
  'hazardous-material-information': 'List of hazardous materials on board',
  'hull-paint-and-date': 'Paint on the hull and when it was put on',
  'general-drawings': 'General drawings',
  'size-and-superstructure': 'Size, draught and superstructure',
  'tank-soundings': 'Tank list with soundings',
  'reuse-list': 'List of what is reused or sold',
  'laws-and-permits': 'Laws and permits that apply',
  'site-survey': 'Survey of the reef site',
};

const ANSWERS = [
  { id: 'yes', title: 'yes' },
  { id: 'no', title: 'no' },
  { id: 'unknown', title: 'unknown' },
];

/** The twelve papers of the work plan, whether each is in hand, and what an unknown does to the ranges. */
export function intakeTable({ evaluation: { project, library } }: EstimateContext): TableRows {
  const titles = new Map(library.families.map(family => [family.id, lowerFirst(family.title)]));
  const rows = INTAKE.map((item, at): Row => {
    const answer = project.survey.intake[item] ?? '';
    const widening = shippedIntake().find(row => row.item === item);
    return {
      id: item,
      kind: 'line',
      cells: {
        number: words(String(at + 1)),
        title: words(TITLES[item]),
        answer: editCell(
          {
            at: `/survey/intake/${item}`,
            kind: 'choice',
            value: answer,
            choices: answer === '' ? [{ id: '', title: 'not asked yet' }, ...ANSWERS] : ANSWERS,
            label: TITLES[item],
          },
          answer === '' ? 'not asked yet' : answer,
        ),
        widens:
          widening === undefined
            ? words('no range moves')
            : {
                text: `${roundText((Number(widening.widening.value) * 100).toFixed(4), 0)} % wider: ${widening.families.map(family => known(titles, family)).join(', ')}`,
                why: `intake:${item}`,
              },
      },
    };
  });
  return { id: 'intake', caption: 'Intake', columns: COLUMNS, rows };
}

/** How many of the twelve are in hand, in words. */
export function intakeWords({ evaluation: { project } }: EstimateContext): string {
  const has = INTAKE.filter(item => project.survey.intake[item] === 'yes').length;
  const unknown = INTAKE.filter(item => project.survey.intake[item] === 'unknown').length;
  return `${has} of ${INTAKE.length} papers are in hand, ${unknown} are unknown.`;
}
