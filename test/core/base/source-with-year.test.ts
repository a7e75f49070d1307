import { expect, test } from 'vitest';
import { sourceWithYear } from '../../../core/base';

test.each([
  [{ source: 'Price list of the port', year: 2024 }, 'Price list of the port, 2024'],
  [{ source: 'Price list of the port' }, 'Price list of the port'],
  // Whoever writes the year into the source reads it once.
  [{ source: 'Read in a copy of about 2023', year: 2023 }, 'Read in a copy of about 2023'],
  [{ source: 'first quarter of 2020', year: 2020 }, 'first quarter of 2020'],
  [{ source: 'a letter of 12 Nov 2026', year: 2024 }, 'a letter of 12 Nov 2026, 2024'],
])('the source %j is told as %s', (given, said) => {
  expect(sourceWithYear(given)).toBe(said);
});
