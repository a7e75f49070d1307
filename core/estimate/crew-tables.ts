import { withId } from '../base';
import { givenFrom, totalWhere, rounded, type Sheet, type Step, type Table } from '../sheet';
import { rateAt, type EstimateInput } from './inputs';

/** The people of a crew. */
export interface CrewColumns {
  readonly people: Step<'person'>;
}

/** Crews and their members. */
export interface CrewTables {
  readonly members: Table<CrewColumns>;
  readonly crews: Table<CrewColumns>;
}

/** Crews and their members: how many people a crew has. */
export function crewTables(sheet: Sheet, input: EstimateInput): CrewTables {
  const { crews, trades } = input.library.rateBook;
  const rows = crews.flatMap(crew => crew.members.map(member => ({ crew, member })));
  const members = sheet.table(
    'members',
    {
      heading: 'Crew member',
      of: rows,
      key: ({ crew, member }) => `${crew.id}.${member.trade}`,
      title: ({ crew, member }) => `${crew.title}: ${withId(trades, member.trade).title}`,
    },
    t => ({
      crew: t.key('crew', 'Crew', row => row.crew.id),
      people: t.field(
        'people',
        'People',
        'person',
        ({ crew, member }) => {
          const { figure, place } = rateAt(input, `crews/${crew.id}/${member.trade}`, member.people);
          return givenFrom(figure, 'person', place);
        },
        [input.overrides, input.library],
      ),
    }),
  );
  const table = sheet.table(
    'crews',
    { heading: 'Crew', of: crews, key: crew => crew.id, title: crew => crew.title },
    t => ({
      people: t.place(
        'people',
        'People',
        rounded(totalWhere(members.columns.people, members.columns.crew, t.rowKey()), 2),
      ),
    }),
  );
  return { members, crews: table };
}
