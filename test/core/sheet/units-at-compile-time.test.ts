import ts from 'typescript';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const PROBE = resolve(root, 'core/sheet/probe-of-types.ts');

const HEAD = `
import { sum, priced, over, scaled, times, dollars, lookUp, when, atLeast, difference, rounded, total, type Step, type LookUp } from './index';
declare const usd: Step<'USD'>; declare const h: Step<'h'>; declare const m2: Step<'m2'>; declare const m: Step<'m'>;
declare const own: Step<'own'>; declare const f: Step<'1'>; declare const t: Step<'t'>; declare const lt: Step<'long-ton'>;
declare const usdPerH: Step<'USD/h'>; declare const usdPerOwn: Step<'USD/own'>; declare const ownPerH: Step<'own/h'>;
declare const m2PerH: Step<'m2/h'>; declare const month: Step<'month'>; declare const byMonth: LookUp<'month', '1'>;
`;

/** Lines that must compile: the unit of each result is the one stated. */
const RIGHT = [
  `const a: Step<'USD'> = dollars(priced(h, usdPerH, f));`,
  `const b: Step<'h'> = over(m2, m2PerH);`,
  `const c: Step<'h'> = over(own, ownPerH);`,
  `const d: Step<'1'> = over(usd, usd);`,
  `const e: Step<'USD'> = over(usd, f);`,
  `const g: Step<'m'> = over(times(m, m), m);`,
  `const i: Step<'USD/t'> = over(usd, t);`,
  `const j: Step<'m3'> = times(m2, m);`,
  `const k: Step<'USD'> = when(atLeast(h, h, 2), usd, usd);`,
  `const l: Step<'1'> = lookUp(byMonth, month, 0, 'absent');`,
  `const n: Step<'USD'> = priced(own, usdPerOwn);`,
  `const o: Step<'USD'> = rounded(total(sum(usd, usd, usd)), 2);`,
];

/** Mistakes that must not compile. */
const WRONG = [
  `sum(h, m2);`,
  `sum(t, lt);`,
  `difference(usd, h);`,
  `priced(m2, usdPerH);`,
  `priced(h, usdPerOwn);`,
  `dollars(h);`,
  `scaled(usd, h);`,
  `lookUp(byMonth, h, 0, 'absent');`,
  `when(f, usd, h);`,
  `atLeast(t, lt, 2);`,
  `const x: Step<'USD'> = priced(h, m2PerH);`,
  `const x: Step<'h'> = over(m2, ownPerH);`,
  `const x: Step<'furlong'> = m;`,
];

/** The lines of the text, counted from the first after the head, that the compiler refuses. */
function refusedLines(lines: readonly string[]): Set<number> {
  const text = HEAD + lines.map(line => `{ ${line} }`).join('\n') + '\nexport {};\n';
  const config: unknown = ts.readConfigFile(resolve(root, 'tsconfig.json'), path =>
    ts.sys.readFile(path),
  ).config;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  options.noUnusedLocals = false;
  const host = ts.createCompilerHost(options);
  const read = host.getSourceFile.bind(host);
  host.getSourceFile = (name, version) =>
    resolve(name) === PROBE ? ts.createSourceFile(name, text, version) : read(name, version);
  const program = ts.createProgram([PROBE], options, host);
  const probe = program.getSourceFile(PROBE);
  const start = HEAD.split('\n').length - 1;
  return new Set(
    program
      .getSemanticDiagnostics(probe)
      .map(found => (probe?.getLineAndCharacterOfPosition(found.start ?? 0).line ?? 0) - start),
  );
}

describe('units at compile time', () => {
  it('accept what is right and refuse every planted mistake', () => {
    const refused = refusedLines([...RIGHT, ...WRONG]);
    const lines = [...RIGHT, ...WRONG].map((line, i) => `${refused.has(i) ? 'refused' : 'accepted'} ${line}`);
    expect(lines).toEqual([
      ...RIGHT.map(line => `accepted ${line}`),
      ...WRONG.map(line => `refused ${line}`),
    ]);
  });
});
