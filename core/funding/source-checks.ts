import type { Finding } from '../base';
import { allocateCents, sumCents, type Cents, type EstimateLine } from '../cash-flow';
import type { FundingPlan, FundingSource, GrantInput } from './plan';

/** Checks the sources of a plan: what a form needs, federal money as match, values in kind, lines donated twice. */
export function checkSources(input: GrantInput): Finding[] {
  const { sources } = input.plan;
  const found = sources.flatMap(source =>
    source.form === 'none' ? checkMatching(source) : checkAward(source),
  );
  return [...found, ...checkIds(input.plan), ...checkInKind(sources, input.lines), ...checkScrap(input)];
}

function checkAward(source: FundingSource): Finding[] {
  const findings: Finding[] = [];
  if (!source.period)
    findings.push(
      blocked('funding/period-missing', source, 'has no award period', 'enter its start and finish'),
    );
  if (source.share === undefined)
    findings.push(
      blocked('funding/share-missing', source, 'has no share', 'enter the share its notice allows'),
    );
  else if (source.share < 0 || source.share > 1)
    findings.push(
      blocked('funding/share-range', source, `has a share of ${source.share}`, 'enter a share from 0 to 1'),
    );
  return findings;
}

function checkMatching(source: FundingSource): Finding[] {
  const findings: Finding[] = [];
  if (source.kind === 'federal')
    findings.push({
      ...blocked(
        'funding/federal-match',
        source,
        'is federal money standing in as match',
        'give it a form of its own, or take it out',
      ),
      rule: '2 CFR 200.306(b)(5); 50 CFR 80.85',
    });
  if (source.support === 'in kind' && !source.valuation)
    findings.push({
      ...blocked(
        'funding/value-in-kind',
        source,
        'has no basis for its value',
        'say how the contribution is valued',
      ),
      rule: '2 CFR 200.306(d) to (i)',
    });
  if (source.support === 'in kind' && !source.lineIds?.length)
    findings.push(
      blocked('funding/in-kind-lines', source, 'names no line it contributes', 'name its estimate lines'),
    );
  return findings;
}

function checkIds(plan: FundingPlan): Finding[] {
  return plan.sources
    .filter((source, index) => plan.sources.findIndex(other => other.id === source.id) !== index)
    .map(source => blocked('funding/source-twice', source, 'stands twice', 'count each source once'));
}

function checkInKind(sources: readonly FundingSource[], lines: readonly EstimateLine[]): Finding[] {
  const given = sources.flatMap(source => (source.support === 'in kind' ? (source.lineIds ?? []) : []));
  const orphans = lines.filter(line => line.inKind === true && !given.includes(line.id));
  const paid = lines.filter(line => line.inKind !== true && given.includes(line.id));
  const twice = given.filter((id, index) => given.indexOf(id) !== index);
  return [
    ...orphans.map(line =>
      lineFinding('funding/in-kind-source', line.id, 'is donated, but no source gives it'),
    ),
    ...paid.map(line =>
      lineFinding('funding/in-kind-paid', line.id, 'is given in kind by a source, but is not donated'),
    ),
    ...twice.map(id => lineFinding('funding/in-kind-twice', id, 'is counted as match twice')),
  ];
}

function checkScrap({ lines, scrap }: GrantInput): Finding[] {
  const credited = lines.filter(line => line.scrapCredit === true);
  if (scrap?.keptBy !== 'owner' || scrap.amount === 0 || credited.length === 0) return [];
  return credited.map(line => ({
    code: 'funding/scrap-twice',
    weight: 'blocks',
    place: `/lines/${line.id}`,
    message: 'scrap lowers the contract price and is program income as well',
    meaning: 'the federal request would be lowered twice',
    remedy: 'let either the contractor or the owner keep the scrap',
    rule: '50 CFR 80.120; 2 CFR 200.406',
  }));
}

/** What each capped source has to give, before any award took of it. */
export function openingPurse(sources: readonly FundingSource[]): Map<string, Cents> {
  return new Map(
    sources.flatMap(source => (source.cap === undefined ? [] : [[source.id, source.cap] as const])),
  );
}

/** Shares of a whole in hundredths of a per cent that add up to 100 exactly, for print. */
export function printedShares(amounts: readonly Cents[]): number[] {
  return sumCents(amounts) === 0
    ? amounts.map(() => 0)
    : allocateCents(10_000, amounts).map(part => part / 100);
}

function blocked(code: string, source: FundingSource, what: string, remedy: string): Finding {
  return {
    code,
    weight: 'blocks',
    place: `/funding/sources/${source.id}`,
    message: `${source.title} ${what}`,
    meaning: 'no grant budget is made until this is put right; the estimate stands',
    remedy,
  };
}

function lineFinding(code: string, lineId: string, what: string): Finding {
  return {
    code,
    weight: 'blocks',
    place: `/lines/${lineId}`,
    message: `the line ${lineId} ${what}`,
    meaning: 'the match would be counted wrongly, so no grant budget is made',
    remedy: 'let exactly one source in kind name the donated line',
  };
}
