import type { Cents } from './cents';

/** An amount as it is printed in sentences: `$1,234.50`, a credit with a minus before the sign. */
export function dollars(amount: Cents): string {
  const size = Math.abs(amount);
  const whole = String(Math.floor(size / 100)).replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  return `${amount < 0 ? '-' : ''}$${whole}.${String(size % 100).padStart(2, '0')}`;
}

/** The first amount printed in a sentence, in cents; `undefined` when there is none. */
export function firstDollars(sentence: string): Cents | undefined {
  const found = /-?\$[\d,]+\.\d{2}/.exec(sentence);
  return found ? Number(found[0].replaceAll(/[$,.]/g, '')) : undefined;
}
