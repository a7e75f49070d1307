import { documentLegs } from './legs/documents';
import { faultLegs } from './legs/faults';
import { hostLegs } from './legs/host';
import { journalLegs } from './legs/journal';
import { killLegs } from './legs/kill';
import { plantedBugs } from './legs/planted';
import { realFaultLegs } from './legs/real-faults';
import { soakLegs } from './legs/soak';
import { workbookLegs } from './legs/workbooks';
import { zoneLegs } from './legs/zones';
import type { Leg } from './leg';

const words = process.argv.slice(2);
const long = words.includes('--long');
const onlyAt = words.indexOf('--only');
const only = onlyAt < 0 ? undefined : (words[onlyAt + 1] ?? '');

const every: readonly Leg[] = words.includes('--planted')
  ? plantedBugs
  : [
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
const inPart = (at: number) => Math.floor((at * parts) / every.length) === part - 1;
const legs = every.filter((leg, at) => inPart(at) && (only === undefined || leg.name.includes(only)));

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
