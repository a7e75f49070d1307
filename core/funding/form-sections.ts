import { withId } from '../base';
import type { Cents } from '../cash-flow';
import { UNFUNDED_TITLE } from './budget-row';
import type { Sf424a } from './sf-424a';
import type { Sf424c } from './sf-424c';

/** What the sections of SF-424A are called. */
export const SECTION_TITLES = {
  A: 'Section A, budget summary',
  B: 'Section B, object classes',
  C: 'Section C, non-federal resources',
  D: 'Section D, cash needed in the first year',
  E: 'Section E, federal money of later years',
} as const;

/** Lines of section D. */
export const QUARTER_TITLES = ['First quarter', 'Second quarter', 'Third quarter', 'Fourth quarter'] as const;

/** A line of section E: the years after the first, counted from 0. */
export function laterYearTitle(place: number): string {
  return `Year ${place + 2}`;
}

/** The lines of section C above its total: the sources, and where there is any, what no source bears yet. */
export function resourceLines({
  applicant,
  state,
  other,
  unfunded,
}: Sf424a['sectionC']): { readonly title: string; readonly amount: Cents }[] {
  return [
    { title: 'Applicant', amount: applicant },
    { title: 'State', amount: state },
    { title: 'Other', amount: other },
    ...(unfunded === 0 ? [] : [{ title: UNFUNDED_TITLE, amount: unfunded }]),
  ];
}

/** Which lines are added, by place, or taken off. */
type Sums = readonly { readonly line: number; readonly sign: 1 | -1 }[];

/** A line of a section: an amount for each column, and which lines above it is the sum of, where it is one. */
export interface SectionLine {
  readonly title: string;
  readonly cents: readonly Cents[];
  readonly sums?: Sums;
}

/** A section of a form as a table to the cent. */
export interface FormSection {
  readonly title: string;
  readonly columns: readonly string[];
  readonly lines: readonly SectionLine[];
}

/** Lines from one through another, all added. */
function added(from: number, through: number): Sums {
  return Array.from({ length: through - from + 1 }, (_, place) => ({ line: from + place, sign: 1 }));
}

/** The sections of a form to the cent: A to E of SF-424A, or the lines 1 to 16 of SF-424C. */
export function formSections(form: Sf424a | Sf424c): readonly FormSection[] {
  return form.kind === 'SF-424A' ? sectionsOf(form) : [constructionLines(form)];
}

function sectionsOf(form: Sf424a): readonly FormSection[] {
  const { sectionA, sectionC, sectionD, sectionE } = form;
  const { lines, total } = sectionA;
  const resources = resourceLines(sectionC);
  return [
    {
      title: SECTION_TITLES.A,
      columns: ['Federal', 'Non-federal', 'Total'],
      lines: [
        ...lines.map(line => ({ title: line.title, cents: [line.federal, line.nonFederal, line.total] })),
        {
          title: 'Total, line 5',
          cents: [total.federal, total.nonFederal, total.total],
          sums: added(0, lines.length - 1),
        },
      ],
    },
    objectClasses(form),
    {
      title: SECTION_TITLES.C,
      columns: ['Amount'],
      lines: [
        ...resources.map(({ title, amount }) => ({ title, cents: [amount] })),
        { title: 'Total', cents: [sectionC.total], sums: added(0, resources.length - 1) },
      ],
    },
    {
      title: SECTION_TITLES.D,
      columns: ['Federal', 'Non-federal'],
      lines: QUARTER_TITLES.map((title, quarter) => ({
        title,
        cents: [sectionD.federal, sectionD.nonFederal].map(amounts => amounts[quarter] ?? 0),
      })),
    },
    {
      title: SECTION_TITLES.E,
      columns: ['Federal'],
      lines: sectionE.map((amount, place) => ({ title: laterYearTitle(place), cents: [amount] })),
    },
  ];
}

/** Section B without line 7: program income is no cost and stands under the section on the form. */
function objectClasses({ activities, sectionB }: Sf424a): FormSection {
  const lines = sectionB.filter(line => line.id !== '7');
  const place = (id: string) => lines.indexOf(withId(lines, id));
  const sums = new Map<string, Sums>([
    ['i', added(0, place('h'))],
    ['k', added(place('i'), place('j'))],
  ]);
  return {
    title: SECTION_TITLES.B,
    columns: [...activities.map(activity => activity.title), 'Total'],
    lines: lines.map(({ id, title, byActivity, total }) => ({
      title: `${id}. ${title}`,
      cents: [...activities.map(activity => byActivity[activity.id] ?? 0), total],
      ...withSums(sums.get(id)),
    })),
  };
}

/** Lines 1 to 16: 12 = 1 to 11, 14 = 12 + 13, 16 = 14 − 15. */
function constructionLines({ lines }: Sf424c): FormSection {
  const place = (id: string) => lines.indexOf(withId(lines, id));
  const sums = new Map<string, Sums>([
    ['12', added(place('1'), place('11'))],
    ['14', added(place('12'), place('13'))],
    [
      '16',
      [
        { line: place('14'), sign: 1 },
        { line: place('15'), sign: -1 },
      ],
    ],
  ]);
  return {
    title: 'Lines 1 to 16',
    columns: ['Total', 'Not allowable', 'Allowable'],
    lines: lines.map(({ id, title, total, notAllowable, allowable }) => ({
      title: `${id}. ${title}`,
      cents: [total, notAllowable, allowable],
      ...withSums(sums.get(id)),
    })),
  };
}

function withSums(sums: Sums | undefined): Pick<SectionLine, 'sums'> {
  return sums === undefined ? {} : { sums };
}
