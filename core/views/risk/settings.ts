import type { Evaluation, PreparedEstimate } from '../../evaluation';
import { editCell, words } from '../cells';
import type { Column, Row, Shown, TableRows } from '../rows';

const COLUMNS: readonly Column[] = [
  { key: 'what', title: 'How it is run', kind: 'words' },
  { key: 'value', title: 'Now', kind: 'words' },
];

/** How the runs are made: trials, seed, confidence and weather. They can be changed where the document has a section. */
export function settingsTable({ project }: Evaluation, prepared: PreparedEstimate | undefined): TableRows {
  const { risk } = project;
  const section = prepared?.section ?? risk;
  const row = (id: string, what: string, value: Shown): Row => ({
    id,
    kind: 'line',
    cells: { what: words(what), value },
  });
  const cell = (at: string, kind: 'whole' | 'decimal', label: string, value: string | number): Shown =>
    risk === undefined
      ? words(String(value))
      : editCell({ at: `/risk/${at}`, kind, value: String(value), label });
  const weather: Shown =
    risk === undefined
      ? words('drawn in each run')
      : editCell({
          at: '/risk/weather',
          kind: 'choice',
          value: risk.weather,
          label: 'Weather',
          choices: [
            { id: 'drawn', title: 'drawn in each run' },
            { id: 'allowance', title: 'as the plan allows for it' },
          ],
        });
  const rows =
    section === undefined
      ? []
      : [
          row('trials', 'Runs', cell('trials', 'whole', 'Runs', section.trials)),
          row('seed', 'Seed, which makes a run repeatable', cell('seed', 'whole', 'Seed', section.seed)),
          row(
            'confidence',
            'Confidence asked for, as a share',
            cell('confidence', 'decimal', 'Confidence', section.confidence),
          ),
          row('weather', 'Weather windows', weather),
          ...(prepared === undefined
            ? []
            : [
                row('ranged', 'Givens with a range', words(String(prepared.ranged))),
                row('drawn', 'Of these, drawn in each run', words(String(prepared.drawn))),
                row('events', 'Events of the register', words(String(prepared.run.events.length))),
              ]),
        ];
  return { id: 'risk-settings', caption: 'How it is run', columns: COLUMNS, rows };
}
