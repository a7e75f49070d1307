import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { shippedLibrary } from '../../../core/evaluation';
import {
  IMPORT_FIELDS,
  IMPORT_KINDS,
  importMappingSchema,
  importTable,
  suggestedMapping,
  writeProject,
  type ImportKind,
  type ImportMapping,
  type ImportPreview,
  type Project,
  type TextTable,
} from '../../../core/project';
import { LARGEST_TABLE, readTableApart } from '../../imports/table-thread';
import { UsageError, type Call, type Command, type Outcome } from '../command';
import { loadProject } from '../load';

const PAIRS = 'field=Heading;field=Heading';

export const importCommand: Command = {
  name: 'import',
  words: 'A table you already have, put into a project: what would change is shown first.',
  usage:
    'reefwright import FILE TABLE --as laboratory|tanks|weights|prices|wages [--mapping ID] [--out FILE] [--json]',
  options: {
    as: { type: 'string', words: 'what the table holds', sample: IMPORT_KINDS.join('|') },
    mapping: {
      type: 'string',
      words: 'the mapping kept in the project, or the name under which a new one is kept',
      sample: 'ID',
    },
    columns: { type: 'string', words: 'which heading each field stands under', sample: `"${PAIRS}"` },
    constants: { type: 'string', words: 'fields that hold for the whole table', sample: '"unit=mg/kg"' },
    words: {
      type: 'string',
      words: 'words of the table and what they mean in the project',
      sample: '"CBL=pcb-cable"',
    },
    dates: { type: 'string', words: 'how dates are written', sample: 'YYYY-MM-DD|MM/DD/YYYY|DD.MM.YYYY' },
    decimals: { type: 'string', words: 'how decimals are written', sample: 'point|comma' },
    'heading-row': { type: 'string', words: 'the row of the headings, from 1', sample: 'N' },
    sheet: { type: 'string', words: 'the worksheet of a workbook; the first unless given', sample: 'NAME' },
    out: {
      type: 'string',
      words: 'the project file to write; without it nothing is written',
      sample: 'FILE',
    },
  },
  more: () =>
    IMPORT_KINDS.map(
      kind =>
        `  ${kind}: ${IMPORT_FIELDS[kind].map(({ field, required }) => (required ? field : `[${field}]`)).join(', ')}`,
    ).join('\n'),
  run: async call => {
    const [file, tableFile, ...more] = call.files;
    if (file === undefined || tableFile === undefined || more.length > 0)
      throw new UsageError('Name the project file and the table, such as my-reef.reef.json results.csv.');
    const kind = kindOf(call);
    const out = newFile(call);
    const { project, findings } = loadProject(file);
    if (project === undefined) return { json: { findings }, lines: [], findings };
    const table = await tableOf(tableFile, call.option('sheet'));
    const mapping = mappingOf(call, kind, table, tableFile, project);
    const preview = importTable(project, shippedLibrary(), table, mapping);
    const blocked = preview.findings.some(finding => finding.weight === 'blocks');
    if (out !== undefined && !blocked) writeFileSync(out, writeProject(preview.project), { flag: 'wx' });
    return outcomeOf(preview, out, blocked, findings);
  },
};

function kindOf(call: Call): ImportKind {
  const kind = IMPORT_KINDS.find(candidate => candidate === call.option('as'));
  if (kind === undefined) throw new UsageError(`--as takes one of: ${IMPORT_KINDS.join(', ')}.`);
  return kind;
}

function newFile(call: Call): string | undefined {
  const out = call.option('out');
  if (out !== undefined && existsSync(out))
    throw new UsageError(`${out} is there already and was left alone. Choose another name.`);
  return out;
}

async function tableOf(file: string, sheet: string | undefined): Promise<TextTable> {
  if (!existsSync(file)) throw new UsageError(`There is no table ${file}.`);
  if (statSync(file).size > LARGEST_TABLE)
    throw new UsageError(`${file} has more than 20 MB: no table does.`);
  try {
    return await readTableApart(new URL('./table-reader.js', import.meta.url), {
      bytes: readFileSync(file),
      extension: extname(file),
      ...(sheet === undefined ? {} : { sheet }),
    });
  } catch (error) {
    throw new UsageError(
      `${file} cannot be read as a table: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

/** The mapping named, changed by what the call says; else one that fits, or a guess from the headings. */
function mappingOf(
  call: Call,
  kind: ImportKind,
  table: TextTable,
  file: string,
  project: Project,
): ImportMapping {
  const id = call.option('mapping');
  const kept = project.imports ?? [];
  const named = kept.find(mapping => mapping.id === id);
  if (named !== undefined && named.kind !== kind)
    throw new UsageError(`The mapping ${named.id} is for ${named.kind}, not for ${kind}.`);
  const start =
    named ?? suggestedMapping(kind, table, basename(file, extname(file)), id === undefined ? kept : []);
  const said = importMappingSchema.safeParse({
    ...start,
    ...(id === undefined ? {} : { id }),
    headingRow: Number(call.option('heading-row') ?? start.headingRow),
    columns: { ...start.columns, ...pairs(call, 'columns') },
    constants: { ...start.constants, ...pairs(call, 'constants') },
    words: { ...start.words, ...pairs(call, 'words') },
    dates: call.option('dates') ?? start.dates,
    decimals: call.option('decimals') ?? start.decimals,
  });
  if (said.success) return said.data;
  const [issue] = said.error.issues;
  throw new UsageError(`The mapping does not fit: ${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}.`);
}

function pairs(call: Call, name: string): Record<string, string> {
  const parts = (call.option(name) ?? '').split(';').filter(part => part.trim() !== '');
  return Object.fromEntries(
    parts.map((part): [string, string] => {
      const at = part.indexOf('=');
      if (at < 1) throw new UsageError(`--${name} takes pairs such as "${PAIRS}", not "${part}".`);
      return [part.slice(0, at).trim(), part.slice(at + 1).trim()];
    }),
  );
}

function outcomeOf(
  { mapping, changes, added, changed, same, left, findings, notes }: ImportPreview,
  out: string | undefined,
  blocked: boolean,
  before: Outcome['findings'],
): Outcome {
  const written = out !== undefined && !blocked;
  const all = [...before, ...findings];
  return {
    json: { mapping, added, changed, same, changes, ...(written ? { file: out } : {}), findings: all },
    lines: [
      `Read by the mapping ${mapping.id}: ${Object.entries(mapping.columns)
        .map(([field, heading]) => `${field} from "${heading}"`)
        .join(', ')}`,
      ...changes.map(
        ({ kind, title, before: old, after }) =>
          `  ${kind === 'added' ? 'new    ' : 'changes'}  ${title}: ${old === undefined ? '' : `${old} -> `}${after}`,
      ),
      ...left.map(({ message, meaning = '', remedy }) => `  left out  ${message} ${meaning} ${remedy}`),
      `${added} new, ${changed} changed, ${same} the same${left.length === 0 ? '' : `, ${left.length} left out`}`,
      ...notes,
      written
        ? `Wrote ${out}; the mapping is kept in it.`
        : `Nothing was written${blocked ? ': see the findings' : '; --out FILE writes the project with these changes'}.`,
    ],
    findings: all,
  };
}
