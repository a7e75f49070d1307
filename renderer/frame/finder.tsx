import { useMemo, useState } from 'react';
import { Autocomplete, Input, Label, Menu, MenuItem, SearchField, Text } from 'react-aria-components';
import { COMMANDS } from '../commands/table';
import { goTo, runCommand } from '../commands/run';
import { change, useWindow } from '../state/store';
import { goToInput, goToSubject } from './go-to-input';
import { found, findable, type Findable } from './findable';

/** Finds views, commands, work items, activities, compartments, rates and findings by their words. */
export function Finder() {
  const rows = useWindow(window => window.rows);
  const [words, setWords] = useState('');
  const all = useMemo(() => findable(rows, COMMANDS), [rows]);
  const hits = found(all, words);
  return (
    <Autocomplete inputValue={words} onInputChange={setWords}>
      <SearchField autoFocus className="finder-field">
        <Label className="quiet">A word of its name</Label>
        <Input className="wide-input" />
      </SearchField>
      <Menu
        className="menu finder-hits"
        aria-label="Found"
        items={hits}
        renderEmptyState={() => <p className="quiet">Nothing has these words in its name.</p>}
        onAction={key => choose(all.find(one => one.id === key))}
      >
        {hit => (
          <MenuItem id={hit.id} className="menu-item" textValue={hit.title}>
            <Text slot="label">{hit.title}</Text>
            <Text slot="description" className="quiet">
              {hit.kind}
            </Text>
          </MenuItem>
        )}
      </Menu>
    </Autocomplete>
  );
}

function choose(hit: Findable | undefined): void {
  if (hit === undefined) return;
  change({ panel: 'none' });
  if (hit.command !== undefined) runCommand(hit.command);
  else if (hit.view !== undefined) {
    if (hit.subject !== undefined && hit.at === undefined) void goToSubject(hit.view, hit.subject);
    else {
      goTo(hit.view, hit.subject);
      if (hit.at !== undefined) void goToInput(hit.view, hit.at);
    }
  }
}
