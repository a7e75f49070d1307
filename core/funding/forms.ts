import { z } from 'zod';
import { key, provenanceSchema } from '../base';
import { STAGES } from '../cash-flow';

/** The two open government forms of a grant budget. */
export const FORM_KINDS = ['SF-424A', 'SF-424C'] as const;
export type FormKind = (typeof FORM_KINDS)[number];

/** What a cost is, as the mapping to a form asks for it. */
export const PIECE_KINDS = [
  'contract',
  'travel',
  'fringe',
  'labour',
  'equipment-purchase',
  'supply-purchase',
  'material',
  'rent',
  'equipment',
  'subcontract',
  'disposal',
  'fee',
  'markUp',
  'contingency',
  'indirect',
] as const;
export type PieceKind = (typeof PIECE_KINDS)[number];

const labelled = z.strictObject({ id: z.string().min(1), title: z.string().min(1) });

/** One row of the mapping: what a cost must be (each part that is given must fit) and the line it goes to. */
export const mappingRowSchema = z.strictObject({
  when: z.strictObject({
    kind: z.enum(PIECE_KINDS).optional(),
    stage: z.enum(STAGES).optional(),
    lineId: z.string().optional(),
  }),
  to: z.string().min(1),
});
export type MappingRow = z.infer<typeof mappingRowSchema>;

/** A column of a form: some stages under one heading. */
export const activitySchema = z.strictObject({
  id: key,
  title: z.string().min(1),
  stages: z.array(z.enum(STAGES)).min(1),
});
export type Activity = z.infer<typeof activitySchema>;

const formSchema = z.strictObject({
  title: z.string(),
  ...provenanceSchema.shape,
  checkedOn: z.string(),
  classes: z.array(labelled).min(1),
  totals: z.array(labelled),
});

/** Schema of the file of forms: labels, columns and the mapping to start from. */
export const formsFile = z.strictObject({
  sf424a: formSchema,
  sf424c: formSchema,
  activities: z.array(activitySchema).min(1).max(4),
  mappings: z.strictObject({
    ...provenanceSchema.shape,
    'SF-424A': z.array(mappingRowSchema),
    'SF-424C': z.array(mappingRowSchema),
  }),
});
export type FormsData = z.infer<typeof formsFile>;

/** Reads the file of forms. @throws ZodError when the file is not of that shape. */
export function readForms(data: unknown): FormsData {
  return formsFile.parse(data);
}

/** The labels of a form: classes first, then totals. */
export function labelsOf(forms: FormsData, kind: FormKind): FormsData['sf424a'] {
  return kind === 'SF-424A' ? forms.sf424a : forms.sf424c;
}

/**
 * The line of the form a cost goes to: the first row of the mapping whose conditions all hold.
 * @returns `undefined` when no row fits; the cost then has no place on the form.
 */
export function mapToForm(
  rows: readonly MappingRow[],
  cost: {
    readonly kind: PieceKind;
    readonly stage?: string | undefined;
    readonly lineId?: string | undefined;
  },
): string | undefined {
  return rows.find(
    ({ when }) =>
      (when.kind === undefined || when.kind === cost.kind) &&
      (when.stage === undefined || when.stage === cost.stage) &&
      (when.lineId === undefined || when.lineId === cost.lineId),
  )?.to;
}
