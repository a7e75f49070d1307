import { expect, test } from 'vitest';
import { amountWords, thousandsApart } from '../../../core/units';

test.each([
  ['0', '0'],
  ['999', '999'],
  ['1000', '1,000'],
  ['26124.01', '26,124.01'],
  ['1234567.8901', '1,234,567.8901'],
  ['-12345', '-12,345'],
])('%s is read as %s', (text, words) => {
  expect(thousandsApart(text)).toBe(words);
});

test.each([
  ['10803', 'USD/t', '$10,803 per tonne'],
  ['5200', 'USD/work-day', '$5,200 per work day'],
  ['12', 'USD/1', '$12 each'],
  ['21.9', 'USD/h', '$21.90 per h'],
  ['90000', 'USD', '$90,000'],
  ['-5', 'USD/h', '−$5 per h'],
  ['-12.5', 'USD', '−$12.50'],
  ['-3', 'm', '−3 m'],
  ['1887', 'ft2', '1,887 sq ft'],
  ['2.5', 'h/ft2', '2.5 h per sq ft'],
])('a figure of %s %s is said as %s', (value, unit, words) => {
  expect(amountWords({ value, unit })).toBe(words);
});
