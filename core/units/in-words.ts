/**
 * Decimal text with its thousands apart.
 * @example thousandsApart('26124.01') // '26,124.01'
 */
export function thousandsApart(text: string): string {
  const [whole = '', fraction] = text.split('.');
  const apart = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return fraction === undefined ? apart : `${apart}.${fraction}`;
}

/**
 * A figure as a sentence says it: dollars stand before, what they are paid for behind "per".
 * @example amountWords({ value: '10803', unit: 'USD/t' }) // '$10,803 per t'
 */
export function amountWords({ value, unit }: { readonly value: string; readonly unit: string }): string {
  const number = thousandsApart(value);
  const [paid = '', each] = unit.split('/');
  const amount = paid === 'USD' ? `$${number}` : [number, paid].join(' ');
  const per = each === '1' ? 'piece' : each?.replaceAll('-', ' ');
  return per === undefined ? amount : `${amount} per ${per}`;
}
