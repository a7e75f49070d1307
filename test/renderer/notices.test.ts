import { expect, test } from 'vitest';
import { rowsOfFindings } from '../../core/views/finding-rows';
import { blockingOf, stillHolding } from '../../renderer/state/recovery';

const finding = (code: string, weight: 'blocks' | 'warns') => ({
  code,
  weight,
  place: '/rates',
  message: 'A wage is withheld.',
  remedy: 'Give it.',
});
const notice = (id: string, whileBlocked?: readonly string[]) => ({
  id,
  head: id,
  words: '',
  actions: [],
  ...(whileBlocked === undefined ? {} : { whileBlocked }),
});

test('a notice of a paper that was withheld goes once a finding that withheld it is mended, others stay', () => {
  const broken = rowsOfFindings([
    finding('a/wage', 'blocks'),
    finding('a/crew', 'blocks'),
    finding('a/note', 'warns'),
  ]);
  const blocking = blockingOf(broken);
  expect(blocking).toEqual(['a/wage /rates', 'a/crew /rates']);
  const notices = [notice('paper-bid', blocking), notice('read-only'), notice('paper-csv', [])];
  const ids = (codes: readonly string[]) =>
    stillHolding(notices, rowsOfFindings(codes.map(code => finding(code, 'blocks')))).map(({ id }) => id);
  expect(ids(['a/wage', 'a/crew'])).toEqual(['paper-bid', 'read-only', 'paper-csv']);
  expect(ids(['a/crew'])).toEqual(['read-only', 'paper-csv']);
  expect(ids([])).toEqual(['read-only', 'paper-csv']);
});
