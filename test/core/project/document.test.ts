import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bodyHash,
  canonicalJson,
  parseJsonText,
  readProject,
  withScenario,
  writeProject,
  type Json,
} from '../../../core/project';
import { demoProject } from '../evaluation/demo';

describe('the document', () => {
  test('what is written is read back the same, with a check sum that holds', () => {
    const project = demoProject();
    const text = writeProject(project);
    const again = readProject(text);
    expect(again.findings).toEqual([]);
    const { sha256: _sum, ...body } = again.project ?? {};
    expect(body).toEqual({ ...project, sha256: undefined });
    expect(writeProject(project)).toBe(text);
  });

  test('the check sum is SHA-256 (FIPS 180-4), as Node computes it', () => {
    const document = { b: [1, 'é'], a: null, sha256: 'ignored' };
    expect(bodyHash(document)).toBe(createHash('sha256').update('{"a":null,"b":[1,"é"]}').digest('hex'));
  });

  test('a change by hand is noticed', () => {
    const text = writeProject(demoProject()).replace('Lantern Ground', 'Lantern Bank');
    expect(readProject(text).findings.map(finding => finding.code)).toEqual(['document/changed-outside']);
  });

  test('the strict reader agrees with the platform on every JSON value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), value => {
        const text = JSON.stringify(value);
        const poisoned = /"(__proto__|constructor|prototype)":/.test(text);
        const long = /\d{17}|e[+-]?\d{2}|\.\d{16}/.test(text.replace(/"(?:[^"\\]|\\.)*"/g, ''));
        if (poisoned || long) return;
        const parsed = parseJsonText(text);
        const expected = JSON.parse(text) as Json;
        if ('fault' in parsed) expect(parsed.fault.code).toBe('number');
        else expect(canonicalJson(parsed.value)).toBe(canonicalJson(expected));
      }),
      { numRuns: 500 },
    );
  });

  test('the strict reader never throws on cut or mutated text', () => {
    const text = writeProject(demoProject());
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.string({ maxLength: 3 }), (at, put) => {
        const result = parseJsonText(text.slice(0, at) + put + text.slice(at + 1));
        expect('fault' in result || 'value' in result).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});

describe('a scenario', () => {
  test('changes only what it names', () => {
    const project = demoProject();
    const seen = withScenario(project, {
      id: 'x',
      title: 'X',
      changes: [{ at: '/vessel/tanks/fuel-1-p/capacity/value', to: '150' }],
    });
    expect(seen.findings).toEqual([]);
    expect(seen.project?.vessel.tanks[0]?.capacity.value).toBe('150');
    expect(seen.project?.vessel.tanks.slice(1)).toEqual(project.vessel.tanks.slice(1));
    expect(project.vessel.tanks[0]?.capacity.value).toBe('148');
  });

  test.each([
    ['/format', 'other'],
    ['/vessel/nothing/here', 1],
    ['/vessel/length/value', 'long'],
  ])('that does not fit at %s is a finding naming the change', (at, to) => {
    const seen = withScenario(demoProject(), { id: 'x', title: 'X', changes: [{ at, to }] });
    expect(seen.project).toBeUndefined();
    expect(seen.findings[0]).toMatchObject({
      code: 'scenario/change-does-not-fit',
      place: '/scenarios/x/changes/0',
    });
  });
});
