import { documentLegs } from './legs/documents';
import { faultLegs } from './legs/faults';
import { hostLegs } from './legs/host';
import { journalLegs } from './legs/journal';
import { killLegs } from './legs/kill';
import { PLANTED_BUGS } from './legs/planted';
import { realFaultLegs } from './legs/real-faults';
import { soakLegs } from './legs/soak';
import { workbookLegs } from './legs/workbooks';
import { zoneLegs } from './legs/zones';
import { legsOf, numbered } from './planted/run-planted';
import type { Leg } from './leg';

const words = process.argv.slice(2);
const long = words.includes('--long');
const only = words.filter((_, at) => words[at - 1] === '--only');
const everyLeg: readonly Leg[] = [
  ...killLegs,
  ...faultLegs,
  ...realFaultLegs,
  ...journalLegs,
  ...documentLegs,
  ...workbookLegs,
  ...hostLegs,
  ...zoneLegs,
  ...soakLegs,
];
const partAt = words.indexOf('--part');
const [part = 1, parts = 1] = partAt < 0 ? [] : (words[partAt + 1] ?? '').split('/').map(Number);

/** Those of a part, and of them those whose names hold one of the words asked for. */
function chosen<T extends { readonly name: string }>(list: readonly T[]): T[] {
  return list
    .filter((_, at) => Math.floor((at * parts) / list.length) === part - 1)
    .filter(({ name }) => only.length === 0 || only.some(each => name.includes(each)));
}
const legs = words.includes('--planted') ? legsOf(chosen(numbered(PLANTED_BUGS))) : chosen(everyLeg);

let failed = legs.length === 0 ? 1 : 0;
for (const leg of legs) {
  const begun = performance.now();
  const outcome = await leg.run(long);
  if (!outcome.ok) failed++;
  const seconds = ((performance.now() - begun) / 1000).toFixed(1);
  console.log(`${outcome.ok ? 'passed' : 'FAILED'}  ${leg.name}: ${outcome.words} (${seconds} s)`);
}
console.log(`${legs.length - Math.min(failed, legs.length)} passed, ${failed} failed`);
process.exit(failed > 0 ? 1 : 0);
