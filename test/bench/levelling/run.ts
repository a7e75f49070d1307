import { measureBounds } from './bounds-measure';
import { compareDated } from './dated-variant';
import { readInstances } from './instances';
import { measureAll } from './measure';
import { readOptions, USAGE } from './options';
import { comparePeer } from './peer';
import { compareReference } from './reference';
import { reportOf, reportText } from './report';

/**
 * The levelling bench: quality, speed and bounds of the schedule search on public instance sets.
 * @returns 0 done, 1 a result below a known lower bound or a bound above a known finish, 2 wrong use or a missing folder.
 */
export async function levelling(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (typeof options === 'string') {
    process.stderr.write(`${options}\n${USAGE}\n`);
    return 2;
  }
  const instances = readInstances(options);
  if ('missing' in instances) {
    process.stderr.write(
      `There is no ${instances.missing}. Set PSPLIB_DIR or RCPSP_MAX_DIR, or give --dir.\n`,
    );
    return 2;
  }
  const say = (result: object, text: string): void => {
    process.stdout.write(`${options.isJson ? JSON.stringify(result) : text}\n`);
  };
  if (options.doesBounds) return saying(say, measureBounds(instances));
  if (options.doesReference) return saying(say, compareReference(instances, options));
  if (options.doesDated) return saying(say, compareDated(instances, options));
  if (options.doesPeer) return saying(say, await comparePeer(instances, options));
  const report = reportOf(instances, measureAll(instances, options), options);
  say(report, reportText(report));
  return report.belowLowerBound + report.wrongProofs > 0 ? 1 : 0;
}

function saying(
  say: (result: object, text: string) => void,
  outcome: { text: string; exitCode: number },
): number {
  say(outcome, outcome.text);
  return outcome.exitCode;
}
