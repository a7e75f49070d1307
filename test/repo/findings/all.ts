import { benefitExamples, bidExamples, cashExamples, fundingExamples, reviewExamples } from './book-examples';
import { documentExamples, projectExamples, typedExamples } from './document-examples';
import {
  importExamples,
  quoteExamples,
  riskExamples,
  ruleExamples,
  sheetExamples,
  surveyExamples,
} from './estimate-examples';
import type { FindingExample } from './example';
import { fileExamples, hostExamples } from './host-examples';
import { takeBackExamples } from './paper-examples';
import { calendarExamples, networkExamples, problemExamples, verifyExamples } from './schedule-examples';
import { uprightExamples } from './upright-examples';

/** Every example, by the file it stands in. */
export const EXAMPLES: readonly (readonly [string, readonly FindingExample[]])[] = [
  ['document-examples.ts', [...documentExamples, ...projectExamples, ...typedExamples]],
  ['schedule-examples.ts', [...calendarExamples, ...networkExamples, ...problemExamples, ...verifyExamples]],
  [
    'estimate-examples.ts',
    [
      ...surveyExamples,
      ...ruleExamples,
      ...quoteExamples,
      ...riskExamples,
      ...sheetExamples,
      ...importExamples,
    ],
  ],
  [
    'book-examples.ts',
    [...benefitExamples, ...bidExamples, ...cashExamples, ...fundingExamples, ...reviewExamples],
  ],
  ['upright-examples.ts', uprightExamples],
  ['paper-examples.ts', takeBackExamples],
  ['host-examples.ts', [...fileExamples, ...hostExamples]],
];
