import { describe, expect, test } from 'vitest';
import { demoProject, evaluated } from './demo';

const demo = demoProject();
const found = (validUntil: string, statusDate?: string) =>
  evaluated({
    ...demo,
    ...(statusDate === undefined ? {} : { statusDate }),
    bid: { items: [], alternates: [], ...demo.bid, offer: { validUntil } },
  }).findings.filter(({ place }) => place === '/bid/offer/validUntil');

describe('the last day of an offer', () => {
  test('that is past is told, with the day it is told by', () => {
    expect(found('2026-11-23')).toMatchObject([
      {
        code: 'bid/offer-expired',
        weight: 'warns',
        message: 'The offer could be accepted until 2026-11-23; today is 2026-11-24.',
      },
    ]);
  });

  test('that is today or later is not', () => {
    expect(found('2026-11-24')).toEqual([]);
    expect(found('2029-01-01')).toEqual([]);
  });

  test('that is no day of the calendar is told as such', () => {
    expect(found('2026-02-30').map(({ code }) => code)).toContain('funding/no-such-date');
  });
});
