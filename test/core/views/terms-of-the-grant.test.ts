import { describe, expect, test } from 'vitest';
import { WhyDesk } from '../../../core/views';
import { demoProject, evaluated } from '../evaluation/demo';
import { inside, isRecord } from './laws';

const project = demoProject();
const { funding } = project;
if (funding === undefined) throw new Error('the demo has no funding');
const [first, ...others] = funding.sources;
if (first === undefined) throw new Error('the demo has no source');
const construction = { ...first, form: 'SF-424C' as const };
const item = 'dive-safety-survey';
const desk = new WhyDesk(
  evaluated({
    ...project,
    funding: {
      ...funding,
      sources: [construction, ...others],
      notAllowable: [{ item, reason: 'The grantor pays for one dive only.' }],
    },
  }),
  'us',
);
const inputs = [...inside(desk.opened('funding')?.terms)].flatMap(([, held]) =>
  isRecord(held) && isRecord(held['edit']) ? [held['edit']] : [],
);

describe('the terms of a grant', () => {
  test.each([
    `sources/${first.id}/preAwardApproved`,
    `sources/${first.id}/indirectLine`,
    'awardDate',
    'programIncome/method',
    'programIncome/costOfEarning',
    'payment/retainage',
    'payment/releaseAfterMonths',
    'payment/contractPayLag',
    'payment/ownPayLag',
    'county/microPurchase',
    'county/simplified',
    'county/equipment',
    'carryingRate',
    `notAllowable/${item}/amount`,
    `notAllowable/${item}/reason`,
  ])('can be entered in the window: %s', field => {
    expect(inputs.map(({ at }) => at)).toContain(`/funding/${field}`);
  });

  test('are asked of a source with a form only', () => {
    const asked = inputs.filter(({ at }) => String(at).endsWith('/preAwardApproved'));
    expect(asked).toHaveLength(funding.sources.filter(({ form }) => form !== 'none').length);
  });
});
