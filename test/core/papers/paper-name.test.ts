import { describe, expect, it } from 'vitest';
import { paperStem } from '../../../core/papers';
import { demoProject, evaluated } from '../evaluation/demo';

const evaluation = evaluated(demoProject());
const named = (title: string) => paperStem({ ...evaluation, project: { ...evaluation.project, title } });
const { id } = evaluation.scenario;

describe('the names of the papers', () => {
  it('begin with the project and the scenario', () => {
    expect(named('Wrenfield: Reef 2027')).toBe(`wrenfield-reef-2027-${id}`);
  });

  it('hold nothing that a file system refuses, whatever the title', () => {
    expect(named('../../Ärger <x> "y" | CON?')).toBe(`arger-x-y-con-${id}`);
    expect(named('\u6c88\u8239')).toBe(id);
  });

  it('stay short', () => {
    expect(named('reef '.repeat(40)).length).toBeLessThanOrEqual(48 + id.length);
  });
});
